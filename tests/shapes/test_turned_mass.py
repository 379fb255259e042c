"""Mass sums of the turned vocabulary against closed forms of the handbooks and sums run another way.

Closed forms: sphere, spherical cap, torus (Pappus), frustum, regular prism,
circular segment, crossing cylinders (all first principles, found in any
engineering handbook). Where there is none, the same body is summed by
Gauss-Legendre along another axis than the program's.
"""

from __future__ import annotations

import math

import numpy as np
import pytest

from tommybar.shapes.curves import ArcPiece, Line
from tommybar.shapes.features import (
    Arc,
    Bore,
    BoreKeyway,
    BoreTaper,
    CentreHole,
    CircleHoles,
    Cone,
    CrossHole,
    CrossSlot,
    Cup,
    Cylinder,
    Dim,
    Eccentric,
    FaceGroove,
    Flats,
    Groove,
    HeadSlot,
    Keyway,
    Recess,
    Slit,
    TurnedShape,
)
from tommybar.shapes.mass import mass_properties
from tommybar.shapes.moments import plane_moments

EXACT = 1e-11


def rod(dia: float, long: float, **features: object) -> TurnedShape:
    return TurnedShape(Dim(long), (Cylinder("body", Dim(dia), 0.0, long),), **features)  # type: ignore[arg-type]


def taken(dia: float, long: float, **features: object) -> float:
    """Volume that the features take from a plain rod [mm3]."""
    return math.pi * dia**2 / 4 * long - mass_properties(rod(dia, long, **features), 1.0).volume


def summed(function, low: float, high: float, points: int = 60) -> float:
    """Gauss-Legendre between two corners, drawn together at both ends."""
    t, w = np.polynomial.legendre.leggauss(points)
    x = (low + high) / 2 + (high - low) / 2 * np.sin(math.pi / 2 * t)
    return float(np.sum(w * (high - low) / 2 * math.pi / 2 * np.cos(math.pi / 2 * t) * function(x)))


def segment(radius: float, level: float) -> float:
    """Area of a circle beyond a chord ``level`` from its middle."""
    return radius**2 * math.acos(level / radius) - level * math.sqrt(radius**2 - level**2)


def test_a_ball() -> None:
    """4/3 pi r3, 2/5 m r2 about any axis through its middle."""
    ball = TurnedShape(Dim(20.0), (Arc("ball", 0.0, 20.0, 0.0, 0.0, 10.0, "out", "ball"),))
    found = mass_properties(ball, 1000.0 / 1000)
    m = 4 / 3 * math.pi * 1000 / 1000

    assert found.mass == pytest.approx(m, rel=EXACT)
    assert found.centre == pytest.approx(10.0, rel=EXACT)
    assert found.inertia_axis == pytest.approx(0.4 * m * 100, rel=EXACT)
    assert found.inertia_across == pytest.approx(0.4 * m * 100, rel=EXACT)


@pytest.mark.parametrize("high", [0.02, 1.0, 4.0])
def test_a_dome_is_a_spherical_cap(high: float) -> None:
    """pi h2 (3R - h) / 3, its centre 3 (2R - h)2 / (4 (3R - h)) from the ball's; a flat one loses no digits."""
    half = 8.0
    radius = (half**2 + high**2) / (2 * high)
    dome = TurnedShape(Dim(high), (Arc("dome", 0.0, high, 2 * half, 0.0, radius, "out"),))
    found = mass_properties(dome, 1.0)

    assert found.volume == pytest.approx(math.pi * high**2 * (3 * radius - high) / 3, rel=1e-9)
    centre = 3 * (2 * radius - high) ** 2 / (4 * (3 * radius - high)) - (radius - high)
    assert found.centre == pytest.approx(centre, rel=1e-8)


def test_a_taper_is_a_frustum() -> None:
    """pi h (R2 + R r + r2) / 3; about the axis 3 m (R5 - r5) / (10 (R3 - r3))."""
    found = mass_properties(TurnedShape(Dim(30.0), (Cone("taper", 0.0, 30.0, 20.0, 12.0),)), 1.0)
    volume = math.pi * 30 * (100 + 60 + 36) / 3

    assert found.volume == pytest.approx(volume, rel=EXACT)
    assert found.inertia_axis == pytest.approx(
        0.3 * volume / 1000 * (10**5 - 6**5) / (10**3 - 6**3), rel=EXACT
    )


