"""The card of one face of a plate: its steps, slots and pockets, then its holes, all in one setting."""

from __future__ import annotations

import itertools

from tommybar.design.model import Part
from tommybar.findings import Finding
from tommybar.making.cards import Card, Hold
from tommybar.making.lengths import Mm
from tommybar.making.mill_steps import MillBench
from tommybar.making.milling.counterbores import counterbore
from tommybar.making.milling.pockets import pocket
from tommybar.making.milling.room import room_lines
from tommybar.making.milling.rules import mill_rule
from tommybar.making.milling.safety import START
from tommybar.making.milling.shoulders import shoulder
from tommybar.making.milling.sized_holes import blind_hole, through_hole
from tommybar.making.milling.slots import slot
from tommybar.making.milling.square_card import too_wide
from tommybar.making.milling.touching import corner_words, finder_of
from tommybar.making.milling.travel import within_travel
from tommybar.making.visiting import Spot, hole_places
from tommybar.shapes.features import PlateFace, PlateHole, PlateShape, Slot
from tommybar.shapes.plates import FaceSize, face_size
from tommybar.shop.model import Mill, Shop
from tommybar.shop.vice import between_jaws, must_be_gripped, opens


def upright_holes(shape: PlateShape, face: PlateFace) -> list[PlateHole]:
    """Holes of a face that go straight in."""
    return [hole for hole in shape.holes if hole.face == face and not hole.tilt]


def has_work(shape: PlateShape, face: PlateFace) -> bool:
    """Whether anything is cut in a face in its plain setting."""
    milled = (
        *(one.face for one in shape.slots),
        *(one.face for one in shape.pockets),
        *(one.face for one in shape.steps),
    )
    return face in milled or bool(upright_holes(shape, face))


def face_card(
    part: Part,
    shape: PlateShape,
    face: PlateFace,
    shop: Shop,
    mill: Mill,
    number: int,
    gives_to: dict[str, tuple[str, ...]],
) -> tuple[Card, list[Finding]]:
    """Everything of a face that is cut straight down."""
    bench = MillBench(part, shop, mill, number, gives_to, face=f"the {face} face")
    seen = face_size(shape, face)
    names: list[str] = []
    for step in (one for one in shape.steps if one.face == face):
        axis = "X" if step.side in ("left", "right") else "Y"
        shoulder(
            bench,
            step.name,
            step.side,
            step.wide,
            step.depth,
            axis=axis,
            extent=seen.width if axis == "X" else seen.height,
        )
        names.append(step.name)
    for one in (one for one in shape.slots if one.face == face):
        _slot(bench, one, seen)
        names.append(one.name)
    for cut in (one for one in shape.pockets if one.face == face):
        deep = cut.depth if cut.depth is not None else seen.depth
        through = cut.depth is None
        pocket(bench, cut.name, cut.x, cut.y, cut.length, cut.width, cut.corner, deep, through=through)
        names.append(cut.name)
    holes = upright_holes(shape, face)
    _holes(bench, holes, seen.depth)
    hold, base = _hold(bench, shape, face)
    spots = [
        *(
            Spot(h.x, h.y, f"{h.name}: {h.thread or f'dia {Mm(h.dia.value):g} {h.dia.zone}'.strip()}")
            for h in holes
        ),
        *bench.spots,
    ]
    within_travel(bench, spots)
    card = Card(
        part.name,
        number,
        number,
        "mill",
        f"{face} face: " + ", ".join(dict.fromkeys([*names, *(h.name for h in holes)])),
        "",
        hold,
        tuple(bench.steps),
        (
            f"Zero at the lower left corner of the {face} face ({Mm(seen.width):g} x {Mm(seen.height):g}): "
            f"{corner_words(finder_of(shop))}.",
            *_over_parallels(holes, hold, seen),
            *room_lines(bench, base, seen.depth),
            *START,
        ),
        bench.drawer(),
        hole_places(mill, spots),
        _chords(holes),
        bench.minutes(),
        goes_wrong=(
            "Half the edge finder forgotten: spot, then measure from the edge before drilling.",
            "Drill meets a parallel: look under every place first.",
        ),
        why="All of a face in one setting, so that its holes are true to each other.",
    )
    return card, bench.findings


def _slot(bench: MillBench, one: Slot, seen: FaceSize) -> None:
    turned = one.angle % 180.0
    if min(abs(turned), abs(turned - 90.0), abs(turned - 180.0)) > 1e-6:
        bench.stop(
            447,
            f"{one.name} lies at {one.angle:g} deg on its face; slots along its edges are planned.",
            one.name,
            "Set the part at that angle by a protractor or on a rotary table, and mill it from the drawing.",
            figure=f"{one.angle:g} deg",
            bound="0 or 90 deg",
        )
        return
    upright = abs(turned - 90.0) < 1e-6
    along, across = (one.y, one.x) if upright else (one.x, one.y)
    extent = seen.height if upright else seen.width
    slot(
        bench,
        one.name,
        one.long,
        one.width,
        one.depth if one.depth is not None else seen.depth,
        start_open=along - one.long / 2 <= 1e-6,
        end_open=along + one.long / 2 >= extent - 1e-6,
        at=f", along {'Y' if upright else 'X'}",
        through=one.depth is None,
        middle=(along, across),
        upright=upright,
    )


