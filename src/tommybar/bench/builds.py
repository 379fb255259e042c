"""Builds: begun, listed, loaded."""

from __future__ import annotations

import sqlite3
import uuid
from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import UTC, datetime
from pathlib import Path

from tommybar.bench.database import reading, writing
from tommybar.bench.folder import Folder
from tommybar.bench.stored import Build, Stock, build_of, entry_of, put_build, put_entry
from tommybar.refusals import Refusal
from tommybar.version import __version__

__all__ = ["Build", "BuildLine", "Stock", "builds", "load_build", "shop_text_of", "start_build"]


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
        build = replace(build, scale=found.scale)
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
