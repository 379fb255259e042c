"""Formulas refuse what they are not made for, with figure and bound; nothing is clamped."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from tommybar.mechanics import (
    balancing,
    chatter,
    critical_speed,
    cutting,
    deflection,
    drilling,
    drive,
    gripped_ring,
    holding,
    nose_radius,
    press_fit,
    rotors,
    thread_strength,
)
from tommybar.refusals import Refusal

CASES: list[tuple[Callable[[], object], str]] = [
    (lambda: cutting.spindle_speed(30, 0), "diameter is 0 mm; it must be above 0 mm"),
    (lambda: cutting.spindle_speed(float("nan"), 10), "cutting speed is nan"),
    (lambda: cutting.surface_speed(-1, 10), "spindle speed is -1 rev/min; it must be from 0"),
    (lambda: cutting.cutting_minutes(10, 0, 100), "feed is 0 mm/rev"),
    (lambda: cutting.cutting_force(2000, 0.9, 0.1, 1), "exponent mc is 0.9"),
    (lambda: cutting.cutting_force(2000, 0.2, 0.1, 1, 95), "approach angle is 95 deg"),
    (lambda: cutting.cutting_power(0, 30), "cutting force is 0 N"),
    (lambda: cutting.cutting_torque(10, -5), "diameter is -5 mm"),
    (lambda: nose_radius.nose_chip(0.4, 0.1, 0.9, 90), "feed is 0.9 mm/rev; it must be from 0 to 0.8"),
    (lambda: nose_radius.turned_roughness(0.1, 0), "nose radius is 0 mm"),
    (lambda: nose_radius.in_plane_force(100, 3, 0.4, 0.1, 0.1, 90), "share of the in-plane force is 3"),
    (lambda: drive.spindle_torque(370, 0), "spindle speed is 0 rev/min"),
    (lambda: drive.spindle_torque(370, 100, 0.75, "variable"), "base speed is 0 rev/min"),
    (lambda: drive.deepest_cut(0, 10, 2000, 0.2, 0.1), "torque is 0 N m"),
    (lambda: deflection.deflection("cantilever", 10, 70, 60, 10, 2e5), "place of the tool is 70 mm"),
    (lambda: deflection.deflection("steady", 10, 10, 60, 10, 2e5), 'The support is "steady"'),  # type: ignore[arg-type]
    (lambda: deflection.second_moment(10, 10), "bore is 10 mm"),
    (lambda: deflection.spring_passes(0.1, 100, 0.1, 0), "number of passes is 0"),
    (lambda: drilling.drill_thrust_and_torque(24000, 8, 0.1, wear=3), "wear factor is 3"),
    (lambda: drilling.drill_thrust_and_torque_by_maker(1.4, 0, 0.1), "diameter is 0 mm"),
    (lambda: drilling.lip_torque(2000, 0.2, 6, 0.1, 30), "point angle is 30 deg"),
    (lambda: drilling.pull_in_ratio(80, 0.2), "rake is 80 deg"),
    (lambda: holding.grip_against_slip(10, 10, 10, 10, 0), "friction is 0"),
    (lambda: holding.grip_against_tilt(10, 10, 10, 0.1, 0.5), "safety is 0.5; it must be from 1"),
    (lambda: holding.tilt_moment(100, 0, 10, 0.1), "length gripped is 0 mm"),
    (lambda: holding.grip_at_rest(100, -1, 500), "mass moment of the jaws is -1 kg m"),
    (
        lambda: gripped_ring.ring_under_jaws(3, 100, 40, 44, 10, 2e5),
        "outside diameter is 40 mm; it must be above 44",
    ),
    (lambda: gripped_ring.wrap_factor(3, 130, 50, 44), "wrap is 130 deg; it must be from 0 to 120"),
    (lambda: rotors.rotation_energy(-1, 100), "moment of inertia is -1 g mm2"),
    (lambda: rotors.rim_speed(0, 100), "diameter is 0 mm"),
    (
        lambda: rotors.disc_stress(4, 5, 50, 100, 7.85, 0.3, 2e5),
        "radius asked for is 4 mm; it must be from 5 to 50",
    ),
    (lambda: rotors.disc_stress(5, 5, 50, 100, 7.85, 0.6, 2e5), "Poisson's ratio is 0.6"),
    (lambda: rotors.bursting_speed(5, 50, 7.85, 400, 1.5), "factor is 1.5"),
    (lambda: rotors.fragment_speed(50, 50, 100), "outer radius is 50 mm; it must be above 50"),
    (lambda: rotors.unbalance_of_runout(-1, 0.1), "mass is -1 g"),
    (lambda: thread_strength.shear_areas(5, 0.8, 0), "engagement is 0 mm"),
    (lambda: thread_strength.strip_load(5, 0.8, 5, 0, 400), "strength of the screw is 0 MPa"),
    (lambda: thread_strength.tightening_torque(100, 5, 0.8, 2, 0.1, 7), "thread friction is 2"),
    (lambda: thread_strength.pull_at_yield(5, 0.8, 0.1, 640, 1.2), "share used is 1.2"),
    (lambda: thread_strength.tapping_torque(5, 0, 2000), "pitch is 0 mm"),
    (lambda: thread_strength.tap_breaking_torque(5, 0.5, 0), "shear strength is 0 MPa"),
    (lambda: press_fit.press_fit(10, 0.5, 10, 20, 2e5, 0.3, 2e5, 0.3), "interference is 0.5 mm"),
    (lambda: press_fit.press_fit(10, 0.01, 10, 9, 2e5, 0.3, 2e5, 0.3), "outside diameter of the hub is 9 mm"),
    (lambda: press_fit.shrink_temperature(20, 0.02, 0.02, 0), "coefficient of expansion is 0"),
    (lambda: balancing.three_run_unbalance(5, (1, 1, 1), 50), "The trial mass makes no difference"),
    (lambda: balancing.face_hole_depth(0, 40, 5, 8), "unbalance is 0 g mm"),
    (lambda: balancing.rim_hole_depth(6500, 50, 4, 8.5), "takes at most 134 g mm"),
    (lambda: balancing.skew_couple(1, 1, 0.1, 0), "diameter is 0 mm"),
    (lambda: critical_speed.shaft_stiffness("cantilever", 50, 60, 6, 2e5), "place of the disc is 60 mm"),
    (lambda: critical_speed.critical_speed("simply", 50, 20, 6, 2e5, 0), "mass of the disc is 0 g"),
    (lambda: chatter.chatter_width(1000, 2, 2000), "damping ratio is 2"),
    (lambda: chatter.blade_stiffness(2, 12, 0, 2e5), "overhang is 0 mm"),
]


@pytest.mark.parametrize(("asked", "words"), CASES, ids=[str(n) for n in range(len(CASES))])
def test_it_is_refused(asked: Callable[[], object], words: str) -> None:
    """The refusal names the figure it had and the bound."""
    with pytest.raises(Refusal, match=words):
        asked()
