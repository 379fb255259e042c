"""Sheets of sheet metal, rings, springs and wire: figures worked out by hand stand on them, and nothing clashes."""

from __future__ import annotations

import math
from dataclasses import replace
from itertools import pairwise

import pytest

from tommybar.design.model import Part
from tommybar.pack.bent.folded import folded
from tommybar.pack.drawing import part_drawing
from tommybar.pack.sheet import Angular, Dimension, Line, Radial, Sheet
from tommybar.pack.units import Reader
from tommybar.shapes.bent import Bend, RolledRing, SheetShape, SpringShape, WireShape
from tommybar.shapes.features import Dim, PlateHole

from ..handmade import DESIGN, IMPRINT
from ..layout import LINES, clashes, texts

LETTER = replace(IMPRINT, paper="Letter", angle="third", reader=Reader("in"))
# legs 20, 30, 15 outside of 2 mm sheet, two right angles on R3: setback 5 mm a side, allowance pi/2 (3 + 0.44 x 2)
ALLOWED = math.pi / 2 * 3.88
FLATS = (15.0, 20.0, 10.0)
BRACKET = Part(
    "bracket",
    "sheet",
    "mild steel",
    1,
    SheetShape(
        Dim(sum(FLATS) + 2 * ALLOWED),
        Dim(24.0),
        Dim(2.0),
        holes=(PlateHole("bolt", "top", 8.0, 12.0, Dim(4.3)),),
        bends=(Bend("first", FLATS[0], 90.0, 3.0), Bend("second", FLATS[0] + ALLOWED + FLATS[1], -90.0, 3.0)),
        legs=(20.0, 30.0, 15.0),
    ),
)
HOOP = Part("hoop", "sheet", "brass", 1, RolledRing(Dim(40.0), 6.0, 1.5, gap=1.0, joint="soldered"))
SPRING = Part(
    "spring", "wire", "spring steel", 1, SpringShape("compression", 1.0, Dim(10.0), 6.0, 8.0, 25.0, "ground")
)
HOOK = Part(
    "hook", "wire", "mild steel", 1, WireShape(Dim(3.0), (20.0, 30.0, 12.0), ((4.0, 90.0), (6.0, -60.0)))
)
PARTS = (BRACKET, HOOP, SPRING, HOOK)


def drawn_values(part: Part) -> list[float]:
    """What the dimensions of a sheet measure."""
    sheet = part_drawing(part, DESIGN, IMPRINT)
    return sorted(one.value for one in sheet.marks if isinstance(one, Dimension))


def said(part: Part) -> list[str]:
    """All words of a sheet."""
    return [one.words for one in texts(part_drawing(part, DESIGN, IMPRINT))]


@pytest.mark.parametrize("imprint", [IMPRINT, LETTER], ids=["A4 mm", "Letter inch"])
@pytest.mark.parametrize("part", PARTS, ids=lambda part: part.name)
def test_no_words_lie_on_words_or_under_a_line(part: Part, imprint: object) -> None:
    """Measured by the boxes of all texts."""
    sheet: Sheet = part_drawing(part, DESIGN, imprint)  # type: ignore[arg-type]

    assert clashes(sheet, LINES) == []


def test_the_blank_has_its_developed_length_and_its_bend_lines() -> None:
    """15 + 20 + 10 + 2 x 6.095 = 57.19 mm; the bend lines stand half an allowance into each bend."""
    words = said(BRACKET)
    sheet = part_drawing(BRACKET, DESIGN, IMPRINT)
    places = {(one.feature, one.size): one.figure for one in sheet.dimensions()}

    assert "57.19 developed" in words
    assert places["first", "x"] == f"{15 + ALLOWED / 2:.2f}"
    assert places["second", "x"] == f"{15 + ALLOWED + 20 + ALLOWED / 2:.2f}"
    assert f"bend 90° up, ({ALLOWED:.2f}) of the blank goes into it" in " ".join(words)
    assert any(one.startswith("bend 90° down,") for one in words)
    assert {15.0, 20.0, 24.0, 30.0} <= set(drawn_values(BRACKET))
    assert [one.value for one in sheet.marks if isinstance(one, Radial)] == [3.0, 3.0]
    lines = [
        one for one in sheet.marks if isinstance(one, Line) and one.kind == "thin" and len(one.points) == 2
    ]
    upright = [abs(b[1] - a[1]) for a, b in (one.points for one in lines) if abs(a[0] - b[0]) < 1e-9]
    assert sum(abs(long - 24.0 * sheet.scale) < 1e-6 for long in upright) == 2


