"""Sheets: every page of the pack to look at, and the files to take away, written while progress is shown."""

from __future__ import annotations

import io
import zipfile
from collections import OrderedDict
from dataclasses import dataclass
from pathlib import Path, PurePosixPath
from tempfile import TemporaryDirectory
from typing import TYPE_CHECKING

from starlette.responses import FileResponse, HTMLResponse, Response

from tommybar.refusals import Refusal
from tommybar.web.ask import Ask, Desk, answer, go_to
from tommybar.web.pages.opened import Head, head_of, name_of, plan_of
from tommybar.web.touch import inline_svg
from tommybar.web.work import Tell

if TYPE_CHECKING:
    from tommybar.plan import Plan

KINDS = {
    ".pdf": "everything on paper, A4",
    ".dxf": "drawing for other programs, with real dimensions",
    ".svg": "drawing as a picture",
    ".csv": "list for a table program",
    ".json": "the whole plan as data",
    ".html": "the route for the machine, works without this program",
    ".zip": "all files in one",
}
PACKS_KEPT = 6


@dataclass
class Pack:
    """A pack that is written, in a folder of its own that goes with the program."""

    folder: TemporaryDirectory[str]
    files: tuple[str, ...]


@dataclass(frozen=True)
class FileShown:
    """A file to take away."""

    name: str
    about: str
    size: str


@dataclass(frozen=True)
class SheetsPage:
    """The sheets and the files."""

    head: Head
    sheets: tuple[tuple[int, str], ...]  # number and name
    files: tuple[FileShown, ...]
    plan_id: str
    unit: str


def _packs(desk: Desk) -> OrderedDict[tuple[str, str], Pack]:
    found: OrderedDict[tuple[str, str], Pack] = desk.extra.setdefault("packs", OrderedDict())
    return found


def _sheets(ask: Ask, plan: Plan) -> list[str]:
    """All sheets as SVG texts, kept for the last plans looked at."""
    from tommybar.pack.svg import svg_text
    from tommybar.pack.write import pack_sheets

    kept: OrderedDict[tuple[str, str], list[tuple[str, str]]] = ask.desk.extra.setdefault(
        "sheets", OrderedDict()
    )
    key = (plan.plan_id, ask.reader.unit)
    if key not in kept:
        kept[key] = [(one.name, svg_text(one)) for one in pack_sheets(plan, ask.reader)]
        while len(kept) > PACKS_KEPT:
            kept.popitem(last=False)
    return [text for _, text in kept[key]]


def sheets(ask: Ask) -> Response:
    """The page."""
    plan = plan_of(ask)
    count = len(_sheets(ask, plan))
    names = [name for name, _ in ask.desk.extra["sheets"][(plan.plan_id, ask.reader.unit)]]
    pack = _packs(ask.desk).get((plan.plan_id, ask.reader.unit))
    page = SheetsPage(
        head_of(ask, "sheets", plan),
        tuple(zip(range(1, count + 1), names, strict=True)),
        tuple(_file(pack, name) for name in pack.files) if pack else (),
        plan.plan_id,
        ask.reader.unit,
    )
    return answer(ask, "sheets.html", page, "designs")


def _file(pack: Pack, name: str) -> FileShown:
    size = (Path(pack.folder.name) / name).stat().st_size
    return FileShown(name, KINDS.get(PurePosixPath(name).suffix, ""), f"{size / 1000:.0f} kB")


@dataclass(frozen=True)
class SheetPage:
    """One sheet by itself."""

    design: str
    title: str
    number: int
    count: int
    svg: str


def _sheet_of(ask: Ask, texts: list[str]) -> int:
    number = int(ask.path["number"])
    if not 1 <= number <= len(texts):
        raise Refusal(f"There is no sheet {number}; there are {len(texts)}.", "Look at the list of sheets.")
    return number


def one_sheet(ask: Ask) -> Response:
    """One sheet to look at and to print."""
    plan = plan_of(ask)
    texts = _sheets(ask, plan)
    number = _sheet_of(ask, texts)
    page = SheetPage(name_of(ask), plan.title, number, len(texts), inline_svg(texts[number - 1]))
    return answer(ask, "one_sheet.html", page, "designs")


def sheet_picture(ask: Ask) -> Response:
    """One sheet as a piece of the list."""
    texts = _sheets(ask, plan_of(ask))
    return HTMLResponse(inline_svg(texts[_sheet_of(ask, texts) - 1]))


def write(ask: Ask) -> Response:
    """Begin writing the pack; the page shows how far it is."""
    from tommybar.pack.machine.write import write_machine_file
    from tommybar.pack.write import write_pack

    plan, unit, name = plan_of(ask), ask.reader.unit, name_of(ask)
    desk = ask.desk

    def deed(tell: Tell) -> None:
        folder = TemporaryDirectory(prefix="tommybar-pack-")
        place = Path(folder.name)
        written = write_pack(plan, place, unit, tell)
        if not (place / "machine.html").exists():
            tell("machine.html")
            written = [*written, write_machine_file(plan, place / "machine.html", unit)]
        names = tuple(sorted(one.relative_to(place).as_posix() for one in written))
        tell("all in one")
        (place / f"{name}.zip").write_bytes(_zipped(place, names))
        packs = _packs(desk)
        packs[(plan.plan_id, unit)] = Pack(folder, (*names, f"{name}.zip"))
        while len(packs) > PACKS_KEPT:
            packs.popitem(last=False)[1].folder.cleanup()

    work = desk.works.begin("The pack", f"/designs/{name}/sheets#files", deed)
    return go_to(f"/work/{work.name}")


def _zipped(place: Path, names: tuple[str, ...]) -> bytes:
    data = io.BytesIO()
    with zipfile.ZipFile(data, "w", zipfile.ZIP_DEFLATED) as archive:
        for name in names:
            archive.write(place / name, name)
    return data.getvalue()


def take(ask: Ask) -> Response:
    """A file of the pack; only what was written can be named."""
    plan = plan_of(ask)
    pack = _packs(ask.desk).get((plan.plan_id, ask.reader.unit))
    name = str(ask.path["file"])
    if pack is None or name not in pack.files:
        raise Refusal(
            f'There is no file "{name[:80]}" in this pack.', "Write the pack first, then look at its list."
        )
    return FileResponse(Path(pack.folder.name) / name, filename=PurePosixPath(name).name)
