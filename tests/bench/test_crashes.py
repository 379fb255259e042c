"""Writers that are killed, that write at once, that may not write.

TOMMYBAR_KILLS sets how many kills are tried; 200 is the measure asked of the
house, the suite itself tries fewer.
"""

import os
import random
import signal
import sqlite3
import subprocess
import sys
import time
from contextlib import closing
from pathlib import Path

import pytest

from tommybar.bench.builds import load_build
from tommybar.bench.folder import open_folder
from tommybar.bench.journal import receive
from tommybar.refusals import Refusal

WRITER = Path(__file__).parent / "writer.py"
KILLS = int(os.environ.get("TOMMYBAR_KILLS", "40"))
AT_ONCE = 4  # writers that run, and are killed, together


def start(folder, build, device, *more):
    """A writer in a process of its own."""
    return subprocess.Popen(
        [sys.executable, str(WRITER), str(folder.path), build.id, device, *more],
        stdout=subprocess.PIPE,
        text=True,
    )


def acknowledged(writer):
    """The whole lines that a writer said; a line torn by the kill was not said."""
    text = writer.communicate()[0]
    return text[: text.rfind("\n") + 1].split()[1:]


def sound(folder):
    """Whether the database holds together."""
    with closing(sqlite3.connect(folder.database)) as database:
        broken = database.execute("PRAGMA foreign_key_check").fetchall()
        return database.execute("PRAGMA integrity_check").fetchone()[0] == "ok" and not broken


def test_killed_writers_lose_nothing_that_was_acknowledged(folder, build):
    """Killed at random moments, in the middle of writing: every entry that was acknowledged is there."""
    moments = random.Random(7)
    said = []
    for turn in range(0, KILLS, AT_ONCE):
        writers = [start(folder, build, f"device {turn + one}") for one in range(min(AT_ONCE, KILLS - turn))]
        for writer in writers:
            assert writer.stdout.readline() == "begun\n"
        for writer in writers:
            time.sleep(moments.uniform(0.002, 0.08))
            os.kill(writer.pid, signal.SIGKILL)
        for writer in writers:
            said += acknowledged(writer)
            assert writer.returncode == -signal.SIGKILL

    there = {one.id for one in load_build(folder, build.id).entries}
    assert len(said) > KILLS / 2
    assert set(said) - there == set()
    assert sound(folder)


def test_a_batch_is_there_whole_or_not_at_all(folder, build):
    """Three entries in one transaction: after a kill a device never has one or two of them."""
    writers = [start(folder, build, f"device {one}") for one in range(3)]
    for writer in writers:
        writer.stdout.readline()
    time.sleep(0.25)
    for writer in writers:
        os.kill(writer.pid, signal.SIGKILL)
        writer.communicate()

    for device in ("device 0", "device 1", "device 2"):
        mine = [one.number for one in load_build(folder, build.id).entries if one.device == device]
        assert mine == list(range(1, len(mine) + 1))
        assert len(mine) % 4 in (0, 1)  # batches of one and of three


def test_writers_at_once_never_corrupt(folder, build):
    """Three programs that write at the same time all come through, each in its own order."""
    writers = [start(folder, build, f"device {one}", "40") for one in range(3)]
    said = [acknowledged(writer) for writer in writers]

    entries = load_build(folder, build.id).entries
    assert [writer.returncode for writer in writers] == [0, 0, 0]
    assert {one.id for one in entries} == {name for names in said for name in names}
    for device in ("device 0", "device 1", "device 2"):
        numbers = [one.number for one in entries if one.device == device]
        assert numbers == list(range(1, len(numbers) + 1))
        assert len(numbers) >= 40
    assert sound(folder)


OPENER = """
import sys
from tommybar.bench.database import version_of
from tommybar.bench.folder import open_folder
sys.stdout.write(str(version_of(open_folder(sys.argv[1]).database)))
"""


def test_programs_that_start_at_once_make_one_database(tmp_path):
    """Four programs open a folder that is not there yet; all find it in its newest form."""
    programs = [
        subprocess.Popen(
            [sys.executable, "-c", OPENER, str(tmp_path / "new")], stdout=subprocess.PIPE, text=True
        )
        for _ in range(4)
    ]

    assert [one.communicate()[0] for one in programs] == ["2", "2", "2", "2"]


def in_a_read_only_folder(path, build_id, entry):
    """Try to write as a user who may not; the words come back through a pipe."""
    reader, writer = os.pipe()
    child = os.fork()
    if child == 0:
        words = "nothing was refused"
        try:
            if os.getuid() == 0:
                os.setgid(65534)
                os.setuid(65534)
            folder = open_folder(path)
            entries = len(load_build(folder, build_id).entries)
            try:
                receive(folder, build_id, [entry])
            except Refusal as refusal:
                words = f"{entries} read; {refusal}"
            try:
                folder.save_design("demo", "x")
            except Refusal as refusal:
                words += f"; {refusal}"
        except BaseException as error:
            words = repr(error)
        finally:
            os.write(writer, words.encode())
            os._exit(0)
    os.close(writer)
    with os.fdopen(reader) as pipe:
        words = pipe.read()
    os.waitpid(child, 0)
    return words


@pytest.fixture
def shut(folder):
    """Take the right to write from a folder for a while; give others the right to come to it."""
    for place in (folder.path.parent.parent, folder.path.parent):
        os.chmod(place, 0o755)
    places = [folder.path, *folder.path.rglob("*")]
    for place in places:
        os.chmod(place, 0o555 if place.is_dir() else 0o444)
    yield
    for place in places:
        if place.exists():
            os.chmod(place, 0o755 if place.is_dir() else 0o644)


def test_a_read_only_folder_is_told(folder, build, hand, shut):
    """Who may not write is told so, with what to do, and what is there is as it was."""
    words = in_a_read_only_folder(folder.path, build.id, hand("tick", "wheel/1/1"))

    assert "read-only for you" in words
    assert "TOMMYBAR_HOME" in words
    assert load_build(folder, build.id).entries == ()
