"""A point on a part, called by the feature that it belongs to."""

from __future__ import annotations

from tommybar.checks.named_walls import wall_named
from tommybar.shapes.features import (
    Bore,
    Cylinder,
    Dim,
    PlateHole,
    PlateShape,
    PlateStep,
    Pocket,
    Slot,
    TurnedShape,
)
from tommybar.shapes.solids.frames import HERE

from .asking import part


def test_walls_are_called_by_their_features() -> None:
    """Slot, pocket, step under the plate, counterbore, bore, land: a point on each, told in the part's own frame."""
    shape = PlateShape(
        Dim(80.0),
        Dim(60.0),
        Dim(20.0),
        holes=(PlateHole("fix", "top", 60.0, 45.0, Dim(6.6), sink_dia=11.0, sink_depth=6.0),),
        slots=(Slot("way", "top", 20.0, 20.0, 30.0, Dim(8.0), 5.0),),
        pockets=(Pocket("well", "bottom", 20.0, 45.0, Dim(20.0), Dim(16.0), 2.0, 6.0),),
        steps=(PlateStep("ledge", "bottom", "right", Dim(15.0), Dim(4.0)),),
    )
    block = part("block", shape)
    for at, words in (
        ((20.0, 24.0, 17.0), "the wall of way of block"),
        ((20.0, 24.0, 10.0), "block"),  # below the slot's floor
        ((70.0, 45.0, 3.0), "the wall of well of block"),  # its x, 20, runs the other way: 60 on the plate
        ((10.0, 45.0, 3.0), "block"),
        ((70.0, 45.0, 8.0), "block"),  # above the pocket's floor
        ((60.0, 37.0, 3.0), "the wall of well of block"),
        ((65.0, 20.0, 2.0), "the shoulder of ledge of block"),
        ((65.5, 45.0, 17.0), "the counterbore of fix of block"),
    ):
        assert wall_named(block, HERE, HERE, at) == words
    bush = part(
        "bush",
        TurnedShape(
            Dim(10.0),
            (Cylinder("rim", Dim(40.0), 0.0, 10.0),),
            bores=(Bore("b", Dim(20.0), "A", 10.0, True),),
        ),
    )
    assert wall_named(bush, HERE, HERE, (0.0, 10.0, 5.0)) == "the bore of bush"
    assert wall_named(bush, HERE, HERE, (0.0, -20.0, 5.0)) == "rim of bush"
    bar = part("bar", TurnedShape(Dim(10.0), (Cylinder("rim", Dim(40.0), 0.0, 10.0),)))
    assert wall_named(bar, HERE, HERE, (0.0, 0.0, 5.0)) == "bar"
