"""The scale: tried from the wanted one down on a grid of 0.01, until everything that is asked holds."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from tommybar.design import Design
from tommybar.refusals import Refusal
from tommybar.resize.asked import Asked, Key
from tommybar.resize.domains import SCALED, Offers
from tommybar.resize.leaning import Leaning
from tommybar.resize.look import Looks
from tommybar.resize.search import Tried, search, tools_lacking
from tommybar.resize.table import Bind
from tommybar.shop.model import Shop

STEP = 0.01
SMALLEST = 0.25
LARGEST = 4.0
LOOKS_IN_ALL = 3000
GIVEN_UP = 12  # rounds of giving up what cannot be kept at a scale that stands


@dataclass(frozen=True)
class Heeded:
    """Which askings are taken into account: all but ``left_out``, or none but ``only``.

    What cannot be drawn always counts: behind it nothing else can be seen.
    """

    left_out: frozenset[Key] = frozenset()
    only: frozenset[Key] | None = None

    def counts(self, key: Key) -> bool:
        """Whether an asking is taken into account."""
        if key[0] == "drawable":
            return True
        return key not in self.left_out if self.only is None else key in self.only


ALL = Heeded()


class Scales:
    """One design, one shop: what comes of it at any scale, with and without some of what is asked."""

    def __init__(
        self,
        design: Design,
        shop: Shop,
        stock: str,
        pins: Mapping[str, float | str],
        extra: tuple[Bind, ...],
    ) -> None:
        self.design, self.shop, self.stock, self.pins, self.extra = design, shop, stock, dict(pins), extra
        self.leaning = Leaning(design)
        self.offers = Offers(design, shop, self.leaning, stock, pins)
        self.looks = Looks(design, shop, stock, self.leaning)
        in_musts = frozenset().union(*(self.leaning.of_text(text) for text, _, _ in design.must()))
        self._in_musts = frozenset(
            size.name for size in design.named if size.follows == "scale" and size.name in in_musts
        )
        self._tried: dict[tuple[float, Heeded], Tried] = {}

    def grid(self, wanted: float, smallest: float = SMALLEST) -> Iterator[float]:
        """The wanted scale and every hundredth below it."""
        yield wanted
        for hundredth in range(int((wanted - 1e-9) / STEP), round(smallest / STEP) - 1, -1):
            yield round(hundredth * STEP, 2)

    def at(self, scale: float, heeded: Heeded = ALL) -> Tried:
        """The best sizes at one scale.

        Where nothing keeps everything, scaled sizes that a must-line names may
        be rounded to the other side of the grid.
        """
        known = self._tried.get((scale, heeded))
        if known is None:
            known = self._handed_back(self._searched(scale, heeded), heeded)
            self._tried[scale, heeded] = known
        return known

    def best_at(self, scale: float) -> Tried:
        """The best sizes at a scale that stands: what cannot be kept there is given up, all else is kept."""
        tried = self.at(scale)
        given_up: frozenset[Key] = frozenset()
        seen: dict[Key, Asked] = dict(tried.ever_broken)
        for _ in range(GIVEN_UP):
            broken = sorted({one.key for one in tried.broken if one.kind != "drawable"} - given_up)
            if tried.good or not broken:
                break
            hopeless = {key for key in broken if not self.at(scale, Heeded(only=frozenset((key,)))).good}
            given_up |= hopeless or {broken[0]}
            tried = self.at(scale, Heeded(left_out=given_up))
            seen.update(tried.ever_broken)
        still = tuple(one for one in self.looks.at(tried.values) if not one.holds)
        lacking = tuple(tools_lacking(tried.picks, frozenset(self.pins)))
        over = tuple(one for one in (_of_bind(bind, scale) for bind in self.extra) if not one.holds)
        ever = {one.key: one for one in (*seen.values(), *tried.ever_broken.values())}
        return replace(tried, broken=(*lacking, *still, *over), ever_broken=ever)

    def largest(self, wanted: float, heeded: Heeded = ALL) -> tuple[Tried | None, Tried, bool]:
        """The first good scale from the wanted one down, the last that was not, and whether all were tried."""
        before, sure = self.at(wanted, heeded), True
        for scale in self.grid(wanted):
            tried = self.at(scale, heeded)
            if tried.good and not self._over_exact(tried, heeded):
                return tried, before, sure
            sure = sure and tried.exhausted
            before = tried
            if self.looks.count > LOOKS_IN_ALL:
                return None, before, False
        return None, before, sure

    def exact(self, scale: float, like: Tried | None = None) -> dict[str, float | str]:
        """Sizes as the scale alone would make them, threads and tools after ``like`` where it is given."""
        found: dict[str, float | str] = {}
        picked = like.values if like else {}
        for name, size in self.offers.sizes.items():
            if name in self.pins:
                found[name] = self.pins[name]
            elif size.follows == "scale" or (size.follows in SCALED and not picked):
                found[name] = self.offers.exact(name, scale)
            else:
                found[name] = picked.get(name, size.value)
        return found

    def _searched(self, scale: float, heeded: Heeded) -> Tried:
        pinned = frozenset(self.pins)
        tried = search(self.looks, scale, self.offers.at(scale), heeded.counts, pinned)
        if tried.good or not tried.exhausted:
            return tried
        if not self._in_musts or self._beyond(tried, heeded):
            return tried
        second = search(self.looks, scale, self.offers.at(scale, self._in_musts), heeded.counts, pinned)
        second.ever_broken = {**tried.ever_broken, **second.ever_broken}
        return second if second.good else replace(tried, exhausted=second.exhausted)

    def _handed_back(self, tried: Tried, heeded: Heeded) -> Tried:
        """The limits that later floors found count as broken where the scale is beyond them."""
        over = tuple(
            one
            for one in (_of_bind(bind, tried.scale) for bind in self.extra)
            if not one.holds and heeded.counts(one.key)
        )
        if not over:
            return tried
        ever = {**tried.ever_broken, **{one.key: one for one in over}}
        return replace(tried, broken=(*tried.broken, *over), ever_broken=ever)

    def _over_exact(self, tried: Tried, heeded: Heeded) -> bool:
        """Whether a limit holds only because a scaled size was rounded down."""
        over = self._beyond(tried, heeded) if abs(tried.scale - 1) > 1e-9 else ()
        if over:
            tried.broken = over
            tried.ever_broken.update({one.key: one for one in over})
        return bool(over)

    def _beyond(self, tried: Tried, heeded: Heeded) -> tuple[Asked, ...]:
        """Limits of size that are broken by the scaled sizes as they are before rounding."""
        asked = self.looks.at(self.exact(tried.scale, tried))
        return tuple(
            one
            for one in asked
            if one.kind == "limit" and not one.least and not one.holds and heeded.counts(one.key)
        )


def _of_bind(bind: Bind, scale: float) -> Asked:
    """A limit of a later floor, asked of the scale itself."""
    return Asked("limit", bind.what, bind.part, scale, bind.scale, bind.least, who="the plan")


def refuse_nonsense(design: Design, scale: float | None, pins: Mapping[str, float | str], stock: str) -> None:
    """Raise what is wrong with a wish, before any work is done."""
    if stock not in ("rack", "buy", "ask"):
        raise Refusal(f'The stock mode is "{stock}"; it must be one of rack, buy, ask.')
    if scale is not None and not SMALLEST <= scale <= LARGEST:
        raise Refusal(
            f"The scale is {scale:g}; it must lie between {SMALLEST:g} and {LARGEST:g}.",
            "Draw the design nearer to the size it is wanted in.",
        )
    design.evaluate(pins)
