"""Half-sections against areas and outlines worked out by hand."""

from __future__ import annotations

import math

import pytest

from tommybar.refusals import Refusal
from tommybar.shapes.features import (
    Bore,
    Cone,
    Cylinder,
    Dim,
    Eccentric,
    Flats,
    Groove,
    Knurl,
    Recess,
    TurnedShape,
)
from tommybar.shapes.mass import mass_properties
from tommybar.shapes.section import half_section


def disc(dia: float = 50.0, long: float = 10.0, **features: object) -> TurnedShape:
    return TurnedShape(Dim(long), (Cylinder("rim", Dim(dia), 0.0, long),), **features)  # type: ignore[arg-type]


def test_a_plain_disc_is_a_rectangle() -> None:
    """Length times radius, counter-clockwise, four corners."""
    section = half_section(disc())

    assert section.area == 250.0
    assert section.exterior.is_ccw
    assert len(section.exterior.coords) == 5


def test_edges_are_cut_only_where_they_are_free() -> None:
    """A boss chamfered at both ends keeps its root at the rim square."""
    shape = TurnedShape(
        Dim(24.0),
        (Cylinder("rim", Dim(90.0), 0.0, 14.0, 1.0, 1.0), Cylinder("boss", Dim(26.0), 14.0, 24.0, 0.5, 0.5)),
    )

    assert half_section(shape).area == pytest.approx(14 * 45 + 10 * 13 - 2 * 0.5 - 0.125)


def test_a_cone_and_a_groove() -> None:
    """A trapezium less the groove's rectangle."""
    shape = TurnedShape(
        Dim(20.0),
        (Cylinder("body", Dim(10.0), 0.0, 12.0), Cone("point", 12.0, 20.0, 10.0, 4.0)),
        grooves=(Groove("neck", 4.0, 6.0, 8.0),),
    )

    assert half_section(shape).area == pytest.approx(12 * 5 + 8 * 3.5 - 2 * 1.0)


def test_bores_stepped_blind_and_tipped() -> None:
    """Through bore with a counterbore and edges; a blind bore's 118 degree tip is d/2/tan 59 long."""
    bored = disc(bores=(Bore("bore", Dim(10.0), "A", 10.0, True, edge=0.5),))
    assert half_section(bored).area == pytest.approx(250 - 50 - 2 * 0.125)

    stepped = disc(
        bores=(Bore("bore", Dim(10.0), "A", 10.0, True, edge=0.5), Bore("sink", Dim(20.0), "B", 3.0, False))
    )
    assert half_section(stepped).area == pytest.approx(250 - 50 - 3 * 5 - 2 * 0.125)

    tip = 4 / math.tan(math.radians(59))
    blind = disc(bores=(Bore("hole", Dim(8.0), "B", 5.0, False, bottom="drill"),))
    assert half_section(blind).area == pytest.approx(250 - 20 - tip * 4 / 2)
    assert half_section(blind).contains_properly(half_section(blind).centroid)


def test_a_recess_with_its_corner_and_sharp() -> None:
    """Two corners of radius c leave 2 (1 - pi/4) c2 more than the sharp recess."""
    shape = disc(90.0, 14.0, recesses=(Recess("recess", "A", 26.0, 70.0, 8.0, 0.4),))
    sharp = 14 * 45 - 8 * 22

    assert half_section(shape, "least").area == pytest.approx(sharp)
    assert half_section(shape).area == pytest.approx(sharp + 2 * (1 - math.pi / 4) * 0.16, abs=5e-4)


def test_threads_and_limits_choose_how_much_metal_stands() -> None:
    """A screw at its major diameter or its blank, a tapped bore at its drill, limits at their ends."""
    screw = TurnedShape(Dim(10.0), (Cylinder("screw", Dim(6.0), 0.0, 10.0, thread="M6"),))
    assert half_section(screw).bounds[3] == 3.0
    assert half_section(screw, "least").bounds[3] == pytest.approx((6 - 0.15) / 2)

    tapped = disc(bores=(Bore("tapped", Dim(6.0), "A", 10.0, True, thread="M6"),))
    assert half_section(tapped).bounds[1] == pytest.approx(2.5)

    fitted = TurnedShape(Dim(10.0), (Cylinder("seat", Dim(8.0, "", "f7", 7.972, 7.987), 0.0, 10.0),))
    radii = [half_section(fitted, metal).bounds[3] for metal in ("least", "target", "most")]  # type: ignore[arg-type]
    assert radii == pytest.approx([3.986, 3.98975, 3.9935])

    knurled = TurnedShape(Dim(10.0), (Cylinder("grip", Dim(12.0), 0.0, 10.0, knurl=Knurl("straight", 0.8)),))
    assert half_section(knurled, "least").bounds[3] == pytest.approx(6 - 0.4 / math.pi)


