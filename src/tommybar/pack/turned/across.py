"""What is written over the view of what is drilled and milled across the axis, with its clocking."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from tommybar.pack.turned.broken import broken_out
from tommybar.pack.turned.drawn import view_of
from tommybar.pack.turned.planes import sides
from tommybar.pack.turned.saying import DIA, Angles, Callout, Saying
from tommybar.pack.units import Reader
from tommybar.shapes.features import CrossHole, TurnedShape
from tommybar.shapes.radii import bore_radius
from tommybar.shapes.ring_cuts import surface_radius


def across_callouts(shape: TurnedShape, reader: Reader, angles: Angles) -> list[Callout]:
    """Cross holes, flats, slots across, keyways, engravings: with their clocking when an end view shows it."""
    made: list[Callout] = []
    for holes in alike(shape):
        hole = shown(shape, holes)
        if hole is None:
            continue  # said where it is seen, in the view along the axis
        one = cross_hole_callout(shape, holes, reader, angles)
        made.append(_pointing(shape, one, hole.name, hole.z, hole.dia.value / 2))
    for slot in shape.cross_slots:
        say = Saying(slot.name, reader)
        say.sized("width", slot.width, "slot ", "wide", "width")
        walls = say.word("form", "walls", "through" if slot.walls == 2 else "one wall", slot.walls)
        say.row(f"{say.length('length', 'long', slot.end - slot.start)} long overall, {walls}", True)
        _clock(say, angles, slot.angle)
        z = slot.start + 0.4 * (slot.end - slot.start)
        one = Callout(0.0, 0.0, tuple(say.rows), tuple(say.printed), feature=slot.name)
        made.append(_pointing(shape, one, slot.name, z, slot.width.value / 2))
    for mark in shape.engravings:
        land = next((one for one in shape.outside if one.name == mark.on), None)
        say = Saying(mark.name, reader)
        say.row(f"{say.word('count', 'divisions', str(mark.divisions), mark.divisions)} divisions"
                + (f" over {say.angle('over', mark.over)}" if mark.over != 360.0 else ""))  # fmt: skip
        lines = f"lines {say.length('length', 'short', mark.short)} long"
        if mark.long_every:
            every = say.word("count", "long_every", str(mark.long_every), mark.long_every)
            lines += f", each {every}th {say.length('length', 'long', mark.long)}"
        say.row(lines, True)
        if mark.words:
            say.row(f"engraved: {mark.words}", True)
        z, r = (
            ((land.start + 2 * land.end) / 3, (land.start_dia + 2 * land.end_dia) / 6) if land else (0.0, 1.0)
        )
        made.append(Callout(z, r, tuple(say.rows), tuple(say.printed), feature=mark.name))
    return made


def shown(shape: TurnedShape, holes: Sequence[CrossHole]) -> CrossHole | None:
    """The hole of several alike that the view along the axis is not needed for, those above the axis first."""
    there = sides(shape)
    for wanted in (("above", "both"), ("below",)):
        for hole in holes:
            if there.get(hole.name) in wanted:
                return hole
    return None


def _pointing(shape: TurnedShape, one: Callout, name: str, z: float, half: float) -> Callout:
    """A callout at its hole or slot: where it opens in a section, on its side; at its edge when seen from outside."""
    view = view_of(shape)
    if view == "outside" and name not in broken_out(shape):
        return replace(one, z=z, r=half)
    r = surface_radius(shape, z)
    if sides(shape).get(name) == "below":
        return replace(one, z=z, r=-r, side="A" if z < shape.length.value / 2 - 1e-6 else "B", below=True)
    return replace(one, z=z, r=r)


def _clock(say: Saying, angles: Angles, angle: float) -> None:
    if angles.said(say.feature):
        say.row(f"at {say.angle('angle', angle)}", True)


def alike(shape: TurnedShape) -> list[tuple[CrossHole, ...]]:
    """Cross holes that differ in nothing but their angle, in the order of the file."""
    groups: dict[CrossHole, list[CrossHole]] = {}
    for hole in shape.cross_holes:
        groups.setdefault(replace(hole, name="", angle=0.0, dia=replace(hole.dia, name="")), []).append(hole)
    return [tuple(one) for one in groups.values()]


def cross_hole_callout(
    shape: TurnedShape, holes: Sequence[CrossHole], reader: Reader, angles: Angles
) -> Callout:
    """What is said of one cross hole, or of several that are alike.

    Its place along the axis is left to the view from beside; where that does
    not show it, it is said here.
    """
    hole = holes[0]
    many = f"{len(holes)} × " if len(holes) > 1 else ""
    say = Saying(hole.name, reader)
    if hole.thread:
        say.row(many + say.word("thread", "thread", hole.thread, hole.dia.value))
    else:
        say.sized("dia", hole.dia, many + DIA)
    if hole.depth is not None:
        where = f"{say.length('depth', 'depth', hole.depth, 'surface')} deep"
    elif hole.walls == 2:
        where = say.word("form", "walls", "through", 2)
    else:
        bored = bore_radius(shape, hole.z) > 0
        where = say.word("form", "walls", "into the bore" if bored else "to the axis", 1)
    say.row(where, True)
    if hole.sink_dia:
        sink = f"sunk {say.dia('sink_dia', hole.sink_dia)} × "
        say.row(sink + f"{say.length('depth', 'sink_depth', hole.sink_depth, 'surface')} deep", True)
    if hole.offset:
        say.row(f"{say.length('length', 'offset', hole.offset)} beside the axis", True)
    printed = [replace(one, feature=twin.name) for twin in holes for one in say.printed]
    if angles.said(hole.name):
        turned = []
        for twin in holes:
            own = Saying(twin.name, reader)
            turned.append((own, own.angle("angle", twin.angle)))
        words = "at " + ", ".join(angle for _, angle in turned)
        for own, _ in turned:
            own.row(words, True)
            printed += own.printed
        say.row(words, True)
    if shown(shape, holes) is None:
        for twin in holes:
            own = Saying(twin.name, reader)
            words = f"{own.length('length', 'z', twin.z, 'face A')} from A"
            own.row(words, True)
            printed += own.printed
        say.row(words, True)
    return Callout(0.0, 0.0, tuple(say.rows), tuple(printed), feature=hole.name)