def test_legs_are_measured_outside_to_the_face_of_the_next_one() -> None:
    """By hand: 20 along, 30 up, 15 along, 2 thick; under faces meet the outer tangents at (20, 0) and (18, 30)."""
    legs, folds = folded(BRACKET.shape)  # type: ignore[arg-type]

    assert legs[0].end == pytest.approx((15.0, 0.0))
    assert (legs[1].start, legs[1].end) == (pytest.approx((20.0, 5.0)), pytest.approx((20.0, 25.0)))
    assert legs[2].end == pytest.approx((33.0, 28.0))
    assert [one.centre for one in folds] == [pytest.approx((15.0, 5.0)), pytest.approx((23.0, 25.0))]


def test_a_bend_that_is_not_square_has_its_angle_drawn() -> None:
    """120 degrees: the radii to both ends of the bend stand at that angle; its legs are told in the table."""
    allowed = math.radians(120.0) * (3.0 + 0.44 * 2.0)
    bends = (Bend("over", 20.0, 120.0, 3.0),)
    shape = SheetShape(Dim(40.0 + allowed), Dim(20.0), Dim(2.0), bends=bends, legs=(28.66, 28.66))
    sheet = part_drawing(Part("clip", "sheet", "mild steel", 1, shape), DESIGN, IMPRINT)

    assert [one.value for one in sheet.marks if isinstance(one, Angular)] == [120.0]
    assert "outside, in order: 28.66, 28.66" in [one.words for one in texts(sheet)]
    assert clashes(sheet, LINES) == []


def test_a_ring_tells_its_cut_length_and_joint() -> None:
    """pi (40 + 1.5) - 1 = 129.376 mm."""
    words = said(HOOP)

    assert f"({math.pi * 41.5 - 1.0:.2f}) along the middle of the metal" in words
    assert "soldered , gap 1" not in words and "soldered, gap 1" in words
    assert "strip 1.5 thick" in words
    assert drawn_values(HOOP) == [6.0, 40.0]


def test_a_spring_is_told_as_it_is_wound() -> None:
    """Closed and ground: solid length is 8 coils of 1 mm."""
    words = said(SPRING)

    assert "6 active, 8 in all" in words
    assert "(solid 8)" in words
    assert drawn_values(SPRING) == [10.0, 25.0]
    assert "closed ends, ground square" in words
    assert "compression spring, wound right-handed" in words


def test_wire_is_told_leg_by_leg() -> None:
    """Cut length 62 + pi/2 x 5.5 + pi/3 x 7.5 = 78.493 mm along the middle."""
    words = said(HOOK)

    assert f"Ø3; cut ({62 + math.pi / 2 * 5.5 + math.pi / 3 * 7.5:.2f}) long" in words
    assert "60° to the right, inside R6" in words
    assert {"leg 1", "leg 2", "leg 3", "bend 1", "bend 2"} <= set(words)


@pytest.mark.parametrize("part", [BRACKET, HOOP, HOOK], ids=lambda part: part.name)
def test_the_signs_of_other_edges_stand_on_the_sheet(part: Part) -> None:
    """Both signs, outside and inside; a spring has no edges."""
    assert {"outside", "inside"} <= set(said(part))
    assert "outside" not in said(SPRING)


@pytest.mark.parametrize("dia", [6.0, 12.0])
def test_wire_is_drawn_full_size_with_its_names_beside_it(dia: float) -> None:
    """It is laid on its sheet as it is bent: 1:1 though twice the size has room, and no name lies within the wire."""
    arm = Part(
        "arm", "wire", "mild steel", 1, WireShape(Dim(dia), (60.0, 40.0, 20.0), ((12.0, 60.0), (12.0, -60.0)))
    )
    sheet = part_drawing(arm, DESIGN, IMPRINT)
    names = [one for one in texts(sheet) if one.words == "leg 1"]  # beside the wire, and in the table
    across = [
        y
        for one in sheet.marks
        if isinstance(one, Line)
        for (x, y), (u, v) in pairwise(one.points)
        if abs(y - v) < 1e-6 and abs(abs(x - u) - 60.0) < 0.01
    ]

    assert "1:1" in said(arm)
    assert len(across) >= 2  # both sides of the first leg, 60 long on the paper
    name = min(names, key=lambda one: abs(one.at[1] - across[0]))
    beside = min(across) - name.box[3], name.box[1] - max(across)
    assert max(beside) > 0.5
