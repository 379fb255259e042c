"""The size table (old, exact, new, why), and what binds the scale."""

from __future__ import annotations

from tommybar.pack.front.leaf import Leaves
from tommybar.pack.grid import Column
from tommybar.pack.units import Reader
from tommybar.planning import Plan


def written(value: float | str, unit: str, reader: Reader) -> str:
    """A size as the table writes it: lengths in the reader's unit, threads as they are called."""
    if isinstance(value, str):
        return value
    if unit == "mm":
        return reader.length(value, 3)
    return f"{value:g}" + (f" {unit}" if unit else "")


def put_sizes(leaves: Leaves, plan: Plan) -> None:
    """Sizes and limits, as many pages as they take."""
    reader = leaves.imprint.reader
    leaves.section("Sizes")
    changed = sum(row.old != row.new for row in plan.sizes)
    leaves.say(
        f"Scale {plan.scale:.4g}. {len(plan.sizes)} named sizes, {changed} of them other than drawn; "
        f"lengths in {reader.unit}."
    )
    rows = [
        (
            row.name.replace("_", " "),
            written(row.old, row.unit, reader),
            written(row.exact, row.unit, reader),
            written(row.new, row.unit, reader),
            row.follows,
            row.why,
        )
        for row in plan.sizes
    ]
    leaves.table(
        (
            Column("size"),
            Column("old", align="end"),
            Column("exact", align="end"),
            Column("new", align="end", bold=True),
            Column("follows"),
            Column("why"),
        ),
        rows,
    )
    if plan.binds:
        leaves.head("What binds", 40.0)
        leaves.say("Every limit that was looked at, tightest first; the scale at which it is met exactly.")
        leaves.table(
            (
                Column("limit"),
                Column("part"),
                Column("needs", align="end"),
                Column("shop has", align="end"),
                Column("scale", align="end"),
                Column(""),
            ),
            [
                (
                    bind.what,
                    bind.part,
                    reader.length(bind.figure, 2),
                    reader.length(bind.bound, 2),
                    f"{bind.scale:.4g}",
                    "binds" if bind.binds else "",
                )
                for bind in plan.binds
            ],
        )
    if plan.second is not None:
        leaves.head("Second choice", 20.0)
        same = {row.name: row.new for row in plan.sizes}
        other = [row for row in plan.second.rows if row.new != same.get(row.name)]
        leaves.say(f"Scale {plan.second.scale:.4g}; {len(other)} sizes differ from the first choice.")
        leaves.table(
            (Column("size"), Column("first", align="end"), Column("second", align="end"), Column("why")),
            [
                (
                    row.name.replace("_", " "),
                    written(same.get(row.name, ""), row.unit, reader),
                    written(row.new, row.unit, reader),
                    row.why,
                )
                for row in other
            ],
        )
