"""Heads on a plate: over the edge, on one another, room for the spanner."""

from __future__ import annotations

from tommybar.design.joints import ScrewJoint
from tommybar.shapes.features import Dim, PlateHole

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
