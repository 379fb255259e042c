"""Holes, slots and keyways on the side of the section on which they are, and what no section shows."""

from __future__ import annotations

import pytest
from tests.pack.handmade import DESIGN, IMPRINT
from tests.pack.layout import LINES, clashes, texts

from tommybar.design.model import Part
from tommybar.pack.drawing import part_drawing
from tommybar.pack.profile import metal_at
from tommybar.pack.sheet import Angular, Dimension, Line
from tommybar.pack.turned.drawn import thread_marks
from tommybar.pack.turned.metal import chords, cut
from tommybar.pack.turned.mouths import mouth_marks
from tommybar.pack.turned.planes import sides
from tommybar.pack.turned.view import shape_marks
from tommybar.shapes.features import Bore, CrossHole, CrossSlot, Cup, Cylinder, Dim, Keyway, TurnedShape


def sleeve(
    *holes: CrossHole, slots: tuple[CrossSlot, ...] = (), keys: tuple[Keyway, ...] = ()
) -> TurnedShape:
    """A bored sleeve of 30 x 40 with what is cut across it."""
    return TurnedShape(
        Dim(40.0),
        (Cylinder("body", Dim(30.0), 0, 40),),
        bores=(Bore("bore", Dim(12.0), "A", 40, True),),
        cross_holes=holes,
        cross_slots=slots,
        keyways=keys,
    )


def metal(shape: TurnedShape, z: float, below: bool) -> float:
    """How much of a line across one half lies in metal [mm]."""
    bounds = metal_at(chords(cut(shape, below)), z)
    return sum(high - low for low, high in zip(bounds[::2], bounds[1::2], strict=True))


WALL = 9.0  # of the sleeve [mm]


@pytest.mark.parametrize(
    ("angle", "above", "below"),
    [(90.0, 0.0, WALL), (270.0, WALL, 0.0), (120.0, 0.0, WALL), (230.0, WALL, 0.0)],
    ids=["in the plane, same side", "opposite", "turned in by 30", "turned in by 40 from the other side"],
)
def test_a_hole_of_one_wall_is_cut_on_the_side_on_which_it_is(
    angle: float, above: float, below: float
) -> None:
    """The section runs through the first hole, at 90 degrees; the second stands at z = 30."""
    shape = sleeve(CrossHole("first", Dim(4.0), 10.0, 90.0, 1), CrossHole("second", Dim(3.0), 30.0, angle, 1))

    assert (metal(shape, 10.0, False), metal(shape, 10.0, True)) == pytest.approx((0.0, WALL))
    assert (metal(shape, 30.0, False), metal(shape, 30.0, True)) == pytest.approx((above, below))


def test_two_holes_opposite_each_other_at_one_place_are_cut_each_in_its_half() -> None:
    """A narrow one below a wide one: 2 mm from their middle only the wide one has taken metal."""
    shape = sleeve(CrossHole("wide", Dim(6.0), 20.0, 0.0, 1), CrossHole("narrow", Dim(3.0), 20.0, 180.0, 1))

    assert (metal(shape, 20.0, False), metal(shape, 20.0, True)) == pytest.approx((0.0, 0.0))
    assert (metal(shape, 22.0, False), metal(shape, 22.0, True)) == pytest.approx((0.0, WALL))


def test_a_hole_that_would_be_confused_with_another_is_left_to_the_view_along_the_axis() -> None:
    """At the same place along the axis and at right angles: only the one in the plane is cut, right through."""
    shape = sleeve(CrossHole("a", Dim(6.0), 20.0, 90.0, 2), CrossHole("b", Dim(8.0), 20.0, 0.0, 2))

    assert sides(shape) == {"a": "both", "b": "off"}
    assert metal(shape, 23.5, False) == pytest.approx(WALL)  # inside b, beside a
    assert metal(shape, 20.0, True) == pytest.approx(0.0)


def test_a_slot_and_a_keyway_stand_on_their_side_as_well() -> None:
    """A slot of one wall at 90 degrees above, a keyway 4 deep at 270 degrees below."""
    shape = sleeve(
        slots=(CrossSlot("slot", 2, 12, Dim(4.0), 90.0, 1),),
        keys=(Keyway("key", 20, 35, Dim(5.0), 4.0, 270.0),),
    )

    assert (metal(shape, 7.0, False), metal(shape, 7.0, True)) == pytest.approx((0.0, WALL))
    assert (metal(shape, 28.0, False), metal(shape, 28.0, True)) == pytest.approx((WALL, WALL - 4.0))


def test_a_blind_hole_past_the_axis_ends_in_a_tip_in_the_other_half() -> None:
    """A solid bar of 30 with a hole of 6 that is 18 deep: 3 mm past the axis, its tip 1.803 mm more (118 degrees)."""
    solid = TurnedShape(
        Dim(40.0),
        (Cylinder("body", Dim(30.0), 0, 40),),
        cross_holes=(CrossHole("hole", Dim(6.0), 20.0, 90.0, 1, depth=18.0),),
    )

    assert metal(solid, 20.0, False) == pytest.approx(0.0)
    assert metal(solid, 20.0, True) == pytest.approx(15.0 - 3.0 - 1.8026, abs=1e-3)
    assert metal(solid, 22.9, True) == pytest.approx(15.0 - 3.0 - 0.0601, abs=1e-3)


