"""Angles of cones, cups and of what stands round the axis: arcs between the right legs, and words where none has room."""

from __future__ import annotations

import io
import math
from dataclasses import replace

import ezdxf
import pytest
from tests.pack.handmade import DESIGN, IMPRINT
from tests.pack.layout import LINES, clashes, texts

from tommybar.design.model import Part
from tommybar.pack.audit.comparing import audited
from tommybar.pack.drawing import part_drawing
from tommybar.pack.dxf import dxf_text
from tommybar.pack.marks import dimension_marks
from tommybar.pack.sheet import Angular, Arc, Area, Sheet
from tommybar.pack.turned.clocking import clocked
from tommybar.shapes.features import Bore, CircleHoles, Cone, CrossHole, Cup, Cylinder, Dim, Land, TurnedShape


def drawn(shape: TurnedShape) -> Sheet:
    """The drawing of a part."""
    return part_drawing(Part("part", "turned", "brass", 1, shape), DESIGN, IMPRINT)


def arcs(sheet: Sheet) -> list[Angular]:
    """Angles that are drawn with an arc."""
    return [one for one in sheet.marks if isinstance(one, Angular) and not one.pointed]


def centre(small: float, large: float, long: float) -> TurnedShape:
    """A cone by one diameter, its length and its angle, on a shank."""
    lands: tuple[Land, ...] = (
        Cone("cone", 0, long, small, large, "D L a"),
        Cylinder("shank", Dim(20.0), long, long + 20),
    )
    return TurnedShape(Dim(long + 20.0), lands)


def test_the_half_angle_of_a_cone_is_measured_from_its_axis_to_its_side() -> None:
    """10 across at 0 and 20 at 10: the half angle is atan(5/10) = 26.565 degrees, its legs axis and side."""
    sheet = drawn(centre(10.0, 20.0, 10.0))
    (one,) = arcs(sheet)
    legs = [math.degrees(math.atan2(one.vertex[1] - p[1], p[0] - one.vertex[0])) for p in (one.a, one.b)]

    assert legs == pytest.approx([0.0, math.degrees(math.atan(0.5))], abs=1e-9)
    assert one.words[0].words == "26.565° half angle"
    assert math.dist(one.vertex, one.b) == pytest.approx(one.radius)
    assert audited(Part("part", "turned", "brass", 1, centre(10.0, 20.0, 10.0)), sheet).faults == ()


def test_an_angle_left_out_is_missed_by_the_audit() -> None:
    """Without the printed angle the cone cannot be built: its small end is said by nothing."""
    sheet = drawn(centre(10.0, 20.0, 10.0))
    part = Part("part", "turned", "brass", 1, centre(10.0, 20.0, 10.0))
    left = replace(sheet, printed=[one for one in sheet.printed if one.size != "half_angle"])

    assert ("missing", "cone") in {(one.kind, one.feature) for one in audited(part, left).faults}


def test_arrows_of_a_short_arc_stand_outside_of_it_and_point_inwards() -> None:
    """A slender cone: both heads lie outside the stretch between the legs, those of a wide one inside."""
    for shape, outside in ((centre(6.0, 8.0, 30.0), True), (centre(10.0, 20.0, 10.0), False)):
        (one,) = arcs(drawn(shape))
        x, y = one.vertex
        first, last = sorted(math.atan2(y - p[1], p[0] - x) for p in (one.a, one.b))
        heads = [mark.rings[0] for mark in dimension_marks(one) if isinstance(mark, Area)]
        for ring in heads:
            middle = math.atan2(y - (ring[1][1] + ring[2][1]) / 2, (ring[1][0] + ring[2][0]) / 2 - x)
            assert (middle < first or middle > last) is outside


@pytest.mark.parametrize("face", ["A", "B"])
def test_a_cup_has_its_arc_in_front_of_its_face(face: str) -> None:
    """60 degrees, no 90: the legs run on from the mouth and the arc stands before the face, not in the metal."""
    shape = TurnedShape(
        Dim(20.0),
        (Cylinder("body", Dim(16.0), 0, 20),),
        cups=(Cup("cup", face, 5.0, 60.0),),  # type: ignore[arg-type]
    )
    sheet = drawn(shape)
    (one,) = arcs(sheet)
    (arc,) = [mark for mark in dimension_marks(one) if isinstance(mark, Arc)]

    assert arc.end - arc.start == pytest.approx(60.0)
    assert one.radius > math.dist(one.vertex, one.a)
    assert (one.a[0] < one.vertex[0]) is (face == "A")
    assert clashes(sheet, LINES) == []


def disc(angle: float, *holes: CrossHole) -> TurnedShape:
    """A bored disc with six holes on a circle."""
    return TurnedShape(
        Dim(16.0),
        (Cylinder("rim", Dim(60.0), 0, 16),),
        bores=(Bore("bore", Dim(12.0), "A", 16, True),),
        circle_holes=(CircleHoles("ring", Dim(5.0), 6, 44.0, angle, 0, 16),),
        cross_holes=holes,
    )


def test_the_first_hole_of_a_circle_is_dimensioned_from_the_horizontal_and_no_word_repeats_it() -> None:
    """20 degrees, counter-clockwise as seen from face A; a drawing program measures the same."""
    sheet = drawn(disc(20.0))
    (one,) = arcs(sheet)
    legs = [math.degrees(math.atan2(one.vertex[1] - p[1], p[0] - one.vertex[0])) for p in (one.a, one.b)]
    words = [text.words for text in texts(sheet)]
    file = ezdxf.read(io.StringIO(dxf_text(sheet)))
    measured = [
        entity.get_measurement() for entity in file.modelspace().query("DIMENSION") if entity.dimtype == 5
    ]

    assert legs == pytest.approx([0.0, 20.0], abs=1e-9)
    assert "20°" in words
    assert "equally spaced" in words
    assert not any("first at" in one for one in words)
    assert measured == pytest.approx([20.0])


def test_what_stands_at_a_quarter_turn_is_said_in_words() -> None:
    """As is what has no arc of its own: several alike, and what lies over half a turn on."""
    assert clocked(disc(90.0)) == {}
    assert clocked(disc(0.0, CrossHole("a", Dim(3.0), 8.0, 200.0))) == {}
    assert clocked(disc(30.0, CrossHole("a", Dim(3.0), 8.0, 30.0))) == {"ring": ("start_angle", 30.0)}
    alike = (CrossHole("a", Dim(3.0), 8.0, 45.0), CrossHole("b", Dim(3.0), 8.0, 75.0))
    assert clocked(disc(0.0, *alike)) == {}
    assert any("first at 90°" in text.words for text in texts(drawn(disc(90.0))))
