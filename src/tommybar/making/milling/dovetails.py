"""A dovetail measured over two rounds: the one figure by which it is fitted."""

from __future__ import annotations

import math

from tommybar.making.mill_steps import MillBench


def pin_reach(pin: float, angle: float) -> float:
    """From the sharp corner of a dovetail to the far side of a round that lies in it [mm, deg].

    D/2 (1 + cot(a/2)), the round touching floor and flank.

    Examples
    --------
    >>> round(pin_reach(6.0, 60.0), 4)
    8.1962
    """
    return pin / 2 * (1 + 1 / math.tan(math.radians(angle) / 2))


def over_pins(narrow: float, pin: float, angle: float) -> float:
    """Over two rounds in the corners of a tail that stands, ``narrow`` at its root [mm, deg].

    Examples
    --------
    >>> round(over_pins(20.0, 6.0, 60.0), 3)
    36.392
    """
    return narrow + 2 * pin_reach(pin, angle)


def between_pins(narrow: float, depth: float, pin: float, angle: float) -> float:
    """Between two rounds in the corners of a dovetail slot, ``narrow`` at its mouth [mm, deg].

    Examples
    --------
    >>> round(between_pins(20.0, 8.0, 6.0, 60.0), 3)
    12.845
    """
    floor = narrow + 2 * depth / math.tan(math.radians(angle))
    return floor - 2 * pin_reach(pin, angle)


def told_dovetail(
    bench: MillBench, feature: str, narrow: float, depth: float, angle: float, *, tail: bool
) -> None:
    """No steps are planned for a dovetail: its measure over rounds is told, and that it is cut from the drawing."""
    touch = (
        1 + math.cos(math.radians(angle))
    ) / 2  # height of the touch on the flank, over the round's diameter
    pins = [d for d in bench.shop.drills if d * touch <= depth]
    pin = max(pins) if pins else round(depth, 1)
    measure = over_pins(narrow, pin, angle) if tail else between_pins(narrow, depth, pin, angle)
    bench.stop(
        905,
        f"{feature}: a dovetail of {angle:g} deg is planned by its measure only: {measure:.3f} mm "
        f"{'over' if tail else 'between'} two rounds of {pin:g} mm laid in its corners.",
        feature,
        "Mill the slot square with an end mill first, then cut it with a dovetail cutter of that angle to this measure.",
        figure=f"{measure:.3f} mm",
        bound="dovetail cutters are not in the shop file",
    )
