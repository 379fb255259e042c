"""Rotors: figures by hand, stress and bursting bounds, the grade, what keeps a wheel on its shaft."""

from __future__ import annotations

import math

import pytest

from tommybar.design.model import FitRelation, Purpose, RunoutNeed
from tommybar.facts.materials import material
from tommybar.shapes.features import Bore, CircleHoles, CrossHole, Cylinder, Dim, TurnedShape

from .asking import disc, figures_of, finds, found_in, part, passes, stud


def turning(
    *names: str, at: float = 240.0, grade: float | None = 6.3, by_hand: bool = False
) -> tuple[Purpose, ...]:
    return (Purpose(names, at, grade, by_hand),)


def test_mass_inertia_energy_and_rim_speed_of_a_disc() -> None:
    """m r2/2, I w2/2 and pi d n by hand."""
    figures = figures_of(part("wheel", disc(100.0, 20.0)), purposes=turning("wheel", at=600.0))
    m = material("mild steel").density * 1e-3 * math.pi * 50**2 * 20
    omega = 600 * math.pi / 30

    assert figures["mass", "wheel"].value == pytest.approx(m)
    assert figures["moment of inertia", "wheel"].value == pytest.approx(m * 50**2 / 2 / 1000)
    assert figures["energy of turning", "wheel"].value == pytest.approx(m * 1250 * 1e-9 * omega**2 / 2)
    assert figures["rim speed", "wheel"].value == pytest.approx(math.pi * 0.1 * 10)
    assert figures["permissible eccentricity", "wheel"].value == pytest.approx(6300 / omega)


def test_a_handle_turns_about_the_crank() -> None:
    """Screwed into a hole on a circle of 32 it adds m 16^2; it and its hole pull off the axis."""
    crank = disc(44.0, 8.0, circle_holes=(CircleHoles("pin", Dim(4.0), 1, 32.0, 0.0, 0.0, 8.0, "M4"),))
    handle = stud(12.0, "M4", 8.0)
    figures = figures_of(part("crank", crank), part("handle", handle), purposes=turning("crank", "handle"))
    own = figures["mass", "handle"].value

    assert figures["moment of inertia", "handle"].value > own * 16**2 / 1000
    assert "16 mm off" in figures["moment of inertia", "handle"].how
    found = finds(604, part("crank", crank), part("handle", handle), purposes=turning("crank", "handle"))
    assert found.severity == "caution"
    by_hand = turning("crank", "handle", by_hand=True)
    assert finds(604, part("crank", crank), part("handle", handle), purposes=by_hand).severity == "note"


def test_the_guard_is_always_spoken_of() -> None:
    """A note below 10 J, a caution from there on."""
    assert finds(601, part("wheel", disc()), purposes=turning("wheel")).severity == "note"
    assert (
        finds(601, part("wheel", disc(200.0, 30.0)), purposes=turning("wheel", at=1500.0)).severity
        == "caution"
    )


def test_stress_and_bursting_speed_stop() -> None:
    """Far above what the metal bears."""
    wheel = part("wheel", disc(200.0, 10.0, 20.0))

    assert passes(part("wheel", disc(60.0, 10.0, 10.0)), purposes=turning("wheel"))
    assert finds(602, wheel, purposes=turning("wheel", at=30000.0)).severity == "stop"
    assert "no design of a guard" in finds(603, wheel, purposes=turning("wheel", at=30000.0)).remedy


def test_a_run_out_that_the_grade_does_not_allow() -> None:
    """0.04 TIR is 20 um off the axis: G 6.3 allows 250 um at 240 rev/min and 10 um at 6000."""
    wheel = part("wheel", disc(60.0, 10.0, 10.0), needs=(RunoutNeed("rim", "bore", 0.04),))

    assert passes(wheel, purposes=turning("wheel"))
    assert finds(605, wheel, purposes=turning("wheel", at=6000.0)).figure == "20 um"


def test_a_wheel_must_be_kept_on_its_shaft() -> None:
    """Loose fit: 606; a grub screw into the bore or a press joint: nothing."""
    shaft = part("shaft", TurnedShape(Dim(50.0), (Cylinder("seat", Dim(10.0), 0.0, 50.0),)))
    fit = FitRelation("wheel.bore", "shaft.seat", "H7/h7")
    both = turning("wheel", "shaft")
    grub = CrossHole("grub", Dim(4.0), 10.0, thread="M4", into="bore")
    plain, held = disc(60.0, 20.0, 10.0), disc(60.0, 20.0, 10.0, cross_holes=(grub,))

    assert finds(606, part("wheel", plain), shaft, fits=(fit,), purposes=both).feature == "bore"
    assert passes(part("wheel", held), shaft, fits=(fit,), purposes=both)
    pressed = FitRelation("wheel.bore", "shaft.seat", "H7/p6", "press")
    assert passes(part("wheel", plain), shaft, fits=(pressed,), purposes=both)


def test_a_screwed_crank_wants_a_lock_nut() -> None:
    """Without the nut 607, with it nothing."""
    crank = part("crank", disc(44.0, 10.0, bores=(Bore("bore", Dim(6.0), "A", 10.0, True, thread="M6"),)))
    shaft = part("shaft", stud(20.0, "M6", 16.0))
    nut = part("nut", None, "", bought="ISO 4032 M6")

    assert finds(607, crank, shaft, purposes=turning("crank", "shaft")).part == "crank"
    assert passes(crank, shaft, nut, purposes=turning("crank", "shaft"))


def test_nothing_turns_nothing_is_said() -> None:
    """Without a purpose there is no finding on rotors."""
    assert found_in(part("wheel", disc())) == ()
