"""A small store to saw from."""

from __future__ import annotations

from collections.abc import Callable
from typing import Literal

import pytest

from tommybar.making.cards import Blank
from tommybar.shop.model import Bar, Dial, Lathe, Shop


@pytest.fixture
def store() -> Callable[..., Shop]:
    """A shop with nothing but a rack and a list of what can be bought."""

    def made(
        rack: tuple[Bar, ...] = (),
        obtainable: tuple[Bar, ...] = (),
        kerf: float = 1.5,
        unit: Literal["mm", "in"] = "mm",
    ) -> Shop:
        still = Dial(0.02, 2.0)
        lathe = Lathe("lathe", 90, 180, 110, 350, 20, (200.0,), still, still, still, still, 13)
        nothing = ((),) * 10
        return Shop("the store", unit, lathe, None, *nothing, rack, obtainable, frozenset(), kerf)

    return made


@pytest.fixture
def blank() -> Callable[..., Blank]:
    """A blank of mild steel round, or of another section."""

    def made(
        part: str,
        size: float,
        length: float,
        count: int = 1,
        material: str = "mild steel",
        section: str = "round",
        width: float = 0.0,
    ) -> Blank:
        return Blank(part, material, section, size, width, length, length - 2, (), count)

    return made
