"""Paper and projection of drawings: sizes, the side of the end view, the next larger paper, what is refused."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from tests.pack.handmade import DESIGN, IMPRINT, WHEEL
from tests.pack.turned.vocabulary import VOCABULARY

from tommybar.design.model import Part
from tommybar.pack.drawing import part_drawing
from tommybar.pack.marks import plain_marks
from tommybar.pack.paper import mass_words
from tommybar.pack.sheet import Arc, Sheet, Text
from tommybar.pack.units import Reader
from tommybar.refusals import Refusal
from tommybar.shapes.features import Cylinder, Dim, TurnedShape

SIZES = {  # ISO 216, and ANSI/ASME Y14.1 sizes A and B in millimetres
    "A4": (297.0, 210.0),
    "A3": (420.0, 297.0),
    "Letter": (11 * 25.4, 8.5 * 25.4),
    "Tabloid": (17 * 25.4, 11 * 25.4),
}


def rim(sheet: Sheet) -> Arc:
    """The largest circle, that of the view along the axis."""
    arcs = [one for one in sheet.marks if isinstance(one, Arc) and one.kind == "thick"]
    return max(arcs, key=lambda one: one.radius)


def figure_of(sheet: Sheet, words: str) -> Text:
    """The text that begins with the words."""
    return next(
        one for one in plain_marks(sheet.marks) if isinstance(one, Text) and one.words.startswith(words)
    )


@pytest.mark.parametrize("paper", SIZES)
def test_a_sheet_has_the_size_of_its_paper_and_says_it(paper: str) -> None:
    """Width and height to a hundredth of a millimetre; the title block names the paper."""
    sheet = part_drawing(WHEEL, DESIGN, replace(IMPRINT, paper=paper))  # type: ignore[arg-type]

    assert (sheet.width, sheet.height) == pytest.approx(SIZES[paper], abs=0.01)
    assert figure_of(sheet, paper).words == paper


def test_the_view_from_face_a_stands_right_in_first_angle_and_left_in_third() -> None:
    """ISO 5456-2: the view from the left is drawn right of the front view in first angle, left in third."""
    first = part_drawing(WHEEL, DESIGN, IMPRINT)
    third = part_drawing(WHEEL, DESIGN, replace(IMPRINT, angle="third"))

    assert rim(first).centre[0] > figure_of(first, "Ø90").at[0]
    assert rim(third).centre[0] < figure_of(third, "Ø90").at[0]


def test_what_has_no_room_on_a4_is_drawn_on_a3_and_says_so() -> None:
    """Thirty lands with limits want more room than A4 has at any scale."""
    lands = tuple(
        Cylinder(f"land_{n}", Dim(20.0 + n % 3, "", "h7", 19.9 + n % 3, 20.0 + n % 3), 6.0 * n, 6.0 * (n + 1))
        for n in range(30)
    )
    sheet = part_drawing(
        Part("many", "turned", "mild steel", 1, TurnedShape(Dim(180.0), lands)), DESIGN, IMPRINT
    )

    assert sheet.width == 420.0
    assert figure_of(sheet, "A3").words == "A3"


def test_an_unknown_paper_or_projection_is_refused_with_those_that_are_known() -> None:
    """The words name the wish and the four papers, the two angles."""
    with pytest.raises(Refusal, match=re.escape('The paper is "A5"; it must be A4, A3, Letter, Tabloid.')):
        replace(IMPRINT, paper="A5")  # type: ignore[arg-type]
    with pytest.raises(Refusal, match='The angle of projection is "second"; it must be first, third'):
        replace(IMPRINT, angle="second")  # type: ignore[arg-type]


def test_a_mass_is_said_in_the_units_of_the_reader() -> None:
    """One ounce is 28.349523125 g by definition."""
    assert mass_words(28.349523125, Reader("in")) == "1 oz"
    assert mass_words(16 * 28.349523125, Reader("in")) == "1 lb"
    assert mass_words(0.5, Reader()) == "0.5 g"


def test_every_sheet_is_drawn_on_every_paper() -> None:
    """Also on A3 and Tabloid no part is refused, and the scale is never smaller than on A4."""
    for part in VOCABULARY:
        small = part_drawing(part, DESIGN, IMPRINT).scale
        for paper in ("A3", "Tabloid"):
            assert part_drawing(part, DESIGN, replace(IMPRINT, paper=paper)).scale >= small  # type: ignore[arg-type]
