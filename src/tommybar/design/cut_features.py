"""Slots, pockets, steps, vees, dovetails, edges and slits of a plate, and what is refused."""

from __future__ import annotations

import math
from dataclasses import replace

from tommybar.design.reading import TINY, Reading
from tommybar.design.written_plates import PlateFeatures, WrittenPocket, WrittenSlot
from tommybar.design.yaml_file import Place
from tommybar.shapes.features import (
    Dovetail,
    Engraving,
    PlateEdge,
    PlateShape,
    PlateSlit,
    PlateStep,
    Pocket,
    Rays,
    Slot,
    Vee,
)
from tommybar.shapes.outlines import Arc, Loop, extent, placed, stadium
from tommybar.shapes.plates import face_size


def build_cuts(
    read: Reading, part: str, written: PlateFeatures, place: Place, plain: PlateShape, loop: Loop
) -> PlateShape:
    """The plate with all that is cut in it beside its holes."""
    steps = tuple(
        PlateStep(
            one.name,
            one.face,
            one.side,
            read.dim(read.of(one.wide), f"{part}.{one.name}.wide", (*place, "steps", n)),
            read.dim(read.of(one.deep), f"{part}.{one.name}.deep", (*place, "steps", n)),
        )
        for n, one in enumerate(written.steps)
    )
    _refuse_steps(read, steps, place, plain)
    return replace(
        plain,
        slots=tuple(
            _slot(read, part, one, (*place, "slots", n), plain) for n, one in enumerate(written.slots)
        ),
        pockets=tuple(
            _pocket(read, part, one, (*place, "pockets", n), plain) for n, one in enumerate(written.pockets)
        ),
        steps=steps,
        vees=_vees(read, written, place, plain),
        dovetails=_dovetails(read, part, written, place, plain),
        edges=_edges(read, written, place, plain, loop),
        slits=_slits(read, written, place, plain),
        engravings=_engravings(read, written, place, plain),
        rays=_rays(read, written, place, plain),
    )


def _engravings(
    read: Reading, written: PlateFeatures, place: Place, plain: PlateShape
) -> tuple[Engraving, ...]:
    found = []
    for n, one in enumerate(written.engravings):
        here, face = (*place, "engravings", n), face_size(plain, one.face)
        over, short, long = (read.of(figure) for figure in (one.over, one.short, one.long))
        divisions, every = read.of(one.divisions), read.of(one.long_every)
        if over > max(face.width, face.height) + TINY:
            longest = max(face.width, face.height)
            what = f"The scale is {over:g} mm long; the face {one.face} is {longest:g} mm at most."
            read.complain((*here, "over"), what, "Make it shorter.")
        if long < short - TINY:
            what = f"A long line is {long:g} mm; a short one is {short:g} mm."
            read.complain((*here, "long"), what, "Make the long lines longer.")
        if not math.isnan(divisions + every):
            found.append(
                Engraving(one.name, one.face, round(divisions), short, long, round(every), one.words, over)
            )
    return tuple(found)


def _rays(read: Reading, written: PlateFeatures, place: Place, plain: PlateShape) -> tuple[Rays, ...]:
    found = []
    for n, one in enumerate(written.rays):
        here, face = (*place, "rays", n), face_size(plain, "top")
        x, y = (read.of(figure) for figure in one.at)
        inner, outer = read.of(one.inner), read.of(one.outer)
        angles = tuple(read.of(angle) for angle in one.angles)
        if inner >= outer - TINY:
            what = f"The lines begin at {inner:g} mm and end at {outer:g} mm from their place."
            read.complain((*here, "outer"), what, "Let them end further out.")
        if one.words and len(one.words) != len(angles):
            what = f"There are {len(angles)} lines and {len(one.words)} words."
            read.complain((*here, "words"), what, "Write one word for each line, or none.")
        for k, angle in enumerate(angles):
            ends = x + outer * math.cos(math.radians(angle)), y + outer * math.sin(math.radians(angle))
            off = [(end, most) for end, most in zip(ends, (face.width, face.height), strict=True)]
            if any(end < -TINY or end > most + TINY for end, most in off):
                what = (
                    f"The line at {angle:.4g} deg ends at ({ends[0]:.4g}, {ends[1]:.4g}) mm; "
                    f"the face is {face.width:g} x {face.height:g} mm."
                )
                read.complain((*here, "angles", k), what, "Let it end nearer its place.")
        if not any(math.isnan(figure) for figure in (x, y, inner, outer, *angles)):
            found.append(Rays(one.name, x, y, inner, outer, tuple(round(a, 9) for a in angles), one.words))
    return tuple(found)


