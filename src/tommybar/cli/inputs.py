"""Files named on the command line, read; figures and pins given there, understood."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Literal

import typer

from tommybar.refusals import Complaint, Refusal, nearest

if TYPE_CHECKING:
    from tommybar.design.loaded import Design
    from tommybar.made.record import Made
    from tommybar.shop.model import Shop

KINDS: dict[str, Literal["length", "angle", "number"]] = {"mm": "length", "deg": "angle", "": "number"}

DesignPath = Annotated[Path, typer.Argument(metavar="DESIGN", help="Design file.")]
ShopName = Annotated[str, typer.Option("--shop", help="Shop file, or the name of an example shop.")]
MadePath = Annotated[Path | None, typer.Option("--made", help="Record of what is made already.")]
Scale = Annotated[float | None, typer.Option("--scale", help="Take this scale and do not choose one.")]
Stock = Annotated[str, typer.Option("--stock", help="Where metal may come from: rack, buy or ask.")]
Pins = Annotated[
    list[str] | None, typer.Option("--pin", metavar="SIZE=FIGURE", help="Hold a size; may be repeated.")
]
Units = Annotated[
    str, typer.Option(help="Lengths in words and tables: mm or in; the shop's own unit if it is not said.")
]
AsJson = Annotated[bool, typer.Option("--json", help="Print one JSON object, in house units.")]


def read_design_and_shop(design: Path, shop: str) -> tuple[Design, Shop]:
    """Both files; when both are wrong, the faults of both are told at once."""
    from tommybar.design.loaded import load_design
    from tommybar.shop.loading import load_shop

    wrong: list[Complaint] = []
    design_read = shop_read = None
    try:
        design_read = load_design(design)
    except Refusal as refusal:
        wrong += refusal.complaints
    try:
        shop_read = load_shop(shop_place(shop))
    except Refusal as refusal:
        wrong += refusal.complaints
    if design_read is None or shop_read is None:
        raise Refusal(wrong)
    return design_read, shop_read


def shop_place(name: str) -> Path:
    """The shop file of that name: a path, or an example shop."""
    from tommybar.shop.examples import example_shops

    place = Path(name)
    examples = example_shops()
    if not place.exists() and name in examples:
        return examples[name]
    if not place.exists():
        offer = nearest(name, examples) or f"Example shops: {', '.join(examples)}."
        raise Refusal(f"There is no shop file {name}.", offer)
    return place


def unit_of(units: str, shop: Shop) -> Literal["mm", "in"]:
    """The unit that is asked for, or the shop's own."""
    if units not in ("", "mm", "in"):
        raise Refusal(f'The units are "{units}"; they are mm or in.', nearest(units, ("mm", "in")))
    return "in" if units == "in" or (not units and shop.unit == "in") else "mm"


def read_made(path: Path | None) -> Made | None:
    """The record of a making, or None when none is named."""
    from tommybar.made.loading import load_made

    return load_made(path) if path else None


def pins_from(texts: Iterable[str] | None, design: Design) -> dict[str, float | str]:
    """Sizes held by --pin: figures in the design's unit, threads as they are called."""
    from tommybar.design.figures import figure

    pins: dict[str, float | str] = {}
    known = {size.name: size for size in design.named}
    for text in texts or ():
        name, sign, value = (part.strip() for part in text.partition("="))
        if not sign or not value:
            raise Refusal(f'"{text}" pins no size.', "Write --pin wheel_dia=80.")
        if name not in known:
            raise Refusal(
                f'No size is named "{name}".', nearest(name, known) or f"There are {', '.join(known)}."
            )
        size = known[name]
        if isinstance(size.value, str):
            pins[name] = value
        else:
            pins[name] = figure(value, design.units, KINDS[size.unit])
    return pins
