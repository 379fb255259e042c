"""Data files whose figures stand as lines."""

from __future__ import annotations

from pathlib import Path

import pytest

from tommybar.facts.lines import read_lines
from tommybar.refusals import OwnFault

HEAD = '[source]\ntitle = "A"\nyear = ""\ntable = "t"\nchecked = "from memory"\n\n[figures]\ncolumns = ["name", "size"]\n'


def test_each_line_gets_its_columns(tmp_path: Path) -> None:
    """Columns are named once and pair with the figures of every line."""
    file = tmp_path / "good.toml"
    file.write_text(HEAD + 'rows = [["one", 1.5], ["two", 2]]\n')
    source, lines = read_lines(file)
    assert str(source) == "A, t (from memory)"
    assert lines == ({"name": "one", "size": 1.5}, {"name": "two", "size": 2})


def test_a_line_with_a_column_too_few_is_our_fault(tmp_path: Path) -> None:
    """A slip in a table never shifts a figure into the wrong column in silence."""
    file = tmp_path / "short.toml"
    file.write_text(HEAD + 'rows = [["one", 1.5], ["two"]]\n')
    with pytest.raises(OwnFault, match="'two' has 1 of 2 columns"):
        read_lines(file)
