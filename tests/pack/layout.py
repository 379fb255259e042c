"""What a layout test looks at: words on words, words on lines, words on hatching, words off the sheet."""

from __future__ import annotations

import math
from itertools import pairwise
from typing import Any

from shapely import Polygon
from shapely import box as room

from tommybar.pack.boxes import overlap
from tommybar.pack.marks import plain_marks
from tommybar.pack.sheet import Arc, Area, Line, Point, Sheet, Text

LINES = ("thick", "heavy", "cut", "rule", "thin", "chain", "dashed")
THICK = ("thick", "heavy", "cut", "rule")
SHRUNK = 0.15  # words may come this near to one another before we call it a clash [mm]


def texts(sheet: Sheet) -> list[Text]:
    """All words of the sheet, those of dimensions too."""
    return [one for one in plain_marks(sheet.marks) if isinstance(one, Text)]


def segments(sheet: Sheet, kinds: tuple[str, ...] = LINES) -> list[tuple[Point, Point]]:
    """All stretches of line of these kinds; circles as 72 chords."""
    made: list[tuple[Point, Point]] = []
    for one in plain_marks(sheet.marks):
        if isinstance(one, Line) and one.kind in kinds:
            points = (*one.points, one.points[0]) if one.closed else one.points
            made += list(pairwise(points))
        elif isinstance(one, Area) and one.kind in kinds:
            for ring in one.rings:
                made += list(zip(ring, (*ring[1:], ring[0]), strict=True))
        elif isinstance(one, Arc) and one.kind in kinds:
            at = [math.radians(one.start + (one.end - one.start) * k / 72) for k in range(73)]
            ring = [
                (one.centre[0] + one.radius * math.cos(a), one.centre[1] - one.radius * math.sin(a))
                for a in at
            ]
            made += list(pairwise(ring))
    return made


def crosses(a: Point, b: Point, box: tuple[float, float, float, float]) -> bool:
    """Whether a stretch of line runs through a box (clipped to it, something is left)."""
    low, high = 0.0, 1.0
    for p, q, small, large in ((a[0], b[0], box[0], box[2]), (a[1], b[1], box[1], box[3])):
        if abs(q - p) < 1e-9:
            if not small < p < large:
                return False
            continue
        s, t = sorted(((small - p) / (q - p), (large - p) / (q - p)))
        low, high = max(low, s), min(high, t)
    return low < high


def clashes(sheet: Sheet, kinds: tuple[str, ...] = THICK) -> list[str]:
    """Every clash of the sheet in words; empty when the layout is good.

    With ``LINES`` no word may touch any line at all, nor lie on hatching, as
    on a drawing; tables and cards are held to their thick lines.
    """
    found = []
    words = [one for one in texts(sheet) if one.words.strip()]
    boxes = [(b[0] + SHRUNK, b[1] + SHRUNK, b[2] - SHRUNK, b[3] - SHRUNK) for b in (t.box for t in words)]
    for i, (text, box) in enumerate(zip(words, boxes, strict=True)):
        if box[0] < 0 or box[1] < 0 or box[2] > sheet.width or box[3] > sheet.height:
            found.append(f"{sheet.name}: '{text.words}' runs off the sheet")
        for other, there in zip(words[i + 1 :], boxes[i + 1 :], strict=True):
            if overlap(box, there):
                found.append(f"{sheet.name}: '{text.words}' lies on '{other.words}'")
    for a, b in segments(sheet, kinds):
        for text, box in zip(words, boxes, strict=True):
            if crosses(a, b, box):
                found.append(f"{sheet.name}: a line runs through '{text.words}'")
    for area in sheet.marks if kinds is LINES else ():
        if isinstance(area, Area) and area.fill.startswith("hatch"):
            metal = Polygon(area.rings[0]).buffer(0)
            for text, at in zip(words, boxes, strict=True):
                if metal.intersects(room(*at)):
                    found.append(f"{sheet.name}: '{text.words}' lies on hatching")
    return found


def scaled(entity: Any) -> float:
    """What a drawing program multiplies the length of a dimension with: that of a detail is drawn enlarged."""
    return float(entity.override().get("dimlfac", 1.0)) if entity.dimtype in (0, 1, 4) else 1.0
