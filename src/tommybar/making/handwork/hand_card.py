"""One bench card being written: its steps, what is found, and the card at the end."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from tommybar.design.model import Part
from tommybar.findings import Finding, Severity
from tommybar.making.cards import Card, Hold, Measure, Step
from tommybar.making.cuts import Speed
from tommybar.making.instruments import instrument_name
from tommybar.making.practice import rule
from tommybar.shapes.features import Dim
from tommybar.shop.model import Shop


@dataclass
class HandCard:
    """The state while a bench card is written."""

    part: Part
    shop: Shop
    number: int
    gives_to: dict[str, tuple[str, ...]] = field(default_factory=dict)
    steps: list[Step] = field(default_factory=list)
    findings: list[Finding] = field(default_factory=list)

    def add(
        self,
        do: str,
        feature: str,
        tool: str,
        big: str,
        big_kind: str,
        *lines: str,
        minutes: float = 5.0,
        why: str = "",
        cautions: tuple[str, ...] = (),
        measure: tuple[Measure, ...] = (),
        kind: str = "hand",
        speed: Speed | None = None,
    ) -> None:
        """Put a step of the hand on the card; ``lines`` stand where a machine's dial would.

        ``speed`` is that of the machine that turns the tool or the work; None: by hand.
        """
        number = len(self.steps) + 1
        self.steps.append(
            Step(
                number,
                do,
                feature,
                tool,
                kind,
                speed.rpm if speed else 0.0,
                speed.reached if speed else 0.0,
                0.0,
                big,
                big_kind,
                lines,
                minutes=minutes,
                why=why,
                cautions=cautions,
                measure=measure,
                key=f"{self.part.name}/{self.number}/{number}",
            )
        )

    def find(
        self, number: int, severity: Severity, words: str, *, remedy: str, figure: str = "", bound: str = ""
    ) -> None:
        """Note a finding about the step being written."""
        step = len(self.steps) + 1
        self.findings.append(
            Finding(
                number,
                severity,
                words,
                self.part.name,
                card=self.number,
                step=step,
                figure=figure,
                bound=bound,
                remedy=remedy,
            )
        )

    def measured(self, dim: Dim, feature: str, how: str) -> tuple[Measure, ...]:
        """A hold point for a size, with the instrument that reads it, and whom the reading serves."""
        size = f"{self.part.name}.{feature}"
        return (Measure(size, dim, instrument_name(self.shop, dim, how), self.gives_to.get(size, ())),)

    def card(
        self,
        title: str,
        device: str,
        surface: str,
        why_held: str,
        before: tuple[str, ...],
        goes_wrong: tuple[str, ...],
        why: str,
    ) -> Card:
        """The finished card."""
        return Card(
            self.part.name,
            self.number,
            self.number,
            "bench",
            title,
            "",
            Hold(device, "", surface, 0.0, 0.0, 0.0, 0.0, why_held),
            tuple(self.steps),
            before,
            tuple(dict.fromkeys(step.tool for step in self.steps)),
            minutes=round(sum(step.minutes for step in self.steps) + rule("minutes", "set_up"), 1),
            goes_wrong=goes_wrong,
            why=why,
        )


def numbered(cards: list[Card]) -> tuple[Card, ...]:
    """Cards in their order, each saying what becomes of the part after it."""
    of = len(cards)
    return tuple(
        replace(
            card,
            of=of,
            after=card.after
            if card.after.startswith("leave")
            else f"to card {card.number + 1}"
            if card.number < of
            else "deburr, measure, bag and label it",
        )
        for card in cards
    )
