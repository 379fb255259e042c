"""Rows of the table for what else is cut in a plate: slots, pockets, steps, vees, dovetails, slits, edges."""

from __future__ import annotations

from tommybar.pack.plates.holes import place_of
from tommybar.pack.plates.told import DIA, Row, Spot, Told
from tommybar.pack.units import Reader
from tommybar.shapes.features import (
    Dovetail,
    PlateEdge,
    PlateFace,
    PlateShape,
    PlateSlit,
    PlateStep,
    Pocket,
    Slot,
    Vee,
)
from tommybar.shapes.outlines import extent
from tommybar.shapes.plate_features import slot_loop
from tommybar.shapes.plate_frames import face_frame
from tommybar.shapes.plates import face_size

Place = tuple[float, float, float]


def spot_on(shape: PlateShape, face: PlateFace, u: float, v: float) -> Place:
    """A spot of a face, x y z from the datum corner, z up [mm]."""
    x, y, down = face_frame(shape, face).point(u, v)
    return x + 0.0, y + 0.0, shape.thickness.value - down


def cut_rows(shape: PlateShape, reader: Reader) -> list[Row]:
    """One row for each feature, in the order of a setting: steps and slots, pockets, vees, slits, edges."""
    rows: list[Row] = []
    for n, step in enumerate(shape.steps, 1):
        rows.append(_step(step, shape, reader, f"step {n}" if len(shape.steps) > 1 else "step"))
    for n, slot in enumerate(shape.slots, 1):
        rows.append(_slot(slot, shape, reader, f"slot {n}" if len(shape.slots) > 1 else "slot"))
    for n, pocket in enumerate(shape.pockets, 1):
        rows.append(_pocket(pocket, shape, reader, f"pocket {n}" if len(shape.pockets) > 1 else "pocket"))
    for n, vee in enumerate(shape.vees, 1):
        rows.append(_vee(vee, shape, reader, f"vee {n}" if len(shape.vees) > 1 else "vee"))
    for n, tail in enumerate(shape.dovetails, 1):
        rows.append(_tail(tail, shape, reader, f"dovetail {n}" if len(shape.dovetails) > 1 else "dovetail"))
    for n, slit in enumerate(shape.slits, 1):
        rows.append(_slit(slit, shape, reader, f"slit {n}" if len(shape.slits) > 1 else "slit"))
    rows += [_edge(edge, reader) for edge in shape.edges]
    for one in shape.engravings:
        told = Told(one.name, reader)
        told.say(f"scale on the {one.on} face:")
        told.word("count", "divisions", str(one.divisions), one.divisions)
        told.length("length", "over", one.over, "divisions over ")
        told.length("length", "short", one.short, ", lines ")
        if one.long_every:
            told.word("count", "long_every", str(one.long_every), one.long_every, ", every ", "th")
            told.length("length", "long", one.long, "line ")
        if one.words:
            told.say(f', figures "{one.words}"')
        rows.append(told.row("scale", (None, None, None)))
    return rows


def _deep(told: Told, depth: float | None) -> None:
    if depth is None:
        told.word("form", "depth", "through")
    else:
        told.length("depth", "depth", depth, after=" deep")


def _in_face(face: str) -> str:
    """Which face a feature is cut in, when it is not the one seen from above."""
    return "" if face == "top" else f", in the {face}"


def _slot(slot: Slot, shape: PlateShape, reader: Reader, tag: str) -> Row:
    told = Told(slot.name, reader)
    told.sized("width", "width", slot.width, after=" wide")
    told.length("length", "long", slot.long, "× ", " long overall,")
    size = face_size(shape, slot.face)
    u1, v1, u2, v2 = extent(slot_loop(slot))
    is_open = u1 < -1e-6 or v1 < -1e-6 or u2 > size.width + 1e-6 or v2 > size.height + 1e-6
    told.word("form", "ends", "open at the outline," if is_open else "half-round ends,")
    _deep(told, slot.depth)
    if slot.angle:
        told.angle("angle", slot.angle, ", at ", " to the length")
    middle = spot_on(shape, slot.face, slot.x, slot.y)
    told.say(_in_face(slot.face) + "; to its middle")
    return told.row(tag, place_of(shape, slot.face, *middle), slot.face, (middle,), slot.width.value / 2)


def _pocket(pocket: Pocket, shape: PlateShape, reader: Reader, tag: str) -> Row:
    told = Told(pocket.name, reader)
    told.sized("length", "length", pocket.length)
    told.sized("width", "width", pocket.width, "× ", ",")
    told.length("radius", "corner", pocket.corner, "corners R", ",")
    _deep(told, pocket.depth)
    told.say(_in_face(pocket.face) + "; to its middle")
    middle = spot_on(shape, pocket.face, pocket.x, pocket.y)
    return told.row(tag, place_of(shape, pocket.face, *middle), pocket.face, (middle,), 0.0)


