"""Screws that are made here and turned with a tool: a slot across their end, or flats for a spanner."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from tommybar.assembly.axes import axis_of
from tommybar.assembly.driving_tools import OFFSET, Column, DrivingTool, for_hexagon, for_slot
from tommybar.assembly.links import Piece
from tommybar.assembly.placing import Assembly, Placement
from tommybar.checks.screw_seats import OVER, Seat, joined_on
from tommybar.design.joints import ThreadRelation
from tommybar.design.model import Part, SizedDesign
from tommybar.refusals import Refusal
from tommybar.shapes.features import Flats, TurnedShape
from tommybar.shapes.solids.frames import Frame, shifted, within

NONE = Column("the screw itself", 0.0, 0.0, 0.0)


def made_screws(design: SizedDesign, whole: Assembly) -> Iterator[Seat | Refusal]:
    """Each placed piece of a turned part that a relation screws into another and that has a slot or flats."""
    for relation in design.threads:
        name = relation.outside.partition(".")[0]
        part = next((one for one in design.parts if one.name == name), None)
        if part is None or not isinstance(part.shape, TurnedShape):
            continue
        try:
            for one in whole.placements:
                if one.part == name:
                    yield from _of_piece(design, whole, relation, part, part.shape, one)
        except Refusal as refusal:
            yield refusal


def _of_piece(
    design: SizedDesign,
    whole: Assembly,
    relation: ThreadRelation,
    part: Part,
    shape: TurnedShape,
    one: Placement,
) -> Iterator[Seat]:
    land = axis_of(shape, relation.outside.partition(".")[2])
    joined = _there(design, whole, relation, one, within(one.frame, land.at) if land else one.frame)
    if not joined:
        return  # it is screwed into none that is placed
    for slot in shape.head_slots:
        at = OVER if slot.face == "A" else shifted(z=shape.length.value)
        tools = tuple(for_slot(relation.thread, 0.0))
        yield _seat(part, slot.name, one, within(one.frame, at), tools, joined)
    for flats in shape.flats:
        if flats.count in (2, 4, 6) and flats.across is not None:
            spanners = tuple(_spanners(flats))
            yield _seat(part, flats.name, one, one.frame, spanners, joined)


def _spanners(flats: Flats) -> Iterator[DrivingTool]:
    """An open spanner on two, four or six flats; turned over it takes them again after so much less."""
    assert flats.across is not None
    swing = 360.0 / flats.count - 2 * OFFSET
    for tool in for_hexagon(flats.across.value, flats.start, flats.end):
        if tool.kind == "open spanner" and tool.arm is not None:
            yield replace(tool, arm=replace(tool.arm, swing=swing))


def _seat(
    part: Part,
    feature: str,
    one: Placement,
    way: Frame,
    tools: tuple[DrivingTool, ...],
    joined: tuple[Piece, ...],
) -> Seat:
    piece = (one.part, one.instance)
    return Seat(f"{part.name}.{feature}", "screw", piece, True, (way,), NONE, tools, piece, joined)


def _there(
    design: SizedDesign, whole: Assembly, relation: ThreadRelation, one: Placement, axis: Frame
) -> tuple[Piece, ...]:
    """What must stand when it is turned: what it is screwed into; all there is when it is turned to adjust it."""
    mates = joined_on(design, whole, (relation.inside,), axis)
    if relation.travel > 0 and mates:
        return tuple((other.part, other.instance) for other in whole.placements)
    return mates
