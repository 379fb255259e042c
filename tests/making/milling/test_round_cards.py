"""Flats, face slots, slots along a round and keyways of a turned part, each on its card."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tommybar.shapes.features import (
    Bore,
    CrossHole,
    CrossSlot,
    Cylinder,
    Dim,
    Flats,
    HeadSlot,
    Keyway,
    TurnedShape,
)


@pytest.fixture
def pin():
    """A head 20 x 10 at face A on a shank 12 x 40."""

    def of(**more) -> TurnedShape:
        return TurnedShape(
            Dim(50.0, "piece.length"),
            (
                Cylinder("head", Dim(20.0, "piece.head"), 0.0, 10.0),
                Cylinder("shank", Dim(12.0, "piece.shank"), 10.0, 50.0),
            ),
            **more,
        )

    return of


def dials(card) -> str:
    """All dials of a card."""
    return " ".join(line for s in card.steps for line in s.dial)


def test_a_hexagon_head_is_held_by_the_shank_and_divided(milled, pin, numbers):
    """AF 17 on 20: six flats 1.5 deep; the round is gripped where nothing is cut."""
    made = milled(pin(flats=(Flats("hex", 6, 8.5, 0.0, 10.0, across=Dim(17.0, "piece.hex")),)))
    card = made.cards[0]

    assert [s.big for s in card.steps] == ["1.50"] * 6
    assert (card.hold.surface, card.hold.dia) == ("shank", 12.0)
    assert "dividing device" in card.hold.device
    assert numbers(made) == []


def test_a_flat_in_the_middle_stops_half_a_cutter_short_of_both_ends(milled, pin):
    """From 20 to 40 on 12, 5 from the axis: chord 2 sqrt(36 - 25) = 6.63, the 8 cutter runs 24 to 36."""
    card = milled(pin(flats=(Flats("flat", 1, 5.0, 20.0, 40.0),))).cards[0]

    assert card.steps[0].tool_size == 8.0
    assert "runs from X 24.00 to X 36.00" in dials(card)
    assert "comes out 6.63 wide" in dials(card)


def test_a_screwdriver_slot_runs_out_on_both_sides(milled, pin, numbers):
    """Head 20, slot 4 wide: from -10 - 2 - 2 to 14."""
    made = milled(pin(head_slots=(HeadSlot("blade", "A", Dim(4.0, "piece.blade"), 2.0),)))

    assert "-14.00 to +14.00" in dials(made.cards[0])
    assert made.cards[0].hold.stop == "face A up"
    assert numbers(made) == []


def test_a_slot_narrower_than_any_cutter_is_a_stop(milled, pin, numbers):
    """1.5 for a blade: the smallest end mill is 3."""
    assert numbers(milled(pin(head_slots=(HeadSlot("blade", "A", Dim(1.5, "piece.blade"), 1.5),)))) == [418]


def test_a_slot_through_a_tube_is_cut_wall_by_wall(milled, disc, shop, numbers):
    """12 outside, bore 6: each wall 3, from two sides, 180 deg apart."""
    shape = disc(
        12.0,
        60.0,
        bores=(Bore("bore", Dim(6.0, "piece.bore"), "A", 40.0, False),),
        cross_slots=(CrossSlot("track", 20.0, 30.0, Dim(3.0, "piece.track")),),
    )
    made = milled(shape)
    first, second = made.cards

    assert "far wall" in second.title
    assert any("Turned 180 deg" in line for line in second.before_starting)
    assert any("the wall is 3.00 there" in line for line in first.before_starting)
    assert "+21.50 to +28.50" in dials(first)  # 20 + 1.5 and 30 - 1.5 with a 3 cutter
    assert numbers(made) == []


def test_a_sunk_keyway_counts_from_the_top_of_the_round(milled, pin, numbers):
    """4 wide, 2.5 deep in 12: floor to far side 9.5; closed, so a start hole comes first."""
    made = milled(pin(keyways=(Keyway("key", 20.0, 35.0, Dim(4.0, "piece.key"), 2.5),)))
    card = made.cards[0]

    assert any("the far side it is 9.50" in line for line in card.before_starting)
    assert "+22.00 to +33.00" in dials(card)
    assert numbers(made) == []


@pytest.mark.parametrize("form", ["sled", "woodruff"])
def test_a_disc_cutter_is_not_in_the_shop_file(milled, pin, form, numbers):
    """Told with its size, never made with an end mill in silence."""
    key = Keyway("key", 20.0, 35.0, Dim(4.0, "piece.key"), 2.5, form=form, cutter=13.0)
    made = milled(pin(keyways=(key,)))

    assert numbers(made) == [905]
    assert made.cards[0].steps == ()


@pytest.mark.parametrize("count", [2, 3, 4, 6])
def test_flats_drawn_by_their_level_are_all_cut(milled, pin, count):
    """9 from the axis of a round of 20: each 1.0 deep, one at every turn of 360 over their number."""
    card = milled(pin(flats=(Flats("lands", count, 9.0, 0.0, 10.0),))).cards[0]

    assert [s.big for s in card.steps] == ["1.00"] * count
    angles = [s.do.partition(" at ")[2].partition(" deg")[0] for s in card.steps]
    assert angles == [f"{360 / count * n:g}" for n in range(count)]


def test_flats_are_clocked_to_what_is_there(milled, pin):
    """30 deg from the eye; 0.1 deg is 0.01 on a radius of 6."""
    shape = pin(
        flats=(Flats("flat", 1, 5.0, 20.0, 40.0, angle=30.0),),
        cross_holes=(CrossHole("eye", Dim(3.0, "piece.eye"), 5.0),),
    )

    assert any("30 deg from eye" in line for line in milled(shape).cards[-1].before_starting)


def test_a_shop_without_a_mill_says_so(milled, pin, shop, numbers):
    """Every milled thing is named."""
    made = milled(
        pin(keyways=(Keyway("key", 20.0, 35.0, Dim(4.0, "piece.key"), 2.5),)), replace(shop, mill=None)
    )

    assert numbers(made) == [903]
    assert made.findings[0].feature == "key"


def test_cards_are_numbered_in_order(milled, pin):
    """Holes first, then what is milled along."""
    shape = pin(
        flats=(Flats("flat", 1, 5.0, 20.0, 40.0),),
        head_slots=(HeadSlot("blade", "A", Dim(4.0, "piece.blade"), 2.0),),
        cross_holes=(CrossHole("eye", Dim(3.0, "piece.eye"), 5.0),),
    )

    assert [c.number for c in milled(shape).cards] == [1, 2, 3]


def test_a_flat_at_one_end_is_milled_with_the_rest_of_its_own_land_in_the_vee(milled):
    """A spigot of 10 x 10 and a body of 16 x 60, flat on its last 12: 48 of the body are left to hold, 10 of the spigot."""
    post = TurnedShape(
        Dim(70.0, "piece.length"),
        (
            Cylinder("spigot", Dim(10.0, "piece.spigot"), 0.0, 10.0),
            Cylinder("body", Dim(16.0, "piece.body"), 10.0, 70.0),
        ),
        flats=(Flats("seat", 1, 7.0, 58.0, 70.0),),
    )

    assert (milled(post).cards[0].hold.surface, milled(post).cards[0].hold.dia) == ("body", 16.0)
