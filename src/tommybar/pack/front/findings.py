"""Findings by severity, each with its place, figure, bound and remedy."""

from __future__ import annotations

from tommybar.findings import Finding
from tommybar.pack.front.leaf import Leaves
from tommybar.pack.grid import Column
from tommybar.planning import Plan

HEADS = {
    "stop": "Stop: do not start before this is settled",
    "caution": "Caution",
    "note": "Note",
}


def place_words(one: Finding) -> str:
    """Where a finding stands.

    Examples
    --------
    >>> place_words(Finding(401, "caution", "Too fast.", "wheel", "rim", 1, 7))
    'wheel rim, card 1 step 7'
    """
    where = f"{one.part} {one.feature}".strip().replace("_", " ")
    at = f"card {one.card}" + (f" step {one.step}" if one.step else "") if one.card else ""
    return ", ".join(words for words in (where, at) if words)


def put_findings(leaves: Leaves, plan: Plan) -> None:
    """Write all findings, and what was assumed of the shop."""
    leaves.section("Findings")
    if not plan.findings:
        leaves.say("None.")
    for severity, head in HEADS.items():
        rows = [one for one in plan.findings if one.severity == severity]
        if rows:
            leaves.head(f"{head} ({len(rows)})", 40.0)
            leaves.table(
                (Column("no", bold=True), Column("where"), Column("what"), Column("remedy")),
                [(str(one.number), place_words(one), _what(one), one.remedy) for one in rows],
            )
    if plan.shop.assumed:
        leaves.head("Assumed of the shop", 24.0)
        leaves.say(
            "Not in the shop file, taken from the nearest example: " + ", ".join(plan.shop.assumed) + "."
        )


def _what(one: Finding) -> str:
    bound = f" Bound: {one.bound}." if one.bound and one.bound not in one.words else ""
    figure = f" Figure: {one.figure}." if one.figure and one.figure not in one.words else ""
    return f"{one.words}{figure}{bound}".replace("..", ".")
