"""Routes of the demonstrator against the trade's own: which grips, in which order."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tommybar.design.model import Part, RunoutNeed
from tommybar.making.parts import route_part
from tommybar.shapes.features import Cylinder, Dim, TurnedShape

from .conftest import without_jaws


def lathe_cards(making):
    """The cards at the lathe."""
    return [card for card in making.cards if card.machine == "lathe"]


def features(card):
    """What a card cuts, in order."""
    return [step.feature for step in card.steps]


def test_the_wheel_has_rim_and_bore_in_one_grip(made):
    """Two lathe set-ups; what must run true to each other is cut in one of them."""
    first, second = lathe_cards(made("wheel"))

    assert {"rim", "bore", "dish"} <= set(features(first))
    assert first.hold.jaws == "outside jaws"
    assert first.hold.dia == 92
    assert first.hold.length == 8
    assert "boss" in features(second)
    assert second.hold.surface == "rim"
    assert "strips" in " ".join(second.before_starting)


def test_the_bush_is_made_body_outwards_and_parted_from_the_bar(made):
    """Body outwards, flange near the jaws, bore before the part-off, sleeve for the second face."""
    first, second = lathe_cards(made("bush"))

    assert first.free_end == "B"
    assert first.steps[-1].tool_kind == "parting"
    assert features(first).index("bore") < features(first).index("parting")
    assert second.hold.device.startswith("split sleeve")
    assert second.hold.surface == "body"


def test_the_bush_bore_waits_at_its_drill_until_it_is_pressed(made):
    """Leave 7.8; the reamer goes through after pressing."""
    first = lathe_cards(made("bush"))[0]

    sizes = [step.tool_size for step in first.steps if step.tool_kind in ("drill", "reamer")]
    assert sizes[-1] == 7.8
    assert all(step.tool_kind != "reamer" for step in first.steps)


def test_the_shaft_keeps_the_bar_and_turns_both_ends_from_a_collet(made):
    """Collet on the ground bar both times, the seat as supplied."""
    first, second = lathe_cards(made("shaft"))

    assert first.hold.device == second.hold.device == "collet 10"
    assert all(
        step.feature != "seat" or step.tool_kind in ("chamfer", "hand")
        for step in (*first.steps, *second.steps)
    )
    assert {f.of for card in (first, second) for f in card.runout} == {"journal_a", "journal_b"}
    assert all(f.expected <= f.within for card in (first, second) for f in card.runout)


def test_the_screw_is_knurled_first_and_held_by_its_thread_for_the_head(made):
    """Heavy knurling before the slender shank, a tapped sleeve for the head's face."""
    first, second = lathe_cards(made("handle"))

    kinds = [step.tool_kind for step in first.steps]
    assert kinds.index("knurling") < kinds.index("die") < kinds.index("parting")
    assert "tapped M4" in second.hold.device


def test_no_reaming_before_roughing(made):
    """Every roughing cut comes before the reamer and the last cuts."""
    for name in ("wheel", "shaft", "bush", "crank", "handle"):
        for card in lathe_cards(made(name)):
            rough = [s.number for s in card.steps if s.do.startswith("Rough")]
            last = [s.number for s in card.steps if s.tool_kind == "reamer" or s.do.startswith("Two equal")]
            assert not rough or not last or max(rough) < min(last), (name, card.number)


def test_without_the_outside_jaws_the_wheel_is_a_stop_with_the_four_jaws_range(made, shop_r):
    """The four-jaw holds up to 90 and the blank is 92; a rim that need not run true may stay a bright bar of 90."""
    shop = without_jaws(shop_r, "outside jaws")
    (stop,) = [f for f in made("wheel", shop).findings if f.severity == "stop"]
    assert (stop.number, stop.figure) == (302, "92 mm blank")
    assert "four-jaw 4-90 mm" in stop.bound

    loose = made("wheel", shop, needs=())
    assert [card.hold.jaws for card in lathe_cards(loose)] == ["four-jaw", "four-jaw"]
    assert loose.blank.size == 90.0


def test_without_any_jaws_for_the_wheel_the_stop_gives_figure_and_ranges(made, shop_r):
    """Neither outside jaws nor four-jaw: no holding reaches, and the ranges are printed."""
    other = made("wheel", without_jaws(shop_r, "outside jaws", "four-jaw"))

    stop = next(f for f in other.findings if f.number == 302)
    assert stop.severity == "stop"
    assert "92 mm" in stop.figure
    assert "inside jaws 3-36 mm" in stop.bound


def test_only_a_scroll_chuck_cannot_make_the_journals_true(made, shop_r):
    """A three-jaw of 0.08 against a need of 0.03: refused with both figures."""
    other = made("shaft", without_jaws(shop_r, "collets", "four-jaw"))

    stop = next(f for f in other.findings if f.number == 301)
    assert "0.030" in stop.bound or "0.03" in stop.bound
    assert float(stop.figure.split()[0]) > 0.03


