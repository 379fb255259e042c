"""What may stand in a size's place at one scale, dearest last."""

from __future__ import annotations

from dataclasses import dataclass

PINNED = "pinned by the builder"
WINDOW = 0.22  # tools and bars further off than this share of the scaled size are not looked at


@dataclass(frozen=True)
class Choice:
    """One value, what it costs (share by which it departs from the scale), and why it is one."""

    value: float | str
    cost: float
    why: str
    stop: str = ""  # why even this one will not do, when nothing better is there
    caution: str = ""  # what the builder must do about it


@dataclass(frozen=True)
class Domain:
    """All that may stand in one size's place, cheapest first, and what was refused outright."""

    name: str
    exact: float | str
    choices: tuple[Choice, ...]
    refused: tuple[str, ...] = ()
    liked: tuple[float, ...] = ()  # the designer's own wishes, best first

    def rank(self, choice: Choice) -> tuple[int, float]:
        """Sorts choices: the designer's wishes, then the least departure."""
        if not self.liked:
            return 0, round(choice.cost, 9)
        near = [n for n, one in enumerate(self.liked) if _same(one, choice.value)]
        return (near[0] if near else len(self.liked)), round(choice.cost, 9)

    @property
    def ordered(self) -> tuple[Choice, ...]:
        """The choices, best first."""
        return tuple(sorted(self.choices, key=self.rank))


def _same(one: float, other: float | str) -> bool:
    return isinstance(other, float | int) and abs(one - other) < 1e-6


def words(value: float) -> str:
    """A figure without noughts that say nothing; a size of whole 64ths of an inch to its last figure.

    >>> words(6.8), words(10.0), words(10.88), words(3.175)
    ('6.8', '10', '10.88', '3.175')
    """
    parts = value / 25.4 * 64
    exact = abs(parts - round(parts)) < 1e-6
    return f"{value:.{4 if exact else 2}f}".rstrip("0").rstrip(".")


def percent(value: float) -> str:
    """A departure in per cent with its sign.

    >>> percent(-0.0809), percent(0.103)
    ('-8.1 %', '+10.3 %')
    """
    return f"{100 * value:+.1f} %"
