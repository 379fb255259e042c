"""Outlines and cuts of plates against closed forms and against an independent integration.

The closed forms are those of any handbook of sections (stadium, segment,
Pappus's rule for what an edge tool takes off round a corner) or elementary.
"""

import math

import numpy as np
import pytest
from scipy.integrate import quad

from tommybar.refusals import Refusal
from tommybar.shapes.features import (
    Boss,
    Corner,
    Dim,
    Dovetail,
    Outline,
    PlateEdge,
    PlateHole,
    PlateShape,
    PlateSlit,
    PlateStep,
    Pocket,
    Slot,
    Vee,
)
from tommybar.shapes.mass import mass_properties
from tommybar.shapes.oblique_holes import in_metal
from tommybar.shapes.outlines import (
    area_moments,
    band,
    circle,
    plate_loop,
    rectangle,
    rounded_polygon,
    stadium,
)
from tommybar.shapes.plate_mass import oblique_of, plate_moments

EXACT = {"rel": 1e-11, "abs": 1e-9}
FACES = ("top", "bottom", "front", "back", "left", "right")


def plate(length=40.0, width=30.0, thick=10.0, **features):
    return PlateShape(Dim(length), Dim(width), Dim(thick), **features)


def volume(shape):
    return mass_properties(shape, 1.0).volume


def taken(shape, whole=12000.0):
    return whole - volume(shape)


def test_a_half_disc_and_a_quarter_turned():
    """A = pi r2/2, the centroid 4 r/(3 pi) from the flat; a turn swaps the second moments."""
    found = area_moments([*rectangle(0, 0, 0.0 + 20, 0.0 + 5), *circle(50.0, 0.0, 3.0)])
    assert found.area == pytest.approx(100 + 9 * math.pi, **EXACT)
    assert found.xx == pytest.approx(20**3 * 5 / 3 + 9 * math.pi * (2500 + 9 / 4), **EXACT)
    slot = area_moments(stadium(26.0, 6.0))
    assert slot.area == pytest.approx(20 * 6 + 9 * math.pi, **EXACT)
    ends = (
        9 * math.pi * 9 / 4 + 9 * math.pi * 100 + 2 * 2 * 10 * (2 * 27 / 3)
    )  # I about x = 0 of two half discs
    assert slot.xx == pytest.approx(6 * 20**3 / 12 + ends, **EXACT)
    assert slot.yy == pytest.approx(20 * 6**3 / 12 + math.pi * 3**4 / 4, **EXACT)


def test_a_band_about_two_bosses_is_belt_and_discs():
    """Radii 10 and 5, 40 apart: two flanks sqrt(40^2 - 5^2), a lean of asin(5/40), arcs and trapezia."""
    lean, flank = math.asin(5 / 40), math.sqrt(40**2 - 5**2)
    area = flank * 15 + 100 * (math.pi / 2 + lean) + 25 * (math.pi / 2 - lean)
    assert area_moments(band([Boss(10, 10, 10), Boss(50, 10, 5)])).area == pytest.approx(area, **EXACT)


def test_corners_inwards_and_outwards_are_rounded_alike():
    """An L with one outer corner cut by r2 (1 - pi/4) and its inner one filled by the same."""
    corners = [Corner(0, 0, 2), Corner(20, 0), Corner(20, 8), Corner(8, 8, 3), Corner(8, 20), Corner(0, 20)]
    area = 20 * 8 + 8 * 12 - 4 * (1 - math.pi / 4) + 9 * (1 - math.pi / 4)
    assert area_moments(rounded_polygon(corners)).area == pytest.approx(area, **EXACT)


def test_slots_pockets_steps_and_slits_alone():
    """Each is its area times its depth."""
    assert taken(plate(slots=(Slot("s", "top", 20, 15, 20, Dim(6.0), 4.0, 30.0),))) == pytest.approx(
        4 * (14 * 6 + 9 * math.pi), **EXACT
    )
    pocket = Pocket("p", "bottom", 20, 15, Dim(20.0), Dim(10.0), 2.0, 3.0)
    assert taken(plate(pockets=(pocket,))) == pytest.approx(3 * (200 - (4 - math.pi) * 4), **EXACT)
    assert taken(plate(steps=(PlateStep("s", "top", "left", Dim(5.0), Dim(2.0)),))) == pytest.approx(300)
    assert taken(plate(slits=(PlateSlit("s", "front", 20.0, 12.0, 1.0),))) == pytest.approx(120)


