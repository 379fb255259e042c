"""Laws that formulas must keep whatever their figures: edges, sums, order, scale."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tommybar.mechanics.cutting import cutting_force, spindle_speed, surface_speed
from tommybar.mechanics.deflection import deflection
from tommybar.mechanics.gripped_ring import ring_under_jaws
from tommybar.mechanics.holding import tilt_moment
from tommybar.mechanics.nose_radius import in_plane_force, nose_chip, turned_roughness
from tommybar.mechanics.press_fit import press_fit
from tommybar.mechanics.rotors import average_hoop_stress, bursting_speed, disc_stress
from tommybar.mechanics.thread_strength import strip_load

radii = st.tuples(st.floats(3, 30), st.floats(1.2, 8.0)).map(lambda pair: (pair[0], pair[0] * pair[1]))
speeds = st.floats(10, 20000)


@given(st.floats(1, 300), st.floats(1, 500))
def test_speed_and_diameter_go_both_ways(cutting_speed: float, diameter: float) -> None:
    """A spindle speed gives its cutting speed back; twice the diameter, half the speed."""
    n = spindle_speed(cutting_speed, diameter)

    assert surface_speed(n, diameter) == pytest.approx(cutting_speed, rel=1e-12)
    assert spindle_speed(cutting_speed, 2 * diameter) == pytest.approx(n / 2, rel=1e-12)


@given(st.floats(0.05, 0.5), st.floats(0.1, 3), st.floats(30, 90))
def test_force_is_linear_in_depth_and_rises_less_than_feed(feed: float, depth: float, angle: float) -> None:
    """Twice the depth, twice the force; twice the feed, 2^(1 - mc) times."""
    force = cutting_force(2000, 0.25, feed, depth, angle)

    assert cutting_force(2000, 0.25, feed, 2 * depth, angle) == pytest.approx(2 * force)
    assert cutting_force(2000, 0.25, 2 * feed, depth, angle) == pytest.approx(2**0.75 * force)


@given(radii, speeds)
def test_free_edges_carry_no_radial_stress_and_the_hoop_averages_out(
    pair: tuple[float, float], speed: float
) -> None:
    """Radial stress is 0 at bore and rim; hoop stress over the radius averages to the burst figure."""
    a, b = pair
    at = [disc_stress(r, a, b, speed, 7.85, 0.3, 205000) for r in (a, b)]
    scale = max(one.hoop for one in at)

    assert [one.radial / scale for one in at] == pytest.approx([0, 0], abs=1e-9)
    nodes, weights = np.polynomial.legendre.leggauss(40)
    places = (a + b) / 2 + (b - a) / 2 * nodes
    mean = sum(
        w * disc_stress(float(r), a, b, speed, 7.85, 0.3, 205000).hoop
        for r, w in zip(places, weights, strict=True)
    )
    assert mean / 2 == pytest.approx(average_hoop_stress(a, b, speed, 7.85), rel=1e-6)


@given(radii)
def test_stress_at_the_bursting_speed_is_the_share_of_the_strength(pair: tuple[float, float]) -> None:
    """Inverse of each other; stress goes with the square of the speed and of the size."""
    a, b = pair
    n = bursting_speed(a, b, 7.85, 400)

    assert average_hoop_stress(a, b, n, 7.85) == pytest.approx(320, rel=1e-9)
    assert bursting_speed(2 * a, 2 * b, 7.85, 400) == pytest.approx(n / 2, rel=1e-9)


@given(st.floats(0.01, 1.0), st.floats(3, 20), st.floats(20, 200))
def test_every_support_is_stiffer_than_none(share: float, diameter: float, length: float) -> None:
    """Cantilever gives most; a soft tailstock lies between none and a rigid one."""
    at = share * length

    def give(support: str, tail: float = math.inf) -> float:
        return deflection(support, 50, at, length, diameter, 205000, tail_stiffness=tail)  # type: ignore[arg-type]

    rigid, soft, none = give("chuck_centre"), give("chuck_centre", 5000.0), give("cantilever")
    assert rigid <= soft * (1 + 1e-9) + 1e-15
    assert soft <= none * (1 + 1e-9)
    assert give("chuck_centre", 1e-6) == pytest.approx(none, rel=1e-3)


@given(st.floats(0.1, 1.2), st.floats(0.02, 0.1), st.floats(30, 90))
def test_a_nose_chip_keeps_section_and_force(nose: float, share: float, angle: float) -> None:
    """The section is depth times feed less a cusp; the split force has its whole size; finish falls with nose."""
    feed, depth = share * nose, 0.3 * nose
    chip = nose_chip(nose, depth, feed, angle)
    force = in_plane_force(100, 0.6, nose, depth, feed, angle)

    assert 0.8 * depth * feed < chip.area < depth * feed
    assert math.hypot(force.along, force.radial) == pytest.approx(60)
    assert turned_roughness(feed, nose)[0] > turned_roughness(feed, 2 * nose)[0]


@settings(max_examples=50)
@given(st.integers(3, 12), st.floats(20, 100))
def test_more_jaws_press_a_ring_less_out_of_round(jaws: int, outside: float) -> None:
    """With the same whole force; and the force is linear."""
    one = ring_under_jaws(jaws, 1000, outside, 0.85 * outside, 10, 205000)
    more = ring_under_jaws(jaws + 1, 1000, outside, 0.85 * outside, 10, 205000)

    assert more.out_of_round < one.out_of_round
    double = ring_under_jaws(jaws, 2000, outside, 0.85 * outside, 10, 205000)
    assert double.out_of_round == pytest.approx(2 * one.out_of_round)


@given(st.floats(5, 40), st.floats(1.3, 4), st.floats(0.0002, 0.002))
def test_a_press_fit_shares_its_interference(diameter: float, ratio: float, share: float) -> None:
    """Pressure is linear in interference; the hoop exceeds the pressure; a longer fit holds more."""
    delta = share * diameter
    fit = press_fit(diameter, delta, 10, ratio * diameter, 110000, 0.34, 205000, 0.3)
    half = press_fit(diameter, delta / 2, 20, ratio * diameter, 110000, 0.34, 205000, 0.3)

    assert half.pressure == pytest.approx(fit.pressure / 2)
    assert half.force == pytest.approx(fit.force)
    assert fit.hub_hoop > fit.pressure
    assert fit.hub_mises > fit.hub_hoop
    assert fit.bore_closes == 0.0


@given(st.floats(2, 20), st.floats(200, 1000))
def test_a_thread_engaged_as_needed_strips_when_the_screw_breaks(major: float, strength: float) -> None:
    """At the engagement asked for, both loads are the same."""
    pitch = major / 6
    needed = strip_load(major, pitch, 1.0, strength, 300).engagement_needed
    even = strip_load(major, pitch, needed, strength, 300)

    assert even.nut == pytest.approx(even.breaks, rel=1e-9)


@given(st.floats(100, 10000), st.floats(2, 40), st.floats(5, 90))
def test_work_lifts_before_it_comes_out(force: float, grip: float, dia: float) -> None:
    """The onset never exceeds the limit."""
    onset, limit = tilt_moment(force, grip, dia, 0.12)

    assert onset <= limit
