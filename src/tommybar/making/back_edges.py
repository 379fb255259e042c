"""Chamfers of edges that look into a valley, with the other flank of the pointed tool, once the valley is open."""

from __future__ import annotations

from tommybar.making.bench import Bench, cutting_minutes, named
from tommybar.making.cards import Move, Step
from tommybar.making.cuts import feed_for
from tommybar.making.dials import travel_words
from tommybar.making.jobs import Job, in_card
from tommybar.making.lengths import Mm
from tommybar.making.practice import rule
from tommybar.making.valley_edges import PAST, point_fits, stub_of, valley_beside
from tommybar.shapes.features import Cylinder


def looks_into(bench: Bench, job: Job, late: frozenset[str]) -> bool:
    """Whether an edge looks into a valley that a blade opens on this card, or away from the free end."""
    if job.side != bench.option.free:
        return True
    seen = valley_beside(bench.shape, job, bench.option.free)
    return seen is not None and bool(late & set(seen[3]))


def back_edge(bench: Bench, job: Job) -> None:
    """Chamfer an edge that looks towards the chuck with the right flank of the pointed tool."""
    land = next(one for one in bench.shape.outside if one.name == job.feature)
    assert isinstance(land, Cylinder)
    free = bench.option.free
    stub = stub_of(bench.option)
    seen = valley_beside(bench.shape, job, free, stub)
    assert seen is not None
    wide, _, across, _ = seen
    tool = bench.tool(
        "chamfer",
        lambda t: point_fits(bench.shape, job, free, t.shank / 2, stub),
        lambda t: t.shank,
        f"{job.name} in a valley {Mm(wide):g} wide",
    )
    if tool is None:
        return
    at = in_card(job.start, bench.length, free)
    radius = land.dia.value / 2
    z, r = at - PAST, radius - job.size - PAST
    away = max(radius, across) + rule("cut", "approach")
    moves = [Move(z, away), Move(z, r), Move(z, away)]
    speed = bench.speed(tool, "turning", land.dia.value, job.feature)
    feed = feed_for(bench.part.material, tool.material, "forming", "roughing")
    bench.add(
        Step(
            0,
            f"Chamfer {job.feature} at its back, in the valley",
            job.feature,
            named(tool),
            "chamfer",
            speed.rpm,
            speed.reached,
            feed,
            f"{job.size:g}",
            "x 45 deg",
            (
                f"Point into the valley at Z {Mm(-z):.2f}; its right flank touches the corner first, then in "
                f"{travel_words(bench.cross, job.size)} ({bench.cross_words}).",
                f"The valley is {Mm(wide):.2f} wide: carriage locked, look that the left flank stays clear.",
            ),
            minutes=cutting_minutes(moves, speed.rpm, feed, 1),
            why="In this grip, since something larger stands behind it: turned round it would be reached no better.",
            moves=tuple(moves),
            tool_letter=tool.letter,
        )
    )
