"""The frame that runs rows of published figures against public functions.

A row says what a book or standard prints. A mapping module ``map_<file>.py``
turns its words (group, item, condition), never its id, into a call of public
functions and gives back what they compute; this module compares the two to
half a unit of the last place that was printed.

A mapping module exposes

``expected_call(row)``
    the computed figure: a number, words, or a tuple of these (as many as the
    row prints). Raises :class:`Unmapped` when no rule fits.
``LEFT_OUT``
    groups that are not run, each with its reason (may be empty).
``band(row)``
    optional: a :class:`Band` for rows whose header states a wider band.
"""

from __future__ import annotations

import csv
import os
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from types import ModuleType

from tommybar.refusals import Refusal

Computed = float | str | Sequence["Computed"]

FILES = (
    "iso286",
    "ansi_b4_1",
    "threads",
    "drills",
    "tapers",
    "hole_circles",
    "indexing",
    "materials",
    "general_standards",
    "adhesives",
)

OUTSIDE = ("read", "memory", "common practice")  # kinds of outside figure; "computed" counts apart

_DMS = re.compile(r"""^(-?)(\d+)\s*deg(?:\s*(\d+(?:\.\d+)?)\s*')?(?:\s*(\d+(?:\.\d+)?)\s*")?$""")


class Unmapped(LookupError):  # noqa: N818 - named for the outcome that is counted
    """No rule turns this row into a call."""


@dataclass(frozen=True)
class Row:
    """One published row, as it stands in the file."""

    file: str
    id: str
    group: str
    item: str
    condition: str
    value: str
    value2: str
    unit: str
    source: str
    basis: str
    formula: str
    computed: str
    follows: str
    note: str

    @property
    def words(self) -> str:
        """Group, item and condition in one line, for messages and rules."""
        return " | ".join((self.group, self.item, self.condition))

    @property
    def printed(self) -> tuple[str, ...]:
        """The printed texts: value and value2 where there is one; lists by ``;`` or ``x`` taken apart."""
        texts = [self.value] + ([self.value2] if self.value2 else [])
        if len(texts) == 1 and _is_list(self.value):
            return tuple(part.strip() for part in re.split(r";|\sx\s", self.value))
        return tuple(texts)


@dataclass(frozen=True)
class Band:
    """A band wider than half a unit of the last printed place.

    ``relative`` widens by a share of the printed figure, ``absolute`` by an
    amount in the row's unit. With ``as_range`` the row's value..value2 is a
    range, and what is computed (one figure, or a lower and an upper one) must
    lie inside the widened range.
    """

    relative: float = 0.0
    absolute: float = 0.0
    as_range: bool = False


def folder() -> Path:
    """Folder that is read: the variable TOMMYBAR_CHECKS, or the rows beside this file."""
    return Path(os.environ.get("TOMMYBAR_CHECKS") or Path(__file__).parent / "rows")


def all_rows(file: str) -> list[Row]:
    """Every row of one file; none if the chosen folder does not hold that file."""
    path = folder() / f"{file}.csv"
    if not path.exists():
        return []
    with path.open(encoding="utf-8", newline="") as stream:
        lines = [line for line in stream if not line.startswith("#")]
    return [
        Row(file=file, **{key: (text or "").strip() for key, text in record.items()})
        for record in csv.DictReader(lines)
    ]


def rows_of(file: str, left_out: Mapping[str, str]) -> list[Row]:
    """The rows of one file that are run: all but the groups left out with a reason."""
    return [row for row in all_rows(file) if row.group not in left_out]


def half_unit(text: str) -> float:
    """Half a unit of the last place that was written.

    >>> half_unit("33.880"), half_unit("400"), half_unit("1.2e3")
    (0.0005, 0.5, 50.0)
    """
    mantissa, _, exponent = text.strip().lower().partition("e")
    decimals = len(mantissa.partition(".")[2])
    return float(f"5e{int(exponent or 0) - decimals - 1}")


