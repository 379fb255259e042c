"""Engraved lines that radiate from a place: drawn, told, built again from what is printed, and on a card."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from tommybar.design.loaded import design_from_text
from tommybar.design.model import Part
from tommybar.pack.audit.comparing import audited
from tommybar.pack.drawing import part_drawing
from tommybar.pack.plates.views import ray_marks
from tommybar.pack.sheet import Line
from tommybar.pack.units import Reader
from tommybar.refusals import Refusal
from tommybar.shapes.features import PlateShape

from ..handmade import DESIGN, IMPRINT
from ..layout import clashes, texts

TEXT = """tommybar: 1
design: Fan
units: mm
parts:
  dial:
    material: free-cutting brass
    plate:
      length: 100
      width: 80
      thick: 3
      rays:
        - {name: fan, at: [20, 40], inner: 30, outer: 36, angles: [ANGLES], words: [WORDS]}
"""
ANGLES, WORDS = "60 deg, 0 deg, -33.69 deg", '"9", "12", "3"'


def dial(angles: str = ANGLES, words: str = WORDS) -> Part:
    """A plate with a fan of lines."""
    text = TEXT.replace("ANGLES", angles).replace("WORDS", words)
    return design_from_text(text).sized().part("dial")


def test_each_line_is_drawn_where_it_is() -> None:
    """From the place at (20, 40): at 0 deg from x = 50 to 56, at 60 deg its end 36 sin 60 further up."""
    shape = dial().shape
    assert isinstance(shape, PlateShape)
    lines = [one.points for one in ray_marks(shape, 0.5) if isinstance(one, Line)]
    assert lines[1] == ((25.0, -20.0), (28.0, -20.0))
    assert lines[0][1] == pytest.approx((19.0, -(20 + 18 * math.sin(math.radians(60)))), abs=1e-3)


@pytest.mark.parametrize("unit", ["mm", "in"])
@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_the_sheet_tells_all_of_it_and_nothing_lies_on_anything(unit: str, paper: str) -> None:
    """Words and angles stand on the sheet, and the part is built again from its figures alone."""
    part = dial()
    sheet = part_drawing(part, DESIGN, replace(IMPRINT, paper=paper, reader=Reader(unit)))  # type: ignore[arg-type]
    words = " ".join(one.words for one in texts(sheet))
    assert "-33.69°" in words and '"12"' in words
    assert clashes(sheet) == []
    assert audited(part, sheet).faults == ()


def test_an_angle_that_is_printed_wrong_is_found() -> None:
    """Planted: the sheet of one fan held against a part with another."""
    sheet = part_drawing(dial(), DESIGN, IMPRINT)
    other = audited(dial(angles="60 deg, 1 deg, -33.69 deg"), sheet)
    assert [(one.kind, one.feature, one.size) for one in other.faults] == [("wrong", "fan", "angle 2")]


@pytest.mark.parametrize(
    ("angles", "words", "told"),
    [
        ("60 deg, 0 deg", WORDS, "There are 2 lines and 3 words"),
        ("60 deg, 180 deg, 0 deg", WORDS, "ends at (-16, 40) mm; the face is 100 x 80 mm"),
    ],
)
def test_a_fan_that_cannot_be_is_refused_with_its_figures(angles: str, words: str, told: str) -> None:
    """36 out of (20, 40) to the left is 16 off the plate."""
    with pytest.raises(Refusal) as refused:
        dial(angles, words)
    assert told in str(refused.value)
