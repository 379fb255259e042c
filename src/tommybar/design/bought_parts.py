"""Bought parts: their designation with sizes filled in, looked up in the tables."""

from __future__ import annotations

import re

from tommybar.design.reading import Reading
from tommybar.design.written_bent import WrittenBought
from tommybar.design.yaml_file import Place
from tommybar.refusals import Refusal
from tommybar.shapes.bought import BoughtShape
from tommybar.shapes.envelopes import envelope


def build_bought(
    read: Reading, written: str | WrittenBought | None, place: Place
) -> tuple[str, BoughtShape | None]:
    """Designation of a bought part and its envelope.

    A designation without names of sizes must be in the tables. One with names
    in { } follows the shop: at another scale it may come to a part that no
    table has, which is left without an envelope for the checks to tell of.
    """
    if written is None:
        return "", None
    if isinstance(written, WrittenBought):
        designation = _filled(read, written.designation, (*place, "designation"))
        sizes = tuple((key, read.of(one)) for key, one in written.sizes.items())
        for key, value in sizes:
            if value <= 0:
                what = f"{key} of {designation} is {value:g} mm; it must be above 0."
                read.complain((*place, "sizes", key), what, "Give the figure of the maker's sheet.")
        return designation, BoughtShape(designation, written.kind, sizes, written.source)
    designation = _filled(read, written, place)
    try:
        return designation, envelope(designation)
    except Refusal as refusal:
        if "{" not in written:
            read.wrong += read.file.complaints(place, refusal)
        return designation, None


def _filled(read: Reading, text: str, place: Place) -> str:
    """The designation, names of sizes in { } filled in."""

    def fill(found: re.Match[str]) -> str:
        read.one_of(found[1], read.values, place, "size")
        value = read.values.get(found[1], "")
        return value if isinstance(value, str) else f"{value:g}"

    return re.sub(r"\{\s*(\w+)\s*\}", fill, text)
