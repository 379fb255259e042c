"""Rows of the table for the holes of a plate: alike ones share a letter, each has its own place."""

from __future__ import annotations

from dataclasses import replace

from tommybar.facts.threads import tap_depths, thread
from tommybar.pack.plates.told import DIA, Row, Spot, Told
from tommybar.pack.units import Reader
from tommybar.shapes.features import PlateHole, PlateShape
from tommybar.shapes.plate_frames import face_frame
from tommybar.shapes.plates import face_size
from tommybar.shapes.prisms import PLATE_FACES

LETTERS = "ABCDEFGHJKLMNPRSTUVWXYZ"  # no I, O, Q: they are taken for figures
LEANS = {0.0: "right", 90.0: "up", 180.0: "left", 270.0: "down"}


def letter(number: int) -> str:
    """The letter of a group of features: A, B, ... Z, AA, AB, ...

    Examples
    --------
    >>> letter(0), letter(8), letter(23)
    ('A', 'J', 'AA')
    """
    first, last = divmod(number, len(LETTERS))
    return (LETTERS[first - 1] if first else "") + LETTERS[last]


def in_plate(shape: PlateShape, hole: PlateHole) -> tuple[float, float, float]:
    """Where the axis of a hole meets its face: x, y, z from the datum corner, z up [mm]."""
    x, y, down = face_frame(shape, hole.face).point(hole.x, hole.y)
    return x + 0.0, y + 0.0, shape.thickness.value - down


def datum_of(shape: PlateShape) -> tuple[float, float]:
    """Where x and y are measured from: the corner, or the middle of a disc or of the first round end [mm]."""
    if shape.outline is not None and shape.outline.bosses:
        return shape.outline.bosses[0].x, shape.outline.bosses[0].y
    return 0.0, 0.0


def place_of(shape: PlateShape, face: str, x: float, y: float, z: float) -> Spot:
    """The two places of a spot on a face from the datum; the third is that of the face itself."""
    x0, y0 = datum_of(shape)
    x, y = x - x0 + 0.0, y - y0 + 0.0
    if face in ("top", "bottom"):
        return x, y, None
    return (x, None, z) if face in ("front", "back") else (None, y, z)


def groups_of(shape: PlateShape) -> list[list[PlateHole]]:
    """Holes alike in everything but their place and name, face by face."""
    groups: dict[tuple[object, ...], list[PlateHole]] = {}
    holes = sorted(
        shape.holes,
        key=lambda one: (PLATE_FACES.index(one.face), *(round(at, 4) for at in in_plate(shape, one))),
    )
    for hole in holes:
        bare = replace(hole, name="", x=0.0, y=0.0, dia=replace(hole.dia, name=""))
        groups.setdefault((PLATE_FACES.index(hole.face), bare), []).append(hole)
    return list(groups.values())


def drawn_radius(hole: PlateHole) -> float:
    """Radius of what is seen of a hole at its face [mm]."""
    dia = thread(hole.thread).major if hole.thread else hole.dia.value
    return max(dia, hole.sink_dia) / 2


def hole_rows(
    shape: PlateShape, reader: Reader, drawn: frozenset[tuple[str, str]] = frozenset()
) -> list[Row]:
    """A row for each hole; the first of alike ones says what they are and how many.

    What ``drawn`` names stands in a view. Alike holes whose places are all
    seen there share one letter and one row.
    """
    rows: list[Row] = []
    for number, group in enumerate(groups_of(shape)):
        tag = letter(number)
        first = group[0]
        spots = [in_plate(shape, one) for one in group]
        on_circle = any((one.name, "circle") in drawn for one in group)
        told = hole_words(first, shape, reader, len(group), drawn, on_circle)
        frame = ("position", f"{DIA}{reader.length(first.place, 3)}", "A", "B", "C") if first.place else ()
        placed = on_circle or any((one.name, axis) in drawn for one in group for axis in "xyz")
        nowhere = (None, None, None)
        if len(group) == 1 or placed:
            at = nowhere if placed else place_of(shape, first.face, *spots[0])
            rows.append(told.row(tag, at, first.face, tuple(spots), drawn_radius(first), frame))
            continue
        for n, (hole, spot) in enumerate(zip(group, spots, strict=True), 1):
            at = place_of(shape, hole.face, *spot)
            if n > 1:
                told, frame = Told(hole.name, reader, [f"as {tag}1"]), ()
            rows.append(told.row(f"{tag}{n}", at, hole.face, (spot,), drawn_radius(hole), frame))
    return rows


def hole_words(
    hole: PlateHole, shape: PlateShape, reader: Reader, count: int,
    drawn: frozenset[tuple[str, str]] = frozenset(), on_circle: bool = False,
) -> Told:  # fmt: skip
    """What a hole is, as it is called out."""
    told = Told(hole.name, reader, drawn=drawn)
    if count > 1:
        told.word("count", "count", str(count), count)
        told.say("×")
    blind = hole.depth is not None
    if hole.thread:
        told.word("thread", "thread", hole.thread)
        if hole.left:
            told.word("form", "hand", "LH")
        if hole.depth is None:
            told.word("form", "depth", "through")
        else:
            told.length("depth", "depth", hole.depth, "thread ", " deep,")
            drill = thread(hole.thread).tapping_drill
            deep = min(tap_depths(thread(hole.thread), hole.depth).full_diameter_depth, _behind(hole, shape))
            told.length("diameter", "tapping_drill", drill, f"drill {DIA}", " ×")
            told.length("depth", "drilled", deep, after=" deep")
    else:
        told.sized("diameter", "dia", hole.dia, DIA)
        if hole.depth is None:
            told.word("form", "depth", "through")
        else:
            told.length("depth", "depth", hole.depth, "× ", " deep")
    if blind and hole.bottom == "flat":
        told.word("form", "bottom", "flat bottom")
    if hole.sink_dia and hole.sink_angle:
        told.length("diameter", "sink_dia", hole.sink_dia, f", countersink {DIA}")
        told.angle("sink_angle", hole.sink_angle, "× ")
    elif hole.sink_dia:
        told.length("diameter", "sink_dia", hole.sink_dia, f", counterbore {DIA}", " ×")
        told.length("depth", "sink_depth", hole.sink_depth, after=" deep")
    if hole.tilt:
        _lean(told, hole)
    if hole.face != "top":
        told.word("form", "face", f", from the {hole.face}")
    if on_circle:
        told.say(", equally spaced on the circle")
    return told


def _lean(told: Told, hole: PlateHole) -> None:
    """How a hole leans; its angle is left out where a section shows it true."""
    if told.given("tilt"):
        told.say(", at the angle shown,")
    told.angle("tilt", hole.tilt, ", axis leans ", " from square to the face,")
    towards = round(hole.towards % 360.0, 6)
    if towards in LEANS:
        told.word("form", "towards", f"going in towards the {LEANS[towards]} of the face")
    else:
        told.angle("towards", hole.towards, "going in towards ", " on the face")
    if hole.flat:
        told.word("form", "flat", "(mill a flat first)")


def _behind(hole: PlateHole, shape: PlateShape) -> float:
    return face_size(shape, hole.face).depth
