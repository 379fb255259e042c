"""One card on one page, or on more when its ladder is long; the head is the same on each."""

from __future__ import annotations

from dataclasses import dataclass

from tommybar.design.model import Part
from tommybar.dryrun.runs import CardRun
from tommybar.making.cards import Card
from tommybar.pack.boxes import box_of, moved
from tommybar.pack.cardsheets.grip import after_marks, grip_marks
from tommybar.pack.cardsheets.ladder import hold_bar, place_pieces, rung
from tommybar.pack.cardsheets.notes import Note, hold_words, notes_of, rescue_words
from tommybar.pack.cardsheets.piece import BODY, Piece, placed
from tommybar.pack.cardsheets.vice import finished_block, vice_marks
from tommybar.pack.cardsheets.writein import write_in
from tommybar.pack.imprint import Imprint
from tommybar.pack.lettering import width_of
from tommybar.pack.paper import check_bar
from tommybar.pack.sheet import LINE_STEP, Mark, Sheet
from tommybar.pack.units import Reader
from tommybar.shapes.features import PlateShape, TurnedShape

LEFT, RIGHT = 15.0, 287.0  # margins for the clip
HEAD, TOP, BOTTOM, FOOT = 19.0, 31.5, 191.8, 198.0
GRIP_W, LADDER_X, LADDER_W, WRITE_X, WRITE_W = 76.0, 94.0, 142.0, 239.0, 48.0
COLUMN = BOTTOM - TOP
SKETCH = (50.0, 86.0)  # least and most height of the sketch [mm]
NARROW = 50.0  # a column in which no note is begun that must go on elsewhere [mm]
TIGHTEST = 1.14  # how much more than the pages hold is worth trying to set tighter
SPARE = 58.0  # room left under the ladder in which the part after the card is shown [mm]


@dataclass(frozen=True)
class Neighbours:
    """What a card must know besides itself: its neighbours, how the cross-slide's dial reads, how many off."""

    before: str = ""
    after: str = ""
    reads: str = "RAD"
    count: int = 1
    changed: str = ""  # why its limits are other than drawn


@dataclass
class _Page:
    """One page being filled: the ladder and the boxes beside it."""

    ladder: list[Piece]
    boxes: list[Piece]

    def fits(self, ladder: list[Piece], boxes: list[Piece]) -> bool:
        """Whether further pieces have room."""
        down = sum(p.height for p in [*self.ladder, *ladder])
        beside = sum(p.height for p in [*self.boxes, *boxes])
        return down <= COLUMN and beside <= COLUMN - 8.0


def _pages(card: Card, imprint: Imprint, reads: str, step_of: float = LINE_STEP) -> list[_Page]:
    """The ladder cut into pages; a hold bar stays with its rung, the box beside them."""
    groups: list[tuple[list[Piece], list[Piece]]] = []
    for step in card.steps:
        pieces = [rung(step, LADDER_W, imprint.reader, step_of, bench=card.machine == "bench")]
        boxes = [write_in(step, one, WRITE_W - 7.0, imprint.reader, reads) for one in step.measure]
        if step.measure:
            pieces.append(hold_bar(step, LADDER_W))
        groups.append((pieces, boxes))
    places = place_pieces(card, LADDER_W, imprint.reader, step_of)
    if places and sum(piece.height for piece in places) <= COLUMN:
        groups.append((places, []))  # a list that fits a page is not torn
    elif places:
        groups.append((places[:2], []))
        groups += [([piece], []) for piece in places[2:]]
    pages = [_Page([], [])]
    for pieces, boxes in groups:
        if pages[-1].ladder and not pages[-1].fits(pieces, boxes):
            pages.append(_Page([], []))
        pages[-1].ladder += pieces
        pages[-1].boxes += boxes
    return pages


