"""Adhesives, solders and what a joint holds."""

from __future__ import annotations

import math

import pytest

from tommybar.facts.adhesives import (
    adhesive,
    adhesive_names,
    axial_holding_force,
    bonded_disc_torque,
    holding_torque,
    joint_strength,
    solder,
    solder_names,
)
from tommybar.facts.adhesives.topic import answer
from tommybar.refusals import Refusal


def test_every_class_has_rising_ranges_a_caution_and_a_source() -> None:
    """Low is never above high; usual gaps lie within the largest; service lies below release."""
    for name in adhesive_names():
        one = adhesive(name)
        for low, high in (
            one.gap,
            one.largest,
            one.shear,
            one.service,
            one.glass,
            one.release,
            one.fixture,
            one.cure,
        ):
            assert low <= high
        assert one.gap[1] <= one.largest[1]
        assert one.service[1] <= one.release[1]
        assert one.cautions
        assert "seen: service range" in one.source


def test_solders_rise_from_soft_to_hard() -> None:
    """Solidus is below liquidus, and the order of melting is the order in which joints are made."""
    for name in solder_names():
        one = solder(name)
        assert one.melting[0] <= one.melting[1]
        assert one.service < one.melting[0]
    assert (
        solder("soft solder").melting[1] < solder("silver solder").melting[0] < solder("spelter").melting[0]
    )


def test_a_second_joint_needs_a_lower_solder() -> None:
    """After hard solder only solders below its solidus are offered."""
    offered = solder_names(below=solder("silver solder").melting[0])
    assert "tin-lead 60/40" in offered
    assert "silver solder 40" not in offered


def test_wide_gaps_leave_epoxy() -> None:
    """0.8 mm is too wide for all but epoxy; 0.02 mm suits every class."""
    assert adhesive_names(0.8) == ("epoxy",)
    assert adhesive_names(0.02) == adhesive_names()


@pytest.mark.parametrize(
    ("first", "second", "after", "psi"),
    [
        ("steel", "steel", "10 min", 1920),
        ("steel", "steel", "48 h", 3300),
        ("nylon", "aluminium", "48 h", 950),
    ],
)
def test_tested_joints(first: str, second: str, after: str, psi: float) -> None:
    """Table 10.16 of the handbook, in psi."""
    assert joint_strength(first, second, after) / 0.00689476 == pytest.approx(psi, rel=1e-5)


def test_holding_of_a_sleeve_by_summing_small_strips() -> None:
    """A second route: the torque of 3600 strips of the film, added up."""
    diameter, length, strength = 8.0, 10.0, 20.0
    strip = math.pi * diameter / 3600 * length * strength
    assert holding_torque(diameter, length, strength) == pytest.approx(sum([strip * diameter / 2000] * 3600))
    assert axial_holding_force(diameter, length, strength) == pytest.approx(strip * 3600)


def test_holding_of_a_disc_by_summing_rings() -> None:
    """A second route: shear rising straight to the rim, rings added up, and the error falls as rings are halved."""
    diameter, strength = 30.0, 5.0

    def torque(rings: int) -> float:
        radius = diameter / 2
        step = radius / rings
        middles = [(index + 0.5) * step for index in range(rings)]
        return sum(strength * r / radius * 2 * math.pi * r * step * r for r in middles) / 1000

    exact = bonded_disc_torque(diameter, strength)
    coarse, fine = (abs(torque(rings) - exact) for rings in (20, 40))
    assert fine == pytest.approx(coarse / 4, rel=0.01)
    assert torque(400) == pytest.approx(exact, rel=1e-5)


def test_the_look_up_gives_ranges_and_holding() -> None:
    """An adhesive with a joint, and a solder."""
    found = answer(("retaining", "compound"), {"diameter": "10", "length": "12"}).data
    assert found["gap_mm"] == [0.02, 0.08]
    assert found["holding_force_n"] == pytest.approx(math.pi * 10 * 12 * 17)
    assert answer(("silver solder",), {}).data["melting_c"] == [630, 660]


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: adhesive("cyanoacrilate"), r'Did you mean "cyanoacrylate"'),
        (lambda: solder("silver soldr"), r'Did you mean "silver solder"'),
        (lambda: joint_strength("steel", "glass"), 'The pair is "steel-glass"'),
        (lambda: joint_strength("steel", "steel", "1 h"), 'The time is "1 h"'),
        (lambda: holding_torque(0.0, 10.0, 20.0), "The diameter is 0; it must be above 0"),
        (lambda: answer(("chewing gum",), {}), 'The adhesive or solder is "chewing gum"'),
    ],
)
def test_what_is_not_known_is_refused(call, words: str) -> None:  # type: ignore[no-untyped-def]
    """Unknown names offer the nearest, sizes say their bound."""
    with pytest.raises(Refusal, match=words):
        call()