@pytest.mark.parametrize("face", FACES)
def test_a_slot_right_across_is_open_at_both_ends(face):
    """An end that lies beyond the outline is open: only what is in the metal is taken."""
    size = {"top": (40, 30), "bottom": (40, 30), "front": (40, 10), "back": (40, 10)}.get(face, (30, 10))
    slot = Slot("s", face, size[0] / 2, size[1] / 2, 80.0, Dim(4.0), 2.0)
    assert taken(plate(slots=(slot,))) == pytest.approx(2 * 4 * size[0], **EXACT)


@pytest.mark.parametrize("side", ["front", "back", "left", "right"])
@pytest.mark.parametrize("face", ["top", "bottom"])
def test_a_step_lies_on_its_side_and_face(side, face):
    """The centre of mass goes away from where metal is taken."""
    found = mass_properties(plate(steps=(PlateStep("s", face, side, Dim(5.0), Dim(2.0)),)), 1.0)
    x, y = found.off_axis
    if side in ("front", "back"):
        assert (y > 15.0) == (side == "front") and x == pytest.approx(20.0)
    else:
        assert (x > 20.0) == (side == "left") and y == pytest.approx(15.0)
    assert (found.centre > 5.0) == (face == "top")


def test_vees_on_every_face_and_dovetails():
    """A vee of included angle 2a and width w is w2/(4 tan a) in section; a dovetail is a trapezium."""
    for face in FACES:
        for along in ("x", "y"):
            size = {"top": (40, 30), "bottom": (40, 30), "front": (40, 10), "back": (40, 10)}.get(
                face, (30, 10)
            )
            long = size[0] if along == "x" else size[1]
            across = size[1] if along == "x" else size[0]
            vee = Vee("v", face, along, across / 2, 4.0, 60.0)
            area = 4.0 * (2.0 / math.tan(math.radians(30))) / 2
            assert taken(plate(vees=(vee,))) == pytest.approx(area * long, **EXACT)
    spread = 4.0 / math.tan(math.radians(60))
    slot = Dovetail("d", "x", 15.0, Dim(8.0), 4.0, 60.0)
    assert taken(plate(dovetails=(slot,))) == pytest.approx(40 * 4 * (8 + spread), **EXACT)
    tail = Dovetail("d", "y", 20.0, Dim(8.0), 4.0, 60.0, True)
    assert taken(plate(dovetails=(tail,))) == pytest.approx(30 * 4 * (40 - 8 - spread), **EXACT)


@pytest.mark.parametrize("round_", [False, True])
@pytest.mark.parametrize("face", ["top", "bottom"])
def test_an_edge_round_rounded_corners_by_pappus(round_, face):
    """Section times the path of its centroid: straight sides, and a whole turn about the corners."""
    section, inwards = (0.5, 1 / 3) if not round_ else (1 - math.pi / 4, None)
    if inwards is None:
        inwards = (0.5 - math.pi / 4 * (1 - 4 / (3 * math.pi))) / section
    shape = plate(corner=5.0, edges=(PlateEdge("e", face, 1.0, round_),))
    lost = section * (2 * (30 + 20) + 2 * math.pi * (5 - inwards))
    assert 10 * (1200 - (4 - math.pi) * 25) - volume(shape) == pytest.approx(lost, rel=1e-9)


def test_an_edge_on_sharp_corners_is_mitred():
    """Four corners: a chamfer of c all round takes c2/2 P - 4 c3/3 x ... worked out as a frustum."""
    c, a, b = 2.0, 40.0, 30.0
    frustum = c / 3 * (a * b + (a - 2 * c) * (b - 2 * c) + math.sqrt(a * b * (a - 2 * c) * (b - 2 * c)))
    prismatoid = c / 6 * (a * b + 4 * (a - c) * (b - c) + (a - 2 * c) * (b - 2 * c))
    assert prismatoid != pytest.approx(frustum, rel=1e-6)  # it is no frustum: sides of unequal slope ratio
    assert taken(plate(edges=(PlateEdge("e", "top", c),))) == pytest.approx(a * b * c - prismatoid, rel=1e-10)


