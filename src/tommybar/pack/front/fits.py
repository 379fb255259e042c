"""Fits, lengths that are made to suit, and what was worked out of the function."""

from __future__ import annotations

from dataclasses import replace

from tommybar.pack.front.leaf import Leaves
from tommybar.pack.grid import Column
from tommybar.pack.units import Reader
from tommybar.planning import Plan
from tommybar.shapes.features import Dim, PlateShape, TurnedShape


def sizes_of(plan: Plan) -> dict[str, Dim]:
    """Every diameter of the plan under the name that a fit calls it by (part.feature)."""
    found: dict[str, Dim] = {}
    for one in plan.design.parts:
        shape = one.shape
        if isinstance(shape, TurnedShape):
            features = [*shape.outside, *shape.bores, *shape.circle_holes, *shape.cross_holes]
            found |= {f"{one.name}.{f.name}": f.dia for f in features if hasattr(f, "dia")}
        elif isinstance(shape, PlateShape):
            found |= {f"{one.name}.{f.name}": f.dia for f in shape.holes}
    return found


def fit_rows(plan: Plan, reader: Reader) -> list[tuple[str, ...]]:
    """Each fit: both limits, and what plays between them."""
    sizes = sizes_of(plan)
    rows: list[tuple[str, ...]] = []
    for fit in plan.design.fits:
        hole, shaft = (_as_made(sizes.get(name), name, plan) for name in (fit.hole, fit.shaft))
        play = ""
        if hole and shaft and hole.toleranced and shaft.toleranced:
            least = (hole.smallest or 0.0) - (shaft.largest or 0.0)
            most = (hole.largest or 0.0) - (shaft.smallest or 0.0)
            play = f"{_signed(least, reader)} to {_signed(most, reader)}"
        rows.append(
            (
                fit.hole.replace(".", " ").replace("_", " "),
                _limits(hole, reader),
                fit.shaft.replace(".", " ").replace("_", " "),
                _limits(shaft, reader),
                fit.zones,
                play,
                fit.joint,
            )
        )
    return rows


def _as_made(dim: Dim | None, name: str, plan: Plan) -> Dim | None:
    """A size that has been measured stands as what it is, not as it was drawn."""
    measured = plan.made.size(name)
    if dim is None or measured is None:
        return dim
    return replace(dim, value=measured.value, smallest=measured.value, largest=measured.value)


def _limits(dim: Dim | None, reader: Reader) -> str:
    if dim is None:
        return ""
    if dim.smallest is None or dim.largest is None:
        return reader.length(dim.value, 3)
    if dim.smallest == dim.largest:
        return f"is {reader.length(dim.value, 3)}"
    return "–".join(reader.limits(dim.smallest, dim.largest))


def _signed(mm: float, reader: Reader) -> str:
    return f"{reader.of(mm):+.{reader.decimals(3)}f}"


def put_fits(leaves: Leaves, plan: Plan) -> None:
    """Fits, loops and figures of function; no page when there are none."""
    reader = leaves.imprint.reader
    if not (plan.design.fits or plan.design.loops or plan.figures):
        return
    leaves.section("Fits and function")
    if plan.design.fits:
        leaves.say(f"Play in {reader.unit}: above nought it is loose, below nought it must be pressed.")
        leaves.table(
            (
                Column("hole", bold=True),
                Column("limits"),
                Column("shaft", bold=True),
                Column("limits"),
                Column("fit"),
                Column("play"),
                Column("joint"),
            ),
            fit_rows(plan, reader),
        )
    if plan.design.loops:
        leaves.head("Lengths that are made to suit", 30.0)
        leaves.table(
            (Column("what"), Column("sum of"), Column("from", align="end"), Column("to", align="end"), Column("made last")),
            [
                (
                    loop.name,
                    " ".join(_term(t.name, t.factor, t.value, reader) for t in loop.terms),
                    reader.length(loop.least, 3),
                    reader.length(loop.most, 3),
                    loop.made_last.replace("_", " "),
                )
                for loop in plan.design.loops
            ],
        )  # fmt: skip
    if plan.made.measured:
        leaves.head("Made so far", 30.0)
        leaves.table(
            (Column("size"), Column("measured", align="end", bold=True), Column("with"), Column("on"), Column("by")),
            [
                (m.size, reader.length(m.value, 3), m.instrument, m.on, m.by) for m in plan.made.measured
            ],
        )  # fmt: skip
        for one in plan.parts:
            if one.changed:
                leaves.say(f"{one.part.name}: {one.changed}")
    if plan.figures:
        leaves.head("What was worked out", 40.0)
        leaves.table(
            (
                Column("what", bold=True), Column("part"), Column("figure", align="end", bold=True), Column("how"),
                Column("source"),
            ),
            [
                (f.what, f.part, f"{f.value:.{f.decimals}f} {f.unit}".strip(), f.how, f.source)
                for f in plan.figures
            ],
        )  # fmt: skip


def _term(name: str, factor: float, value: float, reader: Reader) -> str:
    sign = "–" if factor < 0 else "+"
    times = f"{abs(factor):g} × " if abs(factor) != 1 else ""
    return f"{sign} {times}{name.replace('.', ' ').replace('_', ' ')} ({reader.length(value, 3)})"
