"""How far each piece moves when an assembly is pulled apart for a picture."""

from __future__ import annotations

from tommybar.assembly.links import Link, Piece
from tommybar.design.model import Part, SizedDesign
from tommybar.shapes.features import PlateShape, SheetShape, TurnedShape
from tommybar.shapes.solids.frames import Frame, Vector, direction, point, within

CLEAR = 8.0  # between pieces that are pulled apart [mm]
NONE: Vector = (0.0, 0.0, 0.0)


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
    moved: dict[Piece, tuple[Vector, Vector]] = {order[0]: (NONE, (0.0, 0.0, 1.0))}
    for along, pieces in groups.items():
        reach = {one: _stretch(design.part(one[0]), frames[one], along) for one in pieces}  # type: ignore[arg-type]
        ranked = sorted(pieces, key=lambda one: (sum(reach[one]), order.index(one)))
        still = max(pieces, key=lambda one: (reach[one][1] - reach[one][0], -order.index(one)))
        if any(order[0] in (by[one].first, by[one].second) for one in pieces):
            still = still if by[still].kind != "screw" else ranked[len(ranked) // 2]
        at = ranked.index(still)
        moved[still] = (_base(still, by, moved, pieces), _signed(along, 1.0))
        for sign, side in ((1.0, ranked[at + 1 :]), (-1.0, list(reversed(ranked[:at])))):
            edge = reach[still][1] if sign > 0 else -reach[still][0]
            for piece in side:
                near, far = reach[piece] if sign > 0 else (-reach[piece][1], -reach[piece][0])
                step = max(0.0, edge + CLEAR - near)
                edge = far + step
                base = _base(piece, by, moved, pieces)
                shift = tuple(base[n] + sign * step * along[n] + 0.0 for n in range(3))
                moved[piece] = (shift, _signed(along, sign))  # type: ignore[assignment]
    for piece in order[1:]:
        if by[piece].kind == "screw head":
            hole = by[piece].pairs[0].hole
            way = direction(within(frames[by[piece].first], hole.at), (0.0, 0.0, 1.0))
            base = moved[by[piece].first][0]
            low, high = _stretch(design.part(piece[0]), frames[piece], way)
            far = high - low + CLEAR
            moved[piece] = ((base[0] + far * way[0], base[1] + far * way[1], base[2] + far * way[2]), way)
    return moved


def _base(
    piece: Piece, by: dict[Piece, Link], moved: dict[Piece, tuple[Vector, Vector]], group: list[Piece]
) -> Vector:
    """What a piece is carried by the neighbour, near or far, that leaves in another direction."""
    while piece in by:
        piece = by[piece].first if by[piece].second == piece else by[piece].second
        if piece not in group:
            return moved[piece][0] if piece in moved else NONE
    return NONE


def _direction(link: Link, frames: dict[Piece, Frame]) -> tuple[float, ...]:
    """The direction of a link's axis, one of the two ways along it."""
    along = direction(within(frames[link.first], link.pairs[0].hole.at), (0.0, 0.0, 1.0))
    rounded = tuple(round(one, 6) + 0.0 for one in along)
    return rounded if rounded > (0.0, 0.0, 0.0) else tuple(-one + 0.0 for one in rounded)


def _signed(along: tuple[float, ...], sign: float) -> Vector:
    return sign * along[0] + 0.0, sign * along[1] + 0.0, sign * along[2] + 0.0
