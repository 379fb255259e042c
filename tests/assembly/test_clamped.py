"""A screw comes off before what it clamps: the order says so, and tells what stands when."""

from __future__ import annotations

from tommybar.assembly.order import order_of
from tommybar.assembly.placing import assembled
from tommybar.design.joints import ScrewJoint
from tommybar.design.model import Part, SizedDesign
from tommybar.shapes.envelopes import envelope
from tommybar.shapes.features import Cylinder, Dim, PlateHole, PlateShape, TurnedShape


def plate(thick, *holes):
    """A plate 40 by 30 with holes of its top face."""
    return PlateShape(Dim(40.0), Dim(30.0), Dim(thick), holes=holes)


def covered(with_screws=2):
    """A cover held on a base by two cap screws, with a peg in the cover's underside that only then can go in."""
    places = ((8.0, 15.0), (32.0, 15.0))
    cover = plate(6.0, *(PlateHole(f"fix_{n}", "top", *at, Dim(5.5)) for n, at in enumerate(places, 1)))
    base = plate(
        12.0, *(PlateHole(f"tap_{n}", "top", *at, Dim(5.0), thread="M5") for n, at in enumerate(places, 1))
    )
    parts = (
        Part("cover", "plate", "mild steel", 1, cover),
        Part("base", "plate", "mild steel", 1, base),
        Part(
            "screw",
            "bought",
            "",
            with_screws,
            None,
            bought="ISO 4762 M5 x 16",
            envelope=envelope("ISO 4762 M5 x 16"),
        ),
        Part("peg", "turned", "mild steel", 1, TurnedShape(Dim(5.0), (Cylinder("peg", Dim(3.0), 0.0, 5.0),))),
    )
    joints = tuple(
        ScrewJoint((f"cover.fix_{n}",), f"base.tap_{n}", "M5", "ISO 4762", "", 0.0, 6.0, bought="screw")
        for n in (1, 2)
    )
    return SizedDesign("x", "A", "mm", (), parts, screw_joints=joints)


def test_screws_go_in_when_all_that_they_clamp_is_there():
    """Cover on base first, then each screw, with both of them standing."""
    design = covered()
    steps = order_of(design, assembled(design)).steps
    driven = [one for one in steps if one.pieces[0][0] == "screw"]
    assert len(driven) == 2
    assert all({("cover", 1), ("base", 1)} <= set(one.standing) for one in driven)


def test_what_stands_grows_by_what_is_put_on():
    """Each step adds its pieces, and the last one leaves nothing out."""
    design = covered()
    whole = assembled(design)
    steps = order_of(design, whole).steps
    assert all(set(one.pieces) <= set(one.standing) for one in steps)
    assert set(steps[-1].standing) == {(one.part, one.instance) for one in whole.placements}


def test_a_plate_is_not_drawn_from_under_the_screws_that_are_in_it():
    """Three plates: the middle one is screwed to the bottom, and a cap is screwed to the middle one."""
    low = [(6.0, 15.0), (34.0, 15.0)]
    high = [(16.0, 15.0), (24.0, 15.0)]
    bottom = plate(
        12.0, *(PlateHole(f"tap_{n}", "top", *at, Dim(5.0), thread="M5") for n, at in enumerate(low, 1))
    )
    middle = plate(
        10.0,
        *(PlateHole(f"fix_{n}", "top", *at, Dim(5.5)) for n, at in enumerate(low, 1)),
        *(PlateHole(f"tap_{n}", "top", *at, Dim(3.0), thread="M3") for n, at in enumerate(high, 1)),
    )
    cap = PlateShape(
        Dim(14.0),
        Dim(14.0),
        Dim(3.0),
        holes=tuple(
            PlateHole(f"fix_{n}", "top", x - 13.0, 7.0, Dim(3.4)) for n, (x, _) in enumerate(high, 1)
        ),
    )
    small, large = "ISO 4762 M3 x 10", "ISO 4762 M5 x 20"
    parts = (
        Part("bottom", "plate", "mild steel", 1, bottom),
        Part("middle", "plate", "mild steel", 1, middle),
        Part("cap", "plate", "mild steel", 1, cap),
        Part("large", "bought", "", 2, None, bought=large, envelope=envelope(large)),
        Part("small", "bought", "", 2, None, bought=small, envelope=envelope(small)),
    )
    joints = (
        *(
            ScrewJoint((f"cap.fix_{n}",), f"middle.tap_{n}", "M3", "ISO 4762", "", 0.0, 3.0, bought="small")
            for n in (1, 2)
        ),
        *(
            ScrewJoint(
                (f"middle.fix_{n}",), f"bottom.tap_{n}", "M5", "ISO 4762", "", 0.0, 10.0, bought="large"
            )
            for n in (1, 2)
        ),
    )
    design = SizedDesign("x", "A", "mm", (), parts, screw_joints=joints)
    steps = order_of(design, assembled(design)).steps
    for name, under, over in (("small", "middle", "cap"), ("large", "bottom", "middle")):
        driven = [
            set(one.standing) for one in steps if one.pieces == ((name, 1),) or one.pieces == ((name, 2),)
        ]
        assert len(driven) == 2
        assert all({(under, 1), (over, 1)} <= standing for standing in driven)
