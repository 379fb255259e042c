"""The whole chain on the demonstrator: what a plan must say in two shops, and what follows from a loss."""

from __future__ import annotations

from dataclasses import asdict, replace
from pathlib import Path

import pytest

from tommybar.design import design_from_text, load_design
from tommybar.made.record import Made, Measured
from tommybar.planning import plan
from tommybar.shop import load_shop

EXAMPLES = Path(__file__).parents[2] / "examples"


@pytest.fixture(scope="module")
def design():
    """The demonstrator."""
    return load_design(EXAMPLES / "demonstrator" / "design.yaml")


@pytest.fixture(scope="module")
def shop_r():
    """The reference shop."""
    return load_shop(EXAMPLES / "shops" / "shop-r.yaml")


@pytest.fixture(scope="module")
def small():
    """The small bench, in which the demonstrator does not fit as drawn."""
    return load_shop(EXAMPLES / "shops" / "small-bench.yaml")


@pytest.fixture(scope="module")
def in_r(design, shop_r):
    """The plan in shop R."""
    return plan(design, shop_r)


def numbers(one, severity=None):
    """Numbers of a plan's findings."""
    return [f.number for f in one.findings if severity in (None, f.severity)]


def test_shop_r_makes_it_as_drawn_without_a_stop(in_r):
    """The example shop makes the design at scale 1."""
    assert in_r.scale == 1.0
    assert in_r.stops == ()
    assert {p.part.name for p in in_r.parts} >= {
        "wheel",
        "shaft",
        "bush",
        "pillar",
        "base",
        "crank",
        "handle",
    }


def test_the_small_bench_resizes_it_and_names_what_binds(design, small):
    """Swing 72 less 2 x 1 of daylight over a wheel of 90: 0.77 of it at most, by hand."""
    one = plan(design, small)

    assert one.scale <= (72 - 2) / 90
    assert any(b.binds and "swing over the cross-slide" in b.what for b in one.binds)
    assert one.stops == ()
    assert {row.name for row in one.sizes} == {named.name for named in design.named}


def test_the_same_inputs_give_the_same_plan(design, shop_r, in_r):
    """Twice the same, to the last figure, and the id with it."""
    again = plan(design, shop_r)

    assert asdict(again) == asdict(in_r)


def test_any_change_of_an_input_changes_the_id(design, shop_r, in_r):
    """A reamer more, a measured size, a fixed scale: each is another plan."""
    ids = {
        in_r.plan_id,
        plan(design, replace(shop_r, saw_kerf=1.2)).plan_id,
        plan(design, shop_r, Made(measured=(Measured("bush.bore", 8.02),))).plan_id,
        plan(design, shop_r, scale=0.9).plan_id,
    }

    assert len(ids) == 4


def test_holes_are_made_before_the_shafts_that_fit_them(in_r):
    """Reamed bores first; the member made last closes the loop."""
    order = [p.part.name for p in in_r.parts]

    assert order.index("wheel") < order.index("shaft")
    assert order.index("pillar") < order.index("bush") < order.index("shaft")
    assert order.index("base") < order.index("shaft")


def test_metal_is_neither_lost_nor_made(in_r):
    """Removed + parted off + left = blank, to a millionth."""
    turned = [p.run for p in in_r.parts if p.run is not None]

    assert len(turned) == 5
    for run in turned:
        away = sum(card.separated_volume for card in run.cards)
        assert run.removed_volume + away + run.left_volume == pytest.approx(run.blank_volume, rel=1e-6)
        assert run.missing_volume == pytest.approx(0, abs=0.01)


def test_a_bore_reamed_over_gives_the_shaft_its_new_limits(design, shop_r, in_r):
    """8 H7/f7 has 0.013 to 0.043 of play (ISO 286-2); a bore of 8.020 wants a journal of 7.977 to 8.007.

    The fit's least and most clearance are kept about the measured bore:
    8.020 - 0.043 and 8.020 - 0.013.
    """
    over = plan(design, shop_r, Made(measured=(Measured("bush.bore", 8.020, "plug gauges"),)))

    was, now = (
        next(f.dia for f in one.part("shaft").part.shape.outside if f.name == "journal_b")
        for one in (in_r, over)
    )
    assert (was.smallest, was.largest) == pytest.approx((7.972, 7.987))
    assert (now.smallest, now.largest) == pytest.approx((7.977, 8.007))
    assert "8.02" in over.part("shaft").changed
    steps = [
        s for card in over.part("shaft").cards for s in card.steps if s.feature == "journal_b" and s.measure
    ]
    assert steps and "8.02" in steps[0].why
    assert steps[0].big == "7.992"


