"""One lathe card on geometry."""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np
import shapely
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from tommybar.dryrun import verdicts
from tommybar.dryrun.cutting import VERDICT, Cut, TooManyCorners, cut_step, feed_directions
from tommybar.dryrun.grip import gripped_length, radius_there
from tommybar.dryrun.keep_out import Fixture, fixture
from tommybar.dryrun.runs import CardRun, StepRun
from tommybar.dryrun.tool_shapes import ToolShape, sawn, tool_shape
from tommybar.dryrun.volumes import pieces, rings, thickness, turned_volume
from tommybar.findings import Finding
from tommybar.making.cards import Card, Step
from tommybar.making.tail_centre import AWAY, CENTRE
from tommybar.shop.model import Shop

GOUGE_ALLOWED = 0.005  # [mm]
GOUGE_THIN = 0.002  # pieces thinner than this are noise [mm]
CLOSE = 0.9  # gap below which the card says so [mm]
CLOSE_TAIL = 0.25  # the same to the tail centre; common practice, no source [mm]
GRIP_LOST = 0.05  # [mm]


@dataclass
class CardOnMetal:
    """The state while a card is run."""

    card: Card
    shop: Shop
    work: BaseGeometry
    finished: Polygon  # in this card's frame
    allowed: BaseGeometry  # the finished part with least metal, shrunk by what may be gouged
    held: Fixture
    findings: list[Finding] = field(default_factory=list)
    steps: list[StepRun] = field(default_factory=list)
    gap: float = -1.0
    gap_where: str = ""
    tail_gap: float = -1.0  # the same to the tail centre, which does not turn with jaws
    tail_where: str = ""
    separated: float = 0.0
    nose: float = 0.0  # largest nose radius used [mm]
    grip: float = 0.0
    parted: bool = False
    centred: bool = False  # the tail centre carries the work


def run_card(
    card: Card, shop: Shop, work: BaseGeometry, finished: Polygon, least: BaseGeometry
) -> CardOnMetal:
    """Cut every step of a lathe card; the work is in the card's frame and stays so.

    ``finished`` is the part as drawn, ``least`` with the least metal that its
    limits allow, both in the card's frame.
    """
    held = fixture(card.hold, work.bounds[2], shop)
    allowed = least.buffer(-GOUGE_ALLOWED, join_style="mitre")
    run = CardOnMetal(card, shop, work, finished, allowed, held)
    if not held.known:
        run.findings.append(verdicts.unknown(card, f"Where {card.hold.device} stands is not known"))
    _check_grip_at_start(run)
    for step in card.steps:
        _run_step(run, step)
    if 0 <= run.gap < CLOSE:
        run.findings.append(verdicts.close_to_fixture(card, run.gap, run.gap_where))
    if 0 <= run.tail_gap < CLOSE_TAIL:
        run.findings.append(verdicts.close_to_tail(card, run.tail_gap, run.tail_where, CLOSE_TAIL))
    return run


def card_run(run: CardOnMetal, before: BaseGeometry) -> CardRun:
    """What a card did, as plain data."""
    return CardRun(
        run.card.part,
        run.card.number,
        rings(before),
        tuple(run.steps),
        rings(run.finished),
        tuple((name, rings(shape)[0]) for name, shape in (*run.held.keep_out, *run.held.tail)),
        *_nearest(run),
        run.separated,
    )


def _nearest(run: CardOnMetal) -> tuple[float, str]:
    """The smallest gap of the card and where, the tail centre's only where it is the smaller."""
    if run.tail_gap >= 0 and (run.gap < 0 or run.tail_gap < run.gap):
        return run.tail_gap, run.tail_where
    return run.gap, run.gap_where


def _check_grip_at_start(run: CardOnMetal) -> None:
    run.grip = gripped_length(run.work, run.held)
    if run.held.known and run.held.radius > 0 and run.grip < 0.5 * run.card.hold.length:
        dia = 2 * radius_there(run.work, run.held)
        run.findings.append(verdicts.grip_not_there(run.card, run.grip, dia))


