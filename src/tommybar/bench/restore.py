"""A day's copy of the builds brought back: what is missing now is added, and nothing is written over.

When the database itself is damaged it is put aside, under a name that says
so, and the copy takes its place.
"""

from __future__ import annotations

import datetime
import sqlite3
from contextlib import closing
from dataclasses import dataclass
from pathlib import Path
from tempfile import TemporaryDirectory

from tommybar.bench.archive import merge
from tommybar.bench.backup import backups
from tommybar.bench.database import copy_database, prepare, reading
from tommybar.bench.folder import Folder
from tommybar.bench.stored import build_of, entry_of
from tommybar.bench.words_of_errors import refusal_of
from tommybar.refusals import Refusal, nearest


@dataclass(frozen=True)
class DayCopy:
    """A dated copy: its name, how many builds and entries it holds, when the last of them was made."""

    name: str
    builds: int
    entries: int
    last: str


@dataclass(frozen=True)
class BroughtBack:
    """What came back from a copy, and what was there already."""

    builds: int
    entries: int
    known: int
    put_aside: str = ""  # name of the damaged database, when there was one


def day_copies(folder: Folder) -> tuple[DayCopy, ...]:
    """The dated copies with what they hold, newest first; a damaged copy is left out."""
    found = []
    for place in reversed(backups(folder)):
        try:
            with reading(place) as database:
                builds = database.execute("SELECT count(*) FROM builds").fetchone()[0]
                entries, last = database.execute("SELECT count(*), max(at) FROM entries").fetchone()
        except Refusal:
            continue
        found.append(DayCopy(place.name, builds, entries, last or ""))
    return tuple(found)


def bring_back(folder: Folder, copy: str | Path) -> BroughtBack:
    """Bring a copy back, by its name in the folder of backups or as a file.

    Raises :class:`Refusal` when there is no such copy, when it is damaged
    itself, or when it contradicts what is here; then nothing was changed.
    """
    place = _place(folder, copy)
    with TemporaryDirectory(prefix="tommybar-") as room:
        there = Path(room) / "copy.sqlite"
        if not _sound(place):
            raise Refusal(f"The copy {place.name} is damaged.", "Take another day's.")
        copy_database(place, there)
        prepare(there, Path(room))  # an older form is brought up to date, in the copy of the copy
        with reading(there) as database:
            builds = tuple(build_of(row) for row in database.execute("SELECT * FROM builds ORDER BY id"))
            rows = database.execute("SELECT * FROM entries ORDER BY position").fetchall()
            entries = tuple((str(row["build"]), entry_of(row)) for row in rows)
        if not folder.database.exists() or _sound(folder.database):
            prepare(folder.database, folder.path / "backups")
            return BroughtBack(*merge(folder, builds, entries))
        aside = _put_aside(folder)
        copy_database(there, folder.database)
    prepare(folder.database, folder.path / "backups")
    return BroughtBack(len(builds), len(entries), 0, aside)


def _place(folder: Folder, copy: str | Path) -> Path:
    named = {one.name: one for one in backups(folder)}
    if str(copy) in named:
        return named[str(copy)]
    if isinstance(copy, Path) and copy.is_file():
        return copy
    raise Refusal(f"There is no copy {copy}.", nearest(str(copy), tuple(named)) or "Look into backups.")


def _sound(place: Path) -> bool:
    """Whether a database can be read and holds together."""
    try:
        with closing(sqlite3.connect(place)) as database:
            return bool(database.execute("PRAGMA integrity_check").fetchone()[0] == "ok")
    except sqlite3.Error:
        return False


def _put_aside(folder: Folder) -> str:
    """Move the damaged database, with what belongs to it, into the folder of backups."""
    name = f"damaged-{datetime.datetime.now().strftime('%Y-%m-%d-%H%M%S')}.sqlite"
    try:
        for tail in ("", "-wal", "-shm"):
            part = folder.database.with_name(folder.database.name + tail)
            if part.exists():
                part.replace(folder.path / "backups" / (name + tail))
    except OSError as error:
        raise refusal_of(error, folder.database) from None
    return name
