"""Chains of lengths that want one length twice."""

from __future__ import annotations

from tommybar.checks.chains import look
from tommybar.design.model import LoopRelation, LoopTerm

from .asking import SHOP, design, disc, finds, part


def loop(name: str, last: str, *terms: tuple[str, float]) -> LoopRelation:
    """A loop of these lengths, each 10."""
    return LoopRelation(name, tuple(LoopTerm(one, factor, 10.0) for one, factor in terms), 0.0, 0.2, last)


PARTS = (part("shaft", disc(10.0, 30.0)), part("frame", disc(60.0, 30.0)))


def numbers(*loops: LoopRelation) -> list[int]:
    """What is found about these loops."""
    return [one.number for one in look(design(PARTS, loops=loops), SHOP).findings]


def test_one_length_closes_one_loop() -> None:
    """The seat is made last for both floats; the journal for the other is well."""
    float_ = loop("float", "shaft", ("frame.width", 1.0), ("shaft.seat.long", -1.0))
    again = loop("lift", "shaft", ("frame.length", 1.0), ("shaft.seat.long", -1.0))
    other = loop("lift", "shaft", ("frame.length", 1.0), ("shaft.journal.long", -1.0))

    assert numbers(float_, again) == [692]
    assert finds(692, *PARTS, loops=(float_, again)).feature == "seat.long"
    assert numbers(float_, other) == []


def test_a_length_on_both_sides_is_doubled() -> None:
    """It opens and fills at once; twice on one side is well."""
    both = loop("float", "shaft", ("frame.width", 1.0), ("shaft.seat.long", -1.0), ("frame.width", -1.0))
    twice = loop("float", "shaft", ("frame.width", 1.0), ("shaft.seat.long", -2.0), ("shaft.seat.long", -1.0))
    assert numbers(both) == [693]
    assert numbers(twice) == []
