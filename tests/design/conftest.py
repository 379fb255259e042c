"""Small designs for the tests of the design file."""

import pytest

from tommybar.design import design_from_text
from tommybar.refusals import Refusal

DISC = """tommybar: 1
design: A disc
units: mm
sizes:
  rim: {is: 60, follows: scale}
  hub: {is: 20, follows: scale}
parts:
  disc:
    material: mild steel
    turned:
"""
PLATE = """tommybar: 1
design: A plate
units: mm
parts:
  plate:
    material: mild steel
    plate: {length: 40, width: 20, thick: 8, holes: [HOLES]}
"""


@pytest.fixture
def disc():
    """A design of one turned part, its features given as lines of text."""

    def build(*lines, after=""):
        body = "".join(f"      {line}\n" for line in lines)
        return design_from_text(DISC + body + after, "disc.yaml")

    return build


@pytest.fixture
def plate():
    """A design of one plate with the holes given."""
    return lambda holes="": design_from_text(PLATE.replace("HOLES", holes), "plate.yaml")


@pytest.fixture
def refused():
    """The words of the refusal that a deed ends in."""

    def words(deed, *given, **keys):
        with pytest.raises(Refusal) as caught:
            deed(*given, **keys)
        return str(caught.value)

    return words
