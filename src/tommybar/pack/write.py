"""A plan written down: one PDF, drawings as SVG and DXF, lists as CSV, the page for the machine."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Literal

from tommybar.making.fit_holes import as_on_card
from tommybar.pack.assembled.sheet import assembly_sheets, framed
from tommybar.pack.cardsheets import Neighbours, card_sheets
from tommybar.pack.drawing import part_drawing
from tommybar.pack.dxf import dxf_text
from tommybar.pack.front.cover import cover_sheet
from tommybar.pack.front.findings import put_findings
from tommybar.pack.front.fits import put_fits
from tommybar.pack.front.leaf import Leaves
from tommybar.pack.front.sizes import put_sizes
from tommybar.pack.front.stock import put_stock, section_words
from tommybar.pack.front.tools import put_tools
from tommybar.pack.imprint import Angle, Imprint, PaperName
from tommybar.pack.lists import list_texts
from tommybar.pack.machine.contents import page_contents
from tommybar.pack.machine.write import machine_page
from tommybar.pack.pdf import pdf_bytes
from tommybar.pack.plan_json import plan_json
from tommybar.pack.sheet import Sheet
from tommybar.pack.solid_files import solid_files
from tommybar.pack.svg import svg_text
from tommybar.pack.template.sheet import template_sheets
from tommybar.pack.units import Reader
from tommybar.planning import PartPlan, Plan
from tommybar.refusals import Refusal


def imprint_of(plan: Plan, reader: Reader, paper: PaperName = "A4", angle: Angle = "first") -> Imprint:
    """The imprint of a plan's pack; ``paper`` and ``angle`` are those of its drawings."""
    return Imprint(plan.title, plan.revision, plan.plan_id, plan.scale, plan.shop.name, reader, paper, angle)


def drawing_of(one: PartPlan, plan: Plan, imprint: Imprint, number: tuple[int, int] = (1, 1)) -> Sheet:
    """The drawing of a planned part, with the stock and the mass in its title block."""
    return part_drawing(one.part, plan.design, imprint, number, _stock(one, imprint.reader), one.mass)


def _stock(one: PartPlan, reader: Reader) -> str:
    """What a part is cut from, in words; nothing when no blank was found."""
    blank = one.blank
    if blank is None:
        return ""
    section = section_words(blank.section, blank.size, blank.width, reader)
    return f"{section} × {reader.length(blank.length, 1)}"


def assembly_pages(plan: Plan, imprint: Imprint, numbers: dict[str, int]) -> list[Sheet]:
    """The sheets of the assembly, without their frames; ``numbers`` are those of the drawings."""
    stock = {one.part.name: _stock(one, imprint.reader) for one in plan.parts}
    return assembly_sheets(plan.design, imprint, stock, numbers)


def pack_sheets(plan: Plan, reader: Reader, paper: PaperName = "A4", angle: Angle = "first") -> list[Sheet]:
    """All sheets of the pack in their order, numbered; cards and lists are A4, drawings as asked."""
    imprint = imprint_of(plan, reader, paper, angle)
    leaves = Leaves(imprint)
    for put in (put_findings, put_sizes, put_stock, put_tools, put_fits):
        put(leaves, plan)
    made = [one for one in plan.parts if one.part.shape is not None]
    cards = {one.part.name: _cards(one, plan, imprint) for one in made}
    templates = {one.part.name: template_sheets(one.part, imprint) for one in made}
    together = len(
        assembly_pages(plan, imprint, {})
    )  # how many they are does not hang on the numbers in them
    numbers: dict[str, int] = {}
    number = 2 + len(leaves.sheets) + together
    for one in made:
        numbers[one.part.name] = number
        number += 1 + len(templates[one.part.name]) + len(cards[one.part.name])
    total = number - 1
    contents = [(title, _range(first + 1, last + 1)) for title, first, last in leaves.sections]
    sheets: list[Sheet] = []
    for number, sheet in enumerate(leaves.sheets, 2):
        sheet.text(285.0, 206.0, f"sheet {number} of {total}", 3.4, anchor="end")
        sheets.append(sheet)
    number = 2 + len(sheets)
    if together:
        contents.append(("Assembly", _range(number, number + together - 1)))
        sheets += framed(assembly_pages(plan, imprint, numbers), imprint, (number, total))
    for one in made:
        name = one.part.name
        number = numbers[name]
        extra = [*templates[name], *cards[name]]
        what = "drawing, template, cards" if templates[name] else "drawing, cards"
        contents.append(
            (f"{name.replace('_', ' ').capitalize()}: {what}", _range(number, number + len(extra)))
        )
        sheets.append(drawing_of(one, plan, imprint, (number, total)))
        for place, sheet in enumerate(extra, number + 1):
            right, low = sheet.width - 10.0, sheet.height - 4.0
            sheet.text(right, low, f"sheet {place} of {total}", 3.4, anchor="end")
            sheets.append(sheet)
    cover = cover_sheet(plan, imprint, contents)
    cover.text(285.0, 206.0, f"sheet 1 of {total}", 3.4, anchor="end")
    return [cover, *sheets]


