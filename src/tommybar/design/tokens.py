"""The text of an expression cut into figures with units, names and signs.

``3/8 in``, ``1 3/8 in`` and ``3/8"`` are one figure each. A unit is looked for
only right after a figure, so a size may still be called ``n`` or ``g``.
"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass
from typing import Literal

from tommybar.design.quantities import UNITS, Dims
from tommybar.refusals import Complaint, Refusal, nearest

LONGEST = 200


@dataclass(frozen=True)
class Token:
    """One piece: its kind, its text, its column (1 is the first), and a figure's value in house units."""

    kind: Literal["figure", "name", "sign", "end"]
    text: str
    column: int
    value: float = 0.0
    dims: Dims | None = None  # None: bare
    fraction: bool = False


def wrong(column: int, what: str, remedy: str = "") -> Refusal:
    """A refusal at a column of the expression."""
    return Refusal([Complaint(what, remedy, column=column)])


_NUMBER = r"(?:[0-9]+(?:\.[0-9]*)?|\.[0-9]+)(?:[eE][-+]?[0-9]+)?"
_UNIT = "|".join(re.escape(unit) for unit in sorted(UNITS, key=len, reverse=True))
_UNIT_AFTER = rf"(?P<unit>{_UNIT})(?![A-Za-z0-9_])"
_MIXED = re.compile(rf"(?P<whole>[0-9]+)\s+(?P<top>[0-9]+)\s*/\s*(?P<bottom>[0-9]+)(?:\s*{_UNIT_AFTER})?")
_FRACTION = re.compile(rf"(?P<top>[0-9]+)\s*/\s*(?P<bottom>[0-9]+)\s*{_UNIT_AFTER}")
_PLAIN = re.compile(rf"(?P<number>{_NUMBER})(?:\s*{_UNIT_AFTER})?")
_HYPHEN = re.compile(rf"[0-9]+-[0-9]+/[0-9]+\s*{_UNIT_AFTER}")
_NAME = re.compile(r"[A-Za-z_][A-Za-z0-9_]*")
_SIGNS = "+-*/(),"


def cut(text: str) -> list[Token]:
    """The tokens of ``text``, the last one of kind "end".

    >>> [(one.text, one.value) for one in cut("2 * 1 3/8 in")]
    [('2', 2.0), ('*', 0.0), ('1 3/8 in', 34.925), ('', 0.0)]
    """
    if len(text) > LONGEST:
        raise wrong(1, f"The expression has {len(text)} characters; at most {LONGEST}.", "Name a part of it.")
    tokens: list[Token] = []
    at = 0
    while at < len(text):
        if text[at].isspace():
            at += 1
        elif text[at] in "0123456789.":
            token, at = _figure(text, at)
            tokens.append(token)
        elif found := _NAME.match(text, at):
            at = found.end()
            tokens.append(Token("name", found.group(), found.start() + 1))
        elif text.startswith(("**", "^"), at):
            raise wrong(at + 1, "Powers are not read.", "Write the product out: a * a.")
        elif text[at] in _SIGNS:
            tokens.append(Token("sign", text[at], at + 1))
            at += 1
        else:
            raise wrong(
                at + 1,
                f'The character "{text[at]}" is not read.',
                "Figures, names, + - * / ( ) may stand here.",
            )
    tokens.append(Token("end", "", len(text) + 1))
    return tokens


def _figure(text: str, at: int) -> tuple[Token, int]:
    """The figure that begins at ``at``, and where it ends."""
    if _HYPHEN.match(text, at):
        raise wrong(
            at + 1, f'"{text[at:].strip()}" could be a difference or a mixed number.', "Write 1 3/8 in."
        )
    found = _MIXED.match(text, at) or _FRACTION.match(text, at) or _PLAIN.match(text, at)
    if not found:
        raise wrong(at + 1, "A point stands here without figures.", "Write 0.5.")
    parts = found.groupdict()
    if "bottom" in parts:
        if int(parts["bottom"]) == 0:
            raise wrong(at + 1, f'"{found.group()}" divides by nought.', "Give the fraction in full.")
        value = int(parts.get("whole") or 0) + int(parts["top"]) / int(parts["bottom"])
    else:
        value = float(parts["number"])
    dims: Dims | None = None
    if parts["unit"]:
        scale, dims = UNITS[parts["unit"]]
        value *= scale
    if not math.isfinite(value):
        raise wrong(
            at + 1, f'"{found.group()[:20]}" is not a finite figure.', "Give a figure of the workshop."
        )
    end = found.end()
    _refuse_after_figure(text, end, dims)
    return Token("figure", found.group(), at + 1, value, dims, "bottom" in parts), end


def _refuse_after_figure(text: str, end: int, dims: Dims | None) -> None:
    """Refuse a word or figure that follows a figure without a sign between them."""
    rest = text[end:]
    after = rest.lstrip()
    column = end + len(rest) - len(after) + 1
    if not after or after[0] in _SIGNS + "^":
        return
    if word := re.match(r"[A-Za-z_/°\"]+", after):
        if dims is None:
            near = (
                nearest(word.group(), UNITS)
                or "Units are mm, cm, m, um, in, thou, deg, rev/min, N, W, g, kg, s."
            )
            raise wrong(column, f'"{word.group()}" is no unit that is read here.', near)
        raise wrong(column, f'"{word.group()}" follows a figure that has its unit.', "A sign is missing.")
    if after[0] in "0123456789.":
        raise wrong(column, "Two figures stand side by side.", "A sign is missing between them.")
