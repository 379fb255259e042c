"""Everything of the user's as one archive: files, journal as lines of JSON, and a list of checksums."""

from __future__ import annotations

import hashlib
import json
import os
import sqlite3
import zipfile
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

from tommybar.bench.archive_reading import FORM, MANIFEST, SUMS, read_checked
from tommybar.bench.database import reading, writing
from tommybar.bench.entries import Entry
from tommybar.bench.folder import Folder
from tommybar.bench.stored import COLUMNS, Build, build_of, entry_of, put_build, put_entry
from tommybar.bench.words_of_errors import refusal_of
from tommybar.refusals import Refusal
from tommybar.version import __version__

FIXED = (2000, 1, 1, 0, 0, 0)  # date of every file inside, so that equal folders give equal archives


@dataclass(frozen=True)
class Brought:
    """What an import brought in, and what was there already."""

    designs: tuple[str, ...]  # names under which new designs were laid in
    shops: tuple[str, ...]
    builds: int
    entries: int
    known: int  # builds and entries that were there already
    renamed: tuple[tuple[str, str], ...] = ()  # name in the archive, name here: another text had that name


def write_archive(folder: Folder, place: str | Path) -> Path:
    """Write everything into one zip archive; whole or not there at all."""
    place = Path(place)
    files = {MANIFEST: _json({"tommybar": FORM, "program": __version__})}
    files |= {f"designs/{name}.yaml": folder.design_path(name).read_bytes() for name in folder.designs()}
    files |= {f"shops/{name}.yaml": folder.shop_path(name).read_bytes() for name in folder.shops()}
    with reading(folder.database) as database:
        database.execute("BEGIN")  # builds and entries of one moment
        builds = [build_of(row) for row in database.execute("SELECT * FROM builds ORDER BY id")]
        rows = database.execute("SELECT * FROM entries ORDER BY position").fetchall()
        database.execute("COMMIT")
    files["builds.jsonl"] = b"".join(_json(_plain(one)) for one in builds)
    files["journal.jsonl"] = b"".join(
        _json({"build": row["build"], **entry_of(row).as_dict()}) for row in rows
    )
    files[SUMS] = "".join(
        f"{hashlib.sha256(data).hexdigest()}  {name}\n" for name, data in sorted(files.items())
    ).encode()
    beside = place.with_name(f".{place.name}.new")
    try:
        with zipfile.ZipFile(beside, "w", zipfile.ZIP_DEFLATED) as archive:
            for name, data in sorted(files.items()):
                archive.writestr(zipfile.ZipInfo(name, FIXED), data, zipfile.ZIP_DEFLATED)
        with beside.open("rb") as file:
            os.fsync(file.fileno())
        beside.replace(place)
    except OSError as error:
        beside.unlink(missing_ok=True)
        raise refusal_of(error, place) from None
    return place


def _plain(build: Build) -> dict[str, object]:
    return {name: dict(build.pins) if name == "pins" else getattr(build, name) for name in COLUMNS}


def _json(data: object) -> bytes:
    return (json.dumps(data, ensure_ascii=False, sort_keys=True) + "\n").encode()


def read_archive(folder: Folder, place: str | Path) -> Brought:
    """Bring an archive in: what is new is added, what is there stays, nothing is doubled or overwritten.

    A design or shop whose name is taken by another text is laid in under a
    further name. Raises :class:`Refusal` with the reason when the archive is
    damaged or does not fit; then nothing was brought in.
    """
    found = read_checked(Path(place))
    with writing(folder.database) as database:
        builds, entries, known = _add_missing(database, found.builds, found.entries)
        designs, moved = _lay_in(folder, "design", found.designs)
        shops, moved_shops = _lay_in(folder, "shop", found.shops)
    return Brought(designs, shops, builds, entries, known, (*moved, *moved_shops))


def merge(
    folder: Folder, builds: tuple[Build, ...], entries: tuple[tuple[str, Entry], ...]
) -> tuple[int, int, int]:
    """Add the builds and entries that are not there: how many of each are new, how many were known.

    All of it comes in or none; raises :class:`Refusal` when one of them is
    there already and says something else.
    """
    with writing(folder.database) as database:
        return _add_missing(database, builds, entries)


def _add_missing(
    database: sqlite3.Connection, builds: tuple[Build, ...], entries: tuple[tuple[str, Entry], ...]
) -> tuple[int, int, int]:
    known = _refuse_other_builds(builds, [build_of(row) for row in database.execute("SELECT * FROM builds")])
    new_builds = [one for one in builds if one.id not in known]
    for build in new_builds:
        put_build(database, build)
    there = {row["id"]: (row["build"], entry_of(row)) for row in database.execute("SELECT * FROM entries")}
    new_entries = _refuse_other_entries(entries, there)
    for build_id, entry in new_entries:
        put_entry(database, build_id, entry)
    doubles = len(builds) - len(new_builds) + len(entries) - len(new_entries)
    return len(new_builds), len(new_entries), doubles


def _refuse_other_builds(coming: Iterable[Build], there: Iterable[Build]) -> set[str]:
    known = {one.id: one for one in there}
    for build in coming:
        if build.id in known and _plain(known[build.id]) != _plain(build):
            raise Refusal(
                f'The build "{build.title}" ({build.id}) is here already and was begun otherwise.',
                "Import into another folder and compare the two.",
            )
    return set(known)


def _refuse_other_entries(
    coming: Iterable[tuple[str, Entry]], there: dict[str, tuple[str, Entry]]
) -> list[tuple[str, Entry]]:
    new = []
    for build_id, entry in coming:
        if entry.id not in there:
            new.append((build_id, entry))
        elif there[entry.id] != (build_id, entry):
            raise Refusal(
                f"The entry {entry.id} is here already and says something else.",
                "Import into another folder and compare the two.",
            )
    return new


def _lay_in(
    folder: Folder, what: str, files: dict[str, str]
) -> tuple[tuple[str, ...], tuple[tuple[str, str], ...]]:
    """Write files that are new; a name that is taken by another text gets a mark of the text behind it."""
    path_of, save = (
        (folder.design_path, folder.save_design) if what == "design" else (folder.shop_path, folder.save_shop)
    )
    laid, moved = [], []
    for name, text in sorted(files.items()):
        here = name
        if path_of(name).exists() and path_of(name).read_bytes() != text.encode():
            here = f"{name[:70]}-{hashlib.sha256(text.encode()).hexdigest()[:6]}"
            moved.append((name, here))
        if not path_of(here).exists():
            save(here, text)
            laid.append(here)
    return tuple(laid), tuple(moved)
