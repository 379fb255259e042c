"""Rows of the table for what else is cut in a plate: slots, pockets, steps, vees, dovetails, slits, edges."""

from __future__ import annotations

from tommybar.pack.plates.holes import place_of
from tommybar.pack.plates.told import DIA, Row, Spot, Told
from tommybar.pack.units import Reader
from tommybar.shapes.features import (
    Dovetail,
    Engraving,
    PlateEdge,
    PlateFace,
    PlateShape,
    PlateSlit,
    PlateStep,
    Pocket,
    Rays,
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


Drawn = frozenset[tuple[str, str]]  # sizes that a view gives, by feature


def cut_rows(shape: PlateShape, reader: Reader, drawn: Drawn = frozenset()) -> list[Row]:
    """One row for each feature, in the order of a setting: steps and slots, pockets, vees, slits, edges.

    What ``drawn`` names stands in a view and is not said again; a feature of
    which nothing is left to say has no row.
    """
    rows: list[Row] = []

    def named(kind: str, number: int, many: tuple[object, ...]) -> str:
        return f"{kind} {number}" if len(many) > 1 else kind

    def told(feature: str) -> Told:
        return Told(feature, reader, drawn=drawn)

    rows += [
        _step(one, shape, told(one.name), named("step", n, shape.steps))
        for n, one in enumerate(shape.steps, 1)
    ]
    rows += [
        _slot(one, shape, told(one.name), named("slot", n, shape.slots))
        for n, one in enumerate(shape.slots, 1)
    ]
    rows += [
        _pocket(one, shape, told(one.name), named("pocket", n, shape.pockets))
        for n, one in enumerate(shape.pockets, 1)
    ]
    rows += [
        _vee(one, shape, told(one.name), named("vee", n, shape.vees)) for n, one in enumerate(shape.vees, 1)
    ]
    rows += [
        _tail(one, shape, told(one.name), named("dovetail", n, shape.dovetails))
        for n, one in enumerate(shape.dovetails, 1)
    ]
    rows += [
        _slit(one, shape, told(one.name), named("slit", n, shape.slits))
        for n, one in enumerate(shape.slits, 1)
    ]
    rows += [_edge(edge, told(edge.name)) for edge in shape.edges]
    rows += [_scale(one, told(one.name)) for one in shape.engravings]
    rows += [_rays(one, shape, told(one.name)) for one in shape.rays]
    return [row for row in rows if row.words or any(row.places)]


def _scale(one: Engraving, told: Told) -> Row:
    told.say(f"scale on the {one.on} face:")
    told.word("count", "divisions", str(one.divisions), one.divisions)
    told.length("length", "over", one.over, "divisions over ")
    told.length("length", "short", one.short, ", lines ")
    if one.long_every:
        told.word("count", "long_every", str(one.long_every), one.long_every, ", every ", "th")
        told.length("length", "long", one.long, "line ")
    if one.words:
        told.say(f', figures "{one.words}"')
    return told.row("scale", (None, None, None))


def _rays(one: Rays, shape: PlateShape, told: Told) -> Row:
    told.say(f"{len(one.angles)} lines engraved")
    told.length("length", "inner", one.inner, "from ")
    told.length("length", "outer", one.outer, "to ", " out of this place;")
    for n, angle in enumerate(one.angles):
        word = f' "{one.words[n]}"' if one.words else ""
        told.angle(f"angle {n + 1}", angle, "", word + ("," if n < len(one.angles) - 1 else ""))
    x, y, z = spot_on(shape, "top", one.x, one.y)
    return told.row("lines", place_of(shape, "top", x, y, z), "top", ((x, y, z),))


def _deep(told: Told, depth: float | None) -> None:
    if depth is None:
        told.word("form", "depth", "through")
    else:
        told.length("depth", "depth", depth, after=" deep")


def _in_face(face: str) -> str:
    """Which face a feature is cut in, when it is not the one seen from above."""
    return "" if face == "top" else f", in the {face}"


def _slot(slot: Slot, shape: PlateShape, told: Told, tag: str) -> Row:
    seen = told.given("width", "long")
    told.sized("width", "width", slot.width, after=" wide")
    told.length("length", "long", slot.long, "× ", " long overall,")
    if not seen:
        size = face_size(shape, slot.face)
        u1, v1, u2, v2 = extent(slot_loop(slot))
        is_open = u1 < -1e-6 or v1 < -1e-6 or u2 > size.width + 1e-6 or v2 > size.height + 1e-6
        told.word("form", "ends", "open at the outline," if is_open else "half-round ends,")
    _deep(told, slot.depth)
    if slot.angle:  # a slot that stands is drawn so; said, it is no guess
        told.angle("angle", slot.angle, ", at ", " to the length")
    middle = spot_on(shape, slot.face, slot.x, slot.y)
    if not seen:
        told.say(_in_face(slot.face) + "; to its middle")
    return told.row(tag, place_of(shape, slot.face, *middle), slot.face, (middle,), slot.width.value / 2)


def _pocket(pocket: Pocket, shape: PlateShape, told: Told, tag: str) -> Row:
    seen = told.given("length", "width")
    told.sized("length", "length", pocket.length)
    told.sized("width", "width", pocket.width, "× ", ",")
    told.length("radius", "corner", pocket.corner, "corners R", ",")
    _deep(told, pocket.depth)
    middle = spot_on(shape, pocket.face, pocket.x, pocket.y)
    if not seen:
        told.say(_in_face(pocket.face) + "; to its middle")
    return told.row(tag, place_of(shape, pocket.face, *middle), pocket.face, (middle,), 0.0)


def _step(step: PlateStep, shape: PlateShape, told: Told, tag: str) -> Row:
    if not told.given("wide"):
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


def _vee(vee: Vee, shape: PlateShape, told: Told, tag: str) -> Row:
    seen = told.given("included")
    told.angle("included", vee.included, "", " included,")
    told.length("width", "width", vee.width, after=" wide at the face,")
    if not seen:
        told.say(f"right across{_in_face(vee.face)}")
    size = face_size(shape, vee.face)
    at = (size.width / 2, vee.at) if vee.along == "x" else (vee.at, size.height / 2)
    spot = spot_on(shape, vee.face, *at)
    return told.row(tag, _across(shape, vee.along, vee.face, spot), vee.face, (spot,), vee.width / 2)


def _tail(tail: Dovetail, shape: PlateShape, told: Told, tag: str) -> Row:
    seen = told.given("narrow")
    told.word("form", "tail", "left standing," if tail.tail else "slot,")
    where = "at its foot" if tail.tail else "at the face"
    told.sized("width", "narrow", tail.narrow, after=f" wide {where},")
    told.length("depth", "depth", tail.depth, after=" deep,")
    told.angle("angle", tail.angle, "flanks ", " from the floor;")
    told.say(f"width {where}; measure over pins" if seen else "measure over pins")
    size = face_size(shape, "top")
    at = (size.width / 2, tail.at) if tail.along == "x" else (tail.at, size.height / 2)
    spot = spot_on(shape, "top", *at)
    return told.row(tag, _across(shape, tail.along, "top", spot), "top", (spot,), tail.narrow.value / 2)


def _slit(slit: PlateSlit, shape: PlateShape, told: Told, tag: str) -> Row:
    told.word("form", "side", f"saw cut from the {slit.side}")
    told.length("width", "width", slit.width, after=" wide ×")
    told.length("depth", "long", slit.long, after=" long,")
    told.say("through the whole thickness")
    x, y, _ = spot_on(shape, slit.side, slit.at, 0.0)
    spot = (x, y, shape.thickness.value)
    place = _across(shape, "y" if slit.side in ("front", "back") else "x", "top", spot)
    return told.row(tag, place, "top", (spot,), slit.width / 2)


def _edge(edge: PlateEdge, told: Told) -> Row:
    if not told.given("size"):
        told.say(f"all round the {edge.face} face:")
    if edge.round:
        told.length("radius", "size", edge.size, "R")
    else:
        told.length("chamfer", "size", edge.size, after=" × 45°")
    return told.row("edge", (None, None, None))


def outline_rows(shape: PlateShape, reader: Reader, drawn: Drawn = frozenset()) -> list[Row]:
    """Rows for an outline that is no plain rectangle: its corners or its round ends, from the datum corner."""
    return [row for row in _outline(shape, reader, drawn) if row.words or any(row.places)]


def _outline(shape: PlateShape, reader: Reader, drawn: Drawn) -> list[Row]:
    top = shape.thickness.value
    if shape.outline is None:
        if not shape.corner or ("outline", "corner") in drawn:
            return []
        told = Told("outline", reader)
        told.word("count", "corners", "4", 4)
        told.length("radius", "corner", shape.corner, "corners R")
        return [told.row("outline", (None, None, None))]
    outline = shape.outline
    if outline.form == "disc":
        one = outline.bosses[0]
        told = Told("outline", reader, drawn=drawn)
        told.length("diameter", "disc", 2 * one.radius, f"disc {DIA}")
        return [told.row("disc", (None, None, None), "top", ((one.x, one.y, top),), 1.0)]
    rows: list[Row] = []
    if outline.form == "bosses":
        for n, boss in enumerate(outline.bosses, 1):
            told = Told(f"end_{n}", reader, drawn=drawn)
            seen = told.given("radius")
            told.length("radius", "radius", boss.radius, "round end R")
            at = (None, None, None) if seen else place_of(shape, "top", boss.x, boss.y, top)
            rows.append(told.row(f"end {n}", at, "top", ((boss.x, boss.y, top),), 1.0))
        if len(outline.bosses) > 1:
            told = Told("outline", reader)
            told.word("form", "flanks", "flanks straight, tangent to the round ends")
            rows.append(told.row("", (None, None, None)))
        return rows
    seen = any((f"corner_{n}", axis) in drawn for n in range(1, len(outline.corners) + 1) for axis in "xy")
    for n, corner in enumerate(outline.corners, 1):
        told = Told(f"corner_{n}", reader, drawn=drawn)
        if corner.radius:
            told.length("radius", "radius", corner.radius, "rounded R")
        at = (None, None, None) if seen else (corner.x, corner.y, None)
        rows.append(told.row(str(n), at, "top", ((corner.x, corner.y, top),), 0.3))
    return rows


def datum_is_corner(shape: PlateShape) -> bool:
    """Whether the corner from which places are measured is a corner of metal."""
    return shape.outline is None and not shape.corner
