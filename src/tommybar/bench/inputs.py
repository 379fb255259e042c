"""What a build is planned with: its design, shop, made sizes and choices, as its changes left them."""

from __future__ import annotations

import tempfile
import threading
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from functools import lru_cache
from pathlib import Path
from typing import Literal

from tommybar.bench.made_file import made_from
from tommybar.bench.standing import Standing, standing
from tommybar.bench.stored import Build, Stock
from tommybar.design import Design, design_from_text
from tommybar.made import Made
from tommybar.planning import Plan, plan
from tommybar.shop import load_shop
from tommybar.shop.model import Shop

Tell = Callable[[str], None]
MOST_KEPT = 24
_KEPT: dict[object, Plan] = {}
_ALONE = threading.Lock()  # a page asks from several threads


def silent(words: str) -> None:
    """Hear a stage and say nothing."""


@dataclass(frozen=True)
class Inputs:
    """Everything a plan is worked out from."""

    design_text: str = field(repr=False)
    shop_text: str = field(repr=False)
    made: Made
    scale: float | None
    pins: Mapping[str, float | str]
    stock: Stock

    @property
    def design(self) -> Design:
        """The design, read."""
        return design_of(self.design_text)

    @property
    def shop(self) -> Shop:
        """The shop, read."""
        return shop_of(self.shop_text)


@lru_cache(maxsize=32)
def design_of(text: str) -> Design:
    """A design out of its text; kept, since a build asks for the same one again and again."""
    return design_from_text(text)


@lru_cache(maxsize=32)
def shop_of(text: str) -> Shop:
    """A shop out of its text, filled up like one out of a file."""
    with tempfile.TemporaryDirectory() as folder:
        place = Path(folder) / "shop.yaml"
        place.write_text(text, encoding="utf-8")
        return load_shop(place)


def inputs_of(build: Build, stand: Standing | None = None) -> Inputs:
    """The inputs as they are after every change that stands."""
    stand = stand or standing(build.entries)
    design, shop, scale, stock = build.design_text, build.shop_text, build.scale, build.stock
    pins = dict(build.pins)
    for change in stand.changes:
        said = change.said
        design, shop = said.get("design") or design, said.get("shop") or shop
        scale, stock = said.get("scale", scale), said.get("stock") or stock
        pins.update(said.get("pins", {}))
    return Inputs(design, shop, made_from(stand, design_of(design).title), scale, pins, stock)


def plan_with(inputs: Inputs, tell: Tell = silent, words_in: Literal["mm", "in"] = "mm") -> Plan:
    """The plan of these inputs; the last ones are kept, since each entry compares a plan with the one before."""
    key = (
        inputs.design_text,
        inputs.shop_text,
        inputs.made,
        inputs.scale,
        tuple(sorted(inputs.pins.items())),
        inputs.stock,
        words_in,
    )
    with _ALONE:
        if key in _KEPT:
            _KEPT[key] = _KEPT.pop(key)  # the last used one goes last
            return _KEPT[key]
    found = plan(
        inputs.design,
        inputs.shop,
        inputs.made,
        scale=inputs.scale,
        pins=inputs.pins,
        stock=inputs.stock,
        words_in=words_in,
        tell=tell,
    )
    with _ALONE:
        _KEPT[key] = found
        while len(_KEPT) > MOST_KEPT:
            _KEPT.pop(next(iter(_KEPT)))
    return found
