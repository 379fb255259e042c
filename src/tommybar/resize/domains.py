"""What may stand in the place of every free size at one scale."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

from tommybar.design import Design, NamedSize
from tommybar.facts.fasteners import clearance_hole
from tommybar.refusals import Refusal
from tommybar.resize.choice import PINNED, Choice, Domain, words
from tommybar.resize.grid import neighbour, on_grid
from tommybar.resize.leaning import Leaning
from tommybar.resize.limits import FLAT, pieces_of
from tommybar.resize.screw_threads import owned_threads, thread_domain
from tommybar.resize.stock_sizes import bar_domain, plate_domain, sheet_domain
from tommybar.resize.tools import owned_tools, tool_domain
from tommybar.shop.model import Bar, Shop

TOOLS = ("reamer", "drill", "cutter")
SCALED = ("scale", *TOOLS, "bar", "plate", "sheet")  # classes whose figure the scale multiplies


class Offers:
    """The domains of one design in one shop; pins hold a size where it is."""

    def __init__(
        self, design: Design, shop: Shop, leaning: Leaning, stock: str, pins: Mapping[str, float | str]
    ) -> None:
        self.design, self.shop, self.leaning, self.stock, self.pins = design, shop, leaning, stock, pins
        self.sizes = {size.name: size for size in design.named if not size.expression}
        self._clearance_of = dict(leaning.through_screws())
        self._pieces: dict[tuple[str, str], list[Bar]] = {}
        self._known: dict[tuple[float, frozenset[str]], dict[str, Domain]] = {}

    def at(self, scale: float, widened: frozenset[str] = frozenset()) -> dict[str, Domain]:
        """A domain for every free size; ``widened`` scaled sizes may go to either side of the grid."""
        known = self._known.get((scale, widened))
        if known is None:
            known = {name: self._domain(size, scale, name in widened) for name, size in self.sizes.items()}
            self._known[scale, widened] = known
        return known

    def exact(self, name: str, scale: float) -> float | str:
        """What the scale alone would make of a free size."""
        size = self.sizes[name]
        if isinstance(size.value, str) or size.follows not in SCALED or size.unit != "mm":
            return size.value
        return size.value * scale

    def _domain(self, size: NamedSize, scale: float, widened: bool) -> Domain:
        name, old = size.name, size.value
        if name in self.pins:
            return Domain(name, self.exact(name, scale), (Choice(self.pins[name], 0.0, PINNED),))
        if size.follows == "thread" and isinstance(old, str):
            owned = owned_threads(self.shop, self.leaning.tools_for_thread(name))
            return thread_domain(name, old, scale, owned)
        if isinstance(old, str) or size.follows not in SCALED or size.unit != "mm":
            why = {"bought": "bought part: never scaled", "scale": "an angle or number: never scaled"}
            kept = why.get(size.follows, size.because or "follows nothing: never scaled")
            return Domain(name, old, (Choice(old, 0.0, kept),))
        if size.follows == "scale":
            return self._scaled(size, old, scale, widened)
        found = self._snapped(size, old, scale)
        return Domain(name, found.exact, found.choices, found.refused, size.prefers)

    def _scaled(self, size: NamedSize, old: float, scale: float, widened: bool) -> Domain:
        exact, units = old * scale, self.design.units
        if abs(scale - 1) < 1e-9:
            return Domain(size.name, exact, (Choice(old, 0.0, "as drawn"),))
        value = on_grid(exact, units)
        choices = [Choice(value, abs(value / exact - 1), f"scaled from {words(old)} mm, on the grid")]
        if widened:
            other = neighbour(exact, units)
            why = f"scaled from {words(old)} mm, to the other side of the grid"
            choices.append(Choice(other, abs(other / exact - 1), why))
        return Domain(size.name, exact, tuple(choices), (), size.prefers)

    def _snapped(self, size: NamedSize, old: float, scale: float) -> Domain:
        if size.follows in TOOLS:
            owned = owned_tools(self.shop, size.follows)
            also = self._clearing(size.name, scale, owned)
            return tool_domain(size.name, size.follows, old, scale, owned, also, self.design.units)
        if size.follows == "bar":
            bars = self._stock(size.name, "turned", ("round",))
            return bar_domain(size.name, old, scale, bars, self.shop.lathe.spindle_bore, self.design.units)
        pieces = self._stock(size.name, "", FLAT)
        if size.follows == "plate" and self.leaning.is_width(size.name):
            return plate_domain(
                size.name, old, scale, [bar.width for bar in pieces], "flat", self.design.units
            )
        thick = [bar.size for bar in pieces]
        if size.follows == "plate" or old * scale >= 3:
            sold = [bar.size for bar in self._stock(size.name, "", FLAT, "buy")]
            return plate_domain(size.name, old, scale, thick, size.follows, self.design.units, sold)
        return sheet_domain(size.name, old, scale, thick, size.follows, self.design.units)

    def _stock(self, name: str, kind: str, sections: tuple[str, ...], stock: str = "") -> list[Bar]:
        """Pieces for the part that a stock-following size belongs to."""
        key = (name, stock or self.stock)
        if key not in self._pieces:
            parts = self.leaning.materials_of(name)
            wanted = [one for one in parts if one[1] == kind] or list(parts)
            material = wanted[0][2] if wanted else ""
            self._pieces[key] = pieces_of(self.shop, material, sections, key[1]) if material else []
        return self._pieces[key]

    def _clearing(self, name: str, scale: float, owned: tuple[float, ...]) -> tuple[float, ...]:
        """For each thread its screw may take, the drill that clears it and is nearest to the medium series."""
        screw = self._clearance_of.get(name)
        if screw is None:
            return ()
        size = self.sizes.get(screw)
        threads = [screw]
        if size is not None:
            threads = [str(one.value) for one in self._domain(size, scale, False).choices]
        found = set()
        for span in filter(None, map(_clearance_span, threads)):
            fine, medium, coarse = span
            clear = [one for one in owned if fine - 1e-9 <= one <= coarse + 1e-9]
            if clear:
                found.add(min(clear, key=lambda one: (abs(one - medium), one)))
        return tuple(sorted(found))


@lru_cache(maxsize=256)
def _clearance_span(screw: str) -> tuple[float, float, float] | None:
    try:
        fine, medium, coarse = (clearance_hole(screw, fit) for fit in ("fine", "medium", "coarse"))
    except Refusal:
        return None
    return fine, medium, coarse
