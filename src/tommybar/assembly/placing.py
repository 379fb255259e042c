"""Where each piece of an assembly stands, from its fits, loops, threads and screws.

One piece is laid down; the others follow along the links. Where a link leaves
several ways, all are kept until later links tell them apart: pieces must lie
on their common axes, shoulders must not stand in faces, and end floats are
as small as the shoulders allow. What even then stands open is drawn in one way
and said; what nothing places is left out and said.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from tommybar.assembly.axes import is_round
from tommybar.assembly.beside import beside
from tommybar.assembly.clocking import clocked, clocked_across
from tommybar.assembly.exploded import middle_of, pulled_apart
from tommybar.assembly.fitting import NEAR, Meeting, Way, apart_in_stack, meeting, ways
from tommybar.assembly.links import Joined, Link, Piece, links_of, pieces_of
from tommybar.assembly.standing import faces_told, gap_of, moved_to_faces, on_foot, turned_to_faces
from tommybar.design.model import Part, SizedDesign
from tommybar.shapes.solids.frames import HERE, Frame, Vector, back, direction, point, within

KEPT = 48  # ways of standing that are carried on at once
RANK = {"screw": 0, "lasting": 1, "fit": 2, "thread": 3, "screw head": 4, "belt": 5, "face": 6}


@dataclass(frozen=True)
class Placement:
    """One piece where it stands.

    ``frame`` is three rows of a rotation and a shift [mm], from the part's own
    frame to that of the assembly. ``apart`` is how far it is moved when the
    assembly is pulled apart [mm], ``way`` the direction it leaves its neighbour
    in, ``order`` its place in the order in which the pieces are set down, from
    1. ``held`` names what places it, ``open`` what no relation says.
    """

    part: str
    instance: int
    frame: Frame
    apart: Vector
    way: Vector
    order: int
    held: str = ""
    open: str = ""


@dataclass(frozen=True)
class Unplaced:
    """A piece that cannot be placed, and why."""

    part: str
    instance: int
    reason: str


@dataclass(frozen=True)
class Assembly:
    """All pieces: those that stand, those that nothing places, and what was taken for granted."""

    placements: tuple[Placement, ...]
    unplaced: tuple[Unplaced, ...]
    said: tuple[str, ...]

    def of(self, part: str, instance: int = 1) -> Placement | None:
        """The placement of one piece."""
        return next((p for p in self.placements if (p.part, p.instance) == (part, instance)), None)


@dataclass(frozen=True)
class _State:
    """One way in which the pieces so far may stand."""

    frames: tuple[Frame, ...]
    opens: tuple[str, ...]
    wrong: float


def placed(design: SizedDesign) -> tuple[Placement, ...]:
    """Where each piece stands; see :func:`assembled` for what cannot be placed."""
    return assembled(design).placements


def assembled(design: SizedDesign) -> Assembly:
    """Where each piece stands, what cannot be placed and why, and what was taken for granted."""
    links = links_of(design)
    pieces = pieces_of(design)
    drawn = [one for one in pieces if _drawable(design.part(one[0]))]
    joined = [link for link in links if link.first in drawn and link.second in drawn]
    if not drawn:
        return Assembly((), tuple(_why(design, one, links) for one in pieces), ())
    order, by = _sequence(drawn, joined, design.foot.partition(".")[0])
    first = on_foot(design) if order[0][0] == design.foot.partition(".")[0] else HERE
    states = [_State((first,), ("",), 0.0)]
    done = [order[0]]
    for piece in order[1:]:
        states = _carried_on(states, done, piece, by[piece], joined, design)
        done.append(piece)
    best = states[0]
    frames = dict(zip(order, best.frames, strict=True))
    opens = dict(zip(order, best.opens, strict=True))
    placements = _placements(order, by, frames, opens, design)
    standing = set(order)
    unplaced = tuple(_why(design, one, links) for one in pieces if one not in standing)
    said = list(dict.fromkeys(_taken_for_granted(link) for link in joined if link.guessed))
    said += [f"{_name(one)}: {words}." for one, words in opens.items() if words]
    said += _disagreements(joined, frames)
    return Assembly(placements, unplaced, tuple(said))


def _taken_for_granted(link: Link) -> str:
    first, second = link.first[0], link.second[0]
    if link.kind == "screw head":
        return f"{second} are drawn in {first}: {link.guessed}."
    return f"{first} stands on {second}: {link.guessed}."


def _drawable(part: Part) -> bool:
    return part.shape is not None or part.envelope is not None


def _name(piece: Piece) -> str:
    return piece[0] if piece[1] == 1 else f"{piece[0]} {piece[1]}"


def _why(design: SizedDesign, piece: Piece, links: tuple[Link, ...]) -> Unplaced:
    part = design.part(piece[0])
    if not _drawable(part):
        return Unplaced(*piece, "it is bought, and no table gives its size")
    if any(piece in (link.first, link.second) for link in links):
        return Unplaced(*piece, "it is joined only to pieces that are not placed")
    return Unplaced(*piece, "no relation says what it is joined to")


def _sequence(pieces: list[Piece], links: list[Link], foot: str) -> tuple[list[Piece], dict[Piece, Link]]:
    """The order in which pieces are set down, and the link that places each."""

    def weight(piece: Piece) -> tuple[int, int]:
        screwed = sum(1 for link in links if link.kind == "screw" and link.second == piece)
        return screwed, sum(1 for link in links if piece in (link.first, link.second))

    first = max(pieces, key=lambda one: (one == (foot, 1), *weight(one), -pieces.index(one)))
    order = [first]
    by: dict[Piece, Link] = {}
    while True:
        nexts = [
            (RANK["lasting" if link.lasting else link.kind], number, other, link)
            for number, link in enumerate(links)
            for here, other in ((link.first, link.second), (link.second, link.first))
            if here in order and other not in order
        ]
        if not nexts:
            return order, by
        _, _, piece, link = min(nexts, key=lambda one: one[:2])
        order.append(piece)
        by[piece] = link


def _carried_on(
    states: list[_State],
    done: list[Piece],
    piece: Piece,
    link: Link,
    links: list[Link],
    design: SizedDesign,
) -> list[_State]:
    """Every state with one piece more, the best kept."""
    onto_first = link.second == piece
    anchor = done.index(link.first if onto_first else link.second)
    closing = [
        one
        for one in links
        if one is not link and piece in (one.first, one.second) and {one.first, one.second} <= {*done, piece}
    ]
    told_faces = faces_told(piece, dict.fromkeys(done, HERE), links)
    offered = ways(link, bool(told_faces)) or (Way(HERE, "its holes do not lie over those it is screwed to"),)
    found: list[_State] = []
    for state in states:
        for way in offered:
            told = way.second if onto_first else back(way.second)
            told = clocked(told, done[anchor], piece, link, design)
            here = within(state.frames[anchor], told)
            frames = dict(zip(done, state.frames, strict=True))
            here = clocked_across(here, piece, link, frames, design)
            opened = "" if link.kind == "screw" and _round(design, link) else way.open
            here, opened = _faced(piece, here, link, opened, frames, told_faces)
            if link.kind in ("fit", "thread") and not onto_first and not told_faces:
                here = beside(link, here, frames, links)
            frames |= {piece: here}
            kept = [*closing, link] if told_faces else closing  # what a face moved may have left its joint
            wrong = state.wrong + sum(_wrong(one, frames) for one in kept)
            found.append(_State((*state.frames, here), (*state.opens, opened), wrong))
    parts = [design.part(name) for name, _ in [*done, piece]]

    def high(state: _State) -> float:
        return sum(point(f, middle_of(part))[2] for f, part in zip(state.frames, parts, strict=True))

    ordered = sorted(
        enumerate(found), key=lambda one: (round(one[1].wrong, 3), -round(high(one[1]), 3), one[0])
    )
    return [state for _, state in ordered[:KEPT]]


def _round(design: SizedDesign, link: Link) -> bool:
    """Whether a piece held by one screw is round about it, so that its turn says nothing."""
    return len(link.pairs) == 1 and any(
        is_round(design.part(name).standing, axis)
        for (name, _), axis in ((link.first, link.pairs[0].hole), (link.second, link.pairs[0].shaft))
    )


def _faced(
    piece: Piece, here: Frame, link: Link, opened: str, frames: dict[Piece, Frame], faces: list[Link]
) -> tuple[Frame, str]:
    """A piece turned and moved as its link leaves it free, until its faces stand as they are told."""
    pair = link.pairs[0]
    axis = within(here, (pair.hole if link.first == piece else pair.shaft).at)
    others = [one for one in faces if one is not link]
    if not others:
        return here, opened
    turns = link.kind in ("fit", "thread") or (link.kind == "screw" and len(link.pairs) == 1)
    turned = False
    if turns:
        here, turned = turned_to_faces(piece, here, axis, frames, others)
    across = [direction(axis, (1.0, 0.0, 0.0)), direction(axis, (0.0, 1.0, 0.0))]
    free = across if link.kind == "face" else [direction(axis, (0.0, 0.0, 1.0))]
    here, left = moved_to_faces(piece, here, free, frames, others)
    return here, "" if (turned if link.kind == "screw" else not left) else opened


def _wrong(link: Link, frames: dict[Piece, Frame]) -> float:
    """How badly two placed pieces agree with a link between them."""
    if link.kind == "screw head":
        return 0.0
    if link.kind == "face":
        gap, askew = gap_of(link, frames[link.first], frames[link.second])
        return 10 * abs(gap - link.apart) + 1000 * askew
    if link.kind == "belt":
        met = meeting(link.pairs[0], frames[link.first], frames[link.second])
        return 10 * abs(met.aside - link.apart) + 1000 * met.askew
    total = 0.0
    if link.stack:
        total += 5 * apart_in_stack(link.stack, frames[link.first], frames[link.second])
    for pair in link.pairs:
        met = _best_meeting(pair, link, frames)
        total += 10 * met.aside + 1000 * met.askew
        if link.kind != "screw":
            total += sum(max(0.0, -gap) * 10 for gap in met.gaps)
            total += 0.1 * min((abs(gap) for gap in met.gaps), default=0.0)
    return total


def _placements(
    order: list[Piece],
    by: dict[Piece, Link],
    frames: dict[Piece, Frame],
    opens: dict[Piece, str],
    design: SizedDesign,
) -> tuple[Placement, ...]:
    """Placements with the way each piece leaves: along its link's axis, away from what it is joined to."""
    moved = pulled_apart(order, by, frames, design)
    found: list[Placement] = []
    for number, piece in enumerate(order, start=1):
        apart, way = moved[piece]
        held = "; ".join(pair.words for pair in by[piece].pairs) if piece in by else "laid down first"
        found.append(Placement(*piece, frames[piece], apart, way, number, held, opens[piece]))
    place = {part.name: n for n, part in enumerate(design.parts)}
    return tuple(sorted(found, key=lambda one: (place[one.part], one.instance)))


