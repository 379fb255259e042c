"""The card of an outline that is no rectangle: sawn near the line, flanks milled, ends about their holes."""

from __future__ import annotations

import math

from tommybar.design.model import Part
from tommybar.findings import Finding
from tommybar.making.cards import Card, Hold, Step
from tommybar.making.handwork.rules import hand_rule
from tommybar.making.lengths import Mm
from tommybar.making.mill_steps import MillBench
from tommybar.making.milling.cutters import cuts_words, depth_passes, end_mill_feed, largest_cutter, no_cutter
from tommybar.making.milling.safety import START
from tommybar.making.milling.travel import cut_travel
from tommybar.shapes.features import PlateHole, PlateShape
from tommybar.shapes.outlines import Arc, Line, Loop, plate_loop
from tommybar.shop.model import Mill, Shop

SHARP = math.radians(0.5)  # pieces that meet at less are tangent


def outline_card(
    part: Part,
    shape: PlateShape,
    shop: Shop,
    mill: Mill,
    number: int,
    gives_to: dict[str, tuple[str, ...]],
) -> tuple[Card, list[Finding]]:
    """All of an outline, after the holes that its ends are made about."""
    bench = MillBench(part, shop, mill, number, gives_to, face="the top face")
    loop = plate_loop(shape)
    _saw(bench, shape, loop)
    _inner_corners(bench, loop)
    flanks = [one for one in loop if isinstance(one, Line) and not _on_edge(one, shape)]
    for count, flank in enumerate(flanks, start=1):
        _flank(bench, shape, flank, count, len(flanks), hollow=_beside_hollow(loop, flank))
    arcs = [one for one in loop if isinstance(one, Arc)]
    for count, arc in enumerate(arcs, start=1):
        _arc(bench, shape, arc, count)
    _check(bench, shape)
    turned = mill.rotary_table > 0 and bool(arcs)
    card = Card(
        part.name,
        number,
        number,
        "mill",
        "outline: " + _title(flanks, arcs),
        "",
        Hold(
            "rotary table, and clamped to the table" if turned else "clamped to the table",
            "",
            "top face up, on scrap",
            0.0,
            0.0,
            shape.thickness.value,
            0.05,
            "Clamped through its own holes where it has them, one clamp moved at a time.",
            "a plug in the hole that the end is made about"
            if turned
            else "an edge or a flank set along the table",
        ),
        tuple(bench.steps),
        (
            "Glue the template at 1:1 on the top face, or scribe the outline from the lower left corner.",
            "Two clamps at least on it always; move one, then the other.",
            *START,
        ),
        bench.drawer(),
        minutes=bench.minutes(),
        goes_wrong=(
            "Cutter fed with its turning: it climbs and drags the work. Against it, all round.",
            "An arc cut past its end nicks the flank: stop at the scribed tangent point.",
        ),
        why="Holes first, while the blank is square to be held; then the outline about them.",
    )
    return card, bench.findings


def has_outline(shape: PlateShape) -> bool:
    """Whether anything of the outline is left when the blank is square and to size."""
    return shape.outline is not None or shape.corner > 0


def _title(flanks: list[Line], arcs: list[Arc]) -> str:
    said = [
        f"{len(pieces)} {name}{'s' if len(pieces) != 1 else ''}"
        for pieces, name in ((flanks, "flank"), (arcs, "arc"))
        if pieces
    ]
    return ", ".join(said)


def _on_edge(one: Line, shape: PlateShape) -> bool:
    """Whether a straight piece lies on an edge of the squared blank."""
    x, y = shape.length.target, shape.width.target
    along = abs(one.x1 - one.x2) < 1e-6 and min(abs(one.x1), abs(one.x1 - x)) < 1e-6
    across = abs(one.y1 - one.y2) < 1e-6 and min(abs(one.y1), abs(one.y1 - y)) < 1e-6
    return along or across


def _by_hand(bench: MillBench, do: str, tool: str, big: str, kind: str, *lines: str, minutes: float) -> None:
    bench.add(Step(0, do, "outline", tool, "hand", 0.0, 0.0, 0.0, big, kind, lines, minutes=minutes))


def _saw(bench: MillBench, shape: PlateShape, loop: Loop) -> None:
    around = sum(one.length for one in loop if not (isinstance(one, Line) and _on_edge(one, shape)))
    _by_hand(
        bench,
        f"Saw {Mm(hand_rule('line')):g} outside the line, {Mm(around):.0f} of it",
        "bandsaw or hacksaw",
        f"{hand_rule('line'):g}",
        "mm left",
        "From the template; straight cuts off the corners first, no twisting of the blade in the cut.",
        minutes=5.0 + around * shape.thickness.value / 200.0,
    )


