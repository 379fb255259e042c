"""Move by move against the union of all sweeps at once, order, place and repetition."""

from __future__ import annotations

import random

import pytest
import shapely
import shapely.affinity
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import box
from shapely.geometry.base import BaseGeometry

from tommybar.dryrun.cutting import cut_step, feed_directions, path
from tommybar.dryrun.sweep import sweeps
from tommybar.dryrun.tool_shapes import ToolShape
from tommybar.dryrun.turning_tools import knife
from tommybar.dryrun.volumes import turned_volume
from tommybar.making.cards import Move

WORK = box(-40, 0, 2, 15)


def random_moves(seed: int) -> tuple[Move, ...]:
    """Ten moves of a knife about the end of a bar."""
    dice = random.Random(seed)
    return tuple(Move(dice.uniform(-25, 5), dice.uniform(2, 17)) for _ in range(10))


def tool(moves: tuple[Move, ...]) -> ToolShape:
    cut, _, _ = knife(0.4, 8.0, 20.0, False, feed_directions(moves))
    return ToolShape("knife", cut)


@settings(max_examples=40, deadline=None)
@given(st.integers(0, 10_000))
def test_one_after_another_is_all_at_once(seed: int) -> None:
    """Subtracting each sweep gives what subtracting their union gives; areas add up; twice takes nothing."""
    moves = random_moves(seed)
    knife_tool = tool(moves)
    done = cut_step(WORK, knife_tool, moves)
    starts, ends = path(moves)
    at_once: BaseGeometry = WORK.difference(
        shapely.union_all([one for piece in knife_tool.cut for one in sweeps(piece, starts, ends)])
    )

    assert done.work.symmetric_difference(at_once).area < 1e-4
    assert done.removed_area == pytest.approx(WORK.area - at_once.area, abs=1e-6)
    again = cut_step(done.work, knife_tool, moves)
    assert again.removed_area < 1e-4  # corners are smoothed by up to 1e-6 along some 100 mm of outline
    assert turned_volume(done.work) <= turned_volume(WORK)


@settings(max_examples=25, deadline=None)
@given(st.integers(0, 10_000), st.floats(-100, 100))
def test_the_order_of_two_cuts_and_the_place_on_the_axis_do_not_matter(seed: int, shift: float) -> None:
    """Two single moves commute; moving work and path along the axis moves the result."""
    first, second = random_moves(seed)[:2], random_moves(seed + 1)[:2]
    one_way = cut_step(cut_step(WORK, tool(first), first).work, tool(second), second).work
    other_way = cut_step(cut_step(WORK, tool(second), second).work, tool(first), first).work
    assert one_way.symmetric_difference(other_way).area < 1e-5

    moved = tuple(Move(move.z + shift, move.r) for move in first)
    there = cut_step(shapely.affinity.translate(WORK, shift), tool(moved), moved).work
    here = shapely.affinity.translate(cut_step(WORK, tool(first), first).work, shift)
    assert there.symmetric_difference(here).area < 1e-6


def test_a_quick_move_is_said_only_when_it_takes_metal() -> None:
    """Touching is not cutting."""
    along = (Move(5, 15, True), Move(-20, 15, True))
    through = (Move(5, 14, True), Move(-20, 14, True))

    assert cut_step(WORK, tool(along), along).rapid == []
    assert [n for n, _ in cut_step(WORK, tool(through), through).rapid] == [1]
