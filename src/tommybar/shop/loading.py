"""``load_shop(path)``: a shop file read, checked and filled up."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from pathlib import Path
from typing import TypeVar

from tommybar.design.validation import unit_of, validated
from tommybar.design.yaml_file import YamlFile, read_yaml
from tommybar.facts.threads import thread
from tommybar.refusals import Refusal
from tommybar.shop.centre_entries import dogs, steadies, tail_centres
from tommybar.shop.examples import example_shops
from tommybar.shop.filling import NO_SHOP, Filler
from tommybar.shop.machine_entries import LatheEntry, MillEntry
from tommybar.shop.model import Bar, Counterbore, Lathe, Mill, Shop
from tommybar.shop.nearest_example import figures_of, nearest_example
from tommybar.shop.rack_entries import StockEntry, bars_from
from tommybar.shop.shop_file import ShopFile

Entry = TypeVar("Entry")
Record = TypeVar("Record")


def load_shop(path: str | Path) -> Shop:
    """The shop that a file describes.

    What the file leaves out is taken from the example shop whose lathe is
    nearest, and listed in ``Shop.assumed``. Metal is never assumed: a file
    without a rack has nothing on it, and that is listed too. Raises
    :class:`Refusal` with every fault of the file at once.
    """
    yaml = read_yaml(path)
    file = validated(ShopFile, yaml, unit_of(yaml))
    refuse_doubles(file, yaml)
    shop = shop_from(file, NO_SHOP)
    if not set(shop.assumed) - {"rack"}:
        return shop
    known = {name: figures_of(_example_file(place)) for name, place in example_shops().items()}
    return shop_from(file, _example(nearest_example(file, known)))


@cache
def _example_file(place: Path) -> ShopFile:
    yaml = read_yaml(place)
    return validated(ShopFile, yaml, unit_of(yaml))


@cache
def _example(name: str) -> Shop:
    return shop_from(_example_file(example_shops()[name]), NO_SHOP)


def shop_from(file: ShopFile, example: Shop) -> Shop:
    """The shop of a checked file, filled up from ``example``."""
    filler = Filler(file.units)
    return Shop(
        name=file.shop,
        unit=file.units,
        lathe=_lathe(filler, file.lathe or LatheEntry(), example.lathe),
        mill=_mill(filler, file.mill, example.mill),
        jaws=_each(filler, file.jaws, example.jaws, "jaws", filler.jaws),
        tools=_each(filler, file.tools, example.tools, "tools", filler.tool),
        drills=filler.take(file.drills, example.drills, "drills"),
        centre_drills=filler.take(file.centre_drills, example.centre_drills, "centre_drills"),
        reamers=_each(filler, file.reamers, example.reamers, "reamers", lambda one, _: filler.reamer(one)),
        taps=_threads(filler.take(file.taps, example.taps, "taps")),
        dies=_threads(filler.take(file.dies, example.dies, "dies")),
        cutters=filler.take(file.cutters, example.cutters, "cutters"),
        countersinks=filler.take(file.countersinks, example.countersinks, "countersinks"),
        instruments=_each(filler, file.instruments, example.instruments, "instruments", filler.instrument),
        rack=_stock(filler, file, file.rack, (), "rack"),
        obtainable=_stock(filler, file, file.obtainable, example.obtainable, "obtainable"),
        can=frozenset(filler.take(file.can, example.can, "can")),
        saw_kerf=filler.take(file.saw_kerf, example.saw_kerf, "saw_kerf"),
        counterbores=tuple(Counterbore(one.dia, one.pilot) for one in file.counterbores),
        long_drills=file.long_drills,
        dogs=dogs(file.dogs),
        catch_plate=file.catch_plate,
        tail_centres=tail_centres(file.tail_centres),
        steadies=steadies(file.steadies),
        mandrels=file.mandrels,
        assumed=tuple(filler.assumed),
    )


def _threads(names: tuple[str, ...]) -> tuple[str, ...]:
    """Threads by the designations that designs call them by: 1/4 UNF is 1/4-28 UNF."""
    return tuple(dict.fromkeys(thread(one).designation for one in names))


def _lathe(filler: Filler, entry: LatheEntry, example: Lathe) -> Lathe:
    given = entry.model_dump(exclude={"cross_slide", "top_slide", "carriage", "tailstock"})
    given["swing_bed"] = given.pop("swing_over_bed")
    given["swing_cross_slide"] = given.pop("swing_over_cross_slide")
    for name in ("cross_slide", "top_slide", "carriage", "tailstock"):
        given[name] = filler.dial(getattr(entry, name), getattr(example, name), f"lathe.{name}")
    return filler.record(example, given, "lathe")


def _mill(filler: Filler, entry: MillEntry | str | None, example: Mill | None) -> Mill | None:
    if isinstance(entry, str):  # "none"
        return None
    if entry is None or example is None:
        filler.assumed.append("mill")
        return example
    given = entry.model_dump(exclude={"dial"})
    dial = entry.dial and entry.dial.model_copy(update={"travel": entry.dial.travel or 0.0})
    given["dial"] = filler.dial(dial, example.dial, "mill.dial")  # travel_x and travel_y say how far
    return filler.record(example, given, "mill")


def _each(
    filler: Filler,
    entries: tuple[Entry, ...] | None,
    example: tuple[Record, ...],
    place: str,
    make: Callable[[Entry, str], Record],
) -> tuple[Record, ...]:
    if entries is None:
        filler.assumed.append(place)
        return example
    return tuple(make(entry, f"{place}.{index}") for index, entry in enumerate(entries))


def _stock(
    filler: Filler,
    file: ShopFile,
    entries: tuple[StockEntry, ...] | None,
    example: tuple[Bar, ...],
    place: str,
) -> tuple[Bar, ...]:
    if entries is None:
        filler.assumed.append(place)
        return example
    return tuple(bar for entry in entries for bar in bars_from(entry, file.units))


def refuse_doubles(file: ShopFile, yaml: YamlFile) -> None:
    """Refuse two jaw sets of one name and two tools of one letter."""
    wrong = [
        yaml.complaint((group, index, key), f'"{name}" is given twice.', "Give each its own.")
        for group, key, names in (
            ("jaws", "name", [one.name for one in file.jaws or ()]),
            ("tools", "letter", [one.letter for one in file.tools or ()]),
        )
        for index, name in enumerate(names)
        if name in names[:index]
    ]
    if wrong:
        raise Refusal(wrong)
