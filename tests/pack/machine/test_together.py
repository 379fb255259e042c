"""The card on which everything is put together."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tommybar.assembly.order import order_of
from tommybar.design import load_design
from tommybar.findings import Finding
from tommybar.pack.machine import together
from tommybar.pack.machine.contents import page_contents
from tommybar.pack.machine.on_paper import paper_cards
from tommybar.pack.machine.together import assembly_part
from tommybar.pack.units import Reader
from tommybar.planning import Plan, plan
from tommybar.shop import example_shops, load_shop


@pytest.fixture(scope="module")
def whole() -> Plan:
    shop = example_shops()["shop-r"]
    return plan(load_design(shop.parents[1] / "demonstrator" / "design.yaml"), load_shop(shop))


def test_the_last_card_follows_the_order_of_assembly(whole: Plan) -> None:
    """One step for each thing that goes on, in the order in which it can, keys of its own."""
    card = page_contents(whole, Reader())["parts"][-1]["cards"][0]

    assert [step["do"] for step in card["steps"]] == [one.words for one in order_of(whole.design).steps]
    assert len({step["key"] for step in card["steps"]}) == len(card["steps"])
    assert all(step["key"].startswith("assembly/1/") for step in card["steps"])
    assert all(
        step["do"].split(" (")[0] in paper_cards(page_contents(whole, Reader())) for step in card["steps"]
    )


def test_what_stays_for_good_says_so_at_its_step(whole: Plan) -> None:
    """Each bush is pressed: the step warns before it is done; the wheel slides on and has no such line."""
    part = assembly_part(whole, Reader())
    assert part is not None
    warned = {step["key"] for step in part["cards"][0]["steps"] if together.FOR_GOOD in step["cautions"]}

    assert warned == {"assembly/1/bush-1", "assembly/1/bush-2"}


def test_a_finding_stands_at_the_step_of_its_part_and_a_stop_before_everything(
    whole: Plan, monkeypatch: pytest.MonkeyPatch
) -> None:
    """What is said of the wheel is read when the wheel goes on; a stop is told before the first cut."""
    found = (
        Finding(655, "caution", "Wheel passes base at 0.20 mm.", "wheel", remedy="Set it further off."),
        Finding(656, "stop", "The shaft cannot be brought in.", remedy="Make the hole larger."),
    )
    monkeypatch.setattr(together, "check_together", lambda design: found)
    contents = page_contents(whole, Reader())
    card = contents["parts"][-1]["cards"][0]
    wheel = next(step for step in card["steps"] if step["key"].endswith("/wheel-1"))

    assert wheel["cautions"] == ["Caution: Wheel passes base at 0.20 mm. Set it further off."]
    assert "STOP: The shaft cannot be brought in. Make the hole larger." in card["before"]
    assert "The shaft cannot be brought in. Make the hole larger." in contents["plan"]["stops"]


def test_one_piece_is_not_put_together(whole: Plan) -> None:
    """A design of one part has no such card, and a part that is called assembly keeps its name."""
    wheel = replace(whole.design.part("wheel"), count=1)
    alone = replace(whole, design=replace(whole.design, parts=(wheel,), fits=(), loops=()))

    assert assembly_part(alone, Reader()) is None
