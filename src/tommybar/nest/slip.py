"""The request slip: what must be bought or asked for, in the words a shop or a friend understands."""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil, pi, sqrt
from typing import Literal

from tommybar.facts.materials import Material, material, material_names
from tommybar.making.lengths import tool_size_words
from tommybar.nest.cutlist import BuyLine
from tommybar.refusals import Refusal
from tommybar.resize.choice import words
from tommybar.resize.limits import same_material
from tommybar.shop.model import Bar, Shop

MOST_ALIKE = 3  # alloys named on one line
NEXT_LARGER = 2  # sections named on one line


@dataclass(frozen=True)
class Wanted:
    """One kind of piece that is not on the rack [mm]."""

    material: str
    section: str
    size: float
    width: float
    length: float  # as asked for, whole millimetres
    count: int
    parts: tuple[str, ...]


def section_words(section: str, size: float, width: float, unit: Literal["mm", "in"] = "mm") -> str:
    """A section as it is asked for over the counter: an inch size by its name.

    >>> section_words("round", 70.0, 0.0), section_words("flat", 10.0, 30.0)
    ('70 mm round', '30 x 10 mm flat')
    >>> section_words("round", 3.175, 0.0), section_words("round", 38.1, 0.0, "in")
    ('1/8 in round', '1 1/2 in round')
    """

    def said(figure: float) -> str:
        parts = figure / 25.4 * 64
        if unit == "in" and abs(parts - round(parts)) < 1e-4:
            return f"{_fraction(round(parts), 64)} in"
        named = tool_size_words(figure, unit)
        return named if named.endswith(" in") else f"{words(figure)} mm"

    if section in ("flat", "plate", "sheet"):
        wide, thick = said(width), said(size)
        if wide.endswith(" mm") and thick.endswith(" mm"):
            wide = wide.removesuffix(" mm")
        return f"{wide} x {thick} {section}"
    if section == "hexagon":
        return f"{said(size)} across flats hexagon"
    if section == "tube":
        outside, bore = said(size), said(width)
        if outside.endswith(" mm") and bore.endswith(" mm"):
            outside = outside.removesuffix(" mm")
        return f"tube {outside} x {bore} (outside by bore)"
    return f"{said(size)} {section}"


def section_area(section: str, size: float, width: float) -> float:
    """Area of a section [mm2]: a hexagon is sqrt(3)/2 of the square on its flats."""
    if section == "round":
        return pi / 4 * size**2
    if section == "tube":
        return pi / 4 * (size**2 - width**2)
    if section == "hexagon":
        return sqrt(3) / 2 * size**2
    if section == "square":
        return size**2
    return size * width


def known_material(name: str) -> Material | None:
    """The record of a material, or None when the table does not know the name."""
    try:
        return material(name)
    except Refusal:
        return None


def alike(name: str) -> tuple[str, ...]:
    """Alloys of the same family that do as well: as dense, as strong, and no worse to cut.

    >>> alike("mild steel")[0]
    'free-cutting mild steel'
    """
    asked = known_material(name)
    if asked is None:
        return ()
    found = []
    for other in (material(one) for one in material_names(asked.family)):
        close = (
            abs(other.density / asked.density - 1) <= 0.03 and abs(other.modulus / asked.modulus - 1) <= 0.1
        )
        strong = other.yield_strength >= 0.85 * asked.yield_strength
        cuts_well = other.machinability >= 0.85 * asked.machinability > 0
        if other.name != asked.name and close and strong and cuts_well:
            found.append(other.name)
    return tuple(found[:MOST_ALIKE])


def buy_line(wanted: Wanted, shop: Shop, stock: str) -> BuyLine:
    """One line of the slip, with its mass for the price and what may stand in for it."""
    known = known_material(wanted.material)
    volume = section_area(wanted.section, wanted.size, wanted.width) * wanted.length * wanted.count
    mass = volume * known.density / 1000 if known else 0.0
    what = section_words(wanted.section, wanted.size, wanted.width, shop.unit)
    head = "Ask for" if stock == "ask" else "Buy"
    many = (
        f"{wanted.count} pieces of"
        if wanted.count > 1
        else ("a slice of" if _slice(wanted) else "a piece of")
    )
    said = f"{head} {many} {what} {wanted.material}, {words(wanted.length)} mm long"
    if shop.unit == "in":
        said += f" ({_inch(wanted.length)} in by the rule)"
    said += ", saw cut is fine, up to 2 mm longer does no harm"
    if mass:
        said += f"; about {_mass_words(mass)}"
    return BuyLine(
        said + ".",
        wanted.section,
        wanted.size,
        wanted.width,
        wanted.length,
        wanted.material,
        mass,
        wanted.parts,
        (
            *_next_larger(wanted, shop.obtainable),
            *(f"{other}, same size" for other in alike(wanted.material)),
        ),
        wanted.count,
    )


def _slice(wanted: Wanted) -> bool:
    return wanted.section == "round" and wanted.length < wanted.size


def _mass_words(mass: float) -> str:
    return f"{mass / 1000:.2f} kg" if mass >= 1000 else f"{mass:.0f} g"


def _inch(length: float) -> str:
    """The next sixteenth of an inch up, as a fraction in lowest terms."""
    return _fraction(ceil(round(length / 25.4 * 16, 6)), 16)


def _fraction(parts: int, bottom: int) -> str:
    """So many parts of an inch in lowest terms."""
    whole, part = divmod(parts, bottom)
    if not part:
        return str(whole)
    while part % 2 == 0:
        part, bottom = part // 2, bottom // 2
    return f"{whole} {part}/{bottom}" if whole else f"{part}/{bottom}"


def _next_larger(wanted: Wanted, obtainable: tuple[Bar, ...]) -> tuple[str, ...]:
    larger = sorted(
        {
            (bar.size, bar.width)
            for bar in obtainable
            if bar.section == wanted.section
            and same_material(bar.material, wanted.material)
            and bar.size >= wanted.size
            and bar.width >= wanted.width
            and (bar.size, bar.width) != (wanted.size, wanted.width)
        }
    )
    return tuple(section_words(wanted.section, size, width) for size, width in larger[:NEXT_LARGER])