@pytest.mark.parametrize("form", ["round", "vee", "square"])
def test_grooves_by_pappus(form: str) -> None:
    """Area of the groove times the way of its centroid: half circle 4r/3pi, triangle h/3 below the surface."""
    if form == "round":
        groove, area, centroid = (
            Groove("g", 8.0, 12.0, 26.0, form="round"),
            2 * math.pi,
            15 - 8 / (3 * math.pi),
        )
    elif form == "vee":
        groove, area, centroid = Groove("g", 8.0, 12.0, 24.0, form="vee"), 6.0, 15 - 1.0
    else:
        r = 0.5  # corners: what stands in each is (1 - pi/4) r2, its centroid 0.2234 r from both walls
        stands = (1 - math.pi / 4) * r * r
        from_walls = (10 - 3 * math.pi) / (3 * (4 - math.pi)) * r
        groove, area = Groove("g", 8.0, 12.0, 26.0, corner=r), 8.0 - 2 * stands
        centroid = (8.0 * 14 - 2 * stands * (13 + from_walls)) / area

    assert taken(30.0, 20.0, grooves=(groove,)) == pytest.approx(2 * math.pi * centroid * area, rel=EXACT)


def test_edges_rounds_and_corners_by_pappus() -> None:
    """A 15-degree lead, a rounded edge and a fillet in the corner, each as its area times its centroid's way."""
    shape = TurnedShape(
        Dim(30.0),
        (
            Cylinder("seat", Dim(20.0), 0.0, 20.0, edge_start=2.0, edge_angle=15.0, corner_end=1.5),
            Cylinder("head", Dim(40.0), 20.0, 30.0, round_end=3.0),
        ),
    )
    drop = 2 * math.tan(math.radians(15))
    lead = drop * (10 - drop / 3)  # the triangle's area, drop x 2 / 2, times its centroid's radius
    part, from_walls = 1 - math.pi / 4, (10 - 3 * math.pi) / (3 * (4 - math.pi))
    rounded = 2 * part * 9 * (20 - 3 * from_walls)
    fillet = 2 * part * 2.25 * (10 + 1.5 * from_walls)
    expected = math.pi * (100 * 20 + 400 * 10 - 2 * lead - rounded + fillet)

    assert mass_properties(shape, 1.0).volume == pytest.approx(expected, rel=EXACT)


def test_bores_with_ball_and_corner_tapers_and_centres() -> None:
    """Cylinder and half ball; a corner by Pappus; a conical bore as a frustum; a centre hole as its pieces."""
    ball = Bore("b", Dim(8.0), "A", 10.0, False, "ball")
    assert taken(30.0, 40.0, bores=(ball,)) == pytest.approx(
        math.pi * 16 * 10 + 2 / 3 * math.pi * 64, rel=EXACT
    )

    cornered = Bore("b", Dim(20.0), "B", 10.0, False, corner=2.0)
    part, from_walls = 1 - math.pi / 4, (10 - 3 * math.pi) / (3 * (4 - math.pi))
    stands = 2 * math.pi * part * 4 * (10 - 2 * from_walls)
    assert taken(30.0, 40.0, bores=(cornered,)) == pytest.approx(math.pi * 1000 - stands, rel=EXACT)

    taper = BoreTaper("t", "A", 0.0, 40.0, 14.0, 10.0)
    assert taken(30.0, 40.0, bore_tapers=(taper,)) == pytest.approx(
        math.pi * 40 * (49 + 35 + 25) / 3, rel=EXACT
    )

    cup = Cup("c", "B", 12.0, 60.0)
    assert taken(30.0, 40.0, cups=(cup,)) == pytest.approx(
        math.pi * 36 * 6 / math.tan(math.radians(30)) / 3, rel=EXACT
    )

    # A 2.5: mouth 5.3, 60 degrees, pilot as deep as wide, 118 degree tip
    cone = math.pi * (2.65**3 - 1.25**3) / 3 / math.tan(math.radians(30))
    pilot = math.pi * 1.25**2 * 2.5 + math.pi * 1.25**3 / 3 / math.tan(math.radians(59))
    assert taken(30.0, 40.0, centres=(CentreHole("c", "A", "A", 2.5),)) == pytest.approx(
        cone + pilot, rel=EXACT
    )


