"""The drawing that is edited: the sheet of a part with every dimension a place to touch."""

from __future__ import annotations

import re
from dataclasses import dataclass
from html import escape

from tommybar.design.written_figures import WrittenFigure
from tommybar.pack.sheet import Dimension, Sheet
from tommybar.pack.svg import svg_text

TOUCH = 8.5  # least height of a place to touch [mm on the sheet]
ROOM = 2.0  # round the words [mm]
ROUND = ("dia", "thread", "inside", "outside", "floor", "circle", "cone")


@dataclass(frozen=True)
class Touch:
    """One dimension of the sheet and the entries of the file that may make it."""

    words: str
    box: tuple[float, float, float, float]
    figures: tuple[WrittenFigure, ...]


def touches(sheet: Sheet, figures: tuple[WrittenFigure, ...]) -> tuple[Touch, ...]:
    """Every dimension of a sheet, in the order in which they are drawn."""
    found = []
    for one in sheet.marks:
        if isinstance(one, Dimension) and one.words:
            boxes = [words.box for words in one.words]
            box = (
                min(b[0] for b in boxes) - ROOM,
                min(b[1] for b in boxes) - ROOM,
                max(b[2] for b in boxes) + ROOM,
                max(b[3] for b in boxes) + ROOM,
            )
            words = " ".join(words.words for words in one.words)
            found.append(Touch(words, box, makers(one, figures)))
    return tuple(found)


def makers(one: Dimension, figures: tuple[WrittenFigure, ...]) -> tuple[WrittenFigure, ...]:
    """The entries whose value a dimension shows; of a length also the land that ends there."""
    across = one.diameter or one.words[0].words.startswith("M")
    same = [
        figure
        for figure in figures
        if figure.value is not None and (figure.key in ROUND) == across and _same(figure.value, one.value)
    ]
    if not across:
        same += [figure for figure, end in land_ends(figures) if _same(end, one.value) and figure not in same]
    return tuple(same)


def _same(one: float, other: float) -> bool:
    return abs(one - other) < 2e-3


def land_ends(figures: tuple[WrittenFigure, ...]) -> list[tuple[WrittenFigure, float]]:
    """Each land's length with the distance from face A at which it ends, as far as lengths are written."""
    ends, at = [], 0.0
    for figure in figures:
        if figure.key == "long" and "outside" in figure.place and figure.value is not None:
            at += figure.value
            ends.append((figure, at))
    return ends


def inline_svg(text: str) -> str:
    """A sheet's SVG for inside a page: its style is the page's, its size the page's width."""
    text = re.sub(r"<style>.*?</style>", "", text, count=1)
    return re.sub(
        r' width="[0-9.]+mm" height="[0-9.]+mm"', ' class="sheet-drawing" role="group"', text, count=1
    )


def touchable_svg(sheet: Sheet, found: tuple[Touch, ...], address: str, chosen: int) -> str:
    """The sheet as SVG for inside a page, a link over every dimension that an entry makes."""
    text = inline_svg(svg_text(sheet))
    links = []
    for number, one in enumerate(found):
        if not one.figures:
            continue
        left, top, right, bottom = one.box
        more = max(0.0, TOUCH - (bottom - top)) / 2
        kind = "touch chosen" if number == chosen else "touch"
        links.append(
            f'<a href="{escape(address)}?at={number}#edit" aria-label="{escape(one.words)}, change it">'
            f'<rect class="{kind}" x="{left:.2f}" y="{top - more:.2f}" width="{right - left:.2f}" '
            f'height="{bottom - top + 2 * more:.2f}" rx="1"/></a>'
        )
    return text.replace("</svg>", "".join(links) + "</svg>")
