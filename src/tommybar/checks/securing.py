"""Whether a wheel that turns with its shaft is kept from slipping on it."""

from __future__ import annotations

from tommybar.checks.checked import PRACTICE, Checked
from tommybar.checks.turning import outside_threads
from tommybar.design.model import FitRelation, Purpose, SizedDesign
from tommybar.findings import Finding
from tommybar.shapes.features import TurnedShape
from tommybar.shop.model import Shop


def look(design: SizedDesign, shop: Shop) -> Checked:
    """Fits and screw threads between parts that turn together."""
    found: list[Finding] = []
    for purpose in design.purposes:
        for fit in design.fits:
            if _turn_together(fit, purpose) and not _secured(fit, design):
                found.append(_loose(fit, purpose))
        found += _unlocked(design, purpose)
    return Checked(tuple(found))


def _turn_together(fit: FitRelation, purpose: Purpose) -> bool:
    return fit.hole.split(".")[0] in purpose.turns and fit.shaft.split(".")[0] in purpose.turns


def _secured(fit: FitRelation, design: SizedDesign) -> bool:
    if fit.joint:
        return True
    part, bore = fit.hole.split(".", 1)
    shape = design.part(part).shape
    return isinstance(shape, TurnedShape) and any(hole.into == bore for hole in shape.cross_holes)


def _loose(fit: FitRelation, purpose: Purpose) -> Finding:
    return Finding(
        606,
        "caution",
        f"{fit.hole} and {fit.shaft} turn together at {purpose.speed:g} rev/min, and nothing keeps one from "
        f"slipping on the other ({fit.zones}).",
        fit.hole.split(".")[0],
        fit.hole.split(".", 1)[1],
        figure=fit.zones,
        bound="a press or adhesive joint, a pin, a key, or a grub screw into the bore",
        remedy="Add a cross hole with a thread into the bore, or say the joint is a press fit.",
        source=PRACTICE,
    )


def _unlocked(design: SizedDesign, purpose: Purpose) -> list[Finding]:
    """Screwed joints on the axis without a lock nut: turning by hand may undo them."""
    nuts = [part.bought.split()[-1] for part in design.parts if part.bought.startswith("ISO 4032")]
    parts = [p for p in design.parts if p.name in purpose.turns and isinstance(p.shape, TurnedShape)]
    found = []
    for part in parts:
        assert isinstance(part.shape, TurnedShape)
        for screw in outside_threads(part.shape):
            mates = [
                (other.name, bore.name)
                for other in parts
                if isinstance(other.shape, TurnedShape)
                for bore in other.shape.bores
                if bore.thread == screw.thread
            ]
            if mates and screw.thread not in nuts:
                found.append(
                    Finding(
                        607,
                        "caution",
                        f"{mates[0][0]} is screwed on {part.name} by {screw.thread} and drives it; no nut locks it.",
                        mates[0][0],
                        mates[0][1],
                        figure=screw.thread,
                        bound="a lock nut, a pin or adhesive",
                        remedy=f"Add an ISO 4032 {screw.thread} nut to the design.",
                        source=PRACTICE,
                    )
                )
    return found