def test_recesses_with_drafts_and_face_grooves() -> None:
    """Frustum of the outer wall less that of the inner one."""
    recess = Recess("r", "A", 20.0, 40.0, 6.0, 0.0, 10.0, 5.0)
    inner, outer = 10 + 6 * math.tan(math.radians(10)), 20 - 6 * math.tan(math.radians(5))

    def frustum(a: float, b: float) -> float:
        return math.pi * 6 * (a * a + a * b + b * b) / 3

    assert taken(60.0, 20.0, recesses=(recess,)) == pytest.approx(
        frustum(20, outer) - frustum(10, inner), rel=EXACT
    )
    groove = FaceGroove("f", "B", 30.0, 36.0, 2.0)
    assert taken(60.0, 20.0, face_grooves=(groove,)) == pytest.approx(
        math.pi * (18**2 - 15**2) * 2, rel=EXACT
    )


@pytest.mark.parametrize(("count", "across"), [(6, 17.0), (4, 14.0)])
def test_a_hexagon_and_a_square(count: int, across: float) -> None:
    """A prism's area is n s2 tan(180/n) / 4, its polar moment A s2 (2 + cos(360/n)) / (12 (1 + cos(360/n)))."""
    shape = rod(30.0, 10.0, flats=(Flats("f", count, across / 2, 0.0, 10.0, 7.0),))
    found = mass_properties(shape, 1.0)
    step = 2 * math.pi / count
    area = count * across**2 / 4 * math.tan(step / 2)
    side = across * math.tan(step / 2)
    polar = area * (across**2 / 8 + side**2 / 24)

    assert found.volume == pytest.approx(10 * area, rel=EXACT)
    assert found.inertia_axis == pytest.approx(polar * 10 / 1000, rel=EXACT)
    assert found.unbalance == pytest.approx(0.0, abs=1e-12)


def test_a_flat_is_a_segment_and_pulls_to_one_side() -> None:
    """Area of the segment; its first moment 2/3 (half chord)3."""
    found = mass_properties(rod(20.0, 30.0, flats=(Flats("f", 1, 7.0, 0.0, 12.0),)), 1.0)
    chord = math.sqrt(100 - 49)

    assert math.pi * 3000 - found.volume == pytest.approx(12 * segment(10, 7), rel=EXACT)
    assert found.unbalance == pytest.approx(12 * 2 / 3 * chord**3 / 1000, rel=EXACT)


def test_an_eccentric_land_by_the_parallel_axis_rule() -> None:
    """v (d2/8 + e2) about the part's axis; its centre e beside it, up as seen from face A, which is -y."""
    shape = TurnedShape(
        Dim(20.0), (Cylinder("a", Dim(20.0), 0.0, 10.0), Eccentric("pin", Dim(8.0), 10.0, 20.0, 4.0, 90.0))
    )
    found = mass_properties(shape, 1.0)
    pin = math.pi * 160

    assert found.volume == pytest.approx(math.pi * 1000 + pin, rel=EXACT)
    assert found.off_axis[1] == pytest.approx(-4 * pin / found.volume, rel=EXACT)
    assert found.inertia_axis * 1000 == pytest.approx(math.pi * 1000 * 50 + pin * (64 / 8 + 16), rel=EXACT)


def test_slots_keyways_and_slits_as_prisms_of_a_segment() -> None:
    """What lies between two planes in a circle, times the length; a slot's half-round ends summed along x."""
    between = 2 * summed(lambda y: 2 * np.sqrt(100 - y * y), 0.0, 1.5)  # strip 3 wide in a 20 circle
    assert taken(20.0, 40.0, slits=(Slit("s", "A", 3.0, 10.0, 30.0, 2),)) == pytest.approx(
        10 * between, rel=EXACT
    )
    assert taken(20.0, 40.0, slits=(Slit("s", "B", 3.0, None, 30.0, 1),)) == pytest.approx(
        40 * between / 2, rel=EXACT
    )
    assert taken(20.0, 40.0, head_slots=(HeadSlot("s", "B", Dim(3.0), 2.0, 10.0),)) == pytest.approx(
        2 * between, rel=EXACT
    )
    # stadium: straight 9 long between half rounds of radius 1.5, seen from the side at every y
    slot = summed(lambda y: 2 * np.sqrt(100 - y * y) * (9 + 2 * np.sqrt(2.25 - y * y)), -1.5, 1.5)
    assert taken(20.0, 40.0, cross_slots=(CrossSlot("s", 10.0, 22.0, Dim(3.0)),)) == pytest.approx(
        slot, rel=1e-10
    )
    key = summed(lambda y: (np.sqrt(100 - y * y) - 8) * (9 + 2 * np.sqrt(2.25 - y * y)), -1.5, 1.5)
    assert taken(20.0, 40.0, keyways=(Keyway("k", 10.0, 22.0, Dim(3.0), 2.0),)) == pytest.approx(
        key, rel=1e-10
    )


