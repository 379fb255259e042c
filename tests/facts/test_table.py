"""Data files: the source comes first, and a file without one is a fault."""

from __future__ import annotations

from pathlib import Path

import pytest

import tommybar.facts
from tommybar.facts.table import read_table
from tommybar.refusals import OwnFault

WHOLE = '[source]\ntitle = "T"\nyear = "1990"\ntable = "1"\nchecked = "seen"\n[figures]\na = 1\n'
FILES = sorted(
    path
    for folder in ("threads", "drills", "fasteners", "stock")
    for path in (Path(tommybar.facts.__file__).parent / folder).glob("*.toml")
)


def test_source_and_figures(tmp_path: Path) -> None:
    """A whole file gives its figures, and its source as words."""
    file = tmp_path / "whole.toml"
    file.write_text(WHOLE)

    assert read_table(file).figures == {"a": 1}
    assert str(read_table(file).source) == "T:1990, 1 (seen)"


@pytest.mark.parametrize("missing", ["title", "year", "table", "checked"])
def test_file_without_a_source_is_a_fault(tmp_path: Path, missing: str) -> None:
    """Leaving out any word of the source is our own fault."""
    file = tmp_path / f"{missing}.toml"
    file.write_text("\n".join(line for line in WHOLE.splitlines() if not line.startswith(missing)))

    with pytest.raises(OwnFault, match=f"does not say '{missing}'"):
        read_table(file)


def test_how_it_was_checked_is_one_of_three(tmp_path: Path) -> None:
    """ "Surely right" is no way of checking."""
    file = tmp_path / "sure.toml"
    file.write_text(WHOLE.replace("seen", "surely right"))

    with pytest.raises(OwnFault, match="'checked' must open with one of"):
        read_table(file)


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.name)
def test_every_file_here_states_its_source(path: Path) -> None:
    """Each data file of threads, drills, fasteners and stock reads, and names a title."""
    table = read_table(path)

    assert table.source.title
    assert table.figures
