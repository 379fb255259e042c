"""What is written of the outside: lands, their edges and corners, grooves, and what is milled in them."""

from __future__ import annotations

import math
from collections import Counter
from dataclasses import replace
from itertools import pairwise

from tommybar.pack.turned.angles import half_angle, whole_angle
from tommybar.pack.turned.saying import Callout, Detailed, Measured, Row, Saying, detailed
from tommybar.pack.units import Reader
from tommybar.shapes.features import Arc, Cone, Cylinder, Eccentric, Groove, Land, TurnedShape
from tommybar.shapes.outside import arc_of
from tommybar.shapes.ring_cuts import surface_radius

KNURLS = {"straight": "RAA", "diamond": "RGE"}  # letters of ISO 13444, from memory
RA = 1.6  # written at sizes with limits of their own; common practice, no source [um]
BESIDE = 0.01  # how far beside a groove its surface is asked for [mm]
NUDGE = 0.08  # how far along a cone its end's leader stands when the next land is larger
RA_FINE = 0.8  # at grade 6 and finer; common practice, no source [um]


def outside_callouts(shape: TurnedShape, reader: Reader) -> list[Callout]:
    """Callouts over the view, from face A on; edges and corners that a note gathers are left out."""
    made: list[Callout] = []
    bodies = sorted(shape.outside, key=lambda body: body.start)
    for n, one in enumerate(bodies):
        before = bodies[n - 1] if n else None
        after = bodies[n + 1] if n + 1 < len(bodies) else None
        if isinstance(one, Cylinder):
            made.append(_cylinder(shape, one, reader))
        elif isinstance(one, Cone):
            made += _cone(one, before, after, reader)
        elif isinstance(one, Arc):
            made += _arc(one, before, after, reader)
        else:
            made.append(_eccentric(one, reader))
    made += _edges(shape, reader)
    made += [_groove(shape, one, reader) for one in shape.grooves]
    return made


def finish_row(zone: str) -> Row:
    """The roughness wanted of a size with limits of its own."""
    grade = "".join(letter for letter in zone if letter.isdigit())
    return Row("", True, cells=("finish", f"Ra {RA_FINE if grade and int(grade) <= 6 else RA:g}"))


def _cylinder(shape: TurnedShape, one: Cylinder, reader: Reader) -> Callout:
    say = Saying(one.name, reader)
    z = free_place(shape, one)
    if one.thread:
        words = say.word("thread", "thread", one.thread, one.dia.value)
        if one.left:
            words += " " + say.word("form", "left", "LH")
        if one.full:
            words += f" × {say.length('length', 'full', one.full, 'end')} full"
        say.row(words)
    elif one.knurl:
        say.row(f"Ø{say.length('diameter', 'dia', one.dia.value)} knurled")
        say.row(
            f"ISO 13444 – {say.word('form', 'knurl', KNURLS[one.knurl.pattern])} "
            f"{say.length('width', 'pitch', one.knurl.pitch)}",
            True,
        )
    else:
        say.sized("dia", one.dia)
        if one.dia.toleranced:
            say.rows.append(finish_row(one.dia.zone))
    if one.finish:
        say.row(say.word("form", "finish", one.finish.replace("_", " ")), True)
    return Callout(
        z, one.dia.value / 2, tuple(say.rows), tuple(say.printed), Measured("diameter", one.dia.value),
        feature=one.name,
    )  # fmt: skip


def free_place(shape: TurnedShape, one: Cylinder) -> float:
    """Where on a cylinder an arrow can stand: the middle of its longest stretch without groove or hole."""
    taken = [(g.start, g.end) for g in shape.grooves]
    taken += [(h.z - h.dia.value / 2, h.z + h.dia.value / 2) for h in shape.cross_holes]
    taken += [(k.start, k.end) for k in shape.keyways]
    taken += [(s.start, s.end) for s in shape.cross_slots]
    taken += [(f.start, f.end) for f in shape.flats if f.start > one.start + 1e-6 or f.end < one.end - 1e-6]
    start, end = one.start + one.edge_start, one.end - one.edge_end
    cuts = sorted({start, end, *(min(max(t, start), end) for pair in taken for t in pair)})
    free = [
        (b - a, (a + b) / 2)
        for a, b in pairwise(cuts)
        if not any(low < (a + b) / 2 < high for low, high in taken)
    ]
    return max(free)[1] if free else (start + end) / 2


def _said_by(beside: Land | None, dia: float, at_end: bool) -> bool:
    """Whether a neighbour already says the diameter at a boundary."""
    if dia < 1e-9:
        return True
    if isinstance(beside, Cylinder) and not beside.thread:
        return abs(beside.dia.value - dia) < 1e-6
    return isinstance(beside, Cone | Arc) and at_end and abs(beside.end_dia - dia) < 1e-6


def _end_callout(
    one: Land, size: str, z: float, dia: float, reader: Reader, limits: Cone | None = None
) -> Callout:
    say = Saying(one.name, reader)
    if limits is not None and limits.limits is not None:
        say.sized(size, limits.limits)
    else:
        say.row(say.dia(size, dia))
    return Callout(
        z, dia / 2, tuple(say.rows), tuple(say.printed), Measured("diameter", dia), feature=one.name
    )


