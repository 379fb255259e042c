"""Other routes than the chosen one: laws that hold for every card, and cases worked out by looking."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from tommybar import plan, planning
from tommybar.alternatives import alternatives, other_ways
from tommybar.design import load_design
from tommybar.design.model import Part, RunoutNeed
from tommybar.findings import Finding
from tommybar.making.parts import route_part
from tommybar.making.route_check import route_faults
from tommybar.shapes.features import Cylinder, Dim, TurnedShape
from tommybar.shop import load_shop

EXAMPLES = Path(__file__).parents[2] / "examples"


@pytest.fixture(scope="module", params=["shop-r", "small-bench", "inch-bench"])
def planned(request):
    """The demonstrator planned for one of the example shops."""
    design = load_design(EXAMPLES / "demonstrator" / "design.yaml")
    return plan(design, load_shop(EXAMPLES / "shops" / f"{request.param}.yaml"))


@pytest.fixture(scope="module")
def others(planned):
    """All other ways of every part of it on the lathe."""
    return {
        one.part.name: tuple(asked for asked in alternatives(planned, one.part.name) if asked.card in lathe)
        for one in planned.parts
        for lathe in ({card.number for card in one.cards if card.machine == "lathe"},)
    }


@pytest.fixture(scope="module")
def at_the_mill(planned):
    """Other ways of the mill cards, by part and card."""
    return {
        (one.part.name, asked.card): asked
        for one in planned.parts
        for mill in ([card.number for card in one.cards if card.machine == "mill"],)
        for asked in (alternatives(planned, one.part.name, mill) if mill else ())
    }


def holding(card):
    """How a card holds, by the name that the search forbids."""
    return f"{card.hold.device} on {card.hold.surface}"


def ways(others):
    """(part, what is asked, one way) of all of them."""
    return [
        (name, asked, way)
        for name, every in others.items()
        for asked in every
        for way in every and asked.ways
    ]


def test_every_lathe_card_of_every_part_is_asked(planned, others):
    """None is left out."""
    for one in planned.parts:
        lathe = [card.number for card in one.cards if card.machine == "lathe"]
        assert [asked.card for asked in others[one.part.name]] == lathe


def test_no_alternative_weighs_less_than_the_chosen_route(others):
    """The searches end within their budget, so the chosen route is the best: a price is never below nought."""
    found = ways(others)

    assert len(found) >= 6
    assert all(asked.proven for _, asked, _ in found)
    assert all(way.weight >= 0 for _, _, way in found)
    for every in others.values():
        for asked in every:
            weights = [way.weight for way in asked.ways]
            assert weights == sorted(weights)


def test_an_alternative_never_holds_in_the_forbidden_way(planned, others):
    """On the card in question stands another holding, each time a new one."""
    for name, asked, way in ways(others):
        card = next((one for one in planned.part(name).cards if one.number == asked.card), None)
        assert holding(card) == asked.holding
        instead = next((one for one in way.cards if one.number == asked.card), None)
        assert instead is None or holding(instead) != asked.holding
        assert way.holding != asked.holding
    for every in others.values():
        for asked in every:
            names = [way.holding for way in asked.ways]
            assert len(set(names)) == len(names)


def test_the_cards_of_an_alternative_replay_and_its_dry_run_is_clean(planned, others):
    """The checker that knows nothing of the search passes them; the geometry collides with nothing."""
    for name, _, way in ways(others):
        assert route_faults(planned.part(name).part, way.cards, planned.shop) == ()
        assert way.run is not None
        assert [one for one in way.run.findings if one.severity == "stop"] == []


def test_the_price_is_the_difference_of_the_cards(planned, others):
    """Minutes and grips are counted from the cards themselves."""
    for name, _, way in ways(others):
        chosen = planned.part(name).cards
        minutes = sum(card.minutes for card in way.cards) - sum(card.minutes for card in chosen)
        assert way.minutes == pytest.approx(minutes, abs=0.06)
        assert way.set_ups == len(way.cards) - len(chosen)
        assert way.changes


def test_where_there_is_no_way_a_figure_stands_against_it(others):
    """Each search ends with ways enough or with stops that say a figure and what to do."""
    refused = [asked for every in others.values() for asked in every if asked.against]

    assert len(refused) >= 3
    for asked in refused:
        for one in asked.against:
            assert one.severity == "stop"
            assert one.figure
            assert one.remedy
    assert all(asked.against or len(asked.ways) == 2 for every in others.values() for asked in every)


def spool(within):
    """Two ends of 20 with 40 between them, thin enough to lie in a jaw step; each end is cut in a grip of its own."""
    ends = (("a", 20.0, 0.0, 10.0), ("middle", 40.0, 10.0, 18.0), ("c", 20.0, 18.0, 28.0))
    lands = tuple(Cylinder(name, Dim(dia, f"spool.{name}"), start, end) for name, dia, start, end in ends)
    shape = TurnedShape(Dim(28.0, "spool.length"), lands)
    return Part("spool", "turned", "mild steel", 1, shape, (RunoutNeed("a", "c", within),))


def test_a_run_out_that_cannot_be_kept_is_why_not(demonstrator_of):
    """One end of the spool must run within 0.021 to the other: a sleeve of 0.04 gives a route with a stop, and that is no route.

    Without a blade, that is: one that reaches 10 mm behind the middle cuts both ends in one grip.
    """
    shop = demonstrator_of[1]
    bladeless = replace(shop, tools=tuple(t for t in shop.tools if t.kind not in ("parting", "groove")))
    asked = other_ways(spool(0.021), bladeless, cards=(2,))[0]

    assert other_ways(spool(0.021), shop, cards=(2,))[0].against == ()

    assert [one.number for one in asked.against] == [301]
    assert asked.against[0].figure == "0.040 mm TIR"
    assert "within 0.021 mm in this shop" in asked.against[0].words


@pytest.fixture
def demonstrator_of():
    """The demonstrator and shop R."""
    return load_design(EXAMPLES / "demonstrator" / "design.yaml"), load_shop(
        EXAMPLES / "shops" / "shop-r.yaml"
    )


def test_a_mill_card_is_held_without_the_vice_where_that_goes(planned, at_the_mill):
    """The base lies as well on packing or a sacrificial plate: one card is another, the rest of the route stays."""
    for number in (1, 2):
        asked = at_the_mill["base", number]
        (way,) = asked.ways
        chosen = planned.part("base").cards
        assert "vice" in asked.holding and "clamped" in way.holding
        assert [one.number for one in way.cards] == [one.number for one in chosen]
        changed = [old.number for old, new in zip(chosen, way.cards, strict=True) if old != new]
        assert changed == [number]
        minutes = sum(card.minutes for card in way.cards) - sum(card.minutes for card in chosen)
        assert way.minutes == pytest.approx(minutes, abs=0.06)
        assert way.set_ups == 0 and way.changes


def test_a_mill_card_that_needs_the_vice_says_what_stands_against_it(at_the_mill):
    """The base on its edge, and the wheel on its rim, are held by the vice or not at all."""
    for key in (("base", 3), ("base", 4), ("wheel", 4)):
        asked = at_the_mill[key]
        assert asked.ways == ()
        assert asked.against
        for one in asked.against:
            assert one.severity == "stop" and one.figure and one.remedy
            assert one.words.startswith("Without it: ")


def test_the_words_are_said_in_inches_when_asked(demonstrator_of):
    """No figure in mm is left without its inches."""
    design, shop = demonstrator_of
    said = alternatives(plan(design, shop, scale=1.0), "bush", words_in="in")
    lines = [line for asked in said for way in asked.ways for line in way.changes]

    assert any(" in long instead of " in line for line in lines)
    assert not any(line.endswith(" mm") or " mm long" in line for line in lines)


def test_a_holding_in_which_the_dry_run_collided_stays_out(demonstrator_of, monkeypatch):
    """What was excluded before the chosen route was found is excluded in every search after it."""
    shop, part, truly, asked = demonstrator_of[1], replace(spool(0.5), name="spool_2"), planning._run, []
    collides = route_part(part, {}, shop).cards[1]

    def run(part, making, shop):
        found = truly(part, making, shop)
        hits = [card.number for card in making.cards if holding(card) == holding(collides)]
        hit = tuple(Finding(500, "stop", "It collides.", part.name, card=number) for number in hits)
        return replace(found, findings=(*found.findings, *hit))

    def search(*given, **more):
        asked.append(more["excluded"])
        return route_part(*given, **more)

    monkeypatch.setattr(planning, "_run", run)
    monkeypatch.setattr(planning, "route_part", search)
    found = other_ways(part, shop, cards=(2,))[0]

    assert found.holding != holding(collides)
    assert all(way.holding != holding(collides) for way in found.ways)
    assert asked[:2] == [frozenset(), frozenset({holding(collides)})]
    assert len(asked) > 2
    assert all(holding(collides) in excluded for excluded in asked[1:])
