"""How what turns changes with its speed: energy, permissible eccentricity, stress of each disc."""

from __future__ import annotations

from dataclasses import dataclass

from tommybar.checks.checked import PRACTICE
from tommybar.checks.rotor import DISC, GRADE, GUARD, SPEED_SHARE, STRESS_SHARE, flat_disc
from tommybar.checks.turning import Turning, turning_parts
from tommybar.design.model import Purpose, SizedDesign
from tommybar.facts.materials import material
from tommybar.mechanics.rotors import (
    bursting_speed,
    disc_stress,
    rotation_energy,
    unbalance_of_runout,
)
from tommybar.mechanics.unbalance import permissible_eccentricity
from tommybar.shapes.features import TurnedShape

POINTS = 49
RANGE = 2.0  # curves go to so many times the design's speed


@dataclass(frozen=True)
class Level:
    """A figure that the curve is held against, and the speed at which the curve reaches it [rev/min]."""

    words: str
    value: float
    reached_at: float
    source: str


@dataclass(frozen=True)
class Curve:
    """A figure against the speed [rev/min], and the design's own point on it."""

    what: str
    of: str  # names of the parts
    unit: str  # of the figure: J, um, MPa
    points: tuple[tuple[float, float], ...]
    at: tuple[float, float]
    levels: tuple[Level, ...]
    formula: str
    inputs: tuple[str, ...]
    source: str


def speed_curves(design: SizedDesign) -> tuple[Curve, ...]:
    """Curves of every purpose that turns something; none for a design that does not turn."""
    found: list[Curve] = []
    for purpose in design.purposes:
        turning = turning_parts(design, purpose)
        if not turning or purpose.speed <= 0:
            continue
        found.append(_energy(turning, purpose))
        if purpose.balance:
            found.append(_eccentricity(turning, purpose, purpose.balance))
        for one in dict.fromkeys(turning):
            curve = _stress(one, purpose)
            if curve is not None:
                found.append(curve)
    return tuple(dict.fromkeys(found))


def _speeds(purpose: Purpose, first: int = 0) -> tuple[float, ...]:
    """Speeds from nought, or from the step ``first``, to twice the design's; one of them is the design's."""
    return tuple(purpose.speed * RANGE * step / (POINTS - 1) for step in range(first, POINTS))


def _energy(turning: tuple[Turning, ...], purpose: Purpose) -> Curve:
    inertia = sum(one.inertia for one in turning)
    points = tuple((speed, rotation_energy(inertia, speed)) for speed in _speeds(purpose))
    now = rotation_energy(inertia, purpose.speed)
    guard = Level("from here a guard is a must", GUARD, purpose.speed * (GUARD / now) ** 0.5, PRACTICE)
    return Curve(
        "energy of turning",
        _names(turning),
        "J",
        points,
        (purpose.speed, now),
        (guard,),
        "E = I ω² / 2, ω = π n / 30",
        (f"I = {inertia / 1000:.4g} kg mm²", f"n = {purpose.speed:g} rev/min"),
        "first principles",
    )


def _eccentricity(turning: tuple[Turning, ...], purpose: Purpose, grade: float) -> Curve:
    points = tuple((speed, permissible_eccentricity(grade, speed)) for speed in _speeds(purpose, POINTS // 8))
    levels = []
    for one in {turn.part.name: turn for turn in turning}.values():
        for need in () if one.radius else one.part.needs:
            off = 1000 * unbalance_of_runout(1.0, need.within)
            words = f"half the run-out of {one.part.name} {need.of}".replace("_", " ")
            # e = 1000 G / omega falls as 1/n: it comes down to this figure at
            reached = purpose.speed * permissible_eccentricity(grade, purpose.speed) / off
            levels.append(Level(words, off, reached, "run-out that the design allows"))
    return Curve(
        "permissible eccentricity",
        _names(turning),
        "um",
        points,
        (purpose.speed, permissible_eccentricity(grade, purpose.speed)),
        tuple(levels),
        "e = 1000 G / ω, ω = π n / 30",
        (f"G = {grade:g} mm/s", f"n = {purpose.speed:g} rev/min"),
        GRADE,
    )


def _stress(one: Turning, purpose: Purpose) -> Curve | None:
    """Hoop stress of a disc at its bore or centre; None for what is no disc."""
    shape = one.part.shape
    if not isinstance(shape, TurnedShape) or one.radius:
        return None
    bore, radius = flat_disc(shape)
    if not bore and 2 * radius < shape.length.value:
        return None
    stuff = material(one.part.material)

    def hoop(speed: float) -> float:
        return disc_stress(bore, bore, radius, speed, stuff.density, stuff.poisson, stuff.modulus).hoop

    allowed = STRESS_SHARE * stuff.yield_strength
    bursts = bursting_speed(bore, radius, stuff.density, stuff.tensile_strength)
    now = hoop(purpose.speed)
    levels = (
        Level("half of the yield strength", allowed, purpose.speed * (allowed / now) ** 0.5, PRACTICE),
        Level(
            "half of the bursting speed",
            hoop(SPEED_SHARE * bursts),
            SPEED_SHARE * bursts,
            "average hoop stress criterion (from memory)",
        ),
    )
    return Curve(
        f"stress {'at the bore' if bore else 'at the centre'} from turning",
        one.part.name,
        "MPa",
        tuple((speed, hoop(speed)) for speed in _speeds(purpose)),
        (purpose.speed, now),
        levels,
        "σ = ρ ω² ((3+ν)/4 b² + (1−ν)/4 a²)" if bore else "σ = (3+ν)/8 ρ ω² b²",
        (
            f"b = {radius:g} mm",
            *((f"a = {bore:g} mm",) if bore else ()),
            f"ρ = {stuff.density:g} g/cm³",
            f"ν = {stuff.poisson:g}",
            f"n = {purpose.speed:g} rev/min",
        ),
        DISC,
    )


def _names(turning: tuple[Turning, ...]) -> str:
    return ", ".join(dict.fromkeys(one.part.name.replace("_", " ") for one in turning))
