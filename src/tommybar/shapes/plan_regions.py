"""Regions in plan put together from lines and arcs: what cuts take away at one depth, exactly.

Every piece of every boundary is split where it meets another; a stretch with
the region on one side only is boundary of the whole.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Sequence
from itertools import pairwise

from tommybar.refusals import Refusal
from tommybar.shapes.outlines import Arc, Line, Loop, Piece, Point

SIDE = 2e-9  # how far beside a piece its two sides are asked for [mm]
SAME = 1e-9  # pieces that lie nearer than this to each other are one [mm]
SHORT = 4e-9  # stretches shorter than this are left out [mm]


def encloses(loop: Iterable[Piece], x: float, y: float) -> bool:
    """Whether a loop goes round a point: the angle it sweeps as seen from there is not nought."""
    swept = 0.0
    for one in loop:
        if isinstance(one, Line):
            swept += _seen(one.x1 - x, one.y1 - y, one.x2 - x, one.y2 - y)
        elif abs(one.turn) > 2 * math.pi - 1e-12:
            if math.hypot(x - one.x, y - one.y) < one.radius:
                swept += math.copysign(2 * math.pi, one.turn)
        else:
            swept += _swept_by_arc(one, x, y)
    return abs(swept) > math.pi


def _seen(ax: float, ay: float, bx: float, by: float) -> float:
    return math.atan2(ax * by - ay * bx, ax * bx + ay * by)


def _swept_by_arc(arc: Arc, x: float, y: float) -> float:
    steps = max(1, math.ceil(abs(arc.turn) / 2.0))
    within = math.hypot(x - arc.x, y - arc.y) < arc.radius
    side = 1.0 if arc.turn > 0 else -1.0
    total, (ax, ay) = 0.0, arc.at(0.0)
    for step in range(1, steps + 1):
        bx, by = arc.at(step / steps)
        angle = _seen(ax - x, ay - y, bx - x, by - y)
        if within and angle * side < 0:  # between the chord and the arc
            angle += 2 * math.pi * side
        total += angle
        ax, ay = bx, by
    return total


def boundary(pieces: Sequence[Piece], inside: Callable[[float, float], bool]) -> list[Piece]:
    """The boundary of a region whose edges all lie on ``pieces``, with the region on its left."""
    kept: list[Piece] = []
    middles: list[Point] = []
    for one, shares in zip(pieces, _splits(pieces), strict=True):
        for low, high in pairwise(shares):
            if (high - low) * one.length < SHORT:
                continue
            middle = (low + high) / 2
            (x, y), (nx, ny) = one.at(middle), one.normal(middle)
            left, right = inside(x + SIDE * nx, y + SIDE * ny), inside(x - SIDE * nx, y - SIDE * ny)
            if left == right or any(abs(x - a) < 2 * SAME and abs(y - b) < 2 * SAME for a, b in middles):
                continue
            part = one.part(low, high)
            kept.append(part if left else part.reversed())
            middles.append((x, y))
    _refuse_open(kept)
    return kept


def _refuse_open(pieces: list[Piece]) -> None:
    """A boundary that does not close would give a false area: its moments are not worked out."""
    dx = sum(one.at(1.0)[0] - one.at(0.0)[0] for one in pieces)
    dy = sum(one.at(1.0)[1] - one.at(0.0)[1] for one in pieces)
    if math.hypot(dx, dy) > 1e-4:
        at = pieces[0].at(0.0)
        raise Refusal(
            f"Edges of cuts near {at[0]:.4g}, {at[1]:.4g} mm lie so nearly on one another (under "
            f"{1e6 * SAME:g} nm) that what is left between them cannot be worked out.",
            "Make them the same, or move one by 0.001 mm.",
        )


def _splits(pieces: Sequence[Piece]) -> list[list[float]]:
    shares: list[list[float]] = [[0.0, 1.0] for _ in pieces]
    boxes = [_box(one) for one in pieces]
    for i, one in enumerate(pieces):
        for j in range(i):
            if (
                boxes[i][0] > boxes[j][2]
                or boxes[j][0] > boxes[i][2]
                or boxes[i][1] > boxes[j][3]
                or boxes[j][1] > boxes[i][3]
            ):
                continue
            other = pieces[j]
            for spot in meetings(one, other):
                a, b = share_of(one, spot), share_of(other, spot)
                if a is not None and b is not None:
                    shares[i].append(a)
                    shares[j].append(b)
            shares[i] += _ends_on(one, other)
            shares[j] += _ends_on(other, one)
    return [sorted(found) for found in shares]


def _ends_on(one: Piece, other: Piece) -> list[float]:
    """Shares of ``one`` at which an end of ``other`` lies on it."""
    found = []
    for x, y in (other.at(0.0), other.at(1.0)):
        if isinstance(one, Line):
            nx, ny = one.normal(0.0)
            off = abs((x - one.x1) * nx + (y - one.y1) * ny)
        else:
            off = abs(math.hypot(x - one.x, y - one.y) - one.radius)
        share = share_of(one, (x, y)) if off < 2 * SAME else None
        if share is not None:
            found.append(share)
    return found


def _box(one: Piece) -> tuple[float, float, float, float]:
    if isinstance(one, Line):
        return (
            min(one.x1, one.x2) - SAME,
            min(one.y1, one.y2) - SAME,
            max(one.x1, one.x2) + SAME,
            max(one.y1, one.y2) + SAME,
        )
    r = one.radius + SAME
    return one.x - r, one.y - r, one.x + r, one.y + r


def share_of(one: Piece, spot: Point) -> float | None:
    """How far along a piece a point of it lies, 0 to 1; None when it lies beyond the ends."""
    slack = SAME / max(one.length, SAME)
    if isinstance(one, Line):
        dx, dy = one.x2 - one.x1, one.y2 - one.y1
        share = ((spot[0] - one.x1) * dx + (spot[1] - one.y1) * dy) / (dx * dx + dy * dy)
    else:
        angle = math.atan2(spot[1] - one.y, spot[0] - one.x)
        back = ((angle - one.start) * math.copysign(1.0, one.turn)) % (2 * math.pi)
        share = back / abs(one.turn)
        if share > 1 + slack and back > 2 * math.pi - slack * abs(one.turn):
            share = 0.0
    if not -slack <= share <= 1 + slack:
        return None
    return min(max(share, 0.0), 1.0)


def meetings(one: Piece, other: Piece) -> list[Point]:
    """Points where two pieces, thought on beyond their ends, meet; of coincident ones their ends."""
    if isinstance(one, Line) and isinstance(other, Line):
        return _lines(one, other)
    if isinstance(one, Line) and isinstance(other, Arc):
        return line_and_circle(one, other)
    if isinstance(one, Arc) and isinstance(other, Line):
        return line_and_circle(other, one)
    assert isinstance(one, Arc) and isinstance(other, Arc)
    return _circles(one, other)


def _lines(one: Line, other: Line) -> list[Point]:
    ax, ay, bx, by = one.x2 - one.x1, one.y2 - one.y1, other.x2 - other.x1, other.y2 - other.y1
    cross = ax * by - ay * bx
    if abs(cross) < 1e-9 * one.length * other.length:
        apart = abs((other.x1 - one.x1) * ay - (other.y1 - one.y1) * ax) / one.length
        return [one.at(0.0), one.at(1.0), other.at(0.0), other.at(1.0)] if apart < SAME else []
    share = ((other.x1 - one.x1) * by - (other.y1 - one.y1) * bx) / cross
    return [one.at(share)]


def line_and_circle(line: Line, arc: Arc) -> list[Point]:
    """Where a line, thought on, meets the circle of an arc: two points, one where it touches, or none."""
    long = line.length
    ux, uy = (line.x2 - line.x1) / long, (line.y2 - line.y1) / long
    along = (arc.x - line.x1) * ux + (arc.y - line.y1) * uy
    off = (arc.x - line.x1) * uy - (arc.y - line.y1) * ux
    rest = arc.radius**2 - off * off
    if rest < -2 * SAME * arc.radius:
        return []
    half = math.sqrt(max(rest, 0.0))
    spots = [along - half, along + half] if half > 0 else [along]
    return [(line.x1 + s * ux, line.y1 + s * uy) for s in spots]


def _circles(one: Arc, other: Arc) -> list[Point]:
    dx, dy = other.x - one.x, other.y - one.y
    apart = math.hypot(dx, dy)
    if apart < SAME:
        if abs(one.radius - other.radius) < SAME:
            return [one.at(0.0), one.at(1.0), other.at(0.0), other.at(1.0)]
        return []
    along = (apart * apart + one.radius**2 - other.radius**2) / (2 * apart)
    rest = one.radius**2 - along * along
    if rest < -2 * SAME * one.radius:
        return []
    half = math.sqrt(max(rest, 0.0))
    x, y = one.x + along * dx / apart, one.y + along * dy / apart
    return [(x - half * dy / apart, y + half * dx / apart), (x + half * dy / apart, y - half * dx / apart)]


def chords(loop: Loop, height: float) -> list[tuple[float, float]]:
    """Where the level line y = ``height`` runs inside a loop; never asked at a height where pieces join."""
    spots: list[float] = []
    for one in loop:
        if isinstance(one, Line):
            if (one.y1 - height) * (one.y2 - height) < 0:
                spots.append(one.x1 + (height - one.y1) / (one.y2 - one.y1) * (one.x2 - one.x1))
        elif abs(height - one.y) < one.radius:
            first = math.asin((height - one.y) / one.radius)
            for angle in (first, math.pi - first):
                back = ((angle - one.start) * math.copysign(1.0, one.turn)) % (2 * math.pi)
                if back < abs(one.turn):
                    spots.append(one.x + one.radius * math.cos(angle))
    spots.sort()
    return list(zip(spots[::2], spots[1::2], strict=False))
