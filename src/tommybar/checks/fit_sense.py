"""Whether a fit does what its joint needs, and what a press fit asks and does."""

from __future__ import annotations

from tommybar.checks.checked import Checked
from tommybar.checks.figures import Figure
from tommybar.design.model import FitRelation, Part, SizedDesign
from tommybar.facts.materials import material
from tommybar.findings import Finding
from tommybar.mechanics.press_fit import PressFit, press_fit
from tommybar.shapes.features import Bore, Cylinder, Dim, PlateShape, TurnedShape
from tommybar.shapes.inside import drawn_bore
from tommybar.shop.model import Shop

LAME = "thick rings (Lame), any machine-design text (from memory)"
SAME = 0.5  # nominal sizes of a fit may differ by so much, when one side is as measured [mm]


def look(design: SizedDesign, shop: Shop) -> Checked:
    """Every fit relation."""
    found: list[Finding] = []
    figures: list[Figure] = []
    turning = {name for purpose in design.purposes for name in purpose.turns}
    for fit in design.fits:
        hole, shaft = dim_of(design, fit.hole), dim_of(design, fit.shaft)
        if hole is None or shaft is None or not (hole.toleranced and shaft.toleranced):
            continue
        least, most = _clearance(hole, shaft)
        found += _sizes_agree(fit, hole, shaft)
        runs = (fit.hole.split(".")[0] in turning) != (fit.shaft.split(".")[0] in turning)
        if fit.joint == "press":
            found += _press(design, fit, -most, -least, figures, hole)
        elif runs and least <= 0:
            found.append(_will_not_turn(fit, least))
    for press in design.presses:
        hole = dim_of(design, press.hole)
        if hole is not None:
            joint = FitRelation(press.hole, press.shaft, "the interference", "press", None, press.length)
            found += _press(design, joint, press.least, press.most, figures, hole)
    return Checked(tuple(dict.fromkeys(found)), tuple(dict.fromkeys(figures)))


def dim_of(design: SizedDesign, name: str) -> Dim | None:
    """The size of part.feature, None where there is none."""
    part, _, feature = name.partition(".")
    shape = next((one.shape for one in design.parts if one.name == part), None)
    if isinstance(shape, TurnedShape):
        dims = [b.dia for b in shape.bores if b.name == feature]
        dims += [c.dia for c in shape.outside if isinstance(c, Cylinder) and c.name == feature]
    elif isinstance(shape, PlateShape):
        dims = [h.dia for h in shape.holes if h.name == feature]
    else:
        dims = []
    return dims[0] if dims else None


def _clearance(hole: Dim, shaft: Dim) -> tuple[float, float]:
    assert hole.smallest is not None
    assert hole.largest is not None
    assert shaft.smallest is not None
    assert shaft.largest is not None
    return hole.smallest - shaft.largest, hole.largest - shaft.smallest


def _place(fit: FitRelation) -> tuple[str, str]:
    part, _, feature = fit.hole.partition(".")
    return part, feature


def _sizes_agree(fit: FitRelation, hole: Dim, shaft: Dim) -> list[Finding]:
    if abs(hole.value - shaft.value) <= SAME:
        return []
    return [
        Finding(
            645,
            "stop",
            f"{fit.hole} is {hole.value:g} mm and {fit.shaft} is {shaft.value:g} mm: they are no pair.",
            *_place(fit),
            figure=f"{hole.value:g} and {shaft.value:g} mm",
            bound="one nominal size",
            remedy="Let both follow the same named size.",
            source="the design",
        )
    ]


def _will_not_turn(fit: FitRelation, least: float) -> Finding:
    return Finding(
        646,
        "stop",
        f"{fit.shaft} is to turn in {fit.hole}, but {fit.zones} may leave {1000 * least:.0f} um of clearance.",
        *_place(fit),
        figure=f"{1000 * least:.0f} um",
        bound="above 0 um",
        remedy="Take a running fit, H7/f7 or H8/f7.",
        source="limits of both sizes",
    )


