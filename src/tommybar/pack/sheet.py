"""A sheet of paper as data: what is drawn where, in mm from its top left corner, y down.

Everything printed is first built as a :class:`Sheet`; the writers (SVG, DXF)
only put its marks down. Dimensions stay data until then, so that a drawing
file can carry real ones.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

from tommybar.pack.lettering import CAPITAL, DESCENT, width_of
from tommybar.pack.printed import PrintedDimension

Point = tuple[float, float]
Kind = Literal["thick", "thin", "chain", "dashed", "hatch", "cut", "rule", "heavy"]
Tone = Literal["black", "white", "grey"]
Fill = Literal["none", "hatch", "hatch2", "light", "grey", "dark", "black", "white"]
Anchor = Literal["start", "middle", "end"]

WIDTHS: dict[Kind, float] = {
    "thick": 0.5,
    "thin": 0.18,
    "chain": 0.18,
    "dashed": 0.25,
    "hatch": 0.13,
    "cut": 0.9,
    "rule": 0.25,
    "heavy": 0.8,
}
PATTERNS: dict[Kind, tuple[float, ...]] = {"chain": (6.0, 1.2, 0.8, 1.2), "dashed": (2.4, 1.2)}
LINE_STEP = 1.28  # from one line of words to the next, as part of the type size


@dataclass(frozen=True)
class Line:
    """A line through points; closed when ``closed``."""

    points: tuple[Point, ...]
    kind: Kind = "thin"
    closed: bool = False


@dataclass(frozen=True)
class Arc:
    """Part of a circle, from ``start`` to ``end`` counter-clockwise as seen [deg]; a whole one by default."""

    centre: Point
    radius: float
    kind: Kind = "thick"
    start: float = 0.0
    end: float = 360.0


@dataclass(frozen=True)
class Area:
    """A filled shape: rings by the even-odd rule, with an outline of ``kind`` or none."""

    rings: tuple[tuple[Point, ...], ...]
    fill: Fill = "none"
    kind: Kind | None = "thick"
    spacing: float = 2.0  # of the hatch [mm]


@dataclass(frozen=True)
class Text:
    """One line of words; ``at`` is on the base line; turned ones read from the right."""

    at: Point
    words: str
    size: float = 4.25
    bold: bool = False
    anchor: Anchor = "start"
    turned: bool = False
    tone: Tone = "black"

    @property
    def width(self) -> float:
        """Measured width [mm]."""
        return width_of(self.words, self.size, self.bold)

    @property
    def box(self) -> tuple[float, float, float, float]:
        """Left, top, right, bottom of the room it takes [mm]."""
        back = {"start": 0.0, "middle": self.width / 2, "end": self.width}[self.anchor]
        x, y = self.at
        up, down = CAPITAL * self.size, DESCENT * self.size
        if self.turned:
            return (x - up, y + back - self.width, x + down, y + back)
        return (x - back, y - up, x - back + self.width, y + down)


@dataclass(frozen=True)
class Dimension:
    """A measured distance along x or y between two points of the drawing.

    ``value`` is the true figure of the model [mm], whatever the scale of the
    view; ``at`` is where the dimension line stands (its y for one along x, its
    x for one along y); ``tail`` leads from the line to the words when they
    stand away from it. ``words`` are laid out texts.
    """

    a: Point
    b: Point
    along: Literal["x", "y"]
    at: float
    value: float
    words: tuple[Text, ...]
    outside: bool = False  # arrows stand outside and point inwards
    diameter: bool = False
    tail: tuple[Point, ...] = ()
    pointed: bool = False  # only an arrow at ``a`` and the tail are drawn: a diameter that is pointed at
    view: float = 0.0  # scale of the view in which it stands, 0: that of the sheet


@dataclass(frozen=True)
class Radial:
    """A radius: an arrow at ``point`` on the arc, a leader ``tail`` from there to the words.

    ``value`` is the true radius of the model [mm]; ``view`` the scale of the
    view in which it stands, 0 when that is the sheet's.
    """

    centre: Point
    point: Point
    value: float
    words: tuple[Text, ...]
    tail: tuple[Point, ...]
    view: float = 0.0


@dataclass(frozen=True)
class Angular:
    """An angle at ``vertex`` from the direction of ``a`` counter-clockwise, as seen, to that of ``b``.

    ``radius`` is that of its dimension arc on paper; ``value`` the angle
    [deg]. ``tail`` leads to the words; a ``pointed`` one is only pointed at
    with its tail, without an arc. Arrows that have no room between the legs
    stand ``outside`` and point inwards.
    """

    vertex: Point
    a: Point
    b: Point
    radius: float
    value: float
    words: tuple[Text, ...]
    tail: tuple[Point, ...] = ()
    pointed: bool = False
    outside: bool = False


Mark = Line | Arc | Area | Text | Dimension | Radial | Angular


@dataclass
class Sheet:
    """One page. ``scale`` is paper over part; ``name`` becomes the file's name."""

    name: str
    width: float = 297.0
    height: float = 210.0
    scale: float = 1.0
    pictorial: bool = False  # an isometric picture, of which no scale is said
    marks: list[Mark] = field(default_factory=list)
    printed: list[PrintedDimension] = field(default_factory=list)
    unit: Literal["mm", "in"] = "mm"  # in which the reader measures; a drawing file is written in it

    def dimensions(self) -> tuple[PrintedDimension, ...]:
        """Every figure of the part that the sheet says, exactly as printed, in the order of the features."""
        return tuple(self.printed)

    def add(self, *marks: Mark) -> None:
        """Put marks on the sheet, later ones over earlier ones."""
        self.marks.extend(marks)

    def line(self, *points: Point, kind: Kind = "thin") -> None:
        """Draw a line through the points."""
        self.marks.append(Line(points, kind))

    def box(
        self, x: float, y: float, width: float, height: float, kind: Kind | None = "rule", fill: Fill = "none"
    ) -> None:
        """Draw an upright box."""
        ring = ((x, y), (x + width, y), (x + width, y + height), (x, y + height))
        self.marks.append(Area((ring,), fill, kind))

    def text(
        self,
        x: float,
        y: float,
        words: str,
        size: float = 4.25,
        bold: bool = False,
        anchor: Anchor = "start",
        tone: Tone = "black",
    ) -> Text:
        """Write one line of words."""
        one = Text((x, y), words, size, bold, anchor, False, tone)
        if words:
            self.marks.append(one)
        return one

    def lines(
        self, x: float, y: float, lines: tuple[str, ...], size: float = 4.25, bold: bool = False
    ) -> float:
        """Write lines under one another; gives the base line of the next one [mm]."""
        for words in lines:
            self.text(x, y, words, size, bold)
            y += size * LINE_STEP
        return y
