"""Other routes than the chosen one: laws that hold for every card, and cases worked out by looking."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from tommybar import plan
from tommybar.alternatives import alternatives
from tommybar.design import load_design
from tommybar.making.route_check import route_faults
from tommybar.shop import load_shop

EXAMPLES = Path(__file__).parents[2] / "examples"


@pytest.fixture(scope="module", params=["shop-r", "small-bench", "inch-bench"])
def planned(request):
    """The demonstrator planned for one of the example shops."""
    design = load_design(EXAMPLES / "demonstrator" / "design.yaml")
    return plan(design, load_shop(EXAMPLES / "shops" / f"{request.param}.yaml"))


@pytest.fixture(scope="module")
def others(planned):
    """All other ways of every part of it."""
    return {one.part.name: alternatives(planned, one.part.name) for one in planned.parts}


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
    """None is left out, and parts that are not turned have none."""
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


def test_a_run_out_that_cannot_be_kept_is_why_not(demonstrator_of):
    """A bush whose flange must run to 0.03: without collets and sleeves' accuracy the chuck's figure is told."""
    design, shop = demonstrator_of
    true = next(one for one in shop.jaws if one.device == "collets")
    rough = tuple(one if one.device == "collets" else replace(one, runout=0.5) for one in shop.jaws)
    asked = alternatives(plan(design, replace(shop, jaws=rough), scale=1.0), "shaft")
    told = [one for each in asked for one in each.against]

    assert true.runout < 0.05
    assert {301} <= {one.number for one in told}
    assert any("0.500 mm TIR" in one.figure for one in told)


@pytest.fixture
def demonstrator_of():
    """The demonstrator and shop R."""
    return load_design(EXAMPLES / "demonstrator" / "design.yaml"), load_shop(
        EXAMPLES / "shops" / "shop-r.yaml"
    )


def test_a_plate_has_no_searched_route(demonstrator_of):
    """The base is squared in the vice; nothing else is searched, and that is said by an empty answer."""
    design, shop = demonstrator_of

    assert alternatives(plan(design, shop, scale=1.0), "base") == ()


def test_the_words_are_said_in_inches_when_asked(demonstrator_of):
    """No figure in mm is left without its inches."""
    design, shop = demonstrator_of
    said = alternatives(plan(design, shop, scale=1.0), "bush", words_in="in")
    lines = [line for asked in said for way in asked.ways for line in way.changes]

    assert any(" in long instead of " in line for line in lines)
    assert not any(line.endswith(" mm") or " mm long" in line for line in lines)
