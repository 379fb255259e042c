"""How much thread is engaged, and whether a screw's length suits what it goes through."""

from __future__ import annotations

from tommybar.checks.bought_screws import bought_for, once_each, stem
from tommybar.checks.checked import Checked
from tommybar.checks.engaged import Engaged, engaged_threads, holes_of, under_head
from tommybar.checks.figures import Figure
from tommybar.checks.screwed_holes import ScrewedHole
from tommybar.design.model import ScrewRelation, SizedDesign
from tommybar.facts.fasteners import clearance_hole, screw_length_at_least
from tommybar.findings import Finding
from tommybar.refusals import Refusal
from tommybar.shop.model import Shop


def look(design: SizedDesign, shop: Shop) -> Checked:
    """Every thread that holds something, and the holes that bought screws go through."""
    joints = engaged_threads(design)
    alike = {(one.screw, stem(one.into), one.engaged): one for one in reversed(joints)}
    found = [_short(one) for one in reversed(alike.values())]
    figures = [_shown(one) for one in joints if one.bought is not None]
    for relation in once_each(design):
        found += _screw(design, relation)
    return Checked(tuple(one for one in found if one is not None), tuple(figures))


def _short(one: Engaged) -> Finding | None:
    """A caution below what holds a light load, a note below what holds as much as the screw can carry."""
    weak = one.engaged < one.wanted - 1e-6
    if not weak and one.engaged >= one.full - 1e-6:
        return None
    bound = one.wanted if weak else one.full
    part, _, feature = one.into.partition(".")
    ask = f"{bound:.2f} mm are wanted in {one.material}"
    return Finding(
        630,
        "caution" if weak else "note",
        f"{one.screw} engages little thread in {one.into}: {one.engaged:.2f} mm, {ask}."
        if weak
        else f"{one.screw} engages {one.engaged:.2f} mm of thread in {one.into}: enough for a light load; "
        f"{ask} to carry all that the screw can.",
        part,
        feature,
        figure=f"{one.engaged:.2f} mm",
        bound=f"{bound:.2f} mm",
        remedy=_longer(one, bound),
        source=one.source,
    )


def _longer(one: Engaged, bound: float) -> str:
    """What would engage more: a longer screw where the thread is there, else more thread."""
    if one.there < bound - 1e-6:
        return "Tap deeper, give the part more metal there, or take a smaller thread."
    screw = one.bought
    if screw is None:
        return "Make the thread longer or the tapped part thicker."
    try:
        length = screw_length_at_least(screw.standard, screw.size, one.gripped + bound)
    except Refusal:
        return "Take a longer screw."
    return f"Take {screw.standard} {screw.size} x {length:g}, if the thread is deep enough."


def _shown(one: Engaged) -> Figure:
    return Figure(
        "thread engaged",
        one.into.partition(".")[0],
        one.engaged,
        "mm",
        1,
        f"{one.screw}: {one.how}; {one.wanted:.1f} mm wanted",
        one.source,
    )


def _screw(design: SizedDesign, relation: ScrewRelation) -> list[Finding | None]:
    """One screw through its holes into its thread: clearance, and whether it bottoms."""
    into, through = holes_of(design, relation)
    screw = bought_for(design, relation)
    if into is None or None in through:
        return [_not_followed(relation)]
    if screw is None:
        return [_no_screw(relation)]
    found = [_clear(relation, one) for one in through if one is not None]
    gripped = sum(one.metal for one in through if one is not None) + under_head(design, relation)
    reach = screw.length - gripped
    if into.end is not None and reach > into.end + 1e-6:
        found.append(
            Finding(
                631,
                "stop",
                f"{screw.size} x {screw.length:g} bottoms in {relation.into}: {reach:.4g} mm of it, "
                f"{into.end:.4g} mm of thread.",
                into.part.name,
                into.feature,
                figure=f"{reach:.4g} mm",
                bound=f"{into.end:.4g} mm",
                remedy="Take a shorter screw or tap deeper.",
                source="lengths of the design",
            )
        )
    return found


def _clear(relation: ScrewRelation, hole: ScrewedHole) -> Finding | None:
    """A hole that the screw goes through must be wide enough."""
    try:
        least = clearance_hole(relation.screw, "fine")
    except Refusal:
        return None
    if hole.dia >= least - 1e-6:
        return None
    return Finding(
        632,
        "stop",
        f"{relation.screw} does not pass through {hole.name}, {hole.dia:g} mm.",
        hole.part.name,
        hole.feature,
        figure=f"{hole.dia:g} mm",
        bound=f"{least:g} mm",
        remedy=f"Drill {clearance_hole(relation.screw):g} mm.",
        source="ISO 273, fine series",
    )


def _no_screw(relation: ScrewRelation) -> Finding:
    return Finding(
        633,
        "caution",
        f"No bought {relation.screw} screw stands in the design for {relation.into}.",
        relation.into.split(".")[0],
        relation.into.split(".", 1)[1],
        figure="none",
        bound=f"one {relation.screw} screw",
        remedy=f'Add a part like {{bought: "ISO 4762 {relation.screw} x 16"}}.',
        source="the design",
    )


def _not_followed(relation: ScrewRelation) -> Finding:
    return Finding(
        690,
        "note",
        f"The screw through {', '.join(relation.through)} into {relation.into} is not followed, so that its length "
        "is not checked: one of its holes leans, or lies in a part of wire or tube.",
        relation.into.split(".")[0],
        figure=relation.screw,
        bound="straight holes in plates, sheet and turned parts are followed",
        remedy="Measure the stack under its head and see that at least one diameter of thread is in the metal.",
        source="the design",
    )
