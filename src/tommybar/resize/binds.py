"""Each limit with the scale at which it is met exactly, and which of them decides."""

from __future__ import annotations

from collections.abc import Callable

from tommybar.refusals import Refusal
from tommybar.resize.asked import Asked, Key
from tommybar.resize.look import Values
from tommybar.resize.scales import STEP, Scales
from tommybar.resize.search import Tried
from tommybar.resize.table import Bind

ROUNDS = 12  # of the secant; a limit that is a straight line needs one
MET = 1e-7  # slack at which a limit is met exactly [mm]


def binds_of(scales: Scales, tried: Tried, deciding: frozenset[Key]) -> tuple[Bind, ...]:
    """Every limit looked at, and every other asking that decides, tightest first."""
    asked = {one.key: one for one in scales.looks.at(tried.values)} if tried.whole else {}
    found = []
    for key, one in asked.items():
        if one.kind != "limit" and key not in deciding:
            continue
        met = _met_at(scales, one, tried)
        if met is not None:
            found.append(Bind(one.what, one.part, one.figure, one.bound, met, key in deciding, one.least))
    for kind, what, name in sorted(deciding):
        if kind == "tool":  # a scale and no length: above it no tool that is owned will do
            found.append(Bind(what, name, round(tried.scale + STEP, 2), tried.scale, tried.scale, True))
    for bind in scales.extra:
        key = ("limit", bind.what, bind.part)
        found.append(
            Bind(bind.what, bind.part, bind.figure, bind.bound, bind.scale, key in deciding, bind.least)
        )
    return tuple(sorted(found, key=_tightness))


def deciding_keys(scales: Scales, tried: Tried, wanted: float) -> frozenset[Key]:
    """What is broken a hundredth above the scale chosen, in the choice there that breaks least."""
    if tried.scale >= wanted - 1e-9:
        return frozenset()
    above = scales.at(min(wanted, round(tried.scale + STEP, 2)))
    return frozenset(one.key for one in above.broken)


def _tightness(bind: Bind) -> tuple[bool, float, str, str]:
    return bind.least, -bind.scale if bind.least else bind.scale, bind.part, bind.what


def _slack(scales: Scales, key: Key, scale: float, like: Tried) -> float | None:
    """The slack with sizes as the scale alone would make them; None where they cannot be drawn."""
    return _slack_among(scales, key, scale, like, scales.looks.at)


def _slack_among(
    scales: Scales, key: Key, scale: float, like: Tried, looked: Callable[[Values], tuple[Asked, ...]]
) -> float | None:
    for values in (scales.exact(scale), scales.exact(scale, like)):
        try:
            for one in looked(values):
                if one.key == key:
                    return one.slack
        except Refusal:
            continue
    return None


def _slack_of_part(scales: Scales, key: Key, scale: float, like: Tried) -> float | None:
    """The same of a limit, its part looked at alone; of all else the whole design is looked at."""
    kind, _, part = key
    if kind != "limit" or not part:
        return _slack(scales, key, scale, like)
    return _slack_among(scales, key, scale, like, lambda values: scales.looks.of_part(values, part))


def _met_at(scales: Scales, asked: Asked, tried: Tried) -> float | None:
    """The scale at which a limit is met exactly, by secants; None for one that no scale meets."""
    one, other = tried.scale, tried.scale * 0.97
    slack_one, slack_other = (_slack(scales, asked.key, at, tried) for at in (one, other))
    if slack_one is None or slack_other is None:
        return None
    straight = _met_on_a_line(scales, asked, tried, slack_one, slack_other)
    if straight is not None:
        return straight
    for _ in range(ROUNDS):
        if abs(slack_one - slack_other) < 1e-12:
            return None
        guess = one - slack_one * (one - other) / (slack_one - slack_other)
        if not 0.01 <= guess <= 100:
            return None
        slack = _slack_of_part(scales, asked.key, guess, tried)
        if slack is None:
            return None  # the part cannot be drawn there, so nothing is known of it
        if abs(slack) < MET:
            return round(guess, 6)
        other, slack_other, one, slack_one = one, slack_one, guess, slack
    return round(one, 6)


def _met_on_a_line(
    scales: Scales, asked: Asked, tried: Tried, slack_one: float, slack_other: float
) -> float | None:
    """Where a limit is met whose slack runs straight through three scales; None when it does not.

    The three scales are the same for every limit, so that each is worked out
    once; a length that follows the scale runs straight.
    """
    one, other, third = tried.scale, tried.scale * 0.97, tried.scale * 1.03
    slack_third = _slack(scales, asked.key, third, tried)
    if slack_third is None or abs(slack_one - slack_other) < 1e-12:
        return None
    if abs((slack_third - slack_one) - (slack_one - slack_other)) > MET:
        return None
    met = one - slack_one * (one - other) / (slack_one - slack_other)
    return round(met, 6) if 0.01 <= met <= 100 else None