def _run_step(run: CardOnMetal, step: Step) -> None:
    before = run.work
    run.centred = _centred(run, step)
    try:
        tool = tool_shape(step, run.shop, feed_directions(step.moves))
    except KeyError:
        tool = None
        if step.moves:
            run.findings.append(verdicts.unknown(run.card, f"The tool of this step, {step.tool_kind}", step))
    chips: BaseGeometry = Polygon()
    lost = 0.0
    if tool is not None and step.moves:
        run.nose = max(run.nose, tool.nose)
        try:
            done = cut_step(before, tool, step.moves)
        except TooManyCorners as fault:
            run.findings.append(verdicts.gave_up(run.card, step, str(fault)))
            done = Cut(before)
        if done.retried:
            run.findings.append(verdicts.unknown(run.card, "An overlay worked only on a coarser grid", step))
        run.work = done.work
        chips = before.difference(run.work)
        lost = turned_volume(before) - turned_volume(run.work)
        _say_hits(run, step, tool, done)
        if not run.parted and not sawn(step):
            _look_at_fixture(run, step, done)
        _say_gouge(run, step, chips)
        _separate(run, step)
        _say_grip(run, step)
    run.steps.append(StepRun(step.key, rings(run.work), rings(chips), lost))


def _say_hits(run: CardOnMetal, step: Step, tool: ToolShape, done: Cut) -> None:
    if done.starts_in_metal:
        run.findings.append(verdicts.rapid_through_metal(run.card, step, 0, done.starts_in_metal))
    if done.rapid:
        move, area = max(done.rapid, key=lambda one: one[1])
        run.findings.append(verdicts.rapid_through_metal(run.card, step, move, area))
    for holder in (False, True):
        hits = [hit for hit in done.hits if hit.holder is holder]
        if hits:
            worst = max(hits, key=lambda hit: hit.area)
            if holder:
                found = verdicts.too_short(run.card, step, worst.move, tool.reach, worst.area)
            else:
                found = verdicts.body_meets_metal(run.card, step, worst.move, worst.area)
            run.findings.append(found)


def _centred(run: CardOnMetal, step: Step) -> bool:
    """Whether the tail centre stands in the work while this step is done."""
    if run.card.hold.tail is None or step.tool_kind in AWAY:
        return False
    return run.centred or run.card.hold.drive is not None or step.tool == CENTRE


def _look_at_fixture(run: CardOnMetal, step: Step, done: Cut) -> None:
    if not done.swept:
        return
    there = run.held.tail if run.centred else ()
    for name, shape in (*run.held.keep_out, *there):
        gaps = [shapely.distance(shape, row) for row in done.swept]
        least = float(min(row.min() for row in gaps))
        place = f"{name} in step {step.number}"
        if (name, shape) in there:
            if run.tail_gap < 0 or least < run.tail_gap:
                run.tail_gap, run.tail_where = least, place
        elif run.gap < 0 or least < run.gap:
            run.gap, run.gap_where = least, place
        if least > 0:
            continue
        touching = [row[distance == 0] for row, distance in zip(done.swept, gaps, strict=True)]
        area = float(max(shapely.area(shapely.intersection(shape, np.concatenate(touching)))))
        if area > VERDICT:
            met = verdicts.meets_tail if (name, shape) in there else verdicts.meets_fixture
            run.findings.append(met(run.card, step, name, area))


def _say_gouge(run: CardOnMetal, step: Step, chips: BaseGeometry) -> None:
    cut = chips.intersection(run.allowed)
    bad = [piece for piece in pieces(cut) if thickness(piece) >= GOUGE_THIN and piece.area > VERDICT]
    if bad:
        deep = max(thickness(piece) for piece in bad) + GOUGE_ALLOWED
        volume = sum(turned_volume(piece) for piece in bad)
        run.findings.append(verdicts.gouged(run.card, step, volume, deep))


def _separate(run: CardOnMetal, step: Step) -> None:
    """Keep what goes on: the free piece after parting, else the piece in the jaws."""
    parts = pieces(run.work)
    parting = step.tool_kind in ("parting", "saw")
    if len(parts) < 2:
        if parting:
            run.findings.append(verdicts.not_parted(run.card, step))
        return
    parts.sort(key=lambda piece: piece.bounds[2])
    keep = parts[-1] if parting else parts[0]
    aside = [piece for piece in parts if piece is not keep]
    volume = sum(turned_volume(piece) for piece in aside)
    run.separated += volume
    run.work = keep
    run.parted = run.parted or parting
    if not parting:
        run.findings.append(verdicts.comes_loose(run.card, step, volume))


def _say_grip(run: CardOnMetal, step: Step) -> None:
    if run.parted or run.held.radius <= 0:
        return
    now = gripped_length(run.work, run.held)
    if now < run.grip - GRIP_LOST:
        run.findings.append(verdicts.grip_cut_away(run.card, step, run.grip, now))
    run.grip = now
