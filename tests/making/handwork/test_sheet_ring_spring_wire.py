"""Sheet is bent in an order that can be reached; rings, springs and wire have length, former and cautions."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from tommybar.design.model import Part
from tommybar.facts.materials import material
from tommybar.making.handwork.bend_order import bend_order
from tommybar.making.handwork.springs import mandrel_dia
from tommybar.making.parts import route_part
from tommybar.mechanics.springback import former_radius
from tommybar.nest.rack import serves
from tommybar.refusals import Refusal
from tommybar.shapes.developed import bend_allowance, flats
from tommybar.shapes.features import Bend, Dim, PlateHole, RolledRing, SheetShape, SpringShape, WireShape
from tommybar.shop import load_shop
from tommybar.shop.model import Bar


@pytest.fixture(scope="module")
def shop():
    """The reference shop."""
    return load_shop(Path(__file__).parents[3] / "examples" / "shops" / "shop-r.yaml")


@pytest.fixture
def routed(shop):
    """A part of one shape, made in the reference shop."""

    def of(shape, kind="sheet", metal="mild steel", bench=()):
        return route_part(Part("piece", kind, metal, 1, shape, bench=bench), {}, shop)

    return of


def strip(legs, angles, radius=2.0, thick=1.5, wide=20.0):
    """A strip with its bends where the legs put them."""
    bends, s = [], 0.0
    flat = flats(legs, [(a, radius) for a in angles], thick)
    for n, angle in enumerate(angles):
        s += flat[n]
        bends.append(Bend(f"b{n + 1}", s, angle, radius))
        s += bend_allowance(angle, radius, thick)
    return SheetShape(
        Dim(s + flat[-1], "piece.length"),
        Dim(wide, "piece.width"),
        Dim(thick, "piece.thickness"),
        bends=tuple(bends),
        legs=tuple(legs),
    )


def test_a_deep_channel_is_bent_in_its_middle_while_its_ends_are_flat():
    """A hat: legs of 40 stand on a floor of 20, with lips turned outwards; lips first, or the bars never hold them."""
    order = bend_order(strip([12, 40, 20, 40, 12], [-90, 90, 90, -90]))

    assert order is not None and {one.bend.name for one in order} == {"b1", "b2", "b3", "b4"}


def test_a_channel_with_lips_is_closed_last():
    """Between standing legs 20 apart no bar, 25 high, fits for a lip, and 5.5 of lip is too short to hold."""
    order = bend_order(strip([9, 30, 20, 30, 9], [90, 90, 90, 90]))

    assert order is not None
    assert order[-1].bend.name in ("b2", "b3")


def test_flat_that_no_bar_can_hold_is_a_stop(routed):
    """Between two bends stand 11 - 2 x 3.5 = 4 mm of flat and outside them 5.5 - 3.5 = 2; the bars want 4 x 1.5 = 6."""
    stop = next(f for f in routed(strip([5.5, 11, 5.5], [90, 90])).findings if f.number == 461)

    assert stop.severity == "stop" and stop.bound.startswith("6 mm held") and stop.remedy


def test_the_flat_is_cut_and_drilled_before_it_is_bent_and_measured(routed):
    shape = strip([20, 30], [90])
    hole = PlateHole("fix", "top", 8, 10, Dim(4.5, "piece.fix"))
    flat, bent = routed(SheetShape(**{**shape.__dict__, "holes": (hole,)})).cards

    assert [flat.machine, bent.machine] == ["bench", "bench"]
    assert any(step.tool_kind == "drill" for step in flat.steps)
    assert {m.size for step in flat.steps for m in step.measure} == {"piece.length", "piece.width"}
    # 20 + 30 less both setbacks of 3.5, and pi/2 (2 + 0.44 x 1.5) = 4.178: 47.18 of flat
    assert flat.steps[0].big == "47.18"


def test_a_tapped_hole_in_sheet_is_not_passed_over(routed):
    shape = strip([20, 30], [90])
    hole = PlateHole("fix", "top", 8, 10, Dim(4.0, "piece.fix"), thread="M4")
    found = routed(SheetShape(**{**shape.__dict__, "holes": (hole,)})).findings

    assert [f.severity for f in found if f.number == 905] == ["stop"]


def test_a_tight_bend_is_a_caution(routed):
    """Inside 0.5 on 1.5 of sheet is under one thickness."""
    found = [f for f in routed(strip([20, 30], [90], radius=0.5)).findings if f.number == 462]

    assert [f.figure for f in found] == ["0.5 mm"]


@pytest.mark.parametrize("ratio", [0.02, 0.05, 0.1])
def test_the_former_of_strip_agrees_with_the_textbook_equation(ratio):
    """Ri/Rf = 4 k^3 - 3 k + 1 with k = Ri Y / (E t) (textbooks of manufacturing, from memory): the cube is left out."""
    thick, modulus, yields = 1.0, 200000.0, 400.0
    bent = ratio * modulus * thick / yields  # so that k = ratio
    free = bent / (4 * ratio**3 - 3 * ratio + 1)

    assert former_radius(free, thick, yields, modulus) == pytest.approx(bent, rel=0.01)


def test_wire_springs_back_by_its_plastic_moment_over_its_stiffness():
    """M = d^3 Y / 6 over E I with I = pi d^4 / 64 is taken off the curvature."""
    d, y, e = 1.0, 1500.0, 206000.0
    lost = (d**3 * y / 6) / (e * math.pi * d**4 / 64)

    assert 1 / former_radius(4.5, d, y, e, wire=True) - 1 / 4.5 == pytest.approx(lost)


def test_a_radius_that_stays_elastic_is_refused():
    with pytest.raises(Refusal, match="stays elastic"):
        former_radius(5000.0, 1.0, 372.0, 205000.0)


def test_the_mandrel_of_music_wire_is_about_nine_tenths_of_the_inside():
    """Common practice, no source: 0.85 to 0.95 of the inside for hard wire at a spring index near ten."""
    shape = SpringShape("compression", 1.0, Dim(10.0, "piece.outside"), 6.0, 8.0, 25.0, "ground")
    mandrel = mandrel_dia(Part("piece", "wire", "spring wire", 1, shape), shape)

    assert mandrel is not None and 0.85 < mandrel / 8.0 < 0.95


def test_a_spring_says_mandrel_turns_ends_and_the_danger_of_its_wire(routed):
    shape = SpringShape("compression", 1.0, Dim(10.0, "piece.outside"), 6.0, 8.0, 25.0, "ground")
    (card,) = routed(shape, "wire", "spring wire").cards
    words = [step.do for step in card.steps]

    assert ["Turn" in words[0], words[1], words[2], "Grind" in words[3]] == [
        True,
        "Wind 10 turns, right hand",
        "Cut to 8 coils",
        True,
    ]
    assert "whips" in " ".join(card.steps[1].cautions)
    assert any("solid three times" in line for line in card.steps[-1].dial)
    assert card.steps[-1].measure[0].size == "piece.outside"


def test_the_wire_of_a_spring_holds_its_coils_and_what_is_cut_away(routed):
    """Ten close coils of 1 mm wire on 9 mm: 282.9 mm; two more turns of 28.3 and 15 at each end."""
    shape = SpringShape("torsion", 1.0, Dim(10.0, "piece.outside"), 10.0, 10.0, 10.0, "legs")
    blank = routed(shape, "wire", "spring wire").blank

    assert blank.length == pytest.approx(282.92 + 2 * 28.29 + 30, abs=0.2)


def test_a_ring_is_rolled_smaller_and_its_solder_carries_the_cautions_of_flame(routed):
    shape = RolledRing(Dim(40.0, "piece.inside"), 6.0, 1.5, joint="soldered")
    making = routed(shape)
    steps = making.cards[0].steps
    metal = material("mild steel")
    rolled = 1 / (1 / 20.75 + 3 * metal.yield_strength / (metal.modulus * 1.5))

    assert making.blank.length == pytest.approx(math.pi * 41.5 + 2.0, abs=0.06)
    assert float(steps[1].big) == pytest.approx(2 * rolled - 1.5, abs=0.06)
    assert "Flame" in " ".join(steps[-1].cautions)


def test_bends_of_wire_are_measured_from_one_end(routed):
    """Legs 10 and 20, pi/2 (4 + 1) = 7.85 between them: the second bend begins 37.85 from the end."""
    shape = WireShape(Dim(2.0, "piece.dia"), (10.0, 20.0, 5.0), ((4.0, 90.0), (4.0, -90.0)))
    steps = routed(shape, "wire").cards[0].steps

    assert [step.big for step in steps[1:3]] == ["10.0", "37.9"]


def test_what_a_machine_turns_has_a_speed_that_the_machine_has(routed, shop):
    """The mandrel is turned and the sheet is drilled under power; what the hand does says no speed."""
    shape = strip([20, 30], [90])
    hole = PlateHole("fix", "top", 8, 10, Dim(4.5, "piece.fix"))
    spring = SpringShape("compression", 1.0, Dim(10.0, "piece.outside"), 6.0, 8.0, 25.0, "ground")
    drilled = [
        s for s in routed(SheetShape(**{**shape.__dict__, "holes": (hole,)})).cards[0].steps if s.speed > 0
    ]
    turned = [s for s in routed(spring, "wire", "spring wire").cards[0].steps if s.speed > 0]

    assert [step.tool_kind for step in (*drilled, *turned)] == ["drill", "knife"]
    assert drilled[0].speed in shop.mill.speeds and turned[0].speed in shop.lathe.speeds


def test_thicker_sheet_or_wire_is_not_taken_for_thinner(routed):
    """Nothing is taken off them: 3 mm rod is no 2 mm wire, 3 mm flat no 1.5 mm strip."""
    wire = routed(WireShape(Dim(2.0, "piece.dia"), (10.0, 20.0), ((4.0, 90.0),)), "wire").blank
    ring = routed(RolledRing(Dim(40.0, "piece.inside"), 6.0, 1.5)).blank

    assert not serves(Bar("3 rod", "mild steel", "round", 3.0, 500.0), wire)
    assert serves(Bar("2 wire", "mild steel", "round", 2.0, 500.0), wire)
    assert not serves(Bar("3 flat", "mild steel", "flat", 3.0, 500.0, 6.0), ring)
    assert serves(Bar("1.5 sheet", "mild steel", "sheet", 1.5, 500.0, 300.0), ring)


def test_a_card_for_wire_turns_the_way_the_drawing_says(routed):
    """The sheet says left and right of the wire as it lies; so does the card."""
    shape = WireShape(Dim(3.0, "piece.dia"), (20.0, 30.0, 12.0), ((4.0, 90.0), (6.0, -60.0)))
    (card,) = routed(shape, "wire", "mild steel").cards
    bends = [step.do for step in card.steps if step.do.startswith("Bend ")]

    assert "90 deg to the left" in bends[0]
    assert "60 deg to the right" in bends[1]
