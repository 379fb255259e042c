"""Sheets of plates: every feature is drawn and told, nothing lies on anything, files repeat."""

from __future__ import annotations

import io
from collections import Counter
from dataclasses import replace

import ezdxf
import pytest

from tommybar.design.joints import PatternRelation
from tommybar.design.model import Part
from tommybar.pack.drawing import part_drawing
from tommybar.pack.dxf import dxf_text
from tommybar.pack.imprint import Imprint, PaperName
from tommybar.pack.plates.pitch import circles_of
from tommybar.pack.plates.sheet import plate_drawing
from tommybar.pack.sheet import Angular, Arc, Dimension, Line, Radial, Sheet
from tommybar.pack.svg import svg_text
from tommybar.pack.units import Reader
from tommybar.refusals import Refusal
from tommybar.shapes.features import Dim, PlateHole, PlateShape

from ..handmade import BASE, DESIGN, IMPRINT, PILLAR
from ..layout import LINES, clashes, texts
from .handmade import BED, COLLAR, FLANGE, GUSSET, LINK, PLATES, SLIDE

LARGE = replace(IMPRINT, paper="A3")
LETTER = replace(IMPRINT, paper="Letter", angle="third", reader=Reader("in"))


def drawn(part: Part, imprint: Imprint = IMPRINT) -> Sheet:
    """The sheet of a plate."""
    return part_drawing(part, DESIGN, imprint)


@pytest.mark.parametrize("imprint", [IMPRINT, LETTER], ids=["A4 first mm", "Letter third inch"])
@pytest.mark.parametrize("part", PLATES, ids=lambda part: part.name)
def test_no_words_lie_on_words_or_under_a_line(part: Part, imprint: Imprint) -> None:
    """Measured by the boxes of all texts, over every feature of plates."""
    assert clashes(drawn(part, imprint), LINES) == []


def test_a_plain_plate_is_dimensioned_from_one_corner() -> None:
    """The pillar's places and overall sizes are the model's, all from x = 0 or y = 0 of the plan."""
    found = [one for one in drawn(PILLAR).marks if isinstance(one, Dimension)]
    along = sorted(one.value for one in found if one.along == "x")
    corner = {round(one.a[0], 3) for one in found if one.along == "x"}

    assert along == [8.0, 66.0, 81.0]
    assert len(corner) == 1
    assert sorted(one.value for one in found if one.along == "y") == [7.0, 10.0, 15.0, 23.0, 30.0]
    for one in found:
        measured = abs(one.b[0] - one.a[0]) if one.along == "x" else abs(one.b[1] - one.a[1])
        assert measured / drawn(PILLAR).scale == pytest.approx(one.value, abs=1e-9)


@pytest.mark.parametrize("part", [*PLATES, BASE, PILLAR], ids=lambda part: part.name)
def test_nothing_is_said_twice(part: Part) -> None:
    """Each size of each feature is printed once."""
    counts = Counter((one.feature, one.size) for one in drawn(part).dimensions())

    assert [key for key, count in counts.items() if count > 1] == []


def test_what_is_cut_is_told_in_the_words_of_the_trade() -> None:
    """Callouts of the slide block, each figure worked out by hand from how it is written in."""
    rows = {one.words for one in drawn(SLIDE).dimensions()}

    for words in (
        "Ø8 H7 (8.000–8.015) through",
        "2 × Ø5.5 through, counterbore Ø10 × 5.4 deep",
        "6 wide × 30 long overall, half-round ends, 4 deep; to its middle",
        "24 × 10, corners R3, 6 deep; to its middle",
        "along the left side: 8 wide × 5 deep from the bottom",
        "90° included, 6 wide at the face, right across",
        "all round the top face: 0.5 × 45°",
    ):
        assert words in rows, words
    assert any(row.startswith("M5 thread 12 deep, drill Ø4.2 ×") for row in rows)  # ISO 2306: 4.2 for M5


@pytest.mark.parametrize(
    ("part", "words"),
    [
        (GUSSET, "2 × Ø4 through, countersink Ø8 × 90°"),
        (COLLAR, "Ø50"),
        (BED, "slot, width at the face; measure over pins"),
        (LINK, "R12"),
    ],
    ids=lambda one: getattr(one, "name", None),
)
def test_outlines_and_grooves_are_told(part: Part, words: str) -> None:
    """One row of each other plate."""
    assert words in {one.words for one in drawn(part).dimensions()}


def test_places_of_a_link_count_from_its_first_round_end() -> None:
    """Both holes lie on the centres of the round ends, 50 mm apart; one on the datum needs no figure."""
    found = {(one.feature, one.size): one.figure for one in drawn(LINK).dimensions()}

    assert ("big", "x") not in found
    assert found["small", "x"] == found["end_2", "x"] == "50"
    assert [one.value for one in drawn(LINK).marks if isinstance(one, Dimension)].count(50.0) == 1


