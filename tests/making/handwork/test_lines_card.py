"""Slits, bore keyways, broken edges and engraved lines have their steps, figures and cautions."""

from __future__ import annotations

import math
from dataclasses import replace
from pathlib import Path

import pytest

from tommybar.design.model import Part
from tommybar.making.handwork.lines_card import lines_card
from tommybar.making.lengths import spoken
from tommybar.making.parts import route_part
from tommybar.shapes.features import (
    Bore,
    BoreKeyway,
    Cylinder,
    Dim,
    Engraving,
    PlateEdge,
    PlateShape,
    PlateSlit,
    Rays,
    Slit,
    TurnedShape,
)
from tommybar.shop import load_shop


@pytest.fixture(scope="module")
def shop():
    """The reference shop."""
    return load_shop(Path(__file__).parents[3] / "examples" / "shops" / "shop-r.yaml")


def collar(**more):
    """A bored collar of 30, 12 long, with a bore of 10."""
    rim = Cylinder("rim", Dim(30.0, "piece.rim"), 0.0, 12.0)
    bore = Bore("bore", Dim(10.0, "piece.bore"), "A", 12.0, True)
    return Part("piece", "turned", "mild steel", 1, TurnedShape(Dim(12.0), (rim,), bores=(bore,), **more))


def jaw(**more):
    """A plate of 60 x 40 x 20."""
    shape = PlateShape(
        Dim(60.0, "piece.length"), Dim(40.0, "piece.width"), Dim(20.0, "piece.thickness"), **more
    )
    return Part("piece", "plate", "mild steel", 1, shape)


def steps(part, shop):
    """The steps of the card, in mm, and its findings."""
    card, found = lines_card(part, shop, {}, 2)
    return spoken(card.steps, "mm"), spoken(tuple(found), "mm")


def test_a_keyway_in_a_bore_is_planed_and_measured_from_the_opposite_wall(shop):
    """Bore 10 and 1.4 of keyway: 11.40; 1.4 in strokes of 0.05: 28."""
    (step,), _ = steps(collar(bore_keyways=(BoreKeyway("key", "bore", Dim(3.0, "piece.key"), 1.4),)), shop)

    assert "11.40" in step.dial[1] and "about 28 strokes" in step.dial[0]
    assert step.measure[0].size == "piece.key" and "plug drawn" in step.cautions[0]


def test_a_slit_through_the_whole_length_says_it_and_its_danger(shop):
    (step,), found = steps(collar(slits=(Slit("pinch", "A", 1.0, None, 90.0, 1),)), shop)

    assert (step.big, step.big_kind) == ("12.0", "deep mm") and "one wall" in step.dial[0]
    assert "shatters" in " ".join(step.cautions) and found == ()


def test_a_slit_deeper_than_a_small_saw_is_a_caution(shop):
    """A 63 mm saw cuts about 16 mm beside its collars."""
    _, found = steps(jaw(slits=(PlateSlit("split", "right", 10.0, 25.0, 1.0),)), shop)

    assert [(f.number, f.figure) for f in found] == [(467, "25.0 mm")]


def test_a_chamfer_says_how_wide_its_flat_is(shop):
    """0.5 at 45 deg: a flat of 0.71."""
    (step,), _ = steps(jaw(edges=(PlateEdge("top_edge", "top", 0.5),)), shop)

    assert f"{0.5 * math.sqrt(2):.2f}" in step.dial[0]


def test_a_scale_on_a_face_is_cut_by_the_dial_with_one_line_more_than_divisions(shop):
    scale = Engraving("scale", "front", 40, 3.0, 5.0, 5, "", 40.0)
    (step,), _ = steps(jaw(engravings=(scale,)), shop)

    assert step.do.startswith("Engrave 41 lines") and step.big == "1.000"


def test_a_scale_round_a_land_is_divided_at_the_spindle(shop):
    """60 divisions of a whole turn: 6 deg, pi 30 / 60 = 1.571 round."""
    part = collar(engravings=(Engraving("scale", "rim", 60, 3.0, 5.0, 5),))
    (step,), found = steps(part, shop)
    _, without = steps(part, replace(shop, can=shop.can - {"dividing"}))

    assert step.big == "6" and "1.571" in step.dial[0] and found == ()
    assert [f.number for f in without] == [470]


def test_these_cards_come_last_and_count_themselves(shop):
    part = jaw(slits=(PlateSlit("split", "right", 10.0, 12.0, 1.0),))
    making = route_part(part, {}, shop)

    assert making.cards[-1].machine == "bench" and {card.of for card in making.cards} == {len(making.cards)}
    assert making.cards[-2].after == f"to card {len(making.cards)}"


def test_a_part_without_them_has_no_such_card(shop):
    assert lines_card(jaw(), shop, {}, 1) == (None, [])


def test_lines_that_radiate_are_cut_from_one_place_by_their_angles(shop):
    """Three lines from (10, 20): each angle with its word, both ends by the dial."""
    fan = Rays("hours", 10.0, 20.0, 30.0, 36.0, (11.923, 0.0, -11.923), ("11", "12", "1"))
    (step,), found = steps(jaw(rays=(fan,)), shop)
    words = " ".join((step.do, *step.dial))
    assert "Engrave 3 lines on the top face, from 30 to 36 out" in words
    assert "11.92 deg (11); 0.00 deg (12); -11.92 deg (1)" in words
    assert "10.00, 20.00" in words
    assert found == ()
    card, _ = lines_card(jaw(rays=(fan,)), shop, {}, 2)
    assert "slit" not in " ".join((*card.before_starting, *card.goes_wrong, card.why)).lower()


def test_a_card_of_edges_alone_speaks_of_edges_and_not_of_engraving(shop):
    """What is not engraved cannot be spoiled by a file."""
    card, _ = lines_card(jaw(edges=(PlateEdge("rim", "top", 1.0),)), shop, {}, 2)

    assert "engraved" not in " ".join((*card.before_starting, *card.goes_wrong))
    assert any("lines of an edge are marked" in one for one in card.before_starting)
