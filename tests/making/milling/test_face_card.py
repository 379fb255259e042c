"""Cards of a plate: what lies in the vice, what is clamped, steps before holes, and which sizes are measured."""

from __future__ import annotations

from dataclasses import replace

from tommybar.shapes.features import Dim, Dovetail, PlateHole, PlateShape, PlateStep, Pocket, Slot, Vee
from tommybar.shop.vice import between_jaws, must_be_gripped, opens

HOLE = PlateHole("foot", "top", 10.0, 10.0, Dim(6.6, "piece.foot"))


def plate(long=80.0, wide=40.0, thick=10.0, **more) -> PlateShape:
    """A rectangular plate."""
    return PlateShape(Dim(long, "piece.length"), Dim(wide, "piece.width"), Dim(thick, "piece.thick"), **more)


def test_one_rule_for_the_vice(shop):
    """Flat: its width, and it may be clamped down instead. Standing: its thickness, and it must go in."""
    assert between_jaws("top", 70.0, 10.0) == 70.0
    assert between_jaws("left", 70.0, 10.0) == 10.0
    assert [must_be_gripped(f) for f in ("top", "bottom", "front", "right")] == [False, False, True, True]
    assert opens(shop.mill, 65.0)
    assert not opens(shop.mill, 65.1)


def test_a_plate_wider_than_the_vice_is_clamped_on_every_card_that_lies_flat(plated, numbers):
    """70 against 65: a caution, and no card says vice."""
    made = plated(plate(wide=70.0, holes=(HOLE,)))

    assert {c.hold.device for c in made.cards} == {
        "clamped to the table",
        "clamped flat on a sacrificial plate",
    }
    assert numbers(made) == []
    assert numbers(made, "caution").count(431) == 2


def test_a_plate_that_must_stand_and_does_not_go_in_is_a_stop(plated, shop, numbers):
    """A front hole in a block 30 thick, in a vice that opens 25."""
    narrow = replace(shop, mill=replace(shop.mill, vice_opening=25.0))
    made = plated(plate(wide=30.0, thick=30.0, holes=(replace(HOLE, face="front"),)), narrow)

    assert 431 in numbers(made)


def test_only_the_finished_size_is_measured(plated):
    """The first end is only cleaned: nothing is written in; the second is the length."""
    ends = [s for s in plated(plate()).cards[0].steps if s.feature == "length"]

    assert [bool(s.measure) for s in ends] == [False, True]
    assert ends[1].measure[0].size == "piece.length"


def test_what_a_plates_hole_gives_is_said(plated):
    """And each hole with limits is measured on its own."""
    pins = tuple(
        PlateHole(f"pin_{n}", "top", 10.0 * n, 20.0, Dim(6.0, f"piece.pin_{n}", "H7", 6.0, 6.012))
        for n in (1, 2)
    )
    made = plated(plate(holes=pins), gives_to={"piece.pin_2": ("peg.dia",)})
    measured = [(m.size, m.gives_to) for s in made.cards[1].steps for m in s.measure]

    assert measured == [("piece.pin_1", ()), ("piece.pin_2", ("peg.dia",))]


def test_steps_slots_and_pockets_come_before_holes(plated, numbers):
    """All of the top face on one card, in the order in which metal goes."""
    made = plated(
        plate(
            holes=(HOLE,),
            slots=(Slot("slot", "top", 60.0, 20.0, 20.0, Dim(6.0, "piece.slot"), 4.0),),
            pockets=(
                Pocket("well", "top", 35.0, 22.0, Dim(20.0, "piece.wl"), Dim(12.0, "piece.ww"), 3.0, 3.0),
            ),
            steps=(PlateStep("ledge", "top", "back", Dim(5.0, "piece.ledge"), Dim(2.0, "piece.deep")),),
        )
    )
    top = made.cards[1]
    order = list(dict.fromkeys(s.feature for s in top.steps))

    assert order == ["ledge", "slot", "well", "foot"]
    assert numbers(made) == []


def test_a_slot_along_y_and_open_at_the_edge(plated):
    """From y 0 to 20 at x 30: the cutter 6 starts 3 + 2 outside and stops 3 short."""
    one = Slot("slot", "top", 30.0, 10.0, 20.0, Dim(6.0, "piece.slot"), 4.0, 90.0)
    step = next(s for s in plated(plate(slots=(one,))).cards[1].steps if s.feature == "slot")

    assert "along Y" in step.do
    assert "-5.00 to +17.00" in step.dial[0]
    assert "across +30.00" in step.dial[1]


def test_a_slot_askew_is_a_stop(plated, numbers):
    """30 deg on its face."""
    one = Slot("slot", "top", 40.0, 20.0, 20.0, Dim(6.0, "piece.slot"), 4.0, 30.0)

    assert 447 in numbers(plated(plate(slots=(one,))))


