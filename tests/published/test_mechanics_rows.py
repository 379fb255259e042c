"""Worked figures of mechanics, rows/mechanics.csv: every module that the program computes.

The row's own tolerance holds; angles count modulo 360 degrees. Rows of
modules that are not computed yet are counted as unmapped in the summary, with
the reason in ``map_mechanics.NOT_YET``; a module in neither list fails.
"""

from __future__ import annotations

import csv
import json
import math
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from . import map_mechanics as mapping

FILE = Path(__file__).parent / "rows" / "mechanics.csv"


def rows() -> list[dict[str, Any]]:
    """The rows with inputs, expected values and tolerance read from their JSON."""
    with FILE.open(newline="") as stream:
        read = list(csv.DictReader(stream))
    return [
        {**row, **{key: json.loads(row[key]) for key in ("inputs", "expected", "tolerance")}} for row in read
    ]


def basis(source: str) -> str:
    """How a row's figure was come by, from the words of its source."""
    if "(read" in source or "table read" in source or "value read" in source or "formulas read" in source:
        return "read"
    return "memory" if "from memory" in source else "computed"


def differs(key: str, found: float, printed: float, rel: float) -> bool:
    """Whether a found value lies outside the row's relative tolerance."""
    if key.endswith("_deg"):
        turn = abs((found - printed + 180) % 360 - 180)
        return turn > rel * max(abs(printed), 10.0)
    return not math.isclose(found, printed, rel_tol=rel, abs_tol=1e-12)


@pytest.mark.parametrize("row", rows(), ids=lambda row: row["id"])
def test_row(row: dict[str, Any], record_property: Callable[[str, object], None]) -> None:
    """What the row states is what the public functions give, within the row's tolerance."""
    name = row["module"]
    if name in mapping.NOT_YET:
        assert name not in mapping.RULES
        record_property("published", f"mechanics|{basis(row['source'])}|unmapped")
        return
    found = mapping.RULES[name](row["inputs"])
    wrong = {
        key: (found.get(key), printed)
        for key, printed in row["expected"].items()
        if key not in found or differs(key, found[key], printed, row["tolerance"]["rel"])
    }
    record_property("published", f"mechanics|{basis(row['source'])}|{'failed' if wrong else 'passed'}")
    assert not wrong


def test_no_rule_sees_what_the_row_expects() -> None:
    """Tripled expectations fail in every computed row, so no rule echoes them."""
    for row in rows():
        if row["module"] in mapping.RULES:
            found = mapping.RULES[row["module"]](row["inputs"])
            assert any(
                differs(key, found[key], 3 * printed + 7, row["tolerance"]["rel"])
                for key, printed in row["expected"].items()
            )


def test_every_listed_module_has_rows() -> None:
    """No rule and no excuse stands for a module that the file does not have."""
    there = {row["module"] for row in rows()}

    assert set(mapping.RULES) <= there
    assert set(mapping.NOT_YET) <= there
