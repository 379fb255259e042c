"""A top that stands on its point: the speed above which it sleeps."""

from __future__ import annotations

import math

from tommybar.checks.checked import Checked
from tommybar.checks.figures import Figure
from tommybar.design.model import Part, Purpose, SizedDesign
from tommybar.facts.materials import material
from tommybar.findings import Finding
from tommybar.shapes.features import Cone, TurnedShape
from tommybar.shapes.mass import mass_properties
from tommybar.shop.model import Shop

GRAVITY = 9.80665  # [m/s2]
SOURCE = "steady upright spin of a symmetric top: I_a^2 w^2 > 4 m g h I_t (any text on rigid bodies)"


def look(design: SizedDesign, shop: Shop) -> Checked:
    """Every part that turns by itself, is held by no other and has a pointed end."""
    found: list[Finding] = []
    figures: list[Figure] = []
    held = {name.split(".")[0] for fit in design.fits for name in (fit.hole, fit.shaft)}
    held |= {name.split(".")[0] for one in design.contacts for name in (one.first, one.second)}
    for purpose in design.purposes:
        if len(purpose.turns) == 1 and purpose.turns[0] not in held:
            part = design.part(purpose.turns[0])
            if isinstance(part.shape, TurnedShape) and _tip(part.shape) is not None:
                _top(part, part.shape, purpose, found, figures)
    return Checked(tuple(found), tuple(figures))


def _tip(shape: TurnedShape) -> float | None:
    """Where its point is along the axis [mm]."""
    first, last = shape.outside[0], shape.outside[-1]
    if isinstance(first, Cone) and first.start_dia < first.end_dia / 4:
        return first.start
    if isinstance(last, Cone) and last.end_dia < last.start_dia / 4:
        return last.end
    return None


def _top(
    part: Part, shape: TurnedShape, purpose: Purpose, found: list[Finding], figures: list[Figure]
) -> None:
    tip = _tip(shape)
    assert tip is not None
    weight = mass_properties(shape, material(part.material).density)
    high = abs(weight.centre - tip)
    at_tip = weight.inertia_across + weight.mass * high**2
    # g mm2 and mm: sqrt(g mm/s2 mm g mm2) / (g mm2) is 1/s
    sleeps = 2 * math.sqrt(weight.mass * GRAVITY * 1000 * high * at_tip) / weight.inertia_axis
    speed = sleeps * 30 / math.pi
    how = (
        f"m = {weight.mass:.1f} g, h = {high:.2f} mm above the tip, about the axis {weight.inertia_axis / 1000:.2f}, "
        f"about the tip {at_tip / 1000:.2f} kg mm2"
    )
    figures.append(Figure("sleeps above", part.name, speed, "rev/min", 0, how, SOURCE))
    ratio = weight.inertia_axis / weight.inertia_across
    figures.append(
        Figure("inertia about the axis over that across it", part.name, ratio, "", 2, "I_a / I_cg", SOURCE)
    )
    if purpose.speed < speed:
        found.append(
            Finding(
                672,
                "caution",
                f"{part.name.replace('_', ' ')} sleeps above {speed:.0f} rev/min; it is spun at {purpose.speed:g}.",
                part.name,
                figure=f"{purpose.speed:g} rev/min",
                bound=f"{speed:.0f} rev/min",
                remedy="Make the disc wider, or lower it towards the point.",
                source=SOURCE,
            )
        )
