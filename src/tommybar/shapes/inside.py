"""The inside of a turned part as exact rings: bores, tapers, cups, centre holes and grooves in bores."""

from __future__ import annotations

import math

from tommybar.facts.drills import centre_drill
from tommybar.facts.threads import drill_for_percent, thread
from tommybar.refusals import Refusal
from tommybar.shapes.curves import ON, ArcPiece, Line, Piece, Point, Ring, closed
from tommybar.shapes.features import Bore, BoreGroove, BoreTaper, CentreHole, Cup, Face, TurnedShape
from tommybar.shapes.metal import Metal, inside_figure
from tommybar.shapes.ring_cuts import BEYOND, chain, mirrored

POINT_ANGLE = 118.0  # of a twist drill, as drawn at the bottom of a drilled hole [deg]
CENTRE_CONE = 60.0  # included angle of a centre hole's seat (ISO 866) [deg]
SEAT_RADIUS = 2.8  # radius of form R's seat per pilot; ISO 2541 allows about 2.5 to 3.15 (from memory)
PROTECTING_CONE = 120.0  # included angle of form B's second cone (ISO 2540) [deg]


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


def bore_rings(bore: Bore, shape: TurnedShape, metal: Metal) -> list[Ring]:
    """What one bore takes away, its edges as rings of their own."""
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
    rings = [_hole(bore, radius, far, length, metal)]
    if bore.edge > 0:
        rings.append(_chamfer(_mouth(bore, shape, bore.face), radius, bore.edge))
        if bore.through:
            far_mouth = _chamfer(_mouth(bore, shape, "B" if bore.face == "A" else "A"), radius, bore.edge)
            rings.append(mirrored(far_mouth, length))
    return rings if bore.face == "A" else [mirrored(ring, length) for ring in rings]


def _hole(bore: Bore, radius: float, far: float, length: float, metal: Metal) -> Ring:
    """The hole itself, entered from face A."""
    if bore.through:
        return closed([(-BEYOND, 0.0), (length + BEYOND, 0.0), (length + BEYOND, radius), (-BEYOND, radius)])
    if bore.bottom == "drill":
        tip = radius / math.tan(math.radians(POINT_ANGLE / 2))
        _refuse_tip(bore, far, tip, length, "its drill tip")
        return closed([(-BEYOND, 0.0), (far + tip, 0.0), (far, radius), (-BEYOND, radius)])
    if bore.bottom == "ball":
        _refuse_tip(bore, far, radius, length, "its round bottom")
        ends: tuple[Point, Point] = ((far + radius, 0.0), (far, radius))
        return (
            Line((-BEYOND, 0.0), ends[0]),
            ArcPiece(*ends, (far, 0.0), ccw=True),
            Line(ends[1], (-BEYOND, radius)),
            Line((-BEYOND, radius), (-BEYOND, 0.0)),
        )
    if bore.corner > min(radius, far):
        raise Refusal(
            f"The corner of {bore.name} is {bore.corner:g} mm; the bore is {radius:g} mm in radius "
            f"and {far:g} mm deep.",
            "Give a smaller corner radius.",
        )
    corner = 0.0 if metal == "least" else bore.corner
    return chain([(-BEYOND, 0.0), (far, 0.0), (far, radius), (-BEYOND, radius)], {2: corner})


def _refuse_tip(bore: Bore, far: float, tip: float, length: float, what: str) -> None:
    if far + tip >= length:
        raise Refusal(
            f"{bore.name} is {far:g} mm deep and {what} {tip:.2f} mm more; the part is {length:g} mm long.",
            "Make it through, shallower, or flat-bottomed.",
        )


def _mouth(bore: Bore, shape: TurnedShape, face: Face) -> float:
    """How deep below a face the bore opens: at the face, or at the floor of what is sunk there [mm]."""
    sunk = [
        other.depth
        for other in shape.bores
        if other is not bore and other.face == face and not other.through and other.dia.value > bore.dia.value
    ]
    sunk += [one.depth for one in shape.recesses if one.face == face and one.inside <= bore.dia.value]
    sunk += [
        one.depth
        for one in shape.bore_tapers
        if one.face == face and one.start == 0 and one.end_dia > bore.dia.value
    ]
    return max(sunk, default=0.0)


def _chamfer(mouth: float, radius: float, edge: float) -> Ring:
    """A 45-degree edge at a mouth that lies ``mouth`` below the face it is entered from."""
    inner = radius - min(edge, radius) / 2
    return closed([(mouth, inner), (mouth + edge, inner), (mouth + edge, radius), (mouth, radius + edge)])


def bore_taper_ring(taper: BoreTaper, length: float) -> Ring:
    """What a conical bore takes away; it runs on past the face where it opens there."""
    mouth, end = taper.mouth / 2, taper.end_dia / 2
    if not (taper.start >= 0 and taper.start + taper.depth <= length + 1e-6):
        raise Refusal(
            f"{taper.name} runs from {taper.start:g} to {taper.start + taper.depth:g} mm below its face; "
            f"the part is {length:g} mm long.",
            "Make it shorter.",
        )
    if not 0 <= end < mouth:
        raise Refusal(
            f"{taper.name} goes from {taper.mouth:g} to {taper.end_dia:g} mm; it must get narrower inwards.",
            "Exchange the two diameters, or enter it from the other face.",
        )
    steep = (mouth - end) / taper.depth
    out = BEYOND if taper.start <= ON else 0.0
    start = taper.start - out
    far = taper.start + taper.depth
    points: list[Point] = [(start, 0.0), (far, 0.0), (far, end), (start, mouth + steep * out)]
    if far >= length - ON:
        more = min(BEYOND, end / steep)
        points[1:3] = [(far + more, 0.0), (far + more, end - steep * more)]
    ring = closed(points)
    return ring if taper.face == "A" else mirrored(ring, length)


