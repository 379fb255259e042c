"""Clocking in space is what the drawing shows: counter-clockwise as seen from face A."""

import math

import pytest

from tommybar.shapes.features import CrossHole, Cylinder, Dim, Flats, TurnedShape
from tommybar.shapes.mass import mass_properties, turned_moments
from tommybar.shapes.mesh import mesh_of

ROD = TurnedShape(Dim(20.0), (Cylinder("rod", Dim(20.0), 0.0, 20.0),))


def seen_from_face_a(x, y, z):
    """Right, up and depth of a place for who looks at face A along +z with x to the right.

    Right-handed axes: right x up must look at the viewer, that is, along -z; with right = x, up is -y.
    """
    return x, -y, z


def holed(**more):
    """The rod with a deep hole from its side at 90 degrees, that is, from above as seen from face A."""
    hole = CrossHole("oil", Dim(6.0), 5.0, angle=90.0, depth=8.0, **more)
    return TurnedShape(ROD.length, ROD.outside, cross_holes=(hole,))


def test_metal_taken_above_lets_the_centre_sink_as_seen_from_face_a():
    """The centre of mass moves away from the hole: down on the drawing."""
    moments = turned_moments(holed())
    _, up, _ = seen_from_face_a(moments.x, moments.y, 0.0)

    assert up < 0
    assert moments.x == pytest.approx(0.0, abs=1e-9)


def test_the_mesh_has_its_hole_above_as_seen_from_face_a():
    """Points of the mesh inside the round, that is, of the hole's wall, lie above the axis."""
    points = mesh_of(holed()).points
    inside = [p for p in points if math.hypot(p[0], p[1]) < 9.5 and 0.5 < p[2] < 19.5]

    assert inside
    assert all(seen_from_face_a(*p)[1] > 0 for p in inside)


def test_a_hole_set_to_the_left_lies_left_as_one_looks_along_it():
    """Looking along a hole that comes in from above, head towards face A, left is the right of the drawing: +x."""
    moments = turned_moments(holed(offset=2.0))

    assert moments.x < -1e-3  # metal is missing on the +x side


def test_two_flats_of_different_angle_keep_their_hand():
    """A flat at 0 and a hole at +60: a mirror image would have the hole at -60."""
    flat = Flats("flat", 1, 7.0, 0.0, 20.0, angle=0.0)
    hole = CrossHole("pin", Dim(3.0), 10.0, angle=60.0, depth=6.0)
    both = TurnedShape(ROD.length, ROD.outside, cross_holes=(hole,), flats=(flat,))
    moments = turned_moments(both)
    only_flat = turned_moments(TurnedShape(ROD.length, ROD.outside, flats=(flat,)))

    dx, dy = only_flat.x - moments.x, only_flat.y - moments.y
    right, up, _ = seen_from_face_a(dx, dy, 0.0)
    assert math.degrees(math.atan2(up, right)) == pytest.approx(60.0, abs=1e-6)
    assert mass_properties(both, 7.85).mass < mass_properties(ROD, 7.85).mass
