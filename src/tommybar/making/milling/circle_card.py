"""The card for holes on circles of a turned part: which face is up, and the places as they are then seen."""

from __future__ import annotations

from tommybar.design.model import Part
from tommybar.facts.circles import chord, hole_circle
from tommybar.findings import Finding
from tommybar.making.cards import Card, Hold
from tommybar.making.jobs import largest, largest_outside
from tommybar.making.lengths import Mm
from tommybar.making.mill_steps import MillBench
from tommybar.making.milling.counterbores import counterbore
from tommybar.making.milling.faces import angle_seen, depth_from, face_up, hollow_under, other, seen
from tommybar.making.milling.room import room_lines, stands_out
from tommybar.making.milling.rules import mill_rule
from tommybar.making.milling.safety import START
from tommybar.making.milling.sized_holes import blind_hole, through_hole
from tommybar.making.milling.travel import within_travel
from tommybar.making.visiting import Spot, hole_places
from tommybar.shapes.features import CircleHoles, Face, TurnedShape
from tommybar.shop.model import Mill, Shop

CHUCK_RADIUS = 18.0  # of a drill chuck, about; common practice, no source [mm]


def circle_cards(
    part: Part, shape: TurnedShape, shop: Shop, mill: Mill, before: int, gives_to: dict[str, tuple[str, ...]]
) -> tuple[list[Card], list[Finding]]:
    """One card for each face that has to be up; holes that run through go with the face that stands best."""
    widest = max((holes.circle for holes in shape.circle_holes), default=0.0)
    best = face_up(shape, widest)
    bound: dict[Face, list[CircleHoles]] = {"A": [], "B": []}
    free: list[CircleHoles] = []
    for holes in shape.circle_holes:
        if holes.blind or holes.sink_dia > 0:
            bound[holes.face].append(holes)
        else:
            free.append(holes)
    if free:
        up = best if bound[best] or not any(bound.values()) else next(f for f in bound if bound[f])
        bound[up] = [holes for holes in shape.circle_holes if holes in bound[up] or holes in free]
    cards: list[Card] = []
    findings: list[Finding] = []
    for up, group in bound.items():
        if group:
            card, found = _card(part, shape, group, up, shop, mill, before + len(cards) + 1, gives_to)
            cards.append(card)
            findings += found
    return cards, findings


def _card(
    part: Part,
    shape: TurnedShape,
    group: list[CircleHoles],
    up: Face,
    shop: Shop,
    mill: Mill,
    number: int,
    gives_to: dict[str, tuple[str, ...]],
) -> tuple[Card, list[Finding]]:
    bench = MillBench(part, shop, mill, number, gives_to, face=f"face {up}")
    spots: list[Spot] = []
    checks: list[str] = []
    for holes in group:
        what = holes.thread or f"dia {Mm(holes.dia.value):g}"
        for place in hole_circle(holes.count, holes.circle, holes.start_angle):
            x, y = seen(up, place.x, place.y)
            spots.append(Spot(x, y, f"{holes.name} {place.n}: {what}"))
        if holes.count > 1:
            far = chord(holes.count, holes.circle)
            pairs = ", ".join(
                f"{n} to {n % holes.count + 1}" for n in range(1, holes.count + (holes.count > 2))
            )
            checks.append(f"{holes.name} {pairs}: each {Mm(far):.3f}, centre to centre")
    within_travel(bench, spots)
    bench.spot(len(spots), group[0].name)
    for holes in group:
        _drill(bench, shape, holes, up)
    bench.sunk = 0.0
    disc = largest_outside(shape)
    in_vice = disc <= mill.vice_opening
    base = mill.vice_height + mill_rule("parallel_least") if in_vice else mill_rule("plate_under")
    hollow = max(hollow_under(shape, other(up), holes.circle) for holes in group)
    hold = Hold(
        "vice, on parallels" if in_vice else "clamped flat on a sacrificial plate",
        "",
        f"face {other(up)}",
        0.0,
        0.0,
        shape.length.value,
        0.02,
        f"Face {up} is up: the part stands on face {other(up)}, its wider seat. The holes must sit true to the bore, so the "
        "bore is found under the spindle; the face only carries it.",
        f"face {other(up)} down, {'tapped down on the parallels' if in_vice else 'flat on the plate'}",
    )
    card = Card(
        part.name,
        number,
        number,
        "mill",
        f"holes on a circle, face {up} up: {', '.join(h.name for h in group)}",
        "",
        hold,
        tuple(bench.steps),
        (
            _seen_words(group, up),
            _zero(shape, disc),
            *_packing(hollow, other(up)),
            *_chuck_meets(bench, shape, group, up),
            *room_lines(bench, base, shape.length.value),
            *START,
        ),
        bench.drawer(),
        hole_places(mill, spots),
        tuple(checks),
        bench.minutes(),
        goes_wrong=(
            "A sign lost in one quadrant: check the chord between the first two spots before drilling.",
            f"The other face up by mistake: look for face {up}'s mark before the first spot.",
        ),
        why="Drilled by coordinates: no dividing needed, and the list can be checked by its chords.",
    )
    return card, bench.findings


