"""A build: one making of a design in a shop, with the texts it was begun with."""

from __future__ import annotations

import json
import sqlite3
import uuid
from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import UTC, datetime
from pathlib import Path
from typing import Any, Literal, cast

from tommybar.bench.database import reading, writing
from tommybar.bench.entries import Entry
from tommybar.bench.folder import Folder
from tommybar.refusals import Refusal
from tommybar.version import __version__

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


@dataclass(frozen=True)
class BuildLine:
    """A build in a list."""

    id: str
    title: str
    design_name: str
    shop_name: str
    begun: str
    entries: int
    last: str  # when something was last written; empty: nothing yet


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


def start_build(
    folder: Folder,
    design_name: str,
    shop_name: str,
    *,
    title: str = "",
    scale: float | None = None,
    pins: Mapping[str, float | str] | None = None,
    stock: Stock = "ask",
    made: Path | None = None,
) -> Build:
    """Begin a making of a design of the folder in a shop of the folder, or in an example shop by its name.

    When no scale is given the one that the plan chooses now is kept, so that
    nothing that is measured later moves it. ``made`` is a made file to go on
    from. Raises :class:`Refusal` when design, shop or made file are faulty.
    """
    from tommybar.bench.inputs import inputs_of, plan_with
    from tommybar.bench.made_file import entries_from_made
    from tommybar.design import design_from_text

    design_text, shop_text = folder.design_text(design_name), shop_text_of(folder, shop_name)
    design = design_from_text(design_text, str(folder.design_path(design_name)))
    build = Build(
        str(uuid.uuid4()),
        title or design.title,
        design_name,
        shop_name,
        design_text,
        shop_text,
        scale,
        dict(pins or {}),
        stock,
        datetime.now(UTC).isoformat(timespec="milliseconds"),
        __version__,
    )
    if scale is None:
        found = plan_with(inputs_of(build))
        build = Build(**{**vars(build), "scale": found.scale})
    entries = entries_from_made(made, design.title, build.id) if made else ()
    with writing(folder.database) as database:
        put_build(database, build)
        for entry in entries:
            put_entry(database, build.id, entry)
    return load_build(folder, build.id)


def shop_text_of(folder: Folder, name: str) -> str:
    """The text of a shop of the folder, or of an example shop when the folder has none of that name."""
    from tommybar.shop import load_shop
    from tommybar.shop.examples import example_shops

    examples = example_shops()
    if name not in folder.shops() and name in examples:
        return examples[name].read_text(encoding="utf-8")
    text = folder.shop_text(name)
    load_shop(folder.shop_path(name))
    return text


def put_build(database: sqlite3.Connection, build: Build) -> None:
    """Write a new build."""
    values = [json.dumps(dict(build.pins)) if one == "pins" else getattr(build, one) for one in COLUMNS]
    marks = ", ".join("?" * len(COLUMNS))
    database.execute(f"INSERT INTO builds ({', '.join(COLUMNS)}) VALUES ({marks})", values)


def put_entry(database: sqlite3.Connection, build_id: str, entry: Entry) -> None:
    """Write a new entry at the end of a journal."""
    from tommybar.bench.entries import said_text

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


def builds(folder: Folder) -> tuple[BuildLine, ...]:
    """Every build of the folder, the one last written in first."""
    with reading(folder.database) as database:
        rows = database.execute(
            "SELECT b.id, b.title, b.design_name, b.shop_name, b.begun, count(e.id) AS entries,"
            " coalesce(max(e.at), '') AS last FROM builds b LEFT JOIN entries e ON e.build = b.id"
            " GROUP BY b.id ORDER BY max(b.begun, coalesce(max(e.at), '')) DESC, b.id"
        ).fetchall()
    return tuple(BuildLine(**dict(row)) for row in rows)


def load_build(folder: Folder, build_id: str) -> Build:
    """A build with its whole journal; the first letters of its id will do when no other begins so."""
    with reading(folder.database) as database:
        rows = _of_that_id(database, build_id)
        if len(rows) != 1:
            many = "No build has" if not rows else f"{len(rows)} builds have"
            raise Refusal(f'{many} the id "{build_id[:60]}".', "The list shows the ids.")
        entries = database.execute(
            "SELECT * FROM entries WHERE build = ? ORDER BY position", (rows[0]["id"],)
        ).fetchall()
    return build_of(rows[0], tuple(entry_of(one) for one in entries))


def _of_that_id(database: sqlite3.Connection, build_id: str) -> list[sqlite3.Row]:
    if not build_id:
        return []
    return database.execute(
        "SELECT * FROM builds WHERE substr(id, 1, ?) = ?", (len(build_id), build_id)
    ).fetchall()


def build_of(row: Mapping[str, Any] | sqlite3.Row, entries: tuple[Entry, ...] = ()) -> Build:
    """A build as it stands in the database."""
    given = {name: row[name] for name in COLUMNS}
    given["pins"] = json.loads(given["pins"])
    given["stock"] = cast(Stock, given["stock"])
    return Build(**given, entries=entries)
