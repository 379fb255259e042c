"""The checks of the assembly as it stands, listed by hand."""

from __future__ import annotations

from functools import lru_cache

from tommybar.assembly.placing import assembled
from tommybar.checks import assembly_order, driver_access, interference, places, sweeps
from tommybar.design.model import SizedDesign
from tommybar.findings import Finding
from tommybar.refusals import OwnFault, Refusal

CHECKS = (places.look, interference.look, sweeps.look, assembly_order.look, driver_access.look)


@lru_cache(maxsize=8)
def look_together(design: SizedDesign) -> tuple[Finding, ...]:
    """Findings 650 to 659, 686, 689 and 691; none for a design of one piece."""
    whole = assembled(design)
    if sum(part.count for part in design.parts) < 2:
        return ()
    found: dict[Finding, None] = {}
    for look in CHECKS:
        try:
            found.update(dict.fromkeys(look(design, whole)))
        except (OwnFault, Refusal) as fault:
            found[_not_looked(look.__module__.rpartition(".")[2], fault)] = None
    return tuple(found)


def _not_looked(check: str, fault: Exception) -> Finding:
    """What could not be looked at is told; the rest of the plan stands."""
    return Finding(
        659,
        "caution",
        f"The assembly is not looked at for {check.replace('_', ' ')}: {fault}",
        figure="not looked at",
        bound="solids of all its pieces",
        remedy="Look at it on the drawing before metal is cut, and report the design file.",
        source="the solids of the parts",
    )
