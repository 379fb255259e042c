"""Templates: true to size on paper, both bars, and pages that come together."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tommybar.design.model import Part
from tommybar.pack.sheet import Line, Sheet
from tommybar.pack.template.sheet import FOOT, MARGIN, OVER, SIDE, pages_for, template_sheets
from tommybar.pack.units import Reader
from tommybar.shapes.features import Dim

from ..handmade import BASE, IMPRINT, PILLAR, SHAFT
from ..layout import LINES, clashes, texts
from ..plates.handmade import PLATES

LETTER = replace(IMPRINT, paper="Letter", reader=Reader("in"))
LONG = replace(BASE, name="long_bed", shape=replace(BASE.shape, length=Dim(430.0), width=Dim(180.0)))


def crosses(sheet: Sheet) -> list[tuple[float, float]]:
    """Where crosses of hole centres stand: the middles of level thin lines."""
    return sorted(
        (round((one.points[0][0] + one.points[1][0]) / 2, 3), round(one.points[0][1], 3))
        for one in sheet.marks
        if isinstance(one, Line) and one.kind == "thin" and len(one.points) == 2
        and one.points[0][1] == one.points[1][1]
    )  # fmt: skip


def marks_of(sheet: Sheet) -> list[tuple[float, float]]:
    """The middles of match marks: of the slanted lines."""
    ends = [
        one.points
        for one in sheet.marks
        if isinstance(one, Line) and one.kind == "rule" and len(one.points) == 2
    ]
    return [((a[0] + b[0]) / 2, (a[1] + b[1]) / 2) for a, b in ends if a[0] != b[0] and a[1] != b[1]]


@pytest.mark.parametrize("imprint", [IMPRINT, LETTER], ids=["A4 mm", "Letter inch"])
@pytest.mark.parametrize("part", [*PLATES, LONG], ids=lambda part: part.name)
def test_no_words_lie_on_words_or_under_a_line(part: Part, imprint: object) -> None:
    """Measured by the boxes of all texts."""
    for sheet in template_sheets(part, imprint):  # type: ignore[arg-type]
        assert clashes(sheet, LINES) == []


def test_holes_stand_apart_as_in_metal() -> None:
    """The pillar: foot holes 16 mm apart, the bore 58 mm along and 8 mm across from them, on paper too."""
    (sheet,) = template_sheets(PILLAR, IMPRINT)
    first, second, bore = crosses(sheet)

    assert second[1] - first[1] == pytest.approx(16.0, abs=1e-3)
    assert bore[0] - first[0] == pytest.approx(58.0, abs=1e-3)
    assert bore[1] - first[1] == pytest.approx(8.0, abs=1e-3)


def test_the_outline_is_drawn_at_its_size() -> None:
    """81 by 30 mm on paper."""
    (sheet,) = template_sheets(PILLAR, IMPRINT)
    ring = max((one.points for one in sheet.marks if isinstance(one, Line)), key=len)
    outline = next(
        one.points
        for one in sheet.marks
        if isinstance(one, Line) and one.kind == "rule" and len(one.points) == 5
    )

    assert len(ring) > 5
    assert max(x for x, _ in outline) - min(x for x, _ in outline) == pytest.approx(81.0, abs=1e-3)
    assert max(y for _, y in outline) - min(y for _, y in outline) == pytest.approx(30.0, abs=1e-3)


@pytest.mark.parametrize(("imprint", "long", "words"), [(IMPRINT, 50.0, "50 mm"), (LETTER, 50.8, "2 in")])
def test_a_bar_stands_both_ways(imprint: object, long: float, words: str) -> None:
    """One level and one upright, both as long as they say."""
    (sheet,) = template_sheets(PILLAR, imprint)  # type: ignore[arg-type]
    bars = [
        one.points
        for one in sheet.marks
        if isinstance(one, Line) and one.kind == "rule" and len(one.points) == 4
    ]
    level = [b[2][0] - b[1][0] for b in bars if b[1][1] == b[2][1]]
    upright = [b[1][1] - b[2][1] for b in bars if b[1][0] == b[2][0]]

    assert level == pytest.approx([long])
    assert upright == pytest.approx([long])
    assert [one.words for one in texts(sheet)].count(words) == 2
    assert any("Measure both bars" in one.words for one in texts(sheet))


def test_a_large_plate_takes_pages_whose_marks_meet() -> None:
    """430 x 180 on A4: two by two; every hole stands at its place, told from the marks that two pages share."""
    pages = template_sheets(LONG, IMPRINT)
    step_x = 297.0 - 2 * MARGIN - SIDE - OVER
    step_y = 210.0 - 2 * MARGIN - FOOT - OVER
    found: dict[str, list[tuple[float, float]]] = {}
    for n, page in enumerate(pages):
        for one in texts(page):
            if "." in one.words and one.words[0] in "cr" and one.words[1].isdigit():
                x, y = min(
                    marks_of(page), key=lambda spot: (spot[0] - one.at[0]) ** 2 + (spot[1] - one.at[1]) ** 2
                )
                found.setdefault(one.words, []).append((x + n % 2 * step_x, y - n // 2 * step_y))

    assert len(pages) == 4
    assert len(found) == 8
    for places in found.values():
        assert len(places) == 2
        assert places[0] == pytest.approx(places[1], abs=1e-3)


def test_pages_are_counted_with_their_overlap() -> None:
    """Two pages of 250 with 8 over reach 492; a hair more wants three."""
    assert pages_for(492.0, 250.0) == 2
    assert pages_for(492.1, 250.0) == 3
    assert pages_for(250.0, 250.0) == 1


def test_a_turned_part_has_no_template() -> None:
    """There is no face to glue paper on."""
    assert template_sheets(SHAFT, IMPRINT) == []
