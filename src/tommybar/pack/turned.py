"""The view of a turned part, dimensioned, at one scale; its axis at y = 0, face A at x = 0."""

from __future__ import annotations

from tommybar.pack.boxes import box_of
from tommybar.pack.callouts import Callout, callout_marks, callouts_of
from tommybar.pack.lanes import face_radius, inside_marks, length_marks
from tommybar.pack.marks import leader
from tommybar.pack.profile import Profile, drawn_profile, outline_radius, shape_radius
from tommybar.pack.sheet import Area, Line, Mark, Text
from tommybar.pack.units import Reader
from tommybar.shapes.features import Cylinder, TurnedShape


def profile_marks(shape: TurnedShape, profile: Profile, scale: float) -> list[Mark]:
    """Cut metal, outlines, edges, thread lines, knurls and centre lines."""
    marks: list[Mark] = []

    def paper(points: tuple[tuple[float, float], ...]) -> tuple[tuple[float, float], ...]:
        return tuple((z * scale, -r * scale) for z, r in points)

    if profile.cut:
        for ring in (*profile.upper, *profile.lower):
            marks.append(Area((paper(ring),), "hatch", "thick"))
    else:
        marks.append(Line(paper(_outside_line(profile)), "thick", closed=True))
    marks += [Line(paper(edge), "thick") for edge in profile.edges]
    marks += [Line(paper(edge), "thin") for edge in profile.threads]
    marks += _knurl_marks(shape, scale)
    length = shape.length.value * scale
    marks.append(Line(((-5.0, 0.0), (length + 5.0, 0.0)), "chain"))
    for holes in shape.circle_holes:
        r = holes.circle / 2 * scale
        start, end = holes.start * scale - 3.0, holes.end * scale + 3.0
        marks += [Line(((start, y), (end, y)), "chain") for y in (-r, r)]
    for hole in shape.cross_holes:
        x, top = hole.z * scale, outline_radius(profile, hole.z) * scale
        low = top + 3.0 if hole.walls == 2 else 3.0
        marks.append(Line(((x, -top), (x, low)), "chain"))
    return marks


def _outside_line(profile: Profile) -> tuple[tuple[float, float], ...]:
    """Outline of a solid part: the section's ring above the axis, mirrored below."""
    ring = profile.upper[0]
    start = next(i for i, p in enumerate(ring) if p[1] <= 1e-6 and ring[(i + 1) % len(ring)][1] > 1e-6)
    turned = ring[start:] + ring[:start]
    above = [p for p in turned if p[1] > 1e-6]
    return (*above, *((z, -r) for z, r in reversed(above)))


def _knurl_marks(shape: TurnedShape, scale: float) -> list[Mark]:
    marks: list[Mark] = []
    for one in shape.outside:
        if not isinstance(one, Cylinder) or one.knurl is None:
            continue
        start, end = (one.start + one.edge_start) * scale, (one.end - one.edge_end) * scale
        radius = one.dia.value / 2 * scale
        step = max(1.0, one.knurl.pitch * scale)
        n = int(radius / step)
        if one.knurl.pattern == "straight":
            marks += [Line(((start, k * step), (end, k * step)), "hatch") for k in range(-n, n + 1) if k]
        else:
            ring = ((start, -radius), (end, -radius), (end, radius), (start, radius))
            marks += [Area((ring,), "hatch", None, 2 * step), Area((ring,), "hatch2", None, 2 * step)]
    return marks


def _datum_marks(radius: float, scale: float, bottom: float) -> list[Mark]:
    """The letter A on face A, on a line that leads to the face."""
    x, y = -12.0, bottom + 2.0
    ring = ((x - 5.5, y - 3.0), (x, y - 3.0), (x, y + 2.8), (x - 5.5, y + 2.8))
    return [
        *leader((0.0, max(radius * scale - 2.0, 0.5)), (-6.0, y), (x, y)),
        Area((ring,), "white", "rule"),
        Text((x - 2.75, y + 1.45), "A", 4.25, True, "middle"),
    ]


def turned_view(shape: TurnedShape, scale: float, reader: Reader, room: float) -> list[Mark]:
    """The whole dimensioned view at a scale, callouts within ``room`` [mm] of width."""
    profile = drawn_profile(shape)
    radius = shape_radius(shape) * scale
    length = shape.length.value * scale
    callouts: list[Callout] = callouts_of(shape, profile, reader)
    spare = max((room - length) / 2 - 4.0, 0.0)
    above, _ = callout_marks(callouts, scale, -radius, -min(spare, 60.0), length + min(spare, 60.0))
    lengths, _ = length_marks(shape, scale, radius, reader)
    lanes = inside_marks(shape, scale, reader, {"A": 0.0, "B": length})
    marks = [*profile_marks(shape, profile, scale), *above, *lengths, *lanes]
    return [*marks, *_datum_marks(face_radius(shape), scale, _lowest(lanes, radius))]


def _lowest(lanes: list[Mark], radius: float) -> float:
    """Below which the datum letter is clear of the lanes left of face A."""
    left = [box_of([one]) for one in lanes]
    return max([radius, *(box[3] for box in left if box[0] < 0)]) - 0.5
