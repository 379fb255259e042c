"""Plates, bent parts, templates and the assembly of every example, in both units and on both small papers."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import get_args

import pytest

from tommybar.design import load_design
from tommybar.pack.assembled.sheet import assembly_sheets, framed
from tommybar.pack.drawing import part_drawing
from tommybar.pack.imprint import Angle
from tommybar.pack.sheet import Sheet
from tommybar.pack.template.sheet import template_sheets
from tommybar.pack.units import Reader
from tommybar.shapes.features import TurnedShape

from ..handmade import IMPRINT
from ..layout import LINES, clashes

EXAMPLES = sorted((Path(__file__).resolve().parents[3] / "examples").glob("*/design.yaml"))


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.parent.name)
def test_an_example_is_drawn_without_a_collision(path: Path) -> None:
    """No word of any sheet touches a word, a line or hatching, nor runs off the paper."""
    design = load_design(path).sized()
    found: list[str] = []
    for unit, paper, angle in (("mm", "A4", "first"), ("in", "Letter", "third"), ("in", "A4", "first")):
        assert angle in get_args(Angle)
        imprint = replace(IMPRINT, reader=Reader(unit), paper=paper, angle=angle)  # type: ignore[arg-type]
        sheets: list[Sheet] = framed(assembly_sheets(design, imprint), imprint, (1, 9))
        for part in design.parts:
            if part.shape is not None and not isinstance(part.shape, TurnedShape):
                sheets += [part_drawing(part, design, imprint), *template_sheets(part, imprint)]
        found += [clash for sheet in sheets for clash in clashes(sheet, LINES)]

    assert found == []
