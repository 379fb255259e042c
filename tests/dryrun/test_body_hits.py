"""The two-term body test against stepping the tool along its way in small steps."""

from __future__ import annotations

import math
import random

import numpy as np
import pytest
import shapely
from shapely import Polygon, box
from shapely.geometry.base import BaseGeometry

from tommybar.dryrun.cutting import cut_step
from tommybar.dryrun.sweep import counter_clockwise
from tommybar.dryrun.tool_shapes import ToolShape
from tommybar.making.cards import Move

STEPS = 400


def stepped(work: BaseGeometry, tool: ToolShape, start: np.ndarray, end: np.ndarray) -> float:
    """Area of metal the body meets when the tool goes along in small steps, edges cutting first."""
    met = 0.0
    now = work
    for n in range(STEPS + 1):
        at = start + (end - start) * n / STEPS
        for piece in tool.cut:
            now = now.difference(Polygon(piece + at))
        for piece in tool.body:
            inside = now.intersection(Polygon(piece + at))
            met += inside.area
            now = now.difference(inside)
    return met


def random_case(seed: int) -> tuple[BaseGeometry, ToolShape, tuple[Move, Move]]:
    """A stepped bar, a tool of one edge and one body, a straight move that starts clear."""
    dice = random.Random(seed)
    work = box(-30, 0, -10, 15).union(box(-10, 0, 0, dice.uniform(4, 12)))
    edge = counter_clockwise(
        [(0, 0), (dice.uniform(1, 4), dice.uniform(0, 1)), (3, 3), (0, dice.uniform(2, 4))]
    )
    low, left = dice.uniform(-1, 5), dice.uniform(-2.5, 2)
    body = counter_clockwise([(left, low), (left + 6, low), (left + 6, low + 8), (left, low + 8)])
    start = (dice.uniform(1, 6), dice.uniform(8, 20))
    turn = dice.uniform(math.pi * 0.95, math.pi * 1.5)
    long = dice.uniform(5, 15)
    end = (start[0] + long * math.cos(turn), start[1] + long * math.sin(turn))
    return work, ToolShape("test", (edge,), (body,)), (Move(*start), Move(*end))


@pytest.mark.parametrize("seed", range(60))
def test_the_exact_answer_agrees_with_small_steps(seed: int) -> None:
    """Hit or no hit, the same as 400 steps say."""
    work, tool, moves = random_case(seed)
    start, end = (np.array([move.z, move.r]) for move in moves)
    if any(Polygon(piece + start).intersects(work) for piece in (*tool.cut, *tool.body)):
        return
    seen = stepped(work, tool, start, end)
    exact = sum(hit.area for hit in cut_step(work, tool, moves).hits)

    if seen > 0.15:  # stepping itself cuts up to a step's width of metal with the body
        assert exact > 1e-3
    if exact > 0.15:
        assert seen > 1e-3


def test_hits_and_misses_are_both_among_the_cases() -> None:
    """The comparison above has something to compare."""
    verdicts = [bool(cut_step(w, t, m).hits) for w, t, m in (random_case(seed) for seed in range(60))]

    assert 10 < sum(verdicts) < 50


def test_a_body_that_runs_ahead_of_its_edge_is_seen() -> None:
    """The edge clears the metal later in the same move, but the body arrives first."""
    edge = counter_clockwise([(0, 0), (1, 0), (1, 20), (0, 20)])
    ahead = counter_clockwise([(-3, 5), (-1, 5), (-1, 10), (-3, 10)])
    tool = ToolShape("test", (edge,), (ahead,))
    done = cut_step(box(-20, 0, 0, 8), tool, (Move(5, 2), Move(-15, 2)))

    assert [hit.move for hit in done.hits] == [1]


def test_the_mirror_image_cuts_the_mirror_image() -> None:
    """Tool, path and work mirrored in z give the mirrored result."""
    for seed in range(20):
        work, tool, moves = random_case(seed)

        def flip(points: np.ndarray) -> np.ndarray:
            return points * np.array([-1.0, 1.0])

        other = ToolShape(
            "test",
            tuple(counter_clockwise([tuple(p) for p in flip(piece)]) for piece in tool.cut),
            tuple(counter_clockwise([tuple(p) for p in flip(piece)]) for piece in tool.body),
        )
        mirrored = tuple(Move(-move.z, move.r) for move in moves)
        one = cut_step(work, tool, moves)
        two = cut_step(shapely.transform(work, flip), other, mirrored)

        assert shapely.transform(two.work, flip).symmetric_difference(one.work).area < 1e-9
        assert sum(h.area for h in two.hits) == pytest.approx(sum(h.area for h in one.hits), abs=1e-9)


def test_near_coincident_cuts_do_not_multiply_corners() -> None:
    """The same slanting wall cut 100 times with noise of a tenth of a nanometre keeps few corners."""
    dice = random.Random(5)
    edge = counter_clockwise([(0, 0), (4, 1), (4, 6), (0, 6)])
    tool = ToolShape("test", (edge,))
    work: BaseGeometry = box(-30, 0, 0, 20)
    for _ in range(100):
        noise = dice.uniform(-1e-7, 1e-7)
        work = cut_step(work, tool, (Move(5, 19 + noise), Move(-20, 10 + noise), Move(-20, 25))).work

    assert shapely.get_num_coordinates(work) < 60


def test_metal_between_the_edge_and_the_body_behind_it_is_seen() -> None:
    """A collar that stood between them at the start is never cut by the edge, but the body comes to it."""
    edge = counter_clockwise([(0, 0), (1, 0), (1, 4), (0, 4)])
    behind = counter_clockwise([(6, 0), (8, 0), (8, 4), (6, 4)])
    done = cut_step(box(2, 3, 4, 9), ToolShape("test", (edge,), (behind,)), (Move(0, 2), Move(-10, 2)))

    assert [hit.area for hit in done.hits] == pytest.approx([2 * 3.0])
