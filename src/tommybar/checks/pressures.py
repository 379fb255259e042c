"""Parts under pressure: the stress in the wall, and what this program does not judge."""

from __future__ import annotations

from tommybar.checks.checked import Checked
from tommybar.checks.figures import Figure
from tommybar.design.model import Part, SizedDesign
from tommybar.facts.materials import material
from tommybar.findings import Finding
from tommybar.shapes.features import Bore, TurnedShape
from tommybar.shapes.inside import drawn_bore
from tommybar.shapes.radii import thinnest_wall
from tommybar.shop.model import Shop

SOURCE = "hoop stress of a tube, p R / t with its outside radius, which lies above the thin-wall figure"
YIELD_SHARE = 0.25  # of the yield strength (common practice, no source)


def look(design: SizedDesign, shop: Shop) -> Checked:
    """Every duty that names a pressure."""
    found: list[Finding] = []
    figures: list[Figure] = []
    for duty in design.duties:
        if duty.kind != "pressure":
            continue
        bar = max(duty.figure or 0.0, duty.most or 0.0)
        parts = [one for one in design.parts if one.name in {name.split(".")[0] for name in duty.on}]
        found.append(_statement(bar, parts[0].name if parts else ""))
        for part in parts:
            if isinstance(part.shape, TurnedShape):
                for bore in part.shape.bores:
                    _hoop(part, part.shape, bore, bar, found, figures)
    return Checked(tuple(found), tuple(figures))


def _statement(bar: float, part: str) -> Finding:
    return Finding(
        670,
        "caution",
        f"It holds {bar:g} bar. No plan of this program approves anything for pressure, and none is for steam: "
        "a hot vessel stores far more than the figures here count.",
        part,
        figure=f"{bar:g} bar",
        bound="a test and an approval by whoever is competent for it where you are",
        remedy="Have it designed, tested with cold water behind a guard, and approved under the local rules before "
        "air goes in; never try it with air first.",
        source="common caution, no source",
    )


def _hoop(
    part: Part, shape: TurnedShape, bore: Bore, bar: float, found: list[Finding], figures: list[Figure]
) -> None:
    wall, _ = thinnest_wall(shape, bore)
    if wall <= 0:
        return  # the check of walls stops it
    stress = bar / 10 * (drawn_bore(bore) / 2 + wall) / wall
    how = (
        f"p = {bar / 10:g} MPa, R = {drawn_bore(bore) / 2 + wall:.2f} mm, t = {wall:.2f} mm round {bore.name}"
    )
    figures.append(Figure("hoop stress", part.name, stress, "MPa", 2, how, SOURCE))
    allowed = YIELD_SHARE * material(part.material).yield_strength
    if stress > allowed:
        found.append(
            Finding(
                671,
                "stop",
                f"The wall round {bore.name} is stressed to {stress:.1f} MPa by {bar:g} bar.",
                part.name,
                bore.name,
                figure=f"{stress:.1f} MPa",
                bound=f"{allowed:.1f} MPa, {YIELD_SHARE:g} of the yield strength",
                remedy="Make the wall thicker, or ask less pressure of it.",
                source=SOURCE,
            )
        )
