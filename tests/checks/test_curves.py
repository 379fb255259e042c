"""Curves against the speed: figures by hand, laws of the formulas, nothing where nothing turns."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from tommybar.checks.curves import POINTS, speed_curves
from tommybar.design.model import Part, Purpose, RunoutNeed, SizedDesign
from tommybar.shapes.features import Bore, Cylinder, Dim, TurnedShape


def disc(bore=10.0, count=1):
    """A steel disc of 100 by 10 mm."""
    bores = (Bore("bore", Dim(bore), "A", 10.0, True),) if bore else ()
    shape = TurnedShape(Dim(10.0), (Cylinder("rim", Dim(100.0), 0.0, 10.0),), bores=bores)
    return Part("disc", "turned", "mild steel", count, shape, (RunoutNeed("rim", "bore", 0.04),))


FAST = Purpose(("disc",), 3000.0, 6.3)


def design(*parts, purposes=(FAST,)):
    return SizedDesign("x", "A", "mm", (), parts, purposes=purposes)


@pytest.fixture
def curves():
    """Curves of the disc at 3000 rev/min and G 6.3, by what they are of."""
    return {one.what: one for one in speed_curves(design(disc()))}


def test_energy_by_hand(curves):
    """Steel 7.86 g/cm3: m = 611.2 g, I = m (R2 + r2) / 2 = 771.6 kg mm2, E = I (100 pi)2 / 2 = 38.08 J."""
    mass = 7.86e-3 * math.pi * (50**2 - 5**2) * 10
    inertia = mass * (50**2 + 5**2) / 2 * 1e-9  # [kg m2]
    curve = curves["energy of turning"]

    assert curve.at == pytest.approx((3000.0, inertia * (100 * math.pi) ** 2 / 2))
    assert curve.at[1] == pytest.approx(38.08, abs=0.01)
    assert curve.levels[0].reached_at == pytest.approx(3000 * math.sqrt(10 / 38.08), abs=1)


def test_permissible_eccentricity_is_the_grade_s_definition(curves):
    """e omega = G: 6.3 mm/s at 3000 rev/min is 20.05 um (ISO 21940-11, from memory), at every point."""
    curve = curves["permissible eccentricity"]

    assert curve.at[1] == pytest.approx(20.05, abs=0.005)
    for speed, um in curve.points:
        assert um / 1000 * speed * math.pi / 30 == pytest.approx(6.3)
    (level,) = curve.levels
    assert level.value == pytest.approx(20.0)  # half of 0.04
    assert level.reached_at == pytest.approx(6.3 / 0.02 * 30 / math.pi)


def test_stress_at_the_bore_by_hand(curves):
    """(3+nu)/4 b2 + (1-nu)/4 a2 with rho omega2: the closed form of the flat disc at its bore, in MPa."""
    curve = curves["stress at the bore from turning"]
    by_hand = 7860 * (100 * math.pi) ** 2 * ((3.29 / 4) * 0.05**2 + (0.71 / 4) * 0.005**2) / 1e6

    assert curve.at[1] == pytest.approx(by_hand)
    assert curve.inputs[:2] == ("b = 50 mm", "a = 5 mm")


def test_a_solid_disc_is_stressed_half_as_much():
    """A tiny hole doubles the stress at the centre: the well known jump of the two closed forms."""
    (solid,) = (one for one in speed_curves(design(disc(0.0))) if "stress" in one.what)
    (bored,) = (one for one in speed_curves(design(disc(0.01))) if "stress" in one.what)

    assert solid.what == "stress at the centre from turning"
    assert bored.at[1] / solid.at[1] == pytest.approx(2.0, abs=1e-3)


@pytest.mark.parametrize("what", ["energy of turning", "stress at the bore from turning"])
def test_twice_the_speed_is_four_times_the_figure(curves, what):
    """The last point is at twice the design's speed; each level lies on the curve where it says."""
    curve = curves[what]

    assert len(curve.points) == POINTS
    assert curve.points[0] == (0.0, 0.0)
    assert curve.points[-1] == pytest.approx((2 * curve.at[0], 4 * curve.at[1]))
    for level in curve.levels:
        assert level.value == pytest.approx(curve.at[1] * (level.reached_at / curve.at[0]) ** 2)


def test_no_curve_without_a_purpose_that_turns():
    """A design without purpose, or one that stands still, has none; without a grade, no eccentricity."""
    still = Purpose(("disc",), 0.0)

    assert speed_curves(design(disc(), purposes=())) == ()
    assert speed_curves(design(disc(), purposes=(still,))) == ()
    ungraded = speed_curves(design(disc(), purposes=(replace(still, speed=100.0),)))
    assert [one.what for one in ungraded] == ["energy of turning", "stress at the bore from turning"]


def test_equal_parts_count_for_the_energy_but_are_drawn_once():
    """Two discs hold twice the energy of one; their stress is one curve."""
    one, two = speed_curves(design(disc())), speed_curves(design(disc(count=2)))

    assert two[0].at[1] == pytest.approx(2 * one[0].at[1])
    assert len(two) == len(one)
