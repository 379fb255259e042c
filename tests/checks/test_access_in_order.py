"""What stands when a screw goes in: other parts, the order of assembly, heads of other parts."""

from __future__ import annotations

import pytest

from tommybar.assembly.order import order_of
from tommybar.assembly.placing import assembled
from tommybar.checks.driver_access import look
from tommybar.design.model import FitRelation
from tommybar.findings import Finding
from tommybar.shapes.envelopes import envelope
from tommybar.shapes.features import (
    Cylinder,
    Dim,
    PlateHole,
    PlateShape,
    TurnedShape,
)

from .asking import design, part
from .test_driver_access import joint, ledge, numbers, told


def towered(press: bool, x: float = 50.0) -> list[Finding]:
    """A hexagon head with a round tower of 8 beside it in the same cover, pressed in or only slid in."""
    cover = PlateShape(
        Dim(80.0),
        Dim(60.0),
        Dim(10.0),
        holes=(
            PlateHole("fix", "top", 40.0, 30.0, Dim(6.6)),
            PlateHole("far", "top", 10.0, 30.0, Dim(6.6)),
            PlateHole("post", "top", x, 30.0, Dim(4.0)),
        ),
    )
    tower = TurnedShape(
        Dim(50.0), (Cylinder("spigot", Dim(4.0), 0.0, 10.0), Cylinder("tower", Dim(8.0), 10.0, 50.0))
    )
    bought = envelope("ISO 4017 M6 x 16")
    screw = part("screw", None, "", 2, bought="ISO 4017 M6 x 16", envelope=bought)
    lower = PlateShape(
        Dim(80.0),
        Dim(60.0),
        Dim(12.0),
        holes=(
            PlateHole("tapped", "top", 40.0, 30.0, Dim(6.0), thread="M6"),
            PlateHole("other", "top", 10.0, 30.0, Dim(6.0), thread="M6"),
        ),
    )
    return told(
        part("cover", cover),
        part("post", tower),
        part("base", lower),
        screw,
        fits=(FitRelation("cover.post", "post.spigot", "H7/p6", "press" if press else ""),),
        screw_joints=(
            joint("cover.fix", bought="screw"),
            joint("cover.far", into="base.other", bought="screw"),
        ),
    )


def test_another_part_is_in_the_way_when_it_stands_there_first() -> None:
    """The tower, 50 - 40 - 4 = 6 from the axis, shuts the head in once it is pressed in: 5.77 and 0.8 are wanted."""
    (found,) = towered(True)
    assert (found.number, found.severity) == (686, "stop")
    assert "tower of post" in found.words
    assert float(found.figure.split()[0]) == pytest.approx(6.0, abs=0.02)


def test_a_part_that_is_put_on_later_is_not_in_the_way() -> None:
    """Only slid in, it is put there after the screw."""
    assert towered(False) == []


def test_a_screw_goes_in_when_all_that_it_joins_is_there() -> None:
    """A dowel is pressed into the base first, when the cover and its shoulder are not there yet: they count."""
    lower = PlateShape(
        Dim(80.0),
        Dim(60.0),
        Dim(12.0),
        holes=(
            PlateHole("tapped", "top", 40.0, 30.0, Dim(6.0), thread="M6"),
            PlateHole("dowel", "bottom", 70.0, 10.0, Dim(4.0)),
        ),
    )
    dowel = part("dowel", TurnedShape(Dim(12.0), (Cylinder("body", Dim(4.0), 0.0, 12.0),)))
    fit = FitRelation("base.dowel", "dowel.body", "H7/p6", "press")
    made = design([ledge(6.2), part("base", lower), dowel], fits=(fit,), screw_joints=(joint("cover.fix"),))
    whole = assembled(made)
    assert ("cover", 1) not in order_of(made, whole).steps[0].standing
    (found,) = look(made, whole)
    assert (found.number, found.part, found.figure) == (686, "cover", "6.20 mm")


def test_the_head_of_another_part_is_in_the_way_and_one_of_the_same_part_is_not() -> None:
    """A bracket's tall head reaches up beside the cover's screw; two heads of one cover are another check's."""
    lower = PlateShape(
        Dim(120.0),
        Dim(60.0),
        Dim(12.0),
        holes=tuple(
            PlateHole(f"tap_{n}", "top", x, 30.0, Dim(6.0), thread="M6")
            for n, x in enumerate((10.0, 40.0, 52.0, 95.0), start=1)
        ),
    )

    def strip(*at: float, thick: float, long: float) -> PlateShape:
        holes = tuple(PlateHole(f"fix_{n}", "top", x, 10.0, Dim(6.6)) for n, x in enumerate(at, start=1))
        return PlateShape(Dim(long), Dim(20.0), Dim(thick), holes=holes)

    cover, bracket = strip(5.0, 35.0, thick=10.0, long=38.5), strip(3.5, 46.5, thick=10.0, long=55.0)
    bought = envelope("ISO 4017 M6 x 16")
    screw = part("screw", None, "", 4, bought="ISO 4017 M6 x 16", envelope=bought)
    joints = [
        joint(f"{name}.fix_{n}", into=f"base.tap_{m}", bought="screw")
        for name, n, m in (("cover", 1, 1), ("cover", 2, 2), ("bracket", 1, 3), ("bracket", 2, 4))
    ]
    found = told(
        part("base", lower), part("cover", cover), part("bracket", bracket), screw, screw_joints=tuple(joints)
    )
    # 12 less a corner of 5.77 is 6.23: a mouth that reaches 5.5 turns by acos(5.5 / 6.23) = 28 deg either way
    assert numbers(found) == [(686, "stop")]
    assert (found[0].feature, found[0].figure) == ("fix_1", "6.23 mm")
    assert "screw is 6.23 mm" in found[0].words
    assert "7.25 mm beside screw" in found[0].words
