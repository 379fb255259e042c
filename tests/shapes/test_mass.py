"""Mass properties against closed forms that share nothing with the code."""

from __future__ import annotations

import math

import numpy as np
import pytest

from tommybar.refusals import Refusal
from tommybar.shapes.features import (
    Bore,
    CircleHoles,
    CrossHole,
    Cylinder,
    Dim,
    PlateHole,
    PlateShape,
    TurnedShape,
)
from tommybar.shapes.mass import mass_properties
from tommybar.shapes.plates import outline_area


def disc(dia: float, long: float, **features: object) -> TurnedShape:
    return TurnedShape(Dim(long), (Cylinder("rim", Dim(dia), 0.0, long),), **features)  # type: ignore[arg-type]


def test_a_tube() -> None:
    """m (R2 + r2) / 2 about the axis, m (3 (R2 + r2) + h2) / 12 across."""
    found = mass_properties(disc(50.0, 30.0, bores=(Bore("bore", Dim(20.0), "A", 30.0, True),)), 7.85)
    m = 7.85e-3 * math.pi * (25**2 - 10**2) * 30

    assert found.mass == pytest.approx(m, rel=1e-12)
    assert found.centre == pytest.approx(15.0, rel=1e-12)
    assert found.inertia_axis == pytest.approx(m * (625 + 100) / 2, rel=1e-12)
    assert found.inertia_across == pytest.approx(m * (3 * 725 + 900) / 12, rel=1e-12)


def test_holes_on_a_circle_by_the_parallel_axis_rule() -> None:
    """Each hole takes v (d2/8 + Rp2) about the axis; five equal ones leave no unbalance."""
    holes = CircleHoles("ease", Dim(10.0), 5, 48.0, 20.0, 0.0, 10.0)
    found = mass_properties(disc(90.0, 10.0, circle_holes=(holes,)), 1.0)
    v = math.pi * 25 * 10
    whole = math.pi * 45**2 * 10
    expected = whole * 45**2 / 2 - 5 * v * (100 / 8 + 24**2)

    assert found.volume == pytest.approx(whole - 5 * v, rel=1e-12)
    assert found.inertia_axis == pytest.approx(expected / 1000, rel=1e-12)
    assert found.unbalance == pytest.approx(0.0, abs=1e-9)


def test_one_hole_off_the_axis_gives_its_unbalance() -> None:
    """A single hole of volume v at 16 mm takes rho v 16 off one side."""
    holes = CircleHoles("pin", Dim(3.3), 1, 32.0, 90.0, 0.0, 8.0)
    found = mass_properties(disc(44.0, 8.0, circle_holes=(holes,)), 2.7)
    v = math.pi * 3.3**2 / 4 * 8

    assert found.unbalance == pytest.approx(2.7e-3 * v * 16, rel=1e-9)
    assert found.off_axis[1] > 0  # away from the hole, which is up as seen from face A: at -y
    assert found.off_axis[0] == pytest.approx(0.0, abs=1e-12)


def test_a_hole_through_a_step_takes_only_metal() -> None:
    """A hole that lies half under a rim and half over a boss is not counted in the air."""
    shape = TurnedShape(
        Dim(20.0), (Cylinder("boss", Dim(40.0), 0.0, 10.0), Cylinder("rim", Dim(80.0), 10.0, 20.0))
    )
    holes = CircleHoles("ease", Dim(10.0), 4, 40.0, 0.0, 0.0, 20.0)
    found = mass_properties(shape, 1.0)
    drilled = mass_properties(TurnedShape(shape.length, shape.outside, circle_holes=(holes,)), 1.0)
    # lens of two circles, radii 5 and 20, centres 20 apart
    lens = 25 * math.acos(5 / 40) + 400 * math.acos(1 - 25 / 800) - math.sqrt(25 * (40**2 - 25)) / 2

    assert found.volume - drilled.volume == pytest.approx(4 * (math.pi * 25 * 10 + lens * 10), rel=1e-9)


@pytest.mark.parametrize(("bar", "hole"), [(20.0, 20.0 - 1e-9), (20.0, 8.0), (12.0, 4.0)])
def test_a_cross_hole_against_points_and_the_equal_cylinders(bar: float, hole: float) -> None:
    """Two equal cylinders crossing share 16 r3 / 3; smaller holes against a fine midpoint sum."""
    pin = CrossHole("pin", Dim(hole), 20.0, walls=2)
    whole = mass_properties(disc(bar, 40.0), 1.0).volume
    left = mass_properties(disc(bar, 40.0, cross_holes=(pin,)), 1.0).volume
    if hole > bar - 1e-6:
        expected, tolerance = 16 * (bar / 2) ** 3 / 3, 1e-7
    else:
        n = 400_000
        y = (np.arange(n) + 0.5) / n * hole / 2
        expected = float(
            (8 * np.sqrt((hole / 2) ** 2 - y**2) * np.sqrt((bar / 2) ** 2 - y**2)).sum() * hole / 2 / n
        )
        tolerance = 1e-7

    assert whole - left == pytest.approx(expected, rel=tolerance)


