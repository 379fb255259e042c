"""What must run true or stand square, as frames at the features, with letters at what it is measured from."""

from __future__ import annotations

from dataclasses import replace

from tommybar.design.model import Part, SizedDesign
from tommybar.pack.printed import PrintedDimension
from tommybar.pack.turned.saying import Callout, Row
from tommybar.pack.units import Reader

LETTERS = "CDEFGHJKLMNPRSTUVW"  # A and B are the faces; I, O, Q mislead


def _own(name: str, part: Part) -> str:
    """A feature's own name when it belongs to the part, else nothing."""
    owner, dot, feature = name.partition(".")
    if not dot:
        return name
    return feature if owner == part.name else ""


def framed(
    callouts: list[Callout], part: Part, design: SizedDesign, reader: Reader
) -> tuple[list[Callout], tuple[str, ...], list[PrintedDimension]]:
    """Callouts with frames and datum letters added, needs that found no place in words, and their figures."""
    wanted: list[tuple[str, str, str, float, bool]] = [
        ("run-out", need.of, need.to, need.within, False) for need in part.needs
    ]
    wanted += [
        ("run-out", _own(one.feature, part), _own(one.datum, part), one.within, False)
        for one in design.runouts
    ]
    wanted += [
        (one.way, _own(one.feature, part), _own(one.datum, part), one.within, False) for one in design.squares
    ]
    names = [hole.name for hole in getattr(part.shape, "circle_holes", ())]
    for pattern in design.patterns:
        for name in (*pattern.first, *(() if pattern.spot_through else pattern.second)):
            if _own(name, part) in names and "." in name:
                wanted.append(("position", _own(name, part), "", pattern.place, True))
    said = {one.feature for one in callouts}
    letters: dict[str, str] = {}
    frames: dict[str, list[Row]] = {}
    printed: list[PrintedDimension] = []
    left: list[str] = []
    for way, feature, datum, within, round_zone in dict.fromkeys(wanted):
        if not feature or (not datum and way != "position"):
            continue
        figure = reader.length(within, 3)
        if feature not in said or (datum and datum not in said and datum not in ("A", "B")):
            if way == "position":
                continue
            words = {"run-out": "to run true to"}.get(way, f"{way} to")
            left.append(
                f"{feature} {words} {datum} within {figure}"
                + (" (total indicator reading)" if way == "run-out" else "")
            )
            continue
        cells: tuple[str, ...] = (way, ("Ø" if round_zone else "") + figure)
        if datum:
            letter = datum if datum in ("A", "B") else letters.setdefault(datum, LETTERS[len(letters)])
            cells = (*cells, letter)
        frames.setdefault(feature, []).append(Row("", True, cells=cells))
        kind = "position" if way == "position" else "runout"
        printed.append(
            PrintedDimension(kind, feature, way, cells[1], figure, within, None, reader.unit, datum)  # type: ignore[arg-type]
        )
    made = []
    placed: set[str] = set()
    for one in callouts:
        rows = list(one.rows)
        if one.feature not in placed:
            rows += frames.get(one.feature, [])
            if one.feature in letters:
                rows.append(Row("", True, datum=letters[one.feature]))
            placed.add(one.feature)
        made.append(replace(one, rows=tuple(rows)))
    return made, tuple(left), printed
