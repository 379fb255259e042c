"""What a look-up gives back: figures for a program and rows for a person.

Every topic of ``tommybar facts`` is one module of this folder (or one package)
with a function ``answer(keys, options)`` that returns an :class:`Answer`.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any


@dataclass(frozen=True)
class Row:
    """One line of the small table: a label and a figure with its unit.

    ``unit`` is the house unit ("mm", "um", "deg", "mm2", "" ...). The door
    turns lengths to inches when it is asked to; ``text`` stands for figures
    that are words ("2 turns + 14 holes").
    """

    label: str
    value: float | None = None
    unit: str = ""
    decimals: int = 3
    text: str = ""


@dataclass(frozen=True)
class Answer:
    """One look-up answered.

    ``data`` is what ``--json`` prints: every figure's key ends in its unit
    (``lower_um``, ``pitch_mm``); lists and nested mappings are allowed.
    ``source`` names title, table and how it was checked.
    """

    topic: str
    key: str
    title: str
    rows: tuple[Row, ...]
    source: str
    data: Mapping[str, Any]
    cautions: tuple[str, ...] = field(default=())
