"""ISO 286 limits and fits: every published row of rows/iso286.csv."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from . import map_iso286 as mapping
from .frame import Row, rows_of, verdict


@pytest.mark.parametrize("row", rows_of("iso286", mapping.LEFT_OUT), ids=lambda row: row.id)
def test_row(row: Row, record_property: Callable[[str, object], None]) -> None:
    """What is printed is what the public functions give, to half a unit of the last printed place."""
    outcome, words = verdict(row, mapping)
    record_property("published", f"{row.file}|{row.basis}|{outcome}")
    assert outcome == "passed", words
