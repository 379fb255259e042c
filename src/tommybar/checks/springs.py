"""Wound compression springs: rate, solid length, and the stress in the wire where it is pressed most."""

from __future__ import annotations

import math

from tommybar.checks.checked import Checked, at_least
from tommybar.checks.figures import Figure
from tommybar.design.model import Part, SizedDesign
from tommybar.facts.materials import material
from tommybar.findings import Finding
from tommybar.shapes.features import SpringShape
from tommybar.shop.model import Shop

SOURCE = "helical springs, Wahl's factor (any text on machine elements; formula from memory)"
SHEAR_SHARE = 0.45  # of the tensile strength, in the wire of a spring at rest (common practice, no source)
AIR = 0.1  # of the wire, left between turns where it is pressed most (common practice, no source)


def look(design: SizedDesign, shop: Shop) -> Checked:
    """Every compression spring, at the stroke or the force that a duty asks of it."""
    found: list[Finding | None] = []
    figures: list[Figure] = []
    for part in design.parts:
        if isinstance(part.shape, SpringShape) and part.shape.kind == "compression":
            pressed = _pressed(design, part, part.shape)
            figures += _figures(part, part.shape, pressed)
            found += _findings(part, part.shape, pressed)
    return Checked(tuple(one for one in found if one is not None), tuple(figures))


def rate(spring: SpringShape, shear_modulus: float) -> float:
    """Force for each millimetre [N/mm]: G d^4 / (8 D^3 n)."""
    return shear_modulus * spring.wire**4 / (8 * _mean(spring) ** 3 * spring.active)


def solid(spring: SpringShape) -> float:
    """Length with all turns closed [mm]; open ends add the wire once more."""
    return (spring.total + (1 if spring.ends == "open" else 0)) * spring.wire


def shear(spring: SpringShape, force: float) -> tuple[float, float]:
    """Stress in the wire without and with the factor of its curvature [MPa]."""
    c = _mean(spring) / spring.wire
    plain = 8 * force * _mean(spring) / (math.pi * spring.wire**3)
    return plain, plain * ((4 * c - 1) / (4 * c - 4) + 0.615 / c)


def _mean(spring: SpringShape) -> float:
    return spring.outside.value - spring.wire


def _modulus(part: Part) -> float:
    stuff = material(part.material)
    return stuff.modulus / (2 * (1 + stuff.poisson))


def _pressed(design: SizedDesign, part: Part, spring: SpringShape) -> float | None:
    """How far it is pressed from its free length by the duties on it [mm]; None when no duty says it."""
    found = []
    for duty in design.duties:
        most = duty.most if duty.most is not None else duty.figure
        if part.name in (one.split(".")[0] for one in duty.on) and most is not None:
            if duty.kind == "stroke":
                found.append(most)
            elif duty.kind == "force":
                found.append(most / rate(spring, _modulus(part)))
    return max(found, default=None)


def _figures(part: Part, spring: SpringShape, pressed: float | None) -> list[Figure]:
    stiff, closed = rate(spring, _modulus(part)), solid(spring)
    how = f"G = {_modulus(part):.0f} MPa, d = {spring.wire:g} mm, D = {_mean(spring):g} mm, n = {spring.active:g}"
    found = [
        Figure("rate", part.name, stiff, "N/mm", 2, f"G d^4 / (8 D^3 n), {how}", SOURCE),
        Figure(
            "solid length",
            part.name,
            closed,
            "mm",
            1,
            f"{spring.total:g} turns of {spring.wire:g} mm",
            SOURCE,
        ),
    ]
    if pressed is not None:
        force = stiff * pressed
        found.append(
            Figure("force", part.name, force, "N", 1, f"{stiff:.2f} N/mm x {pressed:.3g} mm", SOURCE)
        )
        found.append(
            Figure(
                "stress in the wire",
                part.name,
                shear(spring, force)[1],
                "MPa",
                0,
                "8 F D K / (pi d^3)",
                SOURCE,
            )
        )
    return found


def _findings(part: Part, spring: SpringShape, pressed: float | None) -> list[Finding | None]:
    place = {"part": part.name, "source": SOURCE}
    closed = solid(spring)
    if pressed is None:
        if spring.free > closed:
            return []
        pressed = 0.0
    left = spring.free - pressed - closed
    if left < 0:
        words = f"It is pressed {pressed:.3g} mm from {spring.free:g} mm free, and closes solid at {closed:.2f} mm."
        return [
            Finding(
                660,
                "stop",
                words,
                part.name,
                figure=f"{spring.free - pressed:.2f} mm",
                bound=f"{closed:.2f} mm",
                remedy="Fewer turns, a longer free length, or a shorter stroke.",
                source=SOURCE,
            )
        ]
    air = AIR * spring.wire * spring.active
    words = "The turns nearly close where it is pressed most; left to solid"
    found = [at_least(661, words, left, air, remedy="Fewer turns or a shorter stroke.", **place)]
    plain, curved = shear(spring, rate(spring, _modulus(part)) * pressed)
    allowed = SHEAR_SHARE * material(part.material).tensile_strength
    if curved > allowed:
        found.append(
            Finding(
                662,
                "caution",
                f"The wire is stressed to {plain:.0f} MPa, {curved:.0f} MPa with its curvature, pressed {pressed:.3g} mm.",
                part.name,
                figure=f"{curved:.0f} MPa",
                bound=f"{allowed:.0f} MPa, {SHEAR_SHARE:g} of the tensile strength",
                remedy="More active turns or a shorter stroke; thicker wire in the same diameter makes it worse.",
                source=SOURCE,
            )
        )
    return found
