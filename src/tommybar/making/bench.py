"""One lathe card being written: the metal as it stands and the steps so far."""

from __future__ import annotations

import itertools
from collections.abc import Callable
from dataclasses import dataclass, field, replace

from tommybar.design.model import Part
from tommybar.facts.threads import thread
from tommybar.findings import Finding, Severity
from tommybar.making.cards import Measure, Move, Step
from tommybar.making.cuts import Speed, spindle
from tommybar.making.dials import graduation_words
from tommybar.making.grinding import grind_words
from tommybar.making.grips import Option
from tommybar.making.instruments import instrument_name
from tommybar.making.lengths import Mm
from tommybar.making.practice import rule
from tommybar.making.reaming import tapping_drill_owned
from tommybar.making.warnings import dial_trial
from tommybar.making.workpiece import Workpiece
from tommybar.shapes.features import Dim, TurnedShape
from tommybar.shop.model import Dial, Shop, Tool


@dataclass
class Bench:
    """The state while a card is written. ``shape`` is the part as the tools aim at it."""

    part: Part
    shape: TurnedShape
    drawn: TurnedShape
    option: Option
    shop: Shop
    work: Workpiece
    number: int
    gives_to: dict[str, tuple[str, ...]]
    bored: dict[str, float] = field(default_factory=dict)  # bore name -> diameter so far
    steps: list[Step] = field(default_factory=list)
    findings: list[Finding] = field(default_factory=list)
    minutes: float = 0.0
    centred: float = 0.0  # diameter of the tailstock centre's mouth that supports the free end; 0: none [mm]
    hollow: float = 0.0  # bore that a tube brings; 0: solid bar [mm]
    said: set[str] = field(default_factory=set)  # operations whose speed has been spoken of

    @property
    def length(self) -> float:
        """Finished length of the part [mm]."""
        return self.shape.length.value

    @property
    def cross(self) -> Dial:
        """The cross-slide's dial."""
        return self.shop.lathe.cross_slide

    @property
    def cross_words(self) -> str:
        """What a division of the cross-slide's dial is, and whether that is only assumed."""
        words = graduation_words(self.cross)
        return words + ", assumed" if dial_trial(self.shop) else words

    def speed(self, tool: Tool | None, operation: str, dia: float, feature: str) -> Speed:
        """A speed from the machine's plate, within the chuck's marked limit; says when it is too fast."""
        material_of_tool = tool.material if tool else "HSS"
        speeds = self.shop.lathe.speeds
        limit = self.option.jaws.top_speed if self.option.jaws else 0.0
        if limit > 0:
            within = tuple(n for n in speeds if n <= limit)
            if not within and "limit" not in self.said:
                self.said.add("limit")
                self.find(
                    402,
                    "stop",
                    f"The chuck is marked {limit:g} rev/min; the machine's slowest speed is {speeds[0]:g}.",
                    feature=feature,
                    figure=f"{speeds[0]:g} rev/min",
                    bound=f"{limit:g} rev/min, marked on {self.option.device}",
                    remedy="Do not run this chuck on this machine: use another chuck, or a slower gear.",
                )
            speeds = within or speeds[:1]
        found = spindle(speeds, self.part.material, material_of_tool, operation, dia)
        if found.too_fast and operation not in self.said:
            self.said.add(operation)
            self.find(
                401,
                "caution",
                f"The slowest speed, {found.rpm:g} rev/min, gives {found.reached:.0f} m/min at {dia:.1f} mm; "
                f"{material_of_tool} in {self.part.material} wants {found.wanted[0]:.0f} to {found.wanted[1]:.0f}.",
                feature=feature,
                figure=f"{found.reached:.0f} m/min",
                bound=f"{found.wanted[1]:.0f} m/min, times {rule('cut', 'speed_excess'):g}",
                remedy="Use a carbide tool, a slower belt or gear, or make the part smaller.",
                source="cutting speeds of facts/cutting",
            )
        return found

    def find(self, number: int, severity: Severity, words: str, *, remedy: str, **place: str) -> None:
        """Note a finding about the step being written; ``place`` is feature, figure, bound and source."""
        self.findings.append(
            Finding(
                number,
                severity,
                words,
                part=self.part.name,
                card=self.number,
                step=len(self.steps) + 1,
                remedy=remedy,
                **place,
            )
        )

    def add(self, step: Step) -> None:
        """Put a step on the card, with its number and key."""
        number = len(self.steps) + 1
        key = f"{self.part.name}/{self.number}/{number}"
        self.steps.append(replace(step, number=number, key=key))
        self.minutes += step.minutes

    def tool(
        self,
        kind: str,
        suits: Callable[[Tool], bool],
        wish: Callable[[Tool], float],
        feature: str,
        size: str = "",
    ) -> Tool | None:
        """The drawer's tool of that kind that suits best; a stop finding when there is none.

        ``size`` says what one would have to be ground to.
        """
        of_kind = [tool for tool in self.shop.tools if tool.kind == kind]
        fitting = [tool for tool in of_kind if suits(tool)]
        if fitting:
            return min(fitting, key=lambda tool: (wish(tool), tool.letter))
        have = ", ".join(f"{t.letter}" for t in of_kind) or "none"
        self.find(
            410,
            "stop",
            f"No {kind} tool in the drawer can cut {feature} (of that kind: {have}).",
            feature=feature,
            remedy=" ".join(
                (
                    grind_words(kind, self.part.material, size) or "Buy or borrow one.",
                    "Add it to the shop file; or change the feature.",
                )
            ),
        )
        return None

    def shape_bore(self, name: str) -> float:
        """Diameter at which the lathe leaves that bore [mm]."""
        return next(b.dia.value for b in self.shape.bores if b.name == name)

    def tapping_drill(self, designation: str, feature: str) -> float | None:
        """The owned drill for a tap: the standard one, or the next up to 0.15 mm over it."""
        found = tapping_drill_owned(designation, self.shop)
        if found is not None:
            return found
        wanted = thread(designation).tapping_drill
        self.find(
            415,
            "stop",
            f"No tapping drill for {designation}: it wants {wanted:g} mm, up to 0.15 mm more.",
            feature=feature,
            figure=f"{wanted:g} mm",
            remedy="Buy the drill; a smaller hole breaks taps, a larger one strips.",
        )
        return None

    def measured(self, name: str, dim: Dim, how: str) -> Measure:
        """A hold point for a size, with the finest instrument that can judge it."""
        return Measure(name, dim, instrument_name(self.shop, dim, how), self.gives_to.get(name, ()))


def named(tool: Tool) -> str:
    """A tool as a card calls it: "A: knife, right hand"."""
    hand = f", {tool.hand} hand" if tool.kind in ("knife", "boring") and tool.hand != "both" else ""
    width = f" {Mm(tool.width):tool} wide" if tool.width else ""
    return f"{tool.letter}: {tool.kind}{width}{hand}"


def cutting_minutes(moves: list[Move], rpm: float, feed: float, passes: int) -> float:
    """Time at the handles: feed moves at rpm x feed, and the run back of each pass [min]."""
    path = sum(
        ((b.z - a.z) ** 2 + (b.r - a.r) ** 2) ** 0.5 for a, b in itertools.pairwise(moves) if not b.rapid
    )
    running = path / (rpm * feed) if rpm > 0 and feed > 0 else 0.5
    return running + passes * rule("minutes", "cut") + rule("minutes", "tool")
