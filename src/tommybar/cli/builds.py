"""The command ``builds``: makings in progress, listed, begun and shown."""

from __future__ import annotations

import json
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import typer

from tommybar.cli.inputs import AsJson, Scale, Stock
from tommybar.cli.progress import progress
from tommybar.refusals import Refusal, nearest

if TYPE_CHECKING:
    from tommybar.bench.builds import Build
    from tommybar.bench.folder import Folder

DEEDS = ("list", "start", "show")
FolderPath = Annotated[
    Path | None,
    typer.Option("--folder", help="Your folder; $TOMMYBAR_HOME or the share folder when left out."),
]


def builds(
    deed: Annotated[str, typer.Argument(metavar="[list|start|show]", help="What to do.")] = "list",
    name: Annotated[
        str, typer.Argument(metavar="[DESIGN|ID]", help="start: a design. show: the id of a build.")
    ] = "",
    shop: Annotated[
        str, typer.Option("--shop", help="Shop to make it in: a file, one of yours, an example.")
    ] = "",
    title: Annotated[str, typer.Option("--title", help="What to call the build.")] = "",
    scale: Scale = None,
    stock: Stock = "ask",
    made: Annotated[Path | None, typer.Option("--made", help="Record to go on from.")] = None,
    folder: FolderPath = None,
    as_json: AsJson = False,
) -> None:
    """List the builds in progress, start one, or show how one stands.

    A build keeps the design and shop it was begun with. What is measured is
    written in its journal, by the page or by a made file.
    """
    from tommybar.bench.folder import open_folder

    if deed not in DEEDS:
        raise Refusal(
            f'"{deed}" is nothing that builds can do.', nearest(deed, DEEDS) or "It can list, start and show."
        )
    mine = open_folder(folder)
    if deed == "list":
        _list(mine, as_json)
    elif not name:
        raise Refusal(f"What to {deed} is missing.", f"Write: tommybar builds {deed} {_example(deed)}")
    elif deed == "start":
        _start(mine, name, shop, title, scale, stock, made, as_json)
    else:
        _show(mine, name, as_json)


def _example(deed: str) -> str:
    return "my-wheel.yaml --shop my-shop.yaml" if deed == "start" else "ID, as the list says it"


def _list(folder: Folder, as_json: bool) -> None:
    from tommybar.bench.builds import builds as every_build

    found = every_build(folder)
    if as_json:
        typer.echo(json.dumps({"builds": [vars(one) for one in found]}))
        return
    if not found:
        typer.echo(
            f"No build is in progress in {folder.path}. Begin one with: tommybar builds start DESIGN --shop SHOP"
        )
    for one in found:
        last = f"last entry {one.last[:16].replace('T', ' ')}" if one.last else "nothing entered yet"
        typer.echo(f"{one.id[:8]}  {one.title}, in {one.shop_name}; {one.entries} entries, {last}")


def _start(
    folder: Folder,
    design: str,
    shop: str,
    title: str,
    scale: float | None,
    stock: str,
    made: Path | None,
    as_json: bool,
) -> None:
    from tommybar.bench.builds import start_build
    from tommybar.shop.examples import example_shops

    if stock not in ("rack", "buy", "ask"):
        raise Refusal(f'Metal comes from "{stock}"; it can come from rack, buy or ask.', "")
    if not shop:
        raise Refusal("The shop is missing.", f"Add --shop; example shops: {', '.join(example_shops())}.")
    design_name = _laid_in(folder, design, "design")
    shop_name = shop if shop in example_shops() else _laid_in(folder, shop, "shop")
    with progress() as tell:
        tell("sizes and routes")
        build = start_build(
            folder,
            design_name,
            shop_name,
            title=title,
            scale=scale,
            stock=stock,  # type: ignore[arg-type]
            made=made,
        )
    if as_json:
        typer.echo(json.dumps({"id": build.id, "title": build.title, "scale": build.scale}))
    else:
        typer.echo(f"{build.title} is begun at scale {build.scale:g}: build {build.id[:8]}")


def _laid_in(folder: Folder, given: str, what: str) -> str:
    """The name in the folder; a file from elsewhere is copied in first, never over another of its name."""
    place = Path(given)
    known = folder.designs() if what == "design" else folder.shops()
    if given in known or not place.is_file():
        return given
    from tommybar.design.yaml_file import file_text

    text, name = file_text(place), place.stem
    there = folder.design_text(name) if what == "design" and name in known else ""
    there = folder.shop_text(name) if what == "shop" and name in known else there
    if there and there != text:
        raise Refusal(
            f'Your folder has another {what} "{name}".',
            f"Name that one by {name}, or give the file another name.",
        )
    if not there:
        (folder.save_design if what == "design" else folder.save_shop)(name, text)
    return name


def _show(folder: Folder, name: str, as_json: bool) -> None:
    from tommybar.bench.builds import load_build

    build = load_build(folder, name)
    with progress() as tell:
        told = _told(build, tell)
    if as_json:
        typer.echo(json.dumps(told))
        return
    typer.echo(f"{build.title}: {build.design_name} in {build.shop_name}, scale {told['scale']:g}")
    typer.echo(f"begun {build.begun[:10]}, plan {told['plan_id']}, {len(build.entries)} entries")
    for heading, lines in (
        ("Not settled", told["conflicts"]),
        ("Measured", told["measured"]),
        ("Cards done in part", told["cards"]),
        ("New limits", told["limits"]),
        ("Printed cards that are stale", told["stale"]),
    ):
        if lines:
            typer.echo(f"\n{heading}")
        for line in lines:
            typer.echo(f"  {line}")


def _told(build: Build, tell: Any) -> dict[str, Any]:
    """How a build stands, in words and figures."""
    from tommybar.bench.as_built import differences
    from tommybar.bench.replan import plan_of, stale_cards
    from tommybar.bench.standing import standing
    from tommybar.making.step_keys import is_ticked

    stand, plan = standing(build.entries), plan_of(build, tell)
    cards = []
    for card in (card for part in plan.parts for card in part.cards):
        done = sum(is_ticked(card, step, stand.ticks) for step in card.steps)
        whole = f"{card.part}/{card.number}" in stand.ticks
        if done or whole:
            cards.append(
                f"{card.part}/{card.number} {card.title}: {len(card.steps) if whole else done} of {len(card.steps)} steps"
            )
    return {
        "id": build.id,
        "title": build.title,
        "plan_id": plan.plan_id,
        "scale": plan.scale,
        "conflicts": [one.words for one in stand.conflicts],
        "measured": [one.words for one in differences(build, plan)],
        "cards": cards,
        "limits": [one.changed for one in plan.parts if one.changed],
        "stale": [f"{one.key}, printed {one.printed_on[:10]}" for one in stale_cards(plan, stand)],
    }