def test_a_cross_hole_into_a_bore_against_slices() -> None:
    """One wall, from the outside into the bore: slices across the hole, and its pull to one side."""
    bore = (Bore("bore", Dim(10.0), "A", 20.0, True),)
    solid = mass_properties(disc(26.0, 20.0, bores=bore), 1.0)
    drilled = mass_properties(
        disc(26.0, 20.0, bores=bore, cross_holes=(CrossHole("grub", Dim(3.3), 10.0, 0.0, 1),)), 1.0
    )
    n = 400_000
    y = (np.arange(n) + 0.5) / n * 1.65
    long = np.sqrt(13**2 - y**2) - np.sqrt(5**2 - y**2)
    taken = float((4 * np.sqrt(1.65**2 - y**2) * long).sum() * 1.65 / n)
    pull = float((4 * np.sqrt(1.65**2 - y**2) * (169 - 25) / 2).sum() * 1.65 / n)

    assert solid.volume - drilled.volume == pytest.approx(taken, rel=1e-7)
    assert drilled.unbalance == pytest.approx(pull / 1000, rel=1e-6)


def test_a_plate_with_corners_and_holes() -> None:
    """Volume, and the inertia of a plain plate m (a2 + b2) / 12."""
    plain = PlateShape(Dim(60.0), Dim(40.0), Dim(8.0))
    m = 2.7e-3 * 60 * 40 * 8
    found = mass_properties(plain, 2.7)
    assert found.mass == pytest.approx(m)
    assert found.inertia_axis == pytest.approx(m * (3600 + 1600) / 12)
    assert found.inertia_across == pytest.approx(m * ((3600 + 1600) / 2 + 64) / 12)

    rounded = PlateShape(Dim(60.0), Dim(40.0), Dim(8.0), corner=5.0)
    assert mass_properties(rounded, 1.0).volume == pytest.approx(8 * outline_area(rounded))
    through = PlateHole("foot", "front", 10.0, 4.0, Dim(5.0))
    assert mass_properties(PlateShape(Dim(60.0), Dim(40.0), Dim(8.0), holes=(through,)), 1.0).volume == (
        pytest.approx(60 * 40 * 8 - math.pi * 6.25 * 40)
    )


def test_a_blind_tapped_hole_counts_its_lead_and_its_tip() -> None:
    """M5, 12 deep: 4.2 drill to 12 + 3 x 0.8, then a 118 degree cone."""
    hole = PlateHole("t", "front", 20.0, 8.0, Dim(5.0), 12.0, "M5")
    plate = PlateShape(Dim(60.0), Dim(40.0), Dim(16.0), holes=(hole,))
    tip = 2.1 / math.tan(math.radians(59))
    taken = math.pi * 2.1**2 * (14.4 + tip / 3)

    assert 60 * 40 * 16 - mass_properties(plate, 1.0).volume == pytest.approx(taken)


@pytest.mark.parametrize("face", ["top", "bottom", "front", "back", "left", "right"])
def test_a_hole_pulls_the_centre_away_from_its_face(face: str) -> None:
    """Each face's holes lie where that face is, seen from outside with x to the right."""
    hole = PlateHole("h", face, 6.0, 5.0, Dim(4.0), 3.0)  # type: ignore[arg-type]
    found = mass_properties(PlateShape(Dim(60.0), Dim(40.0), Dim(20.0), holes=(hole,)), 1.0)
    pull = (30 - found.off_axis[0], 20 - found.off_axis[1], 10 - found.centre)
    towards = {
        "top": (-1, -1, -1),
        "bottom": (1, -1, 1),
        "front": (-1, -1, 1),
        "back": (1, 1, 1),
        "left": (-1, 1, 1),
        "right": (1, -1, 1),
    }[face]

    assert [math.copysign(1, p) for p in pull] == list(towards)


@pytest.mark.parametrize(
    ("face", "where"),
    [
        ("top", (6.0, 5.0, None)),
        ("bottom", (54.0, 5.0, None)),
        ("front", (6.0, None, 15.0)),
        ("back", (54.0, None, 15.0)),
        ("left", (None, 34.0, 15.0)),
        ("right", (None, 6.0, 15.0)),
    ],
)
def test_a_hole_lies_exactly_where_its_face_puts_it(
    face: str, where: tuple[float | None, float | None, float | None]
) -> None:
    """The metal taken away has its centre at x, y of the face; z is the depth below the top face."""
    hole = PlateHole("h", face, 6.0, 5.0, Dim(4.0), 3.0)  # type: ignore[arg-type]
    whole = mass_properties(PlateShape(Dim(60.0), Dim(40.0), Dim(20.0)), 1.0)
    left = mass_properties(PlateShape(Dim(60.0), Dim(40.0), Dim(20.0), holes=(hole,)), 1.0)
    taken = whole.volume - left.volume
    for axis, expected in enumerate(where):
        before = (*whole.off_axis, whole.centre)[axis] * whole.volume
        after = (*left.off_axis, left.centre)[axis] * left.volume
        if expected is not None:
            assert (before - after) / taken == pytest.approx(expected, rel=1e-9)


def test_refusals() -> None:
    """Density, a hole beside the plate, and a corner that is too round."""
    with pytest.raises(Refusal, match="density is -1"):
        mass_properties(disc(10.0, 10.0), -1.0)
    outside = PlateHole("h", "top", 1.0, 5.0, Dim(4.0))
    with pytest.raises(Refusal, match="inside the top face"):
        mass_properties(PlateShape(Dim(60.0), Dim(40.0), Dim(20.0), holes=(outside,)), 1.0)
    with pytest.raises(Refusal, match="room for 20 mm"):
        mass_properties(PlateShape(Dim(60.0), Dim(40.0), Dim(20.0), corner=25.0), 1.0)
