"""Every thread that holds something: how much of it is engaged, wanted and there."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from tommybar.checks.bought_screws import BoughtScrew, bought_for, once_each
from tommybar.checks.checked import PRACTICE
from tommybar.checks.screwed_holes import ScrewedHole, screwed_hole
from tommybar.checks.turning import outside_threads
from tommybar.design.joints import ThreadRelation
from tommybar.design.model import Part, ScrewRelation, SizedDesign
from tommybar.facts.fasteners import washer
from tommybar.facts.threads import thread
from tommybar.facts.threads.engaged_length import engaged_length
from tommybar.refusals import Refusal
from tommybar.shapes.features import Bore, CircleHoles, Cylinder, TurnedShape


@dataclass(frozen=True)
class Engaged:
    """One screwed joint [mm]."""

    screw: str  # what is screwed: a bought screw or a part
    into: str  # part.feature
    engaged: float
    wanted: float
    there: float  # length of thread in the part
    how: str
    source: str = PRACTICE
    full: float = 0.0  # wanted where the screw is to carry all that it can; 0: it is not to
    material: str = ""
    bought: BoughtScrew | None = None
    gripped: float = 0.0  # metal and washers under the head of a bought screw


def engaged_threads(design: SizedDesign) -> tuple[Engaged, ...]:
    """Bought screws, threads that relations join, parts with equal threads that no relation names, grub screws."""
    found = [*_bought(design), *_related(design), *_alike(design), *_grubs(design)]
    return tuple(dict.fromkeys(found))


def _bought(design: SizedDesign) -> Iterator[Engaged]:
    for relation in once_each(design):
        into, through = holes_of(design, relation)
        screw = bought_for(design, relation)
        if into is None or screw is None or None in through or not into.part.material:
            continue
        gripped = sum(one.metal for one in through if one is not None) + under_head(design, relation)
        reach = screw.length - gripped
        wanted = engaged_length(into.part.material, thread(relation.screw).major)
        yield Engaged(
            f"{screw.size} x {screw.length:g}",
            relation.into,
            min(reach, into.thread),
            wanted.least,
            into.thread,
            f"{screw.length:g} mm of screw less {gripped:.4g} mm gripped"
            + (f", of which {into.thread:.3g} mm are tapped" if reach > into.thread + 1e-6 else ""),
            str(wanted.source),
            wanted.full,
            into.part.material,
            screw,
            gripped,
        )


def holes_of(
    design: SizedDesign, relation: ScrewRelation
) -> tuple[ScrewedHole | None, list[ScrewedHole | None]]:
    """The tapped hole of a screw, and those that it goes through; None for one that is not followed."""
    return screwed_hole(design, relation.into), [screwed_hole(design, name) for name in relation.through]


def under_head(design: SizedDesign, relation: ScrewRelation) -> float:
    """Thickness of the washers that a screw's joint names [mm]."""
    for joint in design.screw_joints:
        if (joint.into, joint.screw, joint.through[:1]) == (
            relation.into,
            relation.screw,
            relation.through[:1],
        ):
            return sum(washer(joint.screw, one).thickness for one in joint.washers)
    return 0.0


def _related(design: SizedDesign) -> Iterator[Engaged]:
    """Threads that a relation joins: as far as it says, and no further than both threads go."""
    for relation in design.threads:
        hole = screwed_hole(design, relation.inside)
        if hole is None or not hole.part.material or not hole.thread:
            continue
        usable = _usable_land(design, relation)
        engaged = min(relation.engaged, hole.thread, usable)
        wanted = engaged_length(hole.part.material, thread(relation.thread).major)
        yield Engaged(
            f"{relation.outside.split('.')[0]} {relation.thread}",
            relation.inside,
            engaged,
            wanted.least,
            hole.thread,
            f"the least of {relation.engaged:.3g} mm engaged, {usable:.3g} mm of screw without its grooves and "
            f"{hole.thread:.3g} mm tapped all round",
            str(wanted.source),
            wanted.full,
            hole.part.material,
        )


def _usable_land(design: SizedDesign, relation: ThreadRelation) -> float:
    """Length of the outside thread that a relation names; what it says itself for a bought one [mm]."""
    name, _, land = relation.outside.partition(".")
    part = next((one for one in design.parts if one.name == name), None)
    if part is None or not isinstance(part.shape, TurnedShape):
        return relation.engaged
    screw = next((one for one in outside_threads(part.shape) if one.name == land), None)
    return usable_thread(part.shape, screw) if screw is not None else relation.engaged


def _alike(design: SizedDesign) -> Iterator[Engaged]:
    """Turned screws and tapped holes of one designation that no relation speaks of."""
    spoken = {name for one in design.threads for name in (one.outside, one.inside)}
    spoken |= {one.seat for one in design.seats} | {one.into for one in design.screws}
    turned = [part for part in design.parts if isinstance(part.shape, TurnedShape)]
    for part in turned:
        assert isinstance(part.shape, TurnedShape)
        for screw in outside_threads(part.shape):
            if f"{part.name}.{screw.name}" in spoken:
                continue
            usable = usable_thread(part.shape, screw)
            for mate, hole in _tapped_in(design, turned, screw.thread, part):
                if hole.name in spoken:
                    continue
                wanted = engaged_length(mate.material, thread(screw.thread).major)
                yield Engaged(
                    f"{part.name} {screw.thread}",
                    hole.name,
                    min(usable, hole.thread),
                    wanted.least,
                    hole.thread,
                    f"the shorter of {usable:.3g} mm of screw without its grooves and {hole.thread:.3g} mm tapped",
                    str(wanted.source),
                    wanted.full,
                    mate.material,
                )


def usable_thread(shape: TurnedShape, screw: Cylinder) -> float:
    """Length of an outside thread that no groove cuts away [mm]."""
    cut = sum(
        min(g.end, screw.end) - max(g.start, screw.start)
        for g in shape.grooves
        if g.end > screw.start and g.start < screw.end
    )
    return screw.end - screw.start - cut


def _tapped_in(
    design: SizedDesign, parts: list[Part], designation: str, but: Part
) -> Iterator[tuple[Part, ScrewedHole]]:
    """Tapped bores and circle holes of the other turned parts."""
    for part in parts:
        if part is but or not isinstance(part.shape, TurnedShape):
            continue
        features: tuple[Bore | CircleHoles, ...] = (*part.shape.bores, *part.shape.circle_holes)
        for one in features:
            hole = screwed_hole(design, f"{part.name}.{one.name}") if one.thread == designation else None
            if hole is not None:
                yield part, hole


def _grubs(design: SizedDesign) -> Iterator[Engaged]:
    """Grub screws in the tapped holes that they sit in: they press, so that the least is enough."""
    for seat in design.seats:
        part = next((one for one in design.parts if one.name == seat.bought), None)
        hole = screwed_hole(design, seat.seat)
        kind = part.envelope.kind if part is not None and part.envelope is not None else ""
        if kind != "grub screw" or hole is None or not hole.thread or not hole.part.material:
            continue
        assert part is not None and part.envelope is not None
        sizes = dict(part.envelope.sizes)
        try:
            wanted = engaged_length(hole.part.material, sizes["thread_dia"])
        except Refusal:
            continue
        long = sizes["length"]
        yield Engaged(
            part.envelope.designation,
            seat.seat,
            min(long, hole.thread),
            wanted.least,
            hole.thread,
            f"the shorter of {long:.3g} mm of screw and {hole.thread:.3g} mm tapped all round",
            str(wanted.source),
            0.0,
            hole.part.material,
        )
