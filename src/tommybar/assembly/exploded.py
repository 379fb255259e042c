"""How far each piece moves when an assembly is pulled apart for a picture."""

from __future__ import annotations

from collections.abc import Sequence

from tommybar.assembly.links import Link, Piece
from tommybar.design.model import Part, SizedDesign
from tommybar.shapes.features import PlateShape, SheetShape, TurnedShape
from tommybar.shapes.solids.frames import Frame, Vector, direction, point, within

CLEAR = 8.0  # between pieces that are pulled apart [mm]
NONE: Vector = (0.0, 0.0, 0.0)
TOUCH = 0.5  # of two boxes side by side [mm]


def middle_of(part: Part) -> Vector:
    """About the middle of a part, in its own frame [mm]."""
    low, high = _box(part)
    return (low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2


def _box(part: Part) -> tuple[Vector, Vector]:
    """About the corners of the box round a part, in its own frame [mm]."""
    shape = part.shape
    if isinstance(shape, TurnedShape):
        r = max(max(land.start_dia, land.end_dia) for land in shape.outside) / 2
        return (-r, -r, 0.0), (r, r, shape.length.value)
    if isinstance(shape, PlateShape | SheetShape):
        return NONE, (shape.length.value, shape.width.value, shape.thickness.value)
    long = dict(part.envelope.sizes).get("length", 5.0) if part.envelope else 5.0
    return (-3.0, -3.0, 0.0), (3.0, 3.0, long)


def _stretch(part: Part, at: Frame, along: Vector) -> tuple[float, float]:
    """From where to where a piece reaches along a direction [mm]."""
    low, high = _box(part)
    corners = [
        point(at, (x, y, z)) for x in (low[0], high[0]) for y in (low[1], high[1]) for z in (low[2], high[2])
    ]
    places = [sum(corner[n] * along[n] for n in range(3)) for corner in corners]
    return min(places), max(places)


def pulled_apart(
    order: list[Piece], by: dict[Piece, Link], frames: dict[Piece, Frame], design: SizedDesign
) -> dict[Piece, tuple[Vector, Vector]]:
    """How far each piece moves and the direction it leaves in.

    Pieces that leave along one direction are drawn out along it in the order
    in which they stand, from the longest of them to both sides; a bought screw
    goes with its hole and then out of it.
    """
    groups: dict[tuple[float, ...], list[Piece]] = {}
    for piece in order[1:]:
        if by[piece].kind != "screw head":
            groups.setdefault(_direction(by[piece], frames), []).append(piece)
    own: dict[Piece, tuple[Vector, Vector]] = {order[0]: (NONE, (0.0, 0.0, 1.0))}
    together: dict[Piece, list[Piece]] = {}
    for along, leaving in groups.items():
        touched = any(order[0] in (by[one].first, by[one].second) for one in leaving)
        # what the whole stands on stays where it is, and a piece alone leaves what carries it
        held = order[0] if touched else _carrier(leaving[0], by)
        grounded = bool(design.foot) and (touched or len(leaving) == 1)
        pieces = [held, *leaving] if grounded else leaving
        boxes = {one: _reaches(design.part(one[0]), frames[one], along) for one in pieces}
        reach = {one: boxes[one][0] for one in pieces}
        ranked = sorted(
            pieces, key=lambda one: (_leaves(one, by.get(one), frames, along, reach[one]), order.index(one))
        )
        still = max(pieces, key=lambda one: (reach[one][1] - reach[one][0], -order.index(one)))
        if grounded:
            still = held
        elif touched:
            still = still if by[still].kind != "screw" else ranked[len(ranked) // 2]
        at = ranked.index(still)
        if still in leaving:
            own[still] = (NONE, _signed(along, 1.0))
        for sign, side in ((1.0, ranked[at + 1 :]), (-1.0, list(reversed(ranked[:at])))):
            edges = {still: reach[still][1] if sign > 0 else -reach[still][0]}
            for piece in side:
                near, far = reach[piece] if sign > 0 else (-reach[piece][1], -reach[piece][0])
                before = [edge for other, edge in edges.items() if _meet(boxes[piece], boxes[other])]
                step = max(0.0, max(before, default=near - CLEAR) + CLEAR - near)
                edges[piece] = far + step
                own[piece] = (_scaled(along, sign * step), _signed(along, sign))
        together |= dict.fromkeys(leaving, leaving)
    moved: dict[Piece, tuple[Vector, Vector]] = {}
    for piece in order:
        if piece in own:
            carried = _carried(piece, by, moved, own, together)
            moved[piece] = (_sum(own[piece][0], carried), own[piece][1])
    for piece in order[1:]:
        if by[piece].kind == "screw head":
            hole = by[piece].pairs[0].hole
            way = direction(within(frames[by[piece].first], hole.at), (0.0, 0.0, 1.0))
            base = moved[by[piece].first][0]
            low, high = _stretch(design.part(piece[0]), frames[piece], way)
            moved[piece] = (_sum(base, _scaled(way, high - low + CLEAR)), way)
    return moved


def _carrier(piece: Piece, by: dict[Piece, Link]) -> Piece:
    """The piece that another is joined to."""
    return by[piece].first if by[piece].second == piece else by[piece].second


def _carried(
    piece: Piece,
    by: dict[Piece, Link],
    moved: dict[Piece, tuple[Vector, Vector]],
    own: dict[Piece, tuple[Vector, Vector]],
    together: dict[Piece, list[Piece]],
) -> Vector:
    """What a piece is moved by what it is joined to; of one that leaves along the same line, what that is moved by."""
    if piece not in by:
        return NONE
    other = _carrier(piece, by)
    if other not in moved:
        return NONE
    if other in together.get(piece, []) and by[piece].kind != "belt":
        return _sum(moved[other][0], _scaled(own[other][0], -1.0))
    return moved[other][0]


Reaches = tuple[tuple[float, float], tuple[float, float], tuple[float, float]]


def _reaches(part: Part, at: Frame, along: tuple[float, ...]) -> Reaches:
    """From where to where a piece reaches along a direction and along two square to it [mm]."""
    d: Vector = (along[0], along[1], along[2])
    x: Vector = (1.0, 0.0, 0.0) if abs(d[0]) < 0.7 else (0.0, 1.0, 0.0)
    u = _cross(d, x)
    return _stretch(part, at, d), _stretch(part, at, u), _stretch(part, at, _cross(d, u))


def _meet(one: Reaches, other: Reaches) -> bool:
    """Whether two pieces lie over one another along their direction."""
    return all(one[n][0] < other[n][1] - TOUCH and other[n][0] < one[n][1] - TOUCH for n in (1, 2))


def _cross(a: Vector, b: Vector) -> Vector:
    return a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]


def _scaled(along: Sequence[float], size: float) -> Vector:
    return size * along[0] + 0.0, size * along[1] + 0.0, size * along[2] + 0.0


def _sum(one: Vector, other: Vector) -> Vector:
    return one[0] + other[0], one[1] + other[1], one[2] + other[2]


def _leaves(
    piece: Piece,
    link: Link | None,
    frames: dict[Piece, Frame],
    along: tuple[float, ...],
    reach: tuple[float, float],
) -> float:
    """Twice where a piece ranks along a direction [mm]: its middle, or that of the head of what is screwed in."""
    if link is None:
        return sum(reach)
    land = link.pairs[0].shaft
    one_sided = land.low_stop != land.high_stop
    if link.second != piece or not one_sided or not link.through:
        return sum(reach)
    axis = within(frames[piece], land.at)
    shoulder = point(axis, (0.0, 0.0, land.low if land.low_stop else land.high))
    up = sum(a * b for a, b in zip(direction(axis, (0.0, 0.0, 1.0)), along, strict=True))
    beyond = reach[0] if (up > 0) == land.low_stop else reach[1]
    return sum(a * b for a, b in zip(shoulder, along, strict=True)) + beyond


def _direction(link: Link, frames: dict[Piece, Frame]) -> tuple[float, ...]:
    """The direction of a link's axis, one of the two ways along it."""
    along = direction(within(frames[link.first], link.pairs[0].hole.at), (0.0, 0.0, 1.0))
    rounded = tuple(round(one, 6) + 0.0 for one in along)
    return rounded if rounded > (0.0, 0.0, 0.0) else tuple(-one + 0.0 for one in rounded)


def _signed(along: tuple[float, ...], sign: float) -> Vector:
    return sign * along[0] + 0.0, sign * along[1] + 0.0, sign * along[2] + 0.0
