"""What moves must pass what stands still."""

from __future__ import annotations

from tommybar.assembly.placing import Assembly
from tommybar.assembly.sweep import Clearance, clearances
from tommybar.checks.loose import UNSETTLED, loose_pieces
from tommybar.design.model import SizedDesign
from tommybar.findings import Finding


def look(design: SizedDesign, whole: Assembly) -> tuple[Finding, ...]:
    """A stop where something strikes, a caution where it passes nearer than the design wants."""
    found: dict[tuple[str, str], Finding] = {}
    loose = loose_pieces(design, whole)
    for one in clearances(design, whole, wanted_only=True):
        key = (one.moving[0], one.fixed[0])
        sure = one.gap - one.bound
        if key in found or not (one.meets or sure < one.wanted - 1e-6):
            continue
        found[key] = _strikes(one, bool({one.moving, one.fixed} & loose)) if one.meets else _near(one, sure)
    return tuple(found.values())


def _names(one: Clearance) -> tuple[str, str]:
    return one.moving[0].replace("_", " "), one.fixed[0].replace("_", " ")


def _strikes(one: Clearance, unsettled: bool) -> Finding:
    moving, fixed = _names(one)
    where = "" if one.at is None else f" at {one.at:.3g} of its way"
    return Finding(
        654,
        "caution" if unsettled else "stop",
        f"{moving[0].upper() + moving[1:]} strikes {fixed} as it moves{where}"
        + (f"; {UNSETTLED}." if unsettled else "."),
        one.moving[0],
        figure="0 mm",
        bound=f"{max(one.wanted, 0.0):g} mm",
        remedy=f"Give {moving} more room: a smaller swing, or {fixed} set further off.",
        source="sweep of the placed solids over the whole movement",
    )


def _near(one: Clearance, sure: float) -> Finding:
    moving, fixed = _names(one)
    return Finding(
        655,
        "caution",
        f"{moving[0].upper() + moving[1:]} passes {fixed} at {max(sure, 0.0):.2f} mm; {one.wanted:g} mm is wanted.",
        one.moving[0],
        figure=f"{max(sure, 0.0):.2f} mm",
        bound=f"{one.wanted:g} mm",
        remedy=f"Give {moving} more room, or ask for a smaller gap.",
        source="sweep of the placed solids over the whole movement",
    )
