"""The frame of a drawing sheet: border, title block after ISO 7200, projection symbol, check bar."""

from __future__ import annotations

import math
from dataclasses import dataclass

from tommybar.facts.drawing.general_tolerances import general_tolerance
from tommybar.pack.boxes import Box
from tommybar.pack.imprint import Angle, Imprint, PaperName
from tommybar.pack.lettering import width_of
from tommybar.pack.sheet import Arc, Line, Sheet
from tommybar.pack.units import INCH, Reader
from tommybar.pack.words import general_words

LEFT, TOP, BORDER = 20.0, 10.0, 10.0  # ISO 5457 leaves 20 for filing and 10 elsewhere [mm]
EDGE = 5.0  # kept clear inside the border [mm]
STRIP = 27.0  # height of the title block [mm]
BLOCK = 180.0  # width of the title block, ISO 7200 [mm]
LABEL, VALUE = 2.7, 4.0
PROJECTION = "the symbol of the projection"  # stands in the title block in place of words
TOLERANCE_NOTE = "Sizes without limits: ISO 2768-1, class m"
SCALES = (10.0, 5.0, 2.0, 1.0, 0.5, 0.2, 0.1, 0.05)  # ISO 5455
SIZES: dict[PaperName, tuple[float, float]] = {  # landscape, width and height [mm]
    "A4": (297.0, 210.0),  # ISO 216
    "A3": (420.0, 297.0),
    "Letter": (279.4, 215.9),  # 11 in × 8.5 in, ANSI/ASME Y14.1 size A
    "Tabloid": (431.8, 279.4),  # 17 in × 11 in, size B
}


@dataclass(frozen=True)
class Particulars:
    """What the title block says of one part besides its name."""

    material: str
    count: int
    number: tuple[int, int]  # this sheet, of so many
    drawing: str
    document: str = "part drawing"
    stock: str = ""
    mass: float | None = None  # [g]
    scaled: bool = True  # a sheet of lists has no scale


def drawing_area(paper: PaperName) -> Box:
    """Where views and notes may stand on a paper: left, top, right, bottom [mm]."""
    width, height = SIZES[paper]
    return (LEFT + EDGE, TOP + EDGE, width - BORDER - EDGE, height - BORDER - STRIP - EDGE)


def more_room(paper: PaperName) -> str:
    """What to do about a part whose sheet has no room for it on that paper.

    Examples
    --------
    >>> more_room("Letter")
    'Print it on A3 or Tabloid.'
    """
    if paper in ("A4", "Letter"):
        return "Print it on A3 or Tabloid."
    return "Divide it into two parts, or give fewer figures."


def scale_ratio(scale: float) -> str:
    """A drawing scale as ISO 5455 writes it.

    Examples
    --------
    >>> scale_ratio(2.0), scale_ratio(0.5), scale_ratio(1.0)
    ('2:1', '1:2', '1:1')
    """
    return f"{scale:g}:1" if scale >= 1 else f"1:{1 / scale:g}"


def check_bar(sheet: Sheet, x: float, y: float, reader: Reader | None = None) -> None:
    """A bar to see whether the printer kept the size, (x, y) its left end: 50 mm, or 2 in for inches."""
    inch = reader is not None and reader.unit == "in"
    step, count = (INCH / 4, 8) if inch else (10.0, 5)
    sheet.line((x, y), (x + step * count, y), kind="thick")
    for n in range(count + 1):
        ends = n in (0, count)
        reach = 2.0 if ends else 1.2
        sheet.line((x + step * n, y - reach), (x + step * n, y + reach), kind="thick" if ends else "thin")


def _projection(sheet: Sheet, x: float, y: float, angle: Angle) -> None:
    """The symbol about (x, y): the cone from the side and from its small end, right of it in first angle."""
    side, end = (x, x + 7.0) if angle == "first" else (x + 12.0, x - 5.0)
    sheet.marks.append(
        Line(
            ((side - 9, y - 1.6), (side - 1, y - 3.2), (side - 1, y + 3.2), (side - 9, y + 1.6)), "rule", True
        )
    )
    sheet.line((side - 10.5, y), (side + 0.5, y), kind="chain")
    sheet.add(Arc((end, y), 3.2, "rule"), Arc((end, y), 1.6, "rule"))
    sheet.line((end - 4.2, y), (end + 4.2, y), kind="chain")
    sheet.line((end, y - 4.2), (end, y + 4.2), kind="chain")