def _press(
    design: SizedDesign, fit: FitRelation, least: float, most: float, figures: list[Figure], hole: Dim
) -> list[Finding]:
    """Interference from ``least`` to ``most`` [mm]: does it hold, what does it press, what does it close."""
    found: list[Finding] = []
    if most <= 0 or least < -0.5 * most:
        found.append(
            Finding(
                647,
                "caution",
                f"{fit.zones} of {fit.hole} and {fit.shaft} gives {1000 * least:.0f} to {1000 * most:.0f} um of "
                "interference; a press joint needs some.",
                *_place(fit),
                figure=f"{1000 * least:.0f} um",
                bound="above 0 um",
                remedy="Take H7/p6 or tighter, or measure the hole and make the other part to suit.",
                source="limits of both sizes",
            )
        )
    inner = design.part(fit.shaft.split(".")[0])
    hub = design.part(fit.hole.split(".")[0])
    outside, long = _hub(hub, fit.hole.split(".", 1)[1])
    long = fit.engaged or long
    if most <= 0 or outside <= hole.value or long <= 0 or most > 0.01 * hole.value:
        return found
    bore = _bore_under(inner)
    pressed = _fit_of(hub, inner, hole.value, most, long, outside, bore)
    closes = f"{1000 * most:.0f} um of interference, {long:g} mm long"
    figures.append(
        Figure("force to press in, at most", inner.name, pressed.force / 1000, "kN", 1, closes, LAME)
    )
    figures.append(Figure("stress in the hub", hub.name, pressed.hub_mises, "MPa", 0, closes, LAME))
    if bore is not None:
        figures.append(
            Figure("bore closes by, at most", inner.name, 1000 * pressed.bore_closes, "um", 0, closes, LAME)
        )
        if bore.dia.toleranced and not bore.after:
            found.append(_finish_later(fit, inner, bore, pressed))
    allowed = material(hub.material).yield_strength
    if pressed.hub_mises > allowed:
        found.append(
            Finding(
                649,
                "caution",
                f"At most interference {hub.name} is stressed to {pressed.hub_mises:.0f} MPa round {fit.hole}; "
                f"{hub.material} yields at {allowed:.0f} MPa.",
                *_place(fit),
                figure=f"{pressed.hub_mises:.0f} MPa",
                bound=f"{allowed:.0f} MPa",
                remedy="Take less interference or more metal round the hole.",
                source=LAME,
            )
        )
    return found


def _fit_of(
    hub: Part, inner: Part, dia: float, most: float, long: float, outside: float, bore: Bore | None
) -> PressFit:
    one, other = material(hub.material), material(inner.material)
    return press_fit(
        dia,
        most,
        long,
        outside,
        one.modulus,
        one.poisson,
        other.modulus,
        other.poisson,
        min(drawn_bore(bore), 0.99 * dia) if bore is not None else 0.0,
    )


def _hub(part: Part, feature: str) -> tuple[float, float]:
    """Diameter of metal round a hole, and its length [mm]."""
    shape = part.shape
    if isinstance(shape, PlateShape):
        hole = next(h for h in shape.holes if h.name == feature)
        room = min(hole.x, shape.length.value - hole.x, hole.y, shape.width.value - hole.y)
        return 2 * room, shape.thickness.value
    if isinstance(shape, TurnedShape):
        return max(c.dia.value for c in shape.outside if isinstance(c, Cylinder)), shape.length.value
    return 0.0, 0.0


def _bore_under(part: Part) -> Bore | None:
    shape = part.shape
    return next((b for b in shape.bores if b.through), None) if isinstance(shape, TurnedShape) else None


def _finish_later(fit: FitRelation, part: Part, bore: Bore, pressed: PressFit) -> Finding:
    return Finding(
        648,
        "caution",
        f"Pressing {part.name} into {fit.hole} closes {bore.name} by up to {1000 * pressed.bore_closes:.0f} um; "
        "it has limits and is finished before.",
        part.name,
        bore.name,
        figure=f"{1000 * pressed.bore_closes:.0f} um",
        bound=f"limits {bore.dia.zone or bore.dia.value}",
        remedy='Say "after: press" on the bore and ream it in place.',
        source=LAME,
    )
