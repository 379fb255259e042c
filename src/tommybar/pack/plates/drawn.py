"""Figures set on a view at one scale: lanes beside it, and radii, angles and depths where they have room."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from tommybar.pack.boxes import Box, box_of, overlap
from tommybar.pack.marks import leader, plain_marks
from tommybar.pack.plates.figures import Deep, Figure, Lean, Pointed, Round
from tommybar.pack.plates.letters import Lines
from tommybar.pack.plates.spans import FIT, SIZE, Side, Span, laid
from tommybar.pack.sheet import Angular, Arc, Area, Dimension, Line, Mark, Point, Radial, Text

CLEAR = 0.5  # of words from lines and from other words [mm]
SHOULDER = 2.0  # of a leader before its words [mm]
LEADS = (5.0, 8.0, 12.0, 17.0, 23.0, 30.0)  # lengths of a leader, tried in this order [mm]
NARROW = 8.0  # an arc shorter than this has its arrows outside [mm]
FIRST: dict[Side, float] = {"left": 10.0, "right": 9.0, "above": 9.0, "below": 11.0}  # the nearest lane [mm]


class Busy:
    """What stands in a view already: words keep clear of its lines, its words and its hatching."""

    def __init__(self, marks: Iterable[Mark]) -> None:
        self.lines = Lines([])
        self.words: list[Box] = []
        self.hatched: list[Box] = []
        self.add(marks)

    def add(self, marks: Iterable[Mark]) -> None:
        """More that stands there."""
        plain = plain_marks(marks)
        self.lines.add(plain)
        self.words += [one.box for one in plain if isinstance(one, Text)]
        self.hatched += [
            box_of([one]) for one in plain if isinstance(one, Area) and one.fill.startswith("hatch")
        ]

    def free(self, text: Text, clear: float = CLEAR) -> bool:
        """Whether words have room."""
        b = text.box
        room = (b[0] - clear, b[1] - clear, b[2] + clear, b[3] + clear)
        return not any(overlap(room, one) for one in (*self.words, *self.hatched)) and not self.lines.through(
            room
        )

    def passes(self, *points: Point) -> bool:
        """Whether a line runs through no words."""
        way = Lines([Line(points)])
        return not any(way.through(one) for one in self.words)


def figured(
    marks: Sequence[Mark], figures: Iterable[Figure], box: Box, scale: float, first: dict[Side, float] | None = None
) -> list[Mark] | None:  # fmt: skip
    """All figures of a view whose outline lies in ``box``; None when one has no room."""
    wanted = list(figures)
    beside = lanes(marks, wanted, box, scale, first or {})
    if beside is None:
        return None
    more = floats([*marks, *beside], wanted, scale)
    return None if more is None else [*beside, *more]


def lanes(
    marks: Sequence[Mark], figures: Iterable[Figure], box: Box, scale: float, first: dict[Side, float]
) -> list[Mark] | None:
    """Distances beside a view whose outline lies in ``box``; None when words of one lie on anything."""
    spans = [one for one in figures if isinstance(one, Span)]
    start = FIRST | first
    made: list[Mark] = []
    for side in ("left", "right"):
        made += laid(spans, side, box, scale, start[side])
    bounds = box_of([*made, Area((((box[0], box[1]), (box[2], box[3])),))])
    made += laid(spans, "above", box, scale, start["above"] + max(0.0, box[1] - bounds[1]))
    made += laid(spans, "below", box, scale, start["below"] + max(0.0, bounds[3] - box[3]))
    return made if _clear(made, Busy([*marks, *made])) else None


def floats(marks: Sequence[Mark], figures: Iterable[Figure], scale: float) -> list[Mark] | None:
    """Depths, angles, radii and pointed words of a view, each where it has room; None when one has none."""
    busy = Busy(marks)
    made: list[Mark] = []
    for one in figures:
        more: list[Mark] | None = []
        if isinstance(one, Deep):
            more = _deep(one, scale, busy)
        elif isinstance(one, Lean):
            more = _lean(one, scale, busy)
        elif isinstance(one, Round):
            more = _round(one, scale, busy)
        elif isinstance(one, Pointed):
            more = _pointed(one, scale, busy)
        if more is None:
            return None
        busy.add(more)
        made += more
    return made


def titled(marks: list[Mark], words: str, box: Box, size: float) -> list[Mark]:
    """A view with its title over it: as near to the outline as it has room, else over everything."""
    busy = Busy(marks)
    for x, anchor in (((box[0] + box[2]) / 2, "middle"), (box[0], "start"), (box[2], "end")):
        text = Text((x, box[1] - 3.0), words, size, True, anchor)  # type: ignore[arg-type]
        if busy.free(text, 2.0):
            return [*marks, text]
    return [*marks, Text(((box[0] + box[2]) / 2, box_of(marks)[1] - 2.0), words, size, True, "middle")]


def _clear(made: Sequence[Mark], busy: Busy) -> bool:
    """Whether no words of some marks lie on other words or under a line."""
    for text in (one for one in plain_marks(made) if isinstance(one, Text)):
        b = text.box
        inner = (b[0] + 0.1, b[1] + 0.1, b[2] - 0.1, b[3] - 0.1)
        if busy.lines.through(inner) or sum(overlap(inner, one) for one in busy.words) > 1:
            return False
    return True


def _deep(one: Deep, scale: float, busy: Busy) -> list[Mark] | None:
    """A depth, its line in the opening and its words beyond the face."""
    up = -1.0 if one.face > one.floor else 1.0
    face, floor = -one.face * scale, -one.floor * scale
    wide = Text((0, 0), one.words, SIZE).width
    for spot in one.at:
        x = spot * scale
        if busy.lines.through((x - 0.7, min(face, floor) + 0.4, x + 0.7, max(face, floor) - 0.4)):
            continue
        for away in (FIT, FIT + 6.0, FIT + 12.0):
            near, far = face + up * away, face + up * (away + wide)
            text = Text((x - 1.0, max(near, far)), one.words, SIZE, turned=True)
            if busy.free(text) and busy.passes((x, face), (x, far)):
                outside = abs(face - floor) < 9.0
                return [
                    Dimension(
                        (x, face), (x, floor), "y", x, one.value, (text,), outside=outside,
                        tail=((x, face), (x, far)),
                    )
                ]  # fmt: skip
    return None


def _polar(centre: Point, radius: float, degrees: float) -> Point:
    """The point at an angle, counter-clockwise as seen on paper."""
    a = math.radians(degrees)
    return centre[0] + radius * math.cos(a), centre[1] - radius * math.sin(a)


def _lean(one: Lean, scale: float, busy: Busy) -> list[Mark] | None:
    """An angle with its arc beyond the metal, its words outside the arc."""
    vertex = (one.vertex[0] * scale, -one.vertex[1] * scale)
    reach = one.reach * scale
    middle = (one.start + one.end) / 2
    tried = [
        (max(reach + more, 6.0), beside, away)
        for beside in (0.0, 1.0, -1.0)
        for away in (1.0, 3.0, 6.0, 10.0)
        for more in (4.0, 6.0, 9.0, 13.0, 18.0, 24.0)
    ]
    for radius, beside, away in tried:
        half = (one.end - one.start) / 2 + math.degrees(9.0 / radius)
        degrees = middle + beside * half
        text = _text_at(one.words, vertex, radius + away, degrees)
        if not busy.free(text):
            continue
        start, end = _polar(vertex, radius, one.start), _polar(vertex, radius, one.end)
        sides: list[Mark] = [
            Line((_polar(vertex, reach + 0.8, a), _polar(vertex, radius + 2.0, a)), "thin")
            for a in (one.start, one.end)
        ]
        near, far = _polar(vertex, radius, degrees), _polar(vertex, radius + away, degrees)
        tail = (near, far) if away > 3 else ()
        outside = radius * math.radians(one.end - one.start) < NARROW
        drawn = Angular(vertex, start, end, radius, one.value, (), tail, outside=outside)
        bare = Lines([*sides, drawn])
        if not bare.through(text.box) and not any(bare.through(box) for box in busy.words):
            return [*sides, replace(drawn, words=(text,))]
    return None


def _text_at(words: str, centre: Point, radius: float, degrees: float) -> Text:
    """Words whose box touches a circle from outside at an angle."""
    text = Text((0.0, 0.0), words, SIZE)
    left, top, right, bottom = text.box
    wide, tall = right - left, bottom - top
    a = math.radians(degrees)
    away = radius + abs(math.cos(a)) * wide / 2 + abs(math.sin(a)) * tall / 2
    x, y = centre[0] + away * math.cos(a), centre[1] - away * math.sin(a)
    return Text((x - wide / 2, y + tall / 2 - bottom), words, SIZE)


def _leads(
    tip: Point, ways: Iterable[float], words: str, busy: Busy, crossing: bool
) -> Iterator[tuple[tuple[Point, ...], Text]]:
    """Leaders from a tip in some directions, with their words beyond a level shoulder.

    With ``crossing`` they may run over lines, never over words.
    """
    turns = list(ways)
    for long in LEADS:
        for degrees in turns:
            elbow = _polar(tip, long, degrees)
            side = 1.0 if math.cos(math.radians(degrees)) >= 0 else -1.0
            end = (elbow[0] + side * SHOULDER, elbow[1])
            text = Text(
                (end[0] + side * 0.8, end[1] + 1.4), words, SIZE, anchor="start" if side > 0 else "end"
            )
            if not busy.free(text) or not busy.passes(tip, elbow, end):
                continue
            if crossing or not (busy.lines.crossed(tip, elbow) or busy.lines.crossed(elbow, end, 0.0)):
                yield (tip, elbow, end), text


def _round(one: Round, scale: float, busy: Busy) -> list[Mark] | None:
    """A radius with a leader to its arc, from outside it or, failing that, from within."""
    centre = (one.centre[0] * scale, -one.centre[1] * scale)
    radius, span = one.radius * scale, one.end - one.start
    for crossing in (False, True):
        for inward in (0.0, 180.0):
            for share in (0.5, 0.35, 0.65, 0.2, 0.8):
                degrees = one.start + share * span
                tip = _polar(centre, radius, degrees)
                ways = [degrees + inward + turn for turn in (0.0, 20.0, -20.0, 40.0, -40.0)]
                for tail, text in _leads(tip, ways, one.words, busy, crossing):
                    return _pointed_at(one, centre, radius, tip, tail, text)
    return None


def _pointed_at(
    one: Round, centre: Point, radius: float, tip: Point, tail: tuple[Point, ...], text: Text
) -> list[Mark]:
    if not one.circle:
        return [Radial(centre, tip, one.radius, (text,), tail)]
    a, b = (centre[0] - radius, centre[1]), (centre[0] + radius, centre[1])
    return [
        Arc(centre, radius, "chain"),
        Dimension(a, b, "x", centre[1], 2 * one.radius, (text,), diameter=True, tail=tail, pointed=True),
    ]


def _pointed(one: Pointed, scale: float, busy: Busy) -> list[Mark] | None:
    tip = (one.spot[0] * scale, -one.spot[1] * scale)
    for crossing in (False, True):
        ways = (45.0, 30.0, 60.0, 135.0, 150.0, -45.0, -30.0)
        for tail, text in _leads(tip, ways, one.words, busy, crossing):
            return [*leader(*tail), text]
    return None
