"""How far the drill of a blind bore goes into a turned part, and what metal is left behind it."""

from __future__ import annotations

from dataclasses import dataclass

from tommybar.facts.drills import point_length
from tommybar.facts.threads import thread
from tommybar.shapes.features import Bore, TurnedShape
from tommybar.shapes.holes import drawn_hole

LEAD = 3.0  # pitches of a tap that cut no full thread; common practice, no source


@dataclass(frozen=True)
class DrilledIn:
    """What the drill of a blind bore takes along the axis [mm]."""

    depth: float  # as drawn
    lead: float  # below it, for the tap
    tip: float  # of the drill, below both

    @property
    def reaches(self) -> float:
        """From the bore's own face to the point of the drill [mm]."""
        return self.depth + self.lead + self.tip


def drilled_in(bore: Bore) -> DrilledIn:
    """How far the drill of a blind bore goes in [mm].

    >>> from tommybar.shapes.features import Dim
    >>> round(drilled_in(Bore("hole", Dim(6.0), "A", 10.0, False, thread="M6")).reaches, 2)
    14.5
    """
    lead = 0.0
    if bore.thread:
        lead = max(0.0, (bore.full or bore.depth) + LEAD * thread(bore.thread).pitch - bore.depth)
    pointed = bore.bottom == "drill" or bore.thread
    return DrilledIn(bore.depth, lead, point_length(drawn_hole(bore.dia, bore.thread)) if pointed else 0.0)


def left_behind(shape: TurnedShape, bore: Bore) -> float | None:
    """Metal behind a blind bore, to the other face or the bore that comes from there [mm].

    Below 0 when the drill comes out; None where another bore runs through, so
    that there is no metal to come out of.
    """
    others = [one for one in shape.bores if one is not bore]
    if any(one.through for one in others):
        return None
    against = max((one.depth for one in others if one.face != bore.face), default=0.0)
    return shape.length.value - drilled_in(bore).reaches - against
