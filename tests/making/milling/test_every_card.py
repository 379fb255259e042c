"""Laws of every mill card, over parts and shops: only tools that are owned, only speeds that the mill has."""

from __future__ import annotations

import itertools
from dataclasses import replace
from pathlib import Path

import pytest

from tommybar.making.mill_steps import MillBench, Plunge
from tommybar.making.milling.room import known, room_lines
from tommybar.shapes.features import (
    Bore,
    CircleHoles,
    CrossHole,
    CrossSlot,
    Cylinder,
    Dim,
    Flats,
    HeadSlot,
    Keyway,
    PlateHole,
    PlateShape,
    PlateStep,
    Pocket,
    Slot,
    TurnedShape,
    Vee,
)
from tommybar.shop import load_shop

SHOPS = Path(__file__).parents[3] / "examples" / "shops"
NAMES = ("shop-r", "small-bench", "inch-bench")


@pytest.fixture(scope="module", params=NAMES)
def any_shop(request):
    """Each example shop."""
    return load_shop(SHOPS / f"{request.param}.yaml")


def rounds():
    """A rod with everything across and along it, in three sizes; a hole larger than any drill among them."""
    for dia in (8.0, 20.0, 50.0):
        yield TurnedShape(
            Dim(60.0, "piece.length"),
            (Cylinder("rod", Dim(dia, "piece.rod"), 0.0, 60.0),),
            bores=(Bore("bore", Dim(dia / 4, "piece.bore"), "A", 20.0, False),),
            circle_holes=(CircleHoles("ring", Dim(dia / 10, "piece.ring"), 4, dia * 0.6, 10.0, 0.0, 60.0),),
            cross_holes=(
                CrossHole("eye", Dim(dia / 2, "piece.eye", "H7", dia / 2, dia / 2 + 0.02), 40.0, 45.0, 2),
                CrossHole("oil", Dim(2.0, "piece.oil"), 10.0, 0.0, 1, "", "bore"),
            ),
            flats=(Flats("flat", 1, dia * 0.4, 50.0, 60.0),),
            head_slots=(HeadSlot("blade", "A", Dim(dia / 5, "piece.blade"), dia / 8),),
            cross_slots=(CrossSlot("track", 22.0, 32.0, Dim(dia / 4, "piece.track")),),
            keyways=(Keyway("key", 44.0, 58.0, Dim(dia / 4, "piece.key"), dia / 8, 90.0),),
        )


def plates():
    """A plate and a block with everything in them."""
    for long, wide, thick in ((60.0, 40.0, 8.0), (120.0, 80.0, 30.0)):
        yield PlateShape(
            Dim(long, "piece.length"),
            Dim(wide, "piece.width"),
            Dim(thick, "piece.thick"),
            holes=(
                PlateHole("big", "top", long / 2, wide / 2, Dim(24.0, "piece.big", "H7", 24.0, 24.021)),
                PlateHole("head", "top", 8.0, 8.0, Dim(5.5, "piece.head"), None, "", 10.0, 4.0),
                PlateHole("side", "left", wide / 2, thick / 2, Dim(5.0, "piece.side"), 10.0, "M5"),
                PlateHole("slant", "top", 30.0, wide - 10, Dim(4.0, "piece.slant"), tilt=20.0, flat=True),
            ),
            slots=(Slot("slot", "bottom", 20.0, 10.0, 16.0, Dim(6.0, "piece.slot"), 3.0),),
            pockets=(
                Pocket("well", "bottom", 40.0, 25.0, Dim(20.0, "piece.wl"), Dim(12.0, "piece.ww"), 3.0, 3.0),
            ),
            steps=(PlateStep("ledge", "top", "right", Dim(4.0, "piece.ledge"), Dim(2.0, "piece.deep")),),
            vees=(Vee("vee", "bottom", "x", wide - 8.0, 6.0),),
        )


