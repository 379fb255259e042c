"""Threads: the smallest owned one that is nearly as strong as the scaled thread would be."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache
from math import sqrt

from tommybar.facts.threads import Thread, threads_of_series
from tommybar.facts.threads import thread as look_up
from tommybar.refusals import Refusal
from tommybar.resize.choice import Choice, Domain
from tommybar.shop.model import Shop

ENOUGH = 0.90  # of the scaled stress area
LARGER = 2  # larger threads that may stand in when a wall or relation wants one
OTHER_SERIES = 0.15  # what a thread of another series costs: its nuts, screws and spanners change too


@cache
def thread(designation: str) -> Thread:
    """The thread of that designation, looked up once."""
    return look_up(designation)


def owned_threads(shop: Shop, tools: frozenset[str]) -> tuple[str, ...]:
    """Designations for which the shop has every tool that is needed ("tap", "die")."""
    taps, dies = (_designations(tuple(one)) for one in (shop.taps, shop.dies))
    if "tap" in tools and "die" in tools:
        return tuple(one for one in taps if one in dies)
    if "die" in tools:
        return dies
    return taps if "tap" in tools else tuple(dict.fromkeys((*taps, *dies)))


def thread_domain(name: str, old: str, scale: float, owned: Iterable[str]) -> Domain:
    """The smallest owned thread with at least 0.90 of the scaled stress area, and the next larger.

    At scale 1 a thread that is owned is kept. A thread of the drawn series is
    taken before a slightly nearer one of another.
    """
    drawn = thread(old)
    needed = scale**2 * drawn.stress_area
    known = sorted((thread(one) for one in owned), key=lambda one: (one.stress_area, one.designation))
    kept = abs(scale - 1) < 1e-9 and any(one.designation == drawn.designation for one in known)
    strong = [one for one in known if one.stress_area >= ENOUGH * needed - 1e-9]
    if kept:
        strong = [drawn, *(one for one in strong if one.stress_area > drawn.stress_area)]
    if not strong:
        return _none_strong(name, drawn, needed, known)
    choices = []
    for one in strong:
        cost = abs(sqrt(one.stress_area / needed) - 1) + OTHER_SERIES * (one.series != drawn.series)
        why = "as drawn; the shop has it" if kept and one is drawn else _why(one, needed)
        choices.append(Choice(one.designation, cost, why))
    best = sorted(choices, key=lambda one: (one.cost, one.value))[: LARGER + 1]
    return Domain(name, old, tuple(best), () if kept else _refused(drawn, known, needed))


def shortfall(old: str, new: str, scale: float) -> float:
    """By what share of the diameter a thread is weaker than the scaled one; 0 when it is as strong.

    >>> round(shortfall("M6", "M4", 0.68), 3), shortfall("M6", "M4", 0.6)
    (0.029, 0.0)
    """
    ratio: float = thread(new).stress_area / (scale**2 * thread(old).stress_area)
    return max(0.0, 1 - sqrt(ratio))


def _why(one: Thread, needed: float) -> str:
    ratio = one.stress_area / needed
    return (
        f"owned thread that is strong enough: stress area {one.stress_area:.1f} mm2, "
        f"{ratio:.2f} of the scaled {needed:.1f} mm2"
    )


def _none_strong(name: str, drawn: Thread, needed: float, known: list[Thread]) -> Domain:
    if not known:
        stop = "the shop has no tap or die for it"
        return Domain(name, drawn.designation, (Choice(drawn.designation, 0.0, f"kept; {stop}", stop),))
    largest = known[-1]
    stop = (
        f"the largest thread owned, {largest.designation}, has {largest.stress_area / needed:.2f} "
        f"of the scaled stress area; at least {ENOUGH:.2f} is asked"
    )
    return Domain(name, drawn.designation, (Choice(largest.designation, 1.0, stop, stop),))


def _refused(drawn: Thread, known: list[Thread], needed: float) -> tuple[str, ...]:
    """The next smaller thread owned and the next smaller of the drawn series, with what speaks against them."""
    weaker = {
        one.designation: one
        for one in (*known, *_series(drawn.series))
        if one.stress_area < ENOUGH * needed - 1e-9
    }
    owned = [one for one in weaker.values() if any(one.designation == two.designation for two in known)]
    alike = [one for one in weaker.values() if one.series == drawn.series]
    found = {max(group, key=lambda one: one.stress_area).designation for group in (owned, alike) if group}
    said = []
    for one in sorted((weaker[name] for name in found), key=lambda one: -one.stress_area):
        missing = "" if any(one.designation == two.designation for two in known) else ", and not owned"
        said.append(
            f"{one.designation}: {one.stress_area:.2f} / {needed:.2f} = {one.stress_area / needed:.3f}, "
            f"below {ENOUGH:.2f}{missing}"
        )
    return tuple(said)


@cache
def _series(name: str) -> tuple[Thread, ...]:
    try:
        return threads_of_series(name)
    except Refusal:
        return ()


@cache
def _designations(names: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(thread(one).designation for one in names))
