"""A design without named sizes has one choice, and that is all of them."""

from __future__ import annotations

from pathlib import Path

from tommybar.design import design_from_text
from tommybar.resize import resize
from tommybar.shop import load_shop

SHOP = Path(__file__).parents[2] / "examples" / "shops" / "small-bench.yaml"
RING = """tommybar: 1
design: Ring
units: mm
parts:
  ring:
    material: aluminium 6082
    turned:
      length: 10
      outside: [{name: rim, dia: DIA}]
      bores: [{name: bore, dia: 20, through: true}]
"""


def resized(dia):
    """The ring in the small bench."""
    return resize(design_from_text(RING.replace("DIA", str(dia)), "ring.yaml"), load_shop(SHOP))


def test_nothing_is_said_to_be_left_unsearched():
    """There is nothing to search, so no caution that the search was broken off."""
    found = resized(40)

    assert found.scale == 1.0
    assert found.exhausted
    assert 113 not in {one.number for one in found.findings}


def test_what_does_not_fit_is_still_told():
    """A ring of 100 does not go into jaws that open to 75."""
    assert any(one.severity == "stop" for one in resized(100).findings)
