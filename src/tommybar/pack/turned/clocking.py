"""Angles round the axis as true dimensions in the view along it, counted from the horizontal on the right."""

from __future__ import annotations

import math
from collections.abc import Iterable

from tommybar.pack.marks import ARROW, PAST
from tommybar.pack.printed import PrintedDimension
from tommybar.pack.sheet import Angular, Line, Mark, Text
from tommybar.pack.turned.across import alike
from tommybar.pack.turned.crossing import clear
from tommybar.pack.turned.saying import Angles, Saying
from tommybar.pack.units import Reader
from tommybar.shapes.features import TurnedShape

FIRST = 8.5  # from the outline to the first arc [mm]
STEP = 8.5  # from one arc to the next [mm]
SIZE = 4.25
WITHIN = 0.84  # where the first arc stands inside the outline, as part of its radius
ROOM = 2.6 * ARROW  # an arc shorter than this has its arrows outside [mm]
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
    arcs = [one for one in everything if isinstance(one, Angular) and not one.pointed]
    return clear([text for one in arcs for text in one.words], everything)