def test_cuts_that_meet_are_taken_once():
    """Two holes that overlap by a lens; a hole in a pocket's floor takes what is left; equal holes crossing."""
    pair = (PlateHole("a", "top", 15, 15, Dim(6.0)), PlateHole("b", "top", 18, 15, Dim(6.0)))
    lens = 2 * 9 * math.acos(3 / 6) - 3 / 2 * math.sqrt(36 - 9)
    assert taken(plate(holes=pair)) == pytest.approx(10 * (18 * math.pi - lens), **EXACT)
    pocket = Pocket("p", "top", 20, 15, Dim(20.0), Dim(10.0), 2.0, 4.0)
    hole = PlateHole("h", "top", 20, 15, Dim(6.0))
    shape = plate(pockets=(pocket,), holes=(hole,))
    assert taken(shape) == pytest.approx(4 * (200 - (4 - math.pi) * 4) + 6 * 9 * math.pi, **EXACT)
    crossing = (PlateHole("a", "top", 20, 15, Dim(6.0)), PlateHole("b", "front", 20, 5, Dim(6.0)))
    steinmetz = 16 / 3 * 27
    assert taken(plate(holes=crossing)) == pytest.approx(9 * math.pi * 40 - steinmetz, rel=1e-10)


def test_a_smaller_hole_into_a_larger_one():
    """Side hole of 4 through an upright bore of 6, against a single quadrature of the common body."""
    crossing = (PlateHole("a", "top", 20, 15, Dim(6.0)), PlateHole("b", "left", 15, 5, Dim(4.0)))
    both = quad(lambda z: 2 * math.sqrt(4 - z * z) * _mean_chord(z), -2, 2, epsabs=1e-11)[0]
    lost = math.pi * 90 + math.pi * 4 * 40 - both
    assert taken(plate(holes=crossing)) == pytest.approx(lost, rel=1e-9)


def _mean_chord(z):
    half = math.sqrt(4 - z * z)
    return quad(lambda y: 2 * math.sqrt(9 - y * y), -half, half, epsabs=1e-12)[0] / (2 * half)


def test_a_leaning_hole_alone_has_its_closed_form():
    """Right through a plate: pi r2 t / cos, its middle t/2 tan further on; a blind one pi r2 l and its tip."""
    lean = math.radians(25)
    hole = PlateHole("h", "top", 15, 15, Dim(5.0), tilt=25.0, towards=0.0)
    found = mass_properties(plate(holes=(hole,)), 1.0)
    v = math.pi * 6.25 * 10 / math.cos(lean)
    assert 12000 - found.volume == pytest.approx(v, **EXACT)
    middle = 15 + 5 * math.tan(lean)
    assert found.off_axis[0] == pytest.approx((12000 * 20 - v * middle) / (12000 - v), **EXACT)
    blind = PlateHole("h", "top", 15, 15, Dim(5.0), 6.0, tilt=25.0)
    tip = math.pi * 6.25 * 2.5 / math.tan(math.radians(59)) / 3
    assert taken(plate(holes=(blind,))) == pytest.approx(math.pi * 6.25 * 6 + tip, rel=1e-10)


@pytest.mark.parametrize("tilt", [12.0, 35.0])
def test_a_leaning_hole_by_lines_agrees_with_its_closed_form(tilt):
    """A cut that touches its box but not the hole sends it down the general road: both give one figure."""
    hole = PlateHole("h", "top", 15, 15, Dim(5.0), 6.0, tilt=tilt, towards=40.0)
    far = PlateHole("f", "bottom", 40 - 15, 15, Dim(1.0), 0.3, bottom="flat")
    alone = mass_properties(plate(holes=(hole,)), 1.0)
    near = mass_properties(plate(thick=10.0, holes=(hole, far)), 1.0)
    shallow = math.pi * 0.25 * 0.3
    assert alone.volume - near.volume == pytest.approx(shallow, rel=1e-6)


def test_a_leaning_hole_that_meets_a_bore():
    """A hole of 4 leaning 30 deg into a bore of 12, against upright lines on a fine grid."""
    hole = PlateHole("h", "top", 14, 15, Dim(4.0), tilt=30.0)
    bore = PlateHole("b", "top", 22, 15, Dim(10.0))
    shape = plate(holes=(bore, hole))
    lost = taken(shape) - math.pi * 25 * 10
    lean = math.radians(30)
    step = 0.01
    x, y = np.meshgrid(np.arange(8, 26, step) + step / 2, np.arange(12, 18, step) + step / 2)
    half = np.sqrt(np.maximum(4 - (y - 15) ** 2, 0))
    low = np.clip(((x - 14) * math.cos(lean) - half) / math.sin(lean), 0, 10)
    high = np.clip(((x - 14) * math.cos(lean) + half) / math.sin(lean), 0, 10)
    metal = (x - 22) ** 2 + (y - 15) ** 2 > 25
    grid = float(((high - low) * metal).sum()) * step**2
    assert lost == pytest.approx(grid, rel=2e-5)


