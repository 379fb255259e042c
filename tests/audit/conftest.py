"""Every part of the examples and of the designs that hold the whole vocabulary, drawn for each kind of reader."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path

from tommybar.design import load_design
from tommybar.design.model import Part
from tommybar.pack.drawing import part_drawing
from tommybar.pack.imprint import Imprint, PaperName
from tommybar.pack.sheet import Sheet
from tommybar.pack.units import Reader
from tommybar.refusals import Refusal
from tommybar.shapes.features import BoughtShape

ROOT = Path(__file__).resolve().parents[2]
DESIGNS = (
    *sorted((ROOT / "examples").glob("*/design.yaml")),
    ROOT / "tests" / "design" / "turned_vocabulary.yaml",
    *sorted((ROOT / "tests" / "design" / "whole").glob("*.yaml")),
)
READERS: tuple[tuple[str, PaperName], ...] = (("mm", "A4"), ("in", "Letter"))


def name_of(path: Path) -> str:
    """A design by its folder and file."""
    return f"{path.parent.name}/{path.stem}"


@lru_cache(maxsize=128)
def sheets_of(path: Path, unit: str, paper: PaperName) -> tuple[tuple[Part, Sheet], ...]:
    """The drawings of all parts of a design; on the next larger paper where one has no room."""
    design = load_design(path).sized()
    made = []
    for part in design.parts:
        if part.shape is None or isinstance(part.shape, BoughtShape):
            continue
        larger: PaperName = "A3" if paper == "A4" else "Tabloid"
        for size in (paper, larger):
            imprint = Imprint(design.title, "A", "audit", 1.0, "", Reader(unit), size)  # type: ignore[arg-type]
            try:
                made.append((part, part_drawing(part, design, imprint)))
                break
            except Refusal:
                if size == larger:
                    raise
    return tuple(made)
