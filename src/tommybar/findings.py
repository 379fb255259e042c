"""A finding: a result that the builder has to know about.

A refusal stops the work; a finding is part of the answer. Numbers stand in
ranges by subject, so that a list sorted by number reads by subject:

    100 resize      200 stock      300 holding and route   400 tools and cuts
    500 dry run     600 function and safety                700 fits and made sizes
    800 assumed of the shop        900 what the program cannot work out yet
"""

from __future__ import annotations

from dataclasses import asdict, dataclass
from typing import Any, Literal

Severity = Literal["stop", "caution", "note"]
SEVERITIES: tuple[Severity, ...] = ("stop", "caution", "note")


@dataclass(frozen=True)
class Finding:
    """One result with its place, figure, bound, remedy and source.

    ``figure`` and ``bound`` are words with units ("92.0 mm", "75 mm, jaws of
    shop R"), since they are read by a person; the words say the rest.
    """

    number: int
    severity: Severity
    words: str
    part: str = ""
    feature: str = ""
    card: int = 0  # 1 is the part's first card; 0: not about a card
    step: int = 0
    figure: str = ""
    bound: str = ""
    remedy: str = ""
    source: str = ""

    def as_dict(self) -> dict[str, Any]:
        """Plain data for JSON, empty places left in so that keys are constant."""
        return asdict(self)


def in_order(findings: list[Finding]) -> tuple[Finding, ...]:
    """Findings by severity, number and place; doubles said once."""
    unique = list(dict.fromkeys(findings))
    return tuple(
        sorted(
            unique, key=lambda f: (SEVERITIES.index(f.severity), f.number, f.part, f.card, f.step, f.words)
        )
    )
