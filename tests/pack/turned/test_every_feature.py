"""Sheets of parts with every turned feature: each figure stands once, nothing lies on anything, files measure true."""

from __future__ import annotations

import io
from collections import Counter
from dataclasses import fields, replace
from functools import cache

import ezdxf
import pytest
from tests.pack.handmade import DESIGN, IMPRINT
from tests.pack.layout import LINES, clashes, scaled, texts
from tests.pack.turned.vocabulary import VOCABULARY

from tommybar.design.model import Part
from tommybar.pack.drawing import part_drawing
from tommybar.pack.dxf import dxf_text
from tommybar.pack.imprint import Imprint
from tommybar.pack.sheet import Angular, Dimension, Radial, Sheet
from tommybar.pack.svg import svg_text
from tommybar.pack.turned.outside import outside_callouts
from tommybar.pack.units import INCH, Reader
from tommybar.shapes.features import Bore, Cone, Cylinder, Dim, Flats, Groove, TurnedShape

PAPERS = [
    replace(IMPRINT, reader=Reader(unit), paper=paper)  # type: ignore[arg-type]
    for unit in ("mm", "in")
    for paper in ("A4", "Letter")
]
parts = pytest.mark.parametrize("part", VOCABULARY, ids=lambda part: part.name)
papers = pytest.mark.parametrize("imprint", PAPERS, ids=lambda one: f"{one.reader.unit}-{one.paper}")
BY_NEIGHBOURS = {"start_dia", "end_dia"}  # said by the land beside them, or nought at a point
SAID_OTHERWISE = {
    "Cylinder": {"edge_angle", "edge_end_angle"},
    "Engraving": {"over"},
    "CrossHole": {"walls", "angle"},
    "Keyway": {"angle"},
    "Slit": {"walls", "angle"},
    "CrossSlot": {"angle"},
    "HeadSlot": {"angle"},
}
PLACES = {"start", "end", "z"}


@cache
def drawn(part: Part, imprint: Imprint = IMPRINT) -> Sheet:
    """The drawing of a part."""
    return part_drawing(part, DESIGN, imprint)


def features_of(shape: TurnedShape) -> list[object]:
    """Every feature of a part."""
    return [one for field in fields(shape) if field.name != "length" for one in getattr(shape, field.name)]


@papers
@parts
def test_no_word_touches_a_word_a_line_or_hatching(part: Part, imprint: Imprint) -> None:
    """Measured by the boxes of all words against each other and against every stretch of line."""
    assert clashes(drawn(part, imprint), LINES) == []


@parts
def test_every_figure_of_every_feature_is_printed(part: Part) -> None:
    """Each figure that a feature has in the model is among the printed ones of that feature."""
    assert isinstance(part.shape, TurnedShape)
    printed = drawn(part).dimensions()
    said = {
        name: [one.value for one in printed if one.feature == name]
        for name in {one.feature for one in printed}
    }
    missing = []
    for feature in features_of(part.shape):
        name = feature.name  # type: ignore[attr-defined]
        for field in fields(feature):  # type: ignore[arg-type]
            value = getattr(feature, field.name)
            value = value.value if isinstance(value, Dim) else value
            if field.name in BY_NEIGHBOURS | PLACES or not isinstance(value, float | int):
                continue
            if isinstance(value, bool) or value == 0 or field.name in _derived(feature):
                continue
            if not any(abs(value - one) < 1e-9 for one in said.get(name, [])):
                missing.append(f"{name}.{field.name} {value}")
    assert missing == []


def _derived(feature: object) -> set[str]:
    """Fields that are no size of their own there: clocking without an end view, what another figure says."""
    if isinstance(feature, Flats):
        return {"level"} if feature.across is not None else set()
    if isinstance(feature, Bore):
        return {"depth"} if feature.through else set()
    return SAID_OTHERWISE.get(type(feature).__name__, set())


@parts
def test_every_place_along_the_axis_is_printed_once_from_face_a(part: Part) -> None:
    """All ends of lands have their distance from face A; one end of a cone of three other figures has none."""
    assert isinstance(part.shape, TurnedShape)
    lengths = [one for one in drawn(part).dimensions() if one.kind == "length" and one.datum == "face A"]
    places = Counter((one.words, round(one.value, 6)) for one in lengths)
    whole = part.shape.length.value
    loose = [one for one in part.shape.outside if isinstance(one, Cone) and one.given == "D d a"]
    free = {one.start if one.end == whole else one.end for one in loose}
    wanted = {round(one.end, 6) for one in part.shape.outside if one.end not in free}

    assert wanted <= {value for _, value in places}
    assert len(places) == len({value for _, value in places})