def faults(cards, shop) -> list[str]:
    """What a card asks for that the shop has not."""
    owned = {
        "drill": (*shop.drills, *shop.long_drills),
        "reamer": tuple(one.size for one in shop.reamers),
        "centre drill": shop.centre_drills,
        "countersink": shop.countersinks,
        "end mill": shop.cutters,
        "counterbore": tuple(one.dia for one in shop.counterbores),
    }
    found = []
    for card, step in [(one, step) for one in cards for step in one.steps]:
        where = f"{card.title}, {step.do}"
        if step.speed and step.speed not in shop.mill.speeds:
            found.append(f"{where}: {step.speed:g} is no speed of the mill")
        if step.tool_kind in owned and step.tool_size not in owned[step.tool_kind]:
            found.append(f"{where}: {step.tool_size:g} is not in the drawer")
        if step.tool_kind == "tap" and step.tool.removeprefix("tap ") not in shop.taps:
            found.append(f"{where}: not in the drawer")
        if step.tool_kind == "boring" and "boring head" not in shop.can and shop.mill.boring_head[1] <= 0:
            found.append(f"{where}: no boring head")
        if any(a.to >= b.to for a, b in itertools.pairwise(step.passes)):
            found.append(f"{where}: cuts do not go deeper one by one")
        if step.speed and step.feed < 0:
            found.append(f"{where}: no feed")
    return found


@pytest.mark.parametrize("shape", list(rounds()), ids=lambda s: f"{s.outside[0].dia.value:g}")
def test_rounds_are_milled_with_what_is_owned(milled, any_shop, shape):
    """And every card begins with the safety lines and ends in numbered steps."""
    made = milled(shape, any_shop)

    assert made.cards
    assert faults(made.cards, any_shop) == []
    for card in made.cards:
        assert any("Eye protection" in line for line in card.before_starting)
        assert [s.number for s in card.steps] == list(range(1, len(card.steps) + 1))


@pytest.mark.parametrize("shape", list(plates()), ids=lambda s: f"{s.length.value:g}")
def test_plates_are_milled_with_what_is_owned(plated, any_shop, shape):
    """In each example shop."""
    made = plated(shape, any_shop)

    assert made.cards
    assert faults(made.cards, any_shop) == []


@pytest.mark.parametrize("shape", [*rounds(), *plates()], ids=lambda s: f"{s.length.value:g}")
def test_each_feature_is_made_or_told(milled, plated, any_shop, shape):
    """No feature is passed over in silence."""
    made = milled(shape, any_shop) if isinstance(shape, TurnedShape) else plated(shape, any_shop)
    named = {s.feature for c in made.cards for s in c.steps} | {f.feature for f in made.findings}
    if isinstance(shape, TurnedShape):
        groups = (shape.circle_holes, shape.cross_holes, shape.flats, shape.head_slots, shape.cross_slots)
        wanted = {one.name for group in (*groups, shape.keyways) for one in group}
    else:
        wanted = {
            one.name
            for group in (shape.holes, shape.slots, shape.pockets, shape.steps, shape.vees)
            for one in group
        }

    assert wanted - named == set()


def test_a_planted_fault_is_found(milled, any_shop):
    """A speed that the mill has not, and a cutter that is not owned."""
    made = milled(next(iter(rounds())), any_shop)
    card = next(c for c in made.cards if c.steps)
    wrong = replace(card, steps=(replace(card.steps[0], speed=333.0, tool_kind="end mill", tool_size=99.0),))

    assert len(faults([wrong], any_shop)) == 2


def test_a_reamer_longer_than_the_table_is_told(bench):
    """25 is off the table of lengths: no length is invented."""
    b: MillBench = bench()
    b.plunges.append(Plunge("reamer", 25.0, 10.0, "hole"))
    room_lines(b, 60.0, 10.0)

    assert not known(25.0)
    assert [(f.number, f.severity) for f in b.findings] == [(432, "caution")]
