"""Laws of shop files and of the questions asked of a shop."""

from __future__ import annotations

import itertools
import tempfile
from dataclasses import fields, replace
from pathlib import Path

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from tommybar.shop import example_shops, load_shop
from tommybar.shop.amounts import range_of_lengths
from tommybar.shop.questions import drill_at_or_below, grips_for, nearest_grip_words, speed_at_or_below

SHOPS = {name: load_shop(path) for name, path in example_shops().items()}
shops = st.sampled_from(sorted(SHOPS)).map(SHOPS.__getitem__)
WHOLE = yaml.safe_load(example_shops()["shop-r"].read_text())
KEYS = sorted(set(WHOLE) - {"tommybar", "shop", "units"})
LATHE_KEYS = sorted(WHOLE["lathe"])
# No example shop lends these: to plan with a dog that nobody owns would be to plan work that cannot be held.
NEVER_LENT = {"counterbores", "long_drills", "dogs", "catch_plate", "tail_centres", "steadies", "mandrels"}


def shop_of(data: dict) -> object:
    """The shop that a file with this data describes."""
    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder) / "shop.yaml"
        file.write_text(yaml.safe_dump(data))
        return load_shop(file)


@given(st.sets(st.sampled_from(KEYS)), st.sets(st.sampled_from(LATHE_KEYS)))
@settings(max_examples=25, deadline=None)
def test_what_is_left_out_of_a_file_is_assumed_and_nothing_else(gone, gone_of_lathe):
    """What is taken out of shop R is assumed, or not owned where no shop lends it; the rest is as it was."""
    data = {key: value for key, value in WHOLE.items() if key not in gone}
    if "lathe" in data:
        data["lathe"] = {key: value for key, value in WHOLE["lathe"].items() if key not in gone_of_lathe}
    shop, whole = shop_of(data), SHOPS["shop-r"]

    plain = gone - {"lathe", "mill"}
    assert plain - NEVER_LENT <= set(shop.assumed)
    assert not NEVER_LENT & set(shop.assumed)
    assert not any(getattr(shop, key) for key in NEVER_LENT - set(data))
    assert not {key for key in KEYS if key not in gone} & set(shop.assumed)
    if "lathe" in data:
        assert {f"lathe.{key}" for key in gone_of_lathe} <= set(shop.assumed)
    for field in fields(whole):
        if field.name in data and field.name not in ("lathe", "mill", "can"):
            assert getattr(shop, field.name) == getattr(whole, field.name)


@given(st.floats(30, 120), st.floats(5, 60), st.sampled_from(["mm", "in"]))
@settings(max_examples=25, deadline=None)
def test_a_figure_with_its_unit_means_the_same_in_any_file(centre, bore, unit):
    """Lengths that carry their unit do not care what the file's unit is."""
    data = {
        "tommybar": 1,
        "shop": "x",
        "units": unit,
        "lathe": {"centre_height": f"{centre:.4f} mm", "spindle_bore": f"{bore / 25.4:.8f} in"},
    }
    shop = shop_of(data)

    assert shop.lathe.centre_height == pytest.approx(round(centre, 4))
    assert shop.lathe.spindle_bore == pytest.approx(bore, abs=1e-6)


@given(shops, st.floats(0.5, 150), st.floats(0.1, 100))
def test_a_grip_holds_the_diameter_and_is_never_deeper_than_work_or_jaw(shop, dia, length):
    """Every answer lies in a range of its jaws; there are words exactly when there is no outside grip."""
    found = grips_for(shop, dia, length)

    for jaws, depth in found:
        assert any(low - 1e-6 <= dia <= high + 1e-6 and depth <= deep for low, high, deep in jaws.ranges)
        assert 0 < depth <= length
    outside = [jaws for jaws, _ in found if jaws.grips == "outside"]
    assert bool(outside) != bool(nearest_grip_words(shop, dia))


@given(shops, st.floats(1, 5000), st.floats(0.1, 30))
def test_speeds_and_drills_are_owned_and_the_next_one_up_is_too_much(shop, wanted, dia):
    """What is answered stands on the plate or in the drawer, and no larger one would have done."""
    speed, drill = speed_at_or_below(shop.lathe.speeds, wanted), drill_at_or_below(shop, dia)

    assert speed in shop.lathe.speeds
    assert speed <= wanted or speed == min(shop.lathe.speeds)
    assert all(other <= speed or other > wanted for other in shop.lathe.speeds)
    assert all(other > dia for other in shop.drills if drill is None or other > drill + 1e-9)


@given(st.integers(1, 40), st.integers(1, 60), st.sampled_from([0.05, 0.1, 0.25, 0.5, 1.0]))
def test_a_range_has_its_ends_and_equal_rises(first, count, by):
    """From first to last by a rise: count + 1 sizes, both ends among them."""
    last = first + count * by
    sizes = range_of_lengths(f"{first} to {last:.4f} by {by}", "mm")

    assert (sizes[0], sizes[-1]) == (first, pytest.approx(last))
    assert len(sizes) == count + 1
    assert all(b - a == pytest.approx(by) for a, b in itertools.pairwise(sizes))


@given(shops)
def test_the_order_of_jaws_does_not_matter(shop):
    """The same grips are found whichever way round the file lists them."""
    other = replace(shop, jaws=tuple(reversed(shop.jaws)))

    assert grips_for(shop, 10.0, 15.0) == grips_for(other, 10.0, 15.0)
