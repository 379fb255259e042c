"""Where each tool's reference point lies, and what is exact about its nose."""

from __future__ import annotations

import math

import numpy as np
import pytest
from shapely import Point, Polygon, box

from tommybar.dryrun.axis_tools import centre_drill, countersink, reamer, twist_drill
from tommybar.dryrun.cutting import cut_step, feed_directions
from tommybar.dryrun.sweep import Corners
from tommybar.dryrun.tool_shapes import ToolShape, tool_shape
from tommybar.dryrun.turning_tools import blade, boring_bar, chamfer_tool, knife, recess_tool
from tommybar.making.cards import Move

from .bench import SHOP, step, way


def extremes(piece: Corners) -> tuple[float, float, float, float]:
    (low_z, low_r), (high_z, high_r) = piece.min(axis=0), piece.max(axis=0)
    return float(low_z), float(low_r), float(high_z), float(high_r)


@pytest.mark.parametrize("nose", [0.0, 0.2, 0.8])
def test_the_touched_off_corner_is_the_origin(nose: float) -> None:
    """Knife: -z and -r; left knife: +z and -r; boring: -z and +r; blade: +z and -r; recess: -z and +r."""
    right, left = (knife(nose, 8.0, 20.0, hand, ())[0][0] for hand in (False, True))
    assert extremes(right)[:2] == pytest.approx((0, 0), abs=1e-12)
    assert extremes(left)[1:3] == pytest.approx((0, 0), abs=1e-12)
    bored = extremes(boring_bar(nose, 8.0, 10.0, 30.0, ())[0][0])
    assert (bored[0], bored[3]) == pytest.approx((0, 0), abs=1e-12)
    parted = extremes(blade(2.0, nose, 14.0, ())[0][0])
    assert parted[:3] == pytest.approx((-2, 0, 0), abs=1e-12)
    recessed = extremes(recess_tool(3.0, nose, 12.0, ())[0][0])
    assert (recessed[0], recessed[1], recessed[3]) == pytest.approx((0, -3, 0), abs=1e-12)


def test_every_piece_is_convex_and_runs_counter_clockwise() -> None:
    """The sweep relies on both."""
    tools = [
        knife(0.4, 8.0, 20.0, False, (0.3,)),
        knife(0.4, 8.0, 20.0, True, (2.0,)),
        boring_bar(0.4, 8.0, 10.0, 30.0, (0.1,)),
        blade(2.0, 0.2, 14.0, ()),
        recess_tool(3.0, 0.2, 12.0, (1.0,)),
        chamfer_tool(8.0, 20.0),
        twist_drill(7.8),
        reamer(8.0),
        reamer(40.0),
        centre_drill(2.5),
        countersink(12.0),
    ]
    for pieces in tools:
        for piece in (one for group in pieces for one in group):
            shape = Polygon(piece)
            assert shape.exterior.is_ccw
            assert shape.is_valid
            assert shape.convex_hull.area == pytest.approx(shape.area, rel=1e-9)


def test_lengths_of_axis_tools() -> None:
    """118 degrees: 0.300 d; the reamer's lead 0.1 d at 45 degrees; a countersink's 90 degrees."""
    drill = twist_drill(10.0)[0][0]
    full = min(z for z, r in drill.tolist() if r == pytest.approx(5.0))
    assert full == pytest.approx(5 / math.tan(math.radians(59)))
    lead = reamer(10.0)[0][0]
    assert min(z for z, r in lead.tolist() if r == pytest.approx(5.0)) == pytest.approx(1.0)
    sunk = countersink(12.0)[0][0]
    assert min(z for z, r in sunk.tolist() if r == pytest.approx(6.0)) == pytest.approx(6.0)


@pytest.mark.parametrize("slant", [0.0, 10.0, 17.0, 45.0, 80.0])
def test_a_nose_cuts_a_slanting_wall_exactly(slant: float) -> None:
    """The wall lies where the true arc puts it: its distance from the centre's path is the radius."""
    nose, way_back = 0.8, math.radians(slant)
    end = Move(-20 * math.cos(way_back), 10 + 20 * math.sin(way_back))
    moves = (Move(1.0, 10 - math.tan(way_back)), Move(0.0, 10.0), end)
    cut, body, holder = knife(nose, 8.0, 20.0, False, feed_directions(moves))
    done = cut_step(box(-40, 0, 0, 30), ToolShape("knife", cut, body, holder, nose), moves)
    middle = np.array([(0.0 + end.z) / 2 + nose, (10.0 + end.r) / 2 + nose])
    normal = np.array([math.sin(way_back), math.cos(way_back)]) * -1
    wall = middle + normal * nose

    assert done.work.boundary.distance(Point(wall)) < 1e-6


def test_tools_are_chosen_by_letter_and_kind() -> None:
    """A drawer's tool by its letter, drills by their size, a saw when the spindle stands, none for a tap."""
    drill = tool_shape(step(1, "drill", way((2, 0), (-5, 0)), size=5.0), SHOP)
    assert drill is not None
    assert extremes(drill.cut[0])[3] == 2.5
    left = tool_shape(step(1, "knife", way((2, 9), (-5, 9)), "L"), SHOP)
    assert left is not None
    assert extremes(left.cut[0])[2] == 0.0
    assert tool_shape(step(1, "tap", (), size=6.0), SHOP) is None
    with pytest.raises(KeyError):
        tool_shape(step(1, "laser", way((2, 0), (-5, 0))), SHOP)


def test_a_file_takes_what_stands_over_its_line_and_nothing_below() -> None:
    """Led from (0, 5) down to (-10, 8) over a bar of 10: the triangle and the strip above are 10 x (5 + 2) / 2 = 35."""
    work = box(-20.0, 0.0, 0.0, 10.0)
    moves = way((0.0, 12.0), (0.0, 5.0), (-10.0, 8.0), (-10.0, 12.0))
    tool = tool_shape(step(1, "file", moves), SHOP, feed_directions(moves))
    done = cut_step(work, tool, moves)

    assert done.removed_area == pytest.approx(35.0, abs=0.01)
    assert done.hits == []


def test_a_parting_blade_that_plunges_is_a_blade() -> None:
    """The same shape as when it parts, though its step is a groove: no bit stands out beside it."""
    moves = way((0.0, 12.0), (0.0, 5.0))
    plunging = tool_shape(step(1, "groove", moves, "P"), SHOP)
    parting = tool_shape(step(1, "parting", moves, "P"), SHOP)

    assert [piece.tolist() for piece in plunging.body] == [piece.tolist() for piece in parting.body]
