"""Every sheet of every example's pack, planned once and printed for each reader on each small paper: no collision."""

from __future__ import annotations

from pathlib import Path
from typing import Literal

import pytest

from tommybar.design import load_design
from tommybar.pack.imprint import Angle, PaperName
from tommybar.pack.units import Reader
from tommybar.pack.write import pack_sheets
from tommybar.planning import plan
from tommybar.shop import load_shop

from .layout import LINES, THICK, clashes

EXAMPLES = sorted((Path(__file__).resolve().parents[2] / "examples").glob("*/design.yaml"))
READERS: tuple[tuple[Literal["mm", "in"], PaperName, Angle], ...] = (
    ("mm", "A4", "first"),
    ("in", "A4", "first"),
    ("mm", "Letter", "third"),
    ("in", "Letter", "third"),
)
INCH = ("scribing-gauge",)  # designs whose stock and threads only the inch shop has


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.parent.name)
def test_a_pack_is_printed_without_a_collision(path: Path) -> None:
    """Cover, findings, stock, cards, drawings and lists; on drawings words keep clear of thin lines as well."""
    shop = "inch-bench" if path.parent.name in INCH else "shop-r"
    planned = plan(load_design(path), load_shop(path.parents[1] / "shops" / f"{shop}.yaml"))
    found: list[str] = []
    for unit, paper, angle in READERS:
        for sheet in pack_sheets(planned, Reader(unit), paper, angle):
            drawing = bool(sheet.printed) or sheet.name.startswith(("assembly", "template"))
            found += [f"{unit} {paper} {one}" for one in clashes(sheet, LINES if drawing else THICK)]

    assert found == []
