"""What the shop file leaves open and the cards lean on, told once where it matters."""

from __future__ import annotations

from tommybar.findings import Finding
from tommybar.making.warnings import dial_trial
from tommybar.shop.model import Shop


def assumed(shop: Shop, turned: bool) -> tuple[Finding, ...]:
    """What the shop file leaves open and the cards lean on; ``turned`` says that a lathe is used at all."""
    places = set(shop.assumed)
    matters = [
        name
        for name in ("tools", "drills", "reamers", "taps", "dies", "jaws", "instruments")
        if name in places
    ]
    found = []
    if turned and dial_trial(shop):
        found.append(
            Finding(
                801,
                "caution",
                "How the cross-slide's dial reads is assumed: every in-feed on the cards leans on it.",
                figure=f"{shop.lathe.cross_slide.reads} assumed",
                bound="the shop file does not say",
                remedy="Touch, go in 1.00 by the dial, turn, measure: 1.00 off is DIA, 2.00 off is RAD; write it in the file.",
            )
        )
    if matters:
        found.append(
            Finding(
                802,
                "caution",
                f"Assumed of the shop, taken from the nearest example: {', '.join(matters)}.",
                figure=", ".join(matters),
                bound="the shop file does not list them",
                remedy="Open the drawers and list what is really there before metal is cut.",
            )
        )
    return tuple(found)
