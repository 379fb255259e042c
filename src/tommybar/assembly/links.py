"""What holds the pieces of a design to one another, piece by piece.

A part that is made several times is several pieces. Where a relation names
features of such parts, its copies are dealt out in the order written: the
second use of a feature belongs to the second piece.
"""

from __future__ import annotations

import itertools

from tommybar.assembly.axes import Axis, axis_of, axis_of_bought
from tommybar.assembly.dealing import Dealer
from tommybar.assembly.fastened import fastened
from tommybar.assembly.joined import Joined, Kind, Link, Piece, pieces_of
from tommybar.assembly.standing import belt_links, centred, face_links, loose_links
from tommybar.design.model import Part, SizedDesign
from tommybar.shapes.features import Bore, CircleHoles, Cylinder, TurnedShape

__all__ = ["Joined", "Kind", "Link", "Piece", "links_of", "pieces_of"]
PERMANENT = {"press": "pressed", "adhesive": "bonded", "solder": "soldered"}


def links_of(design: SizedDesign) -> tuple[Link, ...]:
    """All links of a design, screws first."""
    seats = _seats(design)
    joints = fastened(design)
    found = [*_screws(design), *_fits(design), *(one for one in joints if one.kind == "fit")]
    found += [one for one in seats if one.kind == "fit"]
    found += [*_contacts(design), *_threads(design)]
    found += [one for one in seats if one.kind == "thread"]  # nuts go on after what they hold
    found += [one for one in joints if one.kind == "thread"]
    found += loose_links(design, found)
    found += [*belt_links(design), *face_links(design)]
    named = {piece for link in found for piece in (link.first, link.second)}
    found += [one for one in joints if one.kind == "screw head"]
    found += _same_threads(design, named, found)
    return tuple(centred(design, found))


def _screws(design: SizedDesign) -> list[Link]:
    """Parts that screws hold face on face, all screws between the same two pieces in one link."""
    chains: list[tuple[str, ...]] = []
    for joint in design.screw_joints:
        if not joint.stud:  # what a stud holds lies against its shoulder
            chains.append((*joint.through, joint.into) if joint.into else joint.through)
    for screw in design.screws:
        chains.append((*screw.through, screw.into))
    for pattern in design.patterns:
        chains += list(zip(pattern.first, pattern.second, strict=False))
    steps: list[tuple[str, str]] = []
    for chain in dict.fromkeys(chains):
        steps += list(itertools.pairwise(chain))
    steps = list(dict.fromkeys(steps))
    dealer = Dealer(design, steps)
    groups: dict[tuple[Piece, Piece], list[Joined]] = {}
    for first, second in steps:
        for (one, a), (other, b) in dealer.deal(first, second):
            hole, thread = dealer.axis(first, a), dealer.axis(second, b)
            if hole and thread and one != other:
                groups.setdefault((one, other), []).append(Joined(hole, thread, f"{first} on {second}"))
    return [Link("screw", one, other, tuple(pairs)) for (one, other), pairs in groups.items()]


def _fits(design: SizedDesign) -> list[Link]:
    """Holes about lands: fits, press joints, bonded and soldered ones, pivots, seats."""
    lasting: dict[tuple[str, str], str] = {}
    for fit in design.fits:
        lasting[(fit.hole, fit.shaft)] = PERMANENT.get(fit.joint, "")
    for press in design.presses:
        lasting[(press.hole, press.shaft)] = "pressed"
    for bond in design.adhesives:
        lasting[(bond.hole, bond.shaft)] = "bonded"
    for solder in design.solders:
        lasting[(solder.hole, solder.shaft)] = "soldered"
    for pivot in design.pivots:
        lasting.setdefault((pivot.turns_in, pivot.pin), "")
    for pin in design.pins:
        lasting.setdefault((pin.outer, pin.inner), "")
    dealer = Dealer(design, lasting)
    found = []
    for (hole, shaft), how in lasting.items():
        for (one, a), (other, b) in dealer.deal(hole, shaft):
            inside, outside = dealer.axis(hole, a), dealer.axis(shaft, b)
            if inside and outside and inside.inside and not outside.inside and one != other:
                pair = Joined(inside, outside, f"{hole} on {shaft}")
                stack = _stack(design, one[0], other[0])
                found.append(Link("fit", one, other, (pair,), how, stack=stack))
    return found


