"""The rope-drive jockey, the small shop it is made in, and shops altered from it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest

from tommybar.design import Design, load_design
from tommybar.resize import Resized, resize
from tommybar.shop import load_shop
from tommybar.shop.model import Reamer, Shop

HERE = Path(__file__).parent


@cache
def _jockey() -> Design:
    return load_design(HERE / "jockey.yaml")


@cache
def _small_shop() -> Shop:
    return load_shop(HERE / "small-shop.yaml")


@cache
def _resized() -> Resized:
    return resize(_jockey(), _small_shop(), stock="rack")


@pytest.fixture
def jockey() -> Design:
    """The rope-drive jockey as drawn."""
    return _jockey()


@pytest.fixture
def small_shop() -> Shop:
    """The small shop of the worked example."""
    return _small_shop()


@pytest.fixture
def small() -> Resized:
    """The jockey from the rack of the small shop."""
    return _resized()


@pytest.fixture
def with_reamers() -> Callable[..., Shop]:
    """The small shop with other reamers."""

    def made(*sizes: float) -> Shop:
        return replace(_small_shop(), reamers=tuple(Reamer(size) for size in sizes))

    return made
