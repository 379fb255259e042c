"""Questions about holding: which jaws grip this diameter, and how deep."""

from __future__ import annotations

from tommybar.shop.model import Jaws, Shop


def grips_for(shop: Shop, dia: float, length: float) -> list[tuple[Jaws, float]]:
    """Every way of gripping a diameter, with the length of grip it gives [mm].

    ``length`` is how much of that diameter stands there to be held; the grip
    is never deeper than that. Truest first, then deepest.
    """
    found = []
    for jaws in shop.jaws:
        depths = [depth for least, most, depth in jaws.ranges if least - 1e-9 <= dia <= most + 1e-9]
        if depths and length > 0:
            found.append((jaws, min(max(depths), length)))
    return sorted(found, key=lambda pair: (pair[0].runout, -pair[1], pair[0].name))


def nearest_grip_words(shop: Shop, dia: float, grips: str = "outside") -> str:
    """Why no jaws hold a diameter: the gap it falls in, or the end it lies beyond.

    An empty string when there are jaws for it.
    """
    ranges = sorted((low, high) for jaws in shop.jaws if jaws.grips == grips for low, high, _ in jaws.ranges)
    if any(low - 1e-9 <= dia <= high + 1e-9 for low, high in ranges):
        return ""
    below = [high for _, high in ranges if high < dia]
    above = [low for low, _ in ranges if low > dia]
    if not ranges:
        return f"no jaws grip the {grips}"
    if not above:
        return f"over {max(below):g} has no jaws"
    if not below:
        return f"below {min(above):g} has no jaws"
    return f"{max(below):g} to {min(above):g} has no jaws"
