"""A day's copy brought back: by adding what is missing, or in place of a damaged database."""

import datetime
import sqlite3
from contextlib import closing

import pytest

from tommybar.bench.backup import back_up
from tommybar.bench.builds import load_build
from tommybar.bench.journal import receive
from tommybar.bench.restore import bring_back, day_copies
from tommybar.refusals import Refusal

DAY = datetime.date(2026, 5, 2)


def lose(folder, *ids):
    """Take entries out behind the program's back; its own triggers would forbid it."""
    with closing(sqlite3.connect(folder.database)) as database:
        for (name,) in database.execute("SELECT name FROM sqlite_master WHERE type = 'trigger'").fetchall():
            database.execute(f"DROP TRIGGER {name}")
        for one in ids:
            database.execute("DELETE FROM entries WHERE id = ?", (one,))
        database.commit()


def test_what_is_missing_comes_back_and_what_is_newer_stays(folder, build, hand):
    """An entry lost since the copy is back; one made since then is still there; nothing is doubled."""
    first, second, third = (hand("tick", f"wheel/1/{n}") for n in (1, 2, 3))
    receive(folder, build.id, [first, second])
    copy = back_up(folder, day=DAY)
    receive(folder, build.id, [third])
    lose(folder, second.id)

    back = bring_back(folder, copy.name)

    assert (back.builds, back.entries, back.known, back.put_aside) == (0, 1, 2, "")
    assert {one.id for one in load_build(folder, build.id).entries} == {first.id, second.id, third.id}


def test_a_damaged_database_is_put_aside(folder, build, hand):
    """The copy takes the place of a database that cannot be read, which is kept under another name."""
    entry = hand("tick", "wheel/1/1")
    receive(folder, build.id, [entry])
    copy = back_up(folder, day=DAY)
    for tail in ("-wal", "-shm"):
        folder.database.with_name(folder.database.name + tail).unlink(missing_ok=True)
    folder.database.write_bytes(b"no database at all" * 500)

    back = bring_back(folder, copy)

    assert load_build(folder, build.id).entries == (entry,)
    assert (folder.path / "backups" / back.put_aside).read_bytes().startswith(b"no database")


def test_a_damaged_copy_changes_nothing(folder, build, hand):
    """A copy that cannot be read is refused; what is here stays as it was."""
    entry = hand("tick", "wheel/1/1")
    receive(folder, build.id, [entry])
    copy = back_up(folder, day=DAY)
    copy.write_bytes(copy.read_bytes()[:3000] + b"\0" * 3000)

    with pytest.raises(Refusal, match="damaged"):
        bring_back(folder, copy.name)
    with pytest.raises(Refusal, match="no copy"):
        bring_back(folder, "builds-1999-01-01.sqlite")

    assert load_build(folder, build.id).entries == (entry,)


def test_copies_are_listed_with_what_they_hold(folder, build, hand):
    """Newest first, with builds, entries and the time of the last one."""
    back_up(folder, day=DAY - datetime.timedelta(days=1))
    receive(folder, build.id, [hand("tick", "wheel/1/1")])
    back_up(folder, day=DAY)

    newest, older = (one for one in day_copies(folder) if one.name <= "builds-2026-05-02.sqlite")

    assert (newest.name, newest.builds, newest.entries) == ("builds-2026-05-02.sqlite", 1, 1)
    assert newest.last.startswith("2026-05-02T18:01")
    assert (older.entries, older.last) == (0, "")
