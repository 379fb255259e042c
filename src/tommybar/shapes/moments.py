"""Moments of a solid: volume, first and second moments about the part's own frame.

Closed forms, so that a mass or an inertia is exact for what is drawn. Moments
add and subtract, so a hole is a solid that is taken away.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache

from tommybar.shapes.curves import ArcPiece, Line, Piece


@dataclass(frozen=True)
class Moments:
    """Volume [mm3], first moments [mm4] and second moments [mm5] of a solid.

    ``xx`` is the integral of x squared over the solid, and so on; the frame is
    the part's (z along a turned part's axis).
    """

    volume: float = 0.0
    x: float = 0.0
    y: float = 0.0
    z: float = 0.0
    xx: float = 0.0
    yy: float = 0.0
    zz: float = 0.0

    def __add__(self, other: Moments) -> Moments:
        return Moments(*(a + b for a, b in zip(self._all, other._all, strict=True)))

    def __sub__(self, other: Moments) -> Moments:
        return Moments(*(a - b for a, b in zip(self._all, other._all, strict=True)))

    @property
    def _all(self) -> tuple[float, ...]:
        return (self.volume, self.x, self.y, self.z, self.xx, self.yy, self.zz)

    def shifted(self, dx: float = 0.0, dy: float = 0.0, dz: float = 0.0) -> Moments:
        """The same solid moved by (dx, dy, dz) [mm]."""
        v = self.volume
        return Moments(
            v,
            self.x + v * dx,
            self.y + v * dy,
            self.z + v * dz,
            self.xx + 2 * dx * self.x + v * dx * dx,
            self.yy + 2 * dy * self.y + v * dy * dy,
            self.zz + 2 * dz * self.z + v * dz * dz,
        )

    def turned(self, angle: float) -> Moments:
        """The same solid turned about z by ``angle`` [deg]; it must be symmetric about its own x axis."""
        c, s = math.cos(math.radians(angle)), math.sin(math.radians(angle))
        return Moments(
            self.volume,
            c * self.x - s * self.y,
            s * self.x + c * self.y,
            self.z,
            c * c * self.xx + s * s * self.yy,
            s * s * self.xx + c * c * self.yy,
            self.zz,
        )


def ring_of_revolution(ring: Sequence[tuple[float, float]]) -> Moments:
    """Moments of the body that a closed ring of (z, r) points sweeps about the axis.

    Exact for straight sides, from Green's theorem on the half-section: with
    a = r_i z_j - r_j z_i the sum of a (r_i + r_j) gives the volume, and so on.
    The ring may run either way round.

    Parameters
    ----------
    ring : sequence of (float, float)
        Corners (z, r), r at or above 0, shape ``(n, 2)``; the first point need
        not be said again at the end [mm]

    Returns
    -------
    Moments
        Volume [mm3], first moments [mm4] and second moments [mm5] about z = 0

    Examples
    --------
    A cylinder 50 in diameter and 10 long: V = pi r^2 h = 19 635 mm3.

    >>> round(ring_of_revolution([(0, 0), (10, 0), (10, 25), (0, 25)]).volume)
    19635

    References
    ----------
    .. [1] First principles (Green's theorem); the cylinder and the cone are
       checked against their closed forms in the tests.
    """
    volume = z_first = polar = z_second = 0.0
    for (z_i, r_i), (z_j, r_j) in zip(ring, [*ring[1:], ring[0]], strict=True):
        a = r_i * z_j - r_j * z_i
        volume += a * (r_i + r_j)
        z_first += a * (2 * r_i * z_i + r_i * z_j + r_j * z_i + 2 * r_j * z_j)
        polar += a * (r_i**3 + r_i**2 * r_j + r_i * r_j**2 + r_j**3)
        z_second += a * (
            r_i * (3 * z_i**2 + 2 * z_i * z_j + z_j**2) + r_j * (z_i**2 + 2 * z_i * z_j + 3 * z_j**2)
        )
    turn = math.copysign(1.0, volume)
    across = turn * math.pi / 20 * polar
    return Moments(
        volume=turn * math.pi / 3 * volume,
        z=turn * math.pi / 12 * z_first,
        xx=across,
        yy=across,
        zz=turn * math.pi / 30 * z_second,
    )


def revolved(ring: Sequence[Piece]) -> Moments:
    """Moments of the body that a closed ring of lines and arcs in (z, r) sweeps about the axis.

    Green's theorem on the half-section turns each integral into one along its
    boundary: V = -pi times the integral of r^2 dz, and so on. Along a straight
    side that has a closed form. Along an arc it is a trigonometric polynomial
    of the fifth degree; twelve points of Gauss-Legendre for every eighth of a
    turn give it to the last digits, and unlike the closed form they lose none
    when the radius is far larger than the part (a crown).

    Parameters
    ----------
    ring : sequence of Line or ArcPiece
        The boundary, counter-clockwise, r at or above 0 [mm]

    Returns
    -------
    Moments
        Volume [mm3], first moments [mm4] and second moments [mm5] about z = 0

    Examples
    --------
    A ball of radius 3 about z = 3 has 4/3 pi r^3 = 113.097 mm3.

    >>> ball = [Line((0.0, 0.0), (6.0, 0.0)), ArcPiece((6.0, 0.0), (0.0, 0.0), (3.0, 0.0), True)]
    >>> round(revolved(ball).volume, 3)
    113.097

    References
    ----------
    .. [1] First principles (Green's theorem); sphere, cap, torus and frustum are
       checked against their closed forms in the tests.
    """
    volume = z_first = polar = z_second = 0.0
    for piece in ring:
        if isinstance(piece, Line):
            (z_i, r_i), (z_j, r_j) = piece.start, piece.end
            run = z_j - z_i
            if run == 0:
                continue
            squares = r_i * r_i + r_i * r_j + r_j * r_j
            volume += run * squares / 3
            first = (3 * r_i * r_i + 2 * r_i * r_j + r_j * r_j) / 12
            last = (r_i * r_i + 2 * r_i * r_j + 3 * r_j * r_j) / 12
            z_first += run * (first * z_i + last * z_j)
            polar += run * (r_i**4 + r_i**3 * r_j + r_i**2 * r_j**2 + r_i * r_j**3 + r_j**4) / 5
            ends = (6 * r_i * r_i + 3 * r_i * r_j + r_j * r_j) / 30
            both = (3 * r_i * r_i + 4 * r_i * r_j + 3 * r_j * r_j) / 30
            others = (r_i * r_i + 3 * r_i * r_j + 6 * r_j * r_j) / 30
            z_second += run * (ends * z_i * z_i + both * z_i * z_j + others * z_j * z_j)
        else:
            for z, r, run, _ in along_arc(piece):
                volume += r * r * run
                z_first += z * r * r * run
                polar += r**4 * run
                z_second += z * z * r * r * run
    across = -math.pi / 4 * polar
    return Moments(
        volume=-math.pi * volume, z=-math.pi * z_first, xx=across, yy=across, zz=-math.pi * z_second
    )


def along_arc(arc: ArcPiece) -> list[tuple[float, float, float, float]]:
    """Points on an arc with the weighted steps in both directions: (x, y, dx, dy), for sums along it."""
    sweep, first, radius = arc.sweep, arc.first, arc.radius
    (a, b) = arc.centre
    count = max(1, math.ceil(abs(sweep) / (math.pi / 4)))
    found = []
    for n in range(count):
        for u, w in gauss(12):
            t = first + sweep * (n + (u + 1) / 2) / count
            weight = w * sweep / 2 / count * radius
            c, s = math.cos(t), math.sin(t)
            found.append((a + radius * c, b + radius * s, -weight * s, weight * c))
    return found


@cache
def gauss(points: int) -> tuple[tuple[float, float], ...]:
    """Places and weights of Gauss-Legendre between -1 and 1."""
    import numpy as np

    places, weights = np.polynomial.legendre.leggauss(points)
    return tuple(zip(places.tolist(), weights.tolist(), strict=True))


@dataclass(frozen=True)
class Plane:
    """Area [mm2], first moments [mm3] and second moments [mm4] of a flat region."""

    area: float = 0.0
    x: float = 0.0
    y: float = 0.0
    xx: float = 0.0
    yy: float = 0.0


def plane_moments(rings: Sequence[Sequence[Piece]]) -> Plane:
    """Moments of the flat region inside rings of lines and arcs, those that run clockwise being holes.

    Parameters
    ----------
    rings : sequence of rings
        Boundaries in (x, y) [mm]

    Returns
    -------
    Plane
        Area [mm2], first [mm3] and second moments [mm4]

    Examples
    --------
    A circle of radius 2: pi r^2 and pi r^4 / 4.

    >>> half = ArcPiece((2.0, 0.0), (-2.0, 0.0), (0.0, 0.0), True)
    >>> found = plane_moments([[half, ArcPiece((-2.0, 0.0), (2.0, 0.0), (0.0, 0.0), True)]])
    >>> round(found.area, 6), round(found.xx, 6)
    (12.566371, 12.566371)

    References
    ----------
    .. [1] First principles (Green's theorem).
    """
    area = x_first = y_first = xx = yy = 0.0
    for piece in (piece for ring in rings for piece in ring):
        if isinstance(piece, Line):
            (a, b), (c, d) = piece.start, piece.end
            u, v = c - a, d - b
            area += (a + c) * v / 2
            x_first += v * (a * a + a * c + c * c) / 6
            y_first -= u * (b * b + b * d + d * d) / 6
            xx += v * (a**3 + a * a * c + a * c * c + c**3) / 12
            yy -= u * (b**3 + b * b * d + b * d * d + d**3) / 12
        else:
            (a, b), r = piece.centre, piece.radius
            cos, sin = _powers(piece)
            area += r * (a * cos[1] + r * cos[2])
            x_first += r / 2 * (a * a * cos[1] + 2 * a * r * cos[2] + r * r * cos[3])
            y_first += r / 2 * (b * b * sin[1] + 2 * b * r * sin[2] + r * r * sin[3])
            xx += r / 3 * (a**3 * cos[1] + 3 * a * a * r * cos[2] + 3 * a * r * r * cos[3] + r**3 * cos[4])
            yy += r / 3 * (b**3 * sin[1] + 3 * b * b * r * sin[2] + 3 * b * r * r * sin[3] + r**3 * sin[4])
    return Plane(area, x_first, y_first, xx, yy)


def _powers(arc: ArcPiece) -> tuple[list[float], list[float]]:
    """Integrals of the powers 0 to 4 of cosine and sine over the angles of an arc."""
    cosines, sines = [0.0] * 5, [0.0] * 5
    for t, sign in ((arc.first + arc.sweep, 1.0), (arc.first, -1.0)):
        c, s = math.cos(t), math.sin(t)
        both, double, quadruple = c * s, math.sin(2 * t), math.sin(4 * t)
        for n, value in enumerate(
            (t, s, (t + both) / 2, s - s**3 / 3, 3 * t / 8 + double / 4 + quadruple / 32)
        ):
            cosines[n] += sign * value
        for n, value in enumerate(
            (t, -c, (t - both) / 2, c**3 / 3 - c, 3 * t / 8 - double / 4 + quadruple / 32)
        ):
            sines[n] += sign * value
    return cosines, sines


def block(length: float, width: float, height: float) -> Moments:
    """Moments of a rectangular block with one corner at the origin [mm].

    Examples
    --------
    >>> block(2.0, 3.0, 4.0).volume
    24.0
    """
    v = length * width * height
    return Moments(
        v,
        v * length / 2,
        v * width / 2,
        v * height / 2,
        v * length**2 / 3,
        v * width**2 / 3,
        v * height**2 / 3,
    )


def rod(dia: float, start: float, end: float) -> Moments:
    """Moments of a cylinder about the z axis from ``start`` to ``end`` [mm].

    Examples
    --------
    >>> round(rod(2.0, 0.0, 1.0).volume, 6)
    3.141593
    """
    r, v = dia / 2, math.pi * dia**2 / 4 * (end - start)
    across = v * r * r / 4
    return Moments(
        volume=v,
        z=v * (start + end) / 2,
        xx=across,
        yy=across,
        zz=v * (start**2 + start * end + end**2) / 3,
    )


def cone_tip(dia: float, base: float, height: float) -> Moments:
    """Moments of a cone on the z axis whose base lies at ``base`` and whose tip is ``height`` beyond [mm].

    Examples
    --------
    >>> round(cone_tip(2.0, 0.0, 3.0).volume, 6)
    3.141593
    """
    r, v = dia / 2, math.pi * dia**2 / 12 * height
    across = v * 3 * r * r / 20
    middle = base + height / 4
    return Moments(volume=v, z=v * middle, xx=across, yy=across, zz=v * (3 * height**2 / 80 + middle**2))
