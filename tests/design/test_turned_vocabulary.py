"""Every turned feature from its written form: the figures that follow from it, worked out by hand."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from tommybar.design import Design, load_design
from tommybar.shapes.features import Arc, Cone, Eccentric, TurnedShape

FILE = Path(__file__).parent / "turned_vocabulary.yaml"


@pytest.fixture(scope="module")
def design() -> Design:
    """The design that has everything."""
    return load_design(FILE)


@pytest.fixture
def shape(design):
    """The shape of one of its parts."""

    def of(name: str) -> TurnedShape:
        return design.sized().part(name).shape

    return of


def land(shape: TurnedShape, name: str):
    """The land of that name."""
    return next(one for one in shape.outside if one.name == name)


def test_a_point_is_as_long_as_its_angle_makes_it(shape):
    """(d - flat) / 2 / tan(half the angle)."""
    tip = land(shape("spindle"), "tip")

    assert isinstance(tip, Cone)
    assert tip.given == "D d a"
    assert tip.end - tip.start == pytest.approx(4.75 / math.tan(math.radians(30)))
    assert (tip.start_dia, tip.end_dia) == (0.5, 10)


def test_edges_have_their_angle_and_corners_their_radius(shape):
    """1 x 15 deg on the one end, a corner of 0.4 beside the shoulder of the next."""
    spindle = shape("spindle")

    assert land(spindle, "seat").edge_start == 1
    assert land(spindle, "seat").edge_angle == 15
    assert land(spindle, "nose").corner_end == 0.4
    assert land(shape("wheel"), "rim").round_start == land(shape("wheel"), "rim").round_end == 1


def test_a_cone_by_three_of_its_figures_says_which(shape):
    """Large diameter, length and half angle; a standard taper gives its own angle."""
    cone = land(shape("spindle"), "cone")
    assert (cone.given, cone.end_dia) == ("D L a", 30)
    assert cone.start_dia == pytest.approx(30 - 20 * math.tan(math.radians(5)))
    assert cone.limits.zone == "h8"

    morse = land(shape("stud"), "taper")
    assert morse.taper == "Morse 1"
    # Morse 1: 0.59858 in per foot on diameter (ANSI B5.10)
    assert (morse.start_dia - morse.end_dia) / 20 == pytest.approx(0.59858 / 12, rel=1e-9)


def test_curves_get_their_radii_from_drop_step_and_length(shape):
    """Crown: (w2/4 + s2) / 2s; ogee: (L2 + s2) / 4s, hollow beside the smaller end; ball to its neck."""
    spindle = shape("spindle")
    crown = land(spindle, "belt")
    assert crown.radius == pytest.approx((16 + 0.04) / 0.4)
    assert crown.start_dia == pytest.approx(23.6)

    first, last = land(spindle, "curve_a"), land(spindle, "curve_b")
    assert first.radius == last.radius == pytest.approx((64 + 16) / 16)
    assert (first.bulge, last.bulge) == ("out", "in")
    assert first.end_dia == last.start_dia == 20

    knob = land(spindle, "knob")
    assert isinstance(knob, Arc)
    assert knob.end - knob.start == pytest.approx(8 + math.sqrt(64 - 16))

    root = land(spindle, "root")
    assert root.end - root.start == pytest.approx(2)
    assert root.bulge == "in"


def test_an_eccentric_land_keeps_its_limits_and_throw(shape):
    """8 f7 swinging in a circle of 12, its axis above the part's."""
    pin = land(shape("spindle"), "pin")

    assert isinstance(pin, Eccentric)
    assert (pin.throw, pin.angle, pin.start_dia) == (2, 90, 12)
    assert (pin.dia.smallest, pin.dia.largest) == (7.972, 7.987)  # ISO 286-2, 8 f7: -13 / -28 um


def test_threads_say_how_long_they_are_full_and_which_hand(shape):
    """16 of 20 mm outside, 14 of 20 mm inside."""
    screw, tapped = land(shape("spindle"), "screw"), shape("socket").bores[0]

    assert (screw.thread, screw.full, screw.left) == ("M8", 16, True)
    assert (tapped.thread, tapped.full, tapped.left) == ("M8", 14, False)


def test_grooves_of_every_form(shape):
    """A vee of 90 degrees, 1 wide, is 0.5 deep in the crowned land's edge diameter."""
    ring, cord, line = shape("spindle").grooves

    assert (ring.corner, ring.form) == (0.2, "square")
    assert cord.form == "round"
    assert (line.form, line.floor) == ("vee", pytest.approx(23.6 - 1))


def test_milled_and_drilled_features_keep_their_figures(shape):
    """Blind holes from face B with sinks, an offset cross hole, flats by size and by depth, a scale."""
    wheel, socket = shape("wheel"), shape("socket")
    fixing, oiler = wheel.circle_holes[0], wheel.cross_holes[0]
    assert (fixing.face, fixing.blind, fixing.start, fixing.end) == ("B", True, 22, 30)
    assert (fixing.sink_dia, fixing.sink_depth) == (7, 3)
    assert (oiler.offset, oiler.depth, oiler.sink_dia) == (5, 6, 6)

    hexagon, wrench = socket.flats
    assert (hexagon.count, hexagon.level, hexagon.across.zone) == (6, 17, "h11")
    assert (wrench.level, wrench.start, wrench.end, wrench.across) == (13, 60, 70, None)
    assert wheel.engravings[0].long_every == 5
    assert shape("stud").centres[0].keep == "must not"
    assert shape("fork").cups[0].relief_depth == 3
    assert shape("fork").keyways[0].form == "woodruff"


def test_its_lengths_may_stand_in_a_loop(design):
    """Lands, recesses and keyways by part.feature.long and .deep."""
    assert [term.value for term in design.sized().loops[0].terms] == pytest.approx([12, 8, 0])


def test_sizes_in_edges_and_forms_follow_a_resize(design):
    """Edges, angles and forms are expressions of named sizes like any figure; bare lengths are kept."""
    sized = design.sized({"lean": 30.0, "body": 36.0}).part("spindle").shape

    assert land(sized, "seat").edge_angle == 30
    assert land(sized, "cone").end_dia == 36
    assert ("spindle.belt.crown.drop", 0.2) in design.kept()


def test_a_form_by_its_radius_is_as_long_as_that_makes_it(disc):
    """Ogee: sqrt(4 R s - s2), 8 for R 5 and a step of 4; dome: R less the root of R2 - (d/2)2."""
    lands = "{name: o, ogee: {a: 24, b: 16, radius: 5}}, {name: d, dia: 16, dome: {radius: 10}}"
    shape = disc(f"outside: [{{name: rod, dia: 24, long: 9}}, {lands}]").sized().parts[0].shape

    assert [one.end for one in shape.outside] == pytest.approx([9, 13, 17, 21])
