"""What may be asked of a shop: grips, speeds, tools, drills, instruments, bars."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tommybar.refusals import Refusal
from tommybar.shop import example_shops, load_shop
from tommybar.shop.questions import (
    bars_of,
    drill_at_or_below,
    grips_for,
    instrument_for,
    lathe_tool,
    nearest_grip_words,
    obtainable_of,
    reamer_for,
    speed_at_or_below,
    tool_letters,
)


@pytest.fixture(scope="module")
def shop():
    """The reference shop."""
    return load_shop(example_shops()["shop-r"])


@pytest.fixture(scope="module")
def small():
    """The small bench."""
    return load_shop(example_shops()["small-bench"])


def test_grips_truest_first_and_never_deeper_than_the_work(shop):
    """A 10 mm shaft with 12 mm to hold: collet before four-jaw before inside jaws, 12 deep."""
    found = [(jaws.name, depth) for jaws, depth in grips_for(shop, 10.0, 12.0)]

    assert found == [("collets", 12.0), ("four-jaw", 12.0), ("inside jaws", 12.0)]


def test_a_step_of_the_outside_jaws_is_as_deep_as_it_is(shop):
    """At 92 mm only the outside jaws reach, and hold 8 of 24 mm."""
    assert [(jaws.name, depth) for jaws, depth in grips_for(shop, 92.0, 24.0)] == [("outside jaws", 8.0)]


def test_ends_of_ranges_belong_to_them(shop):
    """36 is held by the inside jaws, 36.1 is not."""
    names = [[jaws.name for jaws, _ in grips_for(shop, dia, 20.0)] for dia in (36.0, 36.1)]

    assert "inside jaws" in names[0]
    assert "inside jaws" not in names[1]


def test_words_for_what_no_jaws_hold(shop, small):
    """Too large, too small, and nothing to say when there is a grip."""
    assert nearest_grip_words(shop, 131.0) == "over 95 has no jaws"
    assert nearest_grip_words(small, 1.0) == "below 1.5 has no jaws"
    assert nearest_grip_words(shop, 50.0) == ""


def test_words_for_a_gap_between_jaw_sets(shop):
    """A shop whose jaws end at 36 and begin again at 39 says so."""
    inside, outside = shop.jaw_set("inside jaws"), shop.jaw_set("outside jaws")
    gapped = replace(shop, jaws=(inside, replace(outside, ranges=((39.0, 95.0, 8.0),))))

    assert nearest_grip_words(gapped, 37.5) == "36 to 39 has no jaws"


@pytest.mark.parametrize(("wanted", "gives"), [(599, 400), (600, 600), (5000, 2200), (90, 150)])
def test_speeds_are_those_on_the_plate(shop, wanted, gives):
    """The next speed at or below; the slowest when even that is too fast."""
    assert speed_at_or_below(shop.lathe.speeds, wanted) == gives


def test_a_machine_without_speeds_is_refused():
    """No speed is invented for a machine that has none."""
    with pytest.raises(Refusal, match="has no speeds"):
        speed_at_or_below((), 100.0)


def test_tools_by_what_they_must_do(shop):
    """Hand, reach, bore and width choose; nothing is offered when nothing fits."""
    assert lathe_tool(shop, "knife", hand="left").letter == "C"
    assert lathe_tool(shop, "boring", smallest_bore=9.7, reach=24).letter == "E"
    assert lathe_tool(shop, "boring", smallest_bore=5.0) is None
    assert lathe_tool(shop, "parting", reach=14.5) is None
    assert lathe_tool(shop, "groove", width=1.5, reach=1.2).letter == "J"
    assert lathe_tool(shop, "recess", reach=8, width=22).width == 3
    assert lathe_tool(shop, "knurling", pattern="diamond").pitch == 1.0
    assert tool_letters(shop)[:3] == ("A", "B", "C")


def test_drills_and_reamers(shop):
    """The next drill down, and the reamer of a size or none."""
    assert drill_at_or_below(shop, 9.9) == drill_at_or_below(shop, 9.8) == 9.8
    assert drill_at_or_below(shop, 0.5) is None
    assert reamer_for(shop, 8.0).size == 8.0
    assert reamer_for(shop, 7.0) is None


def test_the_coarsest_instrument_that_can_judge(shop):
    """0.4 mm on an outside goes by caliper, 0.03 by micrometer; a bore by plug; 200 mm by nothing."""
    assert instrument_for(shop, "outside", 20.0, 0.4).name == "caliper 150"
    assert instrument_for(shop, "outside", 20.0, 0.03).name == "micrometer 0-25"
    assert instrument_for(shop, "inside", 10.0, 0.015).name == "plug gauges and pins"
    assert instrument_for(shop, "outside", 200.0, 0.4) is None


def test_when_none_can_judge_the_finest_is_named(shop):
    """2 um on 20 mm is beyond the shop; it still says what comes nearest."""
    assert instrument_for(shop, "outside", 20.0, 0.002).name == "micrometer 0-25"


def test_bars_by_material_and_section(shop):
    """Silver steel of the rack, smallest first; brass hexagon can be bought."""
    assert [bar.size for bar in bars_of(shop, "silver steel", "round")] == [8.0, 10.0]
    assert bars_of(shop, "titanium") == ()
    assert [bar.size for bar in obtainable_of(shop, "free-cutting brass", "hexagon")][:2] == [5.0, 6.0]
