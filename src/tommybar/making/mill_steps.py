"""Steps at the mill: spot, drill, bore, ream, counterbore, tap, mill an edge."""

from __future__ import annotations

import math
from dataclasses import dataclass, field, replace

from tommybar.design.model import Part
from tommybar.facts.drills import point_length
from tommybar.facts.threads import tap_depths, thread
from tommybar.findings import Finding
from tommybar.making.cards import Measure, Step
from tommybar.making.cuts import feed_for, spindle
from tommybar.making.lengths import Mm
from tommybar.making.practice import rule
from tommybar.making.reaming import drilled_size, hole_plan
from tommybar.shapes.features import Dim
from tommybar.shop.model import Mill, Shop

TAP_TOLERANCE = 0.15  # a tapping drill may be so much over the standard one; common practice [mm]


def _within(dim: Dim) -> tuple[float, float] | None:
    if dim.smallest is None or dim.largest is None:
        return None
    return dim.smallest, dim.largest


@dataclass
class MillBench:
    """The state while a mill card is written."""

    part: Part
    shop: Shop
    mill: Mill
    number: int
    steps: list[Step] = field(default_factory=list)
    findings: list[Finding] = field(default_factory=list)

    def add(self, step: Step) -> None:
        """Put a step on the card, with its number and key."""
        number = len(self.steps) + 1
        self.steps.append(replace(step, number=number, key=f"{self.part.name}/{self.number}/{number}"))

    def stop(
        self, number: int, words: str, feature: str, remedy: str, figure: str = "", bound: str = ""
    ) -> None:
        """Note a finding that forbids starting."""
        self.findings.append(
            Finding(
                number,
                "stop",
                words,
                self.part.name,
                feature,
                self.number,
                len(self.steps) + 1,
                figure,
                bound,
                remedy,
            )
        )

    def caution(self, number: int, words: str, feature: str, remedy: str, figure: str, bound: str) -> None:
        """Note a finding to be read before starting."""
        self.findings.append(
            Finding(number, "caution", words, self.part.name, feature, self.number, 0, figure, bound, remedy)
        )

    def spot(self, count: int, feature: str) -> None:
        """Start every hole with a short stiff drill."""
        size = min(self.shop.centre_drills, key=lambda d: (abs(d - 2.5), d), default=2.0)
        speed = spindle(self.mill.speeds, self.part.material, "HSS", "centre drilling", size)
        self.add(
            Step(
                0,
                f"Spot {count} place{'s' if count > 1 else ''}" if count > 1 else "Spot the place",
                feature,
                f"centre drill {Mm(size):tool}",
                "centre drill",
                speed.rpm,
                speed.reached,
                0.03,
                f"{count}",
                "places" if count > 1 else "place",
                ("In the order of the list; come to every place from the same sides.",),
                minutes=count * rule("minutes", "hole"),
                why="Spotted holes start where the list says.",
                tool_size=size,
            )
        )

    def drill(self, dia: float, depth: float, holes: str, count: int, feature: str, *, through: bool) -> None:
        """Drill a size at some of the places."""
        speed = spindle(self.mill.speeds, self.part.material, "HSS", "drilling", dia)
        point = point_length(dia)
        deep = depth + (rule("cut", "through") if through else 0.0) + point
        words = "through" if through else f"full diameter {Mm(depth):.1f} deep"
        peck = (f"Clear chips every {Mm(dia):.0f}.",) if depth / dia > rule("cut", "peck") else ()
        brass = (
            ("Brass grabs: stone the lips to no rake, clamp it down.",)
            if "brass" in self.part.material
            else ()
        )
        self.add(
            Step(
                0,
                f"Drill {Mm(dia):tool} {'through' if through else 'blind'}, {holes}",
                feature,
                f"drill {Mm(dia):tool}",
                "drill",
                speed.rpm,
                speed.reached,
                feed_for(self.part.material, "HSS", "drilling", "roughing", dia),
                f"{round(dia, 2):g}",
                "DIA mm",
                (f"{words}, tip {Mm(deep):.1f} below the face.", *peck),
                minutes=count * rule("minutes", "hole"),
                cautions=(
                    *(("Nothing under the hole: parallels clear, scrap beneath.",) if through else ()),
                    *brass,
                ),
                tool_size=dia,
            )
        )

    def blind(self, dim: Dim, depth: float, holes: str, count: int, feature: str) -> None:
        """A plain blind hole with a drill that is owned; limits in a blind hole are not routed yet."""
        drill = None if dim.toleranced else drilled_size(dim.value, self.shop)
        if drill is not None:
            self.drill(drill, depth, holes, count, feature, through=False)
        elif dim.toleranced:
            self.stop(
                905,
                f"{feature}: a blind hole with limits is not routed yet.",
                feature,
                "Bore it to a plug by hand.",
            )
        else:
            self.stop(
                411,
                f"Nothing in the drawer makes {feature}, {dim.value:g} mm.",
                feature,
                "Add the drill, or let the size follow one that is owned.",
                figure=f"{dim.value:g} mm",
            )

    def tap(
        self, designation: str, full: float | None, drill: float, holes: str, count: int, feature: str
    ) -> None:
        """Tap by hand with the mill's spindle to keep it square."""
        if designation not in self.shop.taps:
            self.stop(
                414,
                f"No {designation} tap in the drawer for {feature}.",
                feature,
                "Buy or borrow the tap, or let the size follow a thread that is owned.",
                bound="taps owned: " + (", ".join(self.shop.taps) or "none"),
            )
            return
        screw = thread(designation)
        deep = "through" if full is None else f"full thread {Mm(full):.1f} deep"
        self.add(
            Step(
                0,
                f"Tap {designation}, {holes}",
                feature,
                f"tap {designation}",
                "tap",
                0.0,
                0.0,
                screw.pitch,
                designation,
                "through" if full is None else f"{Mm(full):.1f} deep",
                (
                    f"By hand from the spindle, {deep}; drill was {Mm(drill):tool}.",
                    "Back half a turn every half turn; oil.",
                ),
                minutes=count * 3.0,
                cautions=("Spindle stopped, out of gear.",),
                tool_size=screw.major,
            )
        )

    def tapped(
        self, designation: str, full: float | None, thick: float, holes: str, count: int, feature: str
    ) -> None:
        """Tapping drill and tap at some places; blind depths with the lead below the full thread."""
        screw = thread(designation)
        near = [
            d
            for d in self.shop.drills
            if screw.tapping_drill - 0.03 <= d <= screw.tapping_drill + TAP_TOLERANCE
        ]
        if not near:
            self.stop(
                415,
                f"No tapping drill for {designation}: it wants {screw.tapping_drill:g} mm.",
                feature,
                "Buy the drill; a smaller hole breaks taps, a larger one strips.",
                figure=f"{screw.tapping_drill:g} mm",
            )
            return
        drill = min(near, key=lambda d: abs(d - screw.tapping_drill))
        if full is None:
            self.drill(drill, thick, holes, count, feature, through=True)
        else:
            depths = tap_depths(screw, full, drill)
            if depths.tip_depth > thick:
                self.stop(
                    417,
                    f"{feature}: {Mm(full):g} of thread {designation} needs a hole {Mm(depths.tip_depth):.1f} deep at its tip.",
                    feature,
                    "Make the thread shorter or let it go through.",
                    figure=f"{depths.tip_depth:.1f} mm",
                    bound=f"{thick:g} mm of metal",
                )
            self.drill(drill, depths.full_diameter_depth, holes, count, feature, through=False)
        self.tap(designation, full, drill, holes, count, feature)

    def sized(
        self, dim: Dim, thick: float, holes: str, count: int, feature: str, gives: tuple[str, ...]
    ) -> None:
        """Drill, and where limits are given bore or ream, a through hole."""
        plan = hole_plan(dim.value, self.shop, limits=dim.toleranced, depth=thick, within=_within(dim))
        if plan is None:
            self.stop(
                411,
                f"Nothing in the drawer makes {feature}, {dim.value:g} mm.",
                feature,
                "Add a drill or reamer, or let the size follow one that is owned.",
                figure=f"{dim.value:g} mm",
            )
            return
        for size in plan.drills:
            self.drill(size, thick, holes, count, feature, through=True)
        if plan.finish in ("bore", "bore and ream"):
            self._boring_head(plan.bore_to, dim, thick, feature, last=plan.reamer is None, gives=gives)
        if plan.reamer is not None:
            self._ream(plan.reamer.size, plan.reamer.zone, dim, thick, holes, feature, gives)

    def _measure(self, dim: Dim, feature: str, gives: tuple[str, ...]) -> tuple[Measure, ...]:
        can = [
            i
            for i in self.shop.instruments
            if "inside" in i.measures and i.smallest <= dim.value <= i.largest
        ]
        name = min(can, key=lambda i: (i.uncertainty, i.name)).name if can else ""
        return (Measure(f"{self.part.name}.{feature}", dim, name, gives),)

    def _boring_head(
        self, to: float, dim: Dim, thick: float, feature: str, *, last: bool, gives: tuple[str, ...]
    ) -> None:
        speed = spindle(self.mill.speeds, self.part.material, "HSS", "boring", to)
        self.add(
            Step(
                0,
                f"Bore {feature} with the boring head",
                feature,
                "boring head",
                "boring",
                speed.rpm,
                speed.reached,
                0.05,
                f"{to:.3f}" if last else f"{to:.2f}",
                "DIA mm",
                (
                    f"Through {Mm(thick):g}; do not move the table."
                    + ("" if last else f" Leaves {Mm(dim.value - to):.2f} for the reamer."),
                ),
                minutes=12.0,
                measure=self._measure(dim, feature, gives) if last else (),
                tool_size=to,
            )
        )

    def _ream(
        self, size: float, zone: str, dim: Dim, thick: float, holes: str, feature: str, gives: tuple[str, ...]
    ) -> None:
        speed = spindle(self.mill.speeds, self.part.material, "HSS", "reaming", size)
        self.add(
            Step(
                0,
                f"Ream {Mm(size):tool} {zone}, {holes}",
                feature,
                f"reamer {Mm(size):tool} {zone}",
                "reamer",
                speed.rpm,
                speed.reached,
                feed_for(self.part.material, "HSS", "reaming", "finishing", size),
                f"{size:g} {zone}",
                "DIA mm",
                (
                    f"Through {Mm(thick):g}, slow and steady, lubricant; do not move the table since the drill.",
                ),
                minutes=4.0,
                why="The reamer fixes the size; the mate is made to suit it.",
                measure=self._measure(dim, feature, gives),
                tool_size=size,
            )
        )

    def mill_to(self, what: str, size: float, dim: Dim, feature: str, take_off: float) -> None:
        """Mill an end or edge to a length with the largest end mill that suits."""
        cutters = [c for c in self.shop.cutters if c >= 6.0] or list(self.shop.cutters)
        if not cutters:
            self.stop(
                418, "No end mill in the drawer.", feature, "Buy or borrow an end mill, or file to a line."
            )
            return
        cutter = max(cutters)
        speed = spindle(self.mill.speeds, self.part.material, "HSS", "milling", cutter)
        passes = max(1, math.ceil(take_off / 0.5))
        can = [i for i in self.shop.instruments if "length" in i.measures and i.smallest <= size <= i.largest]
        name = min(can, key=lambda i: (i.uncertainty, i.name)).name if can else ""
        self.add(
            Step(
                0,
                what,
                feature,
                f"end mill {Mm(cutter):tool}",
                "end mill",
                speed.rpm,
                speed.reached,
                feed_for(self.part.material, "HSS", "milling", "roughing") * 2,
                f"{size:.2f}",
                "mm long" if feature == "length" else "mm",
                (
                    f"{passes} cut{'s' if passes > 1 else ''}, cutter against the feed (up-cut), slides not used locked.",
                ),
                minutes=4.0,
                measure=(Measure(f"{self.part.name}.{feature}", dim, name),) if "to " in what else (),
                tool_size=cutter,
            )
        )
