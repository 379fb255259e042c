"""Holes in the faces of plates, blocks and sheet: places, sizes, sinks, leans, and what is refused."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from tommybar.design.reading import TINY, Reading
from tommybar.design.written_plates import Scattered, WrittenPlateHole
from tommybar.design.yaml_file import Place
from tommybar.facts.fasteners import SCREWS, clearance_hole, screw_head
from tommybar.refusals import Refusal
from tommybar.shapes.features import PlateHole, PlateShape
from tommybar.shapes.outlines import Loop
from tommybar.shapes.plan_regions import encloses
from tommybar.shapes.plate_cuts import distance
from tommybar.shapes.plate_frames import face_frame
from tommybar.shapes.plates import face_size

COUNTERSUNK = ("ISO 10642", "ISO 2009")
SEATED = ("ISO 4762", "ISO 1207")  # heads that are let in flush


@dataclass(frozen=True)
class _Size:
    dia: float
    thread: str = ""
    sink_dia: float = 0.0
    sink_deep: float = 0.0
    sink_angle: float = 0.0


def build_holes(
    read: Reading,
    part: str,
    written: Sequence[WrittenPlateHole],
    place: Place,
    plain: PlateShape,
    loop: Loop,
) -> tuple[PlateHole, ...]:
    """All holes of a plate."""
    holes: list[PlateHole] = []
    for index, one in enumerate(written):
        holes += _holes(read, part, one, (*place, "holes", index), plain, loop)
    _refuse_meeting(read, holes, place)
    return tuple(holes)


def places(read: Reading, one: Scattered, here: Place) -> list[tuple[Place, float, float]]:
    """Every place of a feature that may stand in several, with where it was written."""
    if one.at:
        return [((*here, "at", n), read.of(x), read.of(y)) for n, (x, y) in enumerate(one.at)]
    if one.row:
        x, y = (read.of(figure) for figure in one.row.first)
        step, angle = read.of(one.row.step), math.radians(read.of(one.row.angle))
        return [
            (
                (*here, "row"),
                round(x + n * step * math.cos(angle), 9),
                round(y + n * step * math.sin(angle), 9),
            )
            for n in range(_count(read.of(one.row.count)))
        ]
    if one.grid:
        x, y = (read.of(figure) for figure in one.grid.first)
        along, up = (read.of(figure) for figure in one.grid.step)
        columns, rows = (_count(read.of(figure)) for figure in one.grid.count)
        return [
            ((*here, "grid"), round(x + i * along, 9), round(y + j * up, 9))
            for j in range(rows)
            for i in range(columns)
        ]
    assert one.circle is not None
    x, y = (read.of(figure) for figure in one.circle.middle)
    radius, first, count = (
        read.of(one.circle.dia) / 2,
        read.of(one.circle.first),
        _count(read.of(one.circle.count)),
    )
    angles = [math.radians(first + 360 * n / count) for n in range(count)]
    return [
        ((*here, "circle"), round(x + radius * math.cos(a), 9), round(y + radius * math.sin(a), 9))
        for a in angles
    ]


def _count(figure: float) -> int:
    return 0 if math.isnan(figure) else min(round(figure), 1000)


def _holes(
    read: Reading, part: str, one: WrittenPlateHole, here: Place, plain: PlateShape, loop: Loop
) -> list[PlateHole]:
    face = face_size(plain, one.face)
    size = _size(read, one, here)
    deep = _depth(read, one, here, face.depth, bool(size.thread))
    _refuse_sinks(read, one, here, size, face.depth)
    tilt = read.of(one.tilt) if one.slope is None else 90 - read.of(one.slope)
    if not (math.isnan(tilt) or -80 <= tilt <= 80):
        key = "tilt" if one.slope is None else "slope"
        what = f"The hole leans {tilt:g} deg from the face's normal; a drill can be started up to 80 deg."
        read.complain((*here, key), what, "Drill it from another face.")
        tilt = 0.0
    towards = read.of(one.towards) + (180.0 if tilt < 0 else 0.0)
    found, spots = [], places(read, one, here)
    for number, (spot, x, y) in enumerate(spots, start=1):
        _refuse_off(read, one, spot, (x, y), max(size.dia, size.sink_dia), abs(tilt), plain, loop)
        name = one.name if len(spots) == 1 else f"{one.name}_{number}"
        dim = read.dim(size.dia, f"{part}.{name}", here, one.limits)
        found.append(
            PlateHole(
                name,
                one.face,
                x,
                y,
                dim,
                deep,
                size.thread,
                size.sink_dia,
                size.sink_deep,
                size.sink_angle,
                abs(tilt),
                towards,
                one.flat,
                one.bottom,
                read.of(one.place),
                one.left,
            )
        )
    return found


def _size(read: Reading, one: WrittenPlateHole, here: Place) -> _Size:
    angle = read.of(one.sink_angle)
    if one.screw is None:
        dia, thread = read.diameter(one.dia, one.thread, here)
        return _Size(dia, thread, read.of(one.sink_dia), read.of(one.sink_deep), angle)
    words = one.screw.split()
    standard = " ".join(words[:-1])
    named = read.thread(words[-1] if words else "", (*here, "screw"))
    if named is None:
        return _Size(math.nan)
    size = named.designation
    try:
        if standard and standard not in SCREWS:
            raise Refusal(f'"{standard}" is no screw of the tables.', f"Known are {', '.join(SCREWS)}.")
        dia = clearance_hole(size, one.clearance)
        if standard in COUNTERSUNK:
            return _Size(dia, "", screw_head(standard, size).diameter, 0.0, angle or 90.0)
        if standard in SEATED:
            head = screw_head(standard, size)
            # room round the head: twice what a medium hole leaves round the screw
            room = 2 * (clearance_hole(size, "medium") - named.major)
            return _Size(dia, "", round(head.diameter + room, 3), read.of(one.sink_deep) or head.height)
    except Refusal as refusal:
        read.wrong += read.file.complaints((*here, "screw"), refusal)
        return _Size(math.nan)
    return _Size(dia, "", read.of(one.sink_dia), read.of(one.sink_deep), angle)


def _refuse_sinks(read: Reading, one: WrittenPlateHole, here: Place, size: _Size, thick: float) -> None:
    if one.sink_angle is not None:
        if not (one.sink_dia is not None or one.screw):
            read.complain(here, "A countersink must have sink_dia beside sink_angle.", "Add it.")
        if one.sink_deep is not None:
            read.complain(
                here, "A countersink has sink_dia and sink_angle; its depth follows.", "Leave sink_deep out."
            )
        if not (math.isnan(size.sink_angle) or 30 <= size.sink_angle <= 150):
            what = f"The countersink is {size.sink_angle:g} deg; it must be 30 to 150 deg."
            read.complain((*here, "sink_angle"), what, "Give the included angle: 60, 82, 90, 118, 120.")
            return
    elif one.screw is None and (one.sink_dia is None) != (one.sink_deep is None):
        read.complain(here, "A counterbore must have both sink_dia and sink_deep.", "Add the other.")
    if not size.sink_dia:
        return
    place = (*here, "sink_dia") if one.sink_dia is not None else here
    if size.sink_dia <= size.dia:
        what = f"The counterbore is {size.sink_dia:g} mm; its hole is {size.dia:g} mm."
        read.complain(place, what, "Make it larger.")
        return
    deep = size.sink_deep
    if size.sink_angle:
        deep = (size.sink_dia - size.dia) / 2 / math.tan(math.radians(size.sink_angle / 2))
    if deep >= thick - TINY:
        thing = "countersink" if size.sink_angle else "counterbore"
        what = f"The {thing} is {deep:g} mm deep; the plate is {thick:g} mm thick there."
        read.complain(
            (*here, "sink_deep") if one.sink_deep is not None else place, what, "Make it shallower."
        )


def _refuse_off(
    read: Reading,
    one: WrittenPlateHole,
    spot: Place,
    at: tuple[float, float],
    wide: float,
    tilt: float,
    plain: PlateShape,
    loop: Loop,
) -> None:
    """A hole that lies off its face, or breaks the outline."""
    face, reach = face_size(plain, one.face), wide / 2 / math.cos(math.radians(tilt))
    fine = True
    for value, limit, way in ((at[0], face.width, "x"), (at[1], face.height, "y")):
        if value - reach < -TINY or value + reach > limit + TINY:
            what = (
                f"The hole takes {way} {value - reach:g} to {value + reach:g} mm; "
                f"the face {one.face} is {limit:g} mm that way."
            )
            read.complain(spot, what, "Move it onto the part.")
            fine = False
    if not fine or not loop or one.face not in ("top", "bottom") or math.isnan(at[0] + at[1] + reach):
        return
    x, y, _ = face_frame(plain, one.face).point(*at)
    room = min(distance(piece, x, y) for piece in loop) if encloses(loop, x, y) else 0.0
    if room < reach - TINY:
        what = f"The hole reaches {reach:.4g} mm from its middle; the outline is {room:.4g} mm away."
        read.complain(spot, what, "Move it inwards, or cut a slot that is open at its end.")


def _depth(read: Reading, one: WrittenPlateHole, here: Place, thick: float, threaded: bool) -> float | None:
    if one.through == (one.deep is not None):
        read.complain(here, "The hole must have either through: true or deep.", "Keep one of the two.")
    if one.deep is None:
        return None
    deep = read.of(one.deep)
    if deep >= thick - TINY:
        thing = "thread" if threaded else "hole"
        what = f"The {thing} is {deep:g} mm deep; the plate is {thick:g} mm thick there."
        read.complain((*here, "deep"), what, "Make it shallower, or write through: true.")
    return deep


def _refuse_meeting(read: Reading, holes: list[PlateHole], place: Place) -> None:
    """Holes of one face that run into each other."""
    for index, one in enumerate(holes):
        for other in holes[:index]:
            apart = math.hypot(one.x - other.x, one.y - other.y)
            both = (one.dia.value + other.dia.value) / 2
            if one.face == other.face and apart < both:
                what = (
                    f"{other.name} and {one.name} lie {apart:g} mm apart; their radii add up to {both:g} mm."
                )
                read.complain((*place, "holes"), what, "Move them apart.")
