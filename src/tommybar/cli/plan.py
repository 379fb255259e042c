"""The command ``plan``: everything worked out, as a short table or as JSON."""

from __future__ import annotations

import typer

from tommybar.cli.inputs import (
    AsJson,
    DesignPath,
    MadePath,
    Pins,
    Scale,
    ShopName,
    Stock,
    pins_from,
    read_design_and_shop,
    read_made,
)
from tommybar.cli.progress import progress


def plan(
    design: DesignPath,
    shop: ShopName,
    made: MadePath = None,
    scale: Scale = None,
    pin: Pins = None,
    stock: Stock = "ask",
    as_json: AsJson = False,
) -> None:
    """Plan the making of a design in a shop: sizes, stock, routes, dry run, findings.

    Ends with 2 when findings of the kind "stop" stand.
    """
    from tommybar.cli.plan_table import plan_table
    from tommybar.pack.plan_json import plan_json
    from tommybar.planning import plan as make_plan

    read, shop_read = read_design_and_shop(design, shop)
    pins, record = pins_from(pin, read), read_made(made)
    with progress() as tell:
        found = make_plan(
            read,
            shop_read,
            record,
            scale=scale,
            pins=pins,
            stock=stock,  # type: ignore[arg-type]
            tell=tell,
        )
    typer.echo(plan_json(found) if as_json else plan_table(found))
    if found.stops:
        raise typer.Exit(2)
