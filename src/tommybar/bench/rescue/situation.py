"""How things stand when something goes wrong, what went wrong, and what might be tried."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field

from tommybar.bench.builds import Stock
from tommybar.bench.inputs import Inputs, Tell, inputs_of, silent
from tommybar.bench.replan import plan_of
from tommybar.bench.standing import Standing, standing
from tommybar.bench.stored import Build
from tommybar.findings import Finding, Severity
from tommybar.made.dims import dims_of
from tommybar.planning import Plan
from tommybar.refusals import Refusal, nearest
from tommybar.shapes.features import Dim

FIRST = 750  # a warning's number is this and the number of its reality


@dataclass(frozen=True)
class Situation:
    """A build as it stands: what it is planned with, the plan, the journal."""

    inputs: Inputs
    plan: Plan
    stand: Standing

    def dim(self, size: str) -> Dim:
        """The figure of a size as planned; a refusal with the nearest name when there is none."""
        known = dims_of(self.plan.design)
        if size not in known:
            raise Refusal(
                f'The design has no size "{size}".', nearest(size, known) or "See the cards for its name."
            )
        return known[size]

    def touched(self) -> frozenset[str]:
        """Parts on which something was ticked or measured."""
        made = self.inputs.made
        keys = [one.key for one in made.ticks if one.done] + [one.size for one in made.measured]
        return frozenset(key.replace("/", ".").split(".")[0] for key in keys)


@dataclass(frozen=True)
class Mishap:
    """What went wrong. What ``about``, ``value`` and ``said`` mean stands in the reality's ``asks``."""

    number: int  # of the reality
    about: str  # a size, part, card, tool or machine
    value: float = 0.0  # [mm], or as asked
    said: str = ""
    more: Mapping[str, float] = field(default_factory=dict)


@dataclass(frozen=True)
class Try:
    """Something that might be done: what would change, before it is planned."""

    words: str
    design: str = ""  # new text of the design
    shop: str = ""  # new text of the shop
    pins: Mapping[str, float | str] = field(default_factory=dict)
    scale: float | None = None
    smaller: bool = False  # let the plan choose the scale anew
    stock: Stock | None = None
    readings: tuple[tuple[str, float], ...] = ()  # sizes frozen at what they measure [mm]
    forget: tuple[str, ...] = ()  # parts or sizes whose entries count no more
    keep: tuple[str, ...] = ()  # parts that are changed in hand, not made again
    by_hand: float = 0.0  # work that stands on no card [min]
    new_blank: tuple[str, ...] = ()  # parts that metal is sawn for again
    out_of: tuple[str, float] | None = (
        None  # a part, and the length of the blank in hand that it must come out of [mm]
    )


@dataclass(frozen=True)
class Reality:
    """One kind of trouble: what can be foreseen of it, and what can be tried afterwards."""

    number: int  # as the list of realities counts them
    title: str
    asks: str  # what is to be told of a mishap
    warn: Callable[[Situation], Iterable[Finding]]
    tries: Callable[[Situation, Mishap], Iterable[Try]]


def situation(build: Build, tell: Tell = silent) -> Situation:
    """How a build stands."""
    stand = standing(build.entries)
    return Situation(inputs_of(build, stand), plan_of(build, tell), stand)


def beware(
    number: int,
    words: str,
    *,
    about: str = "",
    figure: str = "",
    bound: str = "",
    remedy: str = "",
    severity: Severity = "caution",
    source: str = "common practice, no source",
) -> Finding:
    """A warning of a reality; ``about`` is part.feature or a card."""
    part, _, feature = about.replace("/", ".", 1).partition(".")
    card = int(feature) if feature.isdigit() else 0
    return Finding(
        FIRST + number,
        severity,
        words,
        part,
        "" if card else feature,
        card,
        figure=figure,
        bound=bound,
        remedy=remedy,
        source=source,
    )


def foreseen(number: int, plan: Plan, numbers: Iterable[int]) -> list[Finding]:
    """Findings of the plan that already tell of a reality, under its number."""
    wanted = set(numbers)
    return [
        Finding(
            FIRST + number,
            one.severity if one.severity != "stop" else "caution",
            one.words,
            one.part,
            one.feature,
            one.card,
            one.step,
            one.figure,
            one.bound,
            one.remedy,
            one.source,
        )
        for one in plan.findings
        if one.number in wanted
    ]