def _range(first: int, last: int) -> str:
    return f"{first}" if first == last else f"{first} to {last}"


def _cards(one: PartPlan, plan: Plan, imprint: Imprint) -> list[Sheet]:
    made: list[Sheet] = []
    for n, card in enumerate(one.cards):
        run = next((run for run in one.run.cards if run.card == card.number), None) if one.run else None
        before = one.cards[n - 1].title if n else ""
        after = one.cards[n + 1].title if n + 1 < len(one.cards) else ""
        neighbours = Neighbours(
            f"card {n}, {before}" if before else "",
            f"card {n + 2}, {after}" if after else "",
            plan.shop.lathe.cross_slide.reads,
            one.part.count,
            one.changed,
        )
        part = as_on_card(one.part, one.cards, card, one.blank)
        made += card_sheets(card, part, run, imprint, neighbours)
    return made


def write_pack(
    plan: Plan,
    folder: Path,
    units: Literal["mm", "in"] = "mm",
    tell: Callable[[str], None] = lambda words: None,
    paper: PaperName = "A4",
    angle: Angle = "first",
) -> list[Path]:
    """Write the whole pack into a folder and say which files it is.

    The same plan gives the same bytes. ``tell`` hears a line per stage.
    ``paper`` and ``angle`` (of projection) are those of the drawings.

    Raises
    ------
    Refusal
        If the unit, paper or angle is not known, or the folder cannot be written.
    """
    reader = Reader(units)
    imprint = imprint_of(plan, reader, paper, angle)
    files: dict[str, str | bytes] = {}
    tell("sheets")
    sheets = pack_sheets(plan, reader, paper, angle)
    tell("pack.pdf")
    files["pack.pdf"] = pdf_bytes(sheets, f"{plan.title}, plan {plan.plan_id}")
    for one in plan.parts:
        if one.part.shape is not None:
            tell(f"drawing of {one.part.name}")
            sheet = drawing_of(one, plan, imprint)
            files[f"parts/{one.part.name}.svg"] = svg_text(sheet)
            files[f"parts/{one.part.name}.dxf"] = dxf_text(sheet)
        for n, page in enumerate(template_sheets(one.part, imprint), 1):
            files[f"templates/{one.part.name}-{n}.svg"] = svg_text(page)
    tell("assembly drawing")
    for n, sheet in enumerate(framed(assembly_pages(plan, imprint, {}), imprint, (1, 1)), 1):
        name = "assembly" if n == 1 else f"assembly-lists-{n - 1}"
        files[f"{name}.svg"] = svg_text(sheet)
        if n == 1:
            files["assembly.dxf"] = dxf_text(sheet)
    tell("lists")
    files |= list_texts(plan, reader)
    files["plan.json"] = plan_json(plan)
    files |= solid_files(plan.design, tell)
    tell("machine.html")
    files["machine.html"] = machine_page(page_contents(plan, reader))
    return _written(files, folder)


def _written(files: dict[str, str | bytes], folder: Path) -> list[Path]:
    paths = []
    try:
        for name, content in files.items():
            path = folder / name
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_bytes(content if isinstance(content, bytes) else content.encode("utf-8"))
            paths.append(path)
    except OSError as trouble:
        raise Refusal(
            f"{folder} cannot be written: {trouble.strerror}.", "Give --out a folder that may be written."
        ) from trouble
    return paths
