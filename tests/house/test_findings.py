"""Every finding that stops or warns says what to do about it, wherever it is written."""

from __future__ import annotations

import ast
from pathlib import Path

import pytest

from tommybar import plan
from tommybar.design import load_design
from tommybar.findings import Finding
from tommybar.shop import load_shop

from .floors import SRC

EXAMPLES = Path(__file__).parents[2] / "examples"
RAISERS = (
    "Finding",
    "find",
    "at_least",
    "beware",
)  # what makes a finding out of a number, a severity and words
PLACE = list(Finding.__dataclass_fields__).index("remedy")


def raised(text):
    """(line, what stands as remedy or None) of each finding in a text that is no plain note."""
    found = []
    for node in ast.walk(ast.parse(text)):
        if not isinstance(node, ast.Call) or not node.args:
            continue
        name = getattr(node.func, "id", getattr(node.func, "attr", ""))
        number = isinstance(node.args[0], ast.Constant) and isinstance(node.args[0].value, int)
        if name not in RAISERS or not (number or name == "Finding"):
            continue
        said = [
            one
            for one in (*node.args[:3], *(key.value for key in node.keywords))
            if isinstance(one, ast.Constant)
        ]
        if any(one.value == "note" for one in said):
            continue
        remedy = next((key.value for key in node.keywords if key.arg == "remedy"), None)
        if remedy is None and name == "Finding" and len(node.args) > PLACE:
            remedy = node.args[PLACE]
        if remedy is None and name in ("at_least", "beware"):
            remedy = next(
                (key.value for key in node.keywords if key.arg is None), None
            )  # in **place; typed as needed
        found.append((node.lineno, remedy))
    return found


@pytest.mark.parametrize("path", sorted(SRC.rglob("*.py")), ids=lambda path: str(path.relative_to(SRC)))
def test_a_stop_or_caution_is_written_with_its_remedy(path):
    """A finding without one leaves the reader alone with it."""
    for line, remedy in raised(path.read_text(encoding="utf-8")):
        assert remedy is not None, f"{path}:{line} says nothing of what to do"
        assert not (isinstance(remedy, ast.Constant) and not remedy.value), f"{path}:{line}: empty remedy"


def test_the_reader_of_findings_sees_one_without_a_remedy():
    """The check itself: it finds what lacks a remedy and passes what has one."""
    assert raised('Finding(1, "stop", "no")') == [(1, None)]
    assert raised('bench.find(1, "caution", "no", feature="x")') == [(1, None)]
    assert raised('Finding(1, "note", "well")') == []
    assert raised('Finding(1, "stop", "no", remedy="do so")')[0][1].value == "do so"


@pytest.mark.parametrize("shop", ["shop-r", "small-bench", "inch-bench"])
@pytest.mark.parametrize("scale", [None, 1.0, 1.6])
def test_every_stop_and_caution_of_the_demonstrator_has_a_remedy(shop, scale):
    """At the scale proposed, as drawn, and far too large for the bench."""
    planned = plan(
        load_design(EXAMPLES / "demonstrator" / "design.yaml"),
        load_shop(EXAMPLES / "shops" / f"{shop}.yaml"),
        scale=scale,
    )
    grave = [one for one in planned.findings if one.severity != "note"]

    assert grave
    assert [one.number for one in grave if not one.remedy.strip()] == []
