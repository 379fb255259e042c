"""What is dimensioned in the views of a plate: figures tied to points of a view, before any scale is chosen."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field

from tommybar.pack.imprint import Angle
from tommybar.pack.plates.holes import datum_of
from tommybar.pack.plates.spans import Side, Span
from tommybar.pack.plates.told import NOWHERE, Told
from tommybar.pack.plates.views import Plane, sections_of, side_of
from tommybar.pack.printed import PrintedDimension
from tommybar.pack.projected.directions import Looked, looked_at
from tommybar.pack.sheet import Point
from tommybar.pack.units import Reader
from tommybar.shapes.features import PlateShape
from tommybar.shapes.solids.frames import point

Place = tuple[float, float, float]
AXES = {  # of the plate, along and up each view, with their sense
    "top": ((0, 1.0), (1, 1.0)),
    "front": ((0, 1.0), (2, 1.0)),
    "left": ((1, -1.0), (2, 1.0)),
    "right": ((1, 1.0), (2, 1.0)),
}


@dataclass(frozen=True)
class Round:
    """A radius, pointed at on its arc between two angles [deg], or a circle that is pointed at."""

    centre: Point
    radius: float
    start: float
    end: float
    words: str
    circle: bool = False  # the whole circle is meant, its diameter told


@dataclass(frozen=True)
class Lean:
    """An angle at a vertex from direction ``start`` counter-clockwise to ``end`` [deg]."""

    vertex: Point
    start: float
    end: float
    value: float
    words: str
    reach: float  # from the vertex to where its sides leave the metal [mm of the part]


@dataclass(frozen=True)
class Deep:
    """A depth from a face down to a floor, its line standing in the opening at one of ``at``."""

    at: tuple[float, ...]  # u, the one liked best first
    face: float  # v
    floor: float
    value: float
    words: str


@dataclass(frozen=True)
class Pointed:
    """Words with a leader to a spot."""

    spot: Point
    words: str


Figure = Span | Round | Lean | Deep | Pointed


@dataclass(frozen=True)
class _Spot:
    axis: int
    value: float
    at: Point
    back: float


@dataclass
class Figures:
    """Figures of all views as they are put together; ``printed`` says of what each of them is."""

    shape: PlateShape
    reader: Reader
    angle: Angle
    sections: int = 3  # at most; what they do not show is told in the table
    of: dict[str, list[Figure]] = field(default_factory=dict)
    printed: list[PrintedDimension] = field(default_factory=list)
    spots: dict[str, list[_Spot]] = field(default_factory=dict)
    on_datum: set[tuple[str, str]] = field(default_factory=set)  # places that need no figure

    def __post_init__(self) -> None:
        self.planes: dict[str, Plane] = dict(
            zip("XYZ"[: self.sections], sections_of(self.shape), strict=False)
        )
        self.end: Looked | None = side_of(self.shape)
        self.outer: Side = "above" if self.angle == "first" else "below"  # away from the view from above
        beside = self.end is not None and (self.end == "left") == (self.angle == "first")
        self.far: Side = "right" if beside or self.end is None else "left"  # of the view of an end

    @property
    def drawn(self) -> frozenset[tuple[str, str]]:
        """Sizes that stand in a view, by feature."""
        return frozenset((one.feature, one.size) for one in self.printed) | self.on_datum

    def told(self, feature: str) -> Told:
        """Words of one figure, to be closed with :meth:`say`."""
        return Told(feature, self.reader)

    def say(self, told: Told) -> str:
        """Keep what was told as printed; its words."""
        row = told.row("", NOWHERE)
        self.printed += row.printed
        return row.words

    def put(self, view: str, *figures: Figure) -> None:
        """Figures of one view."""
        self.of.setdefault(view, []).extend(figures)

    def seen(self, looked: Looked, spot: Place) -> Point:
        """A spot of the plate as it stands in a view."""
        u, v, _ = point(looked_at(looked), spot)
        return u + 0.0, v + 0.0

    def span(self, looked: Looked, side: Side, a: Place, b: Place, value: float, words: str) -> None:
        """A distance between two spots of the plate, in a view."""
        self.put(looked, Span(side, self.seen(looked, a), self.seen(looked, b), value, words))

    def place(self, looked: Looked, feature: str, axis: str, spot: Place, back: float = 0.0) -> None:
        """A place from the datum along an axis of the plate; alike ones become one dimension.

        One on the datum itself needs none.
        """
        n = "xyz".index(axis)
        value = round(spot[n] - (*datum_of(self.shape), 0.0)[n], 9)
        if abs(value) < 1e-9:
            self.on_datum.add((feature, axis))
            return
        told = self.told(feature)
        told.length("length", axis, value)
        self.say(told)
        self.spots.setdefault(looked, []).append(_Spot(n, value, self.seen(looked, spot), back))

    def finished(self) -> Figures:
        """Places become dimensions, each value once."""
        for looked, spots in self.spots.items():
            view: Looked = looked  # type: ignore[assignment]
            for n in range(3):
                values = sorted({one.value for one in spots if one.axis == n})
                side = self._side(view, n)
                for value in values:
                    same = [one for one in spots if one.axis == n and one.value == value]
                    self.put(looked, self._from_datum(view, n, side, same))
        self.spots = {}
        self._once()
        return self

    def _once(self) -> None:
        """Leave out a distance that another view, or another feature, gives between the same places."""
        given: set[tuple[object, ...]] = set()
        for looked, figures in self.of.items():
            kept: list[Figure] = []
            for one in figures:
                if isinstance(one, Span) and looked in AXES:
                    level = one.side in ("above", "below")
                    axis, sign = AXES[looked][0 if level else 1]
                    ends = sorted(round(sign * p[0 if level else 1], 6) for p in (one.a, one.b))
                    key = (axis, *ends, one.words)
                    if key in given:
                        continue
                    given.add(key)
                kept.append(one)
            self.of[looked] = kept

    def _side(self, looked: Looked, axis: int) -> Side:
        if looked == "top":
            return "below" if axis == 0 else "left"
        if axis == 2:
            return "left" if looked == "front" else self.far
        return self.outer

    def _from_datum(self, looked: Looked, axis: int, side: Side, same: Iterable[_Spot]) -> Span:
        away = {"below": (1, 1.0), "above": (1, -1.0), "left": (0, 1.0), "right": (0, -1.0)}[side]
        nearest = min(same, key=lambda one: (one.at[away[0]] * away[1], one.back))
        datum = self.seen(looked, (*datum_of(self.shape), 0.0))
        return Span(
            side,
            datum,
            nearest.at,
            nearest.value,
            self.reader.place(nearest.value),
            (0.0, nearest.back),
            True,
        )
