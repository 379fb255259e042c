"""A part whose route or dry run cannot be worked out, told as a finding of that part: the rest of the plan stands."""

from __future__ import annotations

from tommybar.findings import Finding
from tommybar.refusals import Refusal


def not_run(part: str, refusal: Refusal) -> Finding:
    """What stands in the way, as a stop."""
    what = " ".join(one.what for one in refusal.complaints)
    remedies = " ".join(dict.fromkeys(one.remedy for one in refusal.complaints if one.remedy))
    return Finding(
        517,
        "stop",
        f"{part.replace('_', ' ')} cannot be cut as planned: {what}",
        part,
        figure="not run dry",
        bound="a section that closes at every cut",
        remedy=remedies or "Change the sizes that are named here.",
        source="geometry of the part as the tools leave it",
    )