def test_a_true_position_gets_its_frame_and_three_datums() -> None:
    """The cells of the frame and the letters of the datums stand on the sheet."""
    words = [one.words for one in texts(drawn(SLIDE))]

    assert "Ø0.1" in words
    assert all(words.count(letter) >= 2 for letter in "ABC")  # in the frame and on the view


def test_a_section_stands_where_something_is_blind_and_a_view_of_the_end_where_it_is_drilled() -> None:
    """The slide block has both; a plate with plain holes has neither."""
    words = [one.words for one in texts(drawn(SLIDE))]

    assert "X–X" in words
    assert words.count("X") == 2
    assert "F" in words
    assert "X–X" not in [one.words for one in texts(drawn(PILLAR))]


def test_angles_are_drawn_true() -> None:
    """The lean of a hole in the section, 20 degrees, and the vee where its profile is seen, 90 degrees."""
    assert sorted(one.value for one in drawn(SLIDE, LARGE).marks if isinstance(one, Angular)) == [20.0, 90.0]


def test_what_is_cut_is_dimensioned_in_the_views() -> None:
    """Slot 30 x 6 x 4, pocket 24 x 10 x 6 with R3, step 8 x 5, vee 6 wide: as they are written in by hand."""
    sheet = drawn(SLIDE, LARGE)
    given = sorted(one.value for one in sheet.marks if isinstance(one, Dimension))

    for value in (30.0, 6.0, 4.0, 24.0, 10.0, 8.0, 5.0, 28.0, 44.0):
        assert value in given, value
    assert [one.value for one in sheet.marks if isinstance(one, Radial)] == [3.0]
    assert "0.5 × 45°, all round" in [one.words for one in texts(sheet)]
    assert not any("6 wide" in one.words or "24 × 10" in one.words for one in texts(sheet))


def test_depths_stand_in_sections_through_what_is_deep() -> None:
    """The pocket lies at y = 10 and the slot at y = 44: no one section goes through both."""
    words = [one.words for one in texts(drawn(SLIDE, LARGE))]

    assert {"X–X", "Y–Y"} <= set(words)


def test_where_the_views_are_crowded_the_table_tells_it() -> None:
    """On A4 the block's views have no room for all its figures at a scale that can be read."""
    words = {one.words for one in drawn(SLIDE).dimensions()}

    assert "6 wide × 30 long overall, half-round ends, 4 deep; to its middle" in words


@pytest.mark.parametrize("imprint", [LARGE, LETTER], ids=["A3 mm", "Letter inch"])
@pytest.mark.parametrize("part", PLATES, ids=lambda part: part.name)
def test_every_dimension_measures_what_it_says(part: Part, imprint: Imprint) -> None:
    """The distance between its points on paper, over the scale, is the value of the model."""
    sheet = drawn(part, imprint)
    found = [one for one in sheet.marks if isinstance(one, Dimension)]

    assert found
    for one in found:
        measured = abs(one.b[0] - one.a[0]) if one.along == "x" else abs(one.b[1] - one.a[1])
        assert measured / sheet.scale == pytest.approx(one.value, abs=1e-6), one.words[0].words


def test_holes_on_a_circle_are_told_by_the_circle() -> None:
    """Five on Ø36 about (40, 25), the first at 18 degrees: circle, middle and angle, and no place of a hole."""
    sheet = drawn(FLANGE)
    found = {(one.feature, one.size): one.figure for one in sheet.dimensions()}
    drawn_circles = [one for one in sheet.marks if isinstance(one, Arc) and one.kind == "chain"]

    assert found["bolt_1", "circle"] == "36"
    assert (found["bolt_1 circle", "x"], found["bolt_1 circle", "y"]) == ("40", "25")
    assert [one.value for one in sheet.marks if isinstance(one, Angular)] == [18.0]
    assert ("bolt_1", "x") not in found
    assert [round(one.radius / sheet.scale, 6) for one in drawn_circles] == [18.0]
    assert "5 × Ø4 through, equally spaced on the circle" in [one.words for one in sheet.dimensions()]


def test_four_holes_at_the_corners_of_a_square_are_measured_along_its_edges() -> None:
    """They stand on a circle too, but a builder sets them out along the edges."""
    holes = tuple(
        PlateHole(f"hole_{n}", "top", x, y, Dim(4.0))
        for n, (x, y) in enumerate([(10.0, 10.0), (30.0, 10.0), (10.0, 30.0), (30.0, 30.0)], 1)
    )
    part = Part("plate", "plate", "steel", 1, PlateShape(Dim(40.0), Dim(40.0), Dim(5.0), holes=holes))

    assert circles_of(part.shape) == ()  # type: ignore[arg-type]
    assert sorted(one.value for one in drawn(part).marks if isinstance(one, Dimension)) == [
        5.0, 10.0, 10.0, 30.0, 30.0, 40.0, 40.0,
    ]  # fmt: skip


