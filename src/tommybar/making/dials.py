"""What the machine's own dials read for a wanted travel."""

from __future__ import annotations

from tommybar.making.lengths import Mm
from tommybar.shop.model import Dial


def turns_and_divisions(dial: Dial, travel: float) -> tuple[int, float]:
    """Whole turns and divisions (to the half) of a dial for a travel [mm].

    Examples
    --------
    >>> from tommybar.shop.model import Dial
    >>> turns_and_divisions(Dial(per_division=0.02, per_turn=2.0, reads="RAD"), 2.48)
    (1, 24.0)
    >>> turns_and_divisions(Dial(per_division=0.0254, per_turn=2.54, unit="in"), 2.54)
    (1, 0.0)
    """
    a_turn = round(dial.per_turn / dial.per_division)
    halves = round(2 * abs(travel) / dial.per_division)
    turns, rest = divmod(halves, 2 * a_turn)
    return turns, rest / 2


def landing(dial: Dial, travel: float) -> float:
    """The travel that the nearest half division really gives [mm].

    Examples
    --------
    >>> from tommybar.shop.model import Dial
    >>> round(landing(Dial(per_division=0.02, per_turn=2.0, reads="RAD"), 0.125), 3)
    0.12
    """
    turns, divisions = turns_and_divisions(dial, travel)
    return turns * dial.per_turn + divisions * dial.per_division


def travel_words(dial: Dial, travel: float) -> str:
    """A travel in turns and divisions of that dial: "1 turn + 24 div"."""
    turns, divisions = turns_and_divisions(dial, travel)
    div = f"{divisions:g} div"
    if turns == 0:
        return div
    return f"{turns} turn{'s' if turns != 1 else ''} + {div}"


def graduation_words(dial: Dial) -> str:
    """What one division is, as the dial is marked: "RAD dial, 0.02 a div"."""
    marked = dial.per_division * (2 if dial.reads == "DIA" else 1)
    figure = f"{marked / 25.4:.4g} in" if dial.unit == "in" else f"{Mm(marked):marked}"
    return f"{dial.reads + ' ' if dial.reads else ''}dial, {figure} a div"


def backlash_words(dial: Dial) -> str:
    """How to take up the slack of that dial, or nothing when it is unknown."""
    if dial.slack <= 0:
        return "Come up to the figure from one side only."
    return f"Slack is {dial.slack:g} div: go back a full turn, then come up from the same side."
