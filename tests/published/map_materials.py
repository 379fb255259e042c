"""From the words of a row of materials.csv to a call of public functions.

Bands: those of the file's header (density 1.5 %, modulus 5 %, expansion 6 %,
strengths 20 % unless a minimum is stated). For what the header leaves open:
Poisson's ratio 0.015, melting 1 %, heat conductivity and heat capacity 10 %
(two data sheets of one alloy differ by as much), composition and the like
none. A guaranteed minimum must agree to the last printed place.
"""

from __future__ import annotations

import re

from tommybar.facts.materials import Material, Temper, material
from tommybar.refusals import Refusal

from .frame import Band, Computed, Row, Unmapped

LEFT_OUT: dict[str, str] = {}

_SHARES = {
    "density": 0.015,
    "modulus": 0.05,
    "expansion": 0.06,
    "melting": 0.01,
    "conductivity": 0.1,
    "heat capacity": 0.1,
    "specific heat": 0.1,
    "hardness": 0.2,
    "strength": 0.2,
    "compressive": 0.2,
}


def band(row: Row) -> Band | None:
    """The band of the kind of figure, as the head of this file states it."""
    kind = _kind(row)
    if kind == "Poisson":
        return Band(absolute=0.015, as_range=True)
    if kind in _SHARES and not (kind == "strength" and _is_minimum(row)):
        return Band(relative=_SHARES[kind], as_range=True)
    return None


def expected_call(row: Row) -> Computed:
    """What the program computes for this row."""
    kind = _kind(row)
    found = [_figure(one, kind, row) for one in _materials(row)]
    return found[0] if len(found) == 1 else tuple(found)


def _kind(row: Row) -> str:
    words = row.item.casefold()
    for kind in (
        "density",
        "modulus",
        "expansion",
        "melting",
        "conductivity",
        "heat capacity",
        "specific heat",
    ):
        if kind in words:
            return kind
    if "compressive" in words:
        return "compressive"
    for kind in ("machinability", "hardness", "content", "water absorption", "hardening temperature"):
        if kind in words:
            return kind
    if "poisson" in words:
        return "Poisson"
    if re.search(r"yield|proof|tensile", words):
        return "strength"
    raise Unmapped(row.item)


def _is_minimum(row: Row) -> bool:
    words = f"{row.item} {row.condition}".casefold()
    return bool(re.search(r"\bmin\b|minimum", words)) and not row.value2


def _materials(row: Row) -> list[Material]:
    """The material that the item names, else the one the group names; two where the item names two."""
    if "acetal" in row.group:
        names = {"homopolymer": "acetal homopolymer", "copolymer": "acetal"}
        named = [material(name) for word, name in names.items() if re.search(rf"\b{word}\b", row.item)]
        return named or [material("acetal")]
    for text in (re.sub(r"\(.*?\)|,", " ", row.item), row.group):
        words = text.split()
        for length in range(min(4, len(words)), 0, -1):
            for start in range(len(words) - length + 1):
                name = " ".join(words[start : start + length]).removesuffix("+C").removesuffix("+N")
                if text != row.group and not re.search(r"\d.*\d", name):
                    continue
                try:
                    return [material(name)]
                except Refusal:
                    continue
    raise Unmapped(row.group)


def _figure(stuff: Material, kind: str, row: Row) -> Computed:
    if kind == "modulus":
        return (stuff.shear_modulus if "shear" in row.item else stuff.modulus) / 1000
    if kind == "melting":
        return stuff.melting if row.value2 else sum(stuff.melting) / 2
    if kind == "machinability" and stuff.machinability:
        return stuff.machinability
    if kind == "hardness" and any(stuff.hardness):
        return stuff.hardness
    if kind == "hardening temperature" and any(stuff.hardening):
        return stuff.hardening
    if kind == "compressive" and stuff.compressive_strength:
        return stuff.compressive_strength
    if kind == "water absorption" and stuff.water_absorption:
        return stuff.water_absorption
    if kind == "content":
        return _content(stuff, row)
    if kind == "strength":
        return _strength(stuff, row)
    plain = {
        "density": stuff.density,
        "Poisson": stuff.poisson,
        "expansion": stuff.expansion,
        "conductivity": stuff.conductivity,
        "heat capacity": stuff.heat_capacity,
        "specific heat": stuff.heat_capacity,
    }
    if kind in plain:
        return plain[kind]
    raise Unmapped(f"{stuff.name} has no {kind}")


def _content(stuff: Material, row: Row) -> Computed:
    words = f"{row.item} {row.source}".casefold()
    standard = "BS 1407" if "bs 1407" in row.item.casefold() else "1.2210"
    for named, element, low, high in stuff.composition:
        if named == standard and words.startswith(element):
            return high if "max" in row.item and not row.value2 else (low, high)
    raise Unmapped(row.item)


def _strength(stuff: Material, row: Row) -> Computed:
    temper = _temper(stuff, row)
    proof = re.search(r"yield|proof", row.item) is not None
    if temper is None:
        return stuff.yield_strength if proof else stuff.tensile_strength
    low, high = temper.yield_strength if proof else temper.tensile_strength
    if low == 0:
        raise Unmapped(f"{stuff.name}, {temper.name}: not stated")
    if _is_minimum(row) or low == high:
        return low
    return low, high


def _temper(stuff: Material, row: Row) -> Temper | None:
    """The temper with most words in the row; then in its source; then the first."""
    told, cited = _words(f"{row.item} {row.condition}"), _words(row.source)

    def likeness(temper: Temper) -> tuple[int, int]:
        own = _words(f"{temper.name} {temper.kind}")
        return len(own & told), len(own & cited)

    return max(stuff.tempers, key=likeness, default=None)


def _words(text: str) -> set[str]:
    words = set(re.findall(r"[a-z0-9.+-]+", text.casefold().replace(",", " ")))
    return words | {"minimum"} if "min" in words else words
