"""Outlines that are no rectangle: sawn, flanks set along the table, ends about their holes, corners told."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from tommybar.shapes.features import Boss, Corner, Dim, Outline, PlateHole, PlateShape


def plate(outline=None, holes=(), corner=0.0, long=60.0, wide=20.0, thick=4.0):
    """A plate of a size with an outline."""
    return PlateShape(
        Dim(long, "piece.length"),
        Dim(wide, "piece.width"),
        Dim(thick, "piece.thickness"),
        corner=corner,
        holes=tuple(holes),
        outline=outline,
    )


def through(name, x, y, dia=6.0):
    """A plain hole through the plate."""
    return PlateHole(name, "top", x, y, Dim(dia, f"piece.{name}"))


LINK = Outline("bosses", bosses=(Boss(10, 10, 10), Boss(50, 10, 10)))


def outline_of(making):
    """The outline's card."""
    return next(card for card in making.cards if card.title.startswith("outline"))


def test_the_outline_comes_after_the_holes_it_is_made_about(plated):
    making = plated(plate(LINK, (through("a", 10, 10), through("b", 50, 10))))

    assert [card.title.split(":")[0] for card in making.cards] == [
        "square and to size",
        "top face",
        "outline",
    ]
    assert [f for f in making.findings if f.number == 906] == []


def test_ends_of_a_link_are_milled_about_their_holes_at_radius_and_half_the_cutter(plated):
    """Radius 10 and the largest end mill of the shop, 16: the axis runs 18 from the hole's centre, half a turn."""
    card = outline_of(plated(plate(LINK, (through("a", 10, 10), through("b", 50, 10)))))
    arcs = [step for step in card.steps if step.do.startswith("Mill arc")]

    assert [step.big for step in arcs] == ["18.00", "18.00"]
    assert all("through 180.0 deg" in step.dial[-1] for step in arcs)
    assert "plug in a" in arcs[0].dial[0] + arcs[1].dial[0]


def test_without_a_rotary_table_ends_are_filed_to_buttons_of_twice_the_radius(plated, bare):
    card = outline_of(plated(plate(LINK, (through("a", 10, 10), through("b", 50, 10))), bare))
    ends = [step for step in card.steps if "buttons" in step.do]

    assert len(ends) == 2 and all(step.tool.startswith("filing buttons 20") for step in ends)


def test_a_slanting_flank_says_its_angle_its_points_and_what_to_measure_from_a_hole(plated):
    """Bosses 10 and 6, 40 apart: asin(4/40) = 5.74 deg; far side of a 6 mm hole to the flank 10 + 3 = 13."""
    shape = plate(
        Outline("bosses", bosses=(Boss(10, 10, 10), Boss(50, 10, 6))), (through("a", 10, 10),), long=56.0
    )
    flanks = [step for step in outline_of(plated(shape)).steps if step.do.startswith("Mill flank")]

    assert sorted(float(step.big) for step in flanks) == pytest.approx(
        [-math.degrees(math.asin(0.1)), math.degrees(math.asin(0.1))], abs=0.01
    )
    assert all("13.00" in " ".join(step.dial) for step in flanks)


def test_edges_that_the_squared_blank_has_are_not_milled_again(plated):
    """Of five sides of this jaw only the one at the nose is not on the blank's edges."""
    corners = tuple(Corner(x, y, 0.0) for x, y in ((0, 0), (60, 0), (60, 8), (40, 20), (0, 20)))
    card = outline_of(plated(plate(Outline("polygon", corners=corners))))

    assert [step.do.split(",")[0] for step in card.steps if "flank" in step.do] == ["Mill flank 1 of 1"]


def test_a_disc_is_milled_all_round_about_its_hole(plated):
    shape = plate(
        Outline("disc", bosses=(Boss(20, 20, 20),)), (through("bore", 20, 20),), long=40.0, wide=40.0
    )
    (arc,) = [step for step in outline_of(plated(shape)).steps if step.do.startswith("Mill arc")]

    assert arc.big == "28.00" and "All the way round" in arc.dial[-1]


def test_a_sharp_inner_corner_is_a_caution_with_its_place(plated):
    corners = tuple(Corner(x, y, 0.0) for x, y in ((0, 0), (60, 0), (60, 10), (30, 10), (30, 20), (0, 20)))
    found = [f for f in plated(plate(Outline("polygon", corners=corners))).findings if f.number == 468]

    assert len(found) == 1 and "30.00, 10.00" in found[0].words and found[0].severity == "caution"


@pytest.mark.parametrize(
    ("radius", "words"), [(5.0, "end mill of its own radius"), (4.7, "on the rotary table")]
)
def test_a_hollow_takes_an_end_mill_of_its_radius_or_the_rotary_table(plated, radius, words):
    corners = tuple(
        Corner(x, y, r)
        for x, y, r in ((0, 0, 0), (60, 0, 0), (60, 10, 0), (30, 10, radius), (30, 20, 0), (0, 20, 0))
    )
    card = outline_of(plated(plate(Outline("polygon", corners=corners))))

    assert any(words in step.do for step in card.steps)


def test_round_corners_of_a_rectangle_have_their_steps(plated):
    card = outline_of(plated(plate(corner=3.0)))

    assert len([step for step in card.steps if step.do.startswith("File corner")]) == 4


def test_a_plate_too_thick_for_every_end_mill_is_a_stop(plated, shop):
    thin = replace(shop, cutters=(3.0,))
    found = plated(plate(LINK, thick=10.0), thin).findings

    assert 418 in {f.number for f in found if f.feature == "outline"}
