"""Each entry re-plans: new limits, changed cards, stale paper, begun cards kept."""

import shutil
from dataclasses import replace

import pytest

from tommybar.bench.begun import keep_begun
from tommybar.bench.builds import load_build, start_build
from tommybar.bench.card_text import card_mark, card_marks
from tommybar.bench.inputs import inputs_of, plan_with
from tommybar.bench.journal import receive
from tommybar.bench.replan import plan_of, printed_entry, record, replanned
from tommybar.made.record import Made, Ticked
from tommybar.refusals import Refusal

from .conftest import DESIGN, EXAMPLES


def test_a_bore_over_its_limit_gives_the_shaft_new_limits(folder, build, hand):
    """wheel.bore 10.021: H7/h8 leaves 0 to 0.037, so the seat is 9.984 to 10.021; the reason is told."""
    found = record(folder, build.id, [hand("size", "wheel.bore", value=10.021, instrument="plug")])

    (limits,) = found.changes.limits
    assert (limits.size, limits.low, limits.high) == ("shaft.seat", 9.984, 10.021)
    assert limits.before == "9.978 to 10.000 mm"
    assert limits.why == "wheel.bore measured 10.021 mm; keeps the fit H7/h8"
    assert {card.part for card in found.changes.cards} == {"shaft"}


def test_a_loop_is_solved_on_the_member_made_last(folder, build, hand):
    """Base 50.06 and flanges 3.02 leave 44.02 less the float of 0.05 to 0.2: seat 43.82 to 43.97 long."""
    found = record(
        folder,
        build.id,
        [hand("size", "base.width", value=50.06), hand("size", "bush.flange.long", value=3.02)],
    )

    seat = next(one for one in found.changes.limits if one.size == "shaft.seat.long")
    assert (seat.low, seat.high, seat.before, seat.after) == (
        43.82,
        43.97,
        "43.900 mm",
        "43.820 to 43.970 mm",
    )
    assert "43.820 to 43.970 mm" in seat.why  # what retargeting says by itself
    assert "base.width measured 50.060 mm" in seat.why


def test_printed_cards_that_say_something_else_now_are_named(folder, build, hand):
    """Of all the cards printed, only those that changed are stale; printing them again mends it."""
    first = plan_of(build)
    record(folder, build.id, [printed_entry(first, device="bench", number=1)])

    found = record(folder, build.id, [hand("size", "base.width", value=50.06)])

    stale = {one.key for one in found.changes.stale}
    assert stale == {one.key for one in found.changes.cards}
    assert stale and all(key.startswith("shaft/") for key in stale)
    assert {one.plan_id for one in found.changes.stale} == {first.plan_id}
    again = printed_entry(found.changes.plan, device="bench", number=2, parts=["shaft"])
    assert set(again.said["cards"]) == {key for key in card_marks(first) if key.startswith("shaft/")}
    hand.minute = 59
    later = record(folder, build.id, [replace(again, at="2030-01-01T00:00:00.000+00:00")])
    assert later.changes.stale == ()


def test_limits_alone_make_another_card(build):
    """A hold point with a limit moved by a thousandth says something else; the number of cards alone does not."""
    card = plan_of(build).part("wheel").cards[0]
    step = next(one for one in card.steps if one.measure and one.measure[0].dim.toleranced)
    held = replace(step.measure[0], dim=replace(step.measure[0].dim, smallest=9.999, largest=10.016))
    moved = tuple(replace(one, measure=(held,)) if one is step else one for one in card.steps)

    assert held.dim.target == step.measure[0].dim.target
    assert card_mark(replace(card, steps=moved)) != card_mark(card)
    assert card_mark(replace(card, of=card.of + 1)) == card_mark(card)


def test_a_tick_changes_nothing_on_any_card(folder, build, hand):
    """Ticks and pauses are not sizes: no card changes by them."""
    found = record(
        folder, build.id, [hand("tick", "wheel/1/1"), hand("pause", "wheel", where="in the chuck")]
    )

    assert (found.changes.cards, found.changes.limits, found.changes.stale) == ((), (), ())


def test_an_undo_gives_the_old_limits_back(folder, build, hand):
    """After the undo the plan is the one from before, card for card."""
    reading = hand("size", "wheel.bore", value=10.021)
    before = plan_of(build)
    record(folder, build.id, [reading])

    found = record(folder, build.id, [hand("undo", reading.id)])

    assert card_marks(found.changes.plan) == card_marks(before)
    assert [one.size for one in found.changes.limits] == ["shaft.seat"]


