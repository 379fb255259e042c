"""Sheets: every page of the pack to look at, and the files to take away, written while progress is shown."""

from __future__ import annotations

import io
import mimetypes
import zipfile
from collections import OrderedDict
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path, PurePosixPath
from tempfile import TemporaryDirectory
from typing import TYPE_CHECKING, get_args

from starlette.responses import HTMLResponse, Response

from tommybar.pack.imprint import Angle, PaperName
from tommybar.refusals import Refusal
from tommybar.web.ask import Ask, Desk, answer, go_to
from tommybar.web.pages.opened import Head, head_of, name_of, plan_of
from tommybar.web.touch import inline_svg
from tommybar.web.work import Tell

if TYPE_CHECKING:
    from tommybar.planning import Plan

KINDS = {
    ".pdf": "everything on paper, A4",
    ".dxf": "drawing for other programs, with real dimensions",
    ".svg": "drawing as a picture",
    ".csv": "list for a table program",
    ".json": "the whole plan as data",
    ".step": "solid for other programs, in mm",
    ".glb": "solid to look at",
    ".txt": "where each piece stands, and what is not said of it",
    ".html": "the route for the machine, works without this program",
    ".zip": "all files in one",
}
PACKS_KEPT = 6
Key = tuple[str, str, str, str]  # plan, unit, paper, angle of projection


@dataclass(frozen=True)
class Pack:
    """A pack that is written: its files by name."""

    files: Mapping[str, bytes]


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
    single: tuple[tuple[str, tuple[tuple[str, str], ...]], ...]  # what of, and its files: name and kind
    plan_id: str
    unit: str
    paper: str  # of the drawings
    angle: str
    papers: tuple[str, ...]
    built: str  # whether each part can be built from its drawing alone
    amiss: tuple[str, ...]  # what is missing on a drawing, or stands there twice


def setting_of(ask: Ask) -> tuple[PaperName, Angle]:
    """Paper and projection of the drawings, as this reader has switched them."""
    paper, angle = (ask.request.cookies.get(name, "") for name in ("paper", "angle"))
    return (
        next((one for one in get_args(PaperName) if one == paper), "A4"),
        "third" if angle == "third" else "first",
    )


def _key(ask: Ask, plan: Plan) -> Key:
    return (plan.plan_id, ask.reader.unit, *setting_of(ask))


def _packs(desk: Desk) -> OrderedDict[Key, Pack]:
    found: OrderedDict[Key, Pack] = desk.extra.setdefault("packs", OrderedDict())
    return found


def _sheets(ask: Ask, plan: Plan) -> list[str]:
    """All sheets as SVG texts, kept for the last plans looked at."""
    from tommybar.pack.audit.telling import audits_of
    from tommybar.pack.svg import svg_text
    from tommybar.pack.write import pack_sheets

    kept: OrderedDict[Key, list[tuple[str, str]]] = ask.desk.extra.setdefault("sheets", OrderedDict())
    key = _key(ask, plan)
    if key not in kept:
        drawn = pack_sheets(plan, ask.reader, *setting_of(ask))
        kept[key] = [(one.name, svg_text(one)) for one in drawn]
        audits = ask.desk.extra.setdefault("audits", {})
        audits[key] = audits_of((one.part for one in plan.parts), drawn)
        while len(kept) > PACKS_KEPT:
            audits.pop(kept.popitem(last=False)[0], None)
    return [text for _, text in kept[key]]


def sheets(ask: Ask) -> Response:
    """The page."""
    from tommybar.pack.audit.telling import audit_findings, audit_words
    from tommybar.pack.one_file import file_names

    plan = plan_of(ask)
    count = len(_sheets(ask, plan))
    names = [name for name, _ in ask.desk.extra["sheets"][_key(ask, plan)]]
    audits = ask.desk.extra["audits"][_key(ask, plan)]
    pack = _packs(ask.desk).get(_key(ask, plan))
    page = SheetsPage(
        head_of(ask, "sheets", plan),
        tuple(zip(range(1, count + 1), names, strict=True)),
        tuple(_file(pack, name) for name in sorted(pack.files, key=_wanted_first)) if pack else (),
        tuple(
            (group, tuple((name, _kind(name)) for name in names))
            for group, names in file_names(plan, ask.reader).items()
            if not (pack and group == "everything")  # they stand in the list above
        ),
        plan.plan_id,
        ask.reader.unit,
        *setting_of(ask),
        get_args(PaperName),
        audit_words(audits) if audits else "",
        tuple(f"{one.words} {one.remedy}" for one in audit_findings(audits)),
    )
    return answer(ask, "sheets.html", page, "designs")


def _kind(name: str) -> str:
    """What is written on the link: the kind of file, or the name of one that has its own."""
    place = PurePosixPath(name)
    if place.parts[0] == "templates":
        return f"template {place.stem.rpartition('-')[2]}"
    return place.suffix[1:].upper() if place.stem == "assembly" or len(place.parts) > 1 else name


def _file(pack: Pack, name: str) -> FileShown:
    size = f"{len(pack.files[name]) / 1000:.0f} kB"
    return FileShown(name, KINDS.get(PurePosixPath(name).suffix, ""), size)


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
    from tommybar.planning import with_assembly

    plan, unit, name = plan_of(ask), ask.reader.unit, name_of(ask)
    setting, key, desk = setting_of(ask), _key(ask, plan), ask.desk

    def deed(tell: Tell) -> None:
        with TemporaryDirectory(prefix="tommybar-pack-") as folder:
            place = Path(folder)
            written = write_pack(with_assembly(plan, unit), place, unit, tell, *setting)
            if not (place / "machine.html").exists():
                tell("machine.html")
                written = [*written, write_machine_file(plan, place / "machine.html", unit)]
            files = {one.relative_to(place).as_posix(): one.read_bytes() for one in sorted(written)}
        tell("all in one")
        files[f"{name}.zip"] = _zipped(files)
        packs = _packs(desk)
        packs[key] = Pack(files)
        while len(packs) > PACKS_KEPT:
            packs.popitem(last=False)

    work = desk.works.begin("The pack", f"/designs/{name}/sheets#files", deed)
    return go_to(f"/work/{work.name}")


def _wanted_first(name: str) -> tuple[int, str]:
    """What most people take comes first: the pack on paper, the file for the machine, everything in one."""
    first = ("pack.pdf", "machine.html")
    if name in first:
        return first.index(name), name
    return (2 if name.endswith(".zip") else 3), name


def _zipped(files: Mapping[str, bytes]) -> bytes:
    data = io.BytesIO()
    with zipfile.ZipFile(data, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, content in files.items():
            archive.writestr(name, content)
    return data.getvalue()


def take(ask: Ask) -> Response:
    """A file of the pack; only what was written can be named."""
    plan = plan_of(ask)
    pack = _packs(ask.desk).get(_key(ask, plan))
    name = str(ask.path["file"])
    if pack is None or name not in pack.files:
        raise Refusal(
            f'There is no file "{name[:80]}" in this pack.', "Write the pack first, then look at its list."
        )
    plain = PurePosixPath(name).name
    kind = mimetypes.guess_type(plain)[0] or "application/octet-stream"
    return Response(
        pack.files[name], media_type=kind, headers={"content-disposition": f'attachment; filename="{plain}"'}
    )
