"""Belts by hand: 100 drives 25 over 160."""

from __future__ import annotations

import pytest

from tommybar.checks.belts import contact
from tommybar.design.joints import BeltRelation
from tommybar.design.motion_relations import open_belt_length

from .asking import disc, figures_of, finds, found_in, part


def belt(centres: float, driver: float = 100.0, driven: float = 25.0, crossed: bool = False) -> BeltRelation:
    """A belt from one pulley to the other."""
    long = open_belt_length(driver, driven, centres)
    return BeltRelation(
        "wheel.groove", "shaft.groove", driver, driven, centres, driver / driven, long, crossed
    )


WHEEL = part("wheel", disc(100.0, 10.0))


def test_length_ratio_and_contact_by_hand() -> None:
    """2 x 160 + pi 125 / 2 + 75^2 / 640 = 525.1; ratio 4; 180 - 2 asin(75 / 320) = 152.9 deg."""
    got = figures_of(WHEEL, belts=(belt(160.0),))

    assert got["length of the belt", "wheel"].value == pytest.approx(525.1, abs=0.05)
    assert got["ratio of the belt", "wheel"].value == pytest.approx(4.0)
    assert got["belt round the smaller pulley", "wheel"].value == pytest.approx(152.9, abs=0.05)
    assert contact(belt(160.0, crossed=True)) == pytest.approx(180 + 45.98, abs=0.05)  # 2 asin(125 / 320)


@pytest.mark.parametrize(("centres", "number"), [(76.0, 0), (74.0, 674), (62.0, 675)])
def test_short_centres_lose_hold_and_then_the_pulleys_touch(centres: float, number: int) -> None:
    """120 deg is asin(37.5 / C) = 30, C = 75; the pulleys touch at 62.5."""
    got = [one.number for one in found_in(WHEEL, belts=(belt(centres),)) if one.number in (674, 675)]
    assert got == ([number] if number else [])
    if number:
        assert finds(number, WHEEL, belts=(belt(centres),)).part == "wheel"
