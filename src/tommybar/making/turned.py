"""The whole making of a turned part: blank, route, lathe cards, holes on the mill."""

from __future__ import annotations

from dataclasses import dataclass, replace

from tommybar.design.model import Part
from tommybar.findings import Finding
from tommybar.making.as_machined import as_machined
from tommybar.making.between_centres import why_not_between
from tommybar.making.blanks import facing, picked_choices, round_choices, turned_blank
from tommybar.making.cards import Blank, Card, Rejected, RunoutForecast
from tommybar.making.eccentrics import eccentric_cards
from tommybar.making.fit_holes import drilled_in_time, stoned_after
from tommybar.making.forecast import expected_runout, worst_runout
from tommybar.making.grips import Option, ranges_in_words
from tommybar.making.jobs import Job, jobs_of, largest_outside
from tommybar.making.joints import Joint, joint_cards
from tommybar.making.lathe_card import lathe_card
from tommybar.making.milled_holes import hole_cards
from tommybar.making.route import Route, search_route
from tommybar.making.tail_centre import holes_that_stay
from tommybar.making.tubes import hollow_of, no_tube, tube_choices
from tommybar.making.unreached import beyond_blades, valley_stop
from tommybar.making.workpiece import Workpiece
from tommybar.shapes.features import TurnedShape
from tommybar.shop.model import Bar, Shop

TRIED_BARS = 4  # how many bars are tried for a route before giving up


@dataclass(frozen=True)
class Making:
    """Blank, cards and findings of one part, and what its route weighed in the search."""

    blank: Blank | None
    cards: tuple[Card, ...]
    findings: tuple[Finding, ...]
    weight: float = 0.0  # of the route with its bar, in the search's own measure; 0 where nothing is searched
    exhausted: bool = True  # whether no search ran out of its budget, so that nothing weighs less
    excluded: frozenset[str] = frozenset()  # holdings that the dry run took out before this route was found


def turned_part(
    part: Part,
    shop: Shop,
    gives_to: dict[str, tuple[str, ...]],
    *,
    stock: str = "ask",
    excluded: frozenset[str] = frozenset(),
    forbidden: frozenset[tuple[int, str]] = frozenset(),
    joints: tuple[Joint, ...] = (),
) -> Making:
    """Find blank and route of a turned part and write its cards."""
    assert isinstance(part.shape, TurnedShape)
    drawn = part.shape
    tube = part.blank_from == "tube"
    choices = tube_choices(part, shop, stock) if tube else round_choices(part, shop, stock)
    if not choices:
        return Making(None, (), (_no_bar(part, shop, stock),))

    def searched(bar: Bar, stays: bool, *, keep_runout: bool = True) -> Route:
        return search_route(
            part,
            drawn,
            bar.size,
            facing(bar.size),
            shop,
            bar=bar.size if stays else 0.0,
            hollow=hollow_of(bar),
            excluded=excluded,
            forbidden=forbidden,
            keep_runout=keep_runout,
        )

    best: tuple[float, Route, Bar, bool] | None = None
    failed: Route | None = None
    exhausted = True
    for place, (bar, stays) in enumerate(choices[:TRIED_BARS]):
        route = searched(bar, stays)
        exhausted = exhausted and route.exhausted
        if not route.set_ups:
            failed = failed or route
            continue
        cost = route.cost + 15.0 * place
        if best is None or cost < best[0]:
            best = (cost, route, bar, stays)
    findings: list[Finding] = []
    for bar in picked_choices(part, shop, stock) if best is None and not tube else ():
        route = searched(bar, True)
        if route.set_ups:
            best = (route.cost + 15.0 * TRIED_BARS, route, bar, True)
    if best is None:
        assert failed is not None
        bar, stays = choices[0]
        route = searched(bar, stays, keep_runout=False)
        findings += _no_route(part, failed, route, bar, shop)
        if not route.set_ups:
            return Making(None, (), tuple(findings), exhausted=exhausted, excluded=excluded)
        best = (route.cost, route, bar, stays)
    weight, route, bar, stays = best
    shape = as_machined(drawn, shop)
    why = (
        f"{bar.name}: its own surface stays on {largest_outside(drawn):g}"
        if stays
        else f"{bar.name}, {bar.skin}"
    )
    hollow = hollow_of(bar)
    blank = turned_blank(part, bar.size, route, shop, why, hollow)
    jobs = jobs_of(drawn, bar.size if stays else 0.0, hollow)
    cards, found = _cards(part, drawn, shape, route, jobs, blank, shop, gives_to)
    drilled = drilled_in_time(part, drawn, route, jobs, bar.size, cards, found, shop, gives_to)
    cards = drilled.cards
    findings += drilled.findings
    findings += holes_that_stay(part, drawn)
    thrown, found = eccentric_cards(part, drawn, shape, shop, len(cards), gives_to)
    cards += thrown
    findings += found
    milled, found = hole_cards(part, drilled.left, shop, len(cards), gives_to)
    milled = stoned_after(milled, drilled)
    findings += found
    joined, found = joint_cards(part, joints, shop, gives_to, len(cards) + len(milled))
    findings += found
    whole = (*cards, *milled, *joined)
    whole = tuple(replace(card, of=len(whole), after=_after(card, len(whole))) for card in whole)
    return Making(blank, whole, tuple(findings), round(weight, 6), exhausted, excluded)


