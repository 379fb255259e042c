"""A mill card being written, and the steps that every card has: spot, drill, tap."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from tommybar.design.model import Part
from tommybar.facts.drills import point_length
from tommybar.facts.threads import tap_depths, thread
from tommybar.findings import Finding
from tommybar.making.cards import Measure, Step
from tommybar.making.cuts import Speed, feed_for, spindle
from tommybar.making.instruments import instrument_name
from tommybar.making.lengths import Mm
from tommybar.making.practice import rule
from tommybar.making.reaming import tapping_drill_owned
from tommybar.making.visiting import Spot
from tommybar.shapes.features import Dim
from tommybar.shop.model import Mill, Shop


@dataclass(frozen=True)
class Plunge:
    """A tool that goes down: its kind and size, how far below the work's top it goes [mm], and for what."""

    kind: str  # "drill", "reamer", "end mill", "boring head"
    size: float
    deep: float
    feature: str
    long: bool = False  # a drill of the long series
    crossing: float = 0.0  # metal and air from the outside to the far end of the hole [mm]; 0: as ``deep``


@dataclass
class MillBench:
    """The state while a mill card is written.

    ``face`` is what the operator looks down on; ``sunk`` is how far below
    it the metal of the hole begins [mm]; ``under`` is said of a hole that
    goes through, "" when nothing need be.
    """

    part: Part
    shop: Shop
    mill: Mill
    number: int
    gives_to: dict[str, tuple[str, ...]] = field(default_factory=dict)
    face: str = "the face"
    sunk: float = 0.0
    under: str = "Nothing under the hole: parallels clear, scrap beneath."
    steps: list[Step] = field(default_factory=list)
    findings: list[Finding] = field(default_factory=list)
    plunges: list[Plunge] = field(default_factory=list)
    spots: list[Spot] = field(
        default_factory=list
    )  # where a cutter's axis turns, beside the holes of the card
    said: set[str] = field(default_factory=set)  # operations whose speed has been spoken of

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

    def note(self, number: int, words: str, feature: str, remedy: str = "", figure: str = "") -> None:
        """Note a finding that is good to know."""
        self.findings.append(
            Finding(number, "note", words, self.part.name, feature, self.number, 0, figure, "", remedy)
        )

    def speed(self, operation: str, dia: float, feature: str) -> Speed:
        """A speed of the mill's own list; says when even the slowest is too fast."""
        found = spindle(self.mill.speeds, self.part.material, "HSS", operation, dia)
        if found.too_fast and operation not in self.said:
            self.said.add(operation)
            self.caution(
                401,
                f"The mill's slowest speed, {found.rpm:g} rev/min, gives {found.reached:.0f} m/min at "
                f"{dia:.1f} mm; HSS in {self.part.material} wants {found.wanted[0]:.0f} to {found.wanted[1]:.0f} "
                f"({operation}).",
                feature,
                "Use a carbide tool, a slower belt, or a smaller tool.",
                f"{found.reached:.0f} m/min",
                f"{found.wanted[1]:.0f} m/min, times {rule('cut', 'speed_excess'):g}",
            )
        return found

    def measured(self, dim: Dim, feature: str, how: str) -> tuple[Measure, ...]:
        """A hold point for a size, with the instrument that reads it, and whom the reading serves."""
        name = instrument_name(self.shop, dim, how)
        size = f"{self.part.name}.{feature}"
        return (Measure(size, dim, name, self.gives_to.get(size, ())),)

    def spot(self, count: int, feature: str) -> None:
        """Start every hole with a short stiff drill."""
        size = min(self.shop.centre_drills, key=lambda d: (abs(d - 2.5), d), default=2.0)
        speed = self.speed("centre drilling", size, feature)
        self.add(
            Step(
                0,
                f"Spot {count} places" if count > 1 else "Spot the place",
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

    def drill(
        self,
        dia: float,
        depth: float,
        holes: str,
        count: int,
        feature: str,
        *,
        through: bool,
        long: bool = False,
        crossing: float = 0.0,
        also: tuple[str, ...] = (),
    ) -> None:
        """Drill a size at some of the places, ``depth`` of full diameter into the metal."""
        speed = self.speed("drilling", dia, feature)
        deep = depth + (rule("cut", "through") if through else 0.0) + point_length(dia) + self.sunk
        words = "through" if through else f"full diameter {Mm(depth):.1f} deep"
        sunk = f" (the metal begins {Mm(self.sunk):.1f} below it)" if self.sunk > 1e-6 else ""
        peck = (f"Clear chips every {Mm(dia):.0f}.",) if depth / dia > rule("cut", "peck") else ()
        brass = (
            ("Brass grabs: stone the lips to no rake, clamp it down.",)
            if "brass" in self.part.material
            else ()
        )
        self.plunges.append(Plunge("drill", dia, deep, feature, long, crossing))
        self.add(
            Step(
                0,
                f"Drill {Mm(dia):tool}{', long series,' if long else ''} {'through' if through else 'blind'}, {holes}",
                feature,
                f"drill {Mm(dia):tool}{', long series' if long else ''}",
                "drill",
                speed.rpm,
                speed.reached,
                feed_for(self.part.material, "HSS", "drilling", "roughing", dia),
                f"{round(dia, 2):g}",
                "DIA mm",
                (f"{words}, tip {Mm(deep):.1f} below {self.face}{sunk}.", *peck, *also),
                minutes=count * rule("minutes", "hole"),
                cautions=(
                    *((self.under,) if through and self.under else ()),
                    *brass,
                ),
                tool_size=dia,
            )
        )

    def tap(
        self,
        designation: str,
        full: float | None,
        drill: float,
        holes: str,
        count: int,
        feature: str,
        *,
        left: bool = False,
    ) -> None:
        """Tap by hand with the mill's spindle to keep it square."""
        wanted = f"{designation} LH" if left else designation
        if designation not in self.shop.taps or left:
            self.stop(
                414,
                f"No {wanted} tap in the drawer for {feature}.",
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

    def tapping_drill(self, designation: str, feature: str) -> float | None:
        """The owned drill for a tap; a stop when there is none."""
        found = tapping_drill_owned(designation, self.shop)
        if found is not None:
            return found
        wanted = thread(designation).tapping_drill
        self.stop(
            415,
            f"No tapping drill for {designation}: it wants {wanted:g} mm.",
            feature,
            "Buy the drill; a smaller hole breaks taps, a larger one strips.",
            figure=f"{wanted:g} mm",
        )
        return None

    def tapped(
        self,
        designation: str,
        full: float | None,
        thick: float,
        holes: str,
        count: int,
        feature: str,
        *,
        left: bool = False,
    ) -> None:
        """Tapping drill and tap at some places; blind depths with the lead below the full thread."""
        drill = self.tapping_drill(designation, feature)
        if drill is None:
            return
        if full is None:
            self.drill(drill, thick, holes, count, feature, through=True)
        else:
            depths = tap_depths(thread(designation), full, drill)
            if depths.tip_depth > thick:
                self.stop(
                    417,
                    f"{feature}: {Mm(full):g} of thread {designation} needs a hole "
                    f"{Mm(depths.tip_depth):.1f} deep at its tip.",
                    feature,
                    "Make the thread shorter or let it go through.",
                    figure=f"{depths.tip_depth:.1f} mm",
                    bound=f"{thick:g} mm of metal",
                )
            self.drill(drill, depths.full_diameter_depth, holes, count, feature, through=False)
        self.tap(designation, full, drill, holes, count, feature, left=left)

    def countersink(self, tool: float, mouth: float, holes: str, count: int, feature: str) -> None:
        """Countersink holes to a mouth diameter."""
        speed = self.speed("countersinking", mouth, feature)
        self.add(
            Step(
                0,
                f"Countersink to {Mm(mouth):.1f}, {holes}",
                feature,
                f"countersink {Mm(tool):tool}",
                "countersink",
                speed.rpm,
                speed.reached,
                0.05,
                f"{mouth:.1f}",
                "DIA mm",
                ("Lower until the mouth measures so; set the quill's stop, then the others alike.",),
                minutes=count * 1.0,
                tool_size=tool,
            )
        )

    def minutes(self) -> float:
        """Time of the card with its set-up [min]."""
        return round(sum(step.minutes for step in self.steps) + rule("minutes", "set_up"), 1)

    def drawer(self) -> tuple[str, ...]:
        """Tools of the card in the order of use."""
        return tuple(dict.fromkeys(step.tool for step in self.steps))
