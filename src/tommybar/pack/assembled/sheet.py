"""The sheets of the assembly: the picture with its parts list, then fits and the order of assembly."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

from tommybar.assembly.order import Order, order_of
from tommybar.assembly.placing import Assembly, assembled
from tommybar.design.model import SizedDesign
from tommybar.pack.assembled.balloons import AWAY, RADIUS, Balloon, balloon_marks, balloons_of
from tommybar.pack.assembled.lists import (
    CLOSE_FITS,
    FITS,
    PARTS,
    STEPS,
    close_fit_rows,
    fit_rows,
    listed,
    part_rows,
    sizes_of,
    step_rows,
)
from tommybar.pack.assembled.picture import Picture, picture_of
from tommybar.pack.assembled.stack import FORMS, NOTE, Listed, Stacked, paged, stacked
from tommybar.pack.boxes import Box, box_of, moved
from tommybar.pack.imprint import Imprint
from tommybar.pack.lettering import wrapped
from tommybar.pack.paper import SCALES, SIZES, Particulars, drawing_area, drawing_frame
from tommybar.pack.projected.lines import scaled
from tommybar.pack.sheet import LINE_STEP, Mark, Sheet, Text
from tommybar.refusals import Refusal

SMALLER = 0.55  # of the largest scale of the picture, down to which it makes room for lists
METHOD = "Isometric, pulled apart; hidden lines taken out on the mesh of the parts, threads drawn plain"
MIDDLE = (7.5, 4.0, 3.0, 2.5, 1.5, 0.75, 0.4, 0.3, 0.25, 0.15, 0.125, 0.075)
PICTURE_SCALES = tuple(sorted((*SCALES, *MIDDLE), reverse=True))


def assembly_sheets(
    design: SizedDesign,
    imprint: Imprint,
    stock: Mapping[str, str] | None = None,
    sheets: Mapping[str, int] | None = None,
) -> list[Sheet]:
    """All sheets of the assembly drawing; none for a design of fewer than two pieces.

    ``stock`` and ``sheets`` are, part by part, the stock in words and the
    number of the drawing sheet. The sheets bear no number of their own yet:
    ``framed`` puts it on. Lists stand beside the picture as far as they have
    room there, the rest on sheets of their own.
    """
    whole, order, picture = _worked_out(design)
    if picture is None:
        return []
    area = drawing_area(imprint.paper)
    parts = listed(design)
    numbers = {part.name: str(n) for n, part in enumerate(parts, 1)}
    lists = [Listed("Parts", PARTS, tuple(part_rows(parts, stock or {}, sheets or {})))]
    if design.fits:
        fits = fit_rows(design, sizes_of(design), imprint.reader)
        close = Listed("Fits", CLOSE_FITS, tuple(close_fit_rows(fits)))
        lists.append(Listed("Fits", FITS, tuple(fits), close))
    steps = step_rows(order)
    if steps:
        lists.append(Listed("Order of assembly", STEPS, tuple(steps)))
    told = _untold(whole, picture)
    unseen = [f"{numbers[name]} {name.replace('_', ' ')}" for name in numbers if name in picture.unseen]
    if unseen:
        told.append(f"Inside and not seen here: {', '.join(unseen)}")
    column, marks, scale = _beside(lists, _afterwords(order), told, picture, numbers, area)
    first = _sheet("assembly", imprint)
    first.scale, first.pictorial = scale, True
    first.add(*marks, *column.marks)
    return [first, *_listed(column.left, column.words, imprint)]


def _beside(
    lists: list[Listed], words: list[str], told: list[str], picture: Picture, numbers: Mapping[str, str], area: Box
) -> tuple[Stacked, list[Mark], float]:  # fmt: skip
    """The column of lists beside the picture, the picture with its notes, and its scale.

    Every list beside it, as long as that leaves the picture at least SMALLER
    of its scale; else, as there is another sheet anyhow, the largest picture
    and of those the one that leaves the fewest rows over.
    """
    wide = area[2] - area[0]
    tried: list[tuple[Stacked, list[Mark], float]] = []
    for width, size in [(wide * share, size) for size in (3.7, 3.3) for share in (0.42, 0.5, 0.56)]:
        column = stacked(lists, words, (area[2] - width, area[1], area[2], area[3]), size)
        low = area[3] - 1.0
        notes: list[Mark] = []
        for line in reversed([line for note in told for line in wrapped(note, wide - width - 8.0, NOTE)]):
            notes.append(Text((area[0], low), line, NOTE))
            low -= NOTE * LINE_STEP
        room: Box = (area[0], area[1], area[2] - width - 8.0, low - 2.0)
        marks, scale = _pictured(picture, numbers, room)
        tried.append((column, [*marks, *notes], scale))
    largest = max(scale for _, _, scale in tried)
    whole = [one for one in tried if one[2] >= SMALLER * largest and not one[0].over]
    if whole:
        return max(whole, key=lambda one: one[2])
    return min(tried, key=lambda one: (-one[2], one[0].over))


@lru_cache(maxsize=4)
def _worked_out(design: SizedDesign) -> tuple[Assembly, Order, Picture | None]:
    """Where all pieces stand, their order, and the picture; no picture of fewer than two pieces."""
    whole = assembled(design)
    order = order_of(design, whole)
    return whole, order, picture_of(design, whole) if len(whole.placements) > 1 else None


def _sheet(name: str, imprint: Imprint) -> Sheet:
    width, height = SIZES[imprint.paper]
    return Sheet(name, width, height, unit=imprint.reader.unit)


def _pictured(picture: Picture, numbers: Mapping[str, str], room: Box) -> tuple[list[Mark], float]:
    """The picture at the largest scale at which it has room with its balloons."""
    spare = 2 * (AWAY + RADIUS + 1.0)
    left, top, right, bottom = box_of(picture.marks)
    for scale in PICTURE_SCALES:
        wide, high = (right - left) * scale + spare, (bottom - top) * scale
        if wide > room[2] - room[0] or high > room[3] - room[1] - 4.0:
            continue
        marks = scaled(picture.marks, scale)
        around = box_of(marks)
        wanted = [
            (numbers[name], tuple((x * scale, y * scale) for x, y in spots))
            for name, spots in picture.spots.items()
        ]
        balloons: list[Balloon] = balloons_of(wanted, around, marks)
        marks += balloon_marks(balloons)
        whole = box_of(marks)
        if whole[2] - whole[0] > room[2] - room[0] or whole[3] - whole[1] > room[3] - room[1]:
            continue
        dx = (room[0] + room[2] - whole[0] - whole[2]) / 2
        dy = (room[1] + room[3] - whole[1] - whole[3]) / 2
        return moved(marks, dx, dy), scale
    raise Refusal(
        f"The assembly is {right - left:.0f} by {bottom - top:.0f} mm as it is drawn; at "
        f"1:{1 / PICTURE_SCALES[-1]:.3g} it must have room on its sheet.",
        "Print it on A3 or Tabloid.",
    )


def _untold(whole: Assembly, picture: Picture) -> list[str]:
    """How the picture came about, and what it does not show."""
    told = [METHOD]
    told += [f"Not shown: {one.part.replace('_', ' ')}, {one.reason}" for one in whole.unplaced]
    told += [f"Not shown: {words}" for words in picture.left_out]
    return list(dict.fromkeys(told))


def _afterwords(order: Order) -> list[str]:
    told: list[str] = []
    groups = [" with ".join(part.replace("_", " ") for part, _ in group) for group in order.trapped]
    if groups:
        told.append(f"Once joined for good these do not come apart from one another: {'; '.join(groups)}")
    if order.stuck:
        names = ", ".join(part.replace("_", " ") for part, _ in order.stuck)
        told.append(f"No straight way brings these together: {names}")
    return told


def _listed(lists: list[Listed], words: list[str], imprint: Imprint) -> list[Sheet]:
    """Lists on sheets of their own: on one, if any form of them has room there, else on as few as they need."""
    area = drawing_area(imprint.paper)
    made: list[Sheet] = []
    while lists or words:
        forms = [paged(lists, words, area, columns, size) for columns, size in FORMS]
        page = next((one for one in forms if not one.over), min(forms, key=lambda one: one.over))
        made.append(_sheet("assembly lists", imprint))
        made[-1].add(*page.marks)
        lists, words = page.left, page.words
    return made


def framed(sheets: list[Sheet], imprint: Imprint, numbers: tuple[int, int]) -> list[Sheet]:
    """The sheets with border and title block, numbered on from the first of ``numbers``."""
    for n, sheet in enumerate(sheets):
        document = "assembly drawing" if n == 0 else "assembly lists"
        about = Particulars(
            "–", 1, (numbers[0] + n, numbers[1]), f"{imprint.plan_id}-assembly", document, scaled=n == 0
        )
        drawing_frame(sheet, imprint, "assembly", about)
    return sheets
