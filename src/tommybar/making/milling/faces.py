"""Which face of a turned part is up at the mill, and what the operator then sees."""

from __future__ import annotations

from tommybar.making.jobs import largest
from tommybar.shapes.features import Cylinder, Face, TurnedShape


def other(face: Face) -> Face:
    """The face at the other end."""
    return "B" if face == "A" else "A"


def seat_of(shape: TurnedShape, face: Face) -> float:
    """Diameter of the ring on which the part stands with that face down [mm]."""
    land = shape.outside[0] if face == "A" else shape.outside[-1]
    seat = largest(land)
    if isinstance(land, Cylinder):
        seat -= 2 * (land.edge_start if face == "A" else land.edge_end)
    for recess in shape.recesses:
        if recess.face == face and recess.outside >= seat - 1e-6:
            seat = min(seat, recess.inside)
    return seat


def hollow_under(shape: TurnedShape, face: Face, circle: float) -> float:
    """How deep a recess in that face is at a diameter [mm]; 0 where the face itself carries."""
    return max(
        (r.depth for r in shape.recesses if r.face == face and r.inside <= circle <= r.outside),
        default=0.0,
    )


def face_up(shape: TurnedShape, circle: float) -> Face:
    """The face that is up: the part stands on the wider end, then on the one that is not hollow below the holes.

    Face A is up when both ends are alike, since holes are drawn as seen from it.
    """

    def stands(down: Face) -> tuple[float, float, bool]:
        return (round(seat_of(shape, down), 3), -hollow_under(shape, down, circle), down == "B")

    return other(max(("A", "B"), key=stands))


def depth_from(shape: TurnedShape, up: Face, z: float) -> float:
    """How far below the face that is up a place lies, given its distance from face A [mm]."""
    return z if up == "A" else shape.length.value - z


def seen(up: Face, x: float, y: float) -> tuple[float, float]:
    """A place drawn as seen from face A, as the operator sees it: X is mirrored when face B is up [mm]."""
    return (x, y) if up == "A" else (-x, y)


def angle_seen(up: Face, angle: float) -> float:
    """An angle drawn from face A, counter-clockwise, as the operator reads it on the face that is up [deg]."""
    return angle % 360.0 if up == "A" else (180.0 - angle) % 360.0
