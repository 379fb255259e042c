"""Drills on slopes and leaning holes; the block of a sundial by hand."""

from __future__ import annotations

import math

import pytest

from tommybar.shapes.features import Cone, CrossHole, Cylinder, Dim, PlateHole, TurnedShape

from .asking import finds, found_in, part, plate


def numbers(*parts: object) -> list[int]:
    """Which findings about slopes there are."""
    return [one.number for one in found_in(*parts) if one.number in (680, 681)]  # type: ignore[arg-type]


def gnomon(latitude: float, long: float, flat: bool = True) -> object:
    """Block 20 high and 20 wide with a hole of 5 at the latitude from its base, the drift about its middle."""
    drift = 20 / math.tan(math.radians(latitude))
    hole = PlateHole(
        "rod", "top", long / 2 - drift / 2, 10.0, Dim(5.0), tilt=90 - latitude, towards=0.0, flat=flat
    )
    return part("block", plate(hole, long=long, wide=20.0, thick=20.0))


def test_the_hole_at_52_deg_fits_the_long_side_and_wants_a_flat() -> None:
    """Drift 20 / tan 52 = 15.63, ellipse 5 / sin 52 = 6.35, wanted 15.63 + 6.35 + 6 = 27.97 mm."""
    assert numbers(gnomon(52.0, 60.0)) == []
    assert finds(680, gnomon(52.0, 60.0, flat=False)).figure == "38.0 deg"  # type: ignore[arg-type]
    short = finds(681, gnomon(52.0, 20.0))  # type: ignore[arg-type]
    assert short.severity == "stop"
    for words in ("drifts 15.63 mm", "6.35 mm long", "27.97 mm along"):
        assert words in short.words


@pytest.mark.parametrize(("latitude", "long", "good"), [(25.4, 60.0, True), (25.2, 60.0, False)])
def test_the_lowest_latitude_of_the_long_side(latitude: float, long: float, good: bool) -> None:
    """20 / tan phi + 5 / sin phi + 6 = 60 at phi = 25.3 deg, by hand."""
    assert (20 / math.tan(math.radians(latitude)) + 5 / math.sin(math.radians(latitude)) + 6 <= long) is good
    assert numbers(gnomon(latitude, long)) == ([] if good else [681])


def test_the_short_side_works_only_from_66_8_deg() -> None:
    """20 / tan phi + 5 / sin phi + 6 = 20 at phi = 66.8 deg, by hand."""
    assert numbers(gnomon(67.0, 20.0)) == []
    assert numbers(gnomon(66.5, 20.0)) == [681]


def test_a_cross_hole_on_a_steep_cone_wants_a_spot_face() -> None:
    """Cone 20 to 10 over 10 slopes 26.6 deg, over 40 it slopes 7.1 deg; a cross hole beside the axis counts alike."""

    def cone(long: float, **more: float) -> object:
        lands = (
            Cylinder("neck", Dim(20.0), 0.0, 10.0),
            Cone("cone", 10.0, 10.0 + long, 20.0, 10.0),
        )
        hole = CrossHole("vent", Dim(2.0), 10 + long / 2, **more)  # type: ignore[arg-type]
        return part("bob", TurnedShape(Dim(10 + long), lands, cross_holes=(hole,)))

    assert finds(680, cone(10.0)).figure == "26.6 deg"  # type: ignore[arg-type]
    assert numbers(cone(40.0)) == []
    assert finds(680, cone(40.0, offset=3.75)).figure == "30.0 deg"  # type: ignore[arg-type]  # asin(3.75 / 7.5)
