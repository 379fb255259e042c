"""Everything as one archive: out, in again, merged without doubles; damaged ones refused with the reason."""

import hashlib
import json
import zipfile

import pytest

from tommybar.bench import archive_reading
from tommybar.bench.archive import read_archive, write_archive
from tommybar.bench.builds import load_build
from tommybar.bench.folder import open_folder
from tommybar.bench.journal import receive
from tommybar.refusals import Refusal

from .conftest import begin


@pytest.fixture
def full(folder, build, hand):
    """A folder with a build and a few entries in it."""
    reading = hand("size", "wheel.bore", value=10.0125, instrument="plug µ")
    receive(folder, build.id, [reading, hand("tick", "wheel/1/1"), hand("undo", reading.id)])
    return folder


@pytest.fixture
def archive(full, tmp_path):
    """The archive of that folder."""
    return write_archive(full, tmp_path / "all.zip")


@pytest.fixture
def other(tmp_path):
    """Another folder, empty."""
    return open_folder(tmp_path / "other")


def changed(archive, tmp_path, change, sums=True):
    """The archive with its files changed by ``change``; with true checksums unless told otherwise."""
    with zipfile.ZipFile(archive) as old:
        files = {name: old.read(name) for name in old.namelist()}
    change(files)
    if sums:
        files["SHA256SUMS"] = "".join(
            f"{hashlib.sha256(data).hexdigest()}  {name}\n"
            for name, data in files.items()
            if name != "SHA256SUMS"
        ).encode()
    place = tmp_path / "changed.zip"
    with zipfile.ZipFile(place, "w", zipfile.ZIP_DEFLATED) as new:
        for name, data in files.items():
            new.writestr(name, data)
    return place


def test_an_archive_brings_everything_to_another_folder(full, build, archive, other):
    """Designs, shops, builds and every entry, the undone ones too, are the same there."""
    brought = read_archive(other, archive)

    assert (brought.designs, brought.shops, brought.builds, brought.entries) == (("demo",), ("mine",), 1, 3)
    assert load_build(other, build.id) == load_build(full, build.id)
    assert other.design_text("demo") == full.design_text("demo")


def test_an_archive_of_what_came_in_is_the_same_to_the_byte(archive, other, tmp_path):
    """Out, in and out again: nothing is lost on the way and nothing is added."""
    read_archive(other, archive)

    assert write_archive(other, tmp_path / "again.zip").read_bytes() == archive.read_bytes()


def test_coming_in_twice_doubles_nothing(full, build, archive, hand):
    """Into the folder it came from nothing is added; later entries stay."""
    hand.number = 10
    later = hand("tick", "wheel/1/2")
    receive(full, build.id, [later])

    brought = read_archive(full, archive)

    assert (brought.designs, brought.builds, brought.entries, brought.known) == ((), 0, 0, 4)
    assert len(load_build(full, build.id).entries) == 4


def test_two_journals_of_one_build_are_merged(full, build, archive, other, hand):
    """Entries written in two places come together."""
    read_archive(other, archive)
    hand.device, hand.number = "phone", 0
    receive(other, build.id, [hand("tick", "shaft/1/1")])

    brought = read_archive(full, write_archive(other, other.path / "back.zip"))

    assert brought.entries == 1
    assert {one.key for one in load_build(full, build.id).entries} >= {"shaft/1/1", "wheel/1/1"}


def test_a_name_that_is_taken_by_another_text_gets_a_further_one(archive, other):
    """Nothing is overwritten; a second import finds the file it laid in."""
    other.save_design("demo", "tommybar: 1\n# mine\n")

    first, second = read_archive(other, archive), read_archive(other, archive)

    assert other.design_text("demo") == "tommybar: 1\n# mine\n"
    assert [old for old, _ in first.renamed] == ["demo"]
    assert first.designs == (first.renamed[0][1],)
    assert second.designs == ()
    assert len(other.designs()) == 2


def out_of_the_folder(files):
    """A name that leads out of the folder."""
    files["designs/../../stolen.yaml"] = b"x"


def absolute(files):
    """A name from the root."""
    files["/etc/passwd"] = b"x"


def backslashes(files):
    """A name that leads out of the folder on another system."""
    files["designs/..\\..\\stolen.yaml"] = b"x"


def a_stranger(files):
    """A file of no kind that is known."""
    files["run-me.sh"] = b"x"


def without_journal(files):
    """The journal is missing."""
    del files["journal.jsonl"]


def of_later_form(files):
    """Written by a later program."""
    files["tommybar.json"] = b'{"tommybar": 2}\n'


def broken_line(files):
    """A line that is no JSON."""
    files["journal.jsonl"] += b"{half\n"


def orphan(files):
    """An entry of a build that is not there."""
    line = json.loads(files["journal.jsonl"].splitlines()[0])
    files["journal.jsonl"] += json.dumps({**line, "build": "nobody"}).encode() + b"\n"


def faulty_entry(files):
    """An entry that would not be taken from a device either."""
    line = json.loads(files["journal.jsonl"].splitlines()[0])
    files["journal.jsonl"] = json.dumps({**line, "said": {"value": "ten"}}).encode() + b"\n"