def test_a_bore_finished_after_pressing_may_stand_undersize() -> None:
    """With most metal a bore of 8 to be reamed in place may stand at 7.4, not at 7.0."""
    bush = disc(20.0, 13.0, bores=(Bore("bore", Dim(8.0), "A", 13.0, True, after="press"),))

    assert half_section(bush, "most").bounds[1] == pytest.approx(3.7)
    assert half_section(bush).bounds[1] == pytest.approx(4.0)


@pytest.mark.parametrize(
    ("shape", "words"),
    [
        (TurnedShape(Dim(10.0), (Cylinder("rim", Dim(50.0), 0.0, 9.0),)), "ends with rim at 9 mm"),
        (TurnedShape(Dim(10.0), (Cylinder("rim", Dim(50.0), 1.0, 10.0),)), "starts 1 mm from face A"),
        (TurnedShape(Dim(10.0), ()), "no outside feature"),
        (disc(50.0, 10.0, bores=(Bore("bore", Dim(60.0), "A", 10.0, True),)), "Nothing is left"),
        (disc(50.0, 10.0, bores=(Bore("bore", Dim(6.0), "A", 12.0, False),)), "bore is 12 mm deep"),
        (disc(50.0, 10.0, recesses=(Recess("cup", "B", 30.0, 20.0, 3.0),)), "outer one must be the larger"),
        (disc(50.0, 10.0, recesses=(Recess("cup", "B", 20.0, 40.0, 3.0, 5.0),)), "room for 3 mm"),
        (disc(50.0, 10.0, grooves=(Groove("neck", 4.0, 5.0, -1.0),)), "floor diameter of -1 mm"),
        (
            disc(
                50.0,
                10.0,
                bores=(Bore("bore", Dim(20.0), "A", 10.0, True),),
                grooves=(Groove("cut", 4.0, 5.0, 15.0),),
            ),
            "falls into 2 pieces",
        ),
        (
            TurnedShape(
                Dim(10.0),
                (Cylinder("rim", Dim(20.0), 0.0, 5.0, 0.0, 1.0), Cylinder("seat", Dim(19.0), 5.0, 10.0)),
            ),
            "the step there is 0.5 mm high",
        ),
    ],
    ids=["short", "gap", "none", "gone", "deep", "inside-out", "corner", "floor", "two", "edge"],
)
def test_a_section_that_is_not_one_piece_is_refused(shape: TurnedShape, words: str) -> None:
    """Every refusal names the feature, its figure and the bound."""
    with pytest.raises(Refusal, match=words):
        half_section(shape)


def test_a_taper_with_limits_keeps_its_angle() -> None:
    """Both ends move with the large diameter; flats and eccentrics stand at the middle of their limits too."""
    large = Dim(20.0, "", "h8", 19.967, 20.0)
    taper = TurnedShape(Dim(10.0), (Cone("taper", 0.0, 10.0, 20.0, 16.0, "D L a", "", large),))
    areas = [half_section(taper, metal).area for metal in ("least", "target", "most")]  # type: ignore[arg-type]
    assert areas == pytest.approx([90 - 0.033 * 5, 90 - 0.0165 * 5, 90])

    pin = Eccentric("pin", Dim(8.0, "", "k6", 8.001, 8.010), 0.0, 10.0, 2.0)
    assert half_section(TurnedShape(Dim(10.0), (pin,)), "most").bounds[3] == pytest.approx(4.005 + 2)
    found = mass_properties(TurnedShape(Dim(10.0), (pin,)), 1.0)
    assert found.volume == pytest.approx(math.pi * 8.0055**2 / 4 * 10)

    flats = Flats("f", 2, 7.0, 0.0, 10.0, 0.0, Dim(14.0, "", "h11", 13.89, 14.0))
    milled = TurnedShape(Dim(10.0), (Cylinder("rod", Dim(20.0), 0.0, 10.0),), flats=(flats,))
    segment = 100 * math.acos(0.69725) - 6.9725 * math.sqrt(100 - 6.9725**2)
    assert mass_properties(milled, 1.0).volume == pytest.approx(math.pi * 1000 - 20 * segment)