def _step(step: PlateStep, shape: PlateShape, reader: Reader, tag: str) -> Row:
    told = Told(step.name, reader)
    told.word("form", "side", f"along the {step.side} side:")
    told.sized("width", "wide", step.wide, after=" wide ×")
    told.sized("depth", "depth", step.depth, after=f" deep from the {step.face}")
    x, y, thick = shape.length.value, shape.width.value, shape.thickness.value
    wide, deep = step.wide.value / 2, step.depth.value
    spot = {
        "left": (wide, y / 2), "right": (x - wide, y / 2), "front": (x / 2, wide), "back": (x / 2, y - wide),
    }[step.side]  # fmt: skip
    height = thick - deep if step.face == "top" else deep
    return told.row(tag, (None, None, None), step.face, ((*spot, height),), 0.0)


def _across(shape: PlateShape, along: str, face: PlateFace, spot: Place) -> Spot:
    """Only the place across a groove counts; along it it runs right over the face."""
    x, y, z = place_of(shape, face, *spot)
    if along == "y":
        return (x, None, None) if face not in ("left", "right") else (None, y, None)
    return (None, y, None) if face in ("top", "bottom") else (None, None, z)


def _vee(vee: Vee, shape: PlateShape, reader: Reader, tag: str) -> Row:
    told = Told(vee.name, reader)
    told.angle("included", vee.included, "", " included,")
    told.length("width", "width", vee.width, after=f" wide at the face, right across{_in_face(vee.face)}")
    size = face_size(shape, vee.face)
    at = (size.width / 2, vee.at) if vee.along == "x" else (vee.at, size.height / 2)
    spot = spot_on(shape, vee.face, *at)
    return told.row(tag, _across(shape, vee.along, vee.face, spot), vee.face, (spot,), vee.width / 2)


def _tail(tail: Dovetail, shape: PlateShape, reader: Reader, tag: str) -> Row:
    told = Told(tail.name, reader)
    told.word("form", "tail", "left standing," if tail.tail else "slot,")
    where = "at its foot" if tail.tail else "at the face"
    told.sized("width", "narrow", tail.narrow, after=f" wide {where},")
    told.length("depth", "depth", tail.depth, after=" deep,")
    told.angle("angle", tail.angle, "flanks ", " from the floor; measure over pins")
    size = face_size(shape, "top")
    at = (size.width / 2, tail.at) if tail.along == "x" else (tail.at, size.height / 2)
    spot = spot_on(shape, "top", *at)
    return told.row(tag, _across(shape, tail.along, "top", spot), "top", (spot,), tail.narrow.value / 2)


def _slit(slit: PlateSlit, shape: PlateShape, reader: Reader, tag: str) -> Row:
    told = Told(slit.name, reader)
    told.word("form", "side", f"saw cut from the {slit.side}")
    told.length("width", "width", slit.width, after=" wide ×")
    told.length("depth", "long", slit.long, after=" long, through the whole thickness")
    x, y, _ = spot_on(shape, slit.side, slit.at, 0.0)
    spot = (x, y, shape.thickness.value)
    place = _across(shape, "y" if slit.side in ("front", "back") else "x", "top", spot)
    return told.row(tag, place, "top", (spot,), slit.width / 2)


def _edge(edge: PlateEdge, reader: Reader) -> Row:
    told = Told(edge.name, reader)
    told.say(f"all round the {edge.face} face:")
    if edge.round:
        told.length("radius", "size", edge.size, "R")
    else:
        told.length("chamfer", "size", edge.size, after=" × 45°")
    return told.row("edge", (None, None, None))


def outline_rows(shape: PlateShape, reader: Reader) -> list[Row]:
    """Rows for an outline that is no plain rectangle: its corners or its round ends, from the datum corner."""
    top = shape.thickness.value
    if shape.outline is None:
        if not shape.corner:
            return []
        told = Told("outline", reader)
        told.word("count", "corners", "4", 4)
        told.length("radius", "corner", shape.corner, "corners R")
        return [told.row("outline", (None, None, None))]
    outline = shape.outline
    if outline.form == "disc":
        one = outline.bosses[0]
        told = Told("outline", reader)
        told.length("diameter", "disc", 2 * one.radius, f"disc {DIA}")
        return [told.row("disc", (0.0, 0.0, None), "top", ((one.x, one.y, top),), 1.0)]
    rows: list[Row] = []
    if outline.form == "bosses":
        for n, boss in enumerate(outline.bosses, 1):
            told = Told(f"end_{n}", reader)
            told.length("radius", "radius", boss.radius, "round end R")
            at = place_of(shape, "top", boss.x, boss.y, top)
            rows.append(told.row(f"end {n}", at, "top", ((boss.x, boss.y, top),), 1.0))
        if len(outline.bosses) > 1:
            told = Told("outline", reader)
            told.word("form", "flanks", "flanks straight, tangent to the round ends")
            rows.append(told.row("", (None, None, None)))
        return rows
    for n, corner in enumerate(outline.corners, 1):
        told = Told(f"corner_{n}", reader)
        if corner.radius:
            told.length("radius", "radius", corner.radius, "rounded R")
        rows.append(told.row(str(n), (corner.x, corner.y, None), "top", ((corner.x, corner.y, top),), 0.3))
    return rows


def datum_is_corner(shape: PlateShape) -> bool:
    """Whether the corner from which places are measured is a corner of metal."""
    return shape.outline is None and not shape.corner
