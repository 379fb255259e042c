"""Where things of a grip lie on the sketch: the card frame in mm turned into the picture's units."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from tommybar.dryrun.runs import CardRun, Ring

WIDE = 560.0  # of the picture, in its own units
TALL = 400.0  # of the section at most
FOOT = 64.0  # below the section, for the dimension
ARROW = 90.0  # room for an arrow beside the work, in the picture's units
ROOM = 26.0  # round the work [mm], so that the tool has a place to stand


@dataclass(frozen=True)
class Frame:
    """The window on the card frame: z grows to the right, r up and down from the axis."""

    left: float  # z at the left edge [mm]
    right: float
    tall: float  # r at the upper edge [mm]
    scale: float

    @property
    def axis(self) -> float:
        """The axis on the picture."""
        return self.tall * self.scale

    @property
    def height(self) -> float:
        """Height of the picture with the dimension below the section."""
        return 2 * self.axis + FOOT

    @property
    def width(self) -> float:
        """Width of the picture."""
        return (self.right - self.left) * self.scale

    def x(self, z: float) -> float:
        """Across."""
        return (z - self.left) * self.scale

    def y(self, r: float) -> float:
        """Down; the upper half has positive r."""
        return self.axis - r * self.scale

    def path(self, rings: Iterable[Ring], mirror: bool = False) -> str:
        """Rings as one SVG path, above the axis or mirrored below it."""
        sign = -1.0 if mirror else 1.0
        return "".join(
            "M" + "L".join(f"{self.x(z):.1f} {self.y(sign * r):.1f}" for z, r in ring) + "Z"
            for ring in rings
            if len(ring) > 2
        )

    def inside(self, ring: Ring) -> Ring:
        """A ring of what holds, broken off at the left and upper edge so that the foot stays free."""
        return tuple((max(z, self.left - 1.0), min(r, self.tall)) for z, r in ring)

    def edge(self, rings: Iterable[Ring], mirror: bool = False) -> str:
        """The outline of rings as an SVG path, without what lies on the axis."""
        sign = -1.0 if mirror else 1.0
        return "".join(
            f"M{self.x(a[0]):.1f} {self.y(sign * a[1]):.1f}L{self.x(b[0]):.1f} {self.y(sign * b[1]):.1f}"
            for ring in rings
            for a, b in zip(ring, (*ring[1:], ring[0]), strict=True)
            if a != b and max(abs(a[1]), abs(b[1])) > 1e-6
        )


FRONTS = ("jaw", "collet", "shoulder", "driving")  # what holds the work at its driven end


def jaw_front(run: CardRun) -> float:
    """The jaws' fronts, or the largest z of whatever keeps out [mm, card frame]."""
    jaws = [ring for name, ring in run.keep_out if any(word in name for word in FRONTS)]
    rings = jaws or [ring for _, ring in run.keep_out]
    return max((z for ring in rings for z, _ in ring), default=min(z for ring in run.before for z, _ in ring))


def frame_of(run: CardRun) -> Frame:
    """A window that shows the work that stands out, the fronts of the jaws and room for a tool."""
    points = [point for ring in run.before for point in ring]
    top, low = max(z for z, _ in points), min(z for z, _ in points)
    radius = max(r for _, r in points)
    front = jaw_front(run)
    out = max(top - front, 4.0)
    left = max(front - max(10.0, 0.45 * out), min(low, front) - 2.0)
    right = top + min(ROOM, max(9.0, 0.35 * out))
    tall = radius + min(ROOM, max(8.0, 0.4 * radius))
    scale = min(WIDE / (right - left), TALL / (2 * tall))
    right = max(right, min(top + ARROW / scale, left + WIDE / scale))  # a disc leaves room beside it
    return Frame(left, right, tall, scale)