def test_a_looser_need_never_costs_more_set_ups(made):
    """Of rim, boss and bore all true to each other within less and less, the set-ups only grow."""

    def cards(within):
        needs = (RunoutNeed("rim", "bore", within), RunoutNeed("boss", "rim", within))
        return lathe_cards(made("wheel", needs=needs))

    counts = [len(cards(within)) for within in (0.5, 0.1, 0.05, 0.02)]

    assert counts == sorted(counts)
    assert counts[0] == 2
    tight = {f.of: f for c in cards(0.02) for f in c.runout}
    assert tight
    assert all(f.expected <= 0.02 for f in tight.values())


def test_a_spindle_bore_too_small_for_the_bar_still_gives_a_route(made, shop_r):
    """A bar of 12 that does not pass a spindle of 10 is cut short: what does not stand out is just what is gripped."""
    small = replace(shop_r, lathe=replace(shop_r.lathe, spindle_bore=10))
    making = made("handle", small)
    first = lathe_cards(making)[0]

    assert [f for f in making.findings if f.severity == "stop"] == []
    assert first.hold.surface == "blank"
    assert making.blank.length - first.hold.sticks_out == pytest.approx(first.hold.length, abs=0.01)


@pytest.mark.parametrize("size", [8.0, 10.0])
def test_without_its_reamer_a_bore_is_bored_and_says_so(made, shop_r, size):
    """Take the reamer away and the bore is bored to size with its caution."""
    less = replace(shop_r, reamers=tuple(r for r in shop_r.reamers if r.size != size))
    name = {8.0: "bush", 10.0: "wheel"}[size]
    before, after = made(name), made(name, less)

    if name == "wheel":
        assert any(f.number == 412 for f in after.findings)
        assert not any(f.number == 412 for f in before.findings)
        assert any(s.tool_kind == "boring" for c in after.cards for s in c.steps)
    else:  # the bush's bore is finished after pressing: its lathe cards stay, its bench card says so
        assert [c.steps for c in lathe_cards(before)] == [c.steps for c in lathe_cards(after)]
        assert any(f.number == 412 for f in after.findings)


def test_the_bush_is_pressed_and_then_reamed_and_measured(made):
    """Press with a drawbolt, then ream 8 H7 in place; the journals read what came out.

    12 H7/p6: interference 0 to 0.029 (ISO 286-2: +18/0 and +29/+18).
    """
    bench = made("bush").cards[-1]

    assert bench.machine == "bench"
    press, ream = bench.steps
    assert "Interference 0.000 to 0.029" in press.dial[0]
    assert ream.do.startswith("Ream bore 8 H7")
    assert ream.measure[0].size == "bush.bore"
    assert ream.measure[0].gives_to == ("shaft.journal_a", "shaft.journal_b")


def test_the_float_is_measured_where_its_lengths_are_cut(made):
    """50 - 2 x 3 - seat must leave 0.05 to 0.2: the seat may be 43.80 to 43.95, by hand; the others feed it."""

    def measured(name):
        return {m.size: m for card in made(name).cards for step in card.steps for m in step.measure}

    seat = measured("shaft")["shaft.seat.long"]
    assert (seat.dim.smallest, seat.dim.largest) == pytest.approx((43.80, 43.95))
    assert measured("bush")["bush.flange.long"].gives_to == ("shaft.seat.long",)
    assert measured("base")["base.width"].gives_to == ("shaft.seat.long",)
    step = next(
        s for c in made("shaft").cards for s in c.steps if "shaft.seat.long" in [m.size for m in s.measure]
    )
    assert step.feature == "journal_b"  # the shoulder that ends the seat is cut last


def test_a_last_cut_does_not_start_over_a_thicker_land_in_front(shop_r):
    """17 without limits in front of 17 h9, aimed at 16.985: the tool goes in at the seam, not 1 mm before it."""
    lands = (
        Cylinder("front", Dim(17.0, "p.front"), 0.0, 20.0),
        Cylinder("seat", Dim(17.0, "p.seat", "h9", 16.957, 17.0), 20.0, 24.0),
    )
    part = Part("p", "turned", "free-cutting brass", 1, TurnedShape(Dim(24.0, "p.length"), lands))
    making = route_part(part, {}, shop_r)
    last = next(
        s for c in making.cards for s in c.steps if s.feature == "seat" and s.do.startswith("Two equal")
    )
    card = next(c for c in making.cards if last in c.steps)
    near = -20.0 if card.free_end == "A" else 0.0

    cut = [m.z for m in last.moves if m.r < 17.0 / 2]
    assert max(cut) <= near + (1.0 if near == 0.0 else 1e-6)
