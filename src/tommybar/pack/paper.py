"""The frame of a drawing sheet: border, title block after ISO 7200, projection symbol, check bar."""

from __future__ import annotations

from tommybar.pack.imprint import Imprint
from tommybar.pack.lettering import width_of
from tommybar.pack.sheet import Arc, Line, Sheet
from tommybar.pack.words import general_words

LEFT, TOP, RIGHT, BOTTOM = 20.0, 10.0, 287.0, 200.0  # the border; ISO 5457 leaves 20 for filing
STRIP = 27.0  # height of the title block [mm]
BLOCK = 180.0  # width of the title block, ISO 7200 [mm]
LABEL, VALUE = 2.3, 4.25
TOLERANCE_NOTE = "Sizes without limits: ISO 2768-1, class m"


def scale_ratio(scale: float) -> str:
    """A drawing scale as ISO 5455 writes it.

    Examples
    --------
    >>> scale_ratio(2.0), scale_ratio(0.5), scale_ratio(1.0)
    ('2:1', '1:2', '1:1')
    """
    return f"{scale:g}:1" if scale >= 1 else f"1:{1 / scale:g}"


def check_bar(sheet: Sheet, x: float, y: float) -> None:
    """A bar 50 mm long, to see whether the printer kept the size; (x, y) is its left end."""
    sheet.line((x, y), (x + 50.0, y), kind="thick")
    for n in range(6):
        reach = 2.0 if n in (0, 5) else 1.2
        sheet.line(
            (x + 10.0 * n, y - reach), (x + 10.0 * n, y + reach), kind="thick" if n in (0, 5) else "thin"
        )


def _projection(sheet: Sheet, x: float, y: float) -> None:
    """The first-angle symbol about (x, y): the cone from the side, then from its small end at the right."""
    sheet.marks.append(
        Line(((x - 9, y - 1.6), (x - 1, y - 3.2), (x - 1, y + 3.2), (x - 9, y + 1.6)), "rule", True)
    )
    sheet.line((x - 10.5, y), (x + 0.5, y), kind="chain")
    sheet.add(Arc((x + 7, y), 3.2, "rule"), Arc((x + 7, y), 1.6, "rule"))
    sheet.line((x + 2.8, y), (x + 11.2, y), kind="chain")
    sheet.line((x + 7, y - 4.2), (x + 7, y + 4.2), kind="chain")


def _fitted(words: str, width: float, size: float, bold: bool) -> tuple[str, float]:
    """Words at the size, or smaller if they must be to stand in the width."""
    wide = width_of(words, size, bold)
    return words, size if wide <= width else size * width / wide


def drawing_frame(
    sheet: Sheet,
    imprint: Imprint,
    part: str,
    material: str,
    count: int,
    number: tuple[int, int],
    drawing: str,
) -> None:
    """Border, title block, notes on size and tolerance."""
    sheet.box(LEFT, TOP, RIGHT - LEFT, BOTTOM - TOP, "heavy")
    x0, y0 = RIGHT - BLOCK, BOTTOM - STRIP
    sheet.line((LEFT, y0), (RIGHT, y0), kind="thick")
    sheet.line((x0, y0), (x0, BOTTOM), kind="thick")
    third = STRIP / 3
    unit = "mm" if imprint.reader.unit == "mm" else "inch"
    rows = (
        (("part", part, 66.0), ("design", imprint.title, 72.0), ("revision", imprint.revision or "–", 20.0),
         ("sheet", f"{number[0]} of {number[1]}", 22.0)),
        (("material", material, 66.0), ("off", str(count), 16.0), ("scale", scale_ratio(sheet.scale), 22.0),
         ("sizes in", unit, 20.0), ("plan", imprint.plan_id, 56.0)),
        (("document", "part drawing", 66.0), ("drawing number", drawing, 72.0), ("projection", "", 42.0)),
    )  # fmt: skip
    for r, row in enumerate(rows):
        x, y = x0, y0 + r * third
        if r:
            sheet.line((x0, y), (RIGHT, y), kind="rule")
        for c, (label, value, width) in enumerate(row):
            if c:
                sheet.line((x, y), (x, y + third), kind="rule")
            sheet.text(x + 1.5, y + 2.7, label, LABEL, tone="grey")
            bold = label == "part"
            words, size = _fitted(value, width - 3.0, 5.2 if bold else VALUE, bold)
            sheet.text(x + 1.5, y + 7.3, words, size, bold)
            if label == "projection":
                _projection(sheet, x + width - 16.0, y + third / 2)
            x += width
    sheet.text(LEFT + 3, y0 + 5.0, TOLERANCE_NOTE, 3.7)
    reader = imprint.reader
    steps = [f"to {reader.length(most)} {general_words(most, reader)}" for most in (6.0, 30.0, 120.0, 400.0)]
    words, size = _fitted(", ".join(steps), x0 - LEFT - 5.0, 3.5, False)
    sheet.text(LEFT + 3, y0 + 9.8, words, size)
    sheet.text(LEFT + 3, y0 + 14.6, f"Design size: {imprint.scale_words}", 3.5)
    check_bar(sheet, LEFT + 4, y0 + 21.5)
    sheet.text(LEFT + 57, y0 + 22.8, "50 mm in print", 3.4)
