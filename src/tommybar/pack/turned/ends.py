"""A turned part seen along its axis from face A: circles, holes, flats, slots, keyways, with their clocking."""

from __future__ import annotations

import math
from dataclasses import replace

from tommybar.facts.threads import thread
from tommybar.pack.boxes import box_of
from tommybar.pack.printed import PrintedDimension
from tommybar.pack.profile import drawn_profile, end_circles, nominal
from tommybar.pack.sheet import Arc, Kind, Line, Mark, Text
from tommybar.pack.turned.across import alike, cross_hole_callout, shown
from tommybar.pack.turned.clocking import clocking_marks, free
from tommybar.pack.turned.crossing import clear
from tommybar.pack.turned.metal import radius_of
from tommybar.pack.turned.place import above_marks
from tommybar.pack.turned.planes import CHOICES, plane_marks
from tommybar.pack.turned.saying import Angles, Callout, Measured, Saying
from tommybar.pack.units import Reader
from tommybar.shapes.features import Cylinder, Eccentric, TurnedShape
from tommybar.shapes.ring_cuts import surface_radius


def has_end_view(shape: TurnedShape) -> bool:
    """Whether what stands round the axis must be shown along it."""
    if shape.circle_holes or shape.flats or shape.bore_keyways or any(h.offset for h in shape.cross_holes):
        return True
    both = [(one.angle, one.walls) for one in shape.cross_holes]
    both += [(one.angle, one.walls) for one in shape.cross_slots]
    both += [(one.angle, one.walls) for one in shape.slits]
    sided = [angle for angle, walls in both if walls == 1]  # on one side of the axis, where it counts which
    sided += [one.angle for one in shape.keyways]
    sided += [one.angle for one in shape.outside if isinstance(one, Eccentric)]
    angles = [*sided, *(angle for angle, _ in both), *(one.angle for one in shape.head_slots)]
    return len({angle % 180.0 for angle in angles}) > 1 or len({angle % 360.0 for angle in sided}) > 1


def end_view(
    shape: TurnedShape, scale: float, reader: Reader, angles: Angles
) -> tuple[list[Mark], list[Callout]]:
    """The view with its centre at (0, 0) and what is written over it."""
    plain = nominal(shape)
    marks, outer = _rounds(plain, scale)
    reach = outer + 4.0
    marks += [Line(((-reach, 0.0), (reach, 0.0)), "chain"), Line(((0.0, -reach), (0.0, reach)), "chain")]
    said: list[Callout] = []
    for holes in shape.circle_holes:
        ring = holes.circle / 2 * scale
        marks.append(Arc((0.0, 0.0), ring, "chain"))
        major = (thread(holes.thread).major if holes.thread else holes.dia.value) / 2 * scale
        drawn = thread(holes.thread).tapping_drill / 2 * scale if holes.thread else major
        hidden = holes.face == "B" and holes.blind
        best, pointed = -math.inf, (0.0, 0.0)
        for n in range(holes.count):
            angle = math.radians(holes.start_angle + 360.0 * n / holes.count)
            c, s = math.cos(angle), math.sin(angle)
            at = (ring * c, -ring * s)
            marks.append(Arc(at, drawn, "dashed" if hidden else "thick"))
            if holes.thread:
                marks.append(Arc(at, major, "thin", 80.0, 350.0))
            if holes.sink_dia and holes.face == "A":
                marks.append(Arc(at, holes.sink_dia / 2 * scale, "thick"))
            tick = major + 1.8
            marks.append(
                Line(((at[0] - tick * c, at[1] + tick * s), (at[0] + tick * c, at[1] - tick * s)), "chain")
            )
            liking = s + 0.9 * c - (0.3 if abs(c) < 0.05 else 0.0)  # not along the centre line
            if liking > best:
                best, pointed = liking, (ring * c, ring * s)
        said.append(
            _circle_words(shape, holes.name, reader, angles, (pointed[0] / scale, pointed[1] / scale))
        )
    marks += _clocked(plain, scale, outer)
    said += [
        *_flats(shape, reader, angles),
        *_keyways(shape, reader, angles),
        *_beside(shape, reader, angles),
    ]
    return marks, said