def test_a_changed_card_shows_what_changed(folder, build, hand):
    """The lines before and after stand side by side."""
    found = record(folder, build.id, [hand("size", "base.width", value=50.5)])

    lines = [line for card in found.changes.cards for line in card.lines]
    assert any(line.startswith("- ") and "shaft.length 87.9000" in line for line in lines)
    assert any(line.startswith("+ ") and "shaft.length 88.3750" in line for line in lines)


def test_cards_that_are_begun_keep_their_order(folder, build, hand):
    """When a new shop would turn a begun route round the old one stays, and a finding says so."""
    before = plan_of(build)
    shop = build.shop_text.replace("name: collets", "name: no collets").replace(
        "sizes: 2-16 by 0.5", "sizes: 2-3 by 0.5"
    )
    change = hand("change", because="the collets are lent", shop=shop)
    receive(folder, build.id, [change])
    untouched = plan_of(load_build(folder, build.id))
    assert [c.hold.device for c in untouched.part("shaft").cards] != [
        c.hold.device for c in before.part("shaft").cards
    ]

    made = Made("", (), (Ticked("shaft/1/1"),))
    kept = keep_begun(untouched, {"shaft": before}, made)

    assert kept.part("shaft").cards[0] == before.part("shaft").cards[0]
    assert kept.part("handle") == untouched.part("handle")
    (told,) = [one for one in kept.findings if one.number == 713]
    assert "route of shaft would now be another" in told.words


def test_a_build_whose_shaft_is_begun_keeps_its_route_by_itself(folder, build, hand):
    """The tick before the change of shop is enough: the plan of the build remembers how it was begun."""
    before = plan_of(build)
    shop = build.shop_text.replace("sizes: 2-16 by 0.5", "sizes: 2-3 by 0.5")
    record(folder, build.id, [hand("tick", "shaft/1/1")])

    found = record(folder, build.id, [hand("change", because="the collets are lent", shop=shop)])

    assert found.changes.plan.part("shaft").cards[0] == before.part("shaft").cards[0]
    assert len(found.changes.kept) == 1
    assert {one.part for one in found.changes.cards} >= {"handle"}


def test_a_begun_card_still_gets_new_limits(folder, build, hand):
    """A route in the same order is taken with its new figures, begun or not."""
    record(folder, build.id, [hand("tick", "shaft/1/1")])

    found = record(folder, build.id, [hand("size", "bush.bore", value=8.020)])

    journal = [m for c in found.changes.plan.part("shaft").cards for s in c.steps for m in s.measure]
    assert {round(m.dim.largest, 4) for m in journal if m.size == "shaft.journal_b"} == {8.007}
    assert found.changes.kept == ()
    assert {(one.key, one.begun) for one in found.changes.cards} >= {("shaft/1", True)}


def test_starting_a_build_plans_and_keeps_the_scale(folder):
    """A build of the demonstrator in an example shop: its scale is the plan's, and is kept from then on."""
    build = start_build(folder, "demo", "small-bench", title="Small one")

    assert build.scale is not None and build.scale < 1
    assert plan_of(build).scale == build.scale
    assert load_build(folder, build.id[:13]) == build


def test_a_build_can_begin_from_a_made_file(folder, tmp_path, build):
    """The sizes of the file are its first entries; two builds may begin from the same file."""
    place = tmp_path / "made.yaml"
    place.write_text("tommybar: 1\nmade:\n  - {size: wheel.bore, is: 10.012, with: plug}\n")

    first = start_build(folder, "demo", "mine", scale=1.0, made=place)
    second = start_build(folder, "demo", "mine", scale=1.0, made=place)

    assert inputs_of(first).made.size("wheel.bore").value == 10.012
    assert first.entries[0].id != second.entries[0].id


def test_a_build_cannot_begin_with_what_is_faulty(folder, tmp_path):
    """A faulty design or a missing shop is refused before anything is written."""
    folder.save_design("bad", DESIGN.replace("web:          {is: 6,", "web:          {is: 60,"))
    with pytest.raises(Refusal, match=r"rim_wide - web|recess"):
        start_build(folder, "bad", "mine", scale=1.0)
    with pytest.raises(Refusal, match='no shop "nowhere"'):
        start_build(folder, "demo", "nowhere")


def test_a_build_is_not_moved_by_edits_of_its_files(folder, build, hand):
    """The design file is changed or gone; the build goes on with what it was begun with."""
    before = plan_of(build)
    shutil.rmtree(folder.path / "designs")

    assert plan_with(inputs_of(load_build(folder, build.id))) == before


def test_a_plan_of_two_states_compares_with_itself(build):
    """Nothing entered, nothing changed."""
    changes = replanned(build, build)

    assert (changes.cards, changes.limits, changes.stale, changes.kept) == ((), (), (), ())
    assert (EXAMPLES / "shops").is_dir()
