"""Turning parts: mass, inertia, energy, rim speed, stress, bursting speed, balance."""

from __future__ import annotations

import math

from tommybar.checks.checked import PRACTICE, Checked
from tommybar.checks.figures import Figure
from tommybar.checks.turning import Turning, turning_parts
from tommybar.design.model import Part, Purpose, SizedDesign
from tommybar.facts.materials import material
from tommybar.findings import Finding
from tommybar.mechanics.rotors import (
    bursting_speed,
    disc_stress,
    rim_speed,
    rotation_energy,
    unbalance_of_runout,
)
from tommybar.mechanics.unbalance import permissible_eccentricity
from tommybar.shapes.features import Cylinder, TurnedShape
from tommybar.shop.model import Shop

STRESS_SHARE = 0.5  # of the yield strength that a rotor may reach
SPEED_SHARE = 0.5  # of the bursting speed
GUARD = 10.0  # energy from which the guard is a caution and not a note [J]
DISC = "flat disc with a bore, Mechanics of Materials 2 ch. 4 (formulas seen)"
GRADE = "ISO 21940-11:2016, definition of the grade (from memory)"


def look(design: SizedDesign, shop: Shop) -> Checked:
    """Every purpose that turns something."""
    findings: list[Finding] = []
    figures: list[Figure] = []
    for purpose in design.purposes:
        turning = turning_parts(design, purpose)
        if not turning or purpose.speed <= 0:
            continue
        figures += _masses(turning)
        for one in turning:
            found, shown = _strength(one, purpose)
            findings += found
            figures += shown
        findings += _guard(turning, purpose, figures)
        if purpose.balance:
            findings += _balance(turning, purpose, figures)
    return Checked(tuple(findings), tuple(figures))


def _masses(turning: tuple[Turning, ...]) -> list[Figure]:
    found = []
    for one in turning:
        name, weight = one.part.name, one.weight
        found.append(
            Figure(
                "mass", name, weight.mass, "g", 1, f"{weight.volume:.0f} mm3 x density", "first principles"
            )
        )
        how = "half-section turned about its axis, holes taken off"
        if one.radius:
            how += f", {one.radius:g} mm off the axis it turns about"
        found.append(
            Figure("moment of inertia", name, one.inertia / 1000, "kg mm2", 2, how, "first principles")
        )
    return found


def flat_disc(shape: TurnedShape) -> tuple[float, float]:
    """Radii of the bore and of the rim of the flat disc that a part is taken for; 0 without a through bore [mm]."""
    radius = (
        max(f.dia.value if isinstance(f, Cylinder) else max(f.start_dia, f.end_dia) for f in shape.outside)
        / 2
    )
    return max((b.dia.value / 2 for b in shape.bores if b.through), default=0.0), radius


def _strength(one: Turning, purpose: Purpose) -> tuple[list[Finding], list[Figure]]:
    """Rim speed and stress of a disc-like part, taken as a flat disc of its largest radius."""
    shape, stuff = one.part.shape, material(one.part.material)
    if not isinstance(shape, TurnedShape) or one.radius:
        return [], []
    bore, radius = flat_disc(shape)
    speed, name = purpose.speed, one.part.name
    stress = disc_stress(bore, bore, radius, speed, stuff.density, stuff.poisson, stuff.modulus)
    bursts = bursting_speed(bore, radius, stuff.density, stuff.tensile_strength)
    at = "at the bore" if bore else "at the centre"
    figures = [
        Figure(
            "rim speed",
            name,
            rim_speed(2 * radius, speed),
            "m/s",
            2,
            f"pi d n at {speed:g} rev/min",
            "first principles",
        ),
        Figure(
            f"stress {at} from turning",
            name,
            stress.hoop,
            "MPa",
            4,
            f"flat disc {2 * radius:g} mm, bore {2 * bore:g} mm, {speed:g} rev/min",
            DISC,
        ),
    ]
    if not bore and 2 * radius < shape.length.value:
        figures = []  # a shaft: what turning does to it is not worth a line
    findings = []
    allowed = STRESS_SHARE * stuff.yield_strength
    if stress.hoop > allowed:
        findings.append(
            Finding(
                602,
                "stop",
                f"At {speed:g} rev/min {name} is stressed to {stress.hoop:.0f} MPa {at}; half of the yield strength "
                f"of {one.part.material} is {allowed:.0f} MPa.",
                name,
                figure=f"{stress.hoop:.0f} MPa",
                bound=f"{allowed:.0f} MPa",
                remedy="Turn slower, make it smaller, or take a stronger material.",
                source=f"{DISC}; half of yield is {PRACTICE}",
            )
        )
    if speed > SPEED_SHARE * bursts:
        findings.append(
            Finding(
                603,
                "stop",
                f"{name} would burst near {bursts:.0f} rev/min; it is to turn at {speed:g}, more than half of that.",
                name,
                figure=f"{speed:g} rev/min",
                bound=f"{SPEED_SHARE * bursts:.0f} rev/min",
                remedy="Turn slower or make it smaller. This is no design of a guard; local rules and licensed "
                "practice decide.",
                source="average hoop stress criterion (from memory)",
            )
        )
    return findings, figures


