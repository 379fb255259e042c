"""Threads that are drawn are those that the check judges, with the same figures."""

from __future__ import annotations

import pytest

from tommybar.checks.engaged import engaged_threads
from tommybar.checks.engagement import look
from tommybar.design.model import Part, SizedDesign
from tommybar.shapes.features import Bore, Cylinder, Dim, Groove, TurnedShape


def screwed(long=12.0, thick=6.0):
    """A steel stud M6 with a groove of 2 mm at its shoulder, in an aluminium disc."""
    stud = TurnedShape(
        Dim(30.0),
        (
            Cylinder("thread", Dim(6.0), 0.0, long, thread="M6"),
            Cylinder("body", Dim(10.0), long, 30.0),
        ),
        grooves=(Groove("neck", long - 2, long, 4.4),),
    )
    disc = TurnedShape(
        Dim(thick),
        (Cylinder("rim", Dim(40.0), 0.0, thick),),
        bores=(Bore("tapped", Dim(6.0), "A", thick, True, thread="M6"),),
    )
    parts = (
        Part("stud", "turned", "mild steel", 1, stud),
        Part("disc", "turned", "aluminium 6082", 1, disc),
    )
    return SizedDesign("x", "A", "mm", (), parts)


@pytest.mark.parametrize(
    ("long", "thick", "engaged"),
    [(12.0, 6.0, 6.0), (12.0, 15.0, 10.0)],
    ids=["the disc is the shorter", "the screw without its groove is the shorter"],
)
def test_the_shorter_length_is_engaged(long, thick, engaged):
    """1.3 diameters are wanted in aluminium (common practice): 7.8 mm for M6."""
    (one,) = engaged_threads(screwed(long, thick))

    assert (one.engaged, one.there) == (engaged, thick)
    assert one.wanted == pytest.approx(7.8)
    assert (one.screw, one.into) == ("stud M6", "disc.tapped")


@pytest.mark.parametrize("thick", [6.0, 15.0])
def test_the_check_and_the_picture_agree(thick):
    """The check finds too little thread exactly where the picture falls short."""
    design = screwed(thick=thick)
    short = any(one.engaged < one.wanted for one in engaged_threads(design))

    assert short == any(one.number == 630 for one in look(design, None).findings)


def test_without_threads_nothing_is_drawn():
    """A plain disc has no joint."""
    assert engaged_threads(SizedDesign("x", "A", "mm", (), (screwed().parts[1],))) == ()