def _facing(beside: Land, size: str) -> float:
    """Diameter of a neighbour where it meets the land."""
    return beside.end_dia if size == "start_dia" else beside.start_dia


def _cone(one: Cone, before: Land | None, after: Land | None, reader: Reader) -> list[Callout]:
    made = []
    large = max(one.start_dia, one.end_dia)
    for size, z, dia, beside in (
        ("start_dia", one.start, one.start_dia, before),
        ("end_dia", one.end, one.end_dia, after),
    ):
        wanted = "D" if abs(dia - large) < 1e-9 else "d"
        if wanted in one.given.split() and not _said_by(beside, dia, size == "start_dia"):
            made.append(
                _end_callout(one, size, z, dia, reader, one if wanted == "D" and one.limits else None)
            )
            if beside is not None and _facing(beside, size) > dia + 1e-6:
                aside = NUDGE * (one.end - one.start) * (1 if size == "start_dia" else -1)
                made[-1] = replace(made[-1], z=z + aside)  # clear of the neighbour's face
    half = math.degrees(math.atan2(abs(one.end_dia - one.start_dia) / 2, one.end - one.start))
    say = Saying(one.name, reader)
    if one.taper:
        way = 1 if one.end_dia < one.start_dia else -1
        say.row(f"{say.word('form', 'taper', one.taper)} taper", taper=way)
    if "a" in one.given.split():
        if min(one.start_dia, one.end_dia) < 1e-9:
            say.row(f"{say.angle('included', 2 * half)} point")
        else:
            say.row(f"{say.angle('half_angle', half)} half angle")
    if say.rows:
        z, r = (one.start + one.end) / 2, (one.start_dia + one.end_dia) / 4
        slope = math.tan(math.radians(half)) * (1 if one.end_dia > one.start_dia else -1)
        apex = (one.start - one.start_dia / 2 / slope, 0.0)
        measured = None
        if "a" in one.given.split():
            pointed = min(one.start_dia, one.end_dia) < 1e-9
            measured = whole_angle(apex[0], z, r, 2 * half) if pointed else half_angle(apex[0], z, r, half)
        made.append(Callout(z, r, tuple(say.rows), tuple(say.printed), measured, feature=one.name))
    return made


def _arc(one: Arc, before: Land | None, after: Land | None, reader: Reader) -> list[Callout]:
    made = []
    for size, z, dia, beside in (
        ("start_dia", one.start, one.start_dia, before),
        ("end_dia", one.end, one.end_dia, after),
    ):
        if not _said_by(beside, dia, size == "start_dia"):
            made.append(_end_callout(one, size, z, dia, reader))
    arc = arc_of(one)
    on_axis = abs(arc.centre[1]) < 1e-6
    say = Saying(one.name, reader)
    figure = f"{'SR' if on_axis else 'R'}{say.length('radius', 'radius', one.radius)}"
    say.row(f"({figure})" if on_axis else figure)  # its ends fix a sphere on the axis; ISO 129-1: in brackets
    if one.form not in ("fillet", "tip"):
        say.row(say.word("form", "form", one.form), True)
    z, r = arc.at(0.5)
    made.append(
        Callout(z, r, tuple(say.rows), tuple(say.printed), Measured("radius", one.radius, arc.centre),
                feature=one.name)
    )  # fmt: skip
    return made


def _eccentric(one: Eccentric, reader: Reader) -> Callout:
    say = Saying(one.name, reader)
    say.sized("dia", one.dia)
    say.row(f"throw {say.length('length', 'throw', one.throw)} at {say.angle('angle', one.angle)}", True)
    return Callout(
        (one.start + one.end) / 2, one.dia.value / 2 + one.throw, tuple(say.rows), tuple(say.printed),
        feature=one.name,
    )  # fmt: skip


def edges_of(shape: TurnedShape) -> list[tuple[str, str, float, float, float, float]]:
    """Every chamfer outside: (feature, size, axial length, angle, z, r of its middle)."""
    made = []
    bodies = sorted(shape.outside, key=lambda body: body.start)
    for n, one in enumerate(bodies):
        if not isinstance(one, Cylinder):
            continue
        before = bodies[n - 1].end_dia if n else 0.0
        after = bodies[n + 1].start_dia if n + 1 < len(bodies) else 0.0
        r = one.dia.value / 2
        for size, edge, beside, z, angle, way in (
            ("edge_start", one.edge_start, before, one.start, one.edge_angle, 1),
            ("edge_end", one.edge_end, after, one.end, one.edge_end_angle or one.edge_angle, -1),
        ):
            if edge > 0 and beside < one.dia.value - 1e-6:
                drop = edge * math.tan(math.radians(angle))
                made.append((one.name, size, edge, angle, z + way * edge / 2, r - drop / 2))
    return made


