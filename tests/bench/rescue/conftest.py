"""The demonstrator in shop R when something goes wrong with it."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from tommybar.bench.entries import Entry
from tommybar.bench.rescue import Mishap, Offer, Situation, offers, situation, warnings
from tommybar.bench.stored import Build
from tommybar.findings import Finding

from ..conftest import DESIGN, SHOP


def stands(*entries: Entry, design: str = DESIGN, shop: str = SHOP, scale: float = 1.0) -> Situation:
    """A build after some entries, as it stands; the store is not needed for it."""
    build = Build("x", "Trial", "demo", "mine", design, shop, scale, {}, "ask", "2026-05-01", "0", entries)
    return situation(build)


def warned(number: int, stand: Situation) -> list[Finding]:
    """The warnings of one reality."""
    return [one for one in warnings(stand) if one.number == 750 + number]


@pytest.fixture
def rescued() -> Callable[..., tuple[Offer, ...]]:
    """What is offered after a mishap, by default with nothing begun."""

    def of(number: int, about: str, value: float = 0.0, said: str = "", **given: Any) -> tuple[Offer, ...]:
        stand = given.pop("stand", None) or stands()
        found = offers(stand, Mishap(number, about, value, said, given))
        assert [one.price for one in found] == sorted(one.price for one in found)
        return found

    return of


def named(found: tuple[Offer, ...], words: str) -> Offer:
    """The one offer that says so."""
    (one,) = [one for one in found if words in one.words]
    return one


def limits(offer: Offer, size: str) -> tuple[float | None, float | None]:
    """The limits of a size in the plan of an offer."""
    from tommybar.made.dims import dims_of

    dim = dims_of(offer.plan.design)[size]
    return dim.smallest, dim.largest