def double_entry(files):
    """An entry twice."""
    files["journal.jsonl"] += files["journal.jsonl"].splitlines()[0] + b"\n"


def half_a_build(files):
    """A build without its design."""
    line = json.loads(files["builds.jsonl"])
    del line["design_text"]
    files["builds.jsonl"] = json.dumps(line).encode() + b"\n"


def not_text(files):
    """A design that is no text."""
    files["designs/demo.yaml"] = b"\xff\xfe\x00"


@pytest.mark.parametrize(
    ("change", "words"),
    [
        (out_of_the_folder, "does not belong in one"),
        (absolute, "does not belong in one"),
        (backslashes, "does not belong in one"),
        (a_stranger, "does not belong in one"),
        (without_journal, "lacks journal.jsonl"),
        (of_later_form, "form 2; this program reads form 1"),
        (broken_line, "line 4, is no JSON"),
        (orphan, "of a build that is not in it: nobody"),
        (faulty_entry, "An entry of the archive is faulty: The value of the size is ten"),
        (double_entry, "has an entry twice"),
        (half_a_build, "is not whole"),
        (not_text, "not UTF-8"),
    ],
)
def test_a_damaged_archive_is_refused_with_the_reason(archive, tmp_path, other, change, words):
    """The reason is told and nothing at all came in."""
    with pytest.raises(Refusal, match=words):
        read_archive(other, changed(archive, tmp_path, change))
    assert (other.designs(), other.shops()) == ((), ())
    assert not (tmp_path / "stolen.yaml").exists()


def test_a_name_with_two_dots_is_refused(archive, tmp_path, other):
    """Even without a stroke, dots that lead upwards are no name."""

    def dots(files):
        files["designs/...yaml"] = b"x"

    with pytest.raises(Refusal, match="cannot be a name"):
        read_archive(other, changed(archive, tmp_path, dots))


def test_a_file_with_another_checksum_is_refused(archive, tmp_path, other):
    """A design that was changed on the way is named."""

    def slip(files):
        files["designs/demo.yaml"] += b"\n# a bit more"

    with pytest.raises(Refusal, match=r"designs/demo.yaml is damaged: its checksum"):
        read_archive(other, changed(archive, tmp_path, slip, sums=False))


def test_a_file_that_its_list_names_must_be_there(archive, tmp_path, other):
    """A design that was left out is named."""
    with pytest.raises(Refusal, match=r"lacks designs/demo.yaml"):
        read_archive(
            other, changed(archive, tmp_path, lambda files: files.pop("designs/demo.yaml"), sums=False)
        )


def test_a_torn_archive_is_refused(archive, tmp_path, other):
    """Half a file is no archive; a letter is none either; a name without a file is told."""
    torn = tmp_path / "torn.zip"
    torn.write_bytes(archive.read_bytes()[: archive.stat().st_size // 2])
    with pytest.raises(Refusal, match="no sound zip archive"):
        read_archive(other, torn)
    torn.write_text("dear aunt")
    with pytest.raises(Refusal, match="no sound zip archive"):
        read_archive(other, torn)
    with pytest.raises(Refusal, match="There is no file"):
        read_archive(other, tmp_path / "none.zip")


def test_every_flipped_byte_is_found_or_harmless(archive, tmp_path, other, full, build):
    """A byte that was flipped anywhere is refused, or what comes in is exactly what was sent."""
    whole = archive.read_bytes()
    place = tmp_path / "flipped.zip"
    refused = 0
    for at in range(0, len(whole), max(1, len(whole) // 60)):
        place.write_bytes(whole[:at] + bytes([whole[at] ^ 0x5A]) + whole[at + 1 :])
        try:
            read_archive(other, place)
        except Refusal:
            refused += 1
            continue
        assert load_build(other, build.id) == load_build(full, build.id)
        assert other.design_text("demo") == full.design_text("demo")
    assert refused > 30


def test_an_archive_that_swells_is_refused(archive, tmp_path, other, monkeypatch):
    """What would unpack to more than is read is refused, whatever size it claims for itself."""
    monkeypatch.setattr(archive_reading, "MOST_BYTES", 300_000)

    def bomb(files):
        files["designs/big.yaml"] = b" " * 400_000

    place = changed(archive, tmp_path, bomb)
    assert place.stat().st_size < 100_000
    with pytest.raises(Refusal, match="too large"):
        read_archive(other, place)

    data = bytearray(place.read_bytes())
    size = (400_000).to_bytes(4, "little")
    while (at := data.find(size)) >= 0:
        data[at : at + 4] = (10).to_bytes(4, "little")  # the claim, everywhere it stands
    place.write_bytes(data)
    with pytest.raises(Refusal):
        read_archive(other, place)


def test_a_build_that_was_begun_otherwise_is_refused(archive, tmp_path, other):
    """Two builds of one id with different designs are not mixed; nothing came in."""
    begin(other, title="Mine")

    with pytest.raises(Refusal, match="was begun otherwise"):
        read_archive(other, archive)
    assert other.designs() == ()
