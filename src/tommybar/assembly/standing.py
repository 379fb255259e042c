"""Pieces that stand where the design says it: face against face, middle on middle, loosely through a hole."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

from tommybar.assembly.axes import Axis, axis_of_bought
from tommybar.assembly.dealing import Dealer
from tommybar.assembly.joined import Joined, Link, Piece
from tommybar.design.joints import StandsRelation
from tommybar.design.model import SizedDesign
from tommybar.shapes.faces import Face, faces_of
from tommybar.shapes.solids.frames import (
    Frame,
    Vector,
    back,
    direction,
    frame,
    point,
    shifted,
    turned,
    within,
)

SQUARE = 1e-6  # sine up to which a face lies square to an axis


def face_links(design: SizedDesign) -> list[Link]:
    """Faces that stand against one another, or level."""
    wanted = [one for one in design.stands if one.way in ("against", "level")]
    dealer = Dealer(design, [(one.first, one.second) for one in wanted])
    found = []
    for relation in wanted:
        for (one, _), (other, _) in dealer.deal(relation.first, relation.second):
            first, second = _face(design, relation.first), _face(design, relation.second)
            if first and second and one != other:
                axes = _outward(first), _outward(second)
                pair = Joined(*axes, f"{relation.first} on {relation.second}")
                found.append(
                    Link("face", one, other, (pair,), apart=relation.apart, level=relation.way == "level")
                )
    return found


def belt_links(design: SizedDesign) -> list[Link]:
    """Pulleys that a belt joins: in one plane, as far apart as their centres."""
    dealer = Dealer(design, [(one.driver, one.driven) for one in design.belts])
    found = []
    for belt in design.belts:
        for (one, a), (other, b) in dealer.deal(belt.driver, belt.driven):
            first, second = _pulley(design, dealer, belt.driver, a), _pulley(design, dealer, belt.driven, b)
            if first and second and one != other:
                pair = Joined(first, second, f"{belt.driver} on {belt.driven}")
                found.append(Link("belt", one, other, (pair,), apart=belt.centres, towards=belt.towards))
    return found


def _pulley(design: SizedDesign, dealer: Dealer, name: str, number: int) -> Axis | None:
    """The axis of a land that a belt runs on, or of a bought pulley."""
    envelope = design.part(name.partition(".")[0]).envelope
    return axis_of_bought(envelope, inside=False) if envelope else dealer.axis(name, number)


def loose_links(design: SizedDesign, known: Sequence[Link]) -> list[Link]:
    """Lands that go loosely through a hole, and what is drawn middle on middle."""
    wanted = [one for one in design.stands if one.way in ("centred", "through")]
    named = {pair.words for link in known for pair in link.pairs}
    dealer = Dealer(design, [_hole_first(design, one) for one in wanted])
    found = []
    for relation in wanted:
        hole, land = _hole_first(design, relation)
        for (one, a), (other, b) in dealer.deal(hole, land):
            inside, outside = dealer.axis(hole, a), dealer.axis(land, b)
            if inside and outside and one != other and f"{hole} on {land}" not in named:
                pair = Joined(inside, outside, f"{hole} on {land}")
                found.append(
                    Link(
                        "fit",
                        one,
                        other,
                        (pair,),
                        through=relation.way == "through",
                        centred=relation.way == "centred",
                    )
                )
    return found


def centred(design: SizedDesign, links: Sequence[Link]) -> list[Link]:
    """The links, those marked whose hole and land are to stand middle on middle."""
    pairs = [_hole_first(design, one) for one in design.stands if one.way == "centred"]
    words = {f"{hole} on {land}" for hole, land in pairs}
    return [
        replace(one, centred=True) if any(pair.words in words for pair in one.pairs) else one for one in links
    ]


def _hole_first(design: SizedDesign, one: StandsRelation) -> tuple[str, str]:
    axis = Dealer(design, []).axis(one.first, 0)
    return (one.first, one.second) if axis and axis.inside else (one.second, one.first)


def _face(design: SizedDesign, name: str) -> Face | None:
    part, _, face = name.partition(".")
    return faces_of(design.part(part).standing).get(face)


def _outward(face: Face) -> Axis:
    """An axis that begins in the middle of a face and points out of the metal."""
    x = (1.0, 0.0, 0.0) if abs(face.out[0]) < 0.5 else (0.0, 1.0, 0.0)
    along = sum(a * b for a, b in zip(x, face.out, strict=True))
    u = tuple(a - along * b for a, b in zip(x, face.out, strict=True))
    size = math.sqrt(sum(v * v for v in u))
    across: Vector = (u[0] / size, u[1] / size, u[2] / size)
    z = face.out
    y = (
        z[1] * across[2] - z[2] * across[1],
        z[2] * across[0] - z[0] * across[2],
        z[0] * across[1] - z[1] * across[0],
    )
    return Axis(frame(across, y, z, face.middle), 0.0, 0.0, False)


def gap_of(link: Link, first: Frame, second: Frame) -> tuple[float, float]:
    """How far two faces stand apart [mm], and the sine by which they are askew; 2 when one looks the wrong way."""
    one, other = within(first, link.pairs[0].hole.at), within(second, link.pairs[0].shaft.at)
    out, facing = direction(one, (0.0, 0.0, 1.0)), direction(other, (0.0, 0.0, 1.0))
    along = sum(a * b for a, b in zip(out, facing, strict=True)) * (1.0 if link.level else -1.0)
    a, b = point(one, (0.0, 0.0, 0.0)), point(other, (0.0, 0.0, 0.0))
    gap = sum((a[n] - b[n]) * facing[n] for n in range(3))
    askew = 2.0 if along < 0 else math.sqrt(max(0.0, 1.0 - along * along))
    return gap, askew


def faces_told(piece: Piece, frames: dict[Piece, Frame], links: Sequence[Link]) -> list[Link]:
    """The links of a piece's faces to pieces that stand already."""
    return [
        link
        for link in links
        if link.kind == "face"
        and (
            (link.first == piece and link.second in frames) or (link.second == piece and link.first in frames)
        )
    ]


