"""Heads on a plate: over the edge, on one another, room for the spanner."""

from __future__ import annotations

import pytest

from tommybar.design.joints import ScrewJoint
from tommybar.shapes.features import (
    Bore,
    Boss,
    CircleHoles,
    Cylinder,
    Dim,
    Outline,
    PlateHole,
    PlateShape,
    Recess,
    TurnedShape,
)

from .asking import finds, found_in, part, plate

# ISO 4762 M5: head 8.5; ISO 4017 M5: 8 across flats (both seen in public tables)


def joint(hole: str, head: str = "ISO 4762") -> ScrewJoint:
    """A joint through one hole of a plate into its base."""
    return ScrewJoint((f"cover.{hole}",), "base.tapped", "M5", head, "", 0.0, 10.0)


def cover(*places: tuple[float, float], sunk: float = 0.0) -> object:
    """A cover 60 by 40 with holes of 5.5."""
    holes = [
        PlateHole(f"fix_{n}", "top", x, y, Dim(5.5), sink_dia=9.0 if sunk else 0.0, sink_depth=sunk)
        for n, (x, y) in enumerate(places, start=1)
    ]
    return part("cover", plate(*holes))


def told(cover_: object, *joints: ScrewJoint) -> list[int]:
    """The findings about heads."""
    return [one.number for one in found_in(cover_, screw_joints=joints) if one.number in (687, 688)]  # type: ignore[arg-type]


def test_a_head_over_the_edge_is_told() -> None:
    """Head 8.5 across wants 4.25 from the edge, greatest of the table; a sunk head is inside the plate."""
    assert finds(687, cover((4.0, 20.0)), screw_joints=(joint("fix_1"),)).figure == "4.00 mm"  # type: ignore[arg-type]
    assert told(cover((4.5, 20.0)), joint("fix_1")) == []
    assert told(cover((4.0, 20.0), sunk=5.0), joint("fix_1")) == []


def test_heads_side_by_side_keep_half_a_millimetre() -> None:
    """Two heads of 8.5 want 9.0 from middle to middle."""
    near, far = cover((20.0, 20.0), (28.9, 20.0)), cover((20.0, 20.0), (29.1, 20.0))
    assert told(near, joint("fix_1"), joint("fix_2")) == [688]
    assert told(far, joint("fix_1"), joint("fix_2")) == []


def test_a_spanner_needs_more_room_than_a_key() -> None:
    """Hexagon of 8 wants jaws of 2.2 x 8 = 17.6 beside a head of 8.8 or so: 13.7 or so from middle to middle."""
    row = cover((20.0, 20.0), (31.0, 20.0))
    assert told(row, joint("fix_1"), joint("fix_2")) == []
    assert told(row, joint("fix_1", "ISO 4017"), joint("fix_2", "ISO 4017")) == [688]


def ring(circle: float, count: int = 4, **more: object) -> object:
    """A flange of 60 over a bore of 20, 8 thick, with a hub of 34 behind it, and holes of 5.5 on a circle."""
    shape = TurnedShape(
        Dim(20.0),
        (Cylinder("flange", Dim(60.0), 0.0, 8.0), Cylinder("hub", Dim(34.0), 8.0, 20.0)),
        bores=(Bore("bore", Dim(20.0), "A", 20.0, True),),
        circle_holes=(CircleHoles("fix", Dim(5.5), count, circle, 0.0, 0.0, 8.0, **more),),  # type: ignore[arg-type]
    )
    return part("cover", shape)


@pytest.mark.parametrize(("circle", "figure"), [(53.0, "3.50 mm"), (28.0, "4.00 mm"), (40.0, "")])
def test_a_head_on_a_turned_face_keeps_inside_rim_and_bore(circle: float, figure: str) -> None:
    """Head 8.5 wants 4.25: 30 - 26.5 = 3.5 to the rim, 14 - 10 = 4 to the bore; said once for the circle."""
    one = ring(circle)
    assert told(one, joint("fix")) == ([687] if figure else [])
    if figure:
        assert finds(687, one, screw_joints=(joint("fix"),)).figure == figure  # type: ignore[arg-type]


def test_a_hub_beside_a_shoulder_is_a_wall_and_no_edge() -> None:
    """From behind, the holes at 23 stand 6 from a hub of 17: that is for the spanner, and not an edge."""
    assert told(ring(46.0, face="B"), joint("fix")) == []


def test_heads_of_one_circle_leave_room_for_each_other() -> None:
    """Twelve on a circle of 34 stand 34 sin 15 = 8.80 apart, eight 34 sin 22.5 = 13.0: heads of 8.5 want 9."""
    assert told(ring(34.0, 12), joint("fix")) == [688]
    assert told(ring(34.0, 8), joint("fix")) == []


def test_a_recess_in_the_face_is_an_edge_too() -> None:
    """A recess from 20 to 40 across leaves the head at 22 from the axis 2 to its edge."""
    shape = TurnedShape(
        Dim(12.0),
        (Cylinder("rim", Dim(60.0), 0.0, 12.0),),
        recesses=(Recess("well", "A", 20.0, 40.0, 4.0),),
        circle_holes=(CircleHoles("fix", Dim(5.5), 3, 44.0, 0.0, 0.0, 12.0),),
    )
    assert finds(687, part("cover", shape), screw_joints=(joint("fix"),)).figure == "2.00 mm"


def test_a_nut_on_a_stud_without_a_head_is_still_looked_at() -> None:
    """No head, but the nut of M5 (8 across flats, 9.24 over its corners) at 4 from the edge."""
    stud = ScrewJoint(("cover.fix_1",), "", "M5", "", "", 0.0, 10.0, nut="ISO 4032")
    found = found_in(cover((4.0, 20.0)), screw_joints=(stud,))  # type: ignore[arg-type]
    assert [one.figure for one in found if one.number == 687] == ["4.00 mm"]


def test_the_edge_of_a_plate_with_an_outline_is_that_outline() -> None:
    """A disc of 40: a head at 16.5 from its middle has 3.5 to the rim, though the square round it is far."""
    disc_ = Outline("disc", bosses=(Boss(20.0, 20.0, 20.0),))
    off = 16.5 / 2**0.5
    for face, x in (("top", 20.0 + off), ("bottom", 20.0 - off)):
        hole = PlateHole("fix_1", face, x, 20.0 + off, Dim(5.5))  # type: ignore[arg-type]
        shape = PlateShape(Dim(40.0), Dim(40.0), Dim(6.0), holes=(hole,), outline=disc_)
        assert finds(687, part("cover", shape), screw_joints=(joint("fix_1"),)).figure == "3.50 mm"