def _after(card: Card, of: int) -> str:
    if card.number < of:
        return f"to card {card.number + 1}"
    return card.after if card.machine == "bench" else "deburr, measure, bag and label it"


def _cards(
    part: Part,
    drawn: TurnedShape,
    shape: TurnedShape,
    route: Route,
    jobs: tuple[Job, ...],
    blank: Blank,
    shop: Shop,
    gives_to: dict[str, tuple[str, ...]],
) -> tuple[list[Card], list[Finding]]:
    length = shape.length.value
    first = blank.allowances[0][1]
    work = Workpiece(((first, first - blank.length, blank.size),))
    free = route.set_ups[0].option.free
    hollow = blank.width  # of a tube
    bored = {bore.name: hollow for bore in shape.bores if hollow > 0}
    cards: list[Card] = []
    findings: list[Finding] = []
    for number, set_up in enumerate(route.set_ups, start=1):
        if set_up.option.free != free:
            work = work.reversed(length)
            free = set_up.option.free
        rejected = _worth_saying(route.rejected, set_up.option)
        card, work, bored, found = lathe_card(
            part,
            drawn,
            shape,
            set_up,
            jobs,
            work,
            bored,
            number,
            len(route.set_ups),
            shop,
            gives_to,
            rejected,
            _forecasts(part, route, number),
            hollow,
        )
        cards.append(card)
        findings += found
    return cards, findings


def _worth_saying(rejected: tuple[Rejected, ...], taken: Option) -> tuple[Rejected, ...]:
    """The refused holdings nearest to the one taken: same surface and face first, each device once."""
    if taken.jaws is not None:
        same = f"{taken.jaws.device}, {taken.jaws.name} on "
        rejected = tuple(one for one in rejected if not one.holding.startswith(same))
    near = [one for one in rejected if taken.surface in one.holding and f"face {taken.free}" in one.holding]
    other = [one for one in rejected if one not in near]
    once: dict[str, Rejected] = {}
    for one in (*near, *other):
        once.setdefault(one.holding.split(" on ")[0], one)
    return tuple(once.values())[:5]


def _forecasts(part: Part, route: Route, number: int) -> tuple[RunoutForecast, ...]:
    made_in = dict(route.made_in)
    found = []
    for need in part.needs:
        one, other = made_in.get(need.of, -1), made_in.get(need.to, -1)
        if max(one, other) != number or min(one, other) < 0:
            continue
        how = (
            "cut in one grip"
            if one == other
            else f"{route.set_ups[number - 1].option.device} on {route.set_ups[number - 1].option.surface}"
        )
        found.append(
            RunoutForecast(
                need.of,
                need.to,
                need.within,
                round(expected_runout(route.axes, one, other), 4),
                round(worst_runout(route.axes, one, other), 4),
                how,
            )
        )
    return tuple(found)


def _no_bar(part: Part, shop: Shop, stock: str) -> Finding:
    assert isinstance(part.shape, TurnedShape)
    dia = largest_outside(part.shape)
    if part.blank_from == "tube":
        return no_tube(part, shop)
    have = sorted({b.size for b in shop.rack if b.section == "round" and b.material == part.material})
    return Finding(
        201,
        "stop",
        f"No round {part.material} for {part.name}: it needs {dia:g} mm and skin to clean up.",
        part=part.name,
        figure=f"{dia:g} mm",
        bound="on the rack: " + (", ".join(f"{d:g}" for d in have) or "none"),
        remedy="Buy or ask for the bar (--stock buy), choose another material, or make the part smaller.",
    )


def _no_route(part: Part, failed: Route, relaxed: Route, bar: Bar, shop: Shop) -> list[Finding]:
    near = [f"{one.holding}: {one.reason}" for one in failed.rejected]
    near.sort(key=lambda one: "with a centre" not in one)  # what a centre carries no further comes first
    reasons = "; ".join(near[:4])
    assert isinstance(part.shape, TurnedShape)
    if relaxed.set_ups and relaxed.runout_broken:
        return [
            Finding(
                301,
                "stop",
                f"{of} cannot be made true to {to} within {within:g} mm in this shop: {expected:.3f} mm is to be expected.",
                part=part.name,
                feature=of,
                figure=f"{expected:.3f} mm TIR",
                bound=f"{within:g} mm TIR, the design's need",
                remedy=(
                    why_not_between(part.shape, shop, failed.rejected)
                    or "Add a truer holding (collets, a clocked four-jaw, an arbor), or allow more run-out. "
                )
                + reasons,
            )
            for of, to, expected, within in relaxed.runout_broken
        ]
    low = beyond_blades(part.shape, failed.missing, shop)
    if low:
        return [valley_stop(part, low, shop)]
    words = (
        "no way was found within the search's budget"
        if not failed.exhausted
        else "no holding of this shop reaches"
    )
    return [
        Finding(
            302,
            "stop",
            f"{part.name}: {words} {', '.join(failed.missing) or 'the part'} from a {bar.size:g} mm bar.",
            part=part.name,
            feature=failed.missing[0] if failed.missing else "",
            figure=f"{bar.size:g} mm blank",
            bound="; ".join(f"{j.name} {ranges_in_words(j)}" for j in shop.jaws)[:200],
            remedy=f"Looked at: {reasons}. Make the part smaller, or add a holding."
            + (
                " A centre hole drawn in the free face lets the tailstock carry it."
                if "without a centre" in reasons and not part.shape.centres
                else ""
            ),
        )
    ]
