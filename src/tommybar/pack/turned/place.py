"""Room for callouts: rows above a view, columns beside it; none crosses another or a line of the view."""

from __future__ import annotations

from collections.abc import Sequence

from tommybar.pack.boxes import spread
from tommybar.pack.marks import leader
from tommybar.pack.sheet import (
    LINE_STEP,
    Dimension,
    Mark,
    Point,
    Radial,
    Text,
)
from tommybar.pack.turned.angles import angle_marks
from tommybar.pack.turned.frames import FRAME, TAPER, cells_marks, cells_width, datum_marks, taper_mark
from tommybar.pack.turned.saying import Callout, Row

BIG = 4.25  # the figure [mm]
SMALL = 3.5  # the limits below it [mm]
KNEE = 6.0  # from the highest outline to where leaders bend [mm]
SLOPE = 7.0  # height of the slanting stretch [mm]
SHELF = 1.2  # between the shelf line and the words above it [mm]
BESIDE = 4.0  # between the words of neighbours [mm]
OUT = 6.0  # how far a leader runs level out of a face [mm]
UNDER = 6.0  # how far below the outline a leader from the lower half passes the face [mm]
BEND = 8.0  # width of the slanting stretch beside a face [mm]


def row_size(row: Row) -> float:
    """Height that a row takes [mm]."""
    if row.cells:
        return FRAME + 1.4
    if row.datum:
        return FRAME + 1.0
    return (SMALL if row.small else BIG) * LINE_STEP


def row_width(row: Row) -> float:
    """Width of a row [mm]."""
    if row.cells:
        return cells_width(row.cells)
    if row.datum:
        return FRAME + 3.2
    wide = Text((0, 0), row.words, SMALL if row.small else BIG, row.bold).width
    return wide + (TAPER if row.taper else 0.0)


def block_size(one: Callout) -> tuple[float, float]:
    """Width and height of a callout's rows [mm]."""
    return max(map(row_width, one.rows)), SHELF + sum(map(row_size, one.rows))


def block_marks(one: Callout, x: float, shelf: float) -> tuple[tuple[Text, ...], list[Mark]]:
    """Texts and other marks of the rows, the last one just above the shelf line."""
    texts: list[Text] = []
    marks: list[Mark] = []
    y = shelf - SHELF
    for row in reversed(one.rows):
        if row.cells:
            marks += cells_marks(row.cells, x, y - FRAME)
        elif row.datum:
            marks += datum_marks(row.datum, x, y - FRAME)
        else:
            left = x
            if row.taper:
                marks.append(taper_mark(x, y, row.taper))
                left += TAPER
            texts.insert(0, Text((left, y), row.words, SMALL if row.small else BIG, row.bold))
        y -= row_size(row)
    return tuple(texts), marks


def callout_marks(
    one: Callout, way: Sequence[Point], x: float, shelf: float, scale: float, view: float = 0.0
) -> list[Mark]:
    """A callout with its leader, as a true dimension where it measures something; ``view`` is a detail's scale."""
    texts, others = block_marks(one, x, shelf)
    tail = tuple(way)
    measured = one.measured
    mark: list[Mark]
    if measured is None or not texts:
        mark = [*leader(tail[0], *tail[1:]), *texts]
    elif measured.kind == "radius":
        centre = (measured.centre[0] * scale, -measured.centre[1] * scale)
        point = tail[0]
        mark = [Radial(centre, point, measured.value, texts, tail, view)]
    elif measured.kind == "angle":
        mark = angle_marks(measured, texts, tail, scale)
    else:
        half, middle = measured.value / 2 * scale, -measured.centre[1] * scale
        x = tail[0][0]
        ends = ((x, middle - half), (x, middle + half))
        mark = [
            Dimension(*ends, "y", x, measured.value, texts, diameter=True, tail=tail, pointed=True, view=view)
        ]
    return [*mark, *others]