def _fewest_pages(card: Card, imprint: Imprint, reads: str) -> list[_Page]:
    """The ladder as usual; set tighter when that saves a page with little on it."""
    pages = _pages(card, imprint, reads)
    total = sum(piece.height for page in pages for piece in page.ladder)
    if len(pages) > 1 and total <= COLUMN * (len(pages) - 1) * TIGHTEST:
        for tight in (1.2, 1.14, 1.1):
            other = _pages(card, imprint, reads, tight)
            if len(other) < len(pages):
                return other
    return pages


def card_sheets(
    card: Card, part: Part, run: CardRun | None, imprint: Imprint, neighbours: Neighbours
) -> list[Sheet]:
    """All pages of one card."""
    pages = _fewest_pages(card, imprint, neighbours.reads)
    notes = notes_of(card, run, imprint.reader, neighbours.changed)
    sheets = []
    for n, page in enumerate(pages, 1):
        sheet = Sheet(f"{card.part}-card-{card.number}" + (f"-{n}" if len(pages) > 1 else ""))
        _head(sheet, card, imprint, n, len(pages), neighbours.count)
        sheet.add(*placed(page.ladder, LADDER_X, TOP))
        _left(sheet, card, part, run, imprint, notes)
        _right(sheet, page, notes)
        if n == len(pages):
            end = TOP + sum(piece.height for piece in page.ladder)
            _below(sheet, card, part, run, notes, end, imprint.reader)
        _foot(sheet, card, neighbours, imprint.reader)
        sheets.append(sheet)
    return sheets


def _head(sheet: Sheet, card: Card, imprint: Imprint, page: int, pages: int, count: int) -> None:
    name = card.part.replace("_", " ").capitalize()
    sheet.text(LEFT, HEAD, name, 9.6, True)
    x = LEFT + width_of(name, 9.6, True) + 5.0
    words = f"card {card.number} of {card.of}"
    sheet.text(x, HEAD, words, 6.4, True)
    x += width_of(words, 6.4, True) + 5.0
    over = imprint.line + (f" · page {page} of {pages}" if pages > 1 else "")
    if card.minutes:
        over = f"about {card.minutes:.0f} min · {over}"
    if count > 1:
        over = f"make {count} · {over}"
    sheet.text(RIGHT, 10.5, over, 3.6, anchor="end")
    sheet.text(x, HEAD, *_fitted(card.title.replace("_", " "), RIGHT - x, 5.4))
    hold = f"Hold: {hold_words(card, imprint.reader)}"
    sheet.text(LEFT, HEAD + 7.0, *_fitted(hold, RIGHT - LEFT, 4.9))
    sheet.line((LEFT, HEAD + 10.2), (RIGHT, HEAD + 10.2), kind="heavy")


def _fitted(words: str, room: float, size: float) -> tuple[str, float]:
    """Words at a size that lets them stand in one line."""
    return words, min(size, size * room / max(width_of(words, size), 1e-6))


def _left(
    sheet: Sheet, card: Card, part: Part, run: CardRun | None, imprint: Imprint, notes: list[Note]
) -> None:
    """The sketch, as high as the first note leaves room for, and the notes that fit below it."""
    width = GRIP_W - 6.0
    needed = notes[0].head != "Why so" if notes else False
    first = notes[0].piece(width).height + 6.0 if needed else 40.0
    height = min(max(COLUMN - first, SKETCH[0]), SKETCH[1])
    marks: list[Mark] = []
    length = part.shape.length.value if isinstance(part.shape, TurnedShape | PlateShape) else 0.0
    if card.machine == "lathe" and run is not None:
        marks = grip_marks(card, run, length, width, height, imprint.reader)
    elif card.machine != "lathe":
        marks = vice_marks(card, part.shape, width, height, imprint.reader)
    sheet.box(LEFT, TOP, GRIP_W, COLUMN, "rule")
    y = TOP
    if marks:
        used = box_of(marks)
        sheet.add(*moved(marks, LEFT + 3.0, TOP + 3.0 - used[1]))
        y += used[3] - used[1] + 5.5
        sheet.line((LEFT, y), (LEFT + GRIP_W, y), kind="rule")
    y += 2.6
    _pour(sheet, notes, LEFT + 3.0, y, width, BOTTOM + 1.0)


