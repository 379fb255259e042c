"""A turned part seen from face A: its circles and the holes on their circles."""

from __future__ import annotations

import math

from tommybar.facts.threads import thread
from tommybar.pack.marks import leader
from tommybar.pack.profile import Profile, end_circles
from tommybar.pack.sheet import LINE_STEP, Arc, Line, Mark, Text
from tommybar.pack.units import Reader
from tommybar.pack.words import circle_words
from tommybar.shapes.features import TurnedShape

SIZE = 4.25


def has_end_view(shape: TurnedShape) -> bool:
    """Whether the part needs a view along its axis."""
    return bool(shape.circle_holes)


def end_view_marks(shape: TurnedShape, profile: Profile, scale: float, reader: Reader) -> list[Mark]:
    """The view with its centre at (0, 0); notes of the holes above it [mm on paper]."""
    marks: list[Mark] = []
    circles = end_circles(profile)
    outer = max(circles) * scale
    marks += [Arc((0.0, 0.0), r * scale, "thick") for r in circles]
    reach = outer + 4.0
    marks += [
        Line(((-reach, 0.0), (reach, 0.0)), "chain"),
        Line(((0.0, -reach), (0.0, reach)), "chain"),
    ]
    for bore in shape.bores:
        if bore.thread and (bore.face == "A" or bore.through):
            marks.append(Arc((0.0, 0.0), thread(bore.thread).major / 2 * scale, "thin", 80.0, 350.0))
    level = -outer - 9.0
    for holes in shape.circle_holes:
        ring = holes.circle / 2 * scale
        marks.append(Arc((0.0, 0.0), ring, "chain"))
        major = (thread(holes.thread).major if holes.thread else holes.dia.value) / 2 * scale
        drawn = thread(holes.thread).tapping_drill / 2 * scale if holes.thread else major
        pointed, best = (0.0, 0.0), -math.inf
        for n in range(holes.count):
            angle = math.radians(holes.start_angle + 360.0 * n / holes.count)
            c, s = math.cos(angle), math.sin(angle)
            at = (ring * c, -ring * s)
            marks.append(Arc(at, drawn, "thick"))
            if holes.thread:
                marks.append(Arc(at, major, "thin", 80.0, 350.0))
            tick = major + 1.8
            marks.append(
                Line(((at[0] - tick * c, at[1] + tick * s), (at[0] + tick * c, at[1] - tick * s)), "chain")
            )
            liking = s + 0.7 * c  # the hole towards the upper right is pointed at
            if liking > best:
                best, pointed = liking, at
        words = circle_words(holes, reader)
        width = max(Text((0, 0), one, SIZE).width for one in words)
        left = max(pointed[0] - width / 2, 4.0) if pointed[0] > 1.0 else 4.0
        bottom = level
        texts = [
            Text((left, bottom - 1.0 - (len(words) - 1 - i) * SIZE * LINE_STEP), one, SIZE)
            for i, one in enumerate(words)
        ]
        corner = (left, bottom)
        dx, dy = corner[0] - pointed[0], corner[1] - pointed[1]
        away = math.hypot(dx, dy)
        tip = (pointed[0] + major * dx / away, pointed[1] + major * dy / away)
        marks += [*leader(tip, corner, (left + width, bottom)), *texts]
        level = bottom - len(words) * SIZE * LINE_STEP - 4.0
    return marks