def test_the_tip_of_a_side_hole_that_breaks_into_a_bore():
    """A blind side hole whose 118-degree tip just reaches into a flat slot: the tip beyond it is no metal."""
    slot = Slot("s", "top", 20, 15, 60.0, Dim(6.0))  # right across, walls at y = 12 and 18
    hole = PlateHole("h", "front", 20, 5, Dim(6.0), 11.5)
    full = 3.0 / math.tan(math.radians(59))
    left = full - 0.5
    radius = 3.0 * left / full
    tip = math.pi * (9 * full - radius**2 * left) / 3
    want = 40 * 6 * 10 + math.pi * 9 * 11.5 + tip
    assert taken(plate(holes=(hole,), slots=(slot,))) == pytest.approx(want, rel=1e-9)


def test_what_does_not_fit_is_refused():
    """The two figures stand in each refusal."""
    with pytest.raises(Refusal, match=r"corners of 6 mm radius; half its narrower side is 5 mm"):
        volume(plate(pockets=(Pocket("p", "top", 20, 15, Dim(20.0), Dim(10.0), 6.0, 3.0),)))
    with pytest.raises(Refusal, match=r"12 mm deep; the plate is 10 mm there"):
        volume(plate(pockets=(Pocket("p", "top", 20, 15, Dim(20.0), Dim(10.0), 2.0, 12.0),)))
    disc = Outline("disc", bosses=(Boss(20, 20, 20),))
    with pytest.raises(Refusal, match=r"the outline is 1\.615 mm from its middle"):
        volume(plate(40, 40, 10, outline=disc, holes=(PlateHole("h", "top", 7, 7, Dim(6.0)),)))
    with pytest.raises(Refusal, match=r"lies wholly inside the band"):
        band([Boss(10, 10, 10), Boss(12, 10, 5)])
    with pytest.raises(Refusal, match=r"take 24 mm of the side between them; it is 20 mm long"):
        rounded_polygon([Corner(0, 0, 12), Corner(20, 0, 12), Corner(20, 30), Corner(0, 30)])


@pytest.mark.parametrize("face", ["top", "bottom"])
@pytest.mark.parametrize("depth", [None, 6.0])
@pytest.mark.parametrize("tilt", [12.0, 35.0])
def test_moments_of_a_leaning_hole_agree_with_lines_along_it(face, depth, tilt):
    """Closed form and quadrature share nothing but the frame: all seven moments are one to 1 part in 10^9."""
    hole = PlateHole("h", face, 16, 15, Dim(5.0), depth, tilt=tilt, towards=40.0)
    shape = plate(holes=(hole,))
    closed = plate_moments(plate()) - plate_moments(shape)
    lines = in_metal(oblique_of(hole, shape), plate_loop(shape), 10.0, (), ())
    for name in ("volume", "x", "y", "z", "xx", "yy", "zz"):
        assert getattr(closed, name) == pytest.approx(getattr(lines, name), rel=1e-9), name


def test_a_leaning_hole_goes_where_it_leans():
    """Towards 0 deg on the top face the hole goes to larger x with depth; on the bottom face to smaller."""
    for face, way in (("top", 1), ("bottom", -1)):
        hole = PlateHole("h", face, 20, 15, Dim(4.0), 6.0, tilt=30.0)
        found = mass_properties(plate(holes=(hole,)), 1.0)
        assert (20 - found.off_axis[0]) * way > 0


def test_a_rounded_edge_is_not_taken_again_where_a_step_has_gone():
    """Round of s: the sum over its depth of the reach is s2 (1 - pi/4), of its square s3 (5/3 - pi/2)."""
    s = 0.5
    edge, step = PlateEdge("e", "top", s, True), PlateStep("t", "top", "left", Dim(5.0), Dim(2.0))
    lost = (2 * 35 + 30) * s**2 * (1 - math.pi / 4) - 2 * s**3 * (5 / 3 - math.pi / 2)
    assert taken(plate(edges=(edge,), steps=(step,))) == pytest.approx(5 * 2 * 30 + lost, rel=1e-9)
