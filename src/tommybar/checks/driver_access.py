"""Whether a key, a screwdriver, a spanner or a socket gets at each screw and nut when it goes in, and turns there."""

from __future__ import annotations

import math

from tommybar.assembly.access import Obstacle, Obstruction, in_column, obstacle, obstructed
from tommybar.assembly.driving_tools import Column, DrivingTool
from tommybar.assembly.links import Piece, links_of
from tommybar.assembly.order import Order, order_of
from tommybar.assembly.placing import Assembly
from tommybar.checks.loose import UNSETTLED, loose_pieces
from tommybar.checks.made_screws import made_screws
from tommybar.checks.named_walls import wall_named
from tommybar.checks.screw_seats import BESIDE, Seat, seats
from tommybar.design.model import SizedDesign
from tommybar.findings import Finding
from tommybar.refusals import Refusal
from tommybar.shapes.solids.frames import HERE, Frame, back, within

SOURCE = "solids where they stand when the screw goes in; keys of ISO 2936, sockets and spanners of the usual sizes"

CLOSE = 0.3  # metal this near a nut's face is what it bears on [mm]


def look(design: SizedDesign, whole: Assembly) -> tuple[Finding, ...]:
    """Every head, nut and grub screw, against its own part and against what stands when it goes in."""
    found: dict[Finding, None] = {}
    order = order_of(design, whole) if whole.placements else None
    loose = loose_pieces(design, whole)
    fixed = _fastenings(design)
    beside = _neighbours(design)
    for seat in (*seats(design, whole), *made_screws(design, whole)):
        if isinstance(seat, Refusal):
            found[_not_judged(seat)] = None
            continue
        mine = _passed_over(whole, seat, fixed, beside)
        one = _judged(design, whole, seat, order, loose, mine)
        if one is not None:
            found[one] = None
    return tuple(_once(list(found)))


def _judged(
    design: SizedDesign,
    whole: Assembly,
    seat: Seat,
    order: Order | None,
    loose: frozenset[Piece],
    mine: frozenset[Piece],
) -> Finding | None:
    """What keeps every tool, or every tool but the last kinds, from one screw."""
    best: tuple[tuple[bool, float], list[Obstruction], DrivingTool | None, Frame] | None = None
    ways = [(way, _obstacles(design, whole, seat, order, way, mine)) for way in seat.ways]
    for way, around in [one for one in ways if not _bears(seat, one[1])] or ways:
        failed, fits = _tried(seat, around)
        if not failed:
            return None
        key = (fits is None, -max(one.figure / one.bound for one in failed))
        if best is None or key < best[0]:
            best = key, failed, fits, way
    assert best is not None
    _, failed, fits, way = best
    if fits is not None and fits.kind == _kind_of(seat, failed[0]):
        return None
    return _told(design, whole, seat, failed, fits, way, loose)


def _bears(seat: Seat, around: list[Obstacle]) -> bool:
    """Whether a nut that might be driven from either side has metal close on this one: it bears there."""
    head = seat.head
    close = Column("", head.radius, head.high, head.high + CLOSE, head.hollow)
    return len(seat.ways) > 1 and head.radius > 0 and in_column("", close, around) is not None


def _tried(seat: Seat, around: list[Obstacle]) -> tuple[list[Obstruction], DrivingTool | None]:
    """Each tool that does not get there, up to the first that does.

    A head that is a piece of the assembly is compared with the others there.
    """
    head = in_column("", seat.head, around) if seat.head.radius and seat.screw is None else None
    if head is not None:
        return [head], None
    failed: list[Obstruction] = []
    for tool in seat.tools:
        met = obstructed(tool, around)
        if met is None:
            return failed, tool
        failed.append(met)
    return failed, None


def _kind_of(seat: Seat, met: Obstruction) -> str:
    return next((one.kind for one in seat.tools if one.name == met.tool), "")


def _fastenings(design: SizedDesign) -> frozenset[str]:
    """Bought screws, nuts and washers."""
    kinds = ("screw", "nut", "washer", "bolt")
    return frozenset(
        part.name
        for part in design.parts
        if part.envelope is not None and any(kind in part.envelope.kind for kind in kinds)
    )


def _neighbours(design: SizedDesign) -> dict[Piece, set[Piece]]:
    """What each piece is joined to."""
    found: dict[Piece, set[Piece]] = {}
    for link in links_of(design):
        found.setdefault(link.first, set()).add(link.second)
        found.setdefault(link.second, set()).add(link.first)
    return found


def _passed_over(
    whole: Assembly, seat: Seat, fixed: frozenset[str], beside: dict[Piece, set[Piece]]
) -> frozenset[Piece]:
    """Fastenings of the same parts, and those on the screw's own axis: heads beside heads are looked at by themselves."""
    joined = {seat.own, *seat.joined}
    found = {seat.screw} if seat.screw else set()
    for one in whole.placements:
        piece = (one.part, one.instance)
        if one.part not in fixed:
            continue
        told = within(back(seat.ways[0]), one.frame)
        coaxial = abs(told[10]) > 1 - 1e-6 and math.hypot(told[3], told[7]) < BESIDE
        if coaxial or joined & beside.get(piece, set()):
            found.add(piece)
    return frozenset(found)


