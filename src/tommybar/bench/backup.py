"""Dated copies of the database of the builds, the older ones cleared away."""

from __future__ import annotations

import datetime
import re
from pathlib import Path

from tommybar.bench.database import copy_database
from tommybar.bench.folder import Folder

KEEP = 14  # copies; one a day on which something was written
_NAME = re.compile(r"builds-\d{4}-\d\d-\d\d\.sqlite")


def backups(folder: Folder) -> tuple[Path, ...]:
    """The dated copies, oldest first."""
    return tuple(
        sorted(one for one in (folder.path / "backups").glob("builds-*.sqlite") if _NAME.fullmatch(one.name))
    )


def back_up(folder: Folder, keep: int = KEEP, day: datetime.date | None = None) -> Path:
    """Copy the database as it stands, under the day's date; the newest ``keep`` copies stay."""
    day = day or datetime.date.today()
    place = copy_database(folder.database, folder.path / "backups" / f"builds-{day.isoformat()}.sqlite")
    for old in backups(folder)[: -max(keep, 1)]:
        old.unlink(missing_ok=True)
    return place


def back_up_daily(folder: Folder, keep: int = KEEP, day: datetime.date | None = None) -> Path | None:
    """The day's copy before the first entry of the day; None when it is there already."""
    day = day or datetime.date.today()
    if (folder.path / "backups" / f"builds-{day.isoformat()}.sqlite").exists():
        return None
    return back_up(folder, keep, day)