def end_marks(
    shape: TurnedShape, scale: float, reader: Reader, room: float, angles: Angles, letter: str = ""
) -> tuple[list[Mark], list[PrintedDimension]] | None:
    """The whole end view with its callouts and arcs placed; None when words of an arc have no free place."""
    marks, said = end_view(shape, scale, reader, angles)
    printed = [figure for one in said for figure in one.printed]
    if angles.drawn:
        arcs, figures = clocking_marks(shape, angles, radius_of(shape) * scale, reader)
        marks, printed = [*marks, *arcs], [*printed, *figures]
    made = _with_callouts(marks, said, scale, room)
    for choice in range(len(CHOICES)) if letter else ():
        plane = plane_marks(nominal(shape), radius_of(shape) * scale, letter, choice)
        made = _with_callouts([*marks, *plane], said, scale, room)
        if clear([one for one in plane if isinstance(one, Text)], made):
            break
    return (made, printed) if not angles.drawn or free(made) else None


def _with_callouts(marks: list[Mark], said: list[Callout], scale: float, room: float) -> list[Mark]:
    """A view with its callouts over it; without them when they have no room."""
    outer = max(-box_of(marks)[1], 1.0)
    wide = max(outer, 42.0)
    while True:
        placed = above_marks(said, scale, -outer, -wide, wide)
        if placed is not None or wide > room:
            break
        wide += 15.0
    return marks if placed is None else [*marks, *placed[0]]


def _rounds(shape: TurnedShape, scale: float) -> tuple[list[Mark], float]:
    """Circles seen from face A; where flats cut a circle only what is left of it."""
    made: list[Mark] = []
    swung = [one for one in shape.outside if isinstance(one, Eccentric)]
    lands = replace(shape, outside=tuple(
        replace(one, throw=0.0) if isinstance(one, Eccentric) else one for one in shape.outside
    ))  # fmt: skip
    widest = radius_of(lands)
    circles = [r for r in end_circles(drawn_profile(lands)) if r < widest - 1e-3] + [widest]
    outer = widest * scale
    flats = [(one, surface_radius(shape, (one.start + one.end) / 2)) for one in shape.flats]
    for r in circles:
        if any(abs(2 * r - one.dia.value) < 1e-3 for one in swung):
            continue
        cutting = [one for one, radius in flats if radius * 0.8 < r < radius + 1e-3 and one.level < r]
        if not cutting:
            made.append(Arc((0.0, 0.0), r * scale, "thick"))
            continue
        one = cutting[0]
        half = math.degrees(math.acos(one.level / r))
        step = 360.0 / one.count
        if 2 * half < step - 0.5:
            for k in range(one.count):
                first = one.angle + k * step
                made.append(Arc((0.0, 0.0), r * scale, "thick", first + half, first + step - half))
    for land in swung:
        angle = math.radians(land.angle)
        at = (land.throw * math.cos(angle) * scale, -land.throw * math.sin(angle) * scale)
        made.append(Arc(at, land.dia.value / 2 * scale, "thick"))
        made += [
            Line(((at[0] - 2.5, at[1]), (at[0] + 2.5, at[1])), "chain"),
            Line(((at[0], at[1] - 2.5), (at[0], at[1] + 2.5)), "chain"),
        ]
        outer = max(outer, (land.throw + land.dia.value / 2) * scale)
    for bore in shape.bores:
        if bore.thread and (bore.face == "A" or bore.through):
            made.append(Arc((0.0, 0.0), thread(bore.thread).major / 2 * scale, "thin", 80.0, 350.0))
    for screw in shape.outside:
        if isinstance(screw, Cylinder) and screw.thread and screw.start < 1e-6:
            made.append(Arc((0.0, 0.0), thread(screw.thread).core / 2 * scale, "thin", 80.0, 350.0))
    return made, outer


def _ray(angle: float, near: float, far: float, kind: Kind, aside: float = 0.0) -> Line:
    """A line along a direction, ``aside`` to its left [mm on paper]."""
    c, s = math.cos(math.radians(angle)), math.sin(math.radians(angle))
    x, y = -s * aside, c * aside
    return Line(((near * c + x, -near * s - y), (far * c + x, -far * s - y)), kind)


def _bar(angle: float, level: float, half: float, kind: Kind) -> Line:
    """A line across a direction at a distance from the centre."""
    c, s = math.cos(math.radians(angle)), math.sin(math.radians(angle))
    ends = tuple((level * c - s * t, -level * s - c * t) for t in (half, -half))
    return Line((ends[0], ends[1]), kind)


