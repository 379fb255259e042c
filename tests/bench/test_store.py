"""The folder and its database: what is acknowledged is there, what cannot be written says why."""

import sqlite3
from contextlib import closing
from datetime import date, timedelta
from pathlib import Path

import pytest

from tommybar.bench import database as db
from tommybar.bench.backup import back_up, back_up_daily, backups
from tommybar.bench.builds import builds, load_build
from tommybar.bench.folder import home_folder, open_folder, refuse_name
from tommybar.bench.journal import entries_after, receive
from tommybar.refusals import OwnFault, Refusal

HERE = Path(__file__).parent
NEWEST = max(db.migrations())


def in_form_1(place):
    """A database as the first form of it was."""
    with closing(sqlite3.connect(place)) as database:
        database.executescript((HERE / "form_1.sql").read_text(encoding="utf-8"))


def test_the_home_folder_is_the_one_named_in_the_environment(monkeypatch, tmp_path):
    """$TOMMYBAR_HOME names the folder; without it, the share folder of the user."""
    monkeypatch.setenv("TOMMYBAR_HOME", str(tmp_path / "here"))
    assert home_folder() == tmp_path / "here"

    monkeypatch.setenv("TOMMYBAR_HOME", "")
    assert home_folder().parts[-3:] == (".local", "share", "tommybar")


def test_designs_and_shops_are_plain_files(folder):
    """What is saved can be read with any editor, under its own name."""
    place = folder.save_design("wheel two", "tommybar: 1  # mine\n")

    assert place.read_text() == "tommybar: 1  # mine\n"
    assert folder.designs() == ("demo", "wheel two")
    assert [one.name for one in (folder.path / "designs").iterdir() if one.suffix != ".yaml"] == []


@pytest.mark.parametrize("name", ["../x", "a/b", "", ".x", "a..b", "con", "x\0", "a" * 81, "x.", "C:\\x"])
def test_a_name_that_leads_elsewhere_is_refused(folder, name):
    """No name of a design leads out of the folder or to a device."""
    with pytest.raises(Refusal, match="cannot be a name"):
        folder.save_design(name, "x")
    with pytest.raises(Refusal, match="Choose another name"):
        refuse_name(name)


def test_a_design_that_is_not_there_offers_the_nearest(folder):
    """A slip of the name is answered with the name that was meant."""
    with pytest.raises(Refusal, match=r'no design "dem".*Did you mean "demo"'):
        folder.design_text("dem")


def test_the_database_is_safe_against_power_cuts(folder):
    """Write-ahead log, full synchronising, foreign keys, strict tables."""
    with db.reading(folder.database) as database:
        assert database.execute("PRAGMA journal_mode").fetchone()[0] == "wal"
        assert database.execute("PRAGMA synchronous").fetchone()[0] == 2
        assert database.execute("PRAGMA foreign_keys").fetchone()[0] == 1
        tables = database.execute("SELECT name, strict FROM pragma_table_list WHERE schema = 'main'")
        kept = {name: strict for name, strict in tables if not name.startswith("sqlite_")}
    assert kept == {"builds": 1, "entries": 1}


def test_nothing_in_a_journal_is_changed_or_taken_away(folder, build, hand):
    """The database itself refuses an update and a deletion of an entry."""
    receive(folder, build.id, [hand("tick", "wheel/1/1")])
    for statement in ("UPDATE entries SET key = 'x'", "DELETE FROM entries"):
        with pytest.raises(OwnFault, match="never"), db.writing(folder.database) as database:
            database.execute(statement)
    assert len(load_build(folder, build.id).entries) == 1


