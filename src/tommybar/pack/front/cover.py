"""The cover: what, for which shop, may it be started, cautions, a picture of the parts, list of sheets."""

from __future__ import annotations

from tommybar.pack.bent.views import seen_from
from tommybar.pack.boxes import box_of, moved
from tommybar.pack.front.leaf import LEFT, RIGHT, WIDTH, heading, paragraphs
from tommybar.pack.imprint import Imprint
from tommybar.pack.lettering import width_of, wrapped
from tommybar.pack.paper import check_bar
from tommybar.pack.plate import placed_holes
from tommybar.pack.sheet import LINE_STEP, Arc, Area, Mark, Sheet, Text
from tommybar.pack.turned.view import shape_marks
from tommybar.planning import Plan
from tommybar.shapes.features import PlateShape, Shape, TurnedShape

BODY = 4.25
PICTURE = (150.0, 78.0)  # room for the picture [mm]
SPLIT = LEFT + 158.0  # where the right column begins [mm]


def cover_sheet(plan: Plan, imprint: Imprint, contents: list[tuple[str, str]]) -> Sheet:
    """The first page; ``contents`` are titles with sheet numbers."""
    sheet = Sheet("cover")
    sheet.text(LEFT, 24.0, plan.title, min(11.5, 11.5 * WIDTH / width_of(plan.title, 11.5, True)), True)
    words = (
        f"for {plan.shop.name} · {imprint.scale_words} · revision {plan.revision or '–'} · "
        f"plan {plan.plan_id} · {'millimetres' if imprint.reader.unit == 'mm' else 'inches'}"
    )
    sheet.text(LEFT, 32.0, words, 4.6)
    sheet.line((LEFT, 36.0), (RIGHT, 36.0), kind="heavy")
    y = _verdict(sheet, plan, 39.0)
    sheet.add(*moved(family_marks(plan), LEFT, y + 2.0))
    y = heading(sheet, "Before anything turns", y + PICTURE[1] + 6.0)
    cautions = [f"– {words}" for words in plan.design.cautions] or ["– Read the findings first."]
    speeds = [
        f"– Turns at {p.speed:g} rev/min: guard or distance, eye protection." for p in plan.design.purposes
    ]
    room = 193.0 - y
    size = BODY
    lines = [*cautions, *speeds]
    if imprint.reader.unit == "in":
        lines.append("– Lengths are in inches; drills, reamers and cutters keep the size marked on them.")
    while (
        sum(len(wrapped(line, SPLIT - LEFT - 10.0, size)) for line in lines) * size * LINE_STEP > room
        and size > 3.4
    ):
        size -= 0.1
    for line in lines:
        for n, piece in enumerate(wrapped(line, SPLIT - LEFT - 12.0, size)):
            sheet.text(LEFT + (3.0 if n else 0.0), y + 3.2, piece, size)
            y += size * LINE_STEP
        y += 0.8
    check_bar(sheet, LEFT + 1.0, 202.5)
    sheet.text(LEFT + 55.0, 203.8, "this bar is 50 mm long if the printer kept the size", 3.4)
    _contents(sheet, plan, contents)
    return sheet


def _verdict(sheet: Sheet, plan: Plan, y: float) -> float:
    """May it be started: a black bar when stops stand."""
    cautions = sum(one.severity == "caution" for one in plan.findings)
    if plan.stops:
        sheet.box(LEFT, y, SPLIT - LEFT - 8.0, 9.0, None, "black")
        count = len(plan.stops)
        words = f"STOP: {count} finding{'s' if count != 1 else ''} to be settled first"
        sheet.text(LEFT + 3.0, y + 6.2, words, 4.9, True, tone="white")
        return y + 11.0
    words = "Nothing forbids starting"
    if cautions:
        words += f"; {cautions} caution{'s' if cautions != 1 else ''} to be read"
    sheet.text(LEFT, y + 5.0, words + ".", 4.9, True)
    return y + 8.0


