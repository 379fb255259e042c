"""Sizes that stock gives: a bar left as drawn, a plate's thickness, a sheet's."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from tommybar.resize.choice import WINDOW, Choice, Domain, percent, words
from tommybar.resize.grid import on_grid
from tommybar.shop.model import Bar

Units = Literal["mm", "in"]
NEAR = 0.10  # a bar within this share of the scaled size is used untouched
THICK_ENOUGH = 0.95  # of the scaled thickness
TURNED_DOWN = 0.25  # what turning a bar costs when one could have been left as it is (above the window)


def bar_domain(
    name: str, old: float, scale: float, bars: Sequence[Bar], spindle_bore: float, units: Units = "mm"
) -> Domain:
    """A bar within 10 % used untouched, else the next larger one turned down; at scale 1 the drawn figure."""
    exact = old * scale
    sizes = sorted({bar.size for bar in bars})
    if abs(scale - 1) < 1e-9:
        drawn = [one for one in sizes if abs(one - old) < 1e-6]
        if drawn or any(one > old for one in sizes) or not sizes:
            why = f"{words(old)} mm bar as drawn" if drawn else _turned_words(old, sizes)
            return Domain(name, exact, (Choice(old, 0.0, why),))
    near = [one for one in sizes if abs(one / exact - 1) <= NEAR + 1e-9]
    choices = [
        Choice(one, abs(one / exact - 1) + (0.0 if one in near or near else TURNED_DOWN), why)
        for one in sizes
        if abs(one / exact - 1) <= WINDOW
        for why in [_untouched_words(one, exact, spindle_bore)]
    ]
    turned = on_grid(exact, units)
    if not any(one.value == turned for one in choices) and (not sizes or sizes[-1] > turned):
        cost = abs(turned / exact - 1) + (TURNED_DOWN if near else 0.0)
        choices.append(Choice(turned, cost, _turned_words(turned, sizes)))
    if not choices:
        largest = sizes[-1]
        stop = f"the largest bar is {words(largest)} mm"
        choices = [Choice(largest, abs(largest / exact - 1), stop, stop)]
    refused = tuple(
        f"{words(one)} mm bar: {percent(one / exact - 1)}, over 10 %"
        for one in sizes
        if one not in near and abs(one / exact - 1) <= 1.5 * WINDOW
    )
    return Domain(name, exact, tuple(choices), refused)


def _untouched_words(size: float, exact: float, spindle_bore: float) -> str:
    off = f", {percent(size / exact - 1)} from {words(exact)} mm" if abs(size - exact) > 1e-6 else ""
    cut = f"; it does not pass the spindle bore of {words(spindle_bore)} mm, cut it to length first"
    return f"{words(size)} mm bar used untouched{off}" + (cut if size > spindle_bore else "")


def _turned_words(size: float, sizes: Sequence[float]) -> str:
    larger = [one for one in sizes if one > size]
    return f"turned from {words(min(larger))} mm bar" if larger else "turned from bar that is to be got"


def plate_domain(
    name: str,
    old: float,
    scale: float,
    sold: Sequence[float],
    what: str = "plate",
    units: Units = "mm",
    known: Sequence[float] = (),
) -> Domain:
    """The next thickness (or width of flat) at 0.95 of the scaled one or above, and the one after it.

    At scale 1 the drawn figure stays, milled from the next thicker piece if
    need be. ``known`` are sizes that are named among those refused although
    they may not be had.
    """
    exact = old * scale
    sizes = sorted(set(sold))
    kept = abs(scale - 1) < 1e-9
    if kept and (not sizes or any(abs(one - old) < 1e-6 for one in sizes)):
        return Domain(name, exact, (Choice(old, 0.0, f"{words(old)} mm {what} as drawn"),))
    if kept and sizes[-1] > old:
        larger = min(one for one in sizes if one > old)
        return Domain(name, exact, (Choice(old, 0.0, f"milled from {words(larger)} mm {what}"),))
    thick = [one for one in sizes if one >= THICK_ENOUGH * exact - 1e-9]
    thin = sorted(one for one in {*sizes, *known} if one < THICK_ENOUGH * exact - 1e-9)
    refused = tuple(
        f"{words(one)} mm {what}: below 0.95 times {words(exact)} mm, which is {words(THICK_ENOUGH * exact)} mm"
        for one in thin[-1:]
    )
    if not thick:
        stop = f"the largest {what} is {words(sizes[-1])} mm" if sizes else ""
        why = stop or f"scaled; the {what} is to be got"
        return Domain(name, exact, (Choice(old if kept else on_grid(exact, units), 0.0, why, stop),), refused)
    whys = (
        f"next {what} at or above 0.95 times {words(exact)} mm",
        f"a larger {what} than strength asks for",
    )
    choices = tuple(
        Choice(one, place + abs(one / exact - 1) / 10, why)
        for place, (one, why) in enumerate(zip(thick, whys, strict=False))
    )
    return Domain(name, exact, choices, refused)


def sheet_domain(
    name: str, old: float, scale: float, sold: Sequence[float], what: str = "sheet", units: Units = "mm"
) -> Domain:
    """The nearest sheet below 3 mm, and its neighbours within the window."""
    exact = old * scale
    sizes = sorted(set(sold))
    if abs(scale - 1) < 1e-9 and (not sizes or any(abs(one - old) < 1e-6 for one in sizes)):
        return Domain(name, exact, (Choice(old, 0.0, f"{words(old)} mm {what} as drawn"),))
    if not sizes:
        return Domain(name, exact, (Choice(on_grid(exact, units), 0.0, f"scaled; the {what} is to be got"),))
    nearest = min(sizes, key=lambda one: (abs(one - exact), -one))
    near = [one for one in sizes if one == nearest or abs(one / exact - 1) <= WINDOW]
    choices = tuple(
        Choice(
            one,
            abs(one / exact - 1),
            f"{'nearest' if one == nearest else f'{words(one)} mm'} {what}, "
            f"{words(abs(one - exact))} mm from {words(exact)} mm",
        )
        for one in near
    )
    return Domain(name, exact, choices)
