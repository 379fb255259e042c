"""What a made file says, as marks of the page's own log."""

from __future__ import annotations

import re
from typing import Any

from tommybar.made.record import Made, Ticked

_HOLE = re.compile(r"(.+)/hole (\d+)")
_GRIPPED = re.compile(r"(.+)/gripped")


def made_marks(made: Made) -> list[dict[str, Any]]:
    """Measured sizes, ticks and whereabouts in the form in which the page keeps them."""
    marks: list[dict[str, Any]] = []
    for one in made.in_order():
        told = (
            _tick(one)
            if isinstance(one, Ticked)
            else {"kind": "size", "key": one.size, "is": one.value, "with": one.instrument}
        )
        marks.append({**told, **_tail(one)})
    marks += [{"kind": "part", "key": one.part, "where": one.where, **_tail(one)} for one in made.whereabouts]
    return marks


def _tick(one: Ticked) -> dict[str, Any]:
    """A tick by what it is about: a hole, a grip, a step or a whole card."""
    if hole := _HOLE.fullmatch(one.key):
        return {"kind": "hole", "key": hole[1], "n": int(hole[2]), "done": True}
    if gripped := _GRIPPED.fullmatch(one.key):
        return {"kind": "begin", "key": gripped[1], "done": True}
    kind = "step" if one.key.count("/") > 1 else "card"
    return {"kind": kind, "key": one.key, "done": one.done, "skipped": one.skipped}


def _tail(one: Any) -> dict[str, Any]:
    """When, by whom, and which piece of several alike."""
    piece = re.fullmatch(r"piece (\d+)", one.note)
    return {"on": one.on, "by": one.by, "piece": int(piece[1]) if piece else 1}
