"""What a drawing says of one feature: rows of words, and each figure in them kept as data."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from tommybar.pack.printed import PrintedDimension, PrintedKind
from tommybar.pack.units import Reader
from tommybar.shapes.features import Dim

DIA = "Ø"
HELD = ("circle",)  # sizes that a tolerance of position holds finer than the general one


@dataclass(frozen=True)
class Row:
    """One row of a callout: words, or the cells of a feature control frame, or a datum letter."""

    words: str
    small: bool = False
    bold: bool = False
    cells: tuple[str, ...] = ()  # the name of the symbol, then what stands in the cells
    datum: str = ""
    taper: int = 0  # 1 or -1: the symbol of a taper before the words, its point towards face B or A


@dataclass(frozen=True)
class Measured:
    """What a callout measures, so that a drawing file can carry a real dimension of it [part mm, deg]."""

    kind: str  # "diameter", "radius", "angle"
    value: float
    centre: tuple[float, float] = (0.0, 0.0)  # of a radius or a hole; vertex of an angle (z, r)
    first: tuple[float, float] = (0.0, 0.0)  # the first leg of an angle runs through this point (z, r)
    second: tuple[float, float] = (0.0, 0.0)  # the second, counter-clockwise from it as drawn
    radius: float = 0.0  # of the arc of an angle, 0: it is only pointed at [part mm]
    past: float = 0.0  # how far outside of that radius the arc stands, its legs drawn on to it [mm on paper]


@dataclass(frozen=True)
class Detailed:
    """What is said of a small feature in a detail: rows at its leader, and its width as a dimension of its own."""

    rows: tuple[Row, ...]
    printed: tuple[PrintedDimension, ...]
    width: str
    start: tuple[float, float]  # between these the width is measured, (z, r) [part mm]
    end: tuple[float, float]


@dataclass(frozen=True)
class Callout:
    """Rows that stand beside the view and point at (z, r), r on the upper half unless below 0."""

    z: float
    r: float
    rows: tuple[Row, ...]
    printed: tuple[PrintedDimension, ...] = ()
    measured: Measured | None = None
    side: str = "above"  # or "A", "B": in the column beside that face
    feature: str = ""
    wide: float = 0.0  # how much of the axis the small feature takes, 0: it is never crowded [part mm]
    detailed: Detailed | None = None
    below: bool = False  # it points at the lower half from under the view, and its words stand beside


@dataclass(frozen=True)
class Angles:
    """How angles round the axis are told: not at all without a view along it, there by an arc, or in words."""

    seen: bool  # there is a view along the axis
    drawn: tuple[str, ...] = ()  # features whose angle an arc dimensions there
    inside: bool = False  # the arcs stand inside the outline

    def said(self, feature: str) -> bool:
        """Whether the words of a feature say its angle."""
        return self.seen and feature not in self.drawn


@dataclass
class Saying:
    """Rows of one feature being written; every figure put into a row is kept as it is printed."""

    feature: str
    reader: Reader
    datum: str = "axis"
    rows: list[Row] = field(default_factory=list)
    printed: list[PrintedDimension] = field(default_factory=list)
    _open: list[PrintedDimension] = field(default_factory=list)

    def length(
        self, kind: PrintedKind, size: str, mm: float, datum: str = "", limits: tuple[str, str] | None = None
    ) -> str:
        """A length in the reader's unit; one of ``HELD`` is written to the last digit."""
        figure = self.reader.plain(mm) if size in HELD else self.reader.free(mm)
        self._open.append(
            PrintedDimension(
                kind,
                self.feature,
                size,
                "",
                figure,
                mm,
                limits,
                self.reader.unit,
                datum or self.datum,
            )
        )
        return figure

    def dia(self, size: str, mm: float) -> str:
        """A diameter."""
        return DIA + self.length("diameter", size, mm)

    def angle(self, size: str, degrees: float, kind: PrintedKind = "angle") -> str:
        """An angle."""
        figure = angle_words(degrees)
        self._open.append(
            PrintedDimension(kind, self.feature, size, "", figure, degrees, None, "deg", self.datum)
        )
        return f"{figure}°"

    def word(self, kind: PrintedKind, size: str, word: str, value: float = 0.0) -> str:
        """A word or a whole number that says something of the part: a thread, a form, a count."""
        self._open.append(PrintedDimension(kind, self.feature, size, "", word, value, None, "", self.datum))
        return word

    def row(self, words: str, small: bool = False, taper: int = 0) -> None:
        """Close a row: the figures in it are kept with the whole line."""
        self.printed += [replace(one, words=words) for one in self._open]
        self._open.clear()
        self.rows.append(Row(words, small, taper=taper))

    def sized(
        self, size: str, dim: Dim, sign: str = DIA, after: str = "", kind: PrintedKind = "diameter"
    ) -> None:
        """A size with its zone, and its limits in a row below."""
        figure = self.reader.length(dim.value, 3) if dim.toleranced else self.reader.free(dim.value)
        limits = None
        if dim.smallest is not None and dim.largest is not None:
            limits = self.reader.limits(dim.smallest, dim.largest)
        zone = dim.zone if limits and dim.zone[:1].isalpha() and not dim.because else ""
        self._open.append(
            PrintedDimension(
                kind, self.feature, size, "", figure, dim.value, limits, self.reader.unit, self.datum
            )
        )
        self.row(" ".join(word for word in (f"{sign}{figure}", zone, after) if word))
        if limits:
            self.rows.append(Row(f"{limits[0]}–{limits[1]}", True))


def angle_words(degrees: float) -> str:
    """An angle to a hundredth of a degree without needless noughts.

    Examples
    --------
    >>> angle_words(60.0), angle_words(1.4914)
    ('60', '1.491')
    """
    words = f"{degrees:.3f}".rstrip("0").rstrip(".")
    return "0" if words == "-0" else words


def detailed(
    say: Saying, width: str, before: str, instead: str, start: tuple[float, float], end: tuple[float, float]
) -> Detailed:
    """The same rows without the width, which stands at a dimension: ``before`` becomes ``instead`` in the first row."""
    first = say.rows[0].words
    alone = instead + first.removeprefix(before)
    printed = tuple(
        replace(one, words=width if one.size == "width" else alone) if one.words == first else one
        for one in say.printed
    )
    return Detailed((replace(say.rows[0], words=alone), *say.rows[1:]), printed, width, start, end)
