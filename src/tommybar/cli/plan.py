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
    Units,
    pins_from,
    read_design_and_shop,
    read_made,
    unit_of,
)
from tommybar.cli.progress import progress


def plan(
    design: DesignPath,
    shop: ShopName,
    made: MadePath = None,
    scale: Scale = None,
    pin: Pins = None,
    stock: Stock = "ask",
    units: Units = "",
    as_json: AsJson = False,
) -> None:
    """Plan the making of a design in a shop: sizes, stock, routes, dry run, findings.

    Ends with 2 when findings of the kind "stop" stand.
    """
    from tommybar.cli.plan_table import plan_table
    from tommybar.pack.plan_json import plan_json
    from tommybar.planning import plan as make_plan
    from tommybar.planning import with_assembly

    read, shop_read = read_design_and_shop(design, shop)
    unit = "mm" if as_json and not units else unit_of(units, shop_read)
    pins, record = pins_from(pin, read), read_made(made)
    with progress() as tell:
        found = make_plan(
            read,
            shop_read,
            record,
            scale=scale,
            pins=pins,
            stock=stock,  # type: ignore[arg-type]
            words_in=unit,
            tell=tell,
        )
        tell("assembly")
        found = with_assembly(found, unit)
    typer.echo(plan_json(found) if as_json else plan_table(found, unit))
    if found.stops:
        raise typer.Exit(2)
