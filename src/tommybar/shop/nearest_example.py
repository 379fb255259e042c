"""Which example shop stands in for what a shop file leaves out."""

from __future__ import annotations

from math import log

from tommybar.refusals import Refusal
from tommybar.shop.shop_file import ShopFile

Figures = tuple[float | None, float | None, float | None]


def figures_of(file: ShopFile) -> Figures:
    """Centre height, swing over the cross-slide and largest grip, where the file gives them [mm]."""
    lathe = file.lathe
    centre = lathe and (lathe.centre_height or (lathe.swing_over_bed and lathe.swing_over_bed / 2))
    grips = [one.to for jaws in file.jaws or () if jaws.device != "collets" for one in jaws.ranges]
    return centre or None, (lathe and lathe.swing_over_cross_slide) or None, max(grips, default=None)


def nearest_example(file: ShopFile, known: dict[str, Figures]) -> str:
    """The name of the example whose centre height, swing and grip are nearest in proportion.

    Among equals (a file that gives none of the three) an example in the same
    unit comes first, then shop R, then the small bench, then the order of names.
    """
    if not known:
        raise Refusal(
            "The shop file leaves figures out, and no example shop is installed to take them from.",
            "Install the examples, or write every figure.",
        )
    wanted = figures_of(file)

    def distance(name: str) -> tuple[float, bool, str]:
        pairs = [(a, b) for a, b in zip(wanted, known[name], strict=True) if a and b]
        off = sum(abs(log(a / b)) for a, b in pairs) / len(pairs) if pairs else 0.0
        return round(off, 9), (name == "inch-bench") != (file.units == "in"), _PREFERRED.get(name, name)

    return min(known, key=distance)


# With nothing to go by, the reference shop stands in; of two equal lathes, the bench with the fuller drawer.
_PREFERRED = {"shop-r": " first", "small-bench": " second"}
