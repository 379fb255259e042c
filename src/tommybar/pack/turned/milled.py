"""What is drilled, milled and sawn in a turned part, as it is seen in the view along the axis."""

from __future__ import annotations

import math

from tommybar.facts.threads import thread
from tommybar.pack.sheet import Arc, Kind, Line, Mark
from tommybar.pack.turned.broken import broken_out
from tommybar.pack.turned.drawn import View
from tommybar.pack.turned.metal import radius_of
from tommybar.pack.turned.planes import sides
from tommybar.pack.turned.run_out import disc_keyway
from tommybar.shapes.features import Bore, CrossHole, TurnedShape
from tommybar.shapes.ring_cuts import surface_radius

PAST = 3.0  # how far a centre line runs past what it is the middle of [mm]


def milled_marks(shape: TurnedShape, scale: float, view: View) -> list[Mark]:
    """Flats, slots, keyways and holes, each turned into the plane of the view."""
    marks = _centre_lines(shape, scale)
    if view == "full":
        return [*marks, *_slots_cut(shape, scale), *_slot_edges(shape, scale)]
    marks += _slot_edges(shape, scale) if view == "half" else []
    upper = view == "outside"  # half views show the outside below the axis only
    for flats in shape.flats:
        marks += _flat(shape, flats.start, flats.end, flats.level, flats.count, scale, upper)
    for slot in shape.head_slots:
        a = 0.0 if slot.face == "A" else shape.length.value
        b = slot.depth if slot.face == "A" else a - slot.depth
        marks += _notch(a, b, slot.width.value / 2, scale, upper)
    for slit in shape.slits:
        a = 0.0 if slit.face == "A" else shape.length.value
        deep = shape.length.value if slit.depth is None else slit.depth
        marks += _notch(a, deep if slit.face == "A" else a - deep, slit.width / 2, scale, upper)
    if not upper:
        return [*marks, *_hidden_below(shape, scale)]
    for key in shape.keyways:
        if key.form == "sunk":
            marks += _stadium(key.start, key.end, key.width.value / 2, scale)
        else:
            marks += disc_keyway(shape, key, scale)
    for slot_across in shape.cross_slots:
        marks += _stadium(slot_across.start, slot_across.end, slot_across.width.value / 2, scale)
    inside, there = broken_out(shape), sides(shape)
    for hole in shape.cross_holes:
        if hole.name in inside:
            marks += _axis_of(shape, hole, scale)
            continue
        if there.get(hole.name) == "off":
            continue  # seen in the view along the axis
        x, y = hole.z * scale, -hole.offset * scale
        radius = hole.dia.value / 2 * scale
        if hole.thread:
            marks.append(Arc((x, y), thread(hole.thread).tapping_drill / 2 * scale, "thick"))
            marks.append(Arc((x, y), thread(hole.thread).major / 2 * scale, "thin", 80.0, 350.0))
        else:
            marks.append(Arc((x, y), radius, "thick"))
        if hole.sink_dia:
            marks.append(Arc((x, y), hole.sink_dia / 2 * scale, "thick"))
        reach = max(radius, hole.sink_dia / 2 * scale) + 2.0
        marks.append(Line(((x, y - reach), (x, y + reach)), "chain"))
        if abs(y) > 0.2:
            marks.append(Line(((x - reach, y), (x + reach, y)), "chain"))
    return marks


def _centre_lines(shape: TurnedShape, scale: float) -> list[Mark]:
    length = shape.length.value * scale
    marks: list[Mark] = [Line(((-5.0, 0.0), (length + 5.0, 0.0)), "chain")]
    for holes in shape.circle_holes:
        r = holes.circle / 2 * scale
        start, end = holes.start * scale - PAST, holes.end * scale + PAST
        marks.append(Line(((start, -r), (end, -r)), "chain"))
    if not (shape.bores or shape.recesses or shape.circle_holes):
        return marks
    for hole in shape.cross_holes:
        marks += _axis_of(shape, hole, scale)
    return list(dict.fromkeys(marks))  # holes round one place share a line


