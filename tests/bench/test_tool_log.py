"""What tools really do, offered to the shop file and used next time."""

import pytest

from tommybar.bench.inputs import inputs_of, plan_with, shop_of
from tommybar.bench.tool_log import apply_proposal, observed, proposals
from tommybar.refusals import Refusal

from .conftest import SHOP
from .test_as_built import changed_lines


def test_a_reamed_bore_tells_what_the_reamer_cuts(after, hand):
    """wheel.bore 10.012 with the reamer of 10: it cuts 0.012 over in mild steel."""
    build = after(hand("size", "wheel.bore", value=10.012), hand("size", "wheel.rim", value=90.0))

    (one,) = observed(build)

    assert (one.kind, one.tool, one.over, one.material) == ("reamer", "reamer 10", 0.012, "mild steel")


def test_a_reading_that_was_undone_or_slipped_tells_nothing(after, hand):
    """25.4 times the size is no reamer; an undone reading is none either."""
    slip, undone = hand("size", "wheel.bore", value=254.0), hand("size", "pillar.bore", value=12.03)

    assert observed(after(slip, undone, hand("undo", undone.id))) == ()


def test_the_run_out_after_gripping_tells_of_the_chuck(after, hand):
    """A reading named card.runout is that of the jaws of the card; it is no size of the part."""
    build = after(hand("size", "wheel/2.runout", value=0.05), hand("size", "shaft/1.runout", value=0.0))

    found = observed(build)

    assert [(one.kind, one.tool, one.over) for one in found] == [
        ("chuck", "outside jaws", 0.05),
        ("chuck", "collets", 0.0),
    ]
    assert inputs_of(build).made.measured == ()


def test_the_middle_reading_is_offered_to_the_shop_file(after, hand):
    """Three readings: the middle one, their number and spread are told; one splice writes it."""
    build = after(*(hand("size", "wheel.bore", value=value) for value in (10.011, 10.014, 10.02)))

    (one,) = proposals(observed(build), SHOP)
    text = apply_proposal(SHOP, one)

    assert (one.before, one.after, one.count, one.spread) == (10.006, 10.014, 3, 0.009)
    assert one.words == (
        "reamer 10 cuts 10.014 mm in mild steel (3 readings, spread 0.009); the file says 10.006 mm."
    )
    assert changed_lines(SHOP, text) == [
        "-   - {size: 10, zone: H7, cuts: 10.006}",
        "+   - {size: 10, zone: H7, cuts: 10.014}",
    ]
    assert proposals(observed(build), text) == ()


def test_next_time_the_plan_expects_what_the_reamer_does(after, hand):
    """With the changed shop file the card of the wheel says what bore to expect."""
    build = after(hand("size", "wheel.bore", value=10.014))
    text = apply_proposal(SHOP, proposals(observed(build), SHOP)[0])

    next_time = after(hand("change", because="tool log", shop=text))

    dials = [
        line
        for card in plan_with(inputs_of(next_time)).part("wheel").cards
        for step in card.steps
        for line in step.dial
    ]
    assert any("expect 10.014" in line for line in dials)


def test_a_chuck_that_runs_out_more_is_offered_too(after, hand):
    """The run-out of a jaw set is changed in its block; comments stay."""
    (one,) = proposals(observed(after(hand("size", "wheel/2.runout", value=0.12))), SHOP)

    text = apply_proposal(SHOP, one)

    assert shop_of(text).jaw_set("outside jaws").runout == 0.12
    assert len(changed_lines(SHOP, text)) == 2


@pytest.mark.parametrize("written", ["  - 10\n", "  - {size: 10}\n", "  - size: 10\n    zone: H7\n"])
def test_a_reamer_that_never_was_tried_gets_its_figure(after, hand, written):
    """However the reamer is written, what it cuts is added to it."""
    text = SHOP.replace("  - {size: 10, zone: H7, cuts: 10.006}\n", written)
    (one,) = proposals(observed(after(hand("size", "wheel.bore", value=10.014))), text)

    changed = apply_proposal(text, one)

    assert one.before is None
    assert next(r.cuts_over for r in shop_of(changed).reamers if r.size == 10) == pytest.approx(0.014)


def test_a_proposal_for_a_tool_that_is_gone_is_refused(after, hand):
    """When the shop file was changed meanwhile, nothing is spliced in at a wrong place."""
    (one,) = proposals(observed(after(hand("size", "wheel.bore", value=10.014))), SHOP)

    with pytest.raises(Refusal, match="no reamer 10 any more"):
        apply_proposal("tommybar: 1\nshop: x\nunits: mm\n", one)
