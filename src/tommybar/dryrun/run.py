"""A part's route cut on geometry, lathe card after lathe card."""

from __future__ import annotations

from dataclasses import replace

from shapely.geometry.base import BaseGeometry

from tommybar.design.model import Part
from tommybar.dryrun import verdicts
from tommybar.dryrun.frames import blank_section, in_card, turned_round
from tommybar.dryrun.left_over import left_standing, missing_metal
from tommybar.dryrun.run_card import card_run, run_card
from tommybar.dryrun.runs import CardRun, PartRun
from tommybar.dryrun.volumes import turned_volume
from tommybar.findings import Finding
from tommybar.making.cards import Blank, Card
from tommybar.refusals import Refusal
from tommybar.shapes.features import Cylinder, Face, Land, TurnedShape
from tommybar.shapes.section import half_section
from tommybar.shop.model import Shop

BY_HAND = frozenset({"hand", "file"})


def run_part(
    part: Part,
    blank: Blank,
    cards: tuple[Card, ...],
    shop: Shop,
    not_made: frozenset[str] = frozenset(),
) -> PartRun:
    """Cut all lathe cards of a turned part one after another on its half-section.

    Mill and bench cards change nothing in the half-section. A tool's path is
    that of its reference point in the card frame; between cards the same
    metal is turned round when another face comes to the free end. What
    ``not_made`` names ("bore", "rim edge A"), of which a stop has said already
    that nothing in the shop makes it, is taken out of the blank beforehand: the
    steps after it are then judged as they will stand once that is cured.

    Raises
    ------
    Refusal
        If the part is not a turned one, or its features make no single section.
    """
    shape = part.shape
    if not isinstance(shape, TurnedShape):
        raise Refusal(
            f"{part.name} is a {part.kind} part; only turned parts have a half-section.",
            "Leave it out of the dry run.",
        )
    length = shape.length.value
    drawn, least, most = (half_section(shape, metal) for metal in ("target", "least", "most"))
    work: BaseGeometry = blank_section(blank)
    free: Face = "A"
    first = True
    findings: list[Finding] = []
    runs: list[CardRun] = []
    nose = removed = separated = 0.0
    turning = tuple(card for card in cards if card.machine == "lathe")
    if not_made and turning:
        solid, cut = (half_section(_only(shape, names), "target") for names in (frozenset(), not_made))
        gone_before = solid.difference(cut)
        work = work.difference(in_card(gone_before, turning[0].free_end or free, length))
    blank_volume = turned_volume(work)
    for card in turning:
        now: Face = card.free_end or free
        if not first and now != free:
            work = turned_round(work, length)
        free, first = now, False
        before = work
        run = run_card(card, shop, work, in_card(drawn, free, length), in_card(least, free, length))
        work = run.work
        runs.append(card_run(run, before))
        findings += run.findings
        nose = max(nose, run.nose)
        removed += sum(step.removed_volume for step in run.steps)
        separated += run.separated
    surplus, lacking = 0.0, 0.0
    if turning:
        by_hand = any(step.tool_kind in BY_HAND for card in cards for step in card.steps)
        own = in_card(work, free, length) if free == "A" else _from_b(work, length)
        left = left_standing(own, most, shape, nose, by_hand)
        gone = missing_metal(own, least)
        surplus = sum(piece.volume for piece in left)
        lacking = sum(piece.volume for piece in gone)
        last = turning[-1]
        findings += [verdicts.forgotten(last, piece) for piece in left if piece.kind == "forgotten"]
        corners = tuple(piece for piece in left if piece.kind == "corner radius")
        if corners:
            findings.append(verdicts.rounded_corners(last, corners, nose))
        findings += [verdicts.missing(last, piece) for piece in gone]
    return PartRun(
        part.name,
        tuple(runs),
        blank_volume,
        removed,
        turned_volume(work),
        surplus,
        lacking,
        tuple(findings),
    )


def _only(shape: TurnedShape, names: frozenset[str]) -> TurnedShape:
    """The shape with nothing else cut into its lands than what is named; a groove in a bore brings its bore."""
    grooved = {one.on for one in shape.bore_grooves if one.name in names}
    return replace(
        shape,
        outside=tuple(_edges_only(land, names) for land in shape.outside),
        grooves=(),
        recesses=tuple(one for one in shape.recesses if one.name in names),
        face_grooves=tuple(one for one in shape.face_grooves if one.name in names),
        bores=tuple(one for one in shape.bores if one.name in names | grooved),
        bore_tapers=tuple(one for one in shape.bore_tapers if one.name in names),
        bore_grooves=tuple(one for one in shape.bore_grooves if one.name in names),
        cups=tuple(one for one in shape.cups if one.name in names and not one.on),
        centres=tuple(one for one in shape.centres if one.name in names),
    )


def _edges_only(land: Land, names: frozenset[str]) -> Land:
    if not isinstance(land, Cylinder):
        return land
    return replace(
        land,
        edge_start=land.edge_start if f"{land.name} edge A" in names else 0.0,
        edge_end=land.edge_end if f"{land.name} edge B" in names else 0.0,
        round_start=land.round_start if f"{land.name} round A" in names else 0.0,
        round_end=land.round_end if f"{land.name} round B" in names else 0.0,
    )


def _from_b(work: BaseGeometry, length: float) -> BaseGeometry:
    """From the card with face B free back to the part's own frame."""
    return in_card(work, "B", -length)