def test_the_words_of_a_hole_stand_on_its_side_of_the_axis() -> None:
    """Over the view what is cut above, below the axis what is cut below; the plane is marked along the axis."""
    shape = sleeve(CrossHole("up", Dim(4.0), 20.0, 0.0, 1), CrossHole("down", Dim(3.0), 20.0, 180.0, 1))
    sheet = part_drawing(Part("sleeve", "turned", "brass", 1, shape), DESIGN, IMPRINT)
    places = {one.words: one.at[1] for one in texts(sheet)}
    plane = [one for one in sheet.marks if isinstance(one, Line) and one.kind == "cut"]
    axis = plane[0].points[0][1]

    assert places["Ø4"] < axis < places["Ø3"]
    assert [one.points[0][1] == one.points[1][1] for one in plane] == [True, True]  # at 0 degrees
    assert clashes(sheet, LINES) == []


def test_the_edge_of_a_mouth_is_the_curve_in_which_two_cylinders_meet() -> None:
    """In the middle of a hole of radius 4 across one of radius 15: at the root of 15^2 - 4^2, in closed form."""
    shape = sleeve(CrossHole("hole", Dim(8.0), 20.0, 90.0, 1))
    outer, inner = mouth_marks(shape, 1.0, 1)

    assert isinstance(outer, Line)
    assert isinstance(inner, Line)
    assert min(-y for _, y in outer.points) == pytest.approx((15.0**2 - 4.0**2) ** 0.5)
    assert min(-y for _, y in inner.points) == pytest.approx((6.0**2 - 4.0**2) ** 0.5)
    assert outer.points[0] == pytest.approx((16.0, -15.0))
    assert mouth_marks(shape, 1.0, -1) == []


def test_a_hole_below_is_hidden_where_the_lower_half_is_seen_from_outside() -> None:
    """A keyway asks for a half view: the hole at 270 degrees is dashed from the outside down to the bore."""
    key = Keyway("key", 2, 8, Dim(4.0), 2.0, 90.0)
    shape = sleeve(
        CrossHole("up", Dim(4.0), 20.0, 90.0, 1), CrossHole("down", Dim(3.0), 30.0, 270.0, 1), keys=(key,)
    )
    dashed = {one.points for one in shape_marks(shape, 1.0) if isinstance(one, Line) and one.kind == "dashed"}

    assert dashed == {((28.5, 6.0), (28.5, 15.0)), ((31.5, 6.0), (31.5, 15.0))}


def test_a_countersink_at_the_mouth_of_a_bore_has_its_angle_there() -> None:
    """On a bore that opens 9 deep below face A: the arc about a point 9 + 5.5 from the face, not at the face."""
    shape = TurnedShape(
        Dim(22.0),
        (Cylinder("body", Dim(30.0), 0, 22),),
        bores=(Bore("pocket", Dim(24.0), "A", 9.0, False), Bore("bore", Dim(10.0), "A", 22, True)),
        cups=(Cup("sunk", "A", 11.0, 90.0, on="bore"),),
    )
    sheet = part_drawing(Part("bowl", "turned", "brass", 1, shape), DESIGN, IMPRINT)
    (angle,) = [one for one in sheet.marks if isinstance(one, Angular)]
    face = next(one.a[0] for one in sheet.marks if isinstance(one, Dimension) and one.along == "x")

    assert (angle.vertex[0] - face) / sheet.scale == pytest.approx(9.0 + 5.5, abs=1e-6)
    assert clashes(sheet, LINES) == []


def test_a_hole_that_only_the_view_along_the_axis_shows_says_its_own_place() -> None:
    """Two holes through the same place, a right angle apart: the section has one, the other's 25 stands in its callout."""
    shape = sleeve(CrossHole("one", Dim(4.0), 25.0, 90.0, 2), CrossHole("two", Dim(6.0), 25.0, 0.0, 2))
    sheet = part_drawing(Part("sleeve", "turned", "mild steel", 1, shape), DESIGN, IMPRINT)
    places = [(one.feature, one.words) for one in sheet.dimensions() if one.size == "z"]

    assert sides(shape) == {"one": "both", "two": "off"}
    assert sorted(places) == [("one", "25"), ("two", "25 from A")]
    assert "25 from A" in [one.words for one in texts(sheet)]
    assert clashes(sheet, LINES) == []


def test_a_blind_thread_says_how_deep_its_hole_is_drilled() -> None:
    """M4 9 deep: the tap's lead of three threads of 0.7 lies below the full thread, 9 + 2.1 = 11.1."""
    shape = TurnedShape(
        Dim(40.0),
        (Cylinder("body", Dim(30.0), 0, 40),),
        bores=(Bore("seat", Dim(4.0), "A", 9.0, False, thread="M4"),),
    )
    sheet = part_drawing(Part("piece", "turned", "mild steel", 1, shape), DESIGN, IMPRINT)

    assert "drill Ø3.3 × 11.1 deep" in [one.words for one in texts(sheet)]


def test_the_end_of_a_thread_on_a_plain_rod_is_a_thick_line() -> None:
    """No shoulder shows it: the limit of the useful length is a thick line (ISO 6410-1)."""

    def ends(dia: float) -> list[float]:
        shape = TurnedShape(
            Dim(18.0),
            (Cylinder("screw", Dim(3.0), 0, 6, thread="M3"), Cylinder("rod", Dim(dia), 6, 18)),
        )
        marks = thread_marks(shape, 2.0, "outside")
        return [one.points[0][0] for one in marks if isinstance(one, Line) and one.kind == "thick"]

    assert ends(3.0) == [12.0]
    assert ends(5.0) == []
