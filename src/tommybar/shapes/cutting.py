"""Cutting one outline of lines and arcs out of another, exactly: no arc becomes chords.

Both are split where they meet. What remains is the first one's boundary
outside the second, and the second one's boundary inside the first, run the
other way; a stretch that both share stays when metal lies on one side of it.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence

from tommybar.shapes.curves import ON, ArcPiece, Box, Line, Piece, Point, Ring, meetings

JOIN = 1e-5  # ends nearer to each other than this are one corner [mm]


def difference(rings: Sequence[Ring], cut: Ring) -> tuple[Ring, ...]:
    """The region inside ``rings`` (holes run clockwise) less the one inside ``cut``, both counter-clockwise.

    Examples
    --------
    >>> from tommybar.shapes.curves import closed
    >>> square = closed([(0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (0.0, 4.0)])
    >>> notch = closed([(1.0, 3.0), (2.0, 3.0), (2.0, 5.0), (1.0, 5.0)])
    >>> (left,) = difference([square], notch)
    >>> area([left])
    15.0
    """
    whole = [piece for ring in rings for piece in ring]
    room = _box(cut)
    if not whole or not _meet(_box(whole), room):
        return tuple(rings)
    kept: list[Piece] = [piece for piece in whole if not _meet(piece.box, room)]
    for piece, others in _candidates([piece for piece in whole if _meet(piece.box, room)], cut):
        for part in _split(piece, others):
            middle = part.at(0.5)
            shared = _shared(part, middle, cut)
            if shared is None:
                if not inside([cut], middle):
                    kept.append(part)
            elif not shared:
                kept.append(part)
    for piece, others in _candidates(cut, whole):
        for part in _split(piece, others):
            middle = part.at(0.5)
            if _shared(part, middle, whole) is None and inside(rings, middle):
                kept.append(part.reversed())
    return joined(kept)


def area(rings: Sequence[Ring]) -> float:
    """Area inside rings, those that run clockwise counting against it [mm2]."""
    total = 0.0
    for piece in (piece for ring in rings for piece in ring):
        (a, b), (c, d) = piece.start, piece.end
        total += (a * d - c * b) / 2
        if isinstance(piece, ArcPiece):
            sweep = piece.sweep
            total += piece.radius**2 * (sweep - math.sin(sweep)) / 2
    return total


def inside(rings: Sequence[Ring], point: Point) -> bool:
    """Whether a point that lies on no boundary is inside: the winding of chords, and segments over them."""
    winding = 0
    x, y = point
    for piece in (piece for ring in rings for piece in ring):
        for (a, b), (c, d), over in _turns(piece):
            cross = (c - a) * (y - b) - (d - b) * (x - a)
            if b <= y < d:
                winding += cross > 0
                right = cross <= 0
            elif d <= y < b:
                winding -= cross < 0
                right = cross < 0
            else:
                right = cross < 0 if cross != 0 else c < a
            if over is not None and math.dist(point, over.centre) < over.radius and right == over.ccw:
                winding += 1 if over.ccw else -1
    return winding != 0


def _turns(piece: Piece) -> list[tuple[Point, Point, ArcPiece | None]]:
    """A piece as chords, an arc of half a turn or more as several so that each has its segment on one side."""
    if isinstance(piece, Line):
        return [(piece.start, piece.end, None)]
    count = math.ceil(abs(piece.sweep) / 2)
    places = [piece.start, *(piece.at(n / count) for n in range(1, count)), piece.end]
    return [(a, b, piece) for a, b in itertools.pairwise(places)]


def _box(pieces: Sequence[Piece]) -> Box:
    boxes = [piece.box for piece in pieces]
    return (
        min(box[0] for box in boxes),
        min(box[1] for box in boxes),
        max(box[2] for box in boxes),
        max(box[3] for box in boxes),
    )


def _meet(one: Box, other: Box) -> bool:
    return (
        one[0] <= other[2] + ON
        and other[0] <= one[2] + ON
        and one[1] <= other[3] + ON
        and other[1] <= one[3] + ON
    )


def _candidates(pieces: Sequence[Piece], others: Sequence[Piece]) -> list[tuple[Piece, list[Piece]]]:
    return [(piece, [other for other in others if _meet(piece.box, other.box)]) for piece in pieces]


def _split(piece: Piece, others: Sequence[Piece]) -> list[Piece]:
    places = [(0.0, piece.start), (1.0, piece.end)]
    for other in others:
        for point in meetings(piece, other):
            if all(math.dist(point, known) > ON for _, known in places):
                places.append((piece.share_of(point), point))
    places.sort()
    return [piece.between(a, b) for (_, a), (_, b) in itertools.pairwise(places)]


def _shared(part: Piece, middle: Point, others: Sequence[Piece]) -> bool | None:
    """Whether a boundary that runs along ``part`` runs the same way; None when none does."""
    for other in others:
        if other.away(middle) < ON:
            u, v = part.towards(0.5)
            w, x = other.towards(min(1.0, max(0.0, other.share_of(middle))))
            if abs(u * x - v * w) < 1e-3:
                return u * w + v * x > 0
    return None


def joined(pieces: list[Piece]) -> tuple[Ring, ...]:
    """Pieces end to start as closed rings; at a corner that several share, the sharpest turn to the left."""
    left = [piece for piece in pieces if piece.long > ON]
    rings: list[Ring] = []
    while left:
        ring = [left.pop(0)]
        while math.dist(ring[-1].end, ring[0].start) > ON or len(ring) < 2:
            at = ring[-1].end
            near = min((math.dist(piece.start, at) for piece in left), default=math.inf)
            if near > JOIN or math.dist(at, ring[0].start) < min(near, JOIN):
                break
            nexts = [piece for piece in left if math.dist(piece.start, at) <= near + ON]
            chosen = max(nexts, key=lambda piece: _turn(ring[-1], piece)) if len(nexts) > 1 else nexts[0]
            left.remove(chosen)
            ring.append(chosen)
        rings.append(_merged(_sewn(ring)))
    return tuple(rings)


def _sewn(ring: list[Piece]) -> list[Piece]:
    """Each piece begun exactly where the one before it ends."""
    ends = [piece.end for piece in ring]
    if math.dist(ends[-1], ring[0].start) < JOIN:
        ends[-1] = ring[0].start
    starts = [ring[0].start, *ends[:-1]]
    found = [piece.between(a, b) for piece, a, b in zip(ring, starts, ends, strict=True)]
    return [piece for piece in found if piece.long > 0]


def _turn(before: Piece, after: Piece) -> float:
    (u, v), (w, x) = before.towards(1.0), after.towards(0.0)
    return math.atan2(u * x - v * w, u * w + v * x)


def _merged(ring: list[Piece]) -> Ring:
    """The ring with stretches of one line or one circle put together again."""
    found: list[Piece] = []
    for piece in ring:
        one = _together(found[-1], piece) if found else None
        if one is not None:
            found[-1] = one
        else:
            found.append(piece)
    if len(found) > 2 and (one := _together(found[-1], found[0])) is not None:
        found = [one, *found[1:-1]]
    return tuple(found)


def _together(one: Piece, other: Piece) -> Piece | None:
    if isinstance(one, Line) and isinstance(other, Line):
        (u, v), (w, x) = one.towards(1.0), other.towards(0.0)
        straight = abs(u * x - v * w) * min(one.long, other.long) < 1e-10 and u * w + v * x > 0
        return Line(one.start, other.end) if straight else None
    if isinstance(one, ArcPiece) and isinstance(other, ArcPiece):
        alike = math.dist(one.centre, other.centre) < ON and abs(one.radius - other.radius) < ON
        if alike and one.ccw == other.ccw and abs(one.sweep) + abs(other.sweep) < 2 * math.pi - 1e-6:
            return ArcPiece(one.start, other.end, one.centre, one.ccw)
    return None
