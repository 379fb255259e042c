"""The boring head: whether the shop has one that reaches the size, and its step."""

from __future__ import annotations

from tommybar.making.cards import Step
from tommybar.making.cuts import feed_for
from tommybar.making.lengths import Mm
from tommybar.making.mill_steps import MillBench, Plunge
from tommybar.shapes.features import Dim
from tommybar.shop.model import Shop


def owned(shop: Shop) -> bool:
    """Whether the shop bores with a head: it says so, or gives the head's range."""
    return shop.mill is not None and ("boring head" in shop.can or shop.mill.boring_head[1] > 0)


def start_hole(shop: Shop, size: float) -> float | None:
    """The drill whose hole a boring head can enter on its way to a size [mm]; None: no head, or out of its range."""
    if shop.mill is None or not owned(shop):
        return None
    least, most = shop.mill.boring_head
    if most > 0 and size > most + 1e-9:
        return None
    fitting = [
        d for d in shop.drills if least - 1e-9 <= d <= size - 0.5 and d <= shop.lathe.drill_chuck + 1e-6
    ]
    return max(fitting) if fitting else None


def why_not(shop: Shop, size: float) -> tuple[str, str]:
    """Why no boring head makes that size: words, and the bound as a figure."""
    if shop.mill is None or not owned(shop):
        return "no boring head in the shop file", "boring head: none"
    least, most = shop.mill.boring_head
    if most > 0 and size > most + 1e-9:
        return f"the boring head ends at {most:g} mm", f"boring head {least:g} to {most:g} mm"
    largest = max((d for d in shop.drills if d <= shop.lathe.drill_chuck + 1e-6), default=0.0)
    return (
        f"no drill opens a hole that the boring head enters and that leaves it 0.5 mm (largest drill {largest:g} mm)",
        f"boring head from {least:g} mm",
    )


def still(count: int) -> str:
    """The table stays from the drill to the last tool; with several holes, at each of them."""
    if count == 1:
        return "do not move the table since the drill"
    return f"at each of the {count} places drill and finish before the table moves on"


def bore(
    bench: MillBench,
    to: float,
    dim: Dim,
    deep: float,
    feature: str,
    *,
    last: bool,
    blind: bool,
    count: int = 1,
) -> None:
    """Bore to a diameter with the head; ``last`` when nothing follows and the size is measured."""
    speed = bench.speed("boring", to, feature)
    if bench.mill.boring_head[1] <= 0 and "head" not in bench.said:
        bench.said.add("head")
        bench.caution(
            434,
            f"The shop file does not say what the boring head reaches; {feature} wants {to:.2f} mm.",
            feature,
            "Try the bar in its outermost place, and write boring_head: [smallest hole, largest bore] under mill.",
            f"{to:g} mm",
            "range not in the shop file",
        )
    depth = (
        f"To {Mm(deep):.2f} below {bench.face}, by the quill's stop" if blind else f"Through {Mm(deep):.4g}"
    )
    bench.plunges.append(Plunge("boring head", to, deep + bench.sunk, feature))
    bench.add(
        Step(
            0,
            f"Bore {feature} with the boring head",
            feature,
            "boring head",
            "boring",
            speed.rpm,
            speed.reached,
            feed_for(bench.part.material, "HSS", "boring", "finishing"),
            f"{to:.3f}" if last else f"{to:.2f}",
            "DIA mm",
            (
                f"{depth}; {still(count)}."
                + ("" if last else f" Leaves {Mm(dim.value - to):.2f} for the reamer."),
                "Bore, measure, then set the head: a move of the bar adds twice as much to the bore; see whether its dial is "
                "marked in radius or diameter. The last two cuts alike.",
            ),
            minutes=12.0 * count,
            cautions=("Spindle stopped and out of gear while the head is set and the bore is measured.",),
            measure=bench.measured(dim, feature, "inside") if last else (),
            tool_size=to,
        )
    )
