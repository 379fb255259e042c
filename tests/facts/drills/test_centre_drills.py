"""Centre drills."""

from __future__ import annotations

import pytest

from tommybar.facts.drills import centre_drill, centre_drills_of_form
from tommybar.refusals import Refusal


@pytest.mark.parametrize("written", ["A 2.5", "a2.5", "form A 2.5 mm", "type A 2.5"])
def test_ways_to_name_form_a(written: str) -> None:
    """Form and pilot, with or without the words around them."""
    one = centre_drill(written)

    assert (one.pilot, one.shank, one.mouth) == (2.5, 6.3, 5.3)


def test_inch_sizes_keep_their_fractions() -> None:
    """BS4 has a pilot of 1/8 and a body of 5/16 in."""
    one = centre_drill("bs4")

    assert (one.pilot_name, one.shank_name) == ("1/8", "5/16")
    assert one.shank == pytest.approx(7.9375)
    assert one.mouth is None


def test_plain_type_goes_by_number() -> None:
    """#00 is written as a decimal."""
    assert centre_drill("#00").pilot == pytest.approx(0.635)


@pytest.mark.parametrize("form", ["A", "B", "R"])
def test_shank_holds_mouth_and_pilot(form: str) -> None:
    """The pilot is thinner than the mouth, the mouth not wider than the shank."""
    drills = centre_drills_of_form(form)
    for one in drills:
        assert one.mouth is not None
        assert one.pilot < one.mouth <= one.shank
    assert [one.pilot for one in drills] == sorted(one.pilot for one in drills)


def test_cone_of_form_a_is_about_2_12_pilots() -> None:
    """ISO 6411 rounds 2.12 d to preferred numbers: within 3 %."""
    for one in centre_drills_of_form("A"):
        assert one.mouth == pytest.approx(2.12 * one.pilot, rel=0.03)


@pytest.mark.parametrize(
    ("written", "words"),
    [("A 3", "no pilot of 3 mm"), ("BS9", "There is no centre drill"), ("C 2", "no centre")],
)
def test_what_is_not_made_is_refused(written: str, words: str) -> None:
    """Pilots and sizes outside the tables."""
    with pytest.raises(Refusal, match=words):
        centre_drill(written)


def test_unknown_form_is_refused() -> None:
    """There is no form C here."""
    with pytest.raises(Refusal, match="forms are A, B and R"):
        centre_drills_of_form("C")