def _deep(
    read: Reading, one: WrittenSlot | WrittenPocket, here: Place, thick: float, what: str
) -> float | None:
    if one.through == (one.deep is not None):
        read.complain(here, f"The {what} must have either through: true or deep.", "Keep one of the two.")
    if one.deep is None:
        return None
    deep = read.of(one.deep)
    if deep >= thick - TINY:
        told = f"The {what} is {deep:g} mm deep; the plate is {thick:g} mm thick there."
        read.complain((*here, "deep"), told, "Make it shallower, or write through: true.")
    return deep


def _slot(read: Reading, part: str, one: WrittenSlot, here: Place, plain: PlateShape) -> Slot:
    face = face_size(plain, one.face)
    x, y = (read.of(figure) for figure in one.at)
    wide, angle = read.of(one.wide), read.of(one.angle)
    if (one.long is None) == (one.centres is None):
        read.complain(here, "A slot must have either long or centres.", "Keep one of the two.")
    long = read.of(one.long) if one.long is not None else read.of(one.centres) + wide
    if long < wide - TINY:
        what = f"The slot is {long:g} mm long overall; it is {wide:g} mm wide."
        read.complain((*here, "long"), what, "Make it longer, or make it a hole.")
    elif not math.isnan(long + wide + angle + x + y):
        x1, y1, x2, y2 = extent(placed(stadium(long, wide), x, y, angle))
        side = f"the face {one.face} is {face.width:g} x {face.height:g} mm"
        lying = abs(math.sin(math.radians(angle)))
        across = face.height if lying < 0.5 else face.width
        if wide >= across - TINY:
            read.complain(
                (*here, "wide"), f"The slot is {wide:g} mm wide; {side}.", "Make it narrower, or a step."
            )
        elif x2 <= TINY or y2 <= TINY or x1 >= face.width - TINY or y1 >= face.height - TINY:
            what = f"The slot takes x {x1:g} to {x2:g} and y {y1:g} to {y2:g} mm; {side}."
            read.complain((*here, "at"), what, "Move it onto the part.")
        elif (lying < 1e-9 and (y1 < -TINY or y2 > face.height + TINY)) or (
            lying > 1 - 1e-9 and (x1 < -TINY or x2 > face.width + TINY)
        ):
            low, high, way = (y1, y2, "y") if lying < 0.5 else (x1, x2, "x")
            what = f"The slot takes {way} {low:g} to {high:g} mm; {side}."
            read.complain((*here, "at"), what, "Move it inwards, or make it a step.")
    dim = read.dim(wide, f"{part}.{one.name}", here, one.limits)
    deep = _deep(read, one, here, face.depth, "slot")
    return Slot(one.name, one.face, x, y, long, dim, deep, angle)


def _pocket(read: Reading, part: str, one: WrittenPocket, here: Place, plain: PlateShape) -> Pocket:
    face = face_size(plain, one.face)
    x, y = (read.of(figure) for figure in one.at)
    length, width, corner = read.of(one.length), read.of(one.width), read.of(one.corner)
    if corner > min(length, width) / 2 + TINY:
        half = min(length, width) / 2
        what = f"The corners have {corner:g} mm radius; half the pocket's narrower side is {half:g} mm."
        read.complain((*here, "corner"), what, "Give a smaller radius.")
        corner = 0.0
    for middle, size, limit, way in ((x, length, face.width, "x"), (y, width, face.height, "y")):
        if middle - size / 2 < TINY or middle + size / 2 > limit - TINY:
            what = (
                f"The pocket takes {way} {middle - size / 2:g} to {middle + size / 2:g} mm; "
                f"the face {one.face} is {limit:g} mm that way."
            )
            read.complain(
                (*here, "at"), what, "Leave a wall: move it or make it smaller; or make it a step or slot."
            )
    return Pocket(
        one.name,
        one.face,
        x,
        y,
        read.dim(length, f"{part}.{one.name}.length", here),
        read.dim(width, f"{part}.{one.name}.width", here),
        corner,
        _deep(read, one, here, face.depth, "pocket"),
    )


