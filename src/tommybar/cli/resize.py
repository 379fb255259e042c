"""The command ``resize``: the table of sizes for a shop, what binds, and a second choice."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING

import typer

from tommybar.cli.inputs import (
    AsJson,
    DesignPath,
    Pins,
    Scale,
    ShopName,
    Stock,
    pins_from,
    read_design_and_shop,
)

if TYPE_CHECKING:
    from tommybar.resize.table import Resized


def resize(
    design: DesignPath,
    shop: ShopName,
    scale: Scale = None,
    pin: Pins = None,
    stock: Stock = "ask",
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
        typer.echo(_table(found, second))
    if any(one.severity == "stop" for one in found.findings):
        raise typer.Exit(2)


def _table(found: Resized, second: Resized | None) -> str:
    from tommybar.cli.plan_table import binding_lines, finding_lines, in_columns

    head = ["size", "old", "exact", "new"] + (["second"] if second else []) + ["unit", "follows", "why"]
    rows: list[tuple[str, ...]] = [tuple(head)]
    others = {row.name: row.new for row in second.rows} if second else {}
    for row in found.rows:
        figures = [_shown(row.old), _shown(row.exact), _shown(row.new)]
        figures += [_shown(others.get(row.name, ""))] if second else []
        rows.append((row.name, *figures, row.unit, row.follows, row.why))
    lines = [f"scale {found.scale:.2f}" + (f", second choice {second.scale:.2f}" if second else "")]
    lines += [
        *binding_lines(found.limits, found.scale),
        "",
        *in_columns(rows, right=tuple(range(1, 5 if second else 4))),
    ]
    return "\n".join([*lines, *finding_lines(found.findings)])


def _shown(value: float | str) -> str:
    return value if isinstance(value, str) else f"{round(value, 3):g}"
