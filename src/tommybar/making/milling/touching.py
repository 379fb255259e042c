"""Touching off with an edge finder: what the dial is set to at the edge."""

from __future__ import annotations

from tommybar.making.lengths import Mm
from tommybar.making.milling.rules import mill_rule

FINDER = 10.0  # usual edge finder; common practice, no source [mm]


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


def corner_words(finder: float = FINDER) -> str:
    """How zero is set at the lower left corner."""
    return (
        f"touch the left edge from outside: the spindle is then at X {Mm(-finder / 2):+.2f} with a {Mm(finder):g} finder; "
        f"the front edge: Y {Mm(-finder / 2):+.2f}. Then X 0 and Y 0 are the corner"
    )


def axis_words(dia: float, finder: float = FINDER) -> tuple[str, str]:
    """How zero is set over the axis of a round that lies along X: by both sides, and by one as a check."""
    travel, half = between_touches(dia, finder)
    return (
        f"Y zero on the axis: touch the front of the round {Mm(dia):.2f}, then its back: the spindle moves {Mm(travel):.2f} "
        f"with a {Mm(finder):g} finder; come back {Mm(half):.2f}, set Y 0.",
        f"Check: from Y 0 the front is touched at Y {Mm(-half):+.2f}, the back at Y {Mm(half):+.2f}; "
        f"if they differ by more than {Mm(2 * mill_rule('touch_error')):.2f}, halve them again.",
    )