def cup_level(cup: Cup, shape: TurnedShape) -> float:
    """How deep below its face a cup opens: at the mouth of the bore that it is on [mm]."""
    bore = next((one for one in shape.bores if one.name == cup.on), None) if cup.on else None
    return 0.0 if bore is None else _mouth(bore, shape, cup.face)


def cup_rings(cup: Cup, shape: TurnedShape) -> list[Ring]:
    """A conical cup or countersink, run on past its face, and the small hole at its bottom."""
    length, level = shape.length.value, cup_level(cup, shape)
    rings = [_cone(level, cup.mouth / 2, cup.included)]
    if cup.relief > 0:
        tip = level + cup.mouth / 2 / math.tan(math.radians(cup.included / 2))
        deep = max(cup.relief_depth, 0.0) + tip - cup.relief / 2 / math.tan(math.radians(cup.included / 2))
        rings.append(_rod(level, deep, cup.relief / 2))
    _refuse_through(cup.name, max(_depth(ring) for ring in rings), length, on_bore=bool(cup.on))
    return rings if cup.face == "A" else [mirrored(ring, length) for ring in rings]


def centre_rings(hole: CentreHole, length: float) -> list[Ring]:
    """A centre hole as ISO 6411 draws it: pilot with its tip, then the seat.

    Form A: a 60-degree cone to the mouth; form B: another of 120 degrees
    over it, whose mouth the table gives, with the seat's mouth that of form
    A; form R: a seat of one radius that is tangent to the 60-degree cone
    where it meets the pilot and opens to the mouth. The pilot is as deep
    below the seat as it is wide.
    """
    drill = centre_drill(f"{hole.form} {hole.pilot:g}")
    if drill.mouth is None:
        raise Refusal(f"No table gives the mouth of {drill.name}.", "Use form A, B or R by its pilot.")
    pilot, mouth = drill.pilot / 2, drill.mouth / 2
    half = math.tan(math.radians(CENTRE_CONE / 2))
    rings: list[Ring] = []
    if hole.form == "R":
        seat, ring = _radius_seat(pilot, mouth)
        rings.append(ring)
    else:
        cone = mouth
        if hole.form == "B":
            plain = centre_drill(f"A {hole.pilot:g}").mouth or drill.mouth
            cone = plain / 2
            level = (mouth - cone) / math.tan(math.radians(PROTECTING_CONE / 2))
            rings += [_cone(0.0, mouth, PROTECTING_CONE), _cone(level, cone, CENTRE_CONE)]
        else:
            level = 0.0
            rings.append(_cone(0.0, mouth, CENTRE_CONE))
        seat = level + (cone - pilot) / half
    deep = seat + drill.pilot
    tip = pilot / math.tan(math.radians(POINT_ANGLE / 2))
    rings.append(closed([(-BEYOND, 0.0), (deep + tip, 0.0), (deep, pilot), (-BEYOND, pilot)]))
    _refuse_through(hole.name, deep + tip, length, on_bore=False)
    return rings if hole.face == "A" else [mirrored(ring, length) for ring in rings]


def _radius_seat(pilot: float, mouth: float) -> tuple[float, Ring]:
    """Form R: depth of its seat and the ring, one arc from the pilot's wall out to the mouth."""
    radius = SEAT_RADIUS * 2 * pilot
    turn = math.acos(1 - (mouth - pilot) / radius)
    seat = radius * math.sin(turn)
    centre = (seat, pilot + radius)
    start: Point = (seat, pilot)
    end: Point = (0.0, mouth)
    return seat, (
        Line((-BEYOND, 0.0), (seat, 0.0)),
        Line((seat, 0.0), start),
        ArcPiece(start, end, centre, ccw=False),
        Line(end, (-BEYOND, mouth)),
        Line((-BEYOND, mouth), (-BEYOND, 0.0)),
    )


def _cone(level: float, radius: float, included: float) -> Ring:
    """A cone that opens to ``radius`` at ``level`` below the face, with room before it."""
    lean = math.tan(math.radians(included / 2))
    tip = level + radius / lean
    if level > 0:
        return closed([(level, 0.0), (tip, 0.0), (level, radius)])
    return closed([(-BEYOND, 0.0), (tip, 0.0), (-BEYOND, radius + BEYOND * lean)])


def _rod(level: float, deep: float, radius: float) -> Ring:
    start = level if level > 0 else -BEYOND
    return closed([(start, 0.0), (deep, 0.0), (deep, radius), (start, radius)])


def _depth(ring: Ring) -> float:
    return max(piece.start[0] for piece in ring)


def _refuse_through(name: str, deep: float, length: float, on_bore: bool) -> None:
    if not on_bore and deep >= length:
        raise Refusal(
            f"{name} is {deep:.4g} mm deep to its tip; the part is {length:g} mm long.",
            "Give a smaller mouth, or a blunter angle.",
        )


def bore_groove_ring(groove: BoreGroove, shape: TurnedShape) -> Ring:
    """What a groove inside a bore takes away, from the axis out to its floor."""
    length = shape.length.value
    if not -1e-6 <= groove.start < groove.end <= length + 1e-6:
        raise Refusal(
            f"{groove.name} runs from {groove.start:g} to {groove.end:g} mm; "
            f"it must lie between 0 and {length:g} mm.",
            "Move it onto the part.",
        )
    bore = next((one for one in shape.bores if one.name == groove.on), None)
    inner = drawn_bore(bore, "target") / 4 if bore else groove.floor / 4
    top = groove.floor / 2
    pieces: list[Piece] = list(
        closed([(groove.start, inner), (groove.end, inner), (groove.end, top), (groove.start, top)])
    )
    return tuple(pieces)
