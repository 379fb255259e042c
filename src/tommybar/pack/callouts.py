"""Diameters and notes above a turned part: one place each over its feature, none crossing another."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from tommybar.pack.boxes import spread
from tommybar.pack.marks import leader
from tommybar.pack.profile import Profile, outline_radius
from tommybar.pack.sheet import LINE_STEP, Dimension, Mark, Text
from tommybar.pack.units import Reader
from tommybar.pack.words import cross_words, knurl_words, size_words
from tommybar.shapes.features import Cylinder, TurnedShape

BIG = 4.25  # the figure [mm]
SMALL = 3.5  # the limits below it [mm]
KNEE = 7.0  # from the highest outline to where leaders bend [mm]
SLOPE = 7.0  # height of the slanting stretch [mm]
SHELF = 1.0  # between the shelf line and the words above it [mm]


@dataclass(frozen=True)
class Callout:
    """Something to be written above the part, pointing at (z, r) [part mm]."""

    z: float
    r: float
    words: tuple[str, ...]
    dia: float = 0.0  # a diameter is dimensioned; 0: only pointed at


def callouts_of(shape: TurnedShape, profile: Profile, reader: Reader) -> list[Callout]:
    """Outside diameters, threads, knurls, grooves and cross holes, from face A on."""
    made: list[Callout] = []
    for one in shape.outside:
        if isinstance(one, Cylinder):
            z = free_place(shape, one)
            if one.knurl is not None:
                made.append(Callout(z, one.dia.value / 2, knurl_words(one, reader)))
            else:
                words = size_words(one.dia, reader, "Ø", one.thread)
                made.append(Callout(z, one.dia.value / 2, words, one.dia.value))
        else:
            along = (0.25, 0.75)
            for share, dia in zip(along, (one.start_dia, one.end_dia), strict=True):
                z = one.start + share * (one.end - one.start)
                r = (one.start_dia + share * (one.end_dia - one.start_dia)) / 2
                side = "A" if share < 0.5 else "B"
                made.append(Callout(z, r, (f"cone Ø{reader.length(dia, 3)}", f"towards {side}")))
    for groove in shape.grooves:
        z = (groove.start + groove.end) / 2
        made.append(
            Callout(
                z,
                groove.floor / 2,
                (
                    f"groove {reader.length(groove.end - groove.start)} wide",
                    f"Ø{reader.length(groove.floor, 3)}",
                ),
            )
        )
    for hole in shape.cross_holes:
        made.append(Callout(hole.z, outline_radius(profile, hole.z), cross_words(hole, reader)))
    return sorted(made, key=lambda one: one.z)


def free_place(shape: TurnedShape, one: Cylinder) -> float:
    """Where on a cylinder an arrow can stand: the middle of its longest stretch without groove or hole."""
    taken = [(g.start, g.end) for g in shape.grooves]
    taken += [(h.z - h.dia.value / 2, h.z + h.dia.value / 2) for h in shape.cross_holes]
    start, end = one.start + one.edge_start, one.end - one.edge_end
    cuts = sorted({start, end, *(min(max(t, start), end) for pair in taken for t in pair)})
    free = [
        (b - a, (a + b) / 2)
        for a, b in pairwise(cuts)
        if not any(low < (a + b) / 2 < high for low, high in taken)
    ]
    return max(free)[1] if free else (start + end) / 2


def callout_width(one: Callout) -> float:
    """Width of its words [mm]."""
    first = Text((0, 0), one.words[0], BIG).width
    return max([first, *(Text((0, 0), words, SMALL).width for words in one.words[1:])])


def callout_marks(
    callouts: list[Callout], scale: float, top: float, low: float, high: float
) -> tuple[list[Mark], float]:
    """Marks of all callouts in one or two rows between ``low`` and ``high``; and the highest line used.

    The view has its axis at y = 0 and face A at x = 0; ``top`` is the
    highest outline (negative) [mm on paper].
    """
    widths = [callout_width(one) for one in callouts]
    two_rows = sum(width + 4 for width in widths) > high - low
    wanted = [one.z * scale for one in callouts]
    rooms = [width + 4 for width in widths]
    if two_rows:
        rooms = [3.0 + (width if i % 2 == 0 else 0.0) for i, width in enumerate(widths)]
        for i in range(1, len(callouts) - 2, 2):  # the next words of the upper row keep clear
            rooms[i] = max(rooms[i], widths[i] + 4 - rooms[i + 1])
        rooms[-1] = widths[-1] + 4
        if len(rooms) > 1:
            rooms[-2] = max(rooms[-2], widths[-2] + 4 - rooms[-1])
    places = spread(wanted, rooms, low, high)
    marks: list[Mark] = []
    knee, shelf = top - KNEE, top - KNEE - SLOPE
    height = BIG + SMALL * LINE_STEP + 2.5
    highest = shelf
    for i, (one, place) in enumerate(zip(callouts, places, strict=True)):
        level = shelf - (height if two_rows and i % 2 else 0.0)
        x = one.z * scale
        way = [(x, -one.r * scale), (x, knee), (place, shelf), (place, level), (place + widths[i], level)]
        words: list[Text] = []
        y = level - SHELF
        for n, line in reversed(list(enumerate(one.words))):
            size = BIG if n == 0 else SMALL
            words.insert(0, Text((place, y), line, size))
            y -= size * LINE_STEP
        highest = min(highest, y)
        if one.dia:
            marks.append(
                Dimension(
                    (x, -one.dia / 2 * scale),
                    (x, one.dia / 2 * scale),
                    "y",
                    x,
                    one.dia,
                    tuple(words),
                    outside=True,
                    diameter=not one.words[0].startswith(("M", "1", "2")),
                    tail=tuple(way),
                )
            )
        else:
            marks += [*leader(way[0], *way[1:]), *words]
    return marks, highest
