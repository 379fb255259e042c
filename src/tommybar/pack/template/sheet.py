"""Template sheets at 1:1: one, or as many as the plate needs, with marks to bring them together by."""

from __future__ import annotations

import math
from collections.abc import Iterable

from tommybar.design.model import Part
from tommybar.pack.imprint import Imprint
from tommybar.pack.lettering import wrapped
from tommybar.pack.paper import SIZES
from tommybar.pack.plates.letters import Wanted, letter_marks
from tommybar.pack.sheet import Kind, Line, Mark, Sheet, Text
from tommybar.pack.template.drawn import Face, Run, face_of
from tommybar.pack.units import INCH
from tommybar.shapes.features import PlateShape, SheetShape

MARGIN = 12.0  # of the paper, which most printers leave white [mm]
FOOT = 30.0  # for the words and the level bar [mm]
SIDE = 16.0  # for the upright bar [mm]
OVER = 8.0  # how far a sheet is drawn past its line, to be glued under the next one [mm]
MATCH = 4.0  # half the size of a match mark [mm]
NOTE = 3.7


def template_sheets(part: Part, imprint: Imprint) -> list[Sheet]:
    """The template of a plate or of a flat blank; none for a part that has no face to glue paper on."""
    if not isinstance(part.shape, PlateShape | SheetShape):
        return []
    face = face_of(part.shape)
    paper_wide, paper_high = SIZES[imprint.paper]
    wide, high = paper_wide - 2 * MARGIN - SIDE, paper_high - 2 * MARGIN - FOOT
    columns, rows = pages_for(face.width, wide), pages_for(face.height, high)
    made: list[Sheet] = []
    for row in range(rows):
        for column in range(columns):
            sheet = Sheet(f"template {part.name}", paper_wide, paper_high, unit=imprint.reader.unit)
            _page(sheet, face, (column, row), (columns, rows), (wide, high))
            _foot(sheet, part, imprint, row * columns + column + 1, rows * columns)
            made.append(sheet)
    return made


def pages_for(size: float, room: float) -> int:
    """How many pages a face of a size needs along one side [mm].

    Examples
    --------
    >>> pages_for(200.0, 250.0), pages_for(260.0, 250.0)
    (1, 2)
    """
    return 1 if size <= room else math.ceil((size - OVER) / (room - OVER))


def _page(
    sheet: Sheet, face: Face, at: tuple[int, int], of: tuple[int, int], room: tuple[float, float]
) -> None:
    """One page: what lies in its window of the face, its cutting lines and their match marks."""
    (column, row), (columns, rows), (wide, high) = at, of, room
    x0 = (face.width - wide) / 2 if columns == 1 else column * (wide - OVER)
    y0 = (face.height - high) / 2 if rows == 1 else row * (high - OVER)
    left, bottom = MARGIN, sheet.height - MARGIN - FOOT

    def paper(point: tuple[float, float]) -> tuple[float, float]:
        return round(left + point[0] - x0, 4), round(bottom - (point[1] - y0), 4)

    window = (x0, y0, x0 + wide, y0 + high)
    marks: list[Mark] = []
    kinds: tuple[tuple[Iterable[Run], Kind], ...] = (
        (face.outline, "rule"), (face.rims, "thin"), (face.crosses, "thin"),
    )  # fmt: skip
    for runs, kind in kinds:
        marks += [Line(tuple(map(paper, one)), kind) for run in runs for one in within_window(run, window)]
    wanted: list[Wanted] = []
    cuts = [k * (wide - OVER) for k in range(1, columns) if x0 - 1e-6 <= k * (wide - OVER) <= x0 + wide]
    for x in cuts:
        number = round(x / (wide - OVER))
        marks += _cut(paper((x, y0)), paper((x, y0 + high)), f"c{number}", row, wanted)
    levels = [k * (high - OVER) for k in range(1, rows) if y0 - 1e-6 <= k * (high - OVER) <= y0 + high]
    for y in levels:
        number = round(y / (high - OVER))
        marks += _cut(paper((x0, y)), paper((x0 + wide, y)), f"r{number}", column, wanted)
    for name, x, y, radius in face.names:
        if window[0] <= x <= window[2] and window[1] <= y <= window[3]:
            wanted.append((name, paper((x, y)), radius))
    sheet.add(*marks, *letter_marks(wanted, marks))


def within_window(run: Run, window: tuple[float, float, float, float]) -> list[Run]:
    """The parts of a run that lie in a window."""
    from shapely import LineString, clip_by_rect

    found = clip_by_rect(LineString(run), *window)
    parts = list(getattr(found, "geoms", [found]))
    return [tuple(one.coords) for one in parts if one.geom_type == "LineString" and len(one.coords) > 1]


def _cut(
    a: tuple[float, float], b: tuple[float, float], name: str, other: int, names: list[Wanted]
) -> list[Mark]:
    """A cutting line, and on it two crosses that stand on the neighbour as well; their names go to ``names``."""
    marks: list[Mark] = [Line((a, b), "chain")]
    for n, share in enumerate((0.2, 0.8)):
        x, y = a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])
        names.append((f"{name}.{2 * other + n + 1}", (x, y), MATCH))
        marks += [
            Line(((x - MATCH, y - MATCH), (x + MATCH, y + MATCH)), "rule"),
            Line(((x - MATCH, y + MATCH), (x + MATCH, y - MATCH)), "rule"),
        ]
    return marks


def _foot(sheet: Sheet, part: Part, imprint: Imprint, number: int, count: int) -> None:
    """What it is, what to do with it, and a bar in each direction to be measured first."""
    inch = imprint.reader.unit == "in"
    bar, words = (2 * INCH, "2 in") if inch else (50.0, "50 mm")
    y = sheet.height - MARGIN
    x = MARGIN
    ring = ((x, y - 2.0), (x, y), (x + bar, y), (x + bar, y - 2.0))
    sheet.add(Line(ring, "rule"), Text((x + bar / 2, y - 1.4), words, NOTE, False, "middle"))
    right = sheet.width - MARGIN
    low = sheet.height - MARGIN - FOOT
    ring = ((right - 2.0, low), (right, low), (right, low - bar), (right - 2.0, low - bar))
    sheet.add(
        Line(ring, "rule"), Text((right - 3.0, low - bar / 2), words, NOTE, False, "middle", turned=True)
    )
    name = part.name.replace("_", " ")
    which = "flat blank" if isinstance(part.shape, SheetShape) else "top face"
    page = f", page {number} of {count}" if count > 1 else ""
    sheet.text(MARGIN, y - 22.0, f"{name}: {which} at 1:1{page}", 5.2, True)
    sheet.text(MARGIN + 145.0, y - 22.0, f"{imprint.title} · {imprint.line}", 3.2, tone="grey")
    told = (
        f"Print at 100 %. Measure both bars before you glue it on: each must be {words}, or every mark is out. "
        "It shows where to punch; sizes come from the drawing."
    )
    if count > 1:
        told += " Cut one page along its chain line and lay it so that crosses of the same name meet."
    for n, line in enumerate(wrapped(told, sheet.width - 2 * MARGIN - bar - 12.0, NOTE)):
        sheet.text(MARGIN + bar + 8.0, y - 13.0 + n * NOTE * 1.28, line, NOTE)
