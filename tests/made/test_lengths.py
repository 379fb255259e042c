"""A land made longer: what stands beyond it moves along, what is cut all along it grows with it."""

from __future__ import annotations

from tommybar.made.lengths import lengthened
from tommybar.shapes.features import (
    Bore,
    BoreGroove,
    CrossSlot,
    Cylinder,
    Dim,
    Flats,
    Keyway,
    TurnedShape,
)


def test_milled_features_move_with_their_land() -> None:
    """The first land of 10 grows by 1: its hexagon too, and all that stands on the second moves by 1."""
    shape = TurnedShape(
        Dim(40.0),
        (Cylinder("head", Dim(20.0), 0.0, 10.0), Cylinder("shank", Dim(16.0), 10.0, 40.0)),
        bores=(Bore("bore", Dim(6.0), "A", 40.0, True),),
        bore_grooves=(BoreGroove("ring", "bore", 20.0, 22.0, 8.0),),
        flats=(Flats("hex", 6, 8.5, 0.0, 10.0),),
        cross_slots=(CrossSlot("drift", 15.0, 25.0, Dim(3.0)),),
        keyways=(Keyway("key", 28.0, 38.0, Dim(4.0), 2.0),),
    )
    grown = lengthened(shape, "head", 1.0)

    assert (grown.flats[0].start, grown.flats[0].end) == (0.0, 11.0)
    assert (grown.bore_grooves[0].start, grown.bore_grooves[0].end) == (21.0, 23.0)
    assert (grown.cross_slots[0].start, grown.cross_slots[0].end) == (16.0, 26.0)
    assert (grown.keyways[0].start, grown.keyways[0].end) == (29.0, 39.0)