def corners_of(shape: TurnedShape) -> list[tuple[str, str, float, float, float]]:
    """Every radius in a corner outside: (feature, size, radius, z, r of its middle)."""
    made = []
    bodies = sorted(shape.outside, key=lambda body: body.start)
    for n, one in enumerate(bodies):
        if not isinstance(one, Cylinder):
            continue
        before = bodies[n - 1].end_dia if n else 0.0
        after = bodies[n + 1].start_dia if n + 1 < len(bodies) else 0.0
        for size, corner, beside, z, way in (
            ("corner_start", one.corner_start, before, one.start, 1),
            ("corner_end", one.corner_end, after, one.end, -1),
        ):
            if corner > 0 and beside > one.dia.value + 1e-6:
                share = corner * (1 - math.sqrt(0.5))
                made.append((one.name, size, corner, z + way * share, one.dia.value / 2 + share))
    return made


def commonest_edge(shape: TurnedShape) -> tuple[float, float] | None:
    """The chamfer that stands in a note: the one that most edges have, outside and in bores."""
    found = Counter((edge, angle) for _, _, edge, angle, _, _ in edges_of(shape))
    found.update((bore.edge, 45.0) for bore in shape.bores if bore.edge)
    return max(found, key=lambda key: (found[key], -key[0])) if found else None


def commonest_corner(shape: TurnedShape) -> float | None:
    """The corner radius that stands in a note."""
    found = Counter(corner for _, _, corner, _, _ in corners_of(shape))
    return max(found, key=lambda key: (found[key], -key)) if found else None


def _edges(shape: TurnedShape, reader: Reader) -> list[Callout]:
    made = []
    usual, corner_usual = commonest_edge(shape), commonest_corner(shape)
    edges = [one for one in edges_of(shape) if (one[2], one[3]) != usual]
    for n, (name, size, edge, angle, z, r) in enumerate(edges):
        twin = [one for one in edges if one[0] == name and one[2:4] == (edge, angle)]
        if len(twin) == 2 and edges.index(twin[1]) == n:
            continue  # said at the other end of the same land
        say = Saying(name, reader)
        for _, which, *_ in twin:
            words = f"{say.length('chamfer', which, edge)} × {say.angle(which + '_angle', angle)}"
        say.row(words + (" both ends" if len(twin) == 2 else ""))
        alone = None
        if len(twin) == 1:
            half, rise = (
                edge / 2,
                edge / 2 * math.tan(math.radians(angle)) * (1 if size == "edge_start" else -1),
            )
            alone = Detailed((), tuple(say.printed), words, (z - half, r - rise), (z + half, r + rise))
        made.append(Callout(z, r, tuple(say.rows), tuple(say.printed), feature=name, detailed=alone))
    for name, size, radius, z, r in corners_of(shape):
        if radius != corner_usual:
            say = Saying(name, reader)
            say.row(f"R{say.length('radius', size, radius)} max")
            made.append(Callout(z, r, tuple(say.rows), tuple(say.printed), feature=name))
    for one in shape.outside:
        if isinstance(one, Cylinder):
            made += _rounds(one, reader)
    return made


def _rounds(one: Cylinder, reader: Reader) -> list[Callout]:
    """Rounded edges of a land; two that are alike are said once."""
    made = []
    ends = [("round_start", one.round_start, one.start, 1), ("round_end", one.round_end, one.end, -1)]
    ends = [end for end in ends if end[1] > 0]
    alike = len(ends) == 2 and ends[0][1] == ends[1][1]
    for n, (size, radius, z, way) in enumerate(ends):
        if alike and n:
            continue
        say = Saying(one.name, reader)
        figures = [say.length("radius", which, radius) for which, *_ in (ends if alike else [(size,)])]
        say.row(f"R{figures[0]}" + (" both ends" if alike else ""))
        share = radius * (1 - math.sqrt(0.5))
        centre = (z + way * radius, one.dia.value / 2 - radius)
        tip = (z + way * share, one.dia.value / 2 - share)
        measured = Measured("radius", radius, centre)
        made.append(Callout(*tip, tuple(say.rows), tuple(say.printed), measured, feature=one.name))
    return made


def _groove(shape: TurnedShape, one: Groove, reader: Reader) -> Callout:
    say = Saying(one.name, reader)
    width = say.length("width", "width", one.end - one.start)
    say.word("form", "form", one.form)
    form = "" if one.form == "square" else f"{one.form} groove "
    say.row(f"{form}{width} × {say.dia('floor', one.floor)}")
    if one.corner:
        say.row(f"corners R{say.length('radius', 'corner', one.corner)}", True)
    beside = (max(one.start - BESIDE, 0.0), min(one.end + BESIDE, shape.length.value))
    low, high = (
        (one.floor / 2, one.floor / 2)
        if one.form == "square"
        else (surface_radius(shape, beside[0]), surface_radius(shape, beside[1]))
    )
    ends = ((one.start, low), (one.end, high))  # a vee or a round one is as wide as said at the surface only
    return Callout(
        (one.start + one.end) / 2, one.floor / 2, tuple(say.rows), tuple(say.printed),
        Measured("diameter", one.floor), feature=one.name, wide=one.end - one.start,
        detailed=detailed(say, width, f"{form}{width} × ", form, *ends),
    )  # fmt: skip
