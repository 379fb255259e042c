"""The person's files: written whole or not at all, every earlier text kept."""

from __future__ import annotations

import os
import tempfile
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tommybar.refusals import Refusal
from tommybar.web.files import Choices, Files, file_name


@pytest.fixture
def files(tmp_path):
    """An empty folder."""
    return Files(tmp_path)


def test_a_text_comes_back_as_it_was_saved(files):
    """Letters, ends of lines and all."""
    files.save("designs", "wheel", "design: Rad für Öl\n# ½\n")

    assert files.text("designs", "wheel") == "design: Rad für Öl\n# ½\n"
    assert files.names("designs") == ["wheel"]


def test_undo_walks_back_through_every_text(files):
    """Five edits are undone one by one; what was undone waits for redo."""
    for n in range(6):
        files.save("designs", "wheel", f"text {n}\n")

    for n in (4, 3, 2, 1, 0):
        assert files.undo("designs", "wheel")
        assert files.text("designs", "wheel") == f"text {n}\n"
    assert not files.undo("designs", "wheel")
    assert files.redoable("designs", "wheel") == 5


def test_redo_walks_forward_again_until_the_last_text(files):
    """Every undone text comes back in its order, and can be undone again."""
    for n in range(4):
        files.save("designs", "wheel", f"text {n}\n")
    while files.undo("designs", "wheel"):
        pass

    for n in (1, 2, 3):
        assert files.redo("designs", "wheel")
        assert files.text("designs", "wheel") == f"text {n}\n"
    assert not files.redo("designs", "wheel")
    assert files.undo("designs", "wheel")
    assert files.text("designs", "wheel") == "text 2\n"


@settings(max_examples=60, deadline=None, derandomize=True)
@given(steps=st.lists(st.sampled_from(["edit", "undo", "redo", "same"]), max_size=25))
def test_whatever_is_edited_undone_and_redone_no_text_is_lost(steps):
    """A row of texts and a place in it says what must stand there; every text ever saved still lies on the disk."""
    with tempfile.TemporaryDirectory() as folder:
        files = Files(Path(folder))
        files.save("shops", "shed", "text 0\n")
        row, at, saved = ["text 0\n"], 0, {"text 0\n"}
        for n, step in enumerate(steps, start=1):
            if step == "edit":
                row, at = [*row[: at + 1], f"text {n}\n"], at + 1
                saved.add(row[at])
                files.save("shops", "shed", row[at])
            elif step == "same":
                files.save("shops", "shed", row[at])
            elif step == "undo":
                assert files.undo("shops", "shed") == (at > 0)
                at = max(at - 1, 0)
            else:
                assert files.redo("shops", "shed") == (at + 1 < len(row))
                at = min(at + 1, len(row) - 1)
            assert files.text("shops", "shed") == row[at]
            assert (files.undoable("shops", "shed"), files.redoable("shops", "shed")) == (
                at,
                len(row) - 1 - at,
            )
        on_disk = {one.read_text() for one in Path(folder).rglob("*") if one.is_file()}
        assert saved <= on_disk


def test_a_file_taken_off_the_list_comes_back_with_undo(files):
    """To the letter, and nothing is offered as redo."""
    files.save("shops", "shed", "a: 1\n")
    files.remove("shops", "shed")

    assert files.undo("shops", "shed")
    assert files.text("shops", "shed") == "a: 1\n"


def test_saving_the_same_text_is_no_edit(files):
    """Nothing is kept when nothing changed."""
    files.save("designs", "wheel", "a\n")
    files.save("designs", "wheel", "a\n")

    assert files.undoable("designs", "wheel") == 0


@pytest.mark.parametrize(
    "name", ["", ".", "..", "../x", "a/b", "a\\b", "x\0", "/etc/passwd", "a" * 100, ".hidden"]
)
def test_names_that_are_no_plain_names_are_refused(files, name):
    """No such name reaches the disk."""
    with pytest.raises(Refusal, match=r"cannot be a name|lies outside"):
        files.save("designs", name, "x")


@pytest.mark.parametrize("words", ["", "///", "日本"])
def test_words_that_make_no_name_are_refused(words):
    """A title needs letters or digits."""
    with pytest.raises(Refusal, match="makes no name"):
        file_name(words)


def test_a_folder_that_cannot_be_written_gives_words_and_loses_nothing(files, monkeypatch):
    """A full disk: the old text stands, and the words say so."""
    files.save("designs", "wheel", "old\n")

    def full(number):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(Refusal, match="The disk is full"):
        files.save("designs", "wheel", "new\n")

    assert files.text("designs", "wheel") == "old\n"
    assert [one.name for one in (files.path / "designs").iterdir()] == ["wheel.yaml"]


def test_choices_come_back(files):
    """Shop, scale, pins and stock of a design are kept beside it."""
    choices = Choices("small-bench", "0.7", {"web": "4"}, "rack")
    files.choose("wheel", choices)

    assert files.choices("wheel") == choices
    assert files.choices("other") == Choices()


def test_a_broken_record_of_choices_is_told(files):
    """Garbage in that file is refused in words."""
    files.save("choices", "wheel", "{")

    with pytest.raises(Refusal, match="no record of choices"):
        files.choices("wheel")