def _stack(design: SizedDesign, first: str, second: str) -> tuple[Axis, Axis] | None:
    """Lands of two parts that one loop adds up, so that they stand one after the other along the axis."""
    for loop in design.loops:
        for one in loop.terms:
            for other in loop.terms:
                a, b = one.name.split("."), other.name.split(".")
                if (
                    (a[0], b[0]) == (first, second)
                    and one.factor * other.factor > 0
                    and len(a) == len(b) == 3
                ):
                    axes = axis_of(design.part(first).shape, a[1]), axis_of(design.part(second).shape, b[1])
                    if axes[0] and axes[1]:
                        return axes[0], axes[1]
    return None


def _threads(design: SizedDesign) -> list[Link]:
    pairs = [(one.inside, one.outside) for one in design.threads]
    dealer = Dealer(design, pairs)
    found = []
    for relation in design.threads:
        for (one, a), (other, b) in dealer.deal(relation.inside, relation.outside):
            inside, outside = dealer.axis(relation.inside, a), dealer.axis(relation.outside, b)
            if inside and outside and one != other:
                joined = Joined(inside, outside, f"{relation.inside} on {relation.outside}")
                lasting = "bonded" if relation.locked == "adhesive" else ""
                engaged = 0.0 if relation.locked == "shoulder" else relation.engaged
                found.append(Link("thread", one, other, (joined,), lasting, engaged))
    return found


def _seats(design: SizedDesign) -> list[Link]:
    """Bought parts in a bore, or on a land, that shares a figure of their table; a nut or a screw by its thread."""
    dealer = Dealer(design, [(seat.bought, seat.seat) for seat in design.seats])
    found = []
    for seat in design.seats:
        for (one, _), (other, b) in dealer.deal(seat.bought, seat.seat):
            part, place = dealer.part(seat.bought), dealer.axis(seat.seat, b)
            if part is None or part.envelope is None or place is None or one == other:
                continue
            own = axis_of_bought(part.envelope, inside=not place.inside)
            kind: Kind = "thread" if seat.figure == "thread_dia" else "fit"
            if place.inside:
                joined = Joined(place, own, f"{seat.seat} on {seat.bought}")
                found.append(Link(kind, other, one, (joined,)))
            else:
                joined = Joined(own, place, f"{seat.bought} on {seat.seat}")
                found.append(Link(kind, one, other, (joined,)))
    return found


def _contacts(design: SizedDesign) -> list[Link]:
    """Points in their cups, the tip at the cup's own tip."""
    pairs = [
        (one.second, one.first) if one.second else (one.first, one.second)
        for one in design.contacts
        if one.way == "point in cup"
    ]
    dealer = Dealer(design, pairs)
    found = []
    for first, second in pairs:
        for (one, a), (other, b) in dealer.deal(first, second):
            axes = [(one, dealer.axis(first, a)), (other, dealer.axis(second, b))]
            cup = next(((piece, axis) for piece, axis in axes if axis and axis.inside), None)
            tip = next(((piece, axis) for piece, axis in axes if axis and not axis.inside), None)
            if cup and tip and cup[1] and tip[1] and one != other:
                joined = Joined(cup[1], tip[1], f"{second} in {first}")
                found.append(Link("fit", cup[0], tip[0], (joined,)))
    return found


def _same_threads(design: SizedDesign, named: set[Piece], found: list[Link]) -> list[Link]:
    """A thread that only one other part of the design takes, for pieces that no relation places on it."""
    men: list[tuple[Part, str, str]] = []
    women: list[tuple[Part, str, str]] = []
    for part in design.parts:
        if isinstance(part.shape, TurnedShape):
            men += [
                (part, one.name, one.thread)
                for one in part.shape.outside
                if isinstance(one, Cylinder) and one.thread
            ]
            holes: tuple[Bore | CircleHoles, ...] = (*part.shape.bores, *part.shape.circle_holes)
            women += [(part, one.name, one.thread) for one in holes if one.thread]
    joined = {frozenset((link.first[0], link.second[0])) for link in found}
    links = []
    for part, land, thread in men:
        mates = [one for one in women if one[2] == thread and one[0].name != part.name]
        rivals = [one for one in men if one[2] == thread]
        if len(mates) != 1 or len(rivals) != 1 or frozenset((part.name, mates[0][0].name)) in joined:
            continue
        mate, hole, _ = mates[0]
        outside, inside = axis_of(part.shape, land), axis_of(mate.shape, hole)
        if outside and inside and part.count == mate.count == 1:
            pair = Joined(inside, outside, f"{mate.name}.{hole} on {part.name}.{land}")
            why = f"both have the thread {thread}, which no third part has; no relation says it"
            links.append(Link("thread", (mate.name, 1), (part.name, 1), (pair,), guessed=why))
    return links
