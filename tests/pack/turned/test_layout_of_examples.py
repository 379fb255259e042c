"""Drawings of every example design, as drawn, in both units and on both small papers: no collision."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from tests.pack.handmade import IMPRINT
from tests.pack.layout import LINES, clashes

from tommybar.design import load_design
from tommybar.design.model import SizedDesign
from tommybar.pack.drawing import part_drawing
from tommybar.pack.units import Reader
from tommybar.shapes.features import TurnedShape

EXAMPLES = sorted((Path(__file__).resolve().parents[3] / "examples").glob("*/design.yaml"))


def as_drawn(path: Path) -> SizedDesign:
    """A design at the figures of its file."""
    return load_design(path).sized()


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.parent.name)
def test_the_turned_parts_of_an_example_are_drawn_without_a_collision(path: Path) -> None:
    """No word of any sheet touches a word, a line or hatching."""
    design = as_drawn(path)
    found = []
    for part in design.parts:
        if not isinstance(part.shape, TurnedShape):
            continue
        for unit in ("mm", "in"):
            for paper in ("A4", "Letter"):
                imprint = replace(IMPRINT, reader=Reader(unit), paper=paper)  # type: ignore[arg-type]
                found += clashes(part_drawing(part, design, imprint), LINES)

    assert found == []


def test_there_are_examples_to_look_at() -> None:
    """The folder of examples is found."""
    assert EXAMPLES