def _guard(turning: tuple[Turning, ...], purpose: Purpose, figures: list[Figure]) -> list[Finding]:
    energy = sum(rotation_energy(one.inertia, purpose.speed) for one in turning)
    names = ", ".join(one.part.name for one in turning)
    figures.append(
        Figure(
            "energy of turning",
            names,
            energy,
            "J",
            3,
            f"I omega^2 / 2 at {purpose.speed:g} rev/min",
            "first principles",
        )
    )
    return [
        Finding(
            601,
            "caution" if energy >= GUARD else "note",
            f"Turning at {purpose.speed:g} rev/min {names} hold {energy:.2g} J (10 J is 1 kg dropped 1 m). No energy "
            "is claimed to be safe without a guard: eye protection, nobody in the plane of the wheel at the first spin.",
            turning[0].part.name,
            figure=f"{energy:.2g} J",
            bound=f"{GUARD:g} J: from here a guard is a must",
            remedy="Guard or distance, and bring it up to speed in steps of 10, 50 and 100 %.",
            source=PRACTICE,
        )
    ]


def _balance(turning: tuple[Turning, ...], purpose: Purpose, figures: list[Figure]) -> list[Finding]:
    """What may lie off the axis, against holes, off-centre parts and the run-out that is allowed."""
    assert purpose.balance is not None
    allowed_um = permissible_eccentricity(purpose.balance, purpose.speed)
    mass = sum(one.weight.mass for one in turning)
    allowed = allowed_um * mass / 1000
    names = ", ".join(one.part.name for one in turning)
    how = f"1000 G / omega, G {purpose.balance:g} at {purpose.speed:g} rev/min"
    figures.append(Figure("permissible eccentricity", names, allowed_um, "um", 1, how, GRADE))
    figures.append(Figure("permissible unbalance", names, allowed, "g mm", 1, f"times {mass:.0f} g", GRADE))
    findings = []
    for one in turning:
        part = one.part
        if not one.radius:
            findings += _runout_against_grade(part, one.weight.mass, allowed_um, purpose)
    drawn = sum(one.weight.unbalance + one.weight.mass * one.radius for one in turning)
    if drawn > allowed:
        force = drawn * 1e-6 * (purpose.speed * math.pi / 30) ** 2
        worst = max(turning, key=lambda one: one.weight.unbalance + one.weight.mass * one.radius)
        findings.append(
            Finding(
                604,
                "note" if purpose.hand_driven else "caution",
                f"As drawn, {worst.part.name} puts up to {drawn:.0f} g mm off the axis; G {purpose.balance:g} allows "
                f"{allowed:.0f} g mm for all that turns. At {purpose.speed:g} rev/min that pulls with {force:.2f} N.",
                worst.part.name,
                figure=f"{drawn:.0f} g mm",
                bound=f"{allowed:.0f} g mm",
                remedy="Put as much on the other side of the axis, or take the grade for the wheel alone.",
                source=GRADE,
            )
        )
    return findings


def _runout_against_grade(part: Part, mass: float, allowed_um: float, purpose: Purpose) -> list[Finding]:
    found = []
    for need in part.needs:
        off = 1000 * unbalance_of_runout(1.0, need.within)  # half of the run-out [um]
        if off > allowed_um:
            found.append(
                Finding(
                    605,
                    "caution",
                    f"{need.of} may run out {need.within:g} mm: {off:.0f} um off the axis, "
                    f"{unbalance_of_runout(mass, need.within):.1f} g mm; G {purpose.balance:g} at "
                    f"{purpose.speed:g} rev/min allows {allowed_um:.0f} um.",
                    part.name,
                    need.of,
                    figure=f"{off:.0f} um",
                    bound=f"{allowed_um:.0f} um",
                    remedy="Ask for less run-out, or balance the part after it is made.",
                    source=GRADE,
                )
            )
    return found