def test_vees_take_a_card_and_dovetails_are_told(plated, numbers):
    """A vee is cut tilted; a dovetail by its measure only."""
    made = plated(
        plate(
            vees=(Vee("vee", "top", "x", 20.0, 8.0),),
            dovetails=(Dovetail("tail", "x", 20.0, Dim(12.0, "piece.tail"), 4.0),),
        )
    )

    assert made.cards[-1].hold.device == "vice, tilted to 45 deg"
    assert numbers(made) == [905]


def test_a_hole_over_a_parallel_is_told(plated):
    """At Y 7, 6.6 wide: 3.7 is inside the 6 of the parallel."""
    card = plated(plate(holes=(replace(HOLE, y=7.0), replace(HOLE, name="mid", y=20.0)))).cards[1]

    assert any(
        line.startswith("Over a parallel 6 thick") and "foot." in line for line in card.before_starting
    )


def test_a_counterbored_hole_is_made(plated, shop, numbers):
    """10 on 5.5: an end mill of 10 is owned."""
    hole = PlateHole("foot", "top", 20.0, 20.0, Dim(5.5, "piece.foot"), None, "", 10.0, 5.4)
    made = plated(plate(holes=(hole,)))

    assert numbers(made) == []
    assert [s.tool_kind for s in made.cards[1].steps][-1] == "end mill"


def test_a_countersink_is_not_a_counterbore(plated, shop, numbers):
    """90 deg to 10; the drawer has 6, 10 and 16. 82 deg is not owned."""
    hole = PlateHole("foot", "top", 20.0, 20.0, Dim(5.5, "piece.foot"), None, "", 10.0, 2.25, 90.0)
    made = plated(plate(holes=(hole,)))

    assert (made.cards[1].steps[-1].tool_kind, made.cards[1].steps[-1].tool_size) == ("countersink", 10.0)
    assert numbers(made) == []
    assert 413 in numbers(plated(plate(holes=(replace(hole, sink_angle=82.0),))))


def test_a_left_hand_thread_wants_its_own_tap(plated, numbers):
    """A right-hand M5 does not do."""
    hole = PlateHole("eye", "top", 20.0, 20.0, Dim(5.0, "piece.eye"), None, "M5", left=True)

    assert 414 in numbers(plated(plate(holes=(hole,))))


def test_the_height_of_the_mill_is_reckoned(plated, shop, numbers):
    """13 drill: 65 + 151 - 20 + 2 = 198 in a chuck; a stub in a collet 30 + 90.6 - 20 + 2 = 102.6."""
    hole = replace(HOLE, x=30.0, y=20.0, dia=Dim(13.0, "piece.foot"))
    shape = plate(holes=(hole,))

    def low(nose: float):
        return plated(shape, replace(shop, mill=replace(shop.mill, nose_to_table=nose)))

    # under the nose: table to work 60 + 5, work 10
    assert 432 not in numbers(low(75 + 198.0), "caution")
    assert 432 in numbers(low(75 + 197.9), "caution")
    assert 432 in numbers(low(75 + 102.6), "caution")
    assert 432 in numbers(low(75 + 102.5), "stop")


def test_edges_are_touched_with_half_a_finder(plated):
    """The signs stand on the card."""
    card = plated(plate(holes=(HOLE,))).cards[1]

    assert (
        "the spindle is then at X -5.00 with a 10 finder; the front edge: Y -5.00" in card.before_starting[0]
    )


def test_where_a_cutter_turns_stands_in_the_list_with_its_dial(plated, shop):
    """Slot 20 x 6 about 40, 20: the 6 cutter turns at 33 and 47; 33 is 16 turns and 50 divisions of 0.02 and 2.0 a turn."""
    one = Slot("slot", "top", 40.0, 20.0, 20.0, Dim(6.0, "piece.slot"), 4.0)
    card = plated(plate(slots=(one,))).cards[1]

    assert [(p.x, p.y) for p in card.places] == [(33.0, 20.0), (47.0, 20.0)]
    assert card.places[0].dial_x == "right 16 t 50 div"


def test_a_steps_wall_reads_on_the_dial(plated):
    """4 wide from the left with a 16 cutter: 4 outside, 2 turns to the left."""
    one = PlateStep("ledge", "top", "left", Dim(4.0, "piece.ledge"), Dim(2.0, "piece.deep"))
    step = next(s for s in plated(plate(steps=(one,))).cards[1].steps if s.feature == "ledge")

    assert "axis at X -4.000 (left 2 t 0 div)" in step.dial[1]


def test_places_further_apart_than_the_table_travels_are_a_stop(plated, shop, numbers):
    """200 apart against 150 along; 60 against 50 across."""
    far = (replace(HOLE, x=10.0), replace(HOLE, name="other", x=210.0, y=70.0))
    short = replace(shop, mill=replace(shop.mill, travel_x=150.0, travel_y=50.0))
    made = plated(plate(long=220.0, wide=80.0, holes=far), short)

    assert [f.figure for f in made.findings if f.number == 451 and f.severity == "stop"] == [
        "200.0 mm",
        "60.0 mm",
    ]
    assert 451 not in numbers(plated(plate(holes=(HOLE,))))
