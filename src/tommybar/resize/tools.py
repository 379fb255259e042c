"""Sizes that a tool of the drawer gives: reamed, drilled, and milled."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from tommybar.resize.choice import WINDOW, Choice, Domain, percent, words
from tommybar.resize.grid import on_grid
from tommybar.shop.model import Shop


def owned_tools(shop: Shop, follows: str) -> tuple[float, ...]:
    """Diameters of the reamers, drills or cutters owned [mm]."""
    if follows == "reamer":
        return tuple(sorted({reamer.size for reamer in shop.reamers}))
    return tuple(sorted(set(shop.drills if follows == "drill" else shop.cutters)))


def tool_domain(
    name: str,
    follows: str,
    old: float,
    scale: float,
    owned: Sequence[float],
    also: Sequence[float] = (),
    units: Literal["mm", "in"] = "mm",
) -> Domain:
    """The tools near the scaled size; at scale 1 a tool that is owned is kept.

    A hole much larger than any tool is scaled like other sizes and bored.

    ``also`` are sizes outside the window that a relation may want.
    """
    exact = old * scale
    asked = old if abs(scale - 1) < 1e-9 else on_grid(exact, units)
    largest = max(owned, default=0.0)
    if exact > largest * (1 + WINDOW) and not also:
        has = f"the largest {follows} is {words(largest)} mm" if owned else f"the shop has no {follows}"
        caution = f"{has}: bore it to {words(asked)} mm and try it with a plug"
        return Domain(name, exact, (Choice(asked, 0.0, f"scaled; {caution}", caution=caution),))
    if abs(scale - 1) < 1e-9 and any(abs(one - old) < 1e-6 for one in owned):
        near = [one for one in owned if abs(one - old) < 1e-6 or any(abs(one - two) < 1e-6 for two in also)]
    else:
        nearest = min(owned, key=lambda one: (abs(one - exact), -one))
        near = [
            one
            for one in owned
            if abs(one / exact - 1) <= WINDOW or one == nearest or any(abs(one - two) < 1e-6 for two in also)
        ]
    best = min(near, key=lambda one: (abs(one - exact), -one))
    choices = tuple(
        Choice(float(one), abs(one / exact - 1), _why(follows, one, old, exact, one == best))
        for one in sorted(near, reverse=True)
    )
    return Domain(name, exact, choices, _refused(follows, owned, near, exact))


def _why(follows: str, size: float, old: float, exact: float, nearest: bool) -> str:
    if abs(size - exact) < 1e-6:
        return f"{follows} {words(size)} mm of the shop, exactly"
    lacking = f"; the shop has no {follows} {words(old)} mm" if abs(old - exact) < 1e-9 else ""
    which = f"nearest {follows}" if nearest else f"{follows} {words(size)} mm"
    return f"{which} of the shop, {words(abs(size - exact))} mm from {words(exact)} mm{lacking}"


def _refused(follows: str, owned: Sequence[float], near: Sequence[float], exact: float) -> tuple[str, ...]:
    """The next tool on each side of those looked at."""
    below = max((one for one in owned if one < min(near)), default=None)
    above = min((one for one in owned if one > max(near)), default=None)
    return tuple(
        f"{follows} {words(one)} mm: {words(abs(one - exact))} mm away ({percent(one / exact - 1)})"
        for one in (below, above)
        if one is not None and abs(one / exact - 1) <= 2 * WINDOW
    )
