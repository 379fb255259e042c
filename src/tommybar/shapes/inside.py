"""The inside of a turned part: bores on the axis and recesses in its faces."""

from __future__ import annotations

import math

from shapely import Polygon, box
from shapely.ops import unary_union

from tommybar.facts.threads import drill_for_percent, thread
from tommybar.refusals import Refusal
from tommybar.shapes.features import Bore, Face, Recess, TurnedShape
from tommybar.shapes.metal import Metal, inside_figure

ARC_CHORDS = 16  # chords for a quarter turn; a 0.4 mm corner is then true to 0.2 square micrometre per mm
BEYOND = 1.0  # cutting shapes run past a face by this much, so that no skin stays [mm]
POINT_ANGLE = 118.0  # of a twist drill, as drawn at the bottom of a drilled hole [deg]


def drawn_bore(bore: Bore, metal: Metal = "target") -> float:
    """Diameter at which a bore is drawn [mm]: a tapped one at its tapping drill.

    The shop's own drill may leave a little more or less thread than the
    table's; "most" and "least" allow 90 and 55 % of a full thread.
    """
    if not bore.thread:
        return inside_figure(bore.dia, metal)
    tapped = thread(bore.thread)
    if metal == "target":
        return tapped.tapping_drill
    worst = drill_for_percent(tapped, 90.0 if metal == "most" else 55.0)
    return min(worst, tapped.tapping_drill) if metal == "most" else max(worst, tapped.tapping_drill)


def unfinished_by(bore: Bore) -> float:
    """How much under its size a bore may stand that is finished after a joint [mm on diameter]."""
    return max(0.6, 0.05 * bore.dia.value) if bore.after else 0.0


def bores_section(shape: TurnedShape, metal: Metal) -> Polygon | None:
    """What all bores take away from the half-section, or None."""
    cuts = [_bore(bore, shape, metal) for bore in shape.bores]
    return unary_union(cuts) if cuts else None


def _bore(bore: Bore, shape: TurnedShape, metal: Metal) -> Polygon:
    """One bore drawn from face A, then turned round if it is entered from face B."""
    length = shape.length.value
    radius = drawn_bore(bore, metal) / 2
    if metal == "most":
        radius -= unfinished_by(bore) / 2
    if radius <= 0:
        raise Refusal(f"{bore.name} is {2 * radius:g} mm in diameter; it must be above 0 mm.")
    if bore.through:
        far = length
    elif 0 < bore.depth < length:
        far = bore.depth
    else:
        raise Refusal(
            f"{bore.name} is {bore.depth:g} mm deep; a blind bore must be between 0 and "
            f"the part's {length:g} mm.",
            "Say that it runs through, or make it shallower.",
        )
    pieces = [box(-BEYOND, 0.0, far + (BEYOND if bore.through else 0.0), radius)]
    if not bore.through and bore.bottom == "drill":
        tip = radius / math.tan(math.radians(POINT_ANGLE / 2))
        if far + tip >= length:
            raise Refusal(
                f"{bore.name} is {far:g} mm deep and its drill tip {tip:.2f} mm more; "
                f"the part is {length:g} mm long.",
                "Make it through, shallower, or flat-bottomed.",
            )
        pieces.append(Polygon([(far, 0.0), (far + tip, 0.0), (far, radius)]))
    if bore.edge > 0:
        pieces.append(_chamfer(_mouth(bore, shape, bore.face), radius, bore.edge))
        if bore.through:
            far_mouth = _chamfer(_mouth(bore, shape, "B" if bore.face == "A" else "A"), radius, bore.edge)
            pieces.append(_mirrored(far_mouth, length))
    cut = unary_union(pieces)
    return cut if bore.face == "A" else _mirrored(cut, length)


def _mouth(bore: Bore, shape: TurnedShape, face: Face) -> float:
    """How deep below a face the bore opens: at the face, or at the floor of what is sunk there [mm]."""
    sunk = [
        other.depth
        for other in shape.bores
        if other is not bore and other.face == face and not other.through and other.dia.value > bore.dia.value
    ]
    sunk += [one.depth for one in shape.recesses if one.face == face and one.inside <= bore.dia.value]
    return max(sunk, default=0.0)


def _chamfer(mouth: float, radius: float, edge: float) -> Polygon:
    """A 45-degree edge at a mouth that lies ``mouth`` below the face it is entered from."""
    inner = radius - min(edge, radius) / 2
    corners = [(mouth, inner), (mouth + edge, inner), (mouth + edge, radius), (mouth, radius + edge)]
    return Polygon(corners)


def recess_section(recess: Recess, length: float, sharp: bool) -> Polygon:
    """What a face recess takes away; ``sharp`` leaves out the corner radius at its floor."""
    inner, outer, deep = recess.inside / 2, recess.outside / 2, recess.depth
    if not 0 <= inner < outer:
        raise Refusal(
            f"{recess.name} runs from {recess.inside:g} to {recess.outside:g} mm in diameter; "
            "the outer one must be the larger.",
            "Exchange or correct them.",
        )
    if not 0 < deep < length:
        raise Refusal(
            f"{recess.name} is {deep:g} mm deep; it must leave metal of the part's {length:g} mm.",
            "Make it shallower.",
        )
    corner = 0.0 if sharp else recess.corner
    room = min(deep, (outer - inner) / 2 if inner else outer)
    if corner > room:
        raise Refusal(
            f"The corner of {recess.name} is {corner:g} mm; its floor and walls have room for {room:g} mm.",
            "Give a smaller corner radius.",
        )
    wall_corner = [
        (deep - corner + corner * math.sin(t), outer - corner + corner * math.cos(t)) for t in _quarter()
    ]
    hub_corner = [
        (deep - corner + corner * math.sin(t), inner + corner - corner * math.cos(t)) for t in _quarter()
    ]
    if corner == 0:
        wall_corner, hub_corner = [(deep, outer)], [(deep, inner)]
    elif inner == 0:
        hub_corner = [(deep, 0.0)]
    cut = Polygon([(-BEYOND, inner), (-BEYOND, outer), *wall_corner, *reversed(hub_corner)])
    return cut if recess.face == "A" else _mirrored(cut, length)


def _quarter() -> list[float]:
    return [math.pi / 2 * n / ARC_CHORDS for n in range(ARC_CHORDS + 1)]


def _mirrored(cut: Polygon, length: float) -> Polygon:
    return Polygon([(length - z, r) for z, r in reversed(cut.exterior.coords)])