MUST = "Before starting"


def _pour(sheet: Sheet, notes: list[Note], x: float, y: float, width: float, bottom: float) -> float:
    """Set notes from y down as long as there is room; the last of them may go on elsewhere."""
    while notes:
        part, rest = notes[0].within(width, bottom - y)
        must = notes[0].head == MUST  # cautions go on elsewhere rather than nowhere
        if rest is not None and width < NARROW and not must:
            return y
        if part is None or (rest is not None and len(notes) > 1 and not must):
            return y
        piece = part.piece(width)
        sheet.add(*moved(piece.marks, x, y))
        y += piece.height + 0.8
        notes[:1] = [rest] if rest is not None else []
        if rest is not None:
            return y
    return y


def _right(sheet: Sheet, page: _Page, notes: list[Note]) -> None:
    """Boxes to write in, then notes that still want room, then lines to write on."""
    sheet.box(WRITE_X, TOP, WRITE_W, COLUMN, "rule")
    x, y, width = WRITE_X + 3.5, TOP + 3.0, WRITE_W - 7.0
    if page.boxes:
        sheet.text(x, y + 3.4, "Write what it is", 4.9, True)
        y += 8.0
        sheet.add(*placed(page.boxes, x, y))
        y += sum(piece.height for piece in page.boxes)
    y = _pour(sheet, notes, x, y + 1.0, width, BOTTOM)
    if y < BOTTOM - 24.0:
        sheet.text(x, y + 5.0, "Notes", 4.9, True)
        y += 14.0
        while y < BOTTOM - 4.0:
            sheet.line((x, y), (WRITE_X + WRITE_W - 3.5, y), kind="thin")
            y += 9.0


def _below(
    sheet: Sheet, card: Card, part: Part, run: CardRun | None, notes: list[Note], y: float, reader: Reader
) -> None:
    """Under a short ladder: the work after the card, and the notes that still want room."""
    top, x, width = y + 4.0, LADDER_X, LADDER_W
    picture: list[Mark] = []
    if BOTTOM - y >= SPARE:
        height = min(BOTTOM - top - 10.0, 72.0)
        if run is not None and run.steps:
            picture = after_marks(run, LADDER_W / 2 - 4.0, height)
        elif isinstance(part.shape, PlateShape) and card.number == 1 and not card.places:
            picture = finished_block(part.shape, LADDER_W - 8.0, height, reader)
    if picture:
        sheet.text(x, top + 3.3, "After this card", 4.9, True)
        used = box_of(picture)
        sheet.add(*moved(picture, x - min(used[0], 0.0), top + 8.0 - used[1]))
        if used[2] - used[0] > LADDER_W / 2:
            return
        x, width = x + LADDER_W / 2 + 4.0, LADDER_W / 2 - 4.0
    _pour(sheet, notes, x, top, width, BOTTOM)


def _foot(sheet: Sheet, card: Card, neighbours: Neighbours, reader: Reader) -> None:
    sheet.line((LEFT, BOTTOM + 2.0), (RIGHT, BOTTOM + 2.0), kind="thick")
    check_bar(sheet, RIGHT - 51.0, FOOT + 1.0)
    sheet.text(RIGHT - 54.0, FOOT + 2.2, "50 mm", 3.6, anchor="end")
    room = RIGHT - 72.0 - LEFT
    then = f"then: {card.after or neighbours.after}"
    ways = [then]
    if neighbours.before:  # the title of the card before, where there is room for it
        number = neighbours.before.partition(", ")[0]
        ways = [f"before: {before} · {then}" for before in (neighbours.before, number)]
    ways = [one.replace("_", " ") for one in ways]
    line = next((one for one in ways if width_of(one, BODY) <= room), ways[-1])
    y = FOOT + 0.6
    sheet.text(LEFT, y, line, min(BODY, BODY * room / width_of(line, BODY)))
    rescue = rescue_words(card, reader)
    sheet.text(LEFT, y + 5.4, rescue, min(BODY, BODY * room / width_of(rescue, BODY, True)), True)
