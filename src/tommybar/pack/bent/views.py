"""Views of parts that are bent, rolled or wound."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from tommybar.pack.printed import PrintedDimension
from tommybar.pack.projected.directions import Looked, body, coil_sharp, lies, looked_at, mesh_in
from tommybar.pack.projected.hidden import seen
from tommybar.pack.projected.lines import scaled, view_marks
from tommybar.pack.sheet import Mark
from tommybar.shapes.features import Shape, SpringShape


@dataclass(frozen=True)
class View:
    """A view that may stand anywhere on the sheet, and the figures in it."""

    marks: tuple[Mark, ...]
    printed: tuple[PrintedDimension, ...] = ()


@lru_cache(maxsize=32)
def _lines(shape: Shape, looked: Looked) -> tuple[Mark, ...]:
    coiled = isinstance(shape, SpringShape)
    mesh = mesh_in(body(shape, 48 if coiled else 96), looked_at(looked, lies(shape)))
    return tuple(view_marks(seen(mesh, sharp=coil_sharp(shape)), 1.0, (), False))


def seen_from(shape: Shape, looked: Looked, scale: float) -> list[Mark]:
    """What is seen of a part from one side, without hidden lines."""
    return scaled(_lines(shape, looked), scale)
