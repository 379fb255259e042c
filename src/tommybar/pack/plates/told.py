"""One row of the table beside a plate: words, places from the datum corner, and every figure kept as data."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from tommybar.pack.printed import PrintedDimension, PrintedKind
from tommybar.pack.units import Reader
from tommybar.shapes.features import Dim

DIA = "Ø"
CORNER = "corner"  # the datum of every place on a plate: left, front, underside
Spot = tuple[
    float | None, float | None, float | None
]  # x, y, z from the datum corner; None: it runs that way
NOWHERE: Spot = (None, None, None)  # what is said of the whole part


@dataclass(frozen=True)
class Row:
    """A row as it is printed; ``spots`` are where its letter points to [mm, x y z in the plate]."""

    tag: str
    places: tuple[str, str, str]
    words: str
    printed: tuple[PrintedDimension, ...]
    face: str = ""
    spots: tuple[tuple[float, float, float], ...] = ()
    radius: float = 0.0
    frame: tuple[str, ...] = ()  # a position frame to be drawn for it


@dataclass
class Told:
    """Words of one feature being put together; every figure said is kept as it is printed.

    What a view gives already is left out of them.
    """

    feature: str
    reader: Reader
    words: list[str] = field(default_factory=list)
    drawn: frozenset[tuple[str, str]] = frozenset()  # sizes that a view gives, and no row says again
    printed: list[PrintedDimension] = field(default_factory=list)

    def say(self, words: str) -> None:
        """Words without a figure."""
        self.words.append(words)

    def length(self, kind: PrintedKind, size: str, mm: float, before: str = "", after: str = "") -> None:
        """A plain length with words before and after it."""
        if (self.feature, size) in self.drawn:
            return
        figure = self.reader.place(mm)
        self.words.append(f"{before}{figure}{after}")
        self._keep(kind, size, figure, mm)

    def sized(self, kind: PrintedKind, size: str, dim: Dim, before: str = "", after: str = "") -> None:
        """A size with its zone and its limits in figures."""
        if (self.feature, size) in self.drawn:
            return
        figure, limits, zone = self.reader.place(dim.value), None, ""
        if dim.smallest is not None and dim.largest is not None:
            limits = self.reader.limits(dim.smallest, dim.largest)
            zone = f" {dim.zone}" if dim.zone[:1].isalpha() and not dim.because else ""
        told = f" ({limits[0]}–{limits[1]})" if limits else ""
        self.words.append(f"{before}{figure}{zone}{told}{after}")
        self._keep(kind, size, figure, dim.value, limits)

    def angle(self, size: str, degrees: float, before: str = "", after: str = "") -> None:
        """An angle."""
        if (self.feature, size) in self.drawn:
            return
        figure = f"{degrees:.3f}".rstrip("0").rstrip(".")
        self.words.append(f"{before}{figure}°{after}")
        self.printed.append(
            PrintedDimension("angle", self.feature, size, "", figure, degrees, None, "deg", CORNER)
        )

    def word(
        self, kind: PrintedKind, size: str, word: str, value: float = 0.0, before: str = "", after: str = ""
    ) -> None:
        """A word or whole number that says something of the part: a thread, a form, a count."""
        self.words.append(f"{before}{word}{after}")
        self.printed.append(PrintedDimension(kind, self.feature, size, "", word, value, None, "", CORNER))

    def given(self, *sizes: str) -> bool:
        """Whether a view gives one of these sizes."""
        return any((self.feature, size) in self.drawn for size in sizes)

    def _keep(
        self,
        kind: PrintedKind,
        size: str,
        figure: str,
        value: float,
        limits: tuple[str, str] | None = None,
    ) -> None:
        unit = self.reader.unit
        self.printed.append(
            PrintedDimension(kind, self.feature, size, "", figure, value, limits, unit, CORNER)
        )

    def row(
        self,
        tag: str,
        spot: Spot,
        face: str = "",
        spots: tuple[tuple[float, float, float], ...] = (),
        radius: float = 0.0,
        frame: tuple[str, ...] = (),
    ) -> Row:
        """The row, its places written as well as its words."""
        line = " ".join(" ".join(self.words).replace(" ,", ",").replace(" ;", ";").split())
        kept = [replace(one, words=line) for one in self.printed]
        cells = []
        for name, mm in zip("xyz", spot, strict=True):
            if mm is None or (self.feature, name) in self.drawn:
                cells.append("")
                continue
            figure = self.reader.place(mm)
            cells.append(figure)
            if abs(mm) < 1e-9:
                continue  # on the datum itself, which needs no figure
            kept.append(
                PrintedDimension(
                    "length", self.feature, name, figure, figure, mm, None, self.reader.unit, CORNER
                )
            )
        return Row(tag, (cells[0], cells[1], cells[2]), line, tuple(kept), face, spots, radius, frame)
