"""Data files whose figures stand as lines: the columns named once, then one line a thing."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from pathlib import Path
from typing import Any

from tommybar.facts.table import Source, read_table
from tommybar.refusals import OwnFault


@cache
def read_lines(path: Path) -> tuple[Source, tuple[Mapping[str, Any], ...]]:
    """The source of a data file and its lines, each as column to figure.

    Parameters
    ----------
    path : Path
        A data file whose [figures] hold ``columns`` and ``rows`` [-]

    Returns
    -------
    tuple[Source, tuple[Mapping[str, Any], ...]]
        The source, and one mapping a line, in the units the columns name [-]

    Raises
    ------
    OwnFault
        If a line has a figure too many or too few.

    Examples
    --------
    >>> from tommybar.facts.materials import catalogue
    >>> source, lines = read_lines(Path(catalogue.__file__).parent / "cutting_groups.toml")
    >>> lines[0]["kc11_mpa"]
    1350

    References
    ----------
    source: the data file's own [source].
    """
    table = read_table(path)
    block = table.figures
    columns: list[str] = block["columns"]
    lines = []
    for row in block["rows"]:
        if len(row) != len(columns):
            raise OwnFault(f"{path.name}: the line {row[0]!r} has {len(row)} of {len(columns)} columns.")
        lines.append(dict(zip(columns, row, strict=True)))
    return table.source, tuple(lines)