def _general(most: float, reader: Reader) -> str:
    """One step of the general tolerance, in inches rounded inwards."""
    words = general_words(most, reader)
    if reader.unit == "in":
        words = f"±{math.floor(general_tolerance(most, 'm') / INCH * 1e4 + 1e-9) / 1e4:g}"
        return f"to {math.floor(most / INCH * 100) / 100:g} {words}"
    return f"to {reader.length(most)} {words}"


def _fitted(words: str, width: float, size: float, bold: bool) -> tuple[str, float]:
    """Words at the size, or smaller if they must be to stand in the width."""
    wide = width_of(words, size, bold)
    return words, size if wide <= width else size * width / wide


def mass_words(grams: float | None, reader: Reader) -> str:
    """A mass as the title block says it.

    Examples
    --------
    >>> mass_words(12.345, Reader()), mass_words(1234.0, Reader("in")), mass_words(None, Reader())
    ('12.3 g', '2.72 lb', '–')
    """
    if grams is None:
        return "–"
    if reader.unit == "in":
        ounces = grams / 28.349523125  # international avoirdupois, exact
        return f"{ounces / 16:.3g} lb" if ounces >= 16 else f"{ounces:.3g} oz"
    return f"{grams / 1000:.3g} kg" if grams >= 1000 else f"{grams:.3g} g"


def drawing_frame(sheet: Sheet, imprint: Imprint, part: str, about: Particulars) -> None:
    """Border, title block, notes on size and tolerance."""
    right, bottom = sheet.width - BORDER, sheet.height - BORDER
    sheet.box(LEFT, TOP, right - LEFT, bottom - TOP, "heavy")
    x0, y0 = right - BLOCK, bottom - STRIP
    sheet.line((LEFT, y0), (right, y0), kind="thick")
    sheet.line((x0, y0), (x0, bottom), kind="thick")
    third = STRIP / 3
    reader = imprint.reader
    unit = "mm" if reader.unit == "mm" else "inch"
    scale = "none" if sheet.pictorial else scale_ratio(sheet.scale) if about.scaled else "–"
    rows = (
        (("part", part.replace("_", " "), 58.0), ("design", imprint.title, 68.0),
         ("revision", imprint.revision or "–", 14.0), ("plan", imprint.plan_id, 22.0),
         ("sheet", f"{about.number[0]} of {about.number[1]}", 18.0)),
        (("material", about.material, 58.0), ("stock", about.stock or "–", 44.0),
         ("mass", mass_words(about.mass, reader), 20.0), ("off", str(about.count), 10.0),
         ("scale", scale, 16.0), ("sizes in", unit, 14.0), ("paper", imprint.paper, 18.0)),
        (("document", about.document, 30.0), ("drawing number", about.drawing, 52.0), ("drawn, date", "", 34.0),
         ("approved, date", "", 34.0), ("", PROJECTION, 30.0)),
    )  # fmt: skip
    for r, row in enumerate(rows):
        x, y = x0, y0 + r * third
        if r:
            sheet.line((x0, y), (right, y), kind="rule")
        for c, (label, value, width) in enumerate(row):
            if c:
                sheet.line((x, y), (x, y + third), kind="rule")
            if value is PROJECTION:
                _projection(sheet, x + width - 15.0, y + third / 2, imprint.angle)
                continue
            sheet.text(x + 1.5, y + 2.8, label, LABEL, tone="grey")
            bold = label == "part"
            words, size = _fitted(value, width - 3.0, 5.2 if bold else VALUE, bold)
            sheet.text(x + 1.5, y + 7.3, words, size, bold)
            x += width
    room = x0 - LEFT - 5.0
    bar = "2 in in print" if reader.unit == "in" else "50 mm in print"
    lines = (
        (TOLERANCE_NOTE, 3.5, 4.2),
        (", ".join(_general(most, reader) for most in (6.0, 30.0)), 3.3, 8.0),
        (", ".join(_general(most, reader) for most in (120.0, 400.0)), 3.3, 11.8),
        (f"Design size: {imprint.scale_words}", 3.3, 15.6),
        (bar, 3.3, 25.6),
    )
    for words, size, y in lines:
        fitted, small = _fitted(words, room, size, False)
        sheet.text(LEFT + 3, y0 + y, fitted, small)
    check_bar(sheet, LEFT + 4, y0 + 19.6, reader)
