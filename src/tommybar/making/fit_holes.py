"""Holes across a land that is a fit: before its last cuts where its grip comes later, else its burr off by hand.

A drill throws up a burr and pushes the land out round the hole. Cut after it,
the last cuts take both away. That costs nothing where the land is finished on
a later card, since the part is out of the chuck before it anyway; a grip more
only for that would cost the run-out of the re-chuck.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from tommybar.design.model import Part
from tommybar.findings import Finding
from tommybar.making.cards import Blank, Card, Step
from tommybar.making.jobs import Job
from tommybar.making.lengths import Mm
from tommybar.making.milling.cross_card import cross_cards
from tommybar.making.route import Route
from tommybar.shapes.features import CrossHole, Cylinder, Dim, TurnedShape
from tommybar.shop.model import Shop

WANDERS = 5.0  # depth over diameter from which a drill runs off across a round; common practice, no source
CUTS = ("knife", "groove", "parting")  # what takes a land's last cut


@dataclass(frozen=True)
class Drilled:
    """Lathe cards with the cross holes among them, and the shape whose other features the mill still has to do."""

    cards: list[Card]
    findings: list[Finding]
    left: TurnedShape
    why_last: str = ""  # why cross holes that are left come after the last cuts


def land_of(shape: TurnedShape, hole: CrossHole) -> Cylinder | None:
    """The cylinder that a cross hole is drilled into."""
    return next(
        (f for f in shape.outside if isinstance(f, Cylinder) and f.start - 1e-6 <= hole.z <= f.end + 1e-6),
        None,
    )


def fits_across(shape: TurnedShape) -> dict[str, tuple[str, ...]]:
    """Lands with limits that have holes across them, and the holes' names."""
    found: dict[str, list[str]] = {}
    for hole in shape.cross_holes:
        land = land_of(shape, hole)
        if land is not None and land.dia.toleranced and not land.thread and land.knurl is None:
            found.setdefault(land.name, []).append(hole.name)
    return {name: tuple(holes) for name, holes in found.items()}


def before_which(shape: TurnedShape, route: Route, jobs: tuple[Job, ...], blank: float) -> tuple[int, str]:
    """Number of the lathe card before which all cross holes are drilled; 0 and the reason where they come last.

    It is the first card but the first that finishes a fit with holes in it.
    The hole's place is measured from face A, so that must be cut before; no
    land with a hole in it may be gripped from then on, holes on a circle,
    from which they are clocked, must not come after, and the drill must not
    wander in what is turned away later. ``blank`` is the blank's diameter [mm].
    """
    made_in = dict(route.made_in)
    supplied = {job.feature for job in jobs if job.as_supplied}
    fits = [name for name in fits_across(shape) if name not in supplied]
    later = [made_in.get(name, 0) for name in fits if made_in.get(name, 0) >= 2]
    if not fits:
        return 0, "it keeps the bar's own surface, so no last cut takes the burr away"
    if not later:
        return (
            0,
            "drilled before its last cuts, it would have wanted a grip more, with the run-out of a re-chuck",
        )
    number = min(later)
    gripped = {set_up.option.surface for set_up in route.set_ups[number - 1 :]}
    for hole in shape.cross_holes:
        land = land_of(shape, hole)
        if land is None or land.name in gripped:
            return 0, f"before its last cuts the burr of {hole.name} would have stood in the next grip"
        if hole.sink_dia > 0:
            return 0, f"the seat of {hole.name} is as deep as drawn only on the finished land"
        across = blank if hole.walls == 2 else blank / 2
        if made_in.get(land.name, 0) >= number and across > WANDERS * hole.dia.value:
            return 0, (
                f"in the blank of {Mm(blank):g} the drill for {hole.name} goes {across / hole.dia.value:.1f} of its diameters "
                "deep and wanders"
            )
    if shape.circle_holes:
        return 0, "it is clocked from the holes on the circle, which come last"
    if made_in.get("face A", number) >= number:
        return 0, "its place is measured from face A, which is cut in the same grip"
    return number, ""


def as_it_stands(shape: TurnedShape, route: Route, number: int, blank: float) -> TurnedShape:
    """The part before a lathe card: what is not cut yet has the blank's diameter [mm]."""
    made_in = dict(route.made_in)

    def made(name: str) -> bool:
        return made_in.get(name, 0) < number

    def grown(hole: CrossHole) -> CrossHole:
        land = land_of(shape, hole)
        if hole.depth is None or land is None or made(land.name):
            return hole
        return replace(hole, depth=hole.depth + (blank - land.dia.value) / 2)

    return replace(
        shape,
        outside=tuple(
            land if made(land.name) else Cylinder(land.name, Dim(blank), land.start, land.end)
            for land in shape.outside
        ),
        bores=tuple(bore for bore in shape.bores if made(bore.name)),
        cross_holes=tuple(grown(hole) for hole in shape.cross_holes),
    )


