"""Holes of a turned part that are drilled at the mill: on circles, and across."""

from __future__ import annotations

from tommybar.design.model import Part
from tommybar.facts.circles import chord, hole_circle
from tommybar.facts.threads import thread
from tommybar.findings import Finding
from tommybar.making.cards import Card, Hold
from tommybar.making.jobs import largest, largest_outside
from tommybar.making.lengths import Mm
from tommybar.making.mill_steps import MillBench
from tommybar.making.practice import rule
from tommybar.making.reaming import standing_out
from tommybar.making.visiting import Spot, hole_places
from tommybar.shapes.features import CircleHoles, CrossHole, Cylinder, TurnedShape
from tommybar.shop.model import Mill, Shop

CHUCK_RADIUS = 18.0  # of a drill chuck, about; common practice, no source [mm]
START = (
    "Vice or clamps tight, key out, quill lock as needed; never hold the work by hand.",
    "Eye protection; spindle stopped for every measurement and every change of tool.",
)


def hole_cards(
    part: Part, shape: TurnedShape, shop: Shop, cards_before: int
) -> tuple[list[Card], list[Finding]]:
    """One mill card for all circle holes, one for each angle of cross holes."""
    if not shape.circle_holes and not shape.cross_holes:
        return [], []
    if shop.mill is None:
        names = ", ".join([*(h.name for h in shape.circle_holes), *(h.name for h in shape.cross_holes)])
        return [], [
            Finding(
                903,
                "stop",
                f"{part.name}: {names} want a mill or a drilling machine, and the shop file has none.",
                part.name,
                names,
                remedy="Mark out with the coordinates of the drawing and drill on a pillar drill; add it to the shop file.",
            )
        ]
    cards: list[Card] = []
    findings: list[Finding] = []
    if shape.circle_holes:
        card, found = _circle_card(part, shape, shop, shop.mill, cards_before + 1)
        cards.append(card)
        findings += found
    angles = sorted({hole.angle for hole in shape.cross_holes})
    for angle in angles:
        holes = [hole for hole in shape.cross_holes if hole.angle == angle]
        card, found = _cross_card(part, shape, holes, angle, shop, shop.mill, cards_before + len(cards) + 1)
        cards.append(card)
        findings += found
    return cards, findings


def _circle_card(
    part: Part, shape: TurnedShape, shop: Shop, mill: Mill, number: int
) -> tuple[Card, list[Finding]]:
    bench = MillBench(part, shop, mill, number)
    spots: list[Spot] = []
    checks: list[str] = []
    for holes in shape.circle_holes:
        places = hole_circle(holes.count, holes.circle, holes.start_angle)
        what = holes.thread or f"dia {Mm(holes.dia.value):g}"
        spots += [Spot(place.x, place.y, f"{holes.name} {place.n}: {what}") for place in places]
        if holes.count > 1:
            far = chord(holes.count, holes.circle)
            pairs = ", ".join(
                f"{n} to {n % holes.count + 1}" for n in range(1, holes.count + (holes.count > 2))
            )
            checks.append(f"{holes.name} {pairs}: each {Mm(far):.3f}, centre to centre")
    bench.spot(len(spots), shape.circle_holes[0].name)
    for holes in shape.circle_holes:
        _drill_group(bench, holes)
    disc = largest_outside(shape)
    in_vice = disc <= mill.vice_opening
    device = "vice, on parallels" if in_vice else "clamped flat on a sacrificial plate"
    bore = next((b for b in shape.bores if b.through), None)
    zero = (
        f"Zero on the axis: sweep {bore.name} with the indicator until it stands still, X 0, Y 0."
        if bore
        else "Zero on the axis: touch the rim left and right, front and back, halve each."
    )
    hold = Hold(
        device,
        "",
        "faces",
        0.0,
        0.0,
        shape.length.value,
        0.02,
        "The holes must sit true to the bore, so the bore is found under the spindle; the faces only carry it.",
        "face A down"
        if any(r.face == "A" for r in shape.recesses) and not in_vice
        else "flat on its face, tapped down",
    )
    minutes = sum(step.minutes for step in bench.steps) + rule("minutes", "set_up")
    names = ", ".join(h.name for h in shape.circle_holes)
    card = Card(
        part.name,
        number,
        number,
        "mill",
        f"holes on a circle: {names}",
        "",
        hold,
        tuple(bench.steps),
        (zero, *_height(mill, shape.length.value, in_vice), *START),
        tuple(dict.fromkeys(step.tool for step in bench.steps)),
        hole_places(mill, spots),
        tuple(checks),
        round(minutes, 1),
        goes_wrong=(
            "A sign lost in one quadrant: check the chord between the first two spots before drilling.",
            "Packing left under the web: support it where the drill comes through.",
        ),
        why="Drilled by coordinates: no dividing needed, and the list can be checked by its chords.",
    )
    return card, bench.findings


