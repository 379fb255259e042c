"""The thread forms, against the same forms drawn as polygons and measured."""

from __future__ import annotations

from math import pi, radians, tan

import pytest
from shapely import LineString, Polygon, box

from tommybar.facts.threads import crest_radius, crest_shortening, thread, triangle_height


def drawn_ridge(pitch: float, angle: float, crest_cut: float, root_cut: float) -> Polygon:
    """One ridge of a thread: its sharp triangle on one pitch, cut at crest and root."""
    height = pitch / 2 / tan(radians(angle / 2))
    sharp = Polygon([(-pitch / 2, 0), (pitch / 2, 0), (0, height)])
    return sharp.intersection(box(-pitch, root_cut * height, pitch, height * (1 - crest_cut)))


def pitch_line(ridge: Polygon, pitch: float) -> float:
    """Height at which ridge and groove are equally wide, found by halving."""
    low, high = ridge.bounds[1], ridge.bounds[3]
    for _ in range(60):
        middle = (low + high) / 2
        width = ridge.intersection(LineString([(-pitch, middle), (pitch, middle)])).length
        low, high = (middle, high) if width > pitch / 2 else (low, middle)
    return (low + high) / 2


@pytest.mark.parametrize("size", ["M1.6", "M3", "M6", "M8x1", "M12", "M36", "1/4-20 UNC", "1/2-20 UNF"])
def test_sixty_degree_diameters_measured_on_the_drawn_form(size: str) -> None:
    """Pitch and minor diameter of ISO 68-1: H/8 cut from the crest, H/4 from the nut's root."""
    one = thread(size)
    ridge = drawn_ridge(one.pitch, 60, 1 / 8, 1 / 4)
    low, high = ridge.bounds[1], ridge.bounds[3]

    assert one.major - 2 * (high - pitch_line(ridge, one.pitch)) == pytest.approx(
        one.pitch_diameter, abs=0.0013
    )
    assert one.major - 2 * (high - low) == pytest.approx(one.minor, abs=0.0013)


@pytest.mark.parametrize("size", ["1/4 BSW", "3/8 BSF", "1/4-40 ME", "G 1/4"])
def test_whitworth_diameters_measured_on_the_drawn_form(size: str) -> None:
    """Whitworth: a sixth of the triangle gone at crest and root; core and effective diameter agree."""
    one = thread(size)
    ridge = drawn_ridge(one.pitch, 55, 1 / 6, 1 / 6)
    low, high = ridge.bounds[1], ridge.bounds[3]

    assert one.major - 2 * (high - pitch_line(ridge, one.pitch)) == pytest.approx(
        one.pitch_diameter, abs=0.0013
    )
    assert one.major - 2 * (high - low) == pytest.approx(one.core, abs=0.0013)


def test_rounding_touches_flank_and_crest() -> None:
    """An arc of the crest radius, set below the crest, lies exactly one radius off the flank."""
    pitch, angle, depth = 1.0, 55.0, 0.640327
    radius = crest_radius(pitch, angle, depth)
    apex = triangle_height(pitch, angle)
    centre = apex - crest_shortening(pitch, angle, depth) - radius
    flank = LineString([(-pitch / 2, 0), (0, apex)])

    from shapely import Point

    assert Point(0, centre).distance(flank) == pytest.approx(radius, abs=1e-6)


def test_stress_area_lies_between_core_and_pitch_circle() -> None:
    """A pull is reckoned on more than the root circle and less than the pitch circle."""
    for size in ("M2", "M6", "M20", "1/4-20 UNC", "1/4 BSW", "2 BA"):
        one = thread(size)
        assert pi / 4 * one.core**2 < one.stress_area < pi / 4 * one.pitch_diameter**2
