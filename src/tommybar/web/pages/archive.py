"""Everything in one archive: taken away, and brought in again."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from tempfile import TemporaryDirectory

from starlette.datastructures import UploadFile
from starlette.responses import Response

from tommybar.bench.archive import Brought, read_archive, write_archive
from tommybar.bench.folder import Folder
from tommybar.bench.restore import BroughtBack, DayCopy, bring_back, day_copies
from tommybar.refusals import Complaint, Refusal
from tommybar.web.ask import Ask, answer


@dataclass(frozen=True)
class ArchivePage:
    """What came of it."""

    complaints: tuple[Complaint, ...]
    words: str
    folder: str
    copies: tuple[DayCopy, ...]


def archive(ask: Ask) -> Response:
    """The page."""
    return _shown(ask)


def _shown(ask: Ask, wrong: Refusal | None = None, words: str = "") -> Response:
    path = ask.desk.files.path
    page = ArchivePage(wrong.complaints if wrong else (), words, str(path), day_copies(Folder(path)))
    return answer(ask, "archive.html", page, "builds", 400 if wrong else 200)


def take_away(ask: Ask) -> Response:
    """The archive itself."""
    with TemporaryDirectory(prefix="tommybar-") as folder:
        data = write_archive(Folder(ask.desk.files.path), Path(folder) / "tommybar.zip").read_bytes()
    return Response(
        data,
        media_type="application/zip",
        headers={"content-disposition": 'attachment; filename="tommybar.zip"'},
    )


def bring_in(ask: Ask) -> Response:
    """Bring an archive in: what is new is added, nothing is overwritten."""
    file = ask.form.get("file")
    if not isinstance(file, UploadFile) or not file.filename:
        return _shown(ask, Refusal("No file was handed in.", "Choose a file first."))
    with TemporaryDirectory(prefix="tommybar-") as folder:
        place = Path(folder) / "brought.zip"
        place.write_bytes(file.file.read())
        try:
            brought = read_archive(Folder(ask.desk.files.path), place)
        except Refusal as refusal:
            return _shown(ask, refusal)
    return _shown(ask, None, _words(brought))


def restore(ask: Ask) -> Response:
    """Bring back what is missing now from a day's copy."""
    try:
        found = bring_back(Folder(ask.desk.files.path), str(ask.form.get("copy", "")))
    except Refusal as refusal:
        return _shown(ask, refusal)
    return _shown(ask, None, _back(found))


def _back(found: BroughtBack) -> str:
    aside = f" The damaged database lies in backups as {found.put_aside}." if found.put_aside else ""
    return (
        f"{found.builds} builds and {found.entries} entries are back; {found.known} were here already.{aside}"
    )


def _words(brought: Brought) -> str:
    words = (
        f"{len(brought.designs)} designs, {len(brought.shops)} shops, {brought.builds} builds and"
        f" {brought.entries} entries were brought in; {brought.known} were here already."
    )
    renamed = "; ".join(f"{old} is here as {new}" for old, new in brought.renamed)
    return f"{words} {renamed}".strip()
