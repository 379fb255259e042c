"""In which order holes are visited, and what the mill's dials read there."""

from __future__ import annotations

from dataclasses import dataclass

from tommybar.making.cards import HolePlace
from tommybar.making.dials import turns_and_divisions
from tommybar.shop.model import Mill

ALONG = ("left", "right")  # of the zero, the tool seen to move over the work
ACROSS = ("front", "back")


@dataclass(frozen=True)
class Spot:
    """One hole to visit: its place from the card's zero [mm] and what it is."""

    x: float
    y: float
    what: str


def visiting_order(spots: list[Spot]) -> list[Spot]:
    """From left to right, and upwards within a column, so that slides mostly keep their direction."""
    return sorted(spots, key=lambda s: (round(s.x, 3), round(s.y, 3)))


def dialled(mill: Mill, travel: float, ways: tuple[str, str]) -> str:
    """A place as the mill shows it: the read-out's figure, or which way and how many turns and divisions."""
    if abs(travel) < 0.0005:
        return "0"
    if mill.readout > 0:
        return f"{travel:+.3f}" if mill.readout < 0.005 else f"{travel:+.2f}"
    turns, divisions = turns_and_divisions(mill.dial, travel)
    whole = f"{turns} t " if turns else ""
    return f"{ways[travel > 0]} {whole}{divisions:g} div"


def hole_places(mill: Mill, spots: list[Spot]) -> tuple[HolePlace, ...]:
    """The coordinate list of a card in its order of visiting, with the side to come from.

    A slide that has to go back passes the place by a turn and comes up again
    from the same side as everywhere else, so that its slack never counts.
    """
    places = []
    before = (float("-inf"), float("-inf"))
    for n, spot in enumerate(visiting_order(spots), start=1):
        back = []
        if n > 1 and spot.x < before[0] - 1e-6:
            back.append("X: past it by a turn, come up from the left")
        if n > 1 and spot.y < before[1] - 1e-6:
            back.append("Y: past it by a turn, come up from the front")
        before = (spot.x, spot.y)
        places.append(
            HolePlace(
                n,
                round(spot.x, 3),
                round(spot.y, 3),
                dialled(mill, spot.x, ALONG),
                dialled(mill, spot.y, ACROSS),
                spot.what,
                "; ".join(back),
            )
        )
    return tuple(places)
