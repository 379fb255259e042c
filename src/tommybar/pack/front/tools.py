"""What to lay out: tools by the cards that use them."""

from __future__ import annotations

from tommybar.pack.front.leaf import Leaves
from tommybar.pack.grid import Column
from tommybar.planning import Plan


def tools_used(plan: Plan) -> list[tuple[str, str]]:
    """Each tool and instrument with the cards it is used on, in the order of first use."""
    found: dict[str, list[str]] = {}
    for one in plan.parts:
        for card in one.cards:
            place = f"{card.part.replace('_', ' ')} {card.number}"
            for tool in card.drawer:
                found.setdefault(tool, []).append(place)
            for step in card.steps:
                for measure in step.measure:
                    if measure.instrument:
                        found.setdefault(measure.instrument, []).append(place)
    return [(tool, ", ".join(dict.fromkeys(places))) for tool, places in found.items()]


def put_tools(leaves: Leaves, plan: Plan) -> None:
    """The tool list."""
    leaves.section("Tools to lay out")
    rows = [("", tool, places) for tool, places in tools_used(plan)]
    if not rows:
        leaves.say("No card asks for a tool.")
    leaves.table(
        (Column("have", 14.0), Column("tool or instrument", bold=True), Column("used on card")), rows
    )
