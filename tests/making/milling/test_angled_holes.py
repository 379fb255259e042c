"""A hole at a slant: closed forms of the triangle, and the sundial block of 20 x 20 x 60 with its hole at 52 degrees."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tommybar.making.milling.angled_holes import angled_hole, lowest_angle, per_tenth, stays_inside
from tommybar.shapes.features import Dim, PlateHole, PlateShape

BORE = Dim(5.0, "piece.style")


@pytest.fixture
def block():
    """20 high, 20 wide, 60 long; the hole leans along the 60 side, out of the top."""

    def of(towards: float = 0.0, tilt: float = 38.0, x: float = 38.0, y: float = 10.0, **more) -> PlateShape:
        hole = PlateHole("style", "top", x, y, BORE, tilt=tilt, towards=towards, flat=True, **more)
        return PlateShape(
            Dim(60.0, "piece.length"), Dim(20.0, "piece.width"), Dim(20.0, "piece.thick"), holes=(hole,)
        )

    return of


def test_the_figures_of_the_block():
    """By hand: 20/sin 52 = 25.38, 20/tan 52 = 15.63, 5/sin 52 = 6.35; with 3 of metal at both ends 27.98."""
    hole = angled_hole(20.0, 5.0, 52.0)

    assert hole.length == pytest.approx(25.4, abs=0.05)
    assert hole.drift == pytest.approx(15.63, abs=0.005)
    assert hole.ellipse == pytest.approx(6.35, abs=0.006)
    assert hole.needed == pytest.approx(27.98, abs=0.01)


def test_a_tenth_of_a_degree_is_this_much_of_stack():
    """100 cos 52 x 0.1 deg in radians = 0.107."""
    assert per_tenth(100.0, 52.0) == pytest.approx(0.107, abs=0.0005)


@pytest.mark.parametrize(("along", "lowest"), [(60.0, 25.3), (20.0, 66.8)])
def test_the_lowest_angle_that_stays_inside(along, lowest):
    """20/tan + 5/sin + 6 = L, by hand 25.3 deg on the long side and 66.8 deg on the short one; and it closes."""
    angle = lowest_angle(20.0, 5.0, along)

    assert angle == pytest.approx(lowest, abs=0.05)
    assert angled_hole(20.0, 5.0, angle).needed == pytest.approx(along, abs=1e-9)


def test_along_the_long_side_it_is_planned_flat_first(plated, block):
    """Stack 78.80 on a bar of 100, end mill before the drill, every figure on the card."""
    made = plated(block())
    card = made.cards[-1]
    words = " ".join((*card.before_starting, *(line for s in card.steps for line in s.dial)))

    assert [s.tool_kind for s in card.steps][:3] == ["end mill", "centre drill", "drill"]
    assert card.steps[0].do.startswith("Cut the entry flat")
    for figure in ("stack 78.80", "25.4", "15.63", "6.35", "along the block's 60 side"):
        assert figure in words
    assert [f for f in made.findings if f.number in (445, 446, 447, 905, 906)] == []


def test_along_the_short_side_it_is_refused_and_the_long_one_named(plated, block):
    """27.98 against 20."""
    made = plated(block(towards=90.0, x=30.0))
    stop = next(f for f in made.findings if f.number == 445)

    assert (stop.severity, stop.figure, stop.bound) == ("stop", "27.97 mm", "20 mm")
    assert stop.remedy == "Tilt it along the 60 mm side."
    assert made.cards[-1].steps == ()


def test_a_lower_latitude_is_not_accepted_silently(bench):
    """At 25.2 deg the long side is too short, at 25.4 it is not."""
    low, enough = bench(), bench()

    assert not stays_inside(low, "style", 20.0, 5.0, 25.2, 60.0, 20.0)
    assert "25.3 deg" in low.findings[0].remedy
    assert stays_inside(enough, "style", 20.0, 5.0, 25.4, 60.0, 20.0)


def test_a_mouth_that_leaves_the_block_is_a_stop(plated, block):
    """Entered at 10 and going to the left it would come out at 10 - 15.63; to the right it stays inside."""
    stop = next(f for f in plated(block(x=10.0, towards=180.0)).findings if f.number == 445)

    assert not [f for f in plated(block(x=10.0)).findings if f.number == 445]

    assert stop.figure == "-5.63 mm"


def test_without_a_sine_bar_it_is_said(plated, block, bare):
    """The stack is given all the same, for a borrowed one of 100."""
    made = plated(block(), bare)

    assert [f.severity for f in made.findings if f.number == 446] == ["caution"]
    assert any("stack 78.80" in line for line in made.cards[-1].before_starting)


def test_without_an_end_mill_for_the_flat_it_is_a_stop(plated, block, shop):
    """A 4 does not make a flat for a 5 drill."""
    made = plated(block(), replace(shop, cutters=(3.0, 4.0)))

    assert any(f.number == 418 and f.feature == "style" for f in made.findings)


@pytest.mark.parametrize("more", [{"towards": 30.0}, {"depth": 8.0}, {"thread": "M5"}])
def test_what_is_not_planned_at_a_slant_is_a_stop(plated, block, more, numbers):
    """Across the corner, blind, or tapped."""
    made = plated(block(**more))

    assert {447, 905} & set(numbers(made))
    assert made.cards[-1].steps == ()
