"""Slots: a cutter no wider than they are, both sides by coordinates, ends by its radius."""

from __future__ import annotations

from dataclasses import dataclass

from tommybar.facts.drills import point_length
from tommybar.making.cards import Step
from tommybar.making.lengths import Mm
from tommybar.making.mill_steps import MillBench, Plunge
from tommybar.making.milling.cutters import (
    cuts_words,
    depth_passes,
    end_mill_feed,
    largest_cutter,
    no_cutter,
)
from tommybar.making.milling.rules import mill_rule
from tommybar.making.visiting import Spot
from tommybar.shapes.features import Dim


@dataclass(frozen=True)
class SlotPath:
    """Where the axis of a cutter runs in a slot, from the slot's middle [mm]."""

    along: tuple[float, float]  # the two ends
    beside: tuple[float, ...]  # of the middle line: 0, or both sides

    @property
    def one_run(self) -> bool:
        """Whether the cutter is as wide as the slot."""
        return len(self.beside) == 1


def slot_path(long: float, width: float, cutter: float, *, start_open: bool, end_open: bool) -> SlotPath:
    """Ends and sides of a cutter's axis for a slot of overall length and width [mm].

    A closed end stops half the cutter short of it, an open one runs out by
    half the cutter and the clearance; the sides stand (width - cutter)/2 off.

    Examples
    --------
    >>> path = slot_path(30.0, 8.0, 6.0, start_open=False, end_open=False)
    >>> path.along, path.beside
    ((-12.0, 12.0), (-1.0, 1.0))
    """
    run_out = cutter / 2 + mill_rule("clear_off")
    start = -long / 2 - run_out if start_open else -long / 2 + cutter / 2
    end = long / 2 + run_out if end_open else long / 2 - cutter / 2
    side = (width - cutter) / 2
    return SlotPath((start, end), (0.0,) if side < 1e-6 else (-side, side))


def slot_cutter(bench: MillBench, width: Dim, depth: float) -> float | None:
    """The cutter for a slot: of its own width where no limits are given, else the next that leaves both sides [mm]."""
    if not width.toleranced:
        same = largest_cutter(bench, width.value, depth, least=width.value - 0.02)
        if same is not None:
            return same
    smallest = width.smallest if width.smallest is not None else width.value
    return largest_cutter(bench, smallest - mill_rule("cutter_over"), depth)


def slot(
    bench: MillBench,
    feature: str,
    long: float,
    width: Dim,
    depth: float,
    *,
    start_open: bool = False,
    end_open: bool = False,
    at: str = "",
    through: bool = False,
    rounded: bool = True,
    middle: tuple[float, float] | None = None,
    upright: bool = False,
) -> None:
    """Cut a slot ``long`` overall; ``middle`` gives its place along and across on the card [mm].

    ``upright``: it lies along Y.
    """
    cutter = slot_cutter(bench, width, depth)
    if cutter is None:
        no_cutter(bench, feature, f"a slot of {width.value:g} mm", width.value, depth)
        return
    closed = not (start_open or end_open)
    path = slot_path(long, width.target, cutter, start_open=start_open, end_open=end_open)
    if closed and path.along[0] > path.along[1] + 1e-9:
        bench.stop(
            440,
            f"{feature} is {long:g} mm long and {width.value:g} mm wide: a slot is at least as long as it is wide.",
            feature,
            "Draw a hole, or a longer slot.",
            figure=f"{long:g} mm",
            bound=f"{width.value:g} mm",
        )
        return
    if rounded and not (start_open and end_open) and not path.one_run and not width.toleranced:
        bench.caution(
            442,
            f"{feature}: its ends are drawn half round, {width.value / 2:g} mm; the largest end mill that goes in is "
            f"{cutter:g} mm and leaves the ends squarer, with corners of {cutter / 2:g} mm.",
            feature,
            f"Drill {width.value:g} mm at both ends first, or cut it with an end mill of {width.value:g} mm.",
            f"corner {cutter / 2:g} mm",
            f"{width.value / 2:g} mm as drawn",
        )
    if closed:
        _start_hole(bench, feature, cutter, depth, path, through=through, at=at)
    if middle is not None:
        for what, along in (("one end", path.along[0]), ("other end", path.along[1])):
            spot = (middle[0] + along, middle[1])
            x, y = reversed(spot) if upright else spot
            bench.spots.append(Spot(x, y, f"{feature}: {what}, cutter {Mm(cutter):tool} on its middle line"))
    _cut(bench, feature, cutter, width, depth, path, at=at, through=through, closed=closed, middle=middle)