def _disagreements(links: list[Link], frames: dict[Piece, Frame]) -> list[str]:
    """Links that the pieces as placed do not keep."""
    found = []
    for link in links:
        if link.kind == "screw head" or link.first not in frames or link.second not in frames:
            continue
        if link.kind == "face":
            gap, askew = gap_of(link, frames[link.first], frames[link.second])
            if abs(gap - link.apart) > NEAR or askew > 1e-4:
                what = (
                    "look another way" if askew > 1e-4 else f"stand {gap:.4g} mm apart, not {link.apart:g} mm"
                )
                found.append(f"{link.pairs[0].words}: their faces {what}.")
            continue
        for pair in link.pairs:
            met = _best_meeting(pair, link, frames)
            if link.kind == "belt":
                if abs(met.aside - link.apart) > NEAR or met.askew > 1e-4:
                    found.append(
                        f"{pair.words}: their axes lie {met.aside:.4g} mm apart, not {link.apart:g} mm."
                    )
                continue
            if met.aside > NEAR or met.askew > 1e-4:
                found.append(f"{pair.words}: their axes lie {met.aside:.4g} mm apart.")
            elif link.kind != "screw" and any(gap < -NEAR for gap in met.gaps):
                found.append(f"{pair.words}: the shoulder stands {-min(met.gaps):.4g} mm in the other part.")
    return found


def _best_meeting(pair: Joined, link: Link, frames: dict[Piece, Frame]) -> Meeting:
    """How a pair meets; holes of a pattern may each take any screw of it."""
    partners = link.pairs if link.kind == "screw" else (pair,)
    met = [
        meeting(replace(pair, shaft=one.shaft), frames[link.first], frames[link.second]) for one in partners
    ]
    return min(met, key=lambda one: one.aside)
