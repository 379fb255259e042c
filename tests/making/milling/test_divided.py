"""Holes at several angles round a part: one card, the part in the dividing device by a land or a bore."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tommybar.design.model import Part
from tommybar.making.milling.divided import in_device
from tommybar.making.route_check import route_faults
from tommybar.shapes.features import Bore, CrossHole, Dim

THREE = tuple(
    CrossHole(f"arm_{n}", Dim(3.0, f"piece.arm_{n}"), 4.0, angle, 1, "M3", "bore")
    for n, angle in ((1, 0.0), (2, 120.0), (3, 240.0))
)
GRUB = CrossHole("grub", Dim(3.0, "piece.grub"), 9.0, 60.0, 1, "M3", "bore")


@pytest.fixture
def hub(disc):
    """Outside 18, 12 long, bored 6, three holes for arms and one for a grub screw between them."""
    bore = Bore("bore", Dim(6.0, "piece.bore"), "A", 12.0, True)
    return disc(18.0, 12.0, bores=(bore,), cross_holes=(*THREE, GRUB))


def said(card) -> str:
    """All that stands before the steps."""
    return " ".join(card.before_starting)


def test_a_hub_is_drilled_in_one_setting_on_an_arbor(milled, hub):
    """Its land is too short for jaws beside the holes; the bore of 6 takes an arbor."""
    cards = milled(hub).cards

    assert len(cards) == 1
    assert cards[0].hold.surface == "bore"
    assert "stub arbor" in cards[0].hold.device
    assert [(p.x, p.y) for p in cards[0].places] == [(4.0, 0.0)] * 3 + [(9.0, 0.0)]
    assert [p.what for p in cards[0].places] == [
        "device at 0 deg: arm_1, M3",
        "device at 120 deg: arm_2, M3",
        "device at 240 deg: arm_3, M3",
        "device at 60 deg: grub, M3",
    ]


def test_every_tool_goes_round_all_its_angles(milled, hub):
    """Spotted four times; the three alike are drilled and tapped together, the one at another length by itself."""
    steps = milled(hub).cards[0].steps

    assert steps[0].do == "Spot 4 places"
    assert [step.dial[0].split(":")[0] for step in steps[1:]] == [
        "Device at 0, 120, 240 deg",
        "Device at 0, 120, 240 deg",
        "Device at 60 deg",
        "Device at 60 deg",
    ]
    assert "arm_1, arm_2, arm_3" in steps[1].do


def test_angles_count_from_the_first_hole(milled, hub):
    """Turned by 30, the angles of the device stay as they were: they count from the hole that is on top first."""
    turned = replace(hub, cross_holes=tuple(replace(h, angle=h.angle + 30.0) for h in hub.cross_holes))

    assert [p.what for p in milled(turned).cards[0].places] == [p.what for p in milled(hub).cards[0].places]


def test_a_long_part_is_held_by_the_land_beside_its_holes(milled, disc):
    """40 long, holes at 5: the jaws take the far end, face A is free; holes at 35: the other way round."""
    holes = tuple(
        CrossHole(name, Dim(3.0, f"piece.{name}"), 5.0, at, 2) for name, at in (("a", 0.0), ("b", 90.0))
    )
    near = milled(disc(20.0, 40.0, cross_holes=holes)).cards
    far = milled(disc(20.0, 40.0, cross_holes=tuple(replace(h, z=35.0) for h in holes))).cards

    assert [len(near), len(far)] == [1, 1]
    assert near[0].hold.surface == "rim"
    assert "face A to the left" in near[0].hold.stop
    assert "face B to the left" in far[0].hold.stop
    assert {p.x for p in near[0].places} == {5.0}
    assert {p.x for p in far[0].places} == {5.0}  # 40 less 35, from face B


def test_a_hole_beside_the_axis_changes_sides_with_the_face_that_is_left(milled, disc):
    """To the left looking down with face A at the left is towards the front; with face B there, towards the back."""
    holes = tuple(
        CrossHole(name, Dim(3.0, f"piece.{name}"), 5.0, at, 1, offset=2.0)
        for name, at in (("a", 0.0), ("b", 90.0))
    )
    near = milled(disc(20.0, 40.0, cross_holes=holes)).cards[0]
    far = milled(disc(20.0, 40.0, cross_holes=tuple(replace(h, z=35.0) for h in holes))).cards[0]

    assert {p.y for p in near.places} == {-2.0}
    assert {p.y for p in far.places} == {2.0}


def test_a_hole_with_limits_is_measured_by_itself(milled, disc):
    """Two reamed holes at a right angle: each has its own steps and its own reading."""
    holes = tuple(
        CrossHole(name, Dim(6.0, f"piece.{name}", "H7", 6.0, 6.012), 6.0, at, 2)
        for name, at in (("a", 0.0), ("b", 90.0))
    )
    card = milled(disc(20.0, 50.0, cross_holes=holes)).cards[0]

    assert sorted(m.size for step in card.steps for m in step.measure) == ["piece.a", "piece.b"]


def test_a_wide_ring_is_strapped_to_the_upright_table(milled, disc, shop):
    """Outside 90, bored 76: the table of 100 stands 5 above it. One of 56 would stand 22 below the table's rim."""

    def of(outside: float, inside: float):
        bore = Bore("inside", Dim(inside, "piece.inside"), "A", 14.0, True)
        holes = tuple(
            CrossHole(n, Dim(5.0, f"piece.{n}"), 7.0, at, 1, "M6", "inside")
            for n, at in (("a", 0.0), ("b", 90.0))
        )
        return disc(outside, 14.0, bores=(bore,), cross_holes=holes)

    assert milled(of(90.0, 76.0)).cards[0].hold.device == "rotary table, upright"
    assert len(milled(of(90.0, 76.0)).cards) == 1
    assert in_device(of(56.0, 50.0), of(56.0, 50.0).cross_holes, 56.0, shop) is None
    assert len(milled(of(56.0, 50.0)).cards) == 2


def test_a_round_above_the_device_is_not_held_in_it(disc, shop, hub):
    """A table of 100 carries its axis 60 high: a round of 130 would stand in the mill's table."""
    wide = disc(130.0, 40.0, cross_holes=hub.cross_holes)

    assert in_device(wide, wide.cross_holes, 130.0, shop) is None


def test_without_a_device_there_is_a_card_for_each_angle(milled, hub, bare):
    """Four angles, four settings."""
    assert len(milled(hub, bare).cards) == 4


def test_a_hole_that_no_step_names_is_missed(milled, hub, shop):
    """The check that reads the cards again finds all holes of a step that names them, and misses one that it does not."""
    cards = milled(hub).cards
    part = Part("piece", "turned", "mild steel", 1, hub)
    lacking = tuple(
        replace(card, steps=tuple(replace(step, do=step.do.replace(", arm_2", "")) for step in card.steps))
        for card in cards
    )

    assert not [words for words in route_faults(part, cards, shop) if "arm_" in words]
    assert "nothing makes arm_2" in route_faults(part, lacking, shop)
