"""A load on a land: bending where it is held, at a thread's root too, and the pressure in its bearing."""

from __future__ import annotations

import math

from tommybar.checks.checked import PRACTICE, Checked
from tommybar.checks.figures import Figure
from tommybar.design.model import Part, SizedDesign
from tommybar.facts.materials import material
from tommybar.facts.threads import thread
from tommybar.findings import Finding
from tommybar.shapes.features import Cylinder, TurnedShape
from tommybar.shop.model import Shop

BEAM = "stress of a round beam, 32 F a / (pi d^3) (first principles)"
YIELD_SHARE = 0.5  # of the yield strength in bending (common practice, no source)
MOST_PRESSURE = 5.0  # of a slow, oiled plain bearing (common practice, no source) [MPa]


def look(design: SizedDesign, shop: Shop) -> Checked:
    """Every duty that puts a load or a force on a land of a turned part."""
    found: list[Finding] = []
    figures: list[Figure] = []
    for duty in design.duties:
        force = max(duty.figure or 0.0, duty.most or 0.0)
        if duty.kind not in ("load", "force") or force <= 0:
            continue
        for name in duty.on:
            part = next((one for one in design.parts if one.name == name.split(".")[0]), None)
            shape = part.shape if part is not None else None
            lands = shape.outside if isinstance(shape, TurnedShape) else ()
            land = next((one for one in lands if one.name == name.partition(".")[2]), None)
            if part is not None and isinstance(shape, TurnedShape) and isinstance(land, Cylinder):
                _bends(design, part, shape, land, force, found, figures)
                _presses(design, part, land, force, found, figures)
            elif duty.kind == "load":
                found.append(_not_judged(name, force))
    return Checked(tuple(found), tuple(figures))


def _not_judged(name: str, force: float) -> Finding:
    """What carries a load and is no cylinder of a turned part is told, not passed over."""
    part, _, feature = name.partition(".")
    return Finding(
        695,
        "caution",
        f"{name} is to carry {force:g} N; whether it does is not worked out.",
        part,
        feature,
        figure=f"{force:g} N",
        bound="loads are judged on a cylinder of a turned part",
        remedy="Name the land that carries it, part.land; or work it out, or try it with more than the load, "
        "nothing of yours below it.",
        source="what the program works out",
    )


def _held(design: SizedDesign, part: Part, shape: TurnedShape, loaded: Cylinder) -> list[Cylinder]:
    """The lands by which it is held: screwed or pressed in; the thickest one when no relation says any."""
    names = {one.outside for one in design.threads}
    names |= {one.shaft for one in design.fits if one.joint} | {one.shaft for one in design.presses}
    others = [one for one in shape.outside if isinstance(one, Cylinder) and one is not loaded]
    held = [one for one in others if f"{part.name}.{one.name}" in names or one.thread]
    thick = [one for one in others if one.dia.value > loaded.dia.value]
    return held or sorted(thick, key=lambda one: -one.dia.value)[:1]


def _thin(shape: TurnedShape, land: Cylinder) -> float:
    """The thinnest a land is: a thread at its root, a groove at its floor [mm]."""
    dia = thread(land.thread).core if land.thread else land.dia.value
    floors = [one.floor for one in shape.grooves if one.end > land.start and one.start < land.end]
    return min([dia, *floors])


def _bends(
    design: SizedDesign,
    part: Part,
    shape: TurnedShape,
    land: Cylinder,
    force: float,
    found: list[Finding],
    figures: list[Figure],
) -> None:
    middle = (land.start + land.end) / 2
    worst: tuple[float, float, float, str] | None = None
    for hold in _held(design, part, shape, land):
        up = hold.start > middle
        root = hold.start if up else hold.end
        for one in shape.outside:
            between = one.start < root and one.end > middle if up else one.end > root and one.start < middle
            if not isinstance(one, Cylinder) or not (between or one is hold):
                continue
            end = (min(one.end, root) if up else max(one.start, root)) if one is not hold else root
            arm, dia = abs(end - middle), _thin(shape, one)
            stress = 32 * force * arm / (math.pi * dia**3)
            if worst is None or stress > worst[0]:
                worst = stress, arm, dia, one.name
    if worst is None:
        return
    stress, arm, dia, where = worst
    how = f"F = {force:g} N at the middle of {land.name}, a = {arm:.3g} mm, d = {dia:.3g} mm at {where}"
    figures.append(Figure("bending stress", part.name, stress, "MPa", 1, how, BEAM))
    allowed = YIELD_SHARE * material(part.material).yield_strength
    if stress > allowed:
        found.append(
            Finding(
                665,
                "caution",
                f"{force:g} N on {land.name} bends {where} with {stress:.0f} MPa, {arm:.3g} mm away from it.",
                part.name,
                where,
                figure=f"{stress:.0f} MPa",
                bound=f"{allowed:.0f} MPa, {YIELD_SHARE:g} of the yield strength",
                remedy="Make it thicker there, shorten the arm, or put a shoulder against the face.",
                source=BEAM,
            )
        )


def _presses(
    design: SizedDesign, part: Part, land: Cylinder, force: float, found: list[Finding], figures: list[Figure]
) -> None:
    for fit in design.fits:
        if fit.shaft != f"{part.name}.{land.name}" or fit.joint:
            continue
        hole = design.part(fit.hole.split(".")[0]).shape
        long = hole.length.value if isinstance(hole, TurnedShape) else land.end - land.start
        long = fit.engaged or min(long, land.end - land.start)
        pressure = force / (land.dia.value * long)
        how = f"F / (d L) = {force:g} / ({land.dia.value:g} x {long:g})"
        figures.append(Figure("bearing pressure", part.name, pressure, "MPa", 2, how, PRACTICE))
        if pressure > MOST_PRESSURE:
            found.append(
                Finding(
                    666,
                    "caution",
                    f"{force:g} N press {land.name} into {fit.hole} with {pressure:.1f} MPa.",
                    part.name,
                    land.name,
                    figure=f"{pressure:.1f} MPa",
                    bound=f"{MOST_PRESSURE:g} MPa for a slow, oiled bearing",
                    remedy="Make the bearing longer or thicker, or take a rolling one.",
                    source=PRACTICE,
                )
            )
