"""Lengths inside sentences, so that a door can say them in mm or in inches.

A sentence of a card is written once, with its lengths marked; ``spoken`` puts
the figures in for the reader. The marks are two private characters that no
name or word can hold. A figure that is written out with its unit ("0.05 mm",
"3-36 mm") needs no mark: the unit itself says that it is a length.

A figure in inches has a decimal more than it needs, and a limit is rounded to
its safe side: a most downwards, a least upwards.
"""

from __future__ import annotations

import math
import re
from dataclasses import fields, is_dataclass, replace
from decimal import Decimal
from functools import cache, lru_cache
from typing import Any, Literal, TypeVar

from tommybar.facts.drills import drills_of_series

OPEN, CLOSE = "\ue000", "\ue001"
MARKED = re.compile(f"{OPEN}([^|{CLOSE}]*)\\|([^{CLOSE}]*){CLOSE}")
ONE = r"[+-]?\d+(?:\.\d+)?"
BETWEEN = r"(?: to |-| x )"
# A figure or a row of them with its unit; not mm/rev, mm2, g mm, nor the tail of a name ("M3-8 mm", "#7").
WRITTEN = re.compile(rf"(?<![\w.#/+-])(?P<row>{ONE}(?:{BETWEEN}{ONE})*) mm(?![\w/²³^])(?! \([\d. x-]+ in\))")
POWER = re.compile(rf"(?<![\w.])({ONE}) mm([23])\b")
SCREW_LONG = re.compile(r"\bM\d+(?:\.\d+)? x $")  # before a screw's length, which is part of its name
SOLD = r"bars?|rods?|tubes?|sheets?|plates?|flats?|blanks?|round|hexagon|square|across"
NAMED = rf"(?:reamers?|drills?|taps?|dies?|collets?|cutters?|mills?|{SOLD})"
NAMED_AFTER = re.compile(rf"^ (?:slot |end |centre |round |hexagon |square )?{NAMED}\b")
NAMED_BEFORE = re.compile(rf"\b{NAMED} $")
MOST = re.compile(r"(?:at most|up to|within|no more than|not above|not over|no longer than|only) $")
LEAST = re.compile(r"(?:at least|no less than|not below|not under) $")
SAME = 1e-6  # an inch size to the last figure: 12.7 is 1/2 in [mm]
NEAR = 0.003  # a tool is the inch size it is within so much of [mm]
T = TypeVar("T")


class Mm(float):
    """A length [mm] that marks itself when it is written into a sentence.

    The format is the metric one; "tool" stands for the name of a tool's size,
    "marked" for what is cut into a dial and stays metric for every reader.
    After it may stand "mm", when the unit is to be written in metric words
    too, and "most" or "least" for a limit ("{Mm(0.05):.2f mm most}").
    """

    def __format__(self, spec: str) -> str:
        return f"{OPEN}{float(self)!r}|{spec}{CLOSE}"


@cache
def _inch_names() -> tuple[tuple[float, str], ...]:
    named = [
        (one.diameter, one.name if series != "fraction" else f"{one.name.removesuffix(' in')} in")
        for series in ("fraction", "number", "letter")
        for one in drills_of_series(series)
    ]
    return tuple(named)


@lru_cache(maxsize=1024)
def tool_size_words(size: float, unit: Literal["mm", "in"] = "mm") -> str:
    """A tool's size as its owner calls it: "7.8", "5/16 in", "#7".

    Examples
    --------
    >>> tool_size_words(7.8), tool_size_words(7.9375), tool_size_words(7.9375, "in")
    ('7.8', '5/16 in', '5/16 in')
    """
    whole_tenth = abs(size * 20 - round(size * 20)) < 1e-6
    near = min(_inch_names(), key=lambda named: abs(named[0] - size))
    if whole_tenth and not (unit == "in" and abs(near[0] - size) < SAME):
        return f"{size:g} mm" if unit == "in" else f"{size:g}"
    if abs(near[0] - size) < NEAR:
        return near[1]
    return f"{size / 25.4:.4f} in" if unit == "in" else f"{size:.2f}"


