"""Which instrument a size is measured with."""

from __future__ import annotations

from tommybar.shapes.features import Dim
from tommybar.shop.model import Shop


def instrument_name(shop: Shop, dim: Dim, how: str) -> str:
    """The finest instrument that reads that size; the coarsest where no limits are given; "" when none reads it."""
    can = [
        one for one in shop.instruments if how in one.measures and one.smallest <= dim.value <= one.largest
    ]
    if not can:
        return ""
    choose = min if dim.toleranced else max
    return choose(can, key=lambda one: (one.uncertainty, one.name)).name