def above_marks(
    callouts: Sequence[Callout], scale: float, top: float, low: float, high: float, view: float = 0.0
) -> tuple[list[Mark], float] | None:
    """Callouts in as few rows as have room between ``low`` and ``high``, from ``top`` up; None without room."""
    ordered = merged(sorted(callouts, key=lambda one: (one.z, -one.r)))
    if not ordered:
        return [], top
    sizes = [block_size(one) for one in ordered]
    wanted = [one.z * scale for one in ordered]
    for levels in range(1, 6):
        rooms = _rooms([width for width, _ in sizes], levels)
        if sum(rooms) > high - low and levels < 5:
            continue
        places = spread(wanted, rooms, low, high)
        if places[-1] + rooms[-1] > high + 0.5:
            return None
        break
    heights = [
        max((sizes[i][1] for i in range(len(ordered)) if i % levels == level), default=0.0)
        for level in range(levels)
    ]
    marks: list[Mark] = []
    knee, shelf = top - KNEE, top - KNEE - SLOPE
    highest = shelf
    for i, (one, place) in enumerate(zip(ordered, places, strict=True)):
        level = levels - 1 - i % levels  # each group steps down to the right
        y = shelf - sum(heights[levels - 1 - lower] + 2.5 for lower in range(level))
        x, tip = one.z * scale, -one.r * scale
        way = [(x, tip), (x, knee), (place, shelf), (place, y), (place + sizes[i][0], y)]
        if level == 0:
            way = [(x, tip), (x, knee), (place, shelf), (place + sizes[i][0], shelf)]
        marks += callout_marks(one, way, place, y, scale, view)
        highest = min(highest, y - sizes[i][1])
    return marks, highest


def _rooms(widths: list[float], levels: int) -> list[float]:
    """Room each callout needs before the next one's leader, in groups that step down to the right."""
    rooms = []
    lead = 3.0
    for i, width in enumerate(widths):
        if (
            i % levels == levels - 1 or i == len(widths) - 1
        ):  # the lowest of its group: the next one passes all
            first = i - i % levels
            behind = [widths[k] - lead * (i - k) for k in range(first, i + 1)]
            rooms.append(max(lead, *behind) + BESIDE if behind else width + BESIDE)
        else:
            rooms.append(lead)
    return rooms


def merged(callouts: Sequence[Callout]) -> list[Callout]:
    """Callouts that would point at the same place joined into one."""
    made: list[Callout] = []
    for one in callouts:
        last = made[-1] if made else None
        if last and abs(last.z - one.z) < 1e-3 and last.side == one.side and _one_spot(last, one):
            made[-1] = Callout(
                last.z, max(last.r, one.r), (*last.rows, *one.rows), (*last.printed, *one.printed),
                last.measured or one.measured, last.side, last.feature, last.wide, last.detailed, last.below,
            )  # fmt: skip
        else:
            made.append(one)
    return made


def _one_spot(one: Callout, other: Callout) -> bool:
    """Whether callouts at one place along the axis may share a leader: the tip at a radius stays on its arc."""
    curved = [c for c in (one, other) if c.measured is not None and c.measured.kind in ("radius", "angle")]
    return not curved or abs(one.r - other.r) < 1e-3


def column_marks(
    callouts: Sequence[Callout], scale: float, edge: float, side: str, under: float = 0.0
) -> tuple[list[Mark], float, float]:
    """Callouts in a column beside a face at x = ``edge``; with the top and bottom that it takes.

    Leaders from the lower half run out below ``under``, the lowest of the outline [mm on paper].
    """
    ordered = sorted(callouts, key=lambda one: (one.below, -one.r, one.feature))
    if not ordered:
        return [], 0.0, 0.0
    away = -1.0 if side == "A" else 1.0
    sizes = [block_size(one) for one in ordered]
    gap = 2.5
    tips = _apart([under + UNDER if one.below else -one.r * scale for one in ordered])
    wanted = [tip - height for tip, (_, height) in zip(tips, sizes, strict=True)]
    rooms = [height + gap for _, height in sizes]
    total = sum(rooms)
    middle = sum(wanted) / len(wanted)
    low = min(wanted[0], middle - total / 2)
    places = spread(wanted, rooms, low, low + max(total, wanted[-1] + rooms[-1] - low))
    marks: list[Mark] = []
    for one, tip, place, (width, height) in zip(ordered, tips, places, sizes, strict=True):
        shelf = place + height
        start = edge + away * (OUT + BEND)
        x = start if away > 0 else start - width
        end = start + away * width
        way = [(one.z * scale, tip), (edge + away * OUT, tip), (start, shelf), (end, shelf)]
        if one.below:
            way[:1] = [(one.z * scale, -one.r * scale), (one.z * scale, under + 2.0)]
        marks += callout_marks(one, way, x, shelf, scale)
    return marks, places[0], places[-1] + sizes[-1][1]


def _apart(tips: list[float]) -> list[float]:
    """Leaders that would run on one line set 0.8 mm apart."""
    made: list[float] = []
    for tip in tips:
        made.append(max(tip, made[-1] + 0.8) if made else tip)
    return made