def _contents(sheet: Sheet, plan: Plan, contents: list[tuple[str, str]]) -> None:
    """Right column: the order of making, then the list of sheets."""
    x = SPLIT
    y = heading(sheet, "Make in this order", 39.0, x)
    minutes = 0.0
    made = [one for one in plan.parts if one.part.kind != "bought"]
    for n, one in enumerate(made, 1):
        spent = sum(card.minutes for card in one.cards) * one.part.count
        minutes += spent
        off = f", {one.part.count} off" if one.part.count > 1 else ""
        cards = len(one.cards)
        words = f"{n}  {one.part.name.replace('_', ' ')}{off}: {cards} card{'s' if cards != 1 else ''}"
        sheet.text(x, y + 3.2, words, BODY, n == 1)
        sheet.text(RIGHT, y + 3.2, f"{spent:.0f} min", BODY, anchor="end")
        y += BODY * LINE_STEP
    y = paragraphs(sheet, [f"About {minutes / 60:.1f} hours at the machines."], y + 1.0, RIGHT - x, x)
    y = heading(sheet, "Sheets", y + 2.0, x)
    size = min(BODY, (200.0 - y) / max(len(contents), 1) / LINE_STEP)
    for title, number in contents:
        sheet.text(x, y + 0.75 * size, title, size)
        sheet.text(RIGHT, y + 0.75 * size, number, size, anchor="end")
        y += size * LINE_STEP
    chosen = [one for one in plan.figures if one.what not in ("mass", "moment of inertia")]
    chosen.sort(key=lambda one: "," not in one.part)  # what concerns the whole thing comes first
    if chosen and y < 185.0:
        y = heading(sheet, "What was worked out", y + 3.0, x)
        for figure in chosen:
            if y > 196.0:
                break
            value = f"{figure.value:.{figure.decimals}f} {figure.unit}".strip()
            of = figure.part if "," not in figure.part else "all that turns"
            words, room = f"{figure.what}, {of}", RIGHT - x - width_of(value, BODY, True) - 3.0
            sheet.text(x, y + 3.2, wrapped(words, room, BODY)[0], BODY)
            sheet.text(RIGHT, y + 3.2, value, BODY, True, "end")
            y += BODY * LINE_STEP


def family_marks(plan: Plan) -> list[Mark]:
    """Every part that is made, at one scale, standing in rows."""
    shapes = [(one.part.name, one.part.shape) for one in plan.parts if one.part.shape is not None]
    for scale in (2.0 * 0.95**n for n in range(80)):
        marks = _rows(shapes, scale)
        box = box_of(marks)
        if box[3] <= PICTURE[1] and box[2] <= PICTURE[0]:
            return marks
    return []


def _rows(shapes: list[tuple[str, Shape]], scale: float) -> list[Mark]:
    marks: list[Mark] = []
    x, y, tallest = 0.0, 0.0, 0.0
    pictures = [(name, _picture(shape, scale)) for name, shape in shapes]
    for name, picture in pictures:
        box = box_of(picture)
        label = Text((0, 0), name.replace("_", " "), BODY)
        wide, tall = max(box[2] - box[0], label.width), box[3] - box[1] + 7.0
        if x and x + wide > PICTURE[0]:
            x, y, tallest = 0.0, y + tallest + 3.0, 0.0
        marks += moved(picture, x - box[0], y - box[1])
        marks.append(Text((x, y + tall - 2.0), label.words, BODY))
        x += wide + 6.0
        tallest = max(tallest, tall)
    return marks


def _picture(shape: Shape, scale: float) -> list[Mark]:
    if isinstance(shape, TurnedShape):
        return shape_marks(shape, scale)
    if not isinstance(shape, PlateShape):
        return seen_from(shape, "front", scale)
    w, h = shape.length.value * scale, shape.width.value * scale
    marks: list[Mark] = [Area((((0, 0), (w, 0), (w, h), (0, h)),), "none", "thick")]
    for one in placed_holes(shape):
        if one.hole.face in ("top", "bottom"):
            marks.append(Arc((one.x * scale, h - one.y * scale), one.hole.dia.value / 2 * scale, "thick"))
    return marks
