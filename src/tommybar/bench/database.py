"""The database of the builds: opened safely, brought up to date, errors turned into words.

An entry counts as acknowledged when its transaction is committed; with
``synchronous = FULL`` it is on the disk then.
"""

from __future__ import annotations

import datetime
import os
import re
import sqlite3
import time
from collections.abc import Iterator
from contextlib import closing, contextmanager, suppress
from pathlib import Path

from tommybar.bench.words_of_errors import refusal_of
from tommybar.refusals import OwnFault, Refusal

PATIENCE = 20.0  # [s] for another writer to be done
SETTINGS = ("PRAGMA synchronous = FULL", "PRAGMA foreign_keys = ON")
MIGRATIONS = Path(__file__).parent / "migrations"


def migrations() -> dict[int, str]:
    """The numbered migrations and their text."""
    found = {int(one.name[:4]): one.read_text(encoding="utf-8") for one in sorted(MIGRATIONS.glob("*.sql"))}
    if list(found) != list(range(1, len(found) + 1)):
        raise OwnFault(f"The migrations are numbered {list(found)}; one is missing.")
    return found


@contextmanager
def reading(place: Path) -> Iterator[sqlite3.Connection]:
    """A connection for questions."""
    try:
        with closing(_open(place)) as database:
            yield database
    except sqlite3.Error as error:
        raise refusal_of(error, place) from None


@contextmanager
def writing(place: Path) -> Iterator[sqlite3.Connection]:
    """A connection inside one transaction: all of it is kept and on the disk at the end, or none of it."""
    try:
        with closing(_open(place)) as database:
            database.execute("BEGIN IMMEDIATE")
            try:
                yield database
                database.execute("COMMIT")
            except BaseException:
                if database.in_transaction:
                    database.execute("ROLLBACK")
                raise
    except sqlite3.Error as error:
        raise refusal_of(error, place) from None


def _open(place: Path) -> sqlite3.Connection:
    database = sqlite3.connect(place, timeout=PATIENCE, isolation_level=None)
    try:
        database.row_factory = sqlite3.Row
        for setting in SETTINGS:
            database.execute(setting)
    except sqlite3.Error:
        database.close()
        raise
    return database


def version_of(place: Path) -> int:
    """The version of the schema that a database has; 0 is an empty one."""
    with reading(place) as database:
        return int(database.execute("PRAGMA user_version").fetchone()[0])


def prepare(place: Path, backups: Path) -> None:
    """Make the database, or bring it up to date with a copy of the old one laid beside.

    A database of a later version is refused: this program would not
    understand all of it.
    """
    known = migrations()
    newest = max(known)
    version = version_of(place)
    if version == newest:
        return
    if version > newest:
        raise Refusal(
            f"{place} was written by a later version of the program: its form is {version}, this program"
            f" knows up to {newest}.",
            "Use the later version; nothing was changed.",
        )
    if version:
        copy_database(place, backups / f"builds-form-{version}-{_now()}.sqlite")
    _wal(place)
    for number in range(version + 1, newest + 1):
        _migrate(place, number, known[number])


def _now() -> str:
    return datetime.datetime.now().strftime("%Y-%m-%d-%H%M%S")


def _wal(place: Path) -> None:
    """Switch to the write-ahead log; another program that does the same just now is waited for."""
    end = time.monotonic() + PATIENCE
    while True:
        try:
            with closing(_open(place)) as database:
                database.execute("PRAGMA journal_mode = WAL")
            return
        except sqlite3.Error as error:
            if "locked" not in str(error) or time.monotonic() > end:
                raise refusal_of(error, place) from None
            time.sleep(0.02)


def _migrate(place: Path, number: int, text: str) -> None:
    """One step up, in one transaction; a second program that wanted the same finds it done."""
    with writing(place) as database:
        if database.execute("PRAGMA user_version").fetchone()[0] >= number:
            return
        for statement in statements(text):
            database.execute(statement)
        database.execute(f"PRAGMA user_version = {number}")


def statements(text: str) -> tuple[str, ...]:
    """A migration cut into its statements; triggers stay whole.

    >>> statements("CREATE TABLE a (b TEXT); -- why" + chr(10) + "DROP TABLE a;")
    ('CREATE TABLE a (b TEXT);', 'DROP TABLE a;')
    """
    bare = re.sub(r"--[^\n]*", "", text)
    found, piece = [], ""
    for part in re.split(r"(?<=;)", bare):
        piece += part
        if sqlite3.complete_statement(piece):
            found.append(piece.strip())
            piece = ""
    if piece.strip():
        raise OwnFault(f"A migration ends in the middle of a statement: {piece.strip()[:60]}")
    return tuple(found)


def copy_database(place: Path, target: Path) -> Path:
    """A sound copy of a database that others may be writing in; whole or not there at all."""
    beside = target.with_suffix(f".{os.getpid()}.new")
    try:
        target.parent.mkdir(parents=True, exist_ok=True)
        beside.unlink(missing_ok=True)
        with closing(_open(place)) as source, closing(sqlite3.connect(beside)) as copy:
            source.backup(copy)
        beside.replace(target)
    except (OSError, sqlite3.Error) as error:
        with suppress(OSError):
            beside.unlink(missing_ok=True)
        raise refusal_of(error, target) from None
    return target
