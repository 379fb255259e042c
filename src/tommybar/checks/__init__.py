"""One check a file; each gives findings and figures and never prints."""

from __future__ import annotations

from tommybar.checks.figures import Figure
from tommybar.design.model import SizedDesign
from tommybar.findings import Finding
from tommybar.shop.model import Shop

__all__ = ["Figure", "check_all", "check_together"]


def check_all(
    sized: SizedDesign, shop: Shop, joined: SizedDesign | None = None
) -> tuple[tuple[Finding, ...], tuple[Figure, ...]]:
    """Findings 600 to 699 and the worked-out figures of a design, doubles said once.

    ``joined`` is the same design with measured sizes as they really are: what
    is pressed or turns in one another is looked at there.

    The checks themselves are listed in :mod:`tommybar.checks.members`, which
    is loaded only when this is called.
    """
    from tommybar.checks import members

    findings: dict[Finding, None] = {}
    figures: dict[Figure, None] = {}
    for look in members.CHECKS:
        found = look(joined if joined and look in members.JOINING else sized, shop)
        findings.update(dict.fromkeys(found.findings))
        figures.update(dict.fromkeys(found.figures))
    return tuple(findings), tuple(figures)


def check_together(sized: SizedDesign) -> tuple[Finding, ...]:
    """Findings of the assembly: what is not placed, stands in one another, strikes, cannot go in, or is out of reach.

    It cuts solids with one another and takes longer than all of
    :func:`check_all`, so that it is asked for where a whole plan is shown and
    not while sizes are tried. An answer is kept by the design.
    """
    from tommybar.checks.together import look_together

    return look_together(sized)