def _clocked(shape: TurnedShape, scale: float, outer: float) -> list[Mark]:
    """Everything that stands at an angle: visible from face A thick, behind dashed."""
    marks: list[Mark] = []
    length = shape.length.value
    for flats in shape.flats:
        radius = surface_radius(shape, (flats.start + flats.end) / 2)
        seen = all(surface_radius(shape, z) <= radius + 1e-6 for z in (0.01, flats.start * 0.5 + 0.005))
        half = math.sqrt(max(radius**2 - flats.level**2, 0.0))
        if flats.count > 2:
            half = min(half, flats.level * math.tan(math.pi / flats.count))
        for k in range(flats.count):
            angle = flats.angle + 360.0 * k / flats.count
            marks.append(_bar(angle, flats.level * scale, half * scale, "thick" if seen else "dashed"))
    for slot in shape.head_slots:
        radius = surface_radius(shape, 0.01 if slot.face == "A" else length - 0.01)
        half, kind = slot.width.value / 2, "thick" if slot.face == "A" else "dashed"
        far = math.sqrt(max(radius**2 - half**2, 0.0)) * scale
        for side in (1, -1):
            marks.append(_ray(slot.angle, -far, far, kind, side * half * scale))  # type: ignore[arg-type]
    for slit in shape.slits:
        radius = surface_radius(shape, 0.01 if slit.face == "A" else length - 0.01)
        far = radius * scale
        for side in (1, -1):
            near = -far if slit.walls == 2 else 0.0
            kind = "thick" if slit.face == "A" else "dashed"
            marks.append(_ray(slit.angle, near, far, kind, side * slit.width / 2 * scale))  # type: ignore[arg-type]
    for key in shape.keyways:
        radius = surface_radius(shape, (key.start + key.end) / 2)
        half = key.width.value / 2
        edge = math.sqrt(max(radius**2 - half**2, 0.0))
        floor = radius - key.depth
        for side in (1, -1):
            marks.append(_ray(key.angle, floor * scale, edge * scale, "dashed", side * half * scale))
        marks.append(_bar(key.angle, floor * scale, half * scale, "dashed"))
    for inner in shape.bore_keyways:
        bore = next((one for one in shape.bores if one.name == inner.on), None)
        if bore is None:
            continue
        half = inner.width.value / 2
        top = bore.dia.value / 2 + inner.depth
        edge = math.sqrt(max((bore.dia.value / 2) ** 2 - half**2, 0.0))
        for side in (1, -1):
            marks.append(_ray(inner.angle, edge * scale, top * scale, "thick", side * half * scale))
        marks.append(_bar(inner.angle, top * scale, half * scale, "thick"))
    for hole in shape.cross_holes:
        radius = surface_radius(shape, hole.z)
        half = hole.dia.value / 2 * scale
        far = radius * scale
        near = -far if hole.walls == 2 else 0.0 if hole.depth is None else (radius - hole.depth) * scale
        aside = hole.offset * scale
        marks.append(_ray(hole.angle, near - (3.0 if hole.walls == 2 else 0.0), outer + 3.0, "chain", aside))
        for side in (1, -1):
            marks.append(_ray(hole.angle, near, far, "dashed", aside + side * half))
    for across in shape.cross_slots:
        radius = surface_radius(shape, (across.start + across.end) / 2)
        far, half = radius * scale, across.width.value / 2 * scale
        near = -far if across.walls == 2 else 0.0
        marks.append(_ray(across.angle, near, outer + 3.0, "chain"))
        for side in (1, -1):
            marks.append(_ray(across.angle, near, far, "dashed", side * half))
    return marks


def _circle_words(
    shape: TurnedShape, name: str, reader: Reader, angles: Angles, at: tuple[float, float]
) -> Callout:
    holes = next(one for one in shape.circle_holes if one.name == name)
    say = Saying(name, reader)
    count = say.word("count", "count", str(holes.count), holes.count)
    if holes.thread:
        say.row(f"{count} × {say.word('thread', 'thread', holes.thread, holes.dia.value)}")
    else:
        say.sized("dia", holes.dia, f"{count} × Ø")
    say.row(f"on Ø{say.length('diameter', 'circle', holes.circle)}", True)
    if angles.said(name):
        first = say.angle("start_angle", holes.start_angle)
        say.row(f"first at {first}, equally spaced" if holes.count > 1 else f"at {first}", True)
    elif holes.count > 1:
        say.row("equally spaced", True)
    if holes.blind:
        face = "face " + holes.face
        say.row(f"{say.length('depth', 'depth', holes.end - holes.start, 'entry')} deep from {face}", True)
    if holes.sink_dia:
        say.row(f"sunk {say.dia('sink_dia', holes.sink_dia)} × "
                f"{say.length('depth', 'sink_depth', holes.sink_depth, 'face ' + holes.face)} deep, "
                f"face {holes.face}", True)  # fmt: skip
    top = at[1] + (thread(holes.thread).tapping_drill if holes.thread else holes.dia.value) / 2
    measured = Measured("diameter", holes.dia.value, at)
    return Callout(at[0], top, tuple(say.rows), tuple(say.printed), measured, "above", name)


