"""How a data file is read: its source first, then its figures.

Every data file of this floor is TOML and opens with ``[source]``: title, year,
the table in it, and how the figures were checked; then comes ``[figures]``. A
file without a source is a fault of ours and is never read.
"""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

from tommybar.refusals import OwnFault

CHECKED = ("seen", "from memory", "common practice, no source")


@dataclass(frozen=True)
class Source:
    """Where the figures of one data file come from.

    ``checked`` opens with one of "seen", "from memory" or "common practice, no
    source", and may go on with words that say which figures are which.
    """

    title: str
    year: str  # "" where the source has no year
    table: str
    checked: str

    def __str__(self) -> str:
        head = f"{self.title}:{self.year}" if self.year else self.title
        return f"{head}, {self.table} ({self.checked})"


@dataclass(frozen=True)
class Table:
    """One data file: its source and its figures."""

    source: Source
    figures: Mapping[str, Any]


@cache
def read_table(path: Path) -> Table:
    """Read a data file once; later calls give the same table back."""
    with path.open("rb") as stream:
        file = tomllib.load(stream)
    stated = file.get("source", {})
    try:
        source = Source(
            title=stated["title"], year=stated["year"], table=stated["table"], checked=stated["checked"]
        )
    except KeyError as missing:
        raise OwnFault(f"{path.name} does not say {missing} in [source].") from None
    if not source.checked.startswith(CHECKED):
        raise OwnFault(f"{path.name}: 'checked' must open with one of {', '.join(CHECKED)}.")
    return Table(source, file["figures"])
