"""Lengths inside sentences, so that a door can say them in mm or in inches.

A sentence of a card is written once, with its lengths marked; ``spoken`` puts
the figures in for the reader. The marks are two private characters that no
name or word can hold.
"""

from __future__ import annotations

import re
from dataclasses import fields, is_dataclass, replace
from functools import cache
from typing import Any, Literal, TypeVar

from tommybar.facts.drills import drills_of_series

OPEN, CLOSE = "\ue000", "\ue001"
MARKED = re.compile(f"{OPEN}([^|{CLOSE}]*)\\|([^{CLOSE}]*){CLOSE}")
NEAR = 0.003  # a tool is the inch size it is within so much of [mm]
T = TypeVar("T")


class Mm(float):
    """A length [mm] that marks itself when it is written into a sentence.

    The format is the metric one; "tool" stands for the name of a tool's size.
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


def tool_size_words(size: float, unit: Literal["mm", "in"] = "mm") -> str:
    """A tool's size as its owner calls it: "7.8", "5/16 in", "#7".

    Examples
    --------
    >>> tool_size_words(7.8), tool_size_words(7.9375), tool_size_words(7.9375, "in")
    ('7.8', '5/16 in', '5/16 in')
    """
    whole_tenth = abs(size * 20 - round(size * 20)) < 1e-6
    if whole_tenth:
        return f"{size:g} mm" if unit == "in" else f"{size:g}"
    near = min(_inch_names(), key=lambda named: abs(named[0] - size))
    if abs(near[0] - size) < NEAR:
        return near[1]
    return f"{size / 25.4:.4f} in" if unit == "in" else f"{size:.2f}"


def _figure(value: float, spec: str, unit: Literal["mm", "in"]) -> str:
    if spec == "tool":
        return tool_size_words(value, unit)
    if unit == "mm":
        return format(round(value, 4), spec)
    decimals = re.fullmatch(r"\+?\.(\d)f", spec)
    places = max(3, int(decimals.group(1)) + 1) if decimals else 3
    sign = "+" if spec.startswith("+") else ""
    return format(value / 25.4, f"{sign}.{places}f") + " in"


def spoken(thing: T, unit: Literal["mm", "in"]) -> T:
    """The same record, its sentences with every length in ``unit``.

    Examples
    --------
    >>> spoken(f"stop at Z {Mm(14.7):.2f} from the face", "mm")
    'stop at Z 14.70 from the face'
    >>> spoken(f"stop at Z {Mm(14.7):.2f} from the face", "in")
    'stop at Z 0.579 in from the face'
    """
    return _spoken(thing, unit)  # type: ignore[no-any-return]  # the same type goes in and comes out


def _spoken(thing: Any, unit: Literal["mm", "in"]) -> Any:
    if isinstance(thing, str):
        if OPEN not in thing:
            return thing
        return MARKED.sub(lambda found: _figure(float(found.group(1)), found.group(2), unit), thing)
    if isinstance(thing, tuple):
        said = tuple(_spoken(one, unit) for one in thing)
        return said if any(a is not b for a, b in zip(said, thing, strict=True)) else thing
    if is_dataclass(thing) and not isinstance(thing, type):
        changes = {}
        for one in fields(thing):
            was = getattr(thing, one.name)
            if isinstance(was, str | tuple) or is_dataclass(was):
                now = _spoken(was, unit)
                if now is not was:
                    changes[one.name] = now
        return replace(thing, **changes) if changes else thing
    return thing