def _group_words(names: list[str]) -> str:
    return names[0] if len(names) == 1 else f"{len(names)} places"


def _holes(bench: MillBench, holes: list[PlateHole], thick: float) -> None:
    if not holes:
        return
    bench.spot(len(holes), holes[0].name)
    groups: dict[tuple[object, ...], list[PlateHole]] = {}
    for hole in sorted(holes, key=lambda h: (h.dia.toleranced, h.dia.value, h.name)):
        alike = (
            hole.thread,
            hole.dia.value,
            hole.depth,
            hole.dia.zone,
            hole.sink_dia,
            hole.sink_depth,
            hole.sink_angle,
            hole.bottom,
            hole.left,
            hole.name if hole.dia.toleranced else "",  # each measured on its own
        )
        groups.setdefault(alike, []).append(hole)
    for group in groups.values():
        first, words, count = group[0], _group_words([h.name for h in group]), len(group)
        flat = first.bottom == "flat"
        if first.thread:
            bench.tapped(first.thread, first.depth, thick, words, count, first.name, left=first.left)
        elif first.depth is not None:
            blind_hole(bench, first.dia, first.depth, thick, words, count, first.name, flat=flat)
        else:
            through_hole(bench, first.dia, thick, words, count, first.name)
        if first.sink_dia > 0 and first.sink_angle > 0:
            _countersink(bench, first, words, count)
        elif first.sink_dia > 0:
            counterbore(bench, first.sink_dia, first.sink_depth, first.dia.value, words, count, first.name)


def _countersink(bench: MillBench, hole: PlateHole, words: str, count: int) -> None:
    able = [c for c in bench.shop.countersinks if c >= hole.sink_dia - 1e-6]
    if not able or abs(hole.sink_angle - 90.0) > 0.01:
        bench.stop(
            413,
            f"{hole.name}: no countersink in the drawer makes {hole.sink_dia:g} mm at {hole.sink_angle:g} deg.",
            hole.name,
            "Buy or borrow it; the shop file's countersinks are 90 deg.",
            figure=f"{hole.sink_dia:g} mm, {hole.sink_angle:g} deg",
            bound="countersinks: "
            + (", ".join(f"{c:g}" for c in bench.shop.countersinks) or "none")
            + " mm, 90 deg",
        )
        return
    bench.countersink(min(able), hole.sink_dia, words, count, hole.name)


def _hold(bench: MillBench, shape: PlateShape, face: PlateFace) -> tuple[Hold, float]:
    mill = bench.mill
    gripped = between_jaws(face, shape.width.value, shape.thickness.value)
    standing = must_be_gripped(face)
    in_vice = opens(mill, gripped)
    seen = face_size(shape, face)
    if not in_vice and standing:
        bench.stop(
            431,
            f"{shape_words(bench, gripped)} stands in the vice with its {face} face up; the vice opens {mill.vice_opening:g} mm.",
            face,
            "Bolt it to an angle plate and write the card by hand, or make the part thinner.",
            figure=f"{gripped:g} mm",
            bound=f"{mill.vice_opening:g} mm, vice opening of the shop",
        )
    elif not in_vice:
        too_wide(bench, gripped, face)
    base = mill.vice_height + mill_rule("parallel_least") if in_vice else mill_rule("plate_under")
    if standing and in_vice:
        base = mill.vice_height
    device = "vice, standing on edge" if standing else "vice, on parallels"
    stop = "squared with a small square, end against a stop" if standing else "end against the vice stop"
    if not in_vice and not standing:
        device, stop = (
            "clamped flat on a sacrificial plate",
            "an edge along the table by the indicator, end against a stop",
        )
    hold = Hold(
        device,
        "",
        f"{face} face up",
        0.0,
        mill.vice_depth if in_vice else 0.0,
        seen.depth,
        0.02,
        "Both zero edges are milled or as supplied and square; the fixed jaw carries the one, a stop the other."
        if in_vice
        else "Both zero edges are milled or as supplied and square; one lies along the table.",
        stop,
    )
    return hold, base


def shape_words(bench: MillBench, gripped: float) -> str:
    """The part and what the jaws would have to take."""
    return f"{bench.part.name}, {gripped:g} mm thick,"


def _over_parallels(holes: list[PlateHole], hold: Hold, seen: FaceSize) -> tuple[str, ...]:
    """Through holes whose drill would come out on a parallel that lies along a jaw."""
    if hold.device != "vice, on parallels":
        return ()
    wide = mill_rule("parallel_wide")
    over = [
        h.name
        for h in holes
        if h.depth is None and (h.y - h.dia.value / 2 < wide or h.y + h.dia.value / 2 > seen.height - wide)
    ]
    if not over:
        return ()
    return (
        f"Over a parallel {Mm(wide):g} thick that lies along a jaw: {', '.join(over)}. Shift the parallel inwards or take a "
        "thinner one before drilling.",
    )


def _chords(holes: list[PlateHole]) -> tuple[str, ...]:
    checks = []
    ordered = sorted(holes, key=lambda h: (round(h.x, 3), round(h.y, 3)))
    for one, two in itertools.pairwise(ordered):
        far = ((one.x - two.x) ** 2 + (one.y - two.y) ** 2) ** 0.5
        checks.append(f"{one.name} to {two.name}: {Mm(far):.2f} centre to centre")
    return tuple(checks[:6])