def test_a_woodruff_keyway_seen_from_its_side() -> None:
    """At every y across it the cutter takes the segment of its disc that lies in the shaft."""
    radius, floor = 6.5, 10.0 - 4.0

    def at(y: np.ndarray) -> np.ndarray:
        level = floor + radius - np.sqrt(100 - y * y)  # from the disc's middle down to the shaft's top
        return radius**2 * np.arccos(level / radius) - level * np.sqrt(radius**2 - level**2)

    key = Keyway("k", 20.0, 20.0, Dim(3.0), 4.0, 45.0, "woodruff", 13.0)
    assert taken(20.0, 40.0, keyways=(key,)) == pytest.approx(summed(at, -1.5, 1.5), rel=1e-10)


def test_a_keyway_along_a_bore() -> None:
    """A rectangle from the bore's wall to its depth, less nothing of the bore."""
    bore = Bore("bore", Dim(10.0), "A", 30.0, True)
    bored = taken(30.0, 30.0, bores=(bore,))
    both = taken(30.0, 30.0, bores=(bore,), bore_keyways=(BoreKeyway("k", "bore", Dim(3.0), 1.4),))
    expected = 30 * (3 * 6.4 - summed(lambda y: np.sqrt(25 - y * y), -1.5, 1.5))

    assert both - bored == pytest.approx(expected, rel=1e-10)


@pytest.mark.parametrize("offset", [0.0, 3.0, 7.5])
def test_a_cross_hole_beside_the_axis(offset: float) -> None:
    """Chord of the bar at every y of the hole times the hole's own chord there."""
    expected = summed(
        lambda y: 4 * np.sqrt(4 - (y - offset) ** 2) * np.sqrt(100 - y * y), offset - 2, offset + 2
    )
    hole = CrossHole("h", Dim(4.0), 20.0, 33.0, 2, offset=offset)
    assert taken(20.0, 40.0, cross_holes=(hole,)) == pytest.approx(expected, rel=1e-10)


def test_a_hole_as_large_as_the_bar_beside_a_flat() -> None:
    """Two equal cylinders share 16 r3 / 3; the sum over slices finds it as the quick sum does."""
    hole = CrossHole("h", Dim(20.0 - 1e-9), 20.0, 0.0, 2, offset=1e-12)
    assert taken(20.0, 40.0, cross_holes=(hole,)) == pytest.approx(16 * 1000 / 3, rel=1e-8)


def test_a_blind_cross_hole_with_its_tip_and_sink() -> None:
    """From the floor to the bar's round, a counterbore over it, and a 118-degree cone below."""
    hole = CrossHole("h", Dim(4.0), 20.0, 70.0, 1, depth=6.0, sink_dia=8.0, sink_depth=2.0)

    def over(radius: float, level: float) -> float:
        return summed(
            lambda y: 2 * np.sqrt(radius**2 - y * y) * (np.sqrt(100 - y * y) - level), -radius, radius
        )

    plain = over(2.0, 4.0) + over(4.0, 8.0) - over(2.0, 8.0)
    tip = math.pi * 4 * 2 / math.tan(math.radians(59)) / 3
    assert taken(20.0, 40.0, cross_holes=(hole,)) == pytest.approx(plain + tip, rel=1e-8)


