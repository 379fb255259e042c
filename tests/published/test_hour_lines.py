"""Hour lines of a level sundial, from a table that is published."""

from __future__ import annotations

from pathlib import Path

import pytest

from tommybar.design.loaded import design_from_text

EXAMPLES = Path(__file__).resolve().parents[2] / "examples"
PUBLISHED = {54.8: (12.35, 25.26, 39.25, 54.76, 71.85)}
"""Hour angles of a level dial from noon, of a published table for 54.8 degrees (a dial maker's page, seen)."""


@pytest.mark.parametrize("latitude", sorted(PUBLISHED))
def test_hour_lines_are_those_of_a_published_table(latitude, printed):
    """Formula: tan H = sin(latitude) tan(15 deg t), of any book of dials; 6 o'clock lies square to noon."""
    text = (EXAMPLES / "gnomon-block" / "design.yaml").read_text(encoding="utf-8")
    design = design_from_text(text.replace("is: 52 deg", f"is: {latitude:g} deg")).sized()
    angles = design.part("dial").shape.rays[0].angles
    afternoon = [-one for one in angles[7:12]]
    assert afternoon == [printed(f"{one:.2f}") for one in PUBLISHED[latitude]]
    assert list(angles[:6]) == [90.0, *reversed(afternoon)]
    assert (angles[6], angles[12]) == (0.0, -90.0)
