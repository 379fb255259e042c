"""The command ``resize``: the table of sizes for a shop, what binds, and a second choice."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Literal

import typer

from tommybar.cli.inputs import (
    AsJson,
    DesignPath,
    Pins,
    Scale,
    ShopName,
    Stock,
    Units,
    pins_from,
    read_design_and_shop,
    unit_of,
)

if TYPE_CHECKING:
    from tommybar.pack.units import Reader
    from tommybar.resize.table import Resized


def resize(
    design: DesignPath,
    shop: ShopName,
    scale: Scale = None,
    pin: Pins = None,
    stock: Stock = "ask",
    units: Units = "",
    as_json: AsJson = False,
) -> None:
    """Size a design to a shop: each size as drawn, as scaled, as chosen, and why.

    Ends with 2 when findings of the kind "stop" stand.
    """
    from tommybar.pack.plan_json import resized_data
    from tommybar.resize import resize as size_to_shop
    from tommybar.resize import second_choice

    read, shop_read = read_design_and_shop(design, shop)
    pins = pins_from(pin, read)
    found = size_to_shop(read, shop_read, scale, pins, stock)
    second = None if scale is not None else second_choice(read, shop_read, found.scale, pins, stock)
    if as_json:
        whole = {**resized_data(found), "second": resized_data(second) if second else None}
        typer.echo(json.dumps(whole, ensure_ascii=False, indent=2))
    else:
        typer.echo(_table(found, second, unit_of(units, shop_read)))
    if any(one.severity == "stop" for one in found.findings):
        raise typer.Exit(2)


def _table(found: Resized, second: Resized | None, unit: Literal["mm", "in"]) -> str:
    from tommybar.cli.plan_table import binding_lines, finding_lines, in_columns
    from tommybar.making.lengths import spoken
    from tommybar.pack.units import Reader

    reader = Reader(unit)
    head = ["size", "old", "exact", "new"] + (["second"] if second else []) + ["unit", "follows", "why"]
    rows: list[tuple[str, ...]] = [tuple(head)]
    others = {row.name: row.new for row in second.rows} if second else {}
    for row in found.rows:
        length = row.unit == "mm"
        shown = [row.old, row.exact, row.new] + ([others.get(row.name, "")] if second else [])
        figures = [_shown(one, reader if length else None) for one in shown]
        unit_words = unit if length else row.unit
        rows.append((row.name, *figures, unit_words, row.follows, spoken(row.why, unit)))
    lines = [f"scale {found.scale:.2f}" + (f", second choice {second.scale:.2f}" if second else "")]
    lines += [
        *binding_lines(found.limits, found.scale, reader),
        "",
        *in_columns(rows, right=tuple(range(1, 5 if second else 4))),
    ]
    return "\n".join([*lines, *finding_lines(spoken(found.findings, unit))])


def _shown(value: float | str, reader: Reader | None) -> str:
    if isinstance(value, str):
        return value
    if reader is not None and reader.unit == "in":
        return reader.length(value, 3)
    return f"{round(value, 3):g}"