def _hidden_below(shape: TurnedShape, scale: float) -> list[Mark]:
    """Cross holes on the lower side of a view whose lower half is seen from outside, down to the bore."""
    marks: list[Mark] = []
    for hole in shape.cross_holes:
        if sides(shape).get(hole.name) == "below":
            radius = (thread(hole.thread).tapping_drill if hole.thread else hole.dia.value) / 2
            top = surface_radius(shape, hole.z)
            inner = max((bore.dia.value / 2 for bore in shape.bores if bore.through), default=0.0)
            low = inner if hole.depth is None else max(inner, top - hole.depth)
            for z in (hole.z - radius, hole.z + radius):
                marks.append(Line(((z * scale, low * scale), (z * scale, top * scale)), "dashed"))
    return marks


def _axis_of(shape: TurnedShape, hole: CrossHole, scale: float) -> list[Mark]:
    """The centre line of a cross hole that is cut, on its side."""
    x, top = hole.z * scale, surface_radius(shape, hole.z) * scale
    side = sides(shape).get(hole.name, "off")
    if side == "both":
        return [Line(((x, -top - PAST), (x, top + PAST)), "chain")]
    way = 1 if side == "below" else -1
    return [] if side == "off" else [Line(((x, way * (top + PAST)), (x, -way * PAST)), "chain")]


def _flat(
    shape: TurnedShape, start: float, end: float, level: float, count: int, scale: float, upper: bool
) -> list[Mark]:
    """A flat that faces the reader, with the thin crossed lines that say so (ISO 128-3)."""
    radius = surface_radius(shape, (start + end) / 2)
    half = math.sqrt(max(radius * radius - level * level, 0.0))
    if count > 2:
        half = min(half, level * math.tan(math.pi / count))
    a, b, y = start * scale, end * scale, half * scale
    top = -y if upper else 0.0
    lines: list[tuple[Kind, tuple[tuple[float, float], tuple[float, float]]]] = [
        ("thick", ((a, y), (b, y))),
        ("thin", ((a, top), (b, y))),
        ("thin", ((a, y), (b, top))),
        ("thick", ((a, top), (a, y))),
        ("thick", ((b, top), (b, y))),
    ]
    if upper:
        lines.append(("thick", ((a, -y), (b, -y))))
    return [Line(points, kind) for kind, points in lines]


def _notch(a: float, b: float, half: float, scale: float, upper: bool) -> list[Mark]:
    """A slot seen along its length: two sides and its floor."""
    x, y, end = a * scale, half * scale, b * scale
    top = -y if upper else 0.0
    marks: list[Mark] = [Line(((x, y), (end, y)), "thick"), Line(((end, top), (end, y)), "thick")]
    if upper:
        marks.append(Line(((x, -y), (end, -y)), "thick"))
    return marks


def _stadium(start: float, end: float, half: float, scale: float) -> list[Mark]:
    a, b, r = start * scale, end * scale, half * scale
    return [
        Line(((a + r, -r), (b - r, -r)), "thick"),
        Line(((a + r, r), (b - r, r)), "thick"),
        Arc((a + r, 0.0), r, "thick", 90.0, 270.0),
        Arc((b - r, 0.0), r, "thick", -90.0, 90.0),
    ]


def _slot_edges(shape: TurnedShape, scale: float) -> list[Mark]:
    """Behind a slot that is cut through: the far edges of its side, outside and in the bore."""
    marks: list[Mark] = []
    for slot in shape.cross_slots:
        half, z = slot.width.value / 2, (slot.start + slot.end) / 2
        bores = [
            one.dia.value / 2 for one in shape.bores if one.through or _reaches(one, z, shape.length.value)
        ]
        for radius in (surface_radius(shape, z), *bores):
            if radius > half:
                y = -math.sqrt(radius**2 - half**2) * scale
                marks.append(Line(((slot.start * scale, y), (slot.end * scale, y)), "thick"))
    return marks


def _reaches(bore: Bore, z: float, length: float) -> bool:
    return bore.depth >= (z if bore.face == "A" else length - z)


def _slots_cut(shape: TurnedShape, scale: float) -> list[Mark]:
    """In a view that is cut all through, a keyway of the bore shows as a line along the upper wall."""
    marks: list[Mark] = []
    for key in shape.bore_keyways:
        bore = next((one for one in shape.bores if one.name == key.on), None)
        if bore is None:
            continue
        y = -(bore.dia.value / 2 + key.depth) * scale
        end = shape.length.value if bore.through else bore.depth
        a, b = (
            (0.0, end) if bore.face == "A" or bore.through else (shape.length.value - end, shape.length.value)
        )
        if -y < radius_of(shape) * scale:
            marks.append(Line(((a * scale, y), (b * scale, y)), "thick"))
    return marks
