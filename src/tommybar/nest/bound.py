"""How good a cutting plan could be at best; scipy's HiGHS is called only when the easy bound leaves a gap."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from tommybar.nest.lengths import bar_steps, piece_steps

MOST_PATTERNS = 3000
NODES = 200  # of the branch and bound: a count, so that the answer is the same on every machine


def least_bars(pieces: Sequence[float], bar: float, kerf: float) -> int:
    """The number of equal bars that the summed lengths need at least."""
    return -(-sum(piece_steps(one, kerf) for one in pieces) // bar_steps(bar, kerf)) if pieces else 0


def best_patterns(
    pieces: Sequence[float], bar: float, kerf: float
) -> tuple[int, tuple[tuple[int, ...], ...]] | None:
    """The least number of bars over all ways of cutting one, with a plan; None for too many ways.

    Every fullest way of cutting a bar is listed and HiGHS chooses how often
    each is sawn. The number is its proved lower bound, whether or not the plan
    meets it.
    """
    sizes = sorted({piece_steps(one, kerf) for one in pieces}, reverse=True)
    wanted = Counter(piece_steps(one, kerf) for one in pieces)
    patterns = _patterns(sizes, wanted, bar_steps(bar, kerf))
    if patterns is None:
        return None
    import numpy as np
    from scipy.optimize import Bounds, LinearConstraint, milp

    ways = np.array(patterns, dtype=float).T
    need = np.array([wanted[size] for size in sizes], dtype=float)
    answer = milp(
        c=np.ones(ways.shape[1]),
        constraints=LinearConstraint(ways, lb=need),
        integrality=np.ones(ways.shape[1]),
        bounds=Bounds(0, float(need.max())),
        options={"node_limit": NODES},
    )
    bound = least_bars(pieces, bar, kerf)
    if answer.mip_dual_bound is not None:
        bound = max(bound, int(-(-(answer.mip_dual_bound - 1e-6) // 1)))
    if answer.x is None:
        return bound, ()
    times = [round(one) for one in answer.x]
    return bound, _laid(pieces, kerf, sizes, patterns, times)


def _patterns(sizes: Sequence[int], wanted: Counter[int], room: int) -> list[tuple[int, ...]] | None:
    """Every way of cutting one bar to which no further piece can be added; None above the ceiling."""
    found: list[tuple[int, ...]] = []
    stack: list[tuple[tuple[int, ...], int]] = [((), room)]
    while stack:
        head, left = stack.pop()
        if len(head) == len(sizes):
            added = any(
                size <= left and count < wanted[size] for size, count in zip(sizes, head, strict=True)
            )
            if not added:
                found.append(head)
                if len(found) > MOST_PATTERNS:
                    return None
            continue
        if len(stack) > 20 * MOST_PATTERNS:
            return None
        size = sizes[len(head)]
        for count in range(min(wanted[size], left // size) + 1):
            stack.append(((*head, count), left - count * size))
    return found


def _laid(
    pieces: Sequence[float],
    kerf: float,
    sizes: Sequence[int],
    patterns: Sequence[tuple[int, ...]],
    times: Sequence[int],
) -> tuple[tuple[int, ...], ...]:
    """The pieces dealt out to the patterns, in the order in which they were given."""
    waiting: dict[int, list[int]] = {size: [] for size in sizes}
    for place in range(len(pieces) - 1, -1, -1):
        waiting[piece_steps(pieces[place], kerf)].append(place)
    bars = []
    for pattern, often in zip(patterns, times, strict=True):
        for _ in range(often):
            bar = [
                waiting[size].pop()
                for size, count in zip(sizes, pattern, strict=True)
                for _ in range(min(count, len(waiting[size])))
            ]
            if bar:
                bars.append(tuple(bar))
    return tuple(bars)


def least_unserved(
    pieces: Sequence[tuple[float, int]],
    bars: Sequence[float],
    serves: Sequence[Sequence[bool]],
    kerf: float,
) -> float:
    """The least length of pieces that no sawing of these bars can serve [mm].

    ``pieces`` are (length, count), ``serves[piece][bar]`` whether that bar's
    section will do. The figure is HiGHS' proved lower bound after a fixed
    number of nodes, so a plan that meets it is as good as any.
    """
    import numpy as np
    from scipy.optimize import Bounds, LinearConstraint, milp

    pairs = [(one, bar) for one in range(len(pieces)) for bar in range(len(bars)) if serves[one][bar]]
    lengths = np.array([length for length, _ in pieces])
    counts = np.array([count for _, count in pieces], dtype=float)
    cost = np.concatenate([np.zeros(len(pairs)), lengths])
    room = np.zeros((len(bars), len(cost)))
    need = np.zeros((len(pieces), len(cost)))
    for column, (one, bar) in enumerate(pairs):
        room[bar, column] = piece_steps(pieces[one][0], kerf)
        need[one, column] = 1
    for one in range(len(pieces)):
        need[one, len(pairs) + one] = 1
    rules = [LinearConstraint(need, lb=counts, ub=counts)]
    if pairs:
        rules.append(LinearConstraint(room, ub=np.array([bar_steps(one, kerf) for one in bars], dtype=float)))
    answer = milp(
        c=cost,
        constraints=rules,
        integrality=np.ones(len(cost)),
        bounds=Bounds(0, np.inf),
        options={"node_limit": NODES},
    )
    return float(answer.mip_dual_bound or 0.0)