def test_round_ends_and_holes_of_the_plan_are_true_arcs() -> None:
    """R12 and R8 of the link at 2:1, and both bores as whole circles."""
    sheet = drawn(LINK)
    arcs = [one for one in sheet.marks if isinstance(one, Arc) and one.kind == "thick"]
    radii = {round(one.radius / sheet.scale, 6) for one in arcs}

    assert {12.0, 8.0} <= radii
    assert {5.00375, 3.0} <= {
        round(one.radius / sheet.scale, 6) for one in arcs if one.end - one.start == 360.0
    }


def test_first_and_third_angle_change_sides() -> None:
    """The view from the front stands above the plan in first angle and below it in third."""
    first = [one for one in drawn(PILLAR).marks if isinstance(one, Dimension)]
    third = [
        one for one in drawn(PILLAR, replace(IMPRINT, angle="third")).marks if isinstance(one, Dimension)
    ]

    def height(found: list[Dimension]) -> float:
        return next(one.a[1] for one in found if one.value == 10.0)

    def corner(found: list[Dimension]) -> float:
        return next(one.a[1] for one in found if one.value == 81.0)

    assert height(first) < corner(first)
    assert height(third) > corner(third)


def test_metal_in_front_hides_a_blind_hole() -> None:
    """A block with one blind hole in its front: seen from above, its two sides and its end are dashed."""
    shape = PlateShape(
        Dim(30.0),
        Dim(20.0),
        Dim(10.0),
        holes=(PlateHole("hole", "front", 15.0, 5.0, Dim(6.0), 8.0, bottom="flat"),),
    )
    marks = plate_drawing(Part("block", "plate", "steel", 1, shape), DESIGN, IMPRINT).marks
    dashed = [one for one in marks if isinstance(one, Line) and one.kind == "dashed"]

    assert len(dashed) == 1  # one run: up a side, across the floor, down the other
    assert len(dashed[0].points) == 4


@pytest.mark.parametrize("part", [SLIDE, COLLAR], ids=lambda part: part.name)
def test_files_repeat_and_the_drawing_file_is_sound(part: Part) -> None:
    """SVG and DXF byte for byte; DXF without errors, its dimensions measuring what the model says."""
    first, second = drawn(part), drawn(part)

    assert svg_text(first) == svg_text(second)
    assert dxf_text(first) == dxf_text(second)
    document = ezdxf.read(io.StringIO(dxf_text(first)))
    assert not document.audit().errors


@pytest.mark.parametrize(("paper", "remedy"), [("A4", "Print it on A3"), ("A3", "Divide it")])
def test_what_has_no_room_is_refused_with_a_remedy(paper: PaperName, remedy: str) -> None:
    """A bar 12 m long at 1:20 is 600 mm on paper; who has A3 already is not told to take it."""
    shape = PlateShape(Dim(12000.0), Dim(40.0), Dim(10.0))

    with pytest.raises(Refusal, match=rf"12000 mm long; at 1:20 .* room on {paper}. {remedy}"):
        plate_drawing(Part("bar", "plate", "steel", 1, shape), DESIGN, replace(IMPRINT, paper=paper))


def test_holes_that_must_meet_another_part_have_the_zone_of_their_pattern() -> None:
    """Both patterns get a zone of 0.2; spotted through, only the first has one and the second says through what."""
    names = tuple(f"flange.bolt_{n}" for n in range(1, 6))
    others = tuple(f"cover.bolt_{n}" for n in range(1, 6))
    both = replace(DESIGN, patterns=(PatternRelation(others, names, 0.4, 0.2),))
    through = replace(DESIGN, patterns=(PatternRelation(others, names, 0.4, 0.2, True),))

    sheet = part_drawing(FLANGE, both, IMPRINT)
    assert [one.figure for one in sheet.dimensions() if one.kind == "position"] == ["0.2"]
    assert "Ø0.2" in [one.words for one in texts(sheet)]
    assert clashes(sheet, LINES) == []
    sheet = part_drawing(FLANGE, through, IMPRINT)
    assert not [one for one in sheet.dimensions() if one.kind == "position"]
    words = " ".join(one.words for one in texts(sheet))
    assert "Spot bolt 1, bolt 2, bolt 3, bolt 4, bolt 5 through cover bolt 1," in words
