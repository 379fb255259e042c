"""Outlines in plan as exact pieces: straight lines and arcs of circles.

A loop runs counter-clockwise about metal. Areas and their moments come from
Green's theorem on the pieces, so they are exact for what is drawn.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from tommybar.refusals import Refusal
from tommybar.shapes.features import Boss, Corner, Outline, PlateShape

TOUCH = 1e-9  # figures nearer than this are one [mm]
Point = tuple[float, float]


@dataclass(frozen=True)
class Line:
    """A straight piece from (x1, y1) to (x2, y2) [mm]."""

    x1: float
    y1: float
    x2: float
    y2: float

    @property
    def length(self) -> float:
        """How long it is [mm]."""
        return math.hypot(self.x2 - self.x1, self.y2 - self.y1)

    def at(self, share: float) -> Point:
        """The point that far along, 0 to 1 [mm]."""
        return self.x1 + share * (self.x2 - self.x1), self.y1 + share * (self.y2 - self.y1)

    def normal(self, share: float) -> Point:
        """Unit vector to the left of its run."""
        long = self.length
        return -(self.y2 - self.y1) / long, (self.x2 - self.x1) / long

    def part(self, start: float, end: float) -> Line:
        """The piece between two shares of it."""
        return Line(*self.at(start), *self.at(end))

    def reversed(self) -> Line:
        """The same piece run the other way."""
        return Line(self.x2, self.y2, self.x1, self.y1)


@dataclass(frozen=True)
class Arc:
    """An arc about (x, y): from ``start`` by ``turn`` [rad], counter-clockwise when above 0 [mm]."""

    x: float
    y: float
    radius: float
    start: float
    turn: float

    @property
    def length(self) -> float:
        """How long it is [mm]."""
        return abs(self.turn) * self.radius

    def at(self, share: float) -> Point:
        """The point that far along, 0 to 1 [mm]."""
        angle = self.start + share * self.turn
        return self.x + self.radius * math.cos(angle), self.y + self.radius * math.sin(angle)

    def normal(self, share: float) -> Point:
        """Unit vector to the left of its run."""
        angle = self.start + share * self.turn
        inward = -1.0 if self.turn > 0 else 1.0
        return inward * math.cos(angle), inward * math.sin(angle)

    def part(self, start: float, end: float) -> Arc:
        """The piece between two shares of it."""
        return Arc(self.x, self.y, self.radius, self.start + start * self.turn, (end - start) * self.turn)

    def reversed(self) -> Arc:
        """The same piece run the other way."""
        return Arc(self.x, self.y, self.radius, self.start + self.turn, -self.turn)


Piece = Line | Arc
Loop = tuple[Piece, ...]


@dataclass(frozen=True)
class AreaMoments:
    """Area [mm2], first moments [mm3] and second moments [mm4] about the origin of the plan."""

    area: float = 0.0
    x: float = 0.0
    y: float = 0.0
    xx: float = 0.0
    yy: float = 0.0


def area_moments(pieces: Iterable[Piece]) -> AreaMoments:
    """Area and moments of what closed loops of pieces enclose, metal on their left.

    Green's theorem: A is the integral of x dy, and so on, in closed form on
    each piece.

    Parameters
    ----------
    pieces : iterable of Line or Arc
        Pieces of closed loops in any order; holes run clockwise [mm]

    Returns
    -------
    AreaMoments
        Area [mm2], first moments [mm3], second moments [mm4]

    Examples
    --------
    A disc of 20 mm: A = pi r^2, the second moment about its middle pi r^4 / 4.

    >>> found = area_moments(circle(0.0, 0.0, 10.0))
    >>> round(found.area, 6), round(found.xx, 6)
    (314.159265, 7853.981634)

    References
    ----------
    .. [1] First principles; the disc, the half-disc and the rounded rectangle
       are checked against their closed forms in the tests.
    """
    area = sx = sy = xx = yy = 0.0
    for one in pieces:
        if isinstance(one, Line):
            x1, y1, x2, y2 = one.x1, one.y1, one.x2, one.y2
            dx, dy = x2 - x1, y2 - y1
            area += (x1 + x2) / 2 * dy
            sx += (x1 * x1 + x1 * x2 + x2 * x2) / 6 * dy
            sy -= (y1 * y1 + y1 * y2 + y2 * y2) / 6 * dx
            xx += (x1 + x2) * (x1 * x1 + x2 * x2) / 12 * dy
            yy -= (y1 + y2) * (y1 * y1 + y2 * y2) / 12 * dx
            continue
        c, s, r = _powers(one)
        a, b = one.x, one.y
        area += r * (a * c[1] + r * c[2])
        sx += r / 2 * (a * a * c[1] + 2 * a * r * c[2] + r * r * c[3])
        xx += r / 3 * (a**3 * c[1] + 3 * a * a * r * c[2] + 3 * a * r * r * c[3] + r**3 * c[4])
        sy += r / 2 * (b * b * s[1] + 2 * b * r * s[2] + r * r * s[3])
        yy += r / 3 * (b**3 * s[1] + 3 * b * b * r * s[2] + 3 * b * r * r * s[3] + r**3 * s[4])
    return AreaMoments(area, sx, sy, xx, yy)


def _powers(arc: Arc) -> tuple[tuple[float, ...], tuple[float, ...], float]:
    """Integrals of cos^n and sin^n over an arc, n = 0 to 4, and its radius."""

    def cosines(t: float) -> tuple[float, ...]:
        s, c = math.sin(t), math.cos(t)
        fourth = 3 * t / 8 + math.sin(2 * t) / 4 + math.sin(4 * t) / 32
        return t, s, (t + s * c) / 2, s - s**3 / 3, fourth

    def span(shift: float) -> tuple[float, ...]:
        high, low = cosines(arc.start + arc.turn - shift), cosines(arc.start - shift)
        return tuple(a - b for a, b in zip(high, low, strict=True))

    return span(0.0), span(math.pi / 2), arc.radius


def circle(x: float, y: float, radius: float) -> Loop:
    """A whole circle as one piece."""
    return (Arc(x, y, radius, 0.0, 2 * math.pi),)


def rectangle(x1: float, y1: float, x2: float, y2: float, corner: float = 0.0) -> Loop:
    """A rectangle between two corners, its corners rounded [mm]."""
    return rounded_polygon(
        [Corner(x1, y1, corner), Corner(x2, y1, corner), Corner(x2, y2, corner), Corner(x1, y2, corner)]
    )


def placed(loop: Loop, x: float, y: float, angle: float = 0.0) -> Loop:
    """A loop turned about the origin by ``angle`` [deg], then moved [mm]."""
    turn = math.radians(angle)
    c, s = (math.cos(turn), math.sin(turn)) if angle else (1.0, 0.0)

    def spot(px: float, py: float) -> Point:
        return x + c * px - s * py, y + s * px + c * py

    return tuple(
        Line(*spot(one.x1, one.y1), *spot(one.x2, one.y2))
        if isinstance(one, Line)
        else Arc(*spot(one.x, one.y), one.radius, one.start + turn, one.turn)
        for one in loop
    )


def stadium(long: float, width: float, start_open: bool = False, end_open: bool = False) -> Loop:
    """A slot about the origin along x, ``long`` overall, with half-round ends unless they are open [mm]."""
    half, out = width / 2, long / 2
    low, high = -out + (0.0 if start_open else half), out - (0.0 if end_open else half)
    pieces: list[Piece] = []
    if high - low > TOUCH:
        pieces.append(Line(low, -half, high, -half))
    pieces.append(Line(high, -half, high, half) if end_open else Arc(high, 0.0, half, -math.pi / 2, math.pi))
    if high - low > TOUCH:
        pieces.append(Line(high, half, low, half))
    pieces.append(Line(low, half, low, -half) if start_open else Arc(low, 0.0, half, math.pi / 2, math.pi))
    return tuple(pieces)


def rounded_polygon(corners: Sequence[Corner]) -> Loop:
    """Corners joined in order, counter-clockwise, each rounded by its own radius, tangent to both sides."""
    count = len(corners)
    if count < 3:
        raise Refusal(f"The outline has {count} corners; it must have at least 3.", "Add corners.")
    ends: list[tuple[Point, Point, Arc | None]] = []
    cuts: list[float] = []
    for index, one in enumerate(corners):
        before, after = corners[index - 1], corners[(index + 1) % count]
        cut, arc = _corner_arc(before, one, after)
        cuts.append(cut)
        ends.append((arc.at(0.0), arc.at(1.0), arc) if arc else ((one.x, one.y), (one.x, one.y), None))
    pieces: list[Piece] = []
    for index, one in enumerate(corners):
        following = (index + 1) % count
        side = math.hypot(corners[following].x - one.x, corners[following].y - one.y)
        if cuts[index] + cuts[following] > side + 1e-7:
            raise Refusal(
                f"The corners {index + 1} and {following + 1} take {cuts[index] + cuts[following]:.4g} mm of the side "
                f"between them; it is {side:.4g} mm long.",
                "Give smaller corner radii.",
            )
        if (arc := ends[index][2]) is not None:
            pieces.append(arc)
        line = Line(*ends[index][1], *ends[following][0])
        if line.length > TOUCH:
            pieces.append(line)
    return tuple(pieces)


def _corner_arc(before: Corner, one: Corner, after: Corner) -> tuple[float, Arc | None]:
    """How much of each side the rounding of a corner takes, and its arc."""
    into = math.atan2(one.y - before.y, one.x - before.x)
    out = math.atan2(after.y - one.y, after.x - one.x)
    turn = (out - into + math.pi) % (2 * math.pi) - math.pi
    if one.radius <= 0 or abs(turn) < TOUCH:
        return 0.0, None
    if abs(abs(turn) - math.pi) < 1e-9:
        raise Refusal(
            f"The outline turns back on itself at {one.x:g}, {one.y:g} mm.", "Leave that corner out."
        )
    cut = one.radius * math.tan(abs(turn) / 2)
    side = math.copysign(1.0, turn)
    x = one.x - cut * math.cos(into) - side * one.radius * math.sin(into)
    y = one.y - cut * math.sin(into) + side * one.radius * math.cos(into)
    return cut, Arc(x, y, one.radius, into - side * math.pi / 2, turn)


def band(bosses: Sequence[Boss]) -> Loop:
    """The band that is drawn tight round some bosses: arcs about them, flanks tangent from arc to arc."""
    breaks = {0.0}
    for index, one in enumerate(bosses):
        for other in bosses[:index]:
            apart = math.hypot(one.x - other.x, one.y - other.y)
            if apart < TOUCH or abs(other.radius - one.radius) > apart:
                continue
            toward = math.atan2(one.y - other.y, one.x - other.x)
            lean = math.acos((other.radius - one.radius) / apart)
            breaks.update(((toward + lean) % (2 * math.pi), (toward - lean) % (2 * math.pi)))
    angles = sorted(breaks)
    runs: list[tuple[Boss, float, float]] = []
    for low, high in zip(angles, [*angles[1:], angles[0] + 2 * math.pi], strict=True):
        if high - low < 1e-12:
            continue
        nx, ny = math.cos((low + high) / 2), math.sin((low + high) / 2)
        most = max(bosses, key=lambda one: one.x * nx + one.y * ny + one.radius)
        if runs and runs[-1][0] is most:
            runs[-1] = (most, runs[-1][1], high)
        else:
            runs.append((most, low, high))
    if len(runs) > 1 and runs[0][0] is runs[-1][0]:
        first = runs.pop(0)
        runs[-1] = (first[0], runs[-1][1], first[2] + 2 * math.pi)
    for number, one in enumerate(bosses, start=1):
        if not any(one is run[0] for run in runs):
            raise Refusal(
                f"Boss {number} at {one.x:g}, {one.y:g} mm with {one.radius:g} mm radius lies wholly inside "
                "the band round the others.",
                "Leave it out, or give it a larger radius.",
            )
    arcs = [Arc(one.x, one.y, one.radius, low, high - low) for one, low, high in runs]
    pieces: list[Piece] = []
    for arc, following in zip(arcs, [*arcs[1:], arcs[0]], strict=True):
        pieces.append(arc)
        flank = Line(*arc.at(1.0), *following.at(0.0))
        if flank.length > TOUCH:
            pieces.append(flank)
    return tuple(pieces)


def outline_loop(outline: Outline) -> Loop:
    """The loop of an outline; refuses what closes no area."""
    if outline.form == "polygon":
        return rounded_polygon(outline.corners)
    if not outline.bosses:
        raise Refusal("The outline has no bosses; it must have at least 1.", "Add them.")
    if outline.form == "disc":
        one = outline.bosses[0]
        return circle(one.x, one.y, one.radius)
    return band(outline.bosses)


def plate_loop(shape: PlateShape) -> Loop:
    """The outline of a plate in plan, whatever its form [mm]."""
    if shape.outline is not None:
        return outline_loop(shape.outline)
    return rectangle(0.0, 0.0, shape.length.value, shape.width.value, shape.corner)


def extent(loop: Iterable[Piece]) -> tuple[float, float, float, float]:
    """Least x, least y, greatest x, greatest y of some pieces [mm]."""
    xs: list[float] = []
    ys: list[float] = []
    for one in loop:
        spots = [one.at(0.0), one.at(1.0)]
        if isinstance(one, Arc):
            for quarter in range(-8, 9):
                angle = quarter * math.pi / 2
                share = (angle - one.start) / one.turn if one.turn else -1.0
                if 0 < share < 1:
                    spots.append(one.at(share))
        xs += [x for x, _ in spots]
        ys += [y for _, y in spots]
    return min(xs), min(ys), max(xs), max(ys)
