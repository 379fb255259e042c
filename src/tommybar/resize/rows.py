"""A row for every named size, in the order of the design, with its reason in trade words."""

from __future__ import annotations

from tommybar.resize.choice import words
from tommybar.resize.domains import SCALED, TOOLS
from tommybar.resize.scales import Scales
from tommybar.resize.search import Tried
from tommybar.resize.table import SizeRow

SHOWN = 3  # values not picked that are named
TOLD = 0.05  # a worked-out size that differs from the scaled one by more is told [mm]


def rows_of(scales: Scales, tried: Tried) -> tuple[SizeRow, ...]:
    """Old, exact and new of every named size, why, and what was refused."""
    values = scales.design.evaluate(tried.values)
    rows = []
    for size in scales.design.named:
        new = values[size.name]
        if size.expression:
            rows.append(_worked_out(size.name, size.value, new, size.unit, tried.scale))
            continue
        choice, domain = tried.picks[size.name], tried.domains[size.name]
        passed = [
            f"{_named(size.follows)}{_text(other.value, size.unit)}: {_against(tried, size.name, other.value)}"
            for other in domain.ordered
            if other.value != choice.value
        ][:SHOWN]
        exact = domain.exact if size.follows in SCALED and size.unit == "mm" else size.value
        kept = size.because and size.follows == "nothing" and size.because != choice.why
        why = f"{choice.why}; {size.because}" if kept else choice.why
        first = domain.ordered[0]
        if choice.value != first.value and (size.name, first.value) in tried.because:
            why += f"; {_text(first.value, size.unit)} would break: {tried.because[size.name, first.value]}"
        rows.append(
            SizeRow(
                size.name, size.value, exact, new, size.unit, size.follows, why, (*passed, *domain.refused)
            )
        )
    return tuple(rows)


def _worked_out(name: str, old: float | str, new: float | str, unit: str, scale: float) -> SizeRow:
    if isinstance(old, str) or isinstance(new, str) or unit != "mm":
        return SizeRow(name, old, old, new, unit, "worked out", "worked out from the others")
    exact = old * scale
    why = "worked out from the new sizes"
    if abs(new - exact) > TOLD:
        apart = "more" if new > exact else "less"
        why += f"; the scale alone would give {words(exact)} mm, this is {words(abs(new - exact))} mm {apart}"
    return SizeRow(name, old, exact, new, unit, "worked out", why)


def _against(tried: Tried, name: str, value: float | str) -> str:
    """What spoke against a value that was not picked."""
    if (name, value) in tried.because:
        return f"breaks {tried.because[name, value]}"
    domain = tried.domains[name]
    choice = next(one for one in domain.choices if one.value == value)
    if isinstance(value, float | int) and isinstance(domain.exact, float | int) and domain.exact:
        return f"{words(abs(value - domain.exact))} mm away from {words(domain.exact)} mm"
    return choice.why


def _named(follows: str) -> str:
    """The tool that a size is the name of."""
    return f"{follows} " if follows in TOOLS else ""


def _text(value: float | str, unit: str) -> str:
    return value if isinstance(value, str) else f"{words(value)} {unit}".rstrip()