def _beside(shape: TurnedShape, reader: Reader, angles: Angles) -> list[Callout]:
    """Cross holes beside the axis and those that no section runs through, pointed at where they enter."""
    made = []
    for holes in alike(shape):
        hole = holes[0]
        if shown(shape, holes) is None:
            radius = surface_radius(shape, hole.z)
            along = math.sqrt(max(radius**2 - hole.offset**2, 0.0))
            ways = [along] + ([-along] if hole.walls == 2 else [])
            c, s = math.cos(math.radians(hole.angle)), math.sin(math.radians(hole.angle))
            tips = [(c * far - s * hole.offset, s * far + c * hole.offset) for far in ways]
            x, y = max(tips, key=lambda tip: round(tip[1], 6))
            made.append(replace(cross_hole_callout(shape, holes, reader, angles), z=x, r=y))
    return made


WHOLE = {4: 0.85, 6: 0.95}  # a square or hexagon shallower than this part of the radius is named by its flats
FLATS = {1: "flat", 2: "2 flats", 4: "square", 6: "hexagon"}


def _flats(shape: TurnedShape, reader: Reader, angles: Angles) -> list[Callout]:
    made = []
    for one in shape.flats:
        say = Saying(one.name, reader)
        radius = surface_radius(shape, (one.start + one.end) / 2)
        whole = one.count < 4 or one.level < WHOLE.get(one.count, 0.0) * radius
        words = FLATS.get(one.count, "") if whole else ""
        kind = say.word("count", "count", words or f"{one.count} flats", one.count)
        if one.across is not None:
            say.sized("across", one.across, f"{kind} ", "AF", "width")
        else:
            say.row(f"{kind}, {say.length('length', 'level', one.level)} from the axis")
        if one.start < 1e-6 and one.end > shape.length.value - 1e-6:
            say.row("over the whole length", True)  # which is dimensioned once
        else:
            say.row(f"{say.length('length', 'long', one.end - one.start)} long", True)
        if angles.said(one.name):
            say.row(f"at {say.angle('angle', one.angle)}", True)
        turns = [math.radians(one.angle + 360.0 * k / one.count) for k in range(one.count)]
        best = max(
            turns,
            key=lambda t: round(math.sin(t) + 0.9 * math.cos(t) - (0.3 if abs(math.cos(t)) < 0.05 else 0), 6),
        )
        aside = 0.4 * math.sqrt(max(radius**2 - one.level**2, 0.0))
        if one.count > 2:
            aside = min(aside, 0.4 * one.level * math.tan(math.pi / one.count))
        c, s = math.cos(best), math.sin(best)  # pointed at beside its middle, clear of what stands there
        x, y = one.level * c - aside * s, one.level * s + aside * c
        made.append(Callout(x, y, tuple(say.rows), tuple(say.printed), None, "above", one.name))
    return made


def _keyways(shape: TurnedShape, reader: Reader, angles: Angles) -> list[Callout]:
    made = []
    for one in shape.bore_keyways:
        bore = next((bore for bore in shape.bores if bore.name == one.on), None)
        if bore is None:
            continue
        say = Saying(one.name, reader)
        say.sized("width", one.width, "keyway ", "wide", "width")
        say.row(f"{say.length('depth', 'depth', one.depth, one.on)} over the bore", True)
        if angles.said(one.name):
            say.row(f"at {say.angle('angle', one.angle)}", True)
        top = bore.dia.value / 2 + one.depth
        c, s = math.cos(math.radians(one.angle)), math.sin(math.radians(one.angle))
        made.append(Callout(top * c, top * s, tuple(say.rows), tuple(say.printed), None, "above", one.name))
    return made