def turned_to_faces(
    piece: Piece, here: Frame, axis: Frame, frames: dict[Piece, Frame], links: Sequence[Link]
) -> tuple[Frame, bool]:
    """``here`` turned about z of ``axis`` until a face that lies along that axis looks as it must.

    Gives back whether a face said so.
    """
    for link in links:
        mine, theirs = link.pairs[0].hole, link.pairs[0].shaft
        if piece == link.second:
            mine, theirs = theirs, mine
        other = link.second if piece == link.first else link.first
        sign = 1.0 if link.level else -1.0
        own = _seen_along(axis, within(here, mine.at), 1.0)
        wanted = _seen_along(axis, within(frames[other], theirs.at), sign)
        if own is None or wanted is None:
            continue
        turn = within(within(axis, turned(round(wanted - own, 9))), back(axis))
        return within(turn, here), True
    return here, False


def _seen_along(axis: Frame, face: Frame, sign: float) -> float | None:
    """Where a face looks about an axis [deg]; None when it does not look square to it."""
    x, y, z = direction(within(back(axis), face), (0.0, 0.0, sign))
    return None if abs(z) > SQUARE else math.degrees(math.atan2(y, x))


def moved_to_faces(
    piece: Piece, here: Frame, free: Sequence[Vector], frames: dict[Piece, Frame], links: Sequence[Link]
) -> tuple[Frame, list[Vector]]:
    """``here`` moved along the directions that are free until its faces stand as their relations say.

    Gives back the directions along which no face says where.
    """
    left = list(free)
    for link in links:
        other = link.second if piece == link.first else link.first
        ends = (here, frames[other]) if piece == link.first else (frames[other], here)
        gap, askew = gap_of(link, *ends)
        facing = direction(within(ends[1], link.pairs[0].shaft.at), (0.0, 0.0, 1.0))
        if askew > SQUARE or not any(_along(one, facing) for one in left):
            continue
        move = (link.apart - gap) * (1.0 if piece == link.first else -1.0)
        here = within(shifted(*(move * one for one in facing)), here)
        left = [one for one in left if not _along(one, facing)]  # the first that says it is kept
    return here, left


def _along(one: Vector, other: Vector) -> bool:
    return abs(abs(sum(a * b for a, b in zip(one, other, strict=True))) - 1.0) < SQUARE


def on_foot(design: SizedDesign) -> Frame:
    """The frame of the piece that the assembly stands on: the face named lies below, at z = 0."""
    part, _, name = design.foot.partition(".")
    faces = faces_of(design.part(part).standing)
    face = faces.get(name or ("bottom" if "bottom" in faces else "face_b"))
    if face is None:
        return shifted()
    down = _outward(face).at
    # the face's own directions, turned over so that its z looks down
    turn = within(
        frame((1.0, 0.0, 0.0), (0.0, -1.0, 0.0), (0.0, 0.0, -1.0)),
        back((*down[:3], 0.0, *down[4:7], 0.0, *down[8:11], 0.0)),
    )
    return within(shifted(z=-point(turn, face.middle)[2]), turn)
