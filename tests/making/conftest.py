"""The demonstrator in shop R, loaded once, and small helpers to take things away."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from tommybar.design import load_design
from tommybar.design.model import Part, SizedDesign
from tommybar.making.joints import joints_of
from tommybar.making.lengths import spoken
from tommybar.making.loop_lengths import loop_lengths
from tommybar.making.parts import gives_to, route_part
from tommybar.making.turned import Making
from tommybar.shop import load_shop
from tommybar.shop.model import Shop

EXAMPLES = Path(__file__).parents[2] / "examples"


@pytest.fixture(scope="session")
def demonstrator() -> SizedDesign:
    """The example design at the sizes drawn."""
    return load_design(EXAMPLES / "demonstrator" / "design.yaml").sized()


@pytest.fixture(scope="session")
def shop_r() -> Shop:
    """The reference shop."""
    return load_shop(EXAMPLES / "shops" / "shop-r.yaml")


@pytest.fixture
def made(demonstrator: SizedDesign, shop_r: Shop):
    """Route a part of the demonstrator, in shop R or another."""

    def of(name: str, shop: Shop | None = None, stock: str = "ask", **changes: object) -> Making:
        part: Part = demonstrator.part(name)
        if changes:
            part = replace(part, **changes)
        design = replace(demonstrator, parts=tuple(part if p.name == name else p for p in demonstrator.parts))
        making = route_part(
            part,
            gives_to(design),
            shop or shop_r,
            stock=stock,
            joints=joints_of(design, name),
            lengths=loop_lengths(design, name),
        )
        return Making(making.blank, spoken(making.cards, "mm"), spoken(making.findings, "mm"))

    return of


def without_jaws(shop: Shop, *names: str) -> Shop:
    """The same shop with some jaw sets taken away."""
    return replace(shop, jaws=tuple(jaws for jaws in shop.jaws if jaws.name not in names))