def figure_of(text: str) -> tuple[float, float]:
    """A printed text as a figure and half a unit of its last place.

    Degrees, minutes and seconds come back in degrees. Words raise ValueError.

    >>> figure_of("1deg 30'")
    (1.5, 0.008333333333333333)
    """
    angle = _DMS.match(text.strip())
    if angle:
        sign, degrees, minutes, seconds = angle.groups()
        size = float(degrees) + float(minutes or 0) / 60 + float(seconds or 0) / 3600
        if seconds is not None:
            half = half_unit(seconds) / 3600
        elif minutes is not None:
            half = half_unit(minutes) / 60
        else:
            half = half_unit(degrees)
        return (-size if sign else size), half
    return float(text), half_unit(text)


def difference(row: Row, computed: Computed, band: Band | None = None) -> str:
    """What is wrong with a computed figure against the printed one; empty when it agrees."""
    if band is not None and band.as_range:
        return _outside_range(row, computed, band)
    if isinstance(computed, str):
        whole = ";".join(row.printed) if row.value2 else row.value
        return "" if _plain(computed) == _plain(whole) else f"printed {whole!r}, computed {computed!r}"
    parts: list[Computed] = list(computed) if isinstance(computed, Sequence) else [computed]
    printed = row.printed
    if len(parts) != len(printed):
        return f"printed {len(printed)} figures {printed}, computed {len(parts)}: {parts}"
    wrong = [_one(text, part, band) for text, part in zip(printed, parts, strict=True)]
    return "; ".join(words for words in wrong if words)


def verdict(row: Row, mapping: ModuleType) -> tuple[str, str]:
    """Outcome of one row (passed, failed, unmapped) and the words for people."""
    try:
        computed = mapping.expected_call(row)
    except Unmapped as fault:
        return "unmapped", f"no rule maps: {row.words} {fault}"
    except Refusal as fault:
        return "failed", f"{row.words}: refused: {fault}"
    band = mapping.band(row) if hasattr(mapping, "band") else None
    words = difference(row, computed, band)
    if not words:
        return "passed", ""
    return "failed", f"{row.words} [{row.unit}]: {words}. Source: {row.source}. {row.note}"


def _is_list(text: str) -> bool:
    parts = re.split(r";|\sx\s", text)
    if len(parts) < 2:
        return False
    try:
        for part in parts:
            figure_of(part.strip())
    except ValueError:
        return False
    return True


def _plain(text: str) -> str:
    return " ".join(text.casefold().split())


def _one(text: str, computed: Computed, band: Band | None) -> str:
    if isinstance(computed, str):
        return "" if _plain(computed) == _plain(text) else f"printed {text!r}, computed {computed!r}"
    if not isinstance(computed, (int, float)):
        return f"printed {text!r}, computed {computed!r}"
    try:
        figure, allowed = figure_of(text)
    except ValueError:
        return f"printed words {text!r}, computed {computed!r}"
    if band is not None:
        allowed = max(allowed, band.absolute, band.relative * abs(figure))
    allowed += 1e-9 * max(1.0, abs(figure))
    good = abs(float(computed) - figure) <= allowed
    return "" if good else f"printed {text}, computed {computed:.7g} (allowed +-{allowed:.3g})"


def _outside_range(row: Row, computed: Computed, band: Band) -> str:
    lower, half_lower = figure_of(row.value)
    upper, half_upper = figure_of(row.value2 or row.value)
    low = min(lower, upper) - max(half_lower, band.absolute, band.relative * abs(lower))
    high = max(lower, upper) + max(half_upper, band.absolute, band.relative * abs(upper))
    parts = list(computed) if isinstance(computed, Sequence) else [computed]
    for part in parts:
        if not isinstance(part, (int, float)) or not low - 1e-9 <= part <= high + 1e-9:
            return f"printed range {row.value}..{row.value2}, computed {computed!r}"
    return ""