def test_without_the_reamer_of_8_it_says_so(design, shop_r):
    """The bush's bore waits for a reamer that is not there: another size follows or the bore is bored."""
    less = replace(shop_r, reamers=tuple(r for r in shop_r.reamers if r.size != 8.0))
    one = plan(design, less, scale=1.0)

    words = [f.words for f in one.findings]
    rows = {row.name: row for row in one.sizes}
    assert any("8" in w and ("reamer" in w or "ream" in w) for w in words) or rows["journal"].new != 8.0
    assert set(numbers(one)) != set(numbers(plan(design, shop_r, scale=1.0)))


def test_without_the_outside_jaws_it_says_so(design, shop_r):
    """The wheel loses its grip: it shrinks, changes holding with a caution, or stops; never in silence."""
    less = replace(shop_r, jaws=tuple(j for j in shop_r.jaws if j.name not in ("outside jaws", "four-jaw")))
    one = plan(design, less)

    assert one.scale < 1.0 or one.stops


def test_with_half_of_the_bar_the_rack_does_not_serve(design, shop_r):
    """Half of the silver steel: with the rack only it is a stop, else a line on the request slip."""
    cut = tuple(replace(b, length=b.length / 8) if b.material == "silver steel" else b for b in shop_r.rack)
    less = replace(shop_r, rack=cut)

    only = plan(design, less, stock="rack")
    ask = plan(design, less, stock="ask")
    assert any(f.severity == "stop" and 200 <= f.number < 300 for f in only.findings)
    assert any("silver steel" in line.words for line in ask.stock.buy)


def test_a_fixed_scale_is_kept_and_what_it_breaks_is_told(design, small):
    """Scale 1 in the small shop stands, with the swing as a stop."""
    one = plan(design, small, scale=1.0)

    assert one.scale == 1.0
    assert any(f.severity == "stop" and "wing over" in f.words for f in one.findings)


def test_a_changed_size_changes_only_its_parts(design, shop_r, in_r):
    """A longer handle leaves the cards of every other part as they were."""
    text = design.file_text.replace("grip_long:    {is: 18", "grip_long:    {is: 20")
    assert text != design.file_text
    other = plan(design_from_text(text, str(design.path)), shop_r)

    changed = {p.part.name for p in other.parts if p.cards != in_r.part(p.part.name).cards}
    assert changed == {"handle"}


def test_the_loop_is_bounded(design, small):
    """The count of rounds is told and within its bound."""
    assert 1 <= plan(design, small).rounds <= 25


def test_the_package_gives_the_function_whatever_was_imported_before():
    """The four doors of the package are functions, not modules, in any order of imports."""
    import tommybar
    import tommybar.planning

    assert tommybar.plan is plan
    assert tommybar.Plan is tommybar.planning.Plan
    assert tommybar.load_design is load_design
    assert tommybar.load_shop is load_shop


def test_a_much_smaller_scale_that_no_sizes_suit_does_not_hide_a_slightly_smaller_one(design, tmp_path):
    """Jaws to 75 mm and bars that want 1.5 mm of skin: 0.82 gives a bar of 76 that nothing holds, 0.81 one that goes."""
    place = tmp_path / "shed.yaml"
    place.write_text(
        "tommybar: 1\nshop: Back shed\nunits: mm\nreamers: [6, 8, 10, 12]\n"
        "lathe: {centre_height: 60, swing_over_bed: 120, swing_over_cross_slide: 84,"
        " between_centres: 220, spindle_bore: 12}\n"
    )

    found = plan(design, load_shop(place))

    assert found.scale < 0.82
    assert 302 not in numbers(found, "stop")
