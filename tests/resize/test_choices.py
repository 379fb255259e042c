"""What may stand in a size's place: tools, threads, stock and the grid, each by itself."""

from __future__ import annotations

import pytest

from tommybar.resize.grid import neighbour, on_grid
from tommybar.resize.screw_threads import thread_domain
from tommybar.resize.stock_sizes import bar_domain, plate_domain, sheet_domain
from tommybar.resize.tools import tool_domain
from tommybar.shop.model import Bar


def values(domain):
    """The values of a domain, best first."""
    return [one.value for one in domain.ordered]


def bars(*sizes):
    """Drawn rods of mild steel."""
    return [Bar(f"{size} rod", "mild steel", "round", size, 300) for size in sizes]


@pytest.mark.parametrize(
    ("exact", "millimetres"),
    [(13.6, 13.5), (13.75, 14.0), (3.0, 3.0), (2.95, 3.0), (2.94, 2.9), (0.05, 0.1), (0.01, 0.1)],
)
def test_the_grid_in_millimetres(exact, millimetres):
    """0.5 from 3 up, 0.1 below, ties up, and never nought."""
    assert on_grid(exact) == pytest.approx(millimetres)


@pytest.mark.parametrize(
    ("inches", "on"), [(0.51, 33 / 64), (0.1249, 0.125), (0.126, 8 / 64), (0.1026, 0.105)]
)
def test_the_grid_in_inches(inches, on):
    """1/64 from 1/8 up, 0.005 below."""
    assert on_grid(inches * 25.4, "in") / 25.4 == pytest.approx(on)


@pytest.mark.parametrize("exact", [13.6, 54.4, 3.3, 2.72, 7.0])
def test_the_neighbour_lies_one_step_beyond(exact):
    """The other side of the grid: the exact figure lies between the two, or on the nearest."""
    near, other = on_grid(exact), neighbour(exact)

    assert near != other
    assert min(near, other) <= exact <= max(near, other)


def test_a_tool_that_is_owned_is_kept_at_scale_one():
    """Nothing that the shop can make is changed: reamer 8 stays although 8.5 is near."""
    assert values(tool_domain("bore", "reamer", 8.0, 1.0, (6.0, 8.0, 8.5))) == [8.0]


def test_a_tool_that_is_lacking_at_scale_one_is_snapped_with_its_reason():
    """7 becomes 6.9 or 8, the nearest first, and the row says that 7 is lacking."""
    domain = tool_domain("bore", "reamer", 7.0, 1.0, (5.0, 6.9, 8.0))

    assert values(domain) == [6.9, 8.0]
    assert (
        domain.ordered[0].why == "nearest reamer of the shop, 0.1 mm from 7 mm; the shop has no reamer 7 mm"
    )
    assert domain.ordered[1].why.startswith("reamer 8 mm of the shop, 1 mm from 7 mm")


def test_a_hole_far_larger_than_any_tool_is_bored():
    """20 where the largest reamer is 12: scaled to 13.5 on the grid, with a caution."""
    domain = tool_domain("seat", "reamer", 20.0, 0.68, (4.0, 6.0, 10.0))

    assert values(domain) == [13.5]
    assert domain.ordered[0].caution.startswith("the largest reamer is 10 mm: bore it to 13.5 mm")


@pytest.mark.parametrize(
    ("old", "scale", "new"),
    [("M8", 0.68, "M6"), ("M6", 0.68, "M4"), ("M8", 0.50, "M4"), ("M6", 0.50, "M3"), ("M4", 0.60, "M3")],
)
def test_the_smallest_thread_that_is_strong_enough(old, scale, new):
    """Stress areas of ISO 898-1 (36.6, 20.1, 14.2, 8.78, 5.03), 0.90 of the scaled one asked."""
    assert values(thread_domain("clamp", old, scale, ("M3", "M4", "M5", "M6", "M8")))[0] == new


def test_an_inch_drawer_answers_by_stress_area():
    """M5 at full size: 14.2 asks 12.8; 10-32 has 12.9, 8-32 only 9.0."""
    domain = thread_domain("clamp", "M5", 1.0, ("#8-32 UNC", "#10-32 UNF", "1/4-20 UNC"))

    assert values(domain)[0] == "#10-32 UNF"
    assert any(one.startswith("#8-32 UNC") for one in domain.refused)


def test_no_thread_strong_enough_is_a_stop():
    """M8 cannot become anything when M3 and M4 are all there is."""
    choice = thread_domain("clamp", "M8", 1.0, ("M3", "M4")).ordered[0]

    assert choice.value == "M4"
    assert choice.stop.startswith("the largest thread owned, M4, has 0.24")


@pytest.mark.parametrize(
    ("old", "scale", "new"),
    [(16, 0.68, 10.0), (16, 0.62, 10.0), (16, 1.0, 16.0), (11, 1.0, 11.0), (20, 0.69, 14.0), (14, 1.0, 14.0)],
)
def test_a_bar_is_left_as_drawn_within_ten_per_cent(old, scale, new):
    """10.88 takes 10 untouched; 13.8 has no bar within 10 % and is turned to 14 from 16."""
    assert values(bar_domain("collar", old, scale, bars(8, 10, 12, 16), 10.5))[0] == new


def test_a_turned_bar_says_what_it_is_turned_from():
    """13.8: 12 is 13 % under, 16 is 16 % over."""
    assert bar_domain("collar", 20, 0.69, bars(8, 10, 12, 16), 20).ordered[0].why == "turned from 16 mm bar"


def test_plate_is_the_next_thickness_at_095():
    """5.44 asks 5.17: 5 is too thin and 6 is taken; 5.2 would do."""
    assert values(plate_domain("web", 8, 0.68, [5, 6, 8])) == [6, 8]
    assert values(plate_domain("web", 8, 0.68, [5, 5.2, 6]))[0] == 5.2


def test_plate_at_scale_one_is_kept_and_milled():
    """10 from 12 plate stays 10; from 9.5 plate it becomes 9.5 (0.95); from 9 plate it stops."""
    assert values(plate_domain("web", 10, 1.0, [8, 12])) == [10]
    assert values(plate_domain("web", 10, 1.0, [8, 9.5])) == [9.5]
    assert plate_domain("web", 10, 1.0, [8, 9]).ordered[0].stop == "the largest plate is 9 mm"


def test_sheet_is_the_nearest():
    """1.36 between 1.2 and 1.5 takes 1.5."""
    assert values(sheet_domain("washer", 2, 0.68, [1, 1.2, 1.5, 2]))[0] == 1.5