def _start_hole(
    bench: MillBench, feature: str, cutter: float, depth: float, path: SlotPath, *, through: bool, at: str
) -> None:
    """A hole at one end for a cutter that does not cut to its centre; a two-flute slot drill needs none."""
    fits = [d for d in bench.shop.drills if d <= cutter - 0.2 and d <= bench.shop.lathe.drill_chuck + 1e-6]
    deep = depth if through else depth - point_length(max(fits)) if fits else 0.0
    if not fits or deep <= 0.3:
        bench.caution(
            443,
            f"{feature} is closed and {depth:.2f} mm deep: no start hole fits above its floor.",
            feature,
            f"Plunge a two-flute slot drill of {cutter:g} mm, or let the cutter down while the table runs to and fro.",
            f"{depth:.2f} mm",
            "a cutter with its centre ground away cannot plunge",
        )
        return
    bench.drill(
        max(fits),
        deep,
        f"start hole of {feature}{at}, {Mm(path.along[0]):+.2f} along from its middle",
        1,
        feature,
        through=through,
    )


def _cut(
    bench: MillBench,
    feature: str,
    cutter: float,
    width: Dim,
    depth: float,
    path: SlotPath,
    *,
    at: str,
    through: bool,
    closed: bool,
    middle: tuple[float, float] | None,
) -> None:
    goes = depth + (0.5 if through else 0.0)
    passes = depth_passes(bench, goes, cutter)
    speed = bench.speed("slotting", cutter, feature)
    bench.plunges.append(Plunge("end mill", cutter, goes + bench.sunk, feature))
    x, y = middle or (0.0, 0.0)
    whence = "" if middle is not None else " from its middle"
    ends = f"{Mm(x + path.along[0]):+.2f} to {Mm(x + path.along[1]):+.2f}{whence}"
    left = mill_rule("side_finish")
    sides = (
        (
            f"One run on the middle line, across {Mm(y):+.2f}{whence}: {Mm(cutter):tool} cuts {Mm(width.value):g} wide.",
        )
        if path.one_run
        else (
            f"Rough on the middle line; then each side, the cutter's axis across {Mm(y + path.beside[0]):+.3f} and "
            f"{Mm(y + path.beside[1]):+.3f}{whence}: (width {Mm(width.target):.3f} - cutter {Mm(cutter):g})/2 to a side.",
            f"First stay {Mm(min(left, path.beside[1])):.2f} inside on both, measure the slot, and set the cutter's true size: "
            f"it cuts up to {Mm(mill_rule('cutter_over')):.2f} more than itself.",
        )
    )
    bench.add(
        Step(
            0,
            f"Mill the slot {Mm(width.value):g} wide{', through' if through else f', {Mm(depth):.2f} deep'}{at}",
            feature,
            f"{'slot drill' if closed else 'end mill'} {Mm(cutter):tool}",
            "end mill",
            speed.rpm,
            speed.reached,
            end_mill_feed(bench, "slotting", "roughing"),
            f"{depth:.2f}",
            "deep mm",
            (
                f"The cutter's axis runs along from {ends}"
                + (
                    f", half the cutter ({Mm(cutter / 2):g}) short of closed ends."
                    if not path.along[0] < -1e8
                    else "."
                ),
                *sides,
                f"Down {Mm(goes):.2f} in {cuts_words(passes)} of {Mm(passes[0].infeed):.2f}.",
            ),
            passes,
            minutes=3.0 + len(passes) * (1 if path.one_run else 3) * 0.7,
            cautions=("Chips jam in a slot: brush them out with the spindle stopped, oil for steel.",),
            measure=bench.measured(width, feature, "inside") if width.toleranced else (),
            tool_size=cutter,
        )
    )
