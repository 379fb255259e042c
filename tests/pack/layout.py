"""What a layout test looks at: words on words, words on lines, words on hatching, words off the sheet."""

from __future__ import annotations

import math
from itertools import pairwise
from typing import Any

import numpy as np
from numpy.typing import NDArray
from shapely import Polygon
from shapely import box as room

from tommybar.pack.marks import plain_marks
from tommybar.pack.sheet import Arc, Area, Line, Point, Sheet, Text

Array = NDArray[np.float64]
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
    return bool(crossings(np.array([[*a, *b]]), np.array([box]))[0, 0])


def crossings(ends: Array, boxes: Array) -> NDArray[np.bool_]:
    """Of each stretch (x1, y1, x2, y2), whether it runs through each box: clipped to it, something is left."""
    low, high = np.zeros((len(ends), len(boxes))), np.ones((len(ends), len(boxes)))
    out = np.zeros_like(low, dtype=bool)
    for axis in (0, 1):
        p, q = ends[:, axis, None], ends[:, 2 + axis, None]
        small, large = boxes[None, :, axis], boxes[None, :, 2 + axis]
        still = np.abs(q - p) < 1e-9
        out |= still & ~((small < p) & (p < large))
        run = np.where(still, 1.0, q - p)
        s, t = (small - p) / run, (large - p) / run
        low = np.where(still, low, np.maximum(low, np.minimum(s, t)))
        high = np.where(still, high, np.minimum(high, np.maximum(s, t)))
    crossed: NDArray[np.bool_] = ~out & (low < high)
    return crossed


def clashes(sheet: Sheet, kinds: tuple[str, ...] = THICK) -> list[str]:
    """Every clash of the sheet in words; empty when the layout is good.

    With ``LINES`` no word may touch any line at all, nor lie on hatching, as
    on a drawing; tables and cards are held to their thick lines.
    """
    found = []
    words = [one for one in texts(sheet) if one.words.strip()]
    if not words:
        return []
    boxes = np.array(
        [(b[0] + SHRUNK, b[1] + SHRUNK, b[2] - SHRUNK, b[3] - SHRUNK) for b in (t.box for t in words)]
    )
    off = (boxes[:, :2].min(axis=1) < 0) | (boxes[:, 2] > sheet.width) | (boxes[:, 3] > sheet.height)
    found += [f"{sheet.name}: '{words[n].words}' runs off the sheet" for n in np.flatnonzero(off)]
    left, top, right, bottom = boxes.T
    meet = (
        (left[:, None] < right) & (left < right[:, None]) & (top[:, None] < bottom) & (top < bottom[:, None])
    )
    for i, j in np.argwhere(np.triu(meet, 1)):
        found.append(f"{sheet.name}: '{words[i].words}' lies on '{words[j].words}'")
    ends = np.array([(*a, *b) for a, b in segments(sheet, kinds)]).reshape(-1, 4)
    for _, n in np.argwhere(crossings(ends, boxes)):
        found.append(f"{sheet.name}: a line runs through '{words[n].words}'")
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
