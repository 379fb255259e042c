"""A sheet as SVG: real text, one unit a millimetre, the same bytes for the same sheet."""

from __future__ import annotations

import math
from html import escape

from tommybar.pack.hatch import hatch_lines
from tommybar.pack.lettering import FAMILY, printable
from tommybar.pack.marks import dimension_marks
from tommybar.pack.sheet import (
    PATTERNS,
    WIDTHS,
    Angular,
    Arc,
    Area,
    Dimension,
    Fill,
    Kind,
    Line,
    Mark,
    Radial,
    Sheet,
    Text,
)

FILLS: dict[Fill, str] = {
    "none": "none",
    "hatch": "none",
    "hatch2": "none",
    "light": "#e6e6e4",
    "grey": "#c2c2be",
    "dark": "#6e6e6a",
    "black": "#000",
    "white": "#fff",
}
TONES = {"black": "#000", "white": "#fff", "grey": "#444"}


def number(value: float) -> str:
    """A figure for the file, to a hundredth of a millimetre.

    Examples
    --------
    >>> number(12.5), number(-0.001), number(3.0)
    ('12.5', '0', '3')
    """
    words = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if words in ("-0", "") else words


def _way(points: tuple[tuple[float, float], ...], closed: bool) -> str:
    words = "M" + "L".join(f"{number(x)} {number(y)}" for x, y in points)
    return words + "Z" if closed else words


def _pen(kind: Kind | None) -> str:
    return f' class="{kind}"' if kind else ' stroke="none"'


def _arc(one: Arc) -> str:
    x, y = one.centre
    if abs(one.end - one.start) >= 360.0:
        place = f'cx="{number(x)}" cy="{number(y)}" r="{number(one.radius)}"'
        return f'<circle {place} fill="none"{_pen(one.kind)}/>'
    ends = [
        (x + one.radius * math.cos(math.radians(a)), y - one.radius * math.sin(math.radians(a)))
        for a in (one.start, one.end)
    ]
    wide = 1 if (one.end - one.start) % 360 > 180 else 0
    r = number(one.radius)
    (x1, y1), (x2, y2) = ends
    way = f"M{number(x1)} {number(y1)}A{r} {r} 0 {wide} 0 {number(x2)} {number(y2)}"
    return f'<path d="{way}" fill="none"{_pen(one.kind)}/>'


def _area(one: Area) -> str:
    way = "".join(_way(ring, True) for ring in one.rings)
    pieces = []
    if one.fill in ("hatch", "hatch2"):
        lines = hatch_lines(one.rings, one.spacing, 45.0 if one.fill == "hatch" else -45.0)
        pieces.append(f'<path d="{"".join(_way(line, False) for line in lines)}" fill="none" class="hatch"/>')
    pieces.append(f'<path d="{way}" fill="{FILLS[one.fill]}" fill-rule="evenodd"{_pen(one.kind)}/>')
    return "".join(pieces)


def _text(one: Text) -> str:
    x, y = one.at
    weight = ' font-weight="700"' if one.bold else ""
    anchor = f' text-anchor="{one.anchor}"' if one.anchor != "start" else ""
    turn = f' transform="rotate(-90 {number(x)} {number(y)})"' if one.turned else ""
    tone = f' fill="{TONES[one.tone]}"' if one.tone != "black" else ""
    return (
        f'<text x="{number(x)}" y="{number(y)}" font-size="{number(one.size)}"{weight}{anchor}{turn}{tone}>'
        f"{escape(printable(one.words), quote=False)}</text>"
    )


def _mark(one: Mark) -> str:
    if isinstance(one, Text):
        return _text(one)
    if isinstance(one, Line):
        return f'<path d="{_way(one.points, one.closed)}" fill="none"{_pen(one.kind)}/>'
    if isinstance(one, Arc):
        return _arc(one)
    if isinstance(one, Area):
        return _area(one)
    if isinstance(one, Dimension | Radial | Angular):
        return "<g>" + "".join(_mark(mark) for mark in dimension_marks(one)) + "</g>"
    raise TypeError(f"A sheet has no mark of the kind {type(one).__name__}.")


def _style() -> str:
    rules = []
    for kind, width in WIDTHS.items():
        pattern = PATTERNS.get(kind)
        dashes = f";stroke-dasharray:{' '.join(map(str, pattern))}" if pattern else ""
        rules.append(f".{kind}{{stroke:#000;stroke-width:{width}{dashes}}}")
    return "".join(rules)


def svg_text(sheet: Sheet) -> str:
    """The whole SVG file as text."""
    w, h = number(sheet.width), number(sheet.height)
    head = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{w}mm" height="{h}mm" viewBox="0 0 {w} {h}" '
        f'font-family="{FAMILY}" stroke-linecap="round" stroke-linejoin="round">'
        f"<style>{_style()}</style>"
        f'<rect width="{w}" height="{h}" fill="#fff"/>'
    )
    return head + "\n".join(_mark(mark) for mark in sheet.marks) + "</svg>\n"
