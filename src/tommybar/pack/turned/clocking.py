"""Angles round the axis as true dimensions in the view along it, counted from the horizontal on the right."""

from __future__ import annotations

import math
from collections.abc import Iterable
from itertools import pairwise

from tommybar.pack.boxes import Box
from tommybar.pack.marks import ARROW, PAST, plain_marks
from tommybar.pack.printed import PrintedDimension
from tommybar.pack.sheet import Angular, Arc, Line, Mark, Point, Text
from tommybar.pack.turned.across import alike
from tommybar.pack.turned.saying import Angles, Saying
from tommybar.pack.units import Reader
from tommybar.shapes.features import TurnedShape

FIRST = 8.5  # from the outline to the first arc [mm]
STEP = 8.5  # from one arc to the next [mm]
SIZE = 4.25
WITHIN = 0.84  # where the first arc stands inside the outline, as part of its radius
ROOM = 2.6 * ARROW  # an arc shorter than this has its arrows outside [mm]
SPARE = 0.4  # between words and a line [mm]
QUARTER = 90.0  # what stands at a quarter turn is seen to stand there, and said in words [deg]


def clocked(shape: TurnedShape) -> dict[str, tuple[str, float]]:
    """What can be dimensioned by an arc: by name, the size that says the angle, and the angle, rising [deg].

    Not what stands at a quarter turn, nor over half a turn away; of several
    holes that are alike none, since words say all of them at once; and of
    several things at one angle the first.
    """
    found = [(one.name, "start_angle", one.start_angle) for one in shape.circle_holes]
    found += [(holes[0].name, "angle", holes[0].angle) for holes in alike(shape) if len(holes) == 1]
    for many in (
        shape.flats, shape.cross_slots, shape.bore_keyways, shape.head_slots, shape.slits,
    ):  # fmt: skip
        found += [(one.name, "angle", one.angle) for one in many]
    made: dict[str, tuple[str, float]] = {}
    for name, size, angle in sorted(found, key=lambda one: one[2]):
        turn = angle % 360.0
        plain = min(turn % QUARTER, QUARTER - turn % QUARTER) < 1e-6
        alone = all(abs(turn - other) > 1e-6 for _, other in made.values())
        if not plain and turn < 180.0 and abs(angle - turn) < 1e-9 and alone:
            made[name] = (size, turn)
    return made


def clocking_marks(
    shape: TurnedShape, told: Angles, outer: float, reader: Reader
) -> tuple[list[Mark], list[PrintedDimension]]:
    """Arcs outside of ``outer`` [mm on paper] about (0, 0), their legs drawn on, or inside; and their figures."""
    marks: list[Mark] = []
    printed: list[PrintedDimension] = []
    angles = clocked(shape)
    radius = outer * WITHIN + STEP if told.inside else outer + FIRST - STEP
    for name in told.drawn:
        size, angle = angles[name]
        radius += -STEP if told.inside else STEP
        say = Saying(name, reader)
        words = say.angle(size, angle)
        say.row(words)
        printed += say.printed
        way = math.radians(angle)
        c, s = math.cos(way), math.sin(way)
        near, far = outer + 4.5, radius + PAST
        if not told.inside:
            marks.append(Line(((near, 0.0), (far, 0.0)), "thin"))
            marks.append(Line(((near * c, -near * s), (far * c, -far * s)), "thin"))
        outside = radius * way < ROOM
        middle = way / 2
        text = Text((0, 0), words, SIZE)
        way_out = -1.0 if told.inside else 1.0
        out = radius + way_out * (
            1.6 + text.width / 2 * abs(math.cos(middle)) + SIZE * 0.35 * math.sin(middle)
        )
        x, y = out * math.cos(middle), -out * math.sin(middle) + SIZE * 0.33
        marks.append(
            Angular((0.0, 0.0), (radius, 0.0), (radius * c, -radius * s), radius, angle,
                    (Text((x, y), words, SIZE, anchor="middle"),), outside=outside)
        )  # fmt: skip
    return marks, printed


def free(marks: Iterable[Mark]) -> bool:
    """Whether no words of an arc lie on words or on a line of all marks."""
    everything = list(marks)
    own = [text for one in everything if isinstance(one, Angular) and not one.pointed for text in one.words]
    boxes = [(b[0] - SPARE, b[1] - SPARE, b[2] + SPARE, b[3] + SPARE) for b in (text.box for text in own)]
    for one in plain_marks(everything):
        if isinstance(one, Text):
            there = one.box
            if any(
                one is not text
                and there[0] < b[2]
                and b[0] < there[2]
                and there[1] < b[3]
                and b[1] < there[3]
                for text, b in zip(own, boxes, strict=True)
            ):
                return False
        elif isinstance(one, Line | Arc):
            stretches = list(pairwise(_points(one)))
            if any(_crosses(a, b, box) for a, b in stretches for box in boxes):
                return False
    return True


def _points(one: Line | Arc) -> list[Point]:
    if isinstance(one, Line):
        return [*one.points, one.points[0]] if one.closed else list(one.points)
    at = [math.radians(one.start + (one.end - one.start) * k / 48) for k in range(49)]
    (x, y), r = one.centre, one.radius
    return [(x + r * math.cos(a), y - r * math.sin(a)) for a in at]


def _crosses(a: Point, b: Point, box: Box) -> bool:
    """Whether a stretch of line runs through a box."""
    low, high = 0.0, 1.0
    for p, q, small, large in ((a[0], b[0], box[0], box[2]), (a[1], b[1], box[1], box[3])):
        if abs(q - p) < 1e-9:
            if not small < p < large:
                return False
            continue
        s, t = sorted(((small - p) / (q - p), (large - p) / (q - p)))
        low, high = max(low, s), min(high, t)
    return low < high
