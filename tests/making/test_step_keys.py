"""Steps are called by what they do: a step put in before them leaves their names, and old names are still read."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from tommybar.design import load_design
from tommybar.made import Made
from tommybar.made.record import Ticked
from tommybar.making.begun import same_so_far, ticked_steps
from tommybar.making.cards import Card
from tommybar.making.step_keys import is_ticked, keyed
from tommybar.planning import Plan, plan
from tommybar.shop import example_shops, load_shop

SHOP = example_shops()["shop-r"]


@pytest.fixture(scope="module")
def whole() -> Plan:
    return plan(load_design(SHOP.parents[1] / "demonstrator" / "design.yaml"), load_shop(SHOP))


def first_card(whole: Plan) -> Card:
    return whole.part("wheel").cards[0]


def test_every_step_has_a_name_of_its_own_that_is_no_place(whole: Plan) -> None:
    """Part, card, then letters first: it can never be taken for the number of a step."""
    keys = [step.key for one in whole.parts for card in one.cards for step in card.steps]

    assert len(keys) > 60
    assert len(set(keys)) == len(keys)
    assert not [
        one for one in keys if not re.fullmatch(r"[a-z_]+/\d+/[A-Za-z][A-Za-z0-9_.-]*[A-Za-z0-9]", one)
    ]


def test_a_step_put_in_leaves_the_names_of_the_others(whole: Plan) -> None:
    """A second drill before the reamer: every other step keeps its name, at whatever place it stands."""
    card = first_card(whole)
    before = [step.key for step in card.steps]
    drill = next(step for step in card.steps if step.tool_kind == "drill")
    more = replace(drill, do="Drill bore 8", tool_size=8.0)
    place = card.steps.index(drill) + 1
    steps = (*card.steps[:place], more, *card.steps[place:])
    numbered = tuple(replace(one, number=n) for n, one in enumerate(steps, 1))
    (after,) = keyed((replace(card, steps=numbered),))

    assert [step.key for step in after.steps if step.key in before] == before
    assert [step.key for step in after.steps if step.key not in before] == ["wheel/1/bore.drill-8"]


def test_a_tick_stays_with_its_deed_when_a_step_is_put_in(whole: Plan) -> None:
    """Ticked up to the reamer: with a step more on the card it is still the reamer, one place on."""
    card = first_card(whole)
    reamer = next(step for step in card.steps if step.tool_kind == "reamer")
    made = Made("x", ticks=(Ticked(reamer.key),))
    longer = replace(
        card,
        steps=tuple(
            replace(one, number=one.number + 1)
            for one in (replace(card.steps[0], key="wheel/1/x.y"), *card.steps)
        ),
    )

    assert ticked_steps(card, made) == reamer.number
    assert ticked_steps(longer, made) == reamer.number + 1


def test_a_record_of_earlier_days_is_read_by_place(whole: Plan) -> None:
    """wheel/1/3 is the third step of the first card, as it was when it was written."""
    card = first_card(whole)
    made = Made("x", ticks=(Ticked("wheel/1/1"), Ticked("wheel/1/3")))

    assert ticked_steps(card, made) == 3
    assert [is_ticked(card, step, {"wheel/1/3"}) for step in card.steps[:4]] == [False, False, True, False]
    assert same_so_far(whole.part("wheel").cards, whole.part("wheel").cards, made)
