"""Small parts of our own, milled in shop R or in a shop with something taken away."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from tommybar.design.model import Part
from tommybar.making.lengths import spoken
from tommybar.making.mill_steps import MillBench
from tommybar.making.milled_holes import hole_cards
from tommybar.making.plates import plate_part
from tommybar.making.turned import Making
from tommybar.shapes.features import Cylinder, Dim, PlateShape, TurnedShape
from tommybar.shop import load_shop
from tommybar.shop.model import Shop

EXAMPLES = Path(__file__).parents[3] / "examples"


@pytest.fixture(scope="session")
def shop() -> Shop:
    """The reference shop."""
    return load_shop(EXAMPLES / "shops" / "shop-r.yaml")


@pytest.fixture(scope="session")
def bare(shop) -> Shop:
    """The reference shop without boring head, dividing, vee block and sine bar."""
    mill = replace(shop.mill, boring_head=(0.0, 0.0), vee_to=0.0, sine_bar=0.0, rotary_table=0.0)
    return replace(shop, mill=mill, can=shop.can - {"boring head", "dividing"})


@pytest.fixture
def bench(shop):
    """A mill card being written for a steel part, in a shop."""

    def of(one: Shop = shop, material: str = "mild steel", **changes) -> MillBench:
        part = Part("piece", "turned", material, 1, None)
        return MillBench(part, one, one.mill, 1, **changes)

    return of


@pytest.fixture
def milled(shop):
    """The mill cards of a turned part, with its findings."""

    def of(shape: TurnedShape, one: Shop = shop, material: str = "mild steel", gives_to=None) -> Making:
        cards, findings = hole_cards(
            Part("piece", "turned", material, 1, shape), shape, one, 0, gives_to or {}
        )
        return Making(None, spoken(tuple(cards), "mm"), spoken(tuple(findings), "mm"))

    return of


@pytest.fixture
def plated(shop):
    """The cards of a plate, with its findings."""

    def of(shape: PlateShape, one: Shop = shop, material: str = "mild steel", gives_to=None) -> Making:
        making = plate_part(Part("piece", "plate", material, 1, shape), one, gives_to or {})
        return Making(making.blank, spoken(making.cards, "mm"), spoken(making.findings, "mm"))

    return of


@pytest.fixture
def disc():
    """A plain round with what is drilled and milled in it."""

    def of(dia: float, long: float, **more) -> TurnedShape:
        rim = Cylinder("rim", Dim(dia, "piece.rim"), 0.0, long)
        return TurnedShape(Dim(long, "piece.length"), (rim,), **more)

    return of


@pytest.fixture
def numbers():
    """Numbers of the findings of a severity, in order."""

    def of(made, severity: str = "stop") -> list[int]:
        return [f.number for f in made.findings if f.severity == severity]

    return of