@papers
@parts
def test_nothing_is_printed_twice_and_all_of_it_stands_on_the_sheet(part: Part, imprint: Imprint) -> None:
    """Every kept line is a text of the sheet, every figure a piece of its line, no size of a feature kept twice."""
    sheet = drawn(part, imprint)
    words = {one.words for one in texts(sheet)}
    lines = " ".join(one.words for one in texts(sheet))
    kept = sheet.dimensions()
    twice = [key for key, count in Counter((one.feature, one.size) for one in kept).items() if count > 1]

    assert twice == []
    assert [one for one in kept if one.words not in words and not _wrapped(one.words, lines)] == []
    assert [one for one in kept if one.unit and one.figure not in one.words] == []
    assert [one for one in kept if one.limits and not all(limit in lines for limit in one.limits)] == []


def _wrapped(line: str, lines: str) -> bool:
    return line in lines


@papers
@parts
def test_printed_figures_are_the_model_within_half_a_last_digit(part: Part, imprint: Imprint) -> None:
    """Figures in the reader's unit, limits never outside those of the model."""
    for one in drawn(part, imprint).dimensions():
        if one.unit not in ("mm", "in", "deg"):
            continue
        scale = INCH if one.unit == "in" else 1.0
        half = 0.5 * 10.0 ** -len(one.figure.partition(".")[2]) if "." in one.figure else 0.5
        assert abs(float(one.figure) * scale - one.value) <= half * scale + 1e-9, one


@pytest.mark.parametrize("unit", ["mm", "in"])
@parts
def test_the_dxf_is_sound_and_every_dimension_measures_the_part(part: Part, unit: str) -> None:
    """The file passes the audit; linear, diameter, radius and angular entities measure the model's figures."""
    sheet = drawn(part, replace(IMPRINT, reader=Reader(unit)))  # type: ignore[arg-type]
    text = dxf_text(sheet)
    document = ezdxf.read(io.StringIO(text))
    turn = INCH if unit == "in" else 1.0
    measured = sorted(
        float(one.get_measurement()) * scaled(one) for one in document.modelspace().query("DIMENSION")
    )
    wanted = sorted(
        one.value if isinstance(one, Angular) else one.value / turn
        for one in sheet.marks
        if isinstance(one, Dimension | Radial | Angular)
    )

    assert document.audit().errors == []
    assert measured == pytest.approx(wanted, abs=1e-6)
    assert document.units == (ezdxf.units.IN if unit == "in" else ezdxf.units.MM)
    assert text == dxf_text(sheet)


@parts
def test_arcs_are_arcs_in_both_files(part: Part) -> None:
    """Every arc of the outline reaches SVG and DXF as an arc, not as chords."""
    assert isinstance(part.shape, TurnedShape)
    curved = [one for one in part.shape.outside if type(one).__name__ == "Arc"]
    sheet = drawn(part)
    document = ezdxf.read(io.StringIO(dxf_text(sheet)))
    radii = [one.dxf.radius for one in document.modelspace().query("ARC")]

    for one in curved:
        assert sum(abs(radius - one.radius) < 1e-6 for radius in radii) >= 2, one.name
        figure = f"{one.radius * sheet.scale:.2f}".rstrip("0").rstrip(".")
        assert f"A{figure} {figure} 0" in svg_text(sheet)


@pytest.mark.parametrize("unit", ["mm", "in"])
def test_figures_of_a_groove_in_a_detail_are_dimensions_of_it(unit: str) -> None:
    """The spindle's ring groove of 1.1 x 9 with room in a detail only: a width between arrows, a pointed diameter."""
    part = next(one for one in VOCABULARY if one.name == "spindle")
    sheet = drawn(part, replace(IMPRINT, reader=Reader(unit)))  # type: ignore[arg-type]
    found = [one for one in sheet.marks if isinstance(one, Dimension) and one.view]
    document = ezdxf.read(io.StringIO(dxf_text(sheet)))
    turn = INCH if unit == "in" else 1.0
    measured = [
        float(one.get_measurement()) * scaled(one) for one in document.modelspace().query("DIMENSION")
    ]

    assert {round(one.value, 6) for one in found} >= {1.1, 9.0}
    for one in found:
        assert any(abs(figure - one.value / turn) < 1e-9 for figure in measured), one.value
        drawn_long = abs(one.b[0] - one.a[0]) if one.along == "x" else abs(one.b[1] - one.a[1])
        assert drawn_long == pytest.approx(one.value * one.view)
    widths = [one for one in found if one.along == "x"]
    assert [one.pointed for one in widths] == [False] * len(widths)


def test_a_vee_groove_is_measured_where_it_is_as_wide_as_said() -> None:
    """1 wide and 0.5 deep in a bar of 20: both ends of the width lie on the bar's surface, 10 from the axis."""
    shape = TurnedShape(
        Dim(60.0), (Cylinder("bar", Dim(20.0), 0, 60),), grooves=(Groove("vee", 30, 31, 19.0, form="vee"),)
    )
    callout = next(one for one in outside_callouts(shape, Reader()) if one.feature == "vee")

    assert callout.detailed is not None
    assert (callout.detailed.start, callout.detailed.end) == ((30, 10.0), (31, 10.0))
    assert callout.detailed.width == "1"
