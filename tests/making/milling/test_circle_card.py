"""Holes on a circle: the face that is up is named, depths count from it, and what is seen from B is mirrored."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tommybar.making.milling.faces import angle_seen, face_up, seat_of
from tommybar.shapes.features import Bore, CircleHoles, Cylinder, Dim, Recess, TurnedShape

HOLES = CircleHoles("ease", Dim(6.0, "piece.ease"), 3, 40.0, 30.0, 8.0, 14.0)


@pytest.fixture
def wheel():
    """A disc 60 x 14 with a boss 20 x 10 at face B and a dish 8 deep in face A."""
    return TurnedShape(
        Dim(24.0, "piece.length"),
        (
            Cylinder("rim", Dim(60.0, "piece.rim"), 0.0, 14.0),
            Cylinder("boss", Dim(20.0, "piece.boss"), 14.0, 24.0),
        ),
        bores=(Bore("bore", Dim(8.0, "piece.bore"), "A", 24.0, True),),
        recesses=(Recess("dish", "A", 24.0, 52.0, 8.0),),
        circle_holes=(HOLES,),
    )


def test_a_disc_with_a_boss_stands_on_its_rim(wheel):
    """Face A is 60 wide, face B only the boss of 20: A goes down, B is up."""
    assert (seat_of(wheel, "A"), seat_of(wheel, "B")) == (60.0, 20.0)
    assert face_up(wheel, 40.0) == "B"


def test_a_plain_disc_has_face_a_up(disc):
    """Alike at both ends: as drawn."""
    assert face_up(disc(40.0, 8.0), 30.0) == "A"


def test_a_dish_that_reaches_the_rim_leaves_only_the_hub_to_stand_on(disc):
    """Dished to the very outside on face B, hub 20: B cannot be down."""
    shape = disc(60.0, 14.0, recesses=(Recess("dish", "A", 20.0, 60.0, 4.0),))

    assert seat_of(shape, "A") == 20.0
    assert face_up(shape, 40.0) == "A"


def test_the_card_says_which_face_is_looked_at_and_mirrors_x(milled, wheel):
    """Drawn from A at 30 deg: 20 cos 30 = 17.321, 20 sin 30 = 10; from B the first stands at X -17.321, 150 deg."""
    card = milled(wheel).cards[0]
    first = next(place for place in card.places if place.what.startswith("ease 1"))

    assert (first.x, first.y) == pytest.approx((-17.321, 10.0))
    assert "face B up" in card.title
    assert card.hold.stop.startswith("face A down")
    assert "you look at face B" in card.before_starting[0]
    assert "ease 1 at 150 deg" in card.before_starting[0]
    assert "X is mirrored" in card.before_starting[0]


def test_seen_from_a_nothing_is_mirrored(milled, disc):
    """A plain disc keeps its signs and its angle."""
    card = milled(disc(60.0, 10.0, circle_holes=(replace(HOLES, start=0.0, end=10.0),))).cards[0]
    first = next(place for place in card.places if place.what.startswith("ease 1"))

    assert (first.x, first.y) == pytest.approx((17.321, 10.0))
    assert "ease 1 at 30 deg" in card.before_starting[0]


def test_depths_count_from_the_face_that_is_up(milled, wheel):
    """From B the metal begins 24 - 14 = 10 below; 6 of metal, 1 through, point 0.3004 x 6 = 1.8: tip at 18.8."""
    drill = next(s for s in milled(wheel).cards[0].steps if s.tool_kind == "drill" and s.tool_size == 6.0)

    assert drill.dial[0] == "through, tip 18.8 below face B (the metal begins 10.0 below it)."


def test_the_hollow_under_the_web_is_packed(milled, wheel):
    """The dish in face A is 8 deep and lies under the holes."""
    assert any("hollow 8.00 deep below the holes" in line for line in milled(wheel).cards[0].before_starting)


@pytest.mark.parametrize(
    ("angle", "from_b"), [(0, 180), (30, 150), (90, 90), (180, 0), (270, 270), (200, 340)]
)
def test_angles_are_mirrored_about_the_upright(angle, from_b):
    """Right becomes left, up stays up."""
    assert angle_seen("B", angle) == from_b
    assert angle_seen("A", angle) == angle


def test_blind_holes_of_both_faces_take_two_cards(milled, disc):
    """Each face is up once; the through holes go with the face that stands best."""
    blind = replace(HOLES, name="deep", start=14.0, end=20.0, face="B", blind=True)
    other = replace(HOLES, name="shallow", circle=20.0, start=0.0, end=5.0, face="A", blind=True)
    through = replace(HOLES, name="through", circle=52.0, start=0.0, end=20.0)
    cards = milled(disc(62.0, 20.0, circle_holes=(blind, other, through))).cards

    assert [c.title for c in cards] == [
        "holes on a circle, face A up: shallow, through",
        "holes on a circle, face B up: deep",
    ]


def test_what_the_hole_gives_is_said(milled, disc, shop):
    """A reamed hole on a circle names the mate that waits for its reading."""
    dim = Dim(6.0, "piece.pin", "H7", 6.0, 6.012)
    shape = disc(40.0, 8.0, circle_holes=(CircleHoles("pin", dim, 1, 24.0, 0.0, 0.0, 8.0),))
    made = milled(shape, gives_to={"piece.pin": ("peg.dia",)})
    measure = [m for s in made.cards[0].steps for m in s.measure]

    assert [(m.size, m.gives_to) for m in measure] == [("piece.pin", ("peg.dia",))]