def _refuse_steps(read: Reading, steps: tuple[PlateStep, ...], place: Place, plain: PlateShape) -> None:
    thick = plain.thickness.value
    for index, one in enumerate(steps):
        here = (*place, "steps", index)
        across = plain.width.value if one.side in ("front", "back") else plain.length.value
        if one.wide.value >= across - TINY:
            what = f"The step is {one.wide.value:g} mm wide; the plate is {across:g} mm that way."
            read.complain((*here, "wide"), what, "Make it narrower.")
        if one.depth.value >= thick - TINY:
            what = f"The step is {one.depth.value:g} mm deep; the plate is {thick:g} mm thick."
            read.complain((*here, "deep"), what, "Make it shallower.")
        facing = {"front": "back", "back": "front", "left": "right", "right": "left"}[one.side]
        for other in steps[:index]:
            if other.face == one.face and other.side == one.side:
                what = (
                    f"{other.name} and {one.name} are both cut along the {one.side} of the {one.face} face."
                )
                read.complain(here, what, "Keep one, or make it a slot.")
            elif other.face == one.face and other.side == facing:
                both = other.wide.value + one.wide.value
                if both > across - TINY:
                    what = (
                        f"{other.name} and {one.name} take {both:g} mm; the plate is {across:g} mm that way."
                    )
                    read.complain(here, what, "Leave a rib between them.")
            elif other.side == one.side:
                both = other.depth.value + one.depth.value
                if both > thick - TINY:
                    what = f"{other.name} and {one.name} take {both:g} mm; the plate is {thick:g} mm thick."
                    read.complain(here, what, "Leave a tongue between them.")


def _vees(read: Reading, written: PlateFeatures, place: Place, plain: PlateShape) -> tuple[Vee, ...]:
    found = []
    for n, one in enumerate(written.vees):
        here, face = (*place, "vees", n), face_size(plain, one.face)
        at, wide, angle = read.of(one.at), read.of(one.wide), read.of(one.angle, 90.0)
        if not (math.isnan(angle) or 10 <= angle <= 170):
            read.complain(
                (*here, "angle"), f"The vee is {angle:g} deg; it must be 10 to 170 deg.", "Write 90 deg."
            )
            angle = math.nan
        across = face.height if one.along == "x" else face.width
        if at - wide / 2 < -TINY or at + wide / 2 > across + TINY:
            what = (
                f"The vee takes {at - wide / 2:g} to {at + wide / 2:g} mm; "
                f"the face {one.face} is {across:g} mm that way."
            )
            read.complain((*here, "at"), what, "Move it onto the part.")
        deep = wide / 2 / math.tan(math.radians(angle / 2))
        if deep >= face.depth - TINY:
            what = f"The vee comes to {deep:.4g} mm deep; the plate is {face.depth:g} mm thick there."
            read.complain((*here, "wide"), what, "Make it narrower.")
        found.append(Vee(one.name, one.face, one.along, at, wide, angle))
    return tuple(found)


def _dovetails(
    read: Reading, part: str, written: PlateFeatures, place: Place, plain: PlateShape
) -> tuple[Dovetail, ...]:
    found = []
    for n, one in enumerate(written.dovetails):
        here, face = (*place, "dovetails", n), face_size(plain, "top")
        at, narrow, deep = read.of(one.at), read.of(one.narrow), read.of(one.deep)
        angle = read.of(one.angle, 60.0)
        if not (math.isnan(angle) or 30 <= angle < 90):
            what = f"The flanks stand at {angle:g} deg; they must stand at 30 to under 90 deg."
            read.complain((*here, "angle"), what, "Write 60 deg.")
            angle = math.nan
        half = narrow / 2 + deep / math.tan(math.radians(angle))
        across = face.height if one.along == "x" else face.width
        if at - half < -TINY or at + half > across + TINY:
            what = f"The dovetail takes {at - half:.4g} to {at + half:.4g} mm; the plate is {across:g} mm that way."
            read.complain((*here, "at"), what, "Move it onto the part.")
        if deep >= face.depth - TINY:
            what = f"The dovetail is {deep:g} mm deep; the plate is {face.depth:g} mm thick."
            read.complain((*here, "deep"), what, "Make it shallower.")
        dim = read.dim(narrow, f"{part}.{one.name}", here, one.limits)
        found.append(Dovetail(one.name, one.along, at, dim, deep, angle, one.tail))
    return tuple(found)


