"""The signs of undefined edges, and the ends of bores and shafts that are no plain cylinder."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.pack.handmade import DESIGN, IMPRINT
from tests.pack.layout import LINES, clashes, texts

from tommybar.design.model import Part
from tommybar.pack.audit.comparing import audited
from tommybar.pack.drawing import part_drawing
from tommybar.pack.sheet import Angular, Arc, Line, Text
from tommybar.pack.turned.edges import edge_rows, edge_sign
from tommybar.pack.units import Reader
from tommybar.shapes.features import Bore, CentreHole, Cup, Cylinder, Dim, TurnedShape


def test_the_sign_of_an_edge_is_a_right_angle_with_its_figure_in_it() -> None:
    """An upright arm and a level one from one corner, the leader from it down to the left; the words lie within."""
    marks, right = edge_sign(10.0, 20.0, "–0.2", 4.0)
    leader, arms, figure = marks

    assert isinstance(arms, Line)
    assert isinstance(leader, Line)
    assert isinstance(figure, Text)
    (x0, y0), corner, (x2, y2) = arms.points
    assert corner == (10.0, 20.0) == leader.points[1]
    assert (x0, y2, x2) == (corner[0], corner[1], right)
    assert y0 < corner[1]
    assert leader.points[0][0] < corner[0]
    assert leader.points[0][1] > corner[1]
    left, _, end, bottom = figure.box
    assert corner[0] < left < end < right
    assert y0 < bottom < corner[1]


@pytest.mark.parametrize(("unit", "figure"), [("mm", "0.2"), ("in", "0.008")])
@pytest.mark.parametrize("width", [65.0, 180.0])
def test_outside_is_taken_off_and_inside_left_on_in_the_unit_of_the_reader(
    unit: str, figure: str, width: float
) -> None:
    """0.2 mm is 0.0079 in; nothing reaches over the width of the notes."""
    marks, _ = edge_rows(0.0, width, 4.0, Reader(unit))  # type: ignore[arg-type]
    words = [one.words for one in marks if isinstance(one, Text)]

    assert words == ["– Other edges ISO 13715", f"–{figure}", "outside", f"+{figure}", "inside"]
    assert max(one.box[2] for one in marks if isinstance(one, Text)) <= width


def odd_ends() -> Part:
    """A ball-bottomed bore, a cup of 120 degrees, and on another part centre holes of forms B and R."""
    shape = TurnedShape(
        Dim(40.0),
        (Cylinder("body", Dim(24.0), 0, 40),),
        bores=(Bore("pocket", Dim(10.0), "A", 12.0, False, "ball"),),
        cups=(Cup("seat", "B", 8.0, 120.0),),
    )
    return Part("ends", "turned", "brass", 1, shape)


@pytest.mark.parametrize("unit", ["mm", "in"])
def test_a_round_bottom_and_a_cup_of_another_angle_are_drawn_and_said(unit: str) -> None:
    """An arc of the ball's radius about the end of the cylinder; the radius follows, in brackets; the angle has its arc."""
    sheet = part_drawing(odd_ends(), DESIGN, replace(IMPRINT, reader=Reader(unit)))  # type: ignore[arg-type]
    balls = [one for one in sheet.marks if isinstance(one, Arc) and one.kind == "thick"]
    words = [one.words for one in texts(sheet)]
    (cup,) = [one for one in sheet.marks if isinstance(one, Angular)]

    assert any(one.radius == pytest.approx(5.0 * sheet.scale) for one in balls)
    assert f"round bottom (R{'5' if unit == 'mm' else '0.197'})" in words
    assert (cup.pointed, cup.value) == (False, 120.0)
    assert audited(odd_ends(), sheet).faults == ()
    assert clashes(sheet, LINES) == []


def test_centre_holes_of_forms_b_and_r_are_named_by_pilot_and_mouth() -> None:
    """ISO 6411: form, pilot, mouth; 2.5 has a mouth of 8 in form B and of 5.3 in form R (from memory)."""
    shape = TurnedShape(
        Dim(60.0),
        (Cylinder("body", Dim(20.0), 0, 60),),
        centres=(CentreHole("b", "A", "B", 2.5, "must"), CentreHole("r", "B", "R", 2.5, "may")),
    )
    part = Part("mandrel", "turned", "steel", 1, shape)
    sheet = part_drawing(part, DESIGN, IMPRINT)
    words = [one.words for one in texts(sheet)]

    assert "ISO 6411 – B 2.5 / 8" in words
    assert "ISO 6411 – R 2.5 / 5.3" in words
    assert audited(part, sheet).faults == ()
    assert clashes(sheet, LINES) == []
