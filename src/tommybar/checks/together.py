"""The checks of the assembly as it stands, listed by hand."""

from __future__ import annotations

from functools import lru_cache

from tommybar.assembly.placing import assembled
from tommybar.checks import assembly_order, interference, places, sweeps
from tommybar.design.model import SizedDesign
from tommybar.findings import Finding

CHECKS = (places.look, interference.look, sweeps.look, assembly_order.look)


@lru_cache(maxsize=8)
def look_together(design: SizedDesign) -> tuple[Finding, ...]:
    """Findings 650 to 659; none for a design of one piece."""
    whole = assembled(design)
    if sum(part.count for part in design.parts) < 2:
        return ()
    found: dict[Finding, None] = {}
    for look in CHECKS:
        found.update(dict.fromkeys(look(design, whole)))
    return tuple(found)
