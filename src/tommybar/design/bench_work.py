"""Work of the hand on a part, with its figures filled in."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

from tommybar.design.joints import BenchWork
from tommybar.design.reading import Reading
from tommybar.design.written_bent import WrittenBench
from tommybar.design.yaml_file import Place

FIGURES = ("dia", "wide", "deep", "radius", "angle", "grip", "allowance", "to")
WANTED = {
    "riveted": ("dia", "grip"),
    "filed": (),
    "tempered": ("to",),
    "pinned": ("dia",),
}
SNAP_HEAD = (1.25, 1.5)  # metal for a snap head, in diameters of the rivet (common practice, no source)


def build_bench(
    read: Reading, part: str, written: Sequence[WrittenBench], place: Place, features: Mapping[str, object]
) -> tuple[BenchWork, ...]:
    """The work in the order written. A rivet's length is its grip and the allowance of its head."""
    found: list[BenchWork] = []
    for n, one in enumerate(written):
        here = (*place, n)
        for index, name in enumerate(one.on):
            read.one_of(
                name, features, (*here, "on") if len(one.on) == 1 else (*here, "on", index), "feature", part
            )
        figures = {key: read.of(getattr(one, key)) for key in FIGURES if getattr(one, key) is not None}
        lacks = [key for key in WANTED.get(one.work, ()) if key not in figures]
        if lacks:
            read.complain(here, f"Work that is {one.work} must have {' and '.join(lacks)}.", "Add it.")
        elif one.work == "riveted":
            _rivet(read, figures, here)
        elif one.work == "tempered" and not 100 <= figures["to"] <= 700:
            what = f"The temper is {figures['to']:g} deg C; steel is tempered at 100 to 700 deg C."
            read.complain((*here, "to"), what, "Straw is 230, blue 300 deg C.")
        name = one.name or f"{one.work.replace(' ', '_')}_{n + 1}"
        found.append(BenchWork(name, one.work, one.on, tuple(figures.items()), one.with_, one.words))
    read.unique((one.name, (*place, n)) for n, one in enumerate(found))
    return tuple(found)


def _rivet(read: Reading, figures: dict[str, float], here: Place) -> None:
    allowance = figures.setdefault("allowance", 1.4)
    if not (math.isnan(allowance) or 0.5 <= allowance <= 2.0):
        what = (
            f"The head is allowed {allowance:g} diameters of the rivet; a snap head takes "
            f"{SNAP_HEAD[0]:g} to {SNAP_HEAD[1]:g}, a countersunk one 0.5 to 0.8."
        )
        read.complain((*here, "allowance"), what, "Write 1.4.")
    figures["length"] = round(figures["grip"] + allowance * figures["dia"], 9)
