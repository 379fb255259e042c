"""``plan(design, shop, made) -> Plan``: the loop that everything else is a view of.

Resize proposes a scale and sizes; blanks, routes, dry run and checks confirm
them, or hand back what was violated as a new limit, and resize is asked again.
The number of rounds is bounded and told. With a fixed scale or pins nothing
is proposed in their place: what they break becomes findings.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Callable, Mapping
from dataclasses import asdict, dataclass, replace
from functools import lru_cache
from typing import Literal

from tommybar.checks import check_all, check_together
from tommybar.checks.figures import Figure
from tommybar.design import Design
from tommybar.design.model import Part, SizedDesign
from tommybar.dryrun import run_part
from tommybar.dryrun.not_run import not_run
from tommybar.dryrun.runs import PartRun
from tommybar.facts.edition import edition
from tommybar.facts.materials import material
from tommybar.findings import Finding, in_order
from tommybar.made import Made, as_measured, retarget
from tommybar.made.dims import dims_of
from tommybar.making.as_machined import as_drilled
from tommybar.making.assumed import assumed
from tommybar.making.begun import kept_in_order
from tommybar.making.cards import Blank, Card
from tommybar.making.joints import Joint, joints_of
from tommybar.making.lengths import spoken
from tommybar.making.loop_lengths import LoopLength, loop_lengths
from tommybar.making.parts import gives_to, making_order, route_part
from tommybar.making.route import holding_name
from tommybar.making.route_check import route_faults
from tommybar.making.together import told_together
from tommybar.making.turned import Making
from tommybar.nest import nest
from tommybar.nest.cutlist import CutList
from tommybar.refusals import Refusal
from tommybar.resize import resize, second_choice
from tommybar.resize.table import Bind, Resized, SizeRow
from tommybar.shapes.features import TurnedShape
from tommybar.shapes.mass import mass_properties
from tommybar.shop.model import Shop
from tommybar.version import __version__

ROUNDS = 25  # how often resize may be asked again, counted
STEP = 0.01  # the scale's grid
PROBE = 0.8  # a stop that is still there at this share of the scale is not cured by a smaller part
EXCLUSIONS = 3  # holdings that a dry run may forbid for one part
# Stops that a smaller part would cure: holding, reach of tools, collisions, head room.
SIZE_BOUND = frozenset({302, 410, 432, *range(500, 600)})
# Stops that another holding may cure: a cut that the grip or the work does not stand, spring over the limits.
HELD_TOO_WEAKLY = frozenset({403, 404})
# Nothing in the shop makes that feature; what follows in the dry run is judged as if it were there.
NOT_MADE = frozenset({410, 411, 415, 418, 424, 425, 429})
Stock = Literal["rack", "buy", "ask"]


@dataclass(frozen=True)
class PartPlan:
    """One part: what it is, what it starts from, its cards and its dry run."""

    part: Part
    blank: Blank | None
    cards: tuple[Card, ...]
    run: PartRun | None  # turned parts only
    mass: float  # [g]
    changed: str = ""  # why its limits differ from the drawing, after a measured mate


@dataclass(frozen=True)
class Plan:
    """Everything worked out for one design in one shop, as frozen data."""

    plan_id: str
    version: str
    title: str
    revision: str
    scale: float
    sizes: tuple[SizeRow, ...]
    binds: tuple[Bind, ...]
    second: Resized | None
    design: SizedDesign
    shop: Shop
    made: Made
    parts: tuple[PartPlan, ...]  # in the order in which they should be made
    stock: CutList
    figures: tuple[Figure, ...]
    findings: tuple[Finding, ...]
    rounds: int  # how often the loop went round
    stock_from: Stock = "ask"  # where metal was allowed to come from

    def part(self, name: str) -> PartPlan:
        """The plan of the part of that name."""
        return next(one for one in self.parts if one.part.name == name)

    @property
    def stops(self) -> tuple[Finding, ...]:
        """The findings that forbid starting."""
        return tuple(one for one in self.findings if one.severity == "stop")


def plan_id(design_text: str, shop: Shop, made: Made, asked: tuple[object, ...]) -> str:
    """Short name of a plan: the hash of its inputs, of the tables' edition and of the program's version."""
    shop_data = asdict(shop)
    shop_data["can"] = sorted(shop.can)
    whole = json.dumps(
        [design_text, shop_data, asdict(made), asked, edition(), __version__], sort_keys=True, default=str
    )
    return hashlib.sha256(whole.encode()).hexdigest()[:8]


def _mass(part: Part) -> float:
    if part.shape is None:
        return 0.0
    return mass_properties(part.shape, material(part.material).density).mass


def routed(
    part: Part,
    mates: tuple[tuple[str, tuple[str, ...]], ...],
    joints: tuple[Joint, ...],
    lengths: tuple[LoopLength, ...],
    shop: Shop,
    stock: Stock,
    excluded: frozenset[str] = frozenset(),
    forbidden: frozenset[tuple[int, str]] = frozenset(),
) -> tuple[Making, PartRun | None]:
    """Route and dry run of one part.

    A holding in which the dry run collides, or which does not stand its cuts,
    is excluded and the route is searched once more; when no other way is found the first one is given
    back with its collision. The making names what was excluded on the way.
    """
    first: tuple[Making, PartRun | None] | None = None
    for _ in range(EXCLUSIONS + 1):
        making = route_part(
            part,
            dict(mates),
            shop,
            stock=stock,
            excluded=excluded,
            forbidden=forbidden,
            joints=joints,
            lengths=lengths,
        )
        lacking = [f for f in making.findings if f.severity == "stop" and f.number not in HELD_TOO_WEAKLY]
        if first is not None and (lacking or not making.cards):
            return first
        run = _run(part, making, shop)
        first = first or (making, run)
        bad = [one for one in making.findings if one.severity == "stop" and one.number in HELD_TOO_WEAKLY]
        bad += [] if run is None else [one for one in run.findings if one.severity == "stop" and one.card]
        if not bad:
            return making, run
        holds = [making.cards[one.card - 1].hold for one in bad]
        excluded |= {holding_name(hold.device, hold.surface) for hold in holds}
    assert first is not None
    return first


@lru_cache(maxsize=512)
def made_part(
    part: Part,
    mates: tuple[tuple[str, tuple[str, ...]], ...],
    joints: tuple[Joint, ...],
    lengths: tuple[LoopLength, ...],
    shop: Shop,
    stock: Stock,
) -> tuple[Making, PartRun | None, float]:
    """Route, dry run and mass [g] of one part; kept by content, so that only what changed is worked out again."""
    try:
        making, run = routed(part, mates, joints, lengths, shop, stock)
    except Refusal as refusal:  # a lead or a tip that comes out behind, for instance
        making, run = Making(None, (), (not_run(part.name, refusal),)), None
    if run is not None:
        faults = tuple(
            Finding(
                399,
                "stop",
                f"The route does not replay: {words}.",
                part.name,
                remedy="Report this: it is our fault.",
            )
            for words in (route_faults(part, making.cards, shop) if _whole(making) else ())
        )
        making = replace(making, findings=(*making.findings, *faults))
    return making, run, round(_mass(part), 2)


def _whole(making: Making) -> bool:
    """Whether no stop has already told that something is lacking."""
    return not any(one.severity == "stop" for one in making.findings)


def _run(part: Part, making: Making, shop: Shop) -> PartRun | None:
    if making.blank is None or not making.cards or not isinstance(part.shape, TurnedShape):
        return None
    lacking = frozenset(
        one.feature.partition(" (")[0]
        for one in making.findings
        if one.severity == "stop" and one.number in NOT_MADE
    )
    return run_part(as_drilled(part, shop), making.blank, making.cards, shop, lacking)


@dataclass(frozen=True)
class _Round:
    """One proposal of resize and what became of it."""

    resized: Resized
    sized: SizedDesign
    parts: tuple[PartPlan, ...]
    findings: tuple[Finding, ...]

    @property
    def too_large(self) -> tuple[Finding, ...]:
        """Stops that a smaller scale would cure."""
        return tuple(f for f in self.findings if f.severity == "stop" and f.number in SIZE_BOUND)


def _one_round(resized: Resized, shop: Shop, made: Made, stock: Stock, tell: Callable[[str], None]) -> _Round:
    sized, found, changed = retarget(resized.design, made)
    real = as_measured(sized, made)
    findings: list[Finding] = [*resized.findings, *found]
    mates = tuple(sorted(gives_to(sized).items()))
    parts: list[PartPlan] = []
    for name in making_order(sized):
        tell(f"route of {name}")
        part = sized.part(name)
        making, run, mass = made_part(
            part, mates, joints_of(real, name), loop_lengths(sized, name), shop, stock
        )
        if made.begun(name):
            making, run = _in_begun_order(resized, name, (making, run), sized, shop, made, stock)
        findings += making.findings
        if run is not None:
            findings += run.findings
        cards = told_together(making.cards, part, sized)
        parts.append(PartPlan(part, making.blank, cards, run, mass, changed.get(name, "")))
    return _Round(resized, sized, tuple(parts), tuple(findings))


def _in_begun_order(
    resized: Resized,
    name: str,
    now: tuple[Making, PartRun | None],
    sized: SizedDesign,
    shop: Shop,
    made: Made,
    stock: Stock,
) -> tuple[Making, PartRun | None]:
    """What is made of a begun part now, in the order of the cards that it was begun with."""
    known = made.when_begun(name)
    then, _, _ = retarget(resized.design, known)
    joints = joints_of(as_measured(then, known), name)
    mates = tuple(sorted(gives_to(then).items()))
    old, run, _ = made_part(then.part(name), mates, joints, loop_lengths(then, name), shop, stock)
    making = kept_in_order(now[0], old, made, dims_of(sized))
    return making, now[1] if making is now[0] else run


def _said(one: PartPlan, words_in: Literal["mm", "in"]) -> PartPlan:
    return replace(one, blank=spoken(one.blank, words_in), cards=spoken(one.cards, words_in))


def _with_binding(looked_at: tuple[Bind, ...], added: tuple[Bind, ...]) -> tuple[Bind, ...]:
    """Every limit looked at, with the one that the making added last marked as the one that decides."""
    if not added:
        return looked_at
    last = added[-1]
    others = tuple(one for one in looked_at if (one.what, one.part) not in {(a.what, a.part) for a in added})
    return (last, *others)


def _limit_of(finding: Finding, scale: float) -> Bind:
    """A stop of the making as a limit: one grid step below the scale at which it stood."""
    said = spoken(finding.words, "mm").removeprefix(f"{finding.part}: ").rstrip(".")
    what = said if len(said) <= 90 else said[:87] + "..."
    return Bind(what, finding.part, scale, round(scale - STEP, 4), round(scale - STEP, 4), True)


def _settled(
    design: Design,
    shop: Shop,
    made: Made,
    scale: float | None,
    pins: Mapping[str, float | str],
    stock: Stock,
    tell: Callable[[str], None],
) -> tuple[_Round, tuple[Bind, ...], int]:
    """The proposal that stands, the limits that the making added, and how many rounds it took."""

    def tried(limits: tuple[Bind, ...]) -> _Round:
        tell("sizes")
        return _one_round(resize(design, shop, scale, pins, stock, limits), shop, made, stock, tell)

    first = tried(())
    if scale is not None or pins or not first.too_large:
        return first, (), 1
    probe = _limit_of(first.too_large[0], PROBE * first.resized.scale + STEP)
    probed = tried((probe,))
    is_smaller = probed.resized.scale <= probe.scale + 1e-9  # else no sizes suit it, which proves nothing
    rest = {(f.number, f.part, f.feature) for f in probed.too_large}
    if is_smaller and rest & {(f.number, f.part, f.feature) for f in first.too_large}:
        return first, (), 2  # no smaller part cures it: tell what stands at the first proposal
    limits: tuple[Bind, ...] = (_limit_of(first.too_large[0], first.resized.scale),)
    for rounds in range(3, ROUNDS + 1):
        now = tried(limits)
        if not now.too_large or now.resized.scale > limits[-1].scale + 1e-9:
            return now, limits, rounds
        limits = (*limits, _limit_of(now.too_large[0], now.resized.scale))
    return first, (), ROUNDS


def plan(
    design: Design,
    shop: Shop,
    made: Made | None = None,
    *,
    scale: float | None = None,
    pins: Mapping[str, float | str] | None = None,
    stock: Stock = "ask",
    words_in: Literal["mm", "in"] = "mm",
    tell: Callable[[str], None] = lambda words: None,
) -> Plan:
    """Work out everything for one design in one shop.

    ``scale`` or ``pins`` fix what they name: nothing is proposed in their
    place, and what they break becomes a finding. ``stock`` says where metal
    may come from: the rack only, bought, or asked for. ``words_in`` is the
    unit in which the sentences of cards and findings say their lengths; the
    figures beside them stay in mm. ``tell`` hears one line per stage, for a
    progress display. The same inputs give the same
    Plan to the byte.
    """
    made = made or Made()
    pins = dict(pins or {})
    fixed = scale is not None or bool(pins)
    now, limits, rounds = _settled(design, shop, made, scale, pins, stock, tell)
    tell("stock")
    cut_list, found = nest(tuple(one.blank for one in now.parts if one.blank is not None), shop, stock)
    tell("checks")
    found_checks, figures = check_all(now.sized, shop, as_measured(now.sized, made))
    found = (*found, *assumed(shop, any(card.machine == "lathe" for one in now.parts for card in one.cards)))
    tell("second choice")
    second = None if fixed else second_choice(design, shop, now.resized.scale, pins, stock, limits)
    return Plan(
        plan_id(design.file_text, shop, made, (scale, sorted(pins.items()), stock)),
        __version__,
        now.sized.title,
        now.sized.revision,
        now.resized.scale,
        spoken(now.resized.rows, words_in),
        spoken(_with_binding(now.resized.limits, limits), words_in),
        second
        and replace(second, rows=spoken(second.rows, words_in), limits=spoken(second.limits, words_in)),
        now.sized,
        shop,
        made,
        tuple(_said(one, words_in) for one in now.parts),
        replace(cut_list, buy=spoken(cut_list.buy, words_in)),
        spoken(tuple(figures), words_in),
        in_order([spoken(one, words_in) for one in (*now.findings, *found, *found_checks)]),
        rounds,
        stock,
    )


def with_assembly(found: Plan, words_in: Literal["mm", "in"] = "mm") -> Plan:
    """The plan with what its placed and moving pieces show, which takes longer than a change may."""
    told = [spoken(one, words_in) for one in check_together(found.design)]
    return replace(found, findings=in_order([*found.findings, *told]))