def test_blind_holes_on_a_circle_with_sinks() -> None:
    """Cylinder, tip and counterbore, each hole alike."""
    holes = CircleHoles(
        "h", Dim(4.0), 3, 24.0, 10.0, 12.0, 20.0, sink_dia=7.0, sink_depth=2.0, face="B", blind=True
    )
    tip = math.pi * 4 * 2 / math.tan(math.radians(59)) / 3
    one = math.pi * 4 * 6 + math.pi * 3.5**2 * 2 + tip

    assert taken(40.0, 20.0, circle_holes=(holes,)) == pytest.approx(3 * one, rel=1e-10)


def test_what_meets_is_taken_once() -> None:
    """A hole drilled from a flat: the flat's segment, and the hole from the flat's floor to the axis."""
    flat = Flats("f", 1, 8.0, 0.0, 40.0)
    hole = CrossHole("h", Dim(4.0), 20.0, 0.0, 1)
    expected = 40 * segment(10, 8) + math.pi * 4 * 8

    assert taken(20.0, 40.0, flats=(flat,), cross_holes=(hole,)) == pytest.approx(expected, rel=1e-10)


def test_two_holes_crossing_share_their_room_once() -> None:
    """Two equal holes square to each other through the axis share 16 r3 / 3."""
    one, other = CrossHole("a", Dim(4.0), 20.0, 0.0, 2), CrossHole("b", Dim(4.0), 20.0, 90.0, 2)
    alone = taken(20.0, 40.0, cross_holes=(one,))

    assert taken(20.0, 40.0, cross_holes=(one, other)) == pytest.approx(2 * alone - 16 * 8 / 3, rel=1e-9)


def test_flats_on_a_ball() -> None:
    """Each flat takes a cap of the ball."""
    ball = TurnedShape(
        Dim(20.0),
        (Arc("ball", 0.0, 20.0, 0.0, 0.0, 10.0, "out", "ball"),),
        flats=(Flats("f", 2, 8.0, 0.0, 20.0, 20.0),),
    )
    cap = math.pi * 4 * (30 - 2) / 3

    assert mass_properties(ball, 1.0).volume == pytest.approx(4 / 3 * math.pi * 1000 - 2 * cap, rel=1e-10)


@pytest.mark.parametrize("angle", [0.0, 30.0, 75.0])
def test_the_moments_of_a_quarter_circle_turned_and_moved(angle: float) -> None:
    """About its own corner: pi r4 / 16 both ways and r4 / 8 for the product; then turned, then moved."""
    r, (a, b), t = 2.0, (3.0, 1.0), math.radians(angle)

    def at(u: float) -> tuple[float, float]:
        return a + r * math.cos(t + u), b + r * math.sin(t + u)

    first, last = at(0.0), at(math.pi / 2)
    ring = (Line((a, b), first), ArcPiece(first, last, (a, b), True), Line(last, (a, b)))
    found = plane_moments([ring])
    area, c, s = math.pi, math.cos(t), math.sin(t)
    x, y = (4 * r / (3 * math.pi) * one for one in (c - s, s + c))
    own, product = math.pi * r**4 / 16, r**4 / 8

    assert found.area == pytest.approx(area, rel=EXACT)
    assert found.x == pytest.approx(area * (a + x), rel=EXACT)
    assert found.y == pytest.approx(area * (b + y), rel=EXACT)
    assert found.xx == pytest.approx(own - 2 * c * s * product + area * (2 * a * x + a * a), rel=EXACT)
    assert found.yy == pytest.approx(own + 2 * c * s * product + area * (2 * b * y + b * b), rel=EXACT)


def test_a_hole_that_a_cone_runs_out_of() -> None:
    """A hole from z 5 on under a taper of 45 degrees: at every r it is as long as the taper lets it be."""
    shape = TurnedShape(
        Dim(20.0),
        (Cone("cone", 0.0, 20.0, 10.0, 50.0),),
        circle_holes=(CircleHoles("h", Dim(6.0), 1, 20.0, 0.0, 7.0, 20.0),),
    )
    whole = math.pi * 20 * (25 + 125 + 625) / 3

    def shell(r: np.ndarray) -> np.ndarray:
        reach = np.arccos((r * r + 100 - 9) / (20 * r))
        return 2 * r * reach * (20 - np.maximum(7.0, r - 5))

    expected = summed(shell, 7.0, 12.0) + summed(shell, 12.0, 13.0)
    assert whole - mass_properties(shape, 1.0).volume == pytest.approx(expected, rel=1e-9)