def _obstacles(
    design: SizedDesign, whole: Assembly, seat: Seat, order: Order | None, way: Frame, mine: frozenset[Piece]
) -> list[Obstacle]:
    """The own part, and the other pieces that stand when the screw goes in."""
    found = []
    if not seat.placed:
        shape = design.part(seat.own[0]).shape
        return [obstacle(seat.own, shape, HERE, way)] if shape is not None else []
    standing = _standing(whole, seat, order)
    for one in whole.placements:
        piece = (one.part, one.instance)
        part = design.part(one.part)
        body = part.shape or part.envelope
        if piece in standing and piece not in mine and body is not None:
            found.append(obstacle(piece, body, one.frame, way))
    return found


def _standing(whole: Assembly, seat: Seat, order: Order | None) -> frozenset[Piece]:
    """What stands together at the first step at which the screw and all that it joins are there."""
    needed = {seat.own, *seat.joined} | ({seat.screw} if seat.screw else set())
    steps = order.steps if order is not None and not order.stuck else ()
    for step in steps:
        if needed <= set(step.standing):
            return frozenset(step.standing)
    return frozenset((one.part, one.instance) for one in whole.placements)


def _told(
    design: SizedDesign,
    whole: Assembly,
    seat: Seat,
    failed: list[Obstruction],
    fits: DrivingTool | None,
    way: Frame,
    loose: frozenset[Piece],
) -> Finding:
    first, rest = failed[0], [one for one in failed[1:] if one.tool != failed[0].tool]
    part, _, feature = seat.hole.partition(".")
    others = [one.piece for one in failed if one.piece != seat.own]
    unsettled = bool(others) and any(piece in loose for piece in (seat.own, *others))
    words = _met(design, whole, seat, first, way)
    also = "".join(f"; {_met(design, whole, seat, one, way, short=True)}" for one in _by_tool(rest))
    if fits is not None:
        text = f"Take a {fits.name} for the {seat.what} at {seat.hole}: {words}{also}."
        severity, number, remedy = (
            "note",
            689,
            f"Have a {fits.name} ready, or give the usual tool its room.",
        )
    elif first.tool:
        text = f"No usual tool turns the {seat.what} at {seat.hole}: {words}{also}"
        text += f"; {UNSETTLED}." if unsettled else "."
        shut = all(one.near for one in failed) and not unsettled
        severity, number, remedy = "stop" if shut else "caution", 686, _remedy(seat, first)
    else:
        text = f"The {seat.what} at {seat.hole} has no room for {words}"
        text += f"; {UNSETTLED}." if unsettled else "."
        severity, number = "caution" if unsettled else "stop", 686
        remedy = "Move the hole or cut the wall back, widen the counterbore, or take a smaller screw."
    figure, bound = (
        (f"{first.figure:.0f} deg", f"{first.bound:.0f} deg")
        if first.swings
        else (f"{first.figure:.2f} mm", f"{first.bound:.2f} mm")
    )
    return Finding(
        number,
        severity,  # type: ignore[arg-type]  # one of three literals
        text,
        part,
        feature,
        figure=figure,
        bound=bound,
        remedy=remedy,
        source=SOURCE,
    )


def _by_tool(met: list[Obstruction]) -> list[Obstruction]:
    """One obstruction for each tool, the first; the same room that two tools want is told once."""
    first = list({one.tool: one for one in reversed(met)}.values())[::-1]
    same = {(one.what, one.piece, one.figure, one.bound): one for one in reversed(first)}
    return list(same.values())[::-1]


def _met(
    design: SizedDesign, whole: Assembly, seat: Seat, one: Obstruction, way: Frame, short: bool = False
) -> str:
    """Which tool meets what, with its two figures."""
    stands = whole.of(*one.piece) if seat.placed else None
    wall = wall_named(design.part(one.piece[0]), stands.frame if stands else HERE, way, one.at)
    tool = f"a {one.tool}" if one.tool else ""
    if one.swings:
        return f"{tool} swings over {one.figure:.0f} deg beside {wall}, and {one.bound:.0f} deg are wanted"
    if short:
        return f"{tool} wants {one.bound:.2f} mm beside {wall}, and has {one.figure:.2f} mm"
    who = f"{tool} has no room for {one.what}" if tool else one.what
    verb = ": " if tool else " meets "
    return (
        f"{who}{verb}{wall} is {one.figure:.2f} mm from the screw's axis, and {one.bound:.2f} mm are wanted"
    )


def _remedy(seat: Seat, first: Obstruction) -> str:
    if first.swings:
        return "Turn the part that is in the way, drive the screw before it is put on, or take a longer screw or key."
    return (
        "Move the hole from the wall, cut the wall back, drive the screw in another order, or take a smaller screw "
        "or one with a hexagon socket."
    )


def _once(found: list[Finding]) -> list[Finding]:
    """Equal holes said once: what differs only in the number of the hole is left out."""
    seen: dict[tuple[str, ...], Finding] = {}
    for one in found:
        stem, _, tail = one.feature.rpartition("_")
        name = stem if tail.isdigit() else one.feature
        key = (str(one.number), one.part, name, one.figure, one.bound, one.severity)
        seen.setdefault(key, one)
    return list(seen.values())


def _not_judged(refusal: Refusal) -> Finding:
    return Finding(
        691,
        "note",
        f"Access to one of the screws is not looked at: {refusal}",
        figure="not looked at",
        bound="a size in the tables of tools",
        remedy="See on the drawing that its tool gets on and turns.",
        source=SOURCE,
    )
