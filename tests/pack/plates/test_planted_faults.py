"""Faults planted in the views of plates: a figure left out, one that is wrong, a view that is moved."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tommybar.design.model import Part
from tommybar.pack.audit.comparing import audited, faults_of
from tommybar.pack.drawing import part_drawing
from tommybar.pack.sheet import Dimension, Sheet
from tommybar.shapes.features import Dim, PlateShape, Slot

from ..handmade import DESIGN, IMPRINT
from ..layout import texts
from .handmade import BED, FLANGE, GUSSET, LINK, SLIDE

LARGE = replace(IMPRINT, paper="A3")  # where nothing is crowded
PARTS = (SLIDE, LINK, GUSSET, BED, FLANGE)


def drawn(part: Part) -> Sheet:
    """The sheet on large paper."""
    return part_drawing(part, DESIGN, LARGE)


@pytest.mark.parametrize("part", PARTS, ids=lambda part: part.name)
def test_a_good_sheet_has_no_fault(part: Part) -> None:
    """Everything is printed once and right."""
    assert audited(part, drawn(part)).faults == ()


@pytest.mark.parametrize("part", PARTS, ids=lambda part: part.name)
def test_each_figure_left_out_of_a_view_is_missed(part: Part) -> None:
    """Without any one of them the plate cannot be built."""
    printed = drawn(part).dimensions()
    assert part.shape is not None
    for one in printed:
        if one.kind in ("position", "form"):
            continue
        left = tuple(other for other in printed if other is not one)
        assert faults_of(part.shape, left), (one.feature, one.size)


@pytest.mark.parametrize("part", PARTS, ids=lambda part: part.name)
def test_each_figure_wrong_by_a_tenth_is_found(part: Part) -> None:
    """A tenth more than the model says."""
    printed = drawn(part).dimensions()
    assert part.shape is not None
    for n, one in enumerate(printed):
        if one.unit == "" or one.kind == "position":
            continue
        wrong = replace(one, figure=f"{float(one.figure) + 0.1:g}")
        changed = (*printed[:n], wrong, *printed[n + 1 :])
        assert faults_of(part.shape, changed), (one.feature, one.size)


def test_a_dimension_that_is_taken_off_the_paper_is_found() -> None:
    """The place of the slot is kept as printed and its dimension is not drawn."""
    sheet = drawn(SLIDE)
    bare = replace(
        sheet, marks=[one for one in sheet.marks if not (isinstance(one, Dimension) and one.value == 44.0)]
    )

    assert ("not on the sheet", "slot", "y") in [
        (one.kind, one.feature, one.size) for one in audited(SLIDE, bare).faults
    ]


@pytest.mark.parametrize("angle", [0.0, 90.0])
def test_a_slot_along_either_edge_is_told_with_how_it_lies(angle: float) -> None:
    """One that stands square to the length is drawn, and its angle said, so that nothing is left to be read off a picture."""
    slots = (Slot("window", "top", 60.0, 25.0, 16.0, Dim(6.0), None, angle),)
    part = Part("base", "plate", "mild steel", 1, PlateShape(Dim(80.0), Dim(50.0), Dim(10.0), slots=slots))
    sheet = drawn(part)

    assert audited(part, sheet).faults == ()
    assert any("at 90° to the length" in one.words for one in texts(sheet)) == (angle == 90.0)
