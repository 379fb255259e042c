"""Cards of a plate that want it tilted: vees, and holes at a slant."""

from __future__ import annotations

import math

from tommybar.design.model import Part
from tommybar.findings import Finding
from tommybar.making.cards import Card, Hold
from tommybar.making.lengths import Mm
from tommybar.making.mill_steps import MillBench
from tommybar.making.milling.angled_holes import angled_hole, drill_angled
from tommybar.making.milling.room import room_lines
from tommybar.making.milling.safety import START
from tommybar.making.milling.touching import finder_of
from tommybar.making.milling.vees import vee
from tommybar.shapes.features import PlateHole, PlateShape, Vee
from tommybar.shapes.plates import face_size
from tommybar.shop.model import Mill, Shop


def vee_card(
    part: Part,
    shape: PlateShape,
    one: Vee,
    shop: Shop,
    mill: Mill,
    number: int,
    gives_to: dict[str, tuple[str, ...]],
) -> tuple[Card, list[Finding]]:
    """One vee, the plate lying at 45 degrees."""
    bench = MillBench(part, shop, mill, number, gives_to, face=f"the {one.face} face")
    seen = face_size(shape, one.face)
    vee(bench, one.name, one.width, one.included, one.at)
    across = seen.height if one.along == "x" else seen.width
    tall = (across + seen.depth) * math.sin(math.radians(45.0))
    card = Card(
        part.name,
        number,
        number,
        "mill",
        f"vee in the {one.face} face: {one.name}",
        "",
        Hold(
            "vice, tilted to 45 deg",
            "",
            f"{one.face} face up",
            0.0,
            mill.vice_depth,
            tall,
            0.05,
            "Tilted, side and end of an end mill make the right angle of the vee.",
            "set by a protractor or a square's 45 deg, the groove along the table",
        ),
        tuple(bench.steps),
        (*room_lines(bench, mill.vice_height, tall), *START),
        bench.drawer(),
        minutes=bench.minutes(),
        goes_wrong=("Tilted work has little to grip: light cuts, or a pair of vee blocks with clamps.",),
        why="A vee of 90 deg needs one setting this way.",
    )
    return card, bench.findings


def slant_card(
    part: Part,
    shape: PlateShape,
    hole: PlateHole,
    shop: Shop,
    mill: Mill,
    number: int,
    gives_to: dict[str, tuple[str, ...]],
) -> tuple[Card, list[Finding]]:
    """One hole at a slant, the plate tilted until it stands upright."""
    bench = MillBench(part, shop, mill, number, gives_to, face="the flat")
    seen = face_size(shape, hole.face)
    angle = 90.0 - hole.tilt
    along_x = min(abs(math.sin(math.radians(hole.towards))), 1.0) < 1e-6
    along_y = abs(math.cos(math.radians(hole.towards))) < 1e-6
    lines: tuple[str, ...] = ()
    if not (along_x or along_y):
        bench.stop(
            447,
            f"{hole.name} leans towards {hole.towards:g} deg on its face; slants along the edges are planned.",
            hole.name,
            "Draw it along an edge, or set it up from the drawing on a tilting vice.",
            figure=f"{hole.towards:g} deg",
            bound="0, 90, 180 or 270 deg",
        )
    elif hole.depth is not None or hole.thread:
        bench.stop(
            905,
            f"{hole.name}: a slanting hole that is blind or tapped is not planned.",
            hole.name,
            "Drill it through and plain, or make it from the drawing.",
            figure=f"{hole.tilt:g} deg from upright",
        )
    else:
        along, across = (seen.width, seen.height) if along_x else (seen.height, seen.width)
        lines = drill_angled(
            bench, hole.name, hole.dia, seen.depth, angle, along, across, flat_drawn=hole.flat
        )
        if lines:
            _mouths(bench, hole, along_x, along, angle, seen.depth)
    tall = seen.depth * math.sin(math.radians(angle)) + (seen.width if along_x else seen.height) * math.cos(
        math.radians(angle)
    )
    card = Card(
        part.name,
        number,
        number,
        "mill",
        f"slanting hole in the {hole.face} face: {hole.name}",
        "",
        Hold(
            "clamped on a sine bar or angle, against an angle plate",
            "",
            f"{hole.face} face up, tilted {hole.tilt:g} deg",
            0.0,
            0.0,
            tall,
            0.05,
            "The hole stands upright under the spindle when the block leans.",
            "an edge along the table by the indicator",
        ),
        tuple(bench.steps),
        (
            *lines,
            f"Place: mark X {Mm(hole.x):.2f} Y {Mm(hole.y):.2f} on the {hole.face} face before tilting; bring the spindle onto "
            f"the mark, and to the middle of the other way by touching both sides "
            f"(half a {Mm(finder_of(shop)):g} finder to each).",
            *room_lines(bench, mill.vice_height, tall),
            "The block is clamped as well as set: nothing stands on loose gauge blocks while it is cut.",
            *START,
        ),
        bench.drawer(),
        minutes=bench.minutes(),
        goes_wrong=(
            "The complement set: look at the block from the side, the hole's angle to the base is drawn.",
            "The drill walks down the slope: no flat, or too small a flat.",
        ),
        why="Flat, spot and drill in one setting, so that the hole goes where the flat is.",
    )
    return card, bench.findings


def _mouths(
    bench: MillBench, hole: PlateHole, along_x: bool, along: float, angle: float, high: float
) -> None:
    """Where the two mouths of the hole lie along the tilt, against the ends of the block."""
    one = angled_hole(high, hole.dia.value, angle)
    entry = hole.x if along_x else hole.y
    positive = hole.towards % 360.0 in (0.0, 90.0)
    leaves = entry + one.drift if positive else entry - one.drift  # going in, it moves the way it leans
    for what, place in (("entry", entry), ("exit", leaves)):
        if not one.ellipse / 2 <= place <= along - one.ellipse / 2:
            bench.stop(
                445,
                f"{hole.name}: its {what} lies at {place:.2f} mm and is {one.ellipse:.2f} mm long; the block is {along:g} mm "
                "that way.",
                hole.name,
                f"Move it: from {one.ellipse / 2 + 3.0:.2f} mm inwards of both ends.",
                figure=f"{place:.2f} mm",
                bound=f"{one.ellipse / 2:.2f} to {along - one.ellipse / 2:.2f} mm",
            )
