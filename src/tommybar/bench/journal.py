"""Entries that come in: stored once each, in one transaction, and acknowledged when they are on the disk."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any

from tommybar.bench.backup import back_up_daily
from tommybar.bench.database import reading, writing
from tommybar.bench.entries import Entry, entry_from
from tommybar.bench.folder import Folder
from tommybar.bench.stored import entry_of, put_entry
from tommybar.refusals import Refusal


@dataclass(frozen=True)
class Receipt:
    """What became of entries that were sent: a device may forget those that are stored or known."""

    stored: tuple[str, ...]  # ids now on the disk
    known: tuple[str, ...]  # ids that were there already, word for word the same
    refused: tuple[tuple[str, str], ...]  # id (or its place in the list) and why
    no_backup: str = ""  # why the day's copy could not be laid aside; the entries are safe all the same

    @property
    def safe(self) -> frozenset[str]:
        """Ids that are on the disk."""
        return frozenset(self.stored) | frozenset(self.known)


def receive(folder: Folder, build_id: str, sent: Iterable[Entry | Mapping[str, Any]]) -> Receipt:
    """Store entries of a build. What the receipt names as stored or known is on the disk when it returns.

    Entries may come twice, late and in any order. One that is faulty is
    refused with words and does not hold up the others. Raises
    :class:`Refusal` when there is no such build or nothing can be written.
    """
    good: list[Entry] = []
    refused: list[tuple[str, str]] = []
    for index, one in enumerate(sent):
        try:
            good.append(entry_from(one.as_dict() if isinstance(one, Entry) else one))
        except Refusal as refusal:
            name = one.get("id") if isinstance(one, Mapping) else None
            refused.append((str(name or f"entry {index + 1}")[:60], str(refusal)))
    no_backup = _backed_up(folder)
    stored, known = [], []
    with writing(folder.database) as database:
        if database.execute("SELECT 1 FROM builds WHERE id = ?", (build_id,)).fetchone() is None:
            raise Refusal(f'No build has the id "{str(build_id)[:60]}".', "The list shows the ids.")
        for entry in good:
            row = database.execute("SELECT * FROM entries WHERE id = ?", (entry.id,)).fetchone()
            if row is None:
                put_entry(database, build_id, entry)
                stored.append(entry.id)
            elif row["build"] == build_id and entry_of(row) == entry:
                known.append(entry.id)
            else:
                words = "Another entry has this id already. Each entry needs an id of its own."
                refused.append((entry.id, words))
    return Receipt(tuple(stored), tuple(dict.fromkeys(known)), tuple(refused), no_backup)


def _backed_up(folder: Folder) -> str:
    """Words when the day's copy failed: an entry is not turned away for want of a copy."""
    try:
        back_up_daily(folder)
    except Refusal as refusal:
        return str(refusal)
    return ""


def entries_after(folder: Folder, build_id: str, position: int = 0) -> tuple[tuple[Entry, ...], int]:
    """What came in after a position, and the position now: how a second device learns what is new."""
    with reading(folder.database) as database:
        rows = database.execute(
            "SELECT * FROM entries WHERE build = ? AND position > ? ORDER BY position", (build_id, position)
        ).fetchall()
    return tuple(entry_of(row) for row in rows), rows[-1]["position"] if rows else position