def _drill_group(bench: MillBench, holes: CircleHoles) -> None:
    thick = holes.end - holes.start
    words = f"{holes.count} of {holes.name}" if holes.count > 1 else holes.name
    if holes.thread:
        bench.tapped(holes.thread, None, thick, words, holes.count, holes.name)
    else:
        bench.sized(holes.dia, thick, words, holes.count, holes.name, ())


def _height(mill: Mill, tall: float, in_vice: bool) -> tuple[str, ...]:
    base = mill.vice_height if in_vice else 10.0
    left = mill.nose_to_table - base - tall
    return (f"From work to spindle nose {left:.0f} mm at most: chuck and drill must go in there.",)


def _beside(
    bench: MillBench, shape: TurnedShape, body: Cylinder | None, holes: list[CrossHole]
) -> tuple[str, ...]:
    """A chuck that meets a larger land beside the hole: how far drill and tap must stand out of it."""
    lines: list[str] = []
    if body is None:
        return ()
    for hole in holes:
        near = [
            largest(other) / 2
            for other in shape.outside
            if other.name != body.name
            and min(abs(other.start - hole.z), abs(other.end - hole.z)) < CHUCK_RADIUS
        ]
        over = max(near, default=0.0) - body.dia.value / 2
        if over <= 0:
            continue
        size = thread(hole.thread).tapping_drill if hole.thread else hole.dia.value
        into = next((b.dia.value for b in shape.bores if b.name == hole.into), 0.0)
        needed = over + (body.dia.value - into) / 2 + 3.0
        if standing_out(size) < needed:
            bench.caution(
                433,
                f"{hole.name} lies beside a land {Mm(2 * max(near)):g} in diameter: the drill chuck meets it.",
                hole.name,
                f"Use a long-series drill and tap that stand out {Mm(needed):.0f} or more, or a collet in place of the chuck.",
                figure=f"a jobber drill {size:g} stands out about {standing_out(size):.0f} mm",
                bound=f"{needed:.0f} mm",
            )
            lines.append(
                f"The land beside {hole.name} stands in the chuck's way: drill and tap {Mm(needed):.0f} out or more."
            )
    return tuple(lines)


def _cross_card(
    part: Part, shape: TurnedShape, holes: list[CrossHole], angle: float, shop: Shop, mill: Mill, number: int
) -> tuple[Card, list[Finding]]:
    bench = MillBench(part, shop, mill, number)
    body = next(
        (
            f
            for f in shape.outside
            if isinstance(f, Cylinder) and f.start - 1e-6 <= holes[0].z <= f.end + 1e-6
        ),
        None,
    )
    dia = body.dia.value if body else largest_outside(shape)
    bench.spot(len(holes), holes[0].name)
    beside = _beside(bench, shape, body, holes)
    for hole in holes:
        thick = dia / 2 if hole.walls == 1 else dia
        into = next((b for b in shape.bores if b.name == hole.into), None)
        if hole.walls == 1 and into is not None:
            thick = (dia - into.dia.value) / 2
        if hole.thread:
            bench.tapped(hole.thread, None, thick, hole.name, 1, hole.name)
        else:
            bench.sized(hole.dia, thick, hole.name, 1, hole.name, ())
    spots = [
        Spot(hole.z, 0.0, f"{hole.name}: {hole.thread or f'dia {Mm(hole.dia.value):g}'}") for hole in holes
    ]
    fits = dia <= mill.vice_opening
    hold = Hold(
        "vice, round in a vee block" if fits else "vee block, clamped",
        "",
        body.name if body else "outside",
        dia,
        0.0,
        0.0,
        0.04,
        "The hole must point at the axis, so the round lies in a vee under the spindle.",
        "face A against a stop",
    )
    turned = f" Turned to {angle:g} deg from the first." if angle else ""
    card = Card(
        part.name,
        number,
        number,
        "mill",
        "across: " + ", ".join(h.name for h in holes),
        "",
        hold,
        tuple(bench.steps),
        (
            f"X zero on face A. Y zero on the axis: touch both sides of {Mm(dia):g}, halve.{turned}",
            *beside,
            "Drill towards the vee. A broken-through bore catches the drill: feed gently at the end.",
            *_height(mill, dia, True),
            *START,
        ),
        tuple(dict.fromkeys(step.tool for step in bench.steps)),
        hole_places(mill, spots),
        (),
        round(sum(step.minutes for step in bench.steps) + rule("minutes", "set_up"), 1),
        goes_wrong=(
            "The drill slides off the round: spot first, or mill a small flat.",
            "A burr inside the bore: run the reamer or a scraper through by hand afterwards.",
        ),
        why="Drilled after turning, so that the bore it meets is finished and can be deburred.",
    )
    return card, bench.findings
