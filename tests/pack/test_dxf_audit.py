"""The drawing files of every part of the examples: sound, measuring what is printed, legible, alike in both forms."""

from __future__ import annotations

import io
import math
import re
from pathlib import Path

import ezdxf
import pytest
from ezdxf.document import Drawing
from tests.audit.conftest import DESIGNS, READERS, name_of, sheets_of
from tests.pack.layout import scaled

from tommybar.facts.threads import thread
from tommybar.pack.dxf import WEIGHTS, dxf_text
from tommybar.pack.imprint import PaperName
from tommybar.pack.sheet import Angular, Dimension, Radial, Sheet
from tommybar.pack.svg import svg_text
from tommybar.pack.units import INCH, rounding_bound

designs = pytest.mark.parametrize("path", DESIGNS, ids=name_of)
readers = pytest.mark.parametrize(("unit", "paper"), READERS, ids=[f"{u}-{p}" for u, p in READERS])
Box = tuple[float, float, float, float]
LEAST_CAPITALS = 1.8  # height of the smallest capitals on paper; smallest of ISO 3098-1, from memory [mm]


def read_back(sheet: Sheet, kept: dict[int, Drawing] = {}) -> Drawing:  # noqa: B006 (kept over the tests)
    """The sheet's DXF as a drawing program reads it."""
    if id(sheet) not in kept:
        kept[id(sheet)] = ezdxf.read(io.StringIO(dxf_text(sheet)))
    return kept[id(sheet)]


def of_a_thread(words: str) -> tuple[float, ...]:
    """What is measured at a dimension that names a thread: its major diameter or that of the drill [mm]."""
    named = re.match(r"(?:\d+ × )?((?:M[\d.]+(?:x[\d.]+)?|\d+/\d+[- ]?\d* ?[A-Z]+|\d+ BA|G\d\S*))", words)
    if named is None:
        return ()
    size = thread(named[1].strip())
    return size.major, size.tapping_drill


def printed_figures(words: str, turn: float) -> list[tuple[float, float]]:
    """The figures in the words of a dimension, each with what it may be off: half of 0.001, or by its rounding."""
    found = []
    for figure in re.findall(
        r"(?<![\w.])\d+(?:\.\d+)?(?![\w.])", re.sub(r"\\P|%%c|%%p|%%d|[ØR°]|SR", " ", words)
    ):
        decimals = len(figure.partition(".")[2])
        fine = 0.5 * 10.0 ** -max(decimals, 3)
        coarse = min(0.5 * 10.0**-decimals, rounding_bound(float(figure) * turn) / turn)
        found.append((float(figure), max(fine, coarse if "°" not in words else 0.0) + 1e-9))
    return found


@readers
@designs
def test_each_file_is_sound_and_each_dimension_measures_the_figure_that_it_bears(
    path: Path, unit: str, paper: PaperName
) -> None:
    """Checked by a drawing library: its audit is silent, and what it measures is what stands there and is true."""
    for part, sheet in sheets_of(path, unit, paper):
        document = read_back(sheet)
        marks = [one for one in sheet.marks if isinstance(one, Dimension | Radial | Angular)]
        entities = list(document.modelspace().query("DIMENSION"))
        printed = sheet.dimensions()

        assert document.audit().errors == [], part.name
        assert document.units == (ezdxf.units.IN if unit == "in" else ezdxf.units.MM)
        assert len(entities) == len(marks)
        for mark, entity in zip(marks, entities, strict=True):
            measured = float(entity.get_measurement()) * scaled(entity)
            words = entity.dxf.text
            turn = INCH if unit == "in" and not isinstance(mark, Angular) else 1.0
            screw = [one / turn for one in of_a_thread(words)]
            if not screw:  # a thread is named, not measured
                near = [off for figure, off in printed_figures(words, turn) if abs(figure - measured) <= off]
                assert near, (part.name, words, measured)
            true = [one.value / (1.0 if one.unit == "deg" else turn) for one in printed]
            if not words.startswith("("):  # in brackets, for reference: it follows from others
                assert min(abs(one - measured) for one in (*true, *screw)) < 1e-6, (
                    part.name,
                    words,
                    measured,
                )


@readers
@designs
def test_lines_stand_on_their_layers_and_words_are_legible(path: Path, unit: str, paper: PaperName) -> None:
    """Every layer is there and nothing lies on another; capitals are no smaller than a pen can draw them."""
    for part, sheet in sheets_of(path, unit, paper):
        document = read_back(sheet)
        space = document.modelspace()
        paper_scale = sheet.scale * (INCH if unit == "in" else 1.0)

        assert {layer.dxf.name for layer in document.layers} >= set(WEIGHTS)
        assert {one.dxf.layer for one in space} <= set(WEIGHTS)
        assert {one.dxf.layer for one in space.query("DIMENSION")} <= {"DIMENSIONS"}
        assert {one.dxf.layer for one in space.query("TEXT")} == {"TEXT"}
        assert {one.dxf.layer for one in space.query("ARC CIRCLE LINE LWPOLYLINE")} >= {"OUTLINE", "FRAME"}
        blocks = [
            one for entity in space.query("DIMENSION") for one in entity.get_geometry_block().query("TEXT")
        ]
        heights = [one.dxf.height * paper_scale for one in (*space.query("TEXT"), *blocks)]
        assert min(heights) >= LEAST_CAPITALS, part.name