def test_a_database_of_the_previous_form_is_brought_up_to_date(tmp_path):
    """Builds and entries of form 1 are there afterwards, in their order, and a copy of the old lies aside."""
    (tmp_path / "backups").mkdir()
    in_form_1(tmp_path / "builds.sqlite")

    folder = open_folder(tmp_path)
    old = load_build(folder, "1111")

    assert db.version_of(folder.database) == NEWEST
    assert (old.title, old.scale, old.pins, old.stock) == ("Old wheel", 0.9, {"web": 5.0}, "rack")
    assert [(one.number, one.kind, one.key) for one in old.entries] == [
        (1, "tick", "wheel/1/1"),
        (2, "size", "wheel.bore"),
        (3, "skip", "wheel/1/10"),
    ]
    (copy,) = (tmp_path / "backups").glob("builds-form-1-*.sqlite")
    assert db.version_of(copy) == 1


def test_a_migration_that_fails_leaves_the_old_form_whole(tmp_path, monkeypatch):
    """When a step breaks in its middle nothing of it is kept."""
    in_form_1(tmp_path / "builds.sqlite")
    broken = {**db.migrations(), 2: "ALTER TABLE entries ADD COLUMN number INTEGER; DROP TABLE lathes;"}
    monkeypatch.setattr(db, "migrations", lambda: broken)

    with pytest.raises(OwnFault, match="no such table"):
        open_folder(tmp_path)

    assert db.version_of(tmp_path / "builds.sqlite") == 1
    with db.reading(tmp_path / "builds.sqlite") as database:
        columns = [row[1] for row in database.execute("PRAGMA table_info(entries)")]
    assert "number" not in columns


def test_a_database_of_a_later_form_is_refused(folder):
    """A later program's database is not touched; the words name both forms."""
    with closing(sqlite3.connect(folder.database)) as database:
        database.execute(f"PRAGMA user_version = {NEWEST + 1}")
    before = folder.database.read_bytes()

    with pytest.raises(Refusal, match=f"later version .* its form is {NEWEST + 1}.*up to {NEWEST}"):
        open_folder(folder.path)
    assert folder.database.read_bytes() == before


def test_a_file_that_is_no_database_is_told(tmp_path):
    """A damaged database is named, with what to do."""
    (tmp_path / "builds.sqlite").write_bytes(b"this is a letter to my aunt " * 200)

    with pytest.raises(Refusal, match=r"builds.sqlite is damaged.*backups"):
        open_folder(tmp_path)


def test_a_full_disk_is_told_and_loses_nothing(folder, build, hand, monkeypatch):
    """When the database may not grow the entry is refused in plain words, and the older ones are there."""
    kept = hand("note", words="kept")
    receive(folder, build.id, [kept])
    with db.reading(folder.database) as database:
        pages = database.execute("PRAGMA page_count").fetchone()[0]
    monkeypatch.setattr(db, "SETTINGS", (*db.SETTINGS, f"PRAGMA max_page_count = {pages}"))

    with pytest.raises(Refusal, match=r"The disk is full.*Make room"):
        receive(folder, build.id, [hand("note", words="x" * 4000) for _ in range(20)])

    assert [one.id for one in load_build(folder, build.id).entries] == [kept.id]


def test_a_full_disk_does_not_spoil_a_design(folder, monkeypatch):
    """A design that cannot be written leaves the old one whole and nothing half-made beside it."""

    def full(_):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("tommybar.bench.folder.os.fsync", full)
    before = folder.design_text("demo")

    with pytest.raises(Refusal, match="The disk is full"):
        folder.save_design("demo", "tommybar: 1\n")
    monkeypatch.undo()
    assert folder.design_text("demo") == before
    assert len(list((folder.path / "designs").iterdir())) == 1


def test_a_day_has_one_copy_and_the_old_ones_go(folder, build, hand):
    """The newest copies are kept, one a day; each is a sound database."""
    receive(folder, build.id, [hand("tick", "wheel/1/1")])
    first = date(2026, 1, 1)
    for day in range(9):
        back_up(folder, keep=5, day=first + timedelta(days=day))

    assert [one.stem[-2:] for one in backups(folder)][:4] == ["06", "07", "08", "09"]
    assert back_up_daily(folder, day=first + timedelta(days=8)) is None
    with db.reading(backups(folder)[0]) as database:
        assert database.execute("SELECT count(*) FROM entries").fetchone()[0] == 1