def _figure(value: float, spec: str, unit: Literal["mm", "in"]) -> str:
    if spec == "tool":
        named = tool_size_words(value, unit)
        return f"{named} ({value / 25.4:.3f} in)" if named.endswith(" mm") else named
    if spec == "marked":
        return f"{value:g} millimetre" if unit == "in" else f"{value:g}"
    spec, *more = spec.split(" ")
    decimals = re.fullmatch(r"\+?\.(\d)f", spec)
    side = "most" if "most" in more else "least" if "least" in more else ""
    if unit == "mm":
        places = int(decimals.group(1)) if decimals else 4
        return _unsigned(format(_rounded(value, places, side), spec)) + (" mm" if "mm" in more else "")
    places = max(3, int(decimals.group(1)) + 1) if decimals else 3
    sign = "+" if spec.startswith("+") else ""
    return _unsigned(format(_rounded(value / 25.4, places, side), f"{sign}.{places}f")) + " in"


def _unsigned(said: str) -> str:
    """Nought has no minus."""
    return said[1:] if said.startswith("-") and not said.strip("-0.") else said


def _rounded(value: float, places: int, side: str) -> float:
    """A figure to so many places: to the nearest, or a limit to its safe side."""
    if not side:
        return round(value, places + 6)  # off with the noise, never rounded twice
    grid = 10.0**places
    steps = value * grid
    return (math.floor(steps + 1e-6) if side == "most" else math.ceil(steps - 1e-6)) / grid


def _in_inches(found: re.Match[str]) -> str:
    """Figures that were written out in mm, in inches; what is named by its size keeps its name."""
    words, row = found.string, found.group("row")
    before, after = words[: found.start()], words[found.end() :]
    side = "most" if MOST.search(before) else "least" if LEAST.search(before) else ""

    def one(figure: re.Match[str]) -> str:
        said = figure.group(0)
        places = min(5, max(3, len(said.partition(".")[2]) + 2))
        return format(
            _rounded(float(said) / 25.4, places, side), f"{'+' if said[0] == '+' else ''}.{places}f"
        )

    pieces = re.split(f"({BETWEEN})", row)
    said = "".join(piece if n % 2 else re.sub(ONE, one, piece) for n, piece in enumerate(pieces)) + " in"
    if NAMED_AFTER.match(after) or NAMED_BEFORE.search(before) or SCREW_LONG.search(before):
        return f"{row} mm ({said})"
    return said


def spoken(thing: T, unit: Literal["mm", "in"]) -> T:
    """The same record, its sentences with every length in ``unit``.

    Examples
    --------
    >>> spoken(f"stop at Z {Mm(14.7):.2f} from the face", "mm")
    'stop at Z 14.70 from the face'
    >>> spoken(f"stop at Z {Mm(14.7):.2f} from the face", "in")
    'stop at Z 0.579 in from the face'
    >>> spoken("the 8 mm reamer cuts 8.012 mm, at most 8.015 mm is allowed", "in")
    'the 8 mm (0.315 in) reamer cuts 0.31543 in, at most 0.31555 in is allowed'
    """
    return _spoken(thing, unit)  # type: ignore[no-any-return]  # the same type goes in and comes out


def _spoken(thing: Any, unit: Literal["mm", "in"]) -> Any:
    if isinstance(thing, str):
        said_so = thing
        if OPEN in thing:
            said_so = MARKED.sub(lambda found: _figure(float(found.group(1)), found.group(2), unit), thing)
        if unit == "mm" or " mm" not in said_so:
            return said_so
        said_so = POWER.sub(
            lambda found: f"{Decimal(format(float(found[1]) / 25.4 ** int(found[2]), '.3g')):f} in{found[2]}",
            said_so,
        )
        return WRITTEN.sub(_in_inches, said_so)
    if isinstance(thing, tuple):
        kinds = {type(one) for one in thing}
        if all(is_dataclass(kind) and not _speaking(kind) for kind in kinds):
            return thing
        said = tuple(_spoken(one, unit) for one in thing)
        return said if any(a is not b for a, b in zip(said, thing, strict=True)) else thing
    if is_dataclass(thing) and not isinstance(thing, type):
        changes = {}
        for name in _speaking(type(thing)):
            was = getattr(thing, name)
            if was:
                now = _spoken(was, unit)
                if now is not was:
                    changes[name] = now
        return replace(thing, **changes) if changes else thing
    return thing


@cache
def _speaking(record: type) -> tuple[str, ...]:
    """The fields of a record that can hold words: all but plain figures."""
    return tuple(one.name for one in fields(record) if one.type not in ("float", "int", "bool"))
