"""A build and its entries as they stand in the database."""

from __future__ import annotations

import json
import sqlite3
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any, Literal, cast

from tommybar.bench.entries import Entry, said_text

Stock = Literal["rack", "buy", "ask"]


@dataclass(frozen=True)
class Build:
    """One making. Its design and shop are kept as they were when it began; later changes are entries."""

    id: str
    title: str
    design_name: str
    shop_name: str
    design_text: str = field(repr=False)
    shop_text: str = field(repr=False)
    scale: float | None
    pins: Mapping[str, float | str]
    stock: Stock
    begun: str
    program: str
    entries: tuple[Entry, ...] = ()  # in the order in which they came in

    def __hash__(self) -> int:
        """By its id and how far its journal has come."""
        return hash((self.id, len(self.entries)))


COLUMNS = (
    "id",
    "title",
    "design_name",
    "shop_name",
    "design_text",
    "shop_text",
    "scale",
    "pins",
    "stock",
    "begun",
    "program",
)


def put_build(database: sqlite3.Connection, build: Build) -> None:
    """Write a new build."""
    values = [json.dumps(dict(build.pins)) if one == "pins" else getattr(build, one) for one in COLUMNS]
    marks = ", ".join("?" * len(COLUMNS))
    database.execute(f"INSERT INTO builds ({', '.join(COLUMNS)}) VALUES ({marks})", values)


def put_entry(database: sqlite3.Connection, build_id: str, entry: Entry) -> None:
    """Write a new entry at the end of a journal."""
    database.execute(
        "INSERT INTO entries (id, build, device, number, kind, key, at, by, said) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
        (
            entry.id,
            build_id,
            entry.device,
            entry.number,
            entry.kind,
            entry.key,
            entry.at,
            entry.by,
            said_text(entry.said),
        ),
    )


def entry_of(row: sqlite3.Row) -> Entry:
    """An entry as it stands in the database."""
    return Entry(
        row["id"],
        row["device"],
        row["number"],
        row["kind"],
        row["key"],
        row["at"],
        row["by"],
        json.loads(row["said"]),
    )


def build_of(row: Mapping[str, Any] | sqlite3.Row, entries: tuple[Entry, ...] = ()) -> Build:
    """A build as it stands in the database."""
    given = {name: row[name] for name in COLUMNS}
    given["pins"] = json.loads(given["pins"])
    given["stock"] = cast(Stock, given["stock"])
    return Build(**given, entries=entries)
