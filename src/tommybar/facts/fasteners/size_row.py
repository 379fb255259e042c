"""One row of a table that is kept by thread size or by code."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any

from tommybar.facts.threads import thread
from tommybar.refusals import Refusal


def row_of_size(rows: Iterable[Mapping[str, Any]], size: str, what: str) -> Mapping[str, Any]:
    """The row whose ``size`` is the one asked for; a metric fine thread counts as its diameter.

    Refuses with the first and last size of the table.
    """
    listed = {str(row["size"]): row for row in rows}
    plain = size.strip()
    if plain in listed:
        return listed[plain]
    if plain[:1].upper() == "M":
        plain = f"M{thread(plain).major:g}"
        if plain in listed:
            return listed[plain]
    names = list(listed)
    raise Refusal(
        f"There is no {what} for {size}; the table has {', '.join(names)}.",
        "Choose one of these, or give its dimensions in the design.",
    )


def range_row(rows: Iterable[Mapping[str, Any]], diameter: float, what: str, table: str) -> Mapping[str, Any]:
    """The row whose range ``over`` .. ``up_to`` holds a diameter; refuses with the table's bounds."""
    listed = list(rows)
    for row in listed:
        if row["over"] < diameter <= row["up_to"]:
            return row
    raise Refusal(
        f"{what} is {diameter:g} mm; {table} runs over {listed[0]['over']:g} and up to "
        f"{listed[-1]['up_to']:g} mm.",
        "Choose a diameter within it.",
    )
