"""Where a body stands: three rows of a rotation and a shift, twelve figures [mm]."""

from __future__ import annotations

import math

Vector = tuple[float, float, float]
Frame = tuple[float, ...]  # r11 r12 r13 x, r21 r22 r23 y, r31 r32 r33 z
HERE: Frame = (1.0, 0.0, 0.0, 0.0, 0.0, 1.0, 0.0, 0.0, 0.0, 0.0, 1.0, 0.0)


def frame(x: Vector, y: Vector, z: Vector, at: Vector = (0.0, 0.0, 0.0)) -> Frame:
    """The frame whose own axes are ``x``, ``y``, ``z`` and whose origin lies ``at`` [mm].

    Examples
    --------
    >>> frame((1, 0, 0), (0, 1, 0), (0, 0, 1), (5, 0, 0))[3]
    5.0
    """
    rows = [(x[n], y[n], z[n], at[n]) for n in range(3)]
    return tuple(float(one) for row in rows for one in row)


def shifted(x: float = 0.0, y: float = 0.0, z: float = 0.0) -> Frame:
    """A frame that is only moved [mm]."""
    return frame((1, 0, 0), (0, 1, 0), (0, 0, 1), (x, y, z))


def turned(angle: float) -> Frame:
    """A frame turned about z by ``angle`` [deg], counter-clockwise."""
    c, s = cosine(angle), sine(angle)
    return frame((c, s, 0), (-s, c, 0), (0, 0, 1))


def within(outer: Frame, inner: Frame) -> Frame:
    """The frame ``inner`` as it stands when it is told inside ``outer``.

    Examples
    --------
    >>> within(turned(90), shifted(x=1.0))[3::4]
    (0.0, 1.0, 0.0)
    """
    found: list[float] = []
    for row in range(3):
        a = outer[4 * row : 4 * row + 4]
        for column in range(4):
            value = sum(a[k] * inner[4 * k + column] for k in range(3))
            found.append(value + (a[3] if column == 3 else 0.0))
    return tuple(found)


def back(one: Frame) -> Frame:
    """The frame that undoes ``one``."""
    rows = [(one[n], one[4 + n], one[8 + n]) for n in range(3)]
    shift = [-sum(row[k] * one[4 * k + 3] for k in range(3)) for row in rows]
    return tuple(v for row, s in zip(rows, shift, strict=True) for v in (*row, s))


def point(one: Frame, p: Vector) -> Vector:
    """A point of the frame's own figures, as it lies outside it [mm]."""
    x, y, z = (sum(one[4 * n + k] * p[k] for k in range(3)) + one[4 * n + 3] for n in range(3))
    return x, y, z


def direction(one: Frame, d: Vector) -> Vector:
    """A direction of the frame's own figures, as it points outside it."""
    x, y, z = (sum(one[4 * n + k] * d[k] for k in range(3)) for n in range(3))
    return x, y, z


def cosine(angle: float) -> float:
    """Cosine of an angle in degrees, exact at the quarter turns."""
    quarter = angle / 90 % 4
    if quarter in (0.0, 1.0, 2.0, 3.0):
        return (1.0, 0.0, -1.0, 0.0)[int(quarter)]
    return math.cos(math.radians(angle))


def sine(angle: float) -> float:
    """Sine of an angle in degrees, exact at the quarter turns."""
    return cosine(angle - 90)