def test_the_first_entry_of_a_day_lays_a_copy_aside(folder, build, hand):
    """The copy is made without being asked for, before the entry goes in."""
    receive(folder, build.id, [hand("tick", "wheel/1/1")])

    (copy,) = backups(folder)
    with db.reading(copy) as database:
        assert database.execute("SELECT count(*) FROM entries").fetchone()[0] == 0


def test_an_entry_is_not_turned_away_for_want_of_a_copy(folder, build, hand):
    """When no copy can be laid aside the entry is stored and the words say so."""
    (folder.path / "backups").rmdir()
    (folder.path / "backups").write_text("in the way")

    receipt = receive(folder, build.id, [hand("tick", "wheel/1/1")])

    assert len(receipt.stored) == 1
    assert "backups" in receipt.no_backup


def test_an_entry_that_is_sent_twice_is_stored_once(folder, build, hand):
    """The second time it is known; the receipt lets the device forget it either way."""
    one, two = hand("tick", "wheel/1/1"), hand("size", "wheel.bore", value=10.01)

    first = receive(folder, build.id, [one, two, one])
    second = receive(folder, build.id, [two, one.as_dict()])

    assert (first.stored, first.known) == ((one.id, two.id), (one.id,))
    assert (second.stored, second.known) == ((), (two.id, one.id))
    assert second.safe == {one.id, two.id}
    assert [entry.id for entry in load_build(folder, build.id).entries] == [one.id, two.id]


def test_an_id_that_is_used_again_for_something_else_is_refused(folder, build, hand):
    """The first entry stands untouched, the words say what is wrong, the others of the queue go in."""
    one = hand("size", "wheel.bore", value=10.01)
    receive(folder, build.id, [one])
    other = {**one.as_dict(), "said": {"value": 10.02}}

    receipt = receive(folder, build.id, [other, {"id": "nonsense"}, hand("tick", "wheel/1/1")])

    assert [name for name, _ in receipt.refused] == ["nonsense", one.id]
    assert "an id of its own" in receipt.refused[1][1]
    assert len(receipt.stored) == 1
    assert load_build(folder, build.id).entries[0].said["value"] == 10.01


def test_entries_of_no_build_are_refused(folder, hand):
    """An unknown build takes nothing."""
    with pytest.raises(Refusal, match='No build has the id "nobody"'):
        receive(folder, "nobody", [hand("tick", "wheel/1/1")])


def test_a_second_device_learns_what_is_new(folder, build, hand):
    """Asked from a position on, only what came in later is told."""
    receive(folder, build.id, [hand("tick", "wheel/1/1")])
    _, position = entries_after(folder, build.id)
    later = hand("tick", "wheel/1/2")
    receive(folder, build.id, [later])

    news, now = entries_after(folder, build.id, position)

    assert (news, now > position) == ((later,), True)
    assert entries_after(folder, build.id, now) == ((), now)


def test_builds_are_listed_with_what_was_written_last(folder, build, hand):
    """The list says how many entries there are and when the last was written."""
    receive(folder, build.id, [hand("tick", "wheel/1/1"), hand("tick", "wheel/1/2")])

    (line,) = builds(folder)

    assert (line.title, line.entries, line.last[:16]) == ("Demonstrator", 2, "2026-05-02T18:02")


def test_a_build_is_found_by_the_beginning_of_its_id(folder, build):
    """A short id will do; one that fits none or several is refused."""
    assert load_build(folder, build.id[:8]).id == build.id
    with pytest.raises(Refusal, match="No build has"):
        load_build(folder, "zzz")
    with pytest.raises(Refusal, match="No build has"):
        load_build(folder, "")