def _seen_words(group: list[CircleHoles], up: Face) -> str:
    first = ", ".join(f"{h.name} 1 at {angle_seen(up, h.start_angle):g} deg" for h in group)
    mirrored = (
        ""
        if up == "A"
        else " The drawing shows them from face A, so X is mirrored here and the numbers run clockwise."
    )
    return (
        f"Face {up} up, you look at face {up}: the places are as you see them, X to the right, angles counter-clockwise "
        f"from X ({first}); depths count from face {up}.{mirrored}"
    )


def _zero(shape: TurnedShape, disc: float) -> str:
    bore = next((b for b in shape.bores if b.through), None)
    if bore:
        return f"Zero on the axis: sweep {bore.name} with the indicator until it stands still, X 0, Y 0."
    return f"Zero on the axis: touch the rim {Mm(disc):g} left and right, front and back, halve each way."


def _packing(hollow: float, down: Face) -> tuple[str, ...]:
    if hollow <= 0:
        return ()
    return (
        f"Face {down} is hollow {Mm(hollow):.2f} deep below the holes: pack a ring of that height under the web, beside the "
        "places where the drill comes out.",
    )


def _drill(bench: MillBench, shape: TurnedShape, holes: CircleHoles, up: Face) -> None:
    top, bottom = sorted((depth_from(shape, up, holes.start), depth_from(shape, up, holes.end)))
    thick = bottom - top
    bench.sunk = top
    words = f"{holes.count} of {holes.name}" if holes.count > 1 else holes.name
    metal = shape.length.value - top
    if holes.thread:
        bench.tapped(
            holes.thread,
            thick if holes.blind else None,
            metal if holes.blind else thick,
            words,
            holes.count,
            holes.name,
        )
    elif holes.blind:
        blind_hole(bench, holes.dia, thick, metal, words, holes.count, holes.name)
    else:
        through_hole(bench, holes.dia, thick, words, holes.count, holes.name)
    if holes.sink_dia > 0:
        counterbore(bench, holes.sink_dia, holes.sink_depth, holes.dia.value, words, holes.count, holes.name)


def _chuck_meets(bench: MillBench, shape: TurnedShape, group: list[CircleHoles], up: Face) -> tuple[str, ...]:
    """A chuck that meets the rim or the boss beside a hole that lies deeper than the face."""
    lines: list[str] = []
    for holes in group:
        top = min(depth_from(shape, up, holes.start), depth_from(shape, up, holes.end))
        rooms = [
            min(r.outside - holes.circle, holes.circle - r.inside) / 2
            for r in shape.recesses
            if r.face == up and r.inside < holes.circle < r.outside
        ]
        rooms += [
            (holes.circle - largest(land)) / 2
            for land in shape.outside
            if largest(land) < holes.circle and depth_from(shape, up, (land.start + land.end) / 2) < top
        ]
        room = min(rooms, default=CHUCK_RADIUS)
        size = min(holes.dia.value, bench.shop.lathe.drill_chuck)
        needed = top + abs(holes.end - holes.start) + 1.0 + 0.3 * size + mill_rule("above_work")
        if top <= 0 or room >= CHUCK_RADIUS or stands_out(size) >= needed:
            continue
        bench.caution(
            433,
            f"{holes.name} lies {top:.1f} mm below face {up}, {room:.1f} mm from a wall: the drill chuck meets it.",
            holes.name,
            f"Use a long-series drill that stands out {needed:.0f} mm or more, or a collet in place of the chuck.",
            f"a jobber drill {size:g} mm stands out about {stands_out(size):.0f} mm",
            f"{needed:.0f} mm",
        )
        lines.append(
            f"The wall beside {holes.name} stands in the chuck's way: drill {Mm(needed):.0f} out or more."
        )
    return tuple(lines)
