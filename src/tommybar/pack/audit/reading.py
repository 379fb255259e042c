"""What a stranger reads on a sheet: figures as they are printed, what each points at, and nothing of the model."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from typing import Literal

from tommybar.pack.printed import PrintedDimension
from tommybar.pack.turned.saying import HELD
from tommybar.pack.units import INCH, rounding_bound

LEAST = 3  # decimals to which figures are written; noughts behind them are left out
FLOAT = 1e-7  # what sums of floating point may differ by [mm]


@dataclass(frozen=True)
class Figure:
    """A printed figure and half of its last digit [mm or deg]; limits when they stand beside it."""

    value: float
    half: float = 0.0
    limits: tuple[tuple[float, float], tuple[float, float]] | None = None  # each with its last digit

    def __add__(self, other: Figure) -> Figure:
        """The sum, uncertain by both halves."""
        return Figure(self.value + other.value, self.half + other.half)

    def __sub__(self, other: Figure) -> Figure:
        """The difference, uncertain by both halves."""
        return Figure(self.value - other.value, self.half + other.half)


NOUGHT = Figure(0.0)


def worked_out(formula: Callable[..., float], *figures: Figure) -> Figure:
    """A figure that follows from printed ones, uncertain by what each of them may be off."""
    values = [one.value for one in figures]
    value = formula(*values)
    half = 0.0
    for n, one in enumerate(figures):
        moved = [*values[:n], one.value + one.half, *values[n + 1 :]]
        half += abs(formula(*moved) - value)
    return Figure(value, half)


@dataclass(frozen=True)
class Said:
    """One printed figure as it is read: no more than the sheet shows."""

    kind: str
    feature: str
    size: str  # what of the feature it points at
    words: str
    figure: str
    limits: tuple[str, str] | None
    unit: Literal["mm", "in", "deg", ""]
    datum: str


def _number(words: str, unit: str) -> tuple[float, float]:
    """A figure with its last digit, in the units of the house."""
    times = INCH if unit == "in" else 1.0
    decimals = len(words.partition(".")[2])
    return float(words) * times, 10.0**-decimals * times


@dataclass
class Reading:
    """The figures of one sheet; what is looked for and is not there is kept in ``missing``."""

    said: tuple[Said, ...]
    missing: list[tuple[str, str]] = field(default_factory=list)
    rounded: bool = False  # sizes without limits are written by their general tolerance
    unreadable: list[tuple[str, str, str]] = field(default_factory=list)
    used: set[tuple[str, str]] = field(default_factory=set)
    doubled: list[tuple[str, str, str]] = field(default_factory=list)
    closed: list[tuple[str, str]] = field(default_factory=list)  # sizes of which one follows from the others

    def has(self, feature: str, size: str) -> bool:
        """Whether anything is printed of that size."""
        return any(one.feature == feature and one.size == size for one in self.said)

    def close(self, feature: str, sizes: str) -> None:
        """Note a closed chain: all these are printed, and one follows from the others."""
        self.closed.append((feature, sizes))

    def bracketed(self, feature: str) -> bool:
        """Whether one of the figures of a feature stands in brackets, for reference (ISO 129-1)."""
        return any(
            one.feature == feature and one.words.startswith("(") and one.words.endswith(")")
            for one in self.said
        )

    def word(self, feature: str, size: str) -> str:
        """A printed word, "" when there is none."""
        found = [one for one in self.said if one.feature == feature and one.size == size]
        self.used.add((feature, size))
        return found[0].figure if found else ""

    def told(self, feature: str, size: str) -> str:
        """A word that the part cannot be made without; noted when it is not printed."""
        found = self.word(feature, size)
        if not found and (feature, size) not in self.missing:
            self.missing.append((feature, size))
        return found

    def twice(self, feature: str, size: str, other: str) -> None:
        """Note a figure that is printed of both sides of one place."""
        self.doubled.append((feature, size, other))

    def maybe(self, feature: str, size: str) -> Figure | None:
        """A figure if it is printed."""
        found = [one for one in self.said if one.feature == feature and one.size == size]
        self.used.add((feature, size))
        if not found:
            return None
        one = found[0]
        try:
            value, digit = _number(one.figure, one.unit)
            if one.unit != "":
                digit = min(digit, self._digit(one, value))
            limits = (
                (_number(one.limits[0], one.unit), _number(one.limits[1], one.unit)) if one.limits else None
            )
        except ValueError:
            self.unreadable.append((feature, size, one.figure))
            return None
        return Figure(value, digit / 2 + FLOAT, limits)

    def _digit(self, one: Said, value: float) -> float:
        """The last digit that counts, when noughts behind it are left out."""
        last = 10.0**-LEAST * (INCH if one.unit == "in" else 1.0)
        free = self.rounded and one.unit in ("mm", "in") and not one.limits and one.size not in HELD
        return max(last, 2 * rounding_bound(value)) if free else last

    def take(self, feature: str, size: str) -> Figure:
        """A figure that the part cannot be made without; 0 and a note of it when it is not printed."""
        found = self.maybe(feature, size)
        if found is None:
            if (feature, size) not in self.missing:
                self.missing.append((feature, size))
            return NOUGHT
        return found


def read(printed: Iterable[PrintedDimension], rounded: bool = False) -> Reading:
    """The figures of a sheet without what the program keeps beside them."""
    return Reading(
        tuple(
            Said(one.kind, one.feature, one.size, one.words, one.figure, one.limits, one.unit, one.datum)
            for one in printed
        ),
        rounded=rounded,
    )
