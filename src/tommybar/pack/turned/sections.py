"""Sections across the axis: one for every keyway, the cut disc with the keyway at its own clocking."""

from __future__ import annotations

import math

from tommybar.pack.sheet import Arc, Area, Line, Mark, Text
from tommybar.pack.turned.place import above_marks
from tommybar.pack.turned.saying import Angles, Callout, Row, Saying
from tommybar.pack.units import Reader
from tommybar.shapes.features import Keyway, TurnedShape
from tommybar.shapes.ring_cuts import surface_radius

FORMS = {"sunk": "keyway", "sled": "sled-runner keyway", "woodruff": "keyway for a disc key"}


def keyway_places(shape: TurnedShape, letters: list[str]) -> list[Callout]:
    """The letters of the cutting planes over the main view, in the order of the keyways."""
    return [
        Callout((key.start + key.end) / 2, surface_radius(shape, (key.start + key.end) / 2),
                (Row(f"{letter}–{letter}", bold=True),), feature=key.name)
        for key, letter in zip(shape.keyways, letters, strict=False)
    ]  # fmt: skip


def cutting_planes(shape: TurnedShape, scale: float) -> list[Mark]:
    """Where the sections are cut: a chain line across the view, thick at its ends."""
    marks: list[Mark] = []
    for key in shape.keyways:
        z = (key.start + key.end) / 2
        x, r = z * scale, surface_radius(shape, z) * scale
        marks.append(Line(((x, -r - 3.0), (x, r + 3.0)), "chain"))
        marks += [Line(((x, side * (r + 3.0)), (x, side * (r + 1.0))), "cut") for side in (1, -1)]
    return marks


def keyway_section(
    shape: TurnedShape, key: Keyway, letter: str, scale: float, reader: Reader, angles: Angles
) -> tuple[list[Mark], list[Callout]]:
    """The section through one keyway with its width and depth; centre at (0, 0)."""
    radius = surface_radius(shape, (key.start + key.end) / 2)
    half = key.width.value / 2
    edge = math.sqrt(max(radius**2 - half**2, 0.0))
    floor = radius - key.depth
    spread = math.degrees(math.atan2(half, edge))
    first = key.angle + spread
    inner = max((bore.dia.value / 2 for bore in shape.bores if bore.through), default=0.0)
    steps = 96
    ring = [
        (radius * math.cos(math.radians(first + (360 - 2 * spread) * n / steps)) * scale,
         -radius * math.sin(math.radians(first + (360 - 2 * spread) * n / steps)) * scale)
        for n in range(steps + 1)
    ]  # fmt: skip
    c, s = math.cos(math.radians(key.angle)), math.sin(math.radians(key.angle))

    def at(along: float, left: float) -> tuple[float, float]:
        return ((along * c - left * s) * scale, -(along * s + left * c) * scale)

    notch = [at(edge, -half), at(floor, -half), at(floor, half), at(edge, half)]
    rings = [(*ring, *notch[1:3])]
    marks: list[Mark] = []
    if inner:
        rings.append(
            tuple(
                (inner * math.cos(math.tau * n / 64) * scale, inner * math.sin(math.tau * n / 64) * scale)
                for n in range(64)
            )
        )
        marks.append(Arc((0.0, 0.0), inner * scale, "thick"))
    marks += [
        Area(tuple(rings), "hatch", None),
        Arc((0.0, 0.0), radius * scale, "thick", first, first + 360 - 2 * spread),
        Line(tuple(notch), "thick"),
    ]
    reach = radius * scale + 3.0
    marks += [Line(((-reach, 0.0), (reach, 0.0)), "chain"), Line(((0.0, -reach), (0.0, reach)), "chain")]
    say = Saying(key.name, reader)
    say.word("form", "form", key.form)
    say.sized("width", key.width, f"{FORMS[key.form]} ", "wide", "width")
    deep = f"{say.length('depth', 'depth', key.depth, 'surface')} deep"
    if key.form == "woodruff":  # its length follows from the cutter
        say.row(deep, True)
    else:
        say.row(f"{deep}, {say.length('length', 'long', key.end - key.start)} long", True)
    if key.cutter:
        say.row(f"cutter {say.dia('cutter', key.cutter)}", True)
    if angles.said(key.name):
        say.row(f"at {say.angle('angle', key.angle)}", True)
    x, y = at(floor, half * 0.5)
    callout = Callout(x / scale, -y / scale, tuple(say.rows), tuple(say.printed), None, "above", key.name)
    wide = max(radius * scale, 32.0)
    placed = above_marks([callout], scale, -radius * scale, -wide, wide)
    marks += placed[0] if placed else []
    marks.append(Text((0.0, radius * scale + 9.0), f"{letter}–{letter}", 5.0, True, "middle"))
    return marks, [callout]