def as_on_card(part: Part, cards: tuple[Card, ...], card: Card, blank: Blank | None) -> Part:
    """The part as a mill card between lathe cards finds it: what is turned later has the blank's diameter."""
    shape = part.shape
    later = [one for one in cards if one.machine == "lathe" and one.number > card.number]
    if card.machine != "mill" or not later or blank is None or not isinstance(shape, TurnedShape):
        return part
    turned = {step.feature for one in later for step in one.steps if step.tool_kind in CUTS}
    bored = {
        step.feature for one in later for step in one.steps if step.tool_kind in ("drill", "boring", "reamer")
    }
    outside = tuple(
        Cylinder(land.name, Dim(blank.size), land.start, land.end) if land.name in turned else land
        for land in shape.outside
    )
    bores = tuple(bore for bore in shape.bores if bore.name not in bored)
    return replace(part, shape=replace(shape, outside=outside, bores=bores, grooves=()))


def drilled_in_time(
    part: Part,
    shape: TurnedShape,
    route: Route,
    jobs: tuple[Job, ...],
    blank: float,
    lathe: list[Card],
    findings: list[Finding],
    shop: Shop,
    gives_to: dict[str, tuple[str, ...]],
) -> Drilled:
    """Put the cards of the cross holes before the last cuts of the fits they are in, where that costs no grip."""
    number, against = before_which(shape, route, jobs, blank)
    if number == 0 or shop.mill is None:
        return Drilled(lathe, findings, shape, against)
    then = as_it_stands(shape, route, number, blank)
    drilled, found = cross_cards(part, then, shop, shop.mill, number - 1, gives_to)
    if any(one.severity == "stop" for one in found):
        return Drilled(
            lathe, findings, shape, "held before its last cuts, the round does not fit vice and vee block"
        )
    fits = fits_across(shape)
    made_in = dict(route.made_in)
    saved = ", ".join(name for name in fits if made_in.get(name, 0) >= number)
    why = (
        f"Drilled before the last cuts on {saved}: they take off the burr and what the drill pushed out. "
        "The part is out of the chuck here anyway."
    )
    on_blank = f"The land is not turned yet: it measures {Mm(blank):.2f} here, and depths count from there."
    drilled = [replace(card, why=why, before_starting=(on_blank, *card.before_starting)) for card in drilled]
    after = [_interrupted(_numbered(card, card.number + len(drilled)), fits) for card in lathe[number - 1 :]]
    return Drilled(
        [*lathe[: number - 1], *drilled, *after],
        [*moved_on(findings, number, len(drilled)), *found],
        replace(shape, cross_holes=()),
    )


def moved_on(findings: list[Finding], number: int, by: int) -> list[Finding]:
    """Findings of lathe cards from a number on, with the cards that were put before them counted."""
    return [replace(one, card=one.card + by) if one.card >= number else one for one in findings]


def _numbered(card: Card, number: int) -> Card:
    steps = tuple(replace(step, key=f"{card.part}/{number}/{step.number}") for step in card.steps)
    return replace(card, number=number, steps=steps)


def _interrupted(card: Card, fits: dict[str, tuple[str, ...]]) -> Card:
    """The last cuts over a hole say so."""

    def said(step: Step) -> Step:
        holes = fits.get(step.feature, ())
        if not holes or step.tool_kind not in CUTS:
            return step
        line = f"The cut is broken over {', '.join(holes)}: light cuts, sharp tool; measure beside the hole."
        return replace(step, cautions=(*step.cautions, line))

    return replace(card, steps=tuple(said(step) for step in card.steps))


def stoned_after(cards: list[Card], drilled: Drilled) -> list[Card]:
    """Mill cards that drill into a finished fit, each with the work that brings the fit back."""
    return [_stoned(card, drilled.left, drilled.why_last) for card in cards]


def _stoned(card: Card, shape: TurnedShape, why: str) -> Card:
    drilled = {step.feature for step in card.steps if step.tool_kind in ("drill", "tap")}
    steps = list(card.steps)
    for land, holes in fits_across(shape).items():
        here = [name for name in holes if name in drilled]
        if not here:
            continue
        dim = next(one.dia for one in shape.outside if one.name == land and isinstance(one, Cylinder))
        number = len(steps) + 1
        steps.append(
            Step(
                number,
                f"Stone the mouth of {', '.join(here)} flush, then gauge {land}",
                here[0],
                "fine stone, scraper",
                "hand",
                0.0,
                0.0,
                0.0,
                f"{dim.target:.3f}",
                "DIA mm",
                (
                    "Stone laid flat along the land, never across the edge: it takes the burr and nothing else.",
                    f"Micrometer over the hole's rim and beside it: both within {Mm(dim.smallest or 0.0):.3f} to "
                    f"{Mm(dim.largest or 0.0):.3f}; then the mate itself, turned round by hand.",
                ),
                minutes=2.0,
                why=f"{land} is a fit and finished before: {why}.",
                key=f"{card.part}/{card.number}/{number}",
            )
        )
    if len(steps) == len(card.steps):
        return card
    return replace(
        card,
        steps=tuple(steps),
        minutes=card.minutes + 2.0 * (len(steps) - len(card.steps)),
        drawer=tuple(dict.fromkeys((*card.drawer, "fine stone, scraper"))),
    )
