"""A folder of a user's, with the demonstrator in it, and a hand that writes entries."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest

from tommybar.bench.builds import load_build
from tommybar.bench.database import writing
from tommybar.bench.entries import Entry, new_entry
from tommybar.bench.folder import Folder, open_folder
from tommybar.bench.journal import receive
from tommybar.bench.stored import COLUMNS, Build, put_build

EXAMPLES = Path(__file__).parents[2] / "examples"
DESIGN = (EXAMPLES / "demonstrator" / "design.yaml").read_text(encoding="utf-8")
SHOP = (EXAMPLES / "shops" / "shop-r.yaml").read_text(encoding="utf-8")


@dataclass
class Hand:
    """A person at a device: writes entries with a count and a clock of their own."""

    device: str = "tablet"
    by: str = "R"
    number: int = 0
    minute: int = 0

    def __call__(self, kind: str, key: str = "", **said: Any) -> Entry:
        """One more entry, a minute after the last."""
        self.number += 1
        self.minute += 1
        at = f"2026-05-02T{18 + self.minute // 60:02d}:{self.minute % 60:02d}:00+00:00"
        return new_entry(kind, key, device=self.device, number=self.number, by=self.by, at=at, **said)


@pytest.fixture
def hand() -> Hand:
    """A person at the tablet."""
    return Hand()


@pytest.fixture
def folder(tmp_path: Path) -> Folder:
    """An empty folder with the demonstrator and shop R in it."""
    made = open_folder(tmp_path / "mine")
    made.save_design("demo", DESIGN)
    made.save_shop("mine", SHOP)
    return made


def begin(folder: Folder, number: int = 1, **given: Any) -> Build:
    """A build without the planning that a real start does: for what concerns the store alone."""
    values = {
        "id": f"00000000-0000-4000-8000-{number:012d}",
        "title": "Demonstrator",
        "design_name": "demo",
        "shop_name": "mine",
        "design_text": DESIGN,
        "shop_text": SHOP,
        "scale": 1.0,
        "pins": {},
        "stock": "ask",
        "begun": "2026-05-01T18:00:00.000+00:00",
        "program": "0",
        **given,
    }
    assert set(values) == set(COLUMNS)
    build = Build(**values)
    with writing(folder.database) as database:
        put_build(database, build)
    return build


@pytest.fixture
def build(folder: Folder) -> Build:
    """A build of the demonstrator in shop R at full size."""
    return begin(folder)


@pytest.fixture
def after(folder: Folder, build: Build) -> Iterator[Callable[..., Build]]:
    """The build after some entries."""

    def of(*entries: Entry) -> Build:
        receipt = receive(folder, build.id, entries)
        assert receipt.refused == ()
        return load_build(folder, build.id)

    yield of
