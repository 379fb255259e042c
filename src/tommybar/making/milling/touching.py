"""Touching off with an edge finder: what the dial is set to at the edge."""

from __future__ import annotations

from tommybar.making.lengths import Mm
from tommybar.making.milling.rules import mill_rule
from tommybar.shop.model import Shop

FINDERS = {"mm": 10.0, "in": 12.7}  # usual edge finders; common practice, no source [mm]


def finder_of(shop: Shop) -> float:
    """The edge finder reckoned with: 10 mm, or half an inch in an inch shop [mm]."""
    return FINDERS[shop.unit]


def spindle_at_left_edge(finder: float, edge: float = 0.0) -> float:
    """Where the spindle stands when its finder touches a left or front edge from outside [mm].

    Half the finder to the left of the edge, so the figure is negative.

    Examples
    --------
    >>> spindle_at_left_edge(10.0)
    -5.0
    """
    return edge - finder / 2


def spindle_at_right_edge(finder: float, edge: float) -> float:
    """The same at a right or back edge: half the finder beyond it [mm].

    Examples
    --------
    >>> spindle_at_right_edge(10.0, 60.0)
    65.0
    """
    return edge + finder / 2


def between_touches(dia: float, finder: float) -> tuple[float, float]:
    """Travel between touching both sides of a round, and half of it back to the axis [mm].

    Examples
    --------
    >>> between_touches(56.0, 10.0)
    (66.0, 33.0)
    """
    return dia + finder, (dia + finder) / 2


def corner_words(finder: float) -> str:
    """How zero is set at the lower left corner."""
    return (
        f"touch the left edge from outside: the spindle is then at X {Mm(-finder / 2):+.2f} with a {Mm(finder):g} finder; "
        f"the front edge: Y {Mm(-finder / 2):+.2f}. Then X 0 and Y 0 are the corner"
    )


def axis_words(dia: float, finder: float, way: str = "Y") -> tuple[str, str]:
    """How zero is set over the axis of a round, across it: by both sides, and by the signs as a check."""
    travel, half = between_touches(dia, finder)
    one, other = ("front", "back") if way == "Y" else ("left", "right")
    return (
        f"{way} zero on the axis: touch the {one} of the round {Mm(dia):.2f}, then its {other}: the spindle moves "
        f"{Mm(travel):.2f} with a {Mm(finder):g} finder; come back {Mm(half):.2f}, set {way} 0.",
        f"Check: from {way} 0 the {one} is touched at {way} {Mm(-half):+.2f}, the {other} at {way} {Mm(half):+.2f}; "
        f"if they differ by more than {Mm(2 * mill_rule('touch_error')):.2f}, halve them again.",
    )
