"""Part drawings: nothing overlaps, the dimensions are the model's, files repeat byte for byte."""

from __future__ import annotations

import io
import re
import xml.etree.ElementTree as ET
from pathlib import Path

import ezdxf
import pytest

from tommybar import load_design
from tommybar.design.model import Part
from tommybar.pack.drawing import part_drawing
from tommybar.pack.dxf import dxf_text
from tommybar.pack.imprint import Imprint
from tommybar.pack.lettering import has_glyphs
from tommybar.pack.sheet import Dimension, Sheet
from tommybar.pack.svg import svg_text
from tommybar.pack.units import Reader

from .handmade import BASE, DESIGN, IMPRINT, MADE_PARTS, PILLAR, SHAFT, WHEEL
from .layout import LINES, clashes, texts

INCHES = Imprint(
    IMPRINT.title, "A", IMPRINT.plan_id, 0.76, "a bench with a name of some length", Reader("in")
)


def drawn(part: Part, imprint: Imprint = IMPRINT) -> Sheet:
    """The drawing of a part."""
    return part_drawing(part, DESIGN, imprint, (2, 31))


@pytest.mark.parametrize("imprint", [IMPRINT, INCHES], ids=["mm", "inch"])
@pytest.mark.parametrize("part", MADE_PARTS, ids=lambda part: part.name)
def test_no_words_lie_on_words_on_a_line_or_on_hatching(part: Part, imprint: Imprint) -> None:
    """The boxes of all texts are measured: none meets another, a line of any kind, hatching or the edge."""
    assert clashes(drawn(part, imprint), LINES) == []


@pytest.mark.parametrize("part", MADE_PARTS, ids=lambda part: part.name)
def test_every_character_stands_in_the_shipped_font(part: Part) -> None:
    """No character falls back to a font whose widths we have not measured."""
    assert [one.words for one in texts(drawn(part)) if not has_glyphs(one.words)] == []


@pytest.mark.parametrize("part", MADE_PARTS, ids=lambda part: part.name)
def test_dxf_is_sound_and_measures_what_the_model_says(part: Part) -> None:
    """The file passes ezdxf's audit without errors, and each true dimension measures the model's figure."""
    sheet = drawn(part)
    text = dxf_text(sheet)
    document = ezdxf.read(io.StringIO(text))
    measured = sorted(float(one.get_measurement()) for one in document.modelspace().query("DIMENSION"))
    wanted = sorted(one.value for one in sheet.marks if isinstance(one, Dimension))

    assert document.audit().errors == []
    assert measured == pytest.approx(wanted, abs=1e-6)
    assert len(wanted) >= 3


def test_the_overall_sizes_of_the_wheel_are_all_dimensioned() -> None:
    """Each diameter and each distance from face A of the wheel stands on its drawing once."""
    values = {(one.along, round(one.value, 3)) for one in drawn(WHEEL).marks if isinstance(one, Dimension)}

    assert values == {
        ("y", 90.0), ("y", 26.0), ("y", 70.0), ("y", 10.0),
        ("x", 14.0), ("x", 19.0), ("x", 24.0),
    }  # fmt: skip


def test_limits_are_written_in_figures() -> None:
    """The shaft's journals carry their zone and, below it, both limits."""
    words = [one.words for one in texts(drawn(SHAFT))]

    assert words.count("Ø8 f7") == 2
    assert words.count("7.972–7.987") == 2
    assert "9.985–10.000" in words


def test_holes_of_a_plate_are_listed_by_coordinates() -> None:
    """Few holes get dimensions from the corner, many a table of places; their letters say what they are."""
    words = [one.words for one in texts(drawn(PILLAR))]

    assert "Ø12 H7 (12.000–12.018) through" in words
    assert {"66", "15"} <= set(words)
    assert any("M5 thread 12 deep" in one.words for one in texts(drawn(BASE)))


def test_the_check_bar_is_fifty_millimetres_in_print() -> None:
    """Ticks of the bar stand 50 mm apart on the sheet itself, whatever the drawing's scale."""
    svg = svg_text(drawn(SHAFT))
    bar = re.search(r'M(\d+\.?\d*) ([\d.]+)L(\d+\.?\d*) \2" fill="none" class="thick"/>', svg)

    assert 'width="297mm"' in svg and 'viewBox="0 0 297 210"' in svg
    bars = [
        (float(m[3]) - float(m[1]))
        for m in re.finditer(r'M([\d.]+) ([\d.]+)L([\d.]+) \2" fill="none" class="thick"', svg)
    ]
    assert bar is not None
    assert 50.0 in bars


@pytest.mark.parametrize("part", [WHEEL, BASE], ids=lambda part: part.name)
def test_the_same_part_gives_the_same_bytes(part: Part) -> None:
    """SVG and DXF repeat byte for byte, and the SVG is well-formed."""
    first, second = drawn(part), drawn(part)

    assert svg_text(first) == svg_text(second)
    assert dxf_text(first) == dxf_text(second)
    assert ET.fromstring(svg_text(first)).tag.endswith("svg")


def test_a_view_too_small_to_read_goes_to_larger_paper():
    """The jockey's drum in inches on Letter would be drawn at 1:10, 9 mm high; on Tabloid it is not."""
    folder = Path(__file__).parents[2] / "examples"
    design = load_design(folder / "rope-drive-jockey" / "design.yaml").sized()
    drum = design.part("drum")

    sheet = part_drawing(drum, design, Imprint("jockey", "A", "0", 1.0, "", Reader("in"), "Letter"))

    assert 100 * sheet.scale >= 35
    assert sheet.width > 400