def _edges(
    read: Reading, written: PlateFeatures, place: Place, plain: PlateShape, loop: Loop
) -> tuple[PlateEdge, ...]:
    found: list[PlateEdge] = []
    thick = plain.thickness.value
    for n, one in enumerate(written.edges):
        here = (*place, "edges", n)
        size = read.of(one.size.size)
        angle = read.of(one.size.angle, 45.0)
        if angle != 45 and not math.isnan(angle):
            what = f"The chamfer is {angle:g} deg; along an outline it is cut at 45 deg."
            read.complain((*here, "size"), what, "Write 1 x 45 deg.")
        others = sum(other.size for other in found if other.face != one.face)
        if size + others > thick - TINY:
            what = f"The edges take {size + others:g} mm of the side; the plate is {thick:g} mm thick."
            read.complain((*here, "size"), what, "Make them smaller.")
        if any(other.face == one.face for other in found):
            read.complain(here, f"The {one.face} face has its edge broken twice.", "Keep one of the two.")
        convex = [piece.radius for piece in loop if isinstance(piece, Arc) and piece.turn > 0]
        narrow = min((plain.length.value, plain.width.value), default=0.0) / 2
        if size >= narrow:
            what = f"The edge is {size:g} mm; half the plate's narrower side is {narrow:g} mm."
            read.complain((*here, "size"), what, "Make it smaller.")
        elif convex and size > min(convex) + TINY:
            what = f"The edge is {size:g} mm; the outline has a corner of {min(convex):g} mm radius."
            read.complain((*here, "size"), what, "Make it no larger than the corner.")
        found.append(PlateEdge(one.name, one.face, size, one.size.round))
    return tuple(found)


def _slits(read: Reading, written: PlateFeatures, place: Place, plain: PlateShape) -> tuple[PlateSlit, ...]:
    found = []
    holes = {hole.name: hole for hole in plain.holes}
    for n, one in enumerate(written.slits):
        here, face = (*place, "slits", n), face_size(plain, one.side)
        at, wide = read.of(one.at), read.of(one.wide)
        if bool(one.to) == (one.long is not None):
            read.complain(here, "A slit must have either to or long.", "Name the hole it runs into.")
        long = read.of(one.long)
        if one.to and read.one_of(one.to, holes, (*here, "to"), "hole"):
            hole = holes[one.to]
            long = {
                "front": hole.y,
                "back": plain.width.value - hole.y,
                "left": hole.x,
                "right": plain.length.value - hole.x,
            }[one.side]
            x = hole.x if one.side in ("front", "back") else hole.y
            middle = x if one.side in ("front", "right") else face.width - x
            if abs(middle - at) > hole.dia.value / 2:
                what = f"The slit is cut {at:g} mm along; {one.to} lies {middle:g} mm along the {one.side}."
                read.complain((*here, "at"), what, "Cut it towards the middle of the hole.")
        if one.pinch:
            read.one_of(one.pinch, holes, (*here, "pinch"), "hole")
        if long >= face.depth - TINY:
            what = f"The slit is {long:g} mm long; the plate is {face.depth:g} mm that way."
            read.complain((*here, "long") if one.long else here, what, "Make it shorter.")
        if at - wide / 2 < -TINY or at + wide / 2 > face.width + TINY:
            what = (
                f"The slit takes {at - wide / 2:g} to {at + wide / 2:g} mm; "
                f"the {one.side} is {face.width:g} mm long."
            )
            read.complain((*here, "at"), what, "Move it onto the part.")
        found.append(PlateSlit(one.name, one.side, at, long, wide))
    return tuple(found)