def _turn_at(before: Line | Arc, after: Line | Arc) -> float:
    """How far the outline turns where two pieces meet, counter-clockwise above 0 [rad]."""
    (ax, ay), (bx, by) = before.normal(1.0), after.normal(0.0)
    return math.atan2(ax * by - ay * bx, ax * bx + ay * by)


def _beside_hollow(loop: Loop, flank: Line) -> bool:
    """Whether a flank ends at an inner corner or at a hollow."""
    at = loop.index(flank)
    before, after = loop[at - 1], loop[(at + 1) % len(loop)]
    hollow = any(isinstance(one, Arc) and one.turn < 0 for one in (before, after))
    return hollow or _turn_at(before, flank) < -SHARP or _turn_at(flank, after) < -SHARP


def _inner_corners(bench: MillBench, loop: Loop) -> None:
    for index, one in enumerate(loop):
        after = loop[(index + 1) % len(loop)]
        if one is after or _turn_at(one, after) > -SHARP:
            continue
        x, y = one.at(1.0)
        bench.caution(
            468,
            f"The outline of {bench.part.name} has a sharp inner corner at {x:.2f}, {y:.2f}: a cutter leaves its radius there.",
            "outline",
            "Drill a small hole in the corner first, or file it out square; better, draw a radius there.",
            "0 mm radius",
            "the radius of the cutter",
        )


def _flank(bench: MillBench, shape: PlateShape, one: Line, count: int, of: int, *, hollow: bool) -> None:
    thick = shape.thickness.value
    cutter = largest_cutter(bench, 1e9, thick)
    if cutter is None:
        no_cutter(bench, "outline", "a flank", 99.0, thick)
        return
    angle = math.degrees(math.atan2(one.y2 - one.y1, one.x2 - one.x1))
    lean = (angle + 90.0) % 180.0 - 90.0
    speed = bench.speed("milling", cutter, "outline")
    passes = depth_passes(bench, hand_rule("line"), cutter)
    cut_travel(bench, one.length, cutter, "outline")
    beside = [
        hole for hole in _centred(shape) if abs(_off(one, hole.x, hole.y)) < max(shape.width.value, 30.0)
    ]
    gauges = tuple(
        f"Check: from the far side of {hole.name} to the flank {Mm(_off(one, hole.x, hole.y) + hole.dia.value / 2):.2f}."
        for hole in beside[:2]
        if _off(one, hole.x, hole.y) > hole.dia.value / 2
    )
    bench.add(
        Step(
            0,
            f"Mill flank {count} of {of}, {lean:+.2f} deg to the long edge",
            "outline",
            f"end mill {Mm(cutter):tool}",
            "end mill",
            speed.rpm,
            speed.reached,
            end_mill_feed(bench, "milling", "roughing"),
            f"{lean:+.2f}",
            "deg",
            (
                f"From {Mm(one.x1):.2f}, {Mm(one.y1):.2f} to {Mm(one.x2):.2f}, {Mm(one.y2):.2f} "
                "from the lower left corner: set both points along the table with a pointer.",
                f"Side of the cutter, {Mm(thick):g} deep, the sawn {Mm(hand_rule('line')):g} off in {cuts_words(passes)}.",
                *gauges,
                *(
                    ("It ends in a hollow: stop before the cutter's edge passes the line there.",)
                    if hollow
                    else ()
                ),
            ),
            passes,
            minutes=6.0,
            why="A flank set along the table is as straight as the table.",
            tool_size=cutter,
        )
    )


def _off(one: Line, x: float, y: float) -> float:
    """How far a place lies inside a flank [mm]."""
    nx, ny = one.normal(0.5)
    return (x - one.x1) * nx + (y - one.y1) * ny


def _centred(shape: PlateShape) -> list[PlateHole]:
    return [h for h in shape.holes if h.face == "top" and h.depth is None and not h.tilt and not h.thread]


def _arc(bench: MillBench, shape: PlateShape, arc: Arc, count: int) -> None:
    holes = _centred(shape)
    hole = next((h for h in holes if math.hypot(h.x - arc.x, h.y - arc.y) < 1e-3), None)
    place = f"{Mm(arc.x):.2f}, {Mm(arc.y):.2f}"
    if arc.turn < 0:
        _hollow(bench, shape, arc, count, place)
    elif hole is not None and _turns(bench, arc):
        _on_table(
            bench, shape, arc, count, f"a plug in {hole.name} stands in the table's centre", outside=True
        )
    elif hole is not None:
        _by_hand(
            bench,
            f"File end {count} to buttons of {Mm(arc.radius):g} radius on {hole.name}",
            f"filing buttons {Mm(2 * arc.radius):g}, files",
            f"{arc.radius:g}",
            "RAD mm",
            f"Two hard buttons {Mm(2 * arc.radius):g} across, {Mm(hole.dia.value):g} pin through {hole.name}, one each face; "
            "file until it skates on them.",
            minutes=15.0,
        )
    elif _turns(bench, arc) and arc.radius >= 5.0:
        _on_table(
            bench, shape, arc, count, f"the scribed centre at {place} stands under the pointer", outside=True
        )
    else:
        _by_hand(
            bench,
            f"File corner {count} to {Mm(arc.radius):g} radius, centre {place}",
            "files, radius gauge",
            f"{arc.radius:g}",
            "RAD mm",
            "To the template's line, then to a radius gauge or a washer of that radius clamped on.",
            minutes=5.0,
        )


