"""Everything that is asked of a design at one choice of its sizes, worked out once for each choice."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from tommybar.design import Design
from tommybar.design.model import SizedDesign
from tommybar.facts.fasteners import clearance_hole
from tommybar.refusals import Refusal
from tommybar.resize.asked import Asked, Key
from tommybar.resize.leaning import Leaning
from tommybar.resize.limits import limits_of_part, machine_limits
from tommybar.resize.walls import walls
from tommybar.shop.model import Shop

OUTSIDE_ONLY = ("largest jaws", "swing over the cross-slide", "swing over the bed", "largest round")
Values = Mapping[str, float | str]


class Looks:
    """Answers kept by the values that were asked about; ``count`` is how many were worked out."""

    def __init__(self, design: Design, shop: Shop, stock: str, leaning: Leaning) -> None:
        self.design, self.shop, self.stock, self.leaning = design, shop, stock, leaning
        self.count = 0
        self._known: dict[tuple[tuple[str, float | str], ...], tuple[Asked, ...]] = {}
        self._between = [size for size in design.named if size.between is not None]
        self._left_out: frozenset[Key] = frozenset()
        self.not_met_as_drawn = tuple(
            one for one in self.at({}) if not one.holds and one.kind in ("wall", "relation")
        )
        self._left_out = frozenset(one.key for one in self.not_met_as_drawn)
        self._known.clear()

    def at(self, values: Values) -> tuple[Asked, ...]:
        """All that is asked at these values of the free sizes.

        Where the parts cannot be drawn, what forbids it stands in place of
        the limits and walls. Walls that the design does not keep even as it
        was drawn are the designer's choice and are left out.
        """
        key = tuple(sorted(values.items()))
        found = self._known.get(key)
        if found is None:
            self.count += 1
            found = self._worked_out(values)
            self._known[key] = found
        return found

    def of_part(self, values: Values, name: str) -> tuple[Asked, ...]:
        """What machines and stock ask of one part alone, the others left out; nothing where it cannot be drawn."""
        try:
            part = self.design.part_alone(name, values)
        except Refusal:
            return ()
        return tuple(limits_of_part(part, self.shop, self.stock))

    def sized(self, values: Values) -> SizedDesign:
        """The design at these values."""
        return self.design.sized(values)

    def leans_on(self, asked: Asked) -> frozenset[str]:
        """The free sizes that can change the answer."""
        if asked.kind in ("must", "between"):
            return self.leaning.of_text(asked.what)
        if asked.kind == "drawable":
            return self.leaning.of_place(asked.what)
        if asked.kind == "tool":
            return self.leaning.of_name(asked.part)
        if asked.kind == "relation":
            return self.leaning.of_clearance(asked.what.rpartition(" ")[2])
        if asked.what.startswith(OUTSIDE_ONLY):
            return self.leaning.of_outside(asked.part)
        return self.leaning.of_part(asked.part)

    def _worked_out(self, values: Values) -> tuple[Asked, ...]:
        try:
            worked = self.design.evaluate(values)
            musts = self.design.must(values)
        except Refusal as refusal:
            return _undrawable(refusal)
        found = [
            Asked("must", text, "", slack, 0.0, True, because or "the design")
            for text, because, slack in musts
        ]
        for size in self._between:
            value = worked[size.name]
            if size.between is not None and isinstance(value, float):
                low, high = size.between
                found.append(Asked("between", f"{size.name} at least", "", value, low, True, "the design"))
                found.append(Asked("between", f"{size.name} at most", "", value, high, False, "the design"))
        found.extend(self._before_nuts(worked))
        try:
            sized = self.design.sized(values)
        except Refusal as refusal:
            return (*found, *_undrawable(refusal))
        found.extend(machine_limits(sized, self.shop, self.stock))
        found.extend(one for one in walls(sized) if one.key not in self._left_out)
        return tuple(found)

    def _before_nuts(self, worked: Mapping[str, float | str]) -> Iterator[Asked]:
        """A hole that a bolt passes on its way to a nut keeps its clearance, whether the bolt is bought or made."""
        for name, written in self.leaning.through_screws(with_nut=True):
            dia, screw = worked.get(name), str(worked.get(written, written))
            try:
                fine, coarse = (clearance_hole(screw, fit) for fit in ("fine", "coarse"))
            except Refusal:
                continue
            if isinstance(dia, float):
                who = f"ISO 273 for {screw}"
                yield Asked("relation", f"fine clearance of {name}", "", dia, fine, True, who)
                yield Asked("relation", f"coarse clearance of {name}", "", dia, coarse, False, who)


def _undrawable(refusal: Refusal) -> tuple[Asked, ...]:
    """One broken asking for each place that cannot be drawn."""
    said = {one.place or "sizes": one.what for one in reversed(refusal.complaints)}
    return tuple(
        Asked("drawable", place, "", -1.0, 0.0, True, who=what) for place, what in sorted(said.items())
    )
