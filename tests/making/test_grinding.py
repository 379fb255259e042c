"""What to grind where the drawer has no tool, and what is told of lands that nothing reaches."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tommybar.making.grinding import grind_words, top_rake
from tommybar.making.unreached import beyond_blades
from tommybar.shapes.features import Arc, Cylinder, Dim, FaceGroove

from .turned import routed, shape


@pytest.mark.parametrize(
    ("material", "low", "high"),
    [
        ("free-cutting brass", 0.0, 0.0),
        ("phosphor bronze", 0.0, 0.0),
        ("mild steel", 10.0, 15.0),
        ("aluminium 6082", 20.0, 30.0),
    ],
)
def test_top_rakes_are_those_of_the_trade(material, low, high):
    """Brass 0, steel 10 to 15, aluminium 20 to 30 deg (common practice, no source)."""
    assert low <= top_rake(material) <= high


def test_a_tool_that_copies_its_form_has_no_rake():
    """A raked top would change the angle of a thread and the curve of a form."""
    for kind in ("threading", "form"):
        assert "top rake 0 deg" in grind_words(kind, "mild steel")
    assert grind_words("knurling", "mild steel") == ""


@pytest.mark.parametrize("kind", ["knife", "boring", "parting", "groove", "recess", "chamfer"])
def test_every_ground_tool_has_clearance_in_front_and_at_its_sides(kind):
    words = grind_words(kind, "mild steel", "3 wide")

    assert (
        words.startswith("Grind one: 3 wide, front clearance ") and "top rake 12 deg for mild steel" in words
    )


def test_a_ring_groove_narrower_than_the_tool_says_what_to_grind(shop_r):
    """2 wide and 2 deep, its outer wall of radius 12; the drawer's recess tool is 3 wide."""
    disc = shape(
        Cylinder("disc", Dim(40.0, "p.disc"), 0.0, 15.0),
        face_grooves=(FaceGroove("ring", "A", 20.0, 24.0, 2.0),),
    )
    making, _ = routed(disc, shop_r)
    (found,) = [f for f in making.findings if f.number == 410]

    assert "at most 2.0 wide and 2 or more long" in found.remedy and "wall of 12 radius" in found.remedy


SPOOL = shape(
    Cylinder("front", Dim(44.0), 0.0, 4.0), Cylinder("core", Dim(10.0), 4.0, 34.0), Cylinder("back", Dim(44.0), 34.0, 38.0)
)  # fmt: skip


def test_a_valley_deeper_than_every_blade_says_how_long_one_must_be(shop_r):
    """(44 - 10) / 2 = 17 deep and 0.8 to the holder; the longest reaches 14."""
    making, _ = routed(SPOOL, shop_r)
    (found,) = [f for f in making.findings if f.number == 904]

    assert found.figure == "17.0 mm deep, 30.0 mm wide" and "17.8 or more from its holder" in found.remedy


def test_a_thread_between_larger_lands_is_told_as_what_it_is(shop_r):
    """A die passes over nothing larger than the thread."""
    core = replace(SPOOL.outside[1], thread="M10")
    making, _ = routed(replace(SPOOL, outside=(SPOOL.outside[0], core, SPOOL.outside[2])), shop_r)
    (found,) = [f for f in making.findings if f.number == 904]

    assert "no die passes over them" in found.words and found.figure == "44 mm beside 10 mm"


def test_a_land_that_a_blade_gets_down_to_is_not_told_as_too_deep(shop_r):
    """A ball of 20 on a shank of 12: 10 deep from either end, within the blade's 14; what fails it is another thing."""
    ball = shape(
        Arc("ball", 0.0, 18.0, 0.0, 12.0, 10.0, "out", "ball"),
        Cylinder("shank", Dim(12.0), 18.0, 36.0, thread="M12"),
    )

    assert beyond_blades(ball, ("ball", "shank"), shop_r) == []
    assert beyond_blades(SPOOL, ("core",), shop_r) == ["core"]