def _turns(bench: MillBench, arc: Arc) -> bool:
    return 0 < 2 * arc.radius <= bench.mill.rotary_table


def _hollow(bench: MillBench, shape: PlateShape, arc: Arc, count: int, place: str) -> None:
    thick = shape.thickness.value
    same = largest_cutter(bench, 2 * arc.radius + 0.01, thick, least=2 * arc.radius - 0.01)
    if same is None and _turns(bench, arc):
        _on_table(bench, shape, arc, count, f"the place {place} stands under the spindle", outside=False)
        return
    if same is None:
        _by_hand(
            bench,
            f"File hollow {count} to {Mm(arc.radius):g} radius, centre {place}",
            "half-round file",
            f"{arc.radius:g}",
            "RAD mm",
            "To the template's line, checked with the shank of a drill or a turned plug of that radius.",
            minutes=15.0,
        )
        return
    speed = bench.speed("milling", same, "outline")
    bench.add(
        Step(
            0,
            f"Mill hollow {count} with an end mill of its own radius",
            "outline",
            f"end mill {Mm(same):tool}",
            "end mill",
            speed.rpm,
            speed.reached,
            end_mill_feed(bench, "milling", "roughing"),
            f"{arc.radius:g}",
            "RAD mm",
            (
                f"Spindle over {place} from the lower left corner; {Mm(thick):g} through, fed in slowly from the waste.",
            ),
            depth_passes(bench, thick, same),
            minutes=6.0,
            tool_size=same,
        )
    )


def _on_table(
    bench: MillBench, shape: PlateShape, arc: Arc, count: int, centred: str, *, outside: bool
) -> None:
    thick = shape.thickness.value
    most = 1e9 if outside else 2 * arc.radius
    cutter = largest_cutter(bench, most, thick)
    if cutter is None:
        no_cutter(bench, "outline", f"an arc of {arc.radius:g} mm radius", min(most, 99.0), thick)
        return
    run = arc.radius + cutter / 2 if outside else arc.radius - cutter / 2
    first, turn = math.degrees(arc.start), math.degrees(arc.turn)
    whole = abs(abs(turn) - 360.0) < 1e-6
    sawn = run + math.copysign(hand_rule("line"), 1.0 if outside else -1.0)
    speed = bench.speed("milling", cutter, "outline")
    bench.add(
        Step(
            0,
            f"Mill arc {count}, {Mm(arc.radius):g} radius, on the rotary table",
            "outline",
            f"end mill {Mm(cutter):tool}, rotary table",
            "end mill",
            speed.rpm,
            speed.reached,
            end_mill_feed(bench, "milling", "roughing"),
            f"{run:.2f}",
            "mm off centre",
            (
                f"Table's centre under the spindle, both dials 0; then the work so that {centred}.",
                f"Cutter's axis {Mm(run):.2f} from the centre ({Mm(arc.radius):g} {'and' if outside else 'less'} "
                f"half the cutter {Mm(cutter / 2):g}); come in from {Mm(sawn):.2f}.",
                "All the way round, against the cutter."
                if whole
                else f"From {first % 360:.1f} deg through {abs(turn):.1f} deg, seen from above from the long edge; "
                "stop at the scribed tangent points.",
            ),
            depth_passes(bench, thick, cutter),
            minutes=10.0,
            why="About the hole itself, so that end and hole share their centre.",
            cautions=("Turn the table by its handle against the cutter; lock what does not move.",),
            tool_size=cutter,
        )
    )


def _check(bench: MillBench, shape: PlateShape) -> None:
    bench.add(
        Step(
            0,
            "Lay it on the drawing at 1:1, measure over all",
            "outline",
            "template, caliper",
            "hand",
            0.0,
            0.0,
            0.0,
            f"{shape.length.value:g} x {shape.width.value:g}",
            "mm",
            ("Light under a straight edge on every flank; ends meet flanks without a step.",),
            minutes=5.0,
            measure=(
                *bench.measured(shape.length, "length", "length"),
                *bench.measured(shape.width, "width", "length"),
            ),
        )
    )
