"""Threads that are drawn are those that the check judges, with the same figures."""

from __future__ import annotations

import pytest

from tommybar.checks.engaged import engaged_threads
from tommybar.checks.engagement import look
from tommybar.design.joints import ThreadRelation
from tommybar.design.model import Part, SizedDesign
from tommybar.shapes.features import Bore, CircleHoles, Cylinder, Dim, Groove, TurnedShape


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
    """The check finds too little thread exactly where the picture falls short, in one finding."""
    design = screwed(thick=thick)
    (one,) = engaged_threads(design)
    told = [found.severity for found in look(design, None).findings if found.number == 630]

    weak, light = one.engaged < one.wanted, one.engaged < one.full
    assert told == (["caution"] if weak else ["note"] if light else [])


def test_without_threads_nothing_is_drawn():
    """A plain disc has no joint."""
    assert engaged_threads(SizedDesign("x", "A", "mm", (), (screwed().parts[1],))) == ()


def pair(material, engaged, screw_long=30.0):
    """A steel screw M6 that a relation puts in a boss 30 long."""
    boss = TurnedShape(
        Dim(30.0),
        (Cylinder("rim", Dim(30.0), 0.0, 30.0),),
        bores=(Bore("hole", Dim(6.0), "A", 30.0, True, thread="M6"),),
    )
    screw = TurnedShape(
        Dim(screw_long + 5),
        (
            Cylinder("thread", Dim(6.0), 0.0, screw_long, thread="M6"),
            Cylinder("body", Dim(10.0), screw_long, screw_long + 5),
        ),
    )
    parts = (
        Part("boss", "turned", material, 1, boss),
        Part("screw", "turned", "mild steel", 1, screw),
    )
    threads = (ThreadRelation("screw.thread", "boss.hole", "M6", engaged),)
    return SizedDesign("x", "A", "mm", (), parts, threads=threads)


def severities(design):
    """What is told of the thread, said once."""
    return [one.severity for one in look(design, None).findings]


@pytest.mark.parametrize(
    ("material", "full", "least"),
    [("mild steel", 6.0, 4.8), ("free-cutting brass", 9.0, 6.0), ("aluminium 6082", 12.0, 7.8)],
)
def test_one_rule_by_the_metal(material, full, least):
    """One diameter in steel, one and a half in brass, two in aluminium; much less is a caution."""
    assert severities(pair(material, full)) == []
    assert severities(pair(material, full - 0.1)) == ["note"]
    assert severities(pair(material, least)) == ["note"]
    assert severities(pair(material, least - 0.1)) == ["caution"]


def test_a_relation_cannot_engage_more_thread_than_there_is():
    """Twelve are told, the screw has 7: 7 count, and that is less than 1.3 diameters of M6 in aluminium."""
    (one,) = look(pair("aluminium 6082", 12.0, screw_long=7.0), None).findings
    assert (one.number, one.severity, one.part, one.feature) == (630, "caution", "boss", "hole")
    assert (one.figure, one.bound) == ("7.00 mm", "7.80 mm")
    assert "engages little thread" in one.words


def test_a_thread_that_a_relation_names_is_said_once():
    """The pair is found by its relation and not a second time by its designation."""
    assert len(engaged_threads(pair("mild steel", 5.0))) == 1


def test_equal_holes_are_told_once():
    """Two screws alike in two holes alike: one sentence; in holes of other names, two."""

    def boss(first, second):
        shape = TurnedShape(
            Dim(30.0),
            (Cylinder("rim", Dim(40.0), 0.0, 30.0),),
            circle_holes=tuple(
                CircleHoles(name, Dim(4.0), 1, 25.0, 90.0 * n, 0.0, 3.0, thread="M4")
                for n, name in enumerate((first, second))
            ),
        )
        screw = TurnedShape(Dim(8.0), (Cylinder("thread", Dim(4.0), 0.0, 8.0, thread="M4"),))
        threads = tuple(ThreadRelation("screw.thread", f"boss.{name}", "M4", 3.0) for name in (first, second))
        parts = (
            Part("boss", "turned", "mild steel", 1, shape),
            Part("screw", "turned", "mild steel", 2, screw),
        )
        return SizedDesign("x", "A", "mm", (), parts, threads=threads)

    assert severities(boss("hole_1", "hole_2")) == ["caution"]
    assert severities(boss("near", "far")) == ["caution", "caution"]