def _grown(boxes: list[Box]) -> Box:
    return (
        min(b[0] for b in boxes), min(b[1] for b in boxes), max(b[2] for b in boxes), max(b[3] for b in boxes),
    )  # fmt: skip


def _sweep(x: float, y: float, r: float, first: float, last: float) -> Box:
    """The box of an arc from ``first`` counter-clockwise, y up, to ``last`` [deg]."""
    last = first + (last - first) % 360.0
    turns = [first, last, *(q for q in range(-720, 1081, 90) if first < q < last)]
    spots = [(x + r * math.cos(math.radians(t)), y + r * math.sin(math.radians(t))) for t in turns]
    return (
        min(p[0] for p in spots),
        min(p[1] for p in spots),
        max(p[0] for p in spots),
        max(p[1] for p in spots),
    )


def dxf_lines(sheet: Sheet) -> dict[str, list[Box]]:
    """Boxes of outlines, arcs and circles in the file, on paper with y down [mm]."""
    scale = sheet.scale * (INCH if sheet.unit == "in" else 1.0)
    found: dict[str, list[Box]] = {}
    for one in read_back(sheet).modelspace().query("LINE LWPOLYLINE ARC CIRCLE"):
        if one.dxf.layer not in ("OUTLINE", "CENTRE", "HIDDEN", "FRAME"):
            continue
        if one.dxftype() == "LINE":
            spots = [one.dxf.start, one.dxf.end]
            box = _grown([(p[0], p[1], p[0], p[1]) for p in spots])
        elif one.dxftype() == "LWPOLYLINE":
            box = _grown([(p[0], p[1], p[0], p[1]) for p in one.get_points("xy")])
        elif one.dxftype() == "ARC":
            box = _sweep(*one.dxf.center.vec2, one.dxf.radius, one.dxf.start_angle, one.dxf.end_angle)
        else:
            x, y, r = *one.dxf.center.vec2, one.dxf.radius
            box = (x - r, y - r, x + r, y + r)
        down = (
            box[0] * scale, sheet.height - box[3] * scale, box[2] * scale, sheet.height - box[1] * scale,
        )  # fmt: skip
        found.setdefault(one.dxf.layer, []).append(down)
    return found


def svg_lines(text: str) -> dict[str, list[Box]]:
    """Boxes of what the picture strokes outside of dimensions, by the layer its pen belongs to [mm]."""
    layers = {
        "thick": "OUTLINE",
        "cut": "OUTLINE",
        "chain": "CENTRE",
        "dashed": "HIDDEN",
        "heavy": "FRAME",
        "rule": "FRAME",
    }
    text = re.sub(r"<g>.*?</g>", "", text, flags=re.S)
    found: dict[str, list[Box]] = {}
    for tag in re.findall(r"<(?:path|circle)[^>]*>", text):
        pen = re.search(r'class="(\w+)"', tag)
        if pen is None or pen[1] not in layers:
            continue
        boxes = found.setdefault(layers[pen[1]], [])
        if tag.startswith("<circle"):
            x, y, r = (float(value) for value in re.findall(r'(?:cx|cy| r)="([-\d.]+)"', tag))
            boxes.append((x - r, y - r, x + r, y + r))
            continue
        way = re.search(r' d="([^"]*)"', tag)
        assert way is not None
        for piece in way[1].split("M")[1:]:
            arc = re.match(r"([-\d.]+) ([-\d.]+)A([\d.]+) [\d.]+ 0 ([01]) 0 ([-\d.]+) ([-\d.]+)$", piece)
            if arc:
                boxes.append(_svg_arc(*(float(one) for one in arc.groups())))
                continue
            spots = [tuple(map(float, p.split())) for p in re.split("[LZ]", piece) if p.strip()]
            boxes.append(_grown([(x, y, x, y) for x, y in spots]))
    return found


def _svg_arc(x1: float, y1: float, r: float, wide: float, x2: float, y2: float) -> Box:
    """The box of an arc drawn counter-clockwise as seen, from its ends and radius."""
    (px, py), (qx, qy) = (x1, -y1), (x2, -y2)  # y up, where it runs counter-clockwise
    long = math.dist((px, py), (qx, qy)) or 1.0
    rise = math.sqrt(max(r * r - long * long / 4, 0.0)) * (-1.0 if wide else 1.0)
    cx, cy = (px + qx) / 2 - (qy - py) / long * rise, (py + qy) / 2 + (qx - px) / long * rise
    first, last = (math.degrees(math.atan2(y - cy, x - cx)) for x, y in ((px, py), (qx, qy)))
    low = _sweep(cx, cy, r, first, last)
    return low[0], -low[3], low[2], -low[1]


@designs
def test_picture_and_drawing_file_show_the_same_lines(path: Path) -> None:
    """Outline, centre lines, hidden lines and frame reach equally far in both, within 0.05 mm on paper."""
    for part, sheet in sheets_of(path, "mm", "A4"):
        drawn, seen = dxf_lines(sheet), svg_lines(svg_text(sheet))

        assert set(drawn) == set(seen)
        for layer, boxes in drawn.items():
            assert len(boxes) == len(seen[layer]), (part.name, layer)
            assert _grown(boxes) == pytest.approx(_grown(seen[layer]), abs=0.05), (part.name, layer)
            for one, other in zip(boxes, seen[layer], strict=True):
                assert one == pytest.approx(other, abs=0.05), (part.name, layer)
