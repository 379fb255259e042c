"""In which order an assembly goes together, whether it comes apart again, and what stays for good.

Pieces are taken off one after another, each along a straight line that is free
of what is left; the order of assembly is that one backwards. Where no single
piece comes off, the smallest group that comes off together is taken and then
taken apart by itself. Directions are those of the axes of the joints.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

from tommybar.assembly.blocking import Blocking
from tommybar.assembly.links import Link, Piece, links_of
from tommybar.assembly.placing import Assembly, assembled
from tommybar.design.model import SizedDesign
from tommybar.shapes.solids.frames import Frame, Vector, direction, within

NEAR = 0.02  # faces that stand nearer than this touch [mm]
DOES = {
    "pressed": "press",
    "bonded": "bond",
    "soldered": "solder",
    "screw": "screw",
    "thread": "screw",
    "screw head": "drive",
    "fit": "slide",
    "face": "set",
    "belt": "set",
}


@dataclass(frozen=True)
class Step:
    """One step of the assembly: what is brought to what, along which way, in words."""

    number: int
    pieces: tuple[Piece, ...]  # more than one when they are together already
    onto: tuple[Piece, ...]  # those it is joined to that stand already
    way: Vector  # the direction it moves in when it is put on
    words: str
    lasting: str = ""  # "pressed", "bonded", "soldered": it does not come off again
    standing: tuple[Piece, ...] = ()  # what stands together after it, these pieces with it


@dataclass(frozen=True)
class Order:
    """The order of assembly.

    ``stuck`` are pieces that no straight way brings together; ``trapped``
    groups of pieces that come apart before their lasting joints are made and
    not afterwards; ``lasting`` tells each joint that stays for good.
    """

    steps: tuple[Step, ...]
    stuck: tuple[Piece, ...]
    trapped: tuple[tuple[Piece, ...], ...]
    lasting: tuple[str, ...]

    @property
    def possible(self) -> bool:
        """Whether it can be put together."""
        return not self.stuck


Taken = tuple[tuple[Piece, ...], Vector, tuple[Piece, ...]]  # what comes off, along which way, what is left


def order_of(design: SizedDesign, whole: Assembly | None = None) -> Order:
    """The order in which the placed pieces of a design go together."""
    return _order_of(design, whole or assembled(design))


@lru_cache(maxsize=8)
def _order_of(design: SizedDesign, whole: Assembly) -> Order:
    links = [
        link
        for link in links_of(design)
        if whole.of(*link.first) is not None and whole.of(*link.second) is not None
    ]
    placed = sorted(whole.placements, key=lambda one: one.order)
    pieces = [(one.part, one.instance) for one in placed]
    blocking = Blocking(design, whole.placements, links)
    ways = _ways(links, blocking.frames)
    groups = _groups(pieces, [link for link in links if link.lasting])
    taken: list[Taken] = []
    left = _peel(groups, ways, blocking, taken)
    trapped: tuple[tuple[Piece, ...], ...] = ()
    stuck: tuple[Piece, ...] = ()
    if left:  # once its lasting joints are made it does not come apart: put it together piece by piece
        trapped = tuple(one for one in groups if set(one) <= set(left))
        taken = []
        stuck = _peel([(one,) for one in pieces], ways, blocking, taken)
    else:
        for group in reversed(groups):
            stuck += _peel([(one,) for one in group], ways, blocking, taken)
    steps = _steps(taken, links, design)
    return Order(steps, tuple(sorted(stuck)), trapped, _lasting(links, design))


def _ways(links: Sequence[Link], frames: dict[Piece, Frame]) -> list[Vector]:
    """Both ways along the axis of every joint, doubles left out."""
    found: dict[Vector, None] = {}
    for link in links:
        for pair in link.pairs:
            x, y, z = direction(within(frames[link.first], pair.hole.at), (0.0, 0.0, 1.0))
            along = (round(x, 6) + 0.0, round(y, 6) + 0.0, round(z, 6) + 0.0)
            found[along] = None
            found[-along[0] + 0.0, -along[1] + 0.0, -along[2] + 0.0] = None
    return sorted(found, reverse=True)


def _peel(
    units: list[tuple[Piece, ...]], ways: list[Vector], blocking: Blocking, taken: list[Taken]
) -> tuple[Piece, ...]:
    """Take units off until one is left; what cannot be parted is given back."""
    left = list(units)
    first = left[0] if left else ()
    while len(left) > 1:
        best: tuple[tuple[int, bool, bool, int], list[tuple[Piece, ...]], Vector] | None = None
        for way in ways:
            for place, unit in enumerate(left):
                together = _carried(unit, left, way, blocking, len(best[1]) if best else len(left) - 1)
                if together is None:
                    continue
                key = (len(together), first in together, unit[0] in blocking.screws, -place)
                if best is None or key < best[0]:
                    best = (key, together, way)
        if best is None:
            return tuple(piece for unit in left for piece in unit)
        _, off, way = best
        left = [unit for unit in left if unit not in off]
        taken.append((tuple(p for unit in off for p in unit), way, tuple(p for unit in left for p in unit)))
        if len(off) > 1:
            stuck = _peel(off, ways, blocking, taken)
            if stuck:
                return stuck
    return ()


def _carried(
    unit: tuple[Piece, ...],
    left: list[tuple[Piece, ...]],
    way: Vector,
    blocking: Blocking,
    most: int,
) -> list[tuple[Piece, ...]] | None:
    """A unit with all that it pushes before it along a way; None when that is more than ``most`` units.

    What a screw clamps moves only together, and with the screw, for as long as that is in.
    """
    clamped = [
        [one for one in left if screw in one or any(piece in held for piece in one)]
        for screw, held in blocking.held.items()
        if any(screw in one for one in left) and screw not in unit
    ]
    found = [unit]
    for one in found:
        tied = [other for group in clamped if one in group for other in group]
        for other in left:
            if other in found:
                continue
            if other in tied or any(blocking.blocks(q, p, way) for p in one for q in other):
                found.append(other)
                if len(found) > most:
                    return None
    return found if len(found) < len(left) else None


def _groups(pieces: list[Piece], links: Sequence[Link]) -> list[tuple[Piece, ...]]:
    """Pieces that lasting joints make one."""
    group = {piece: {piece} for piece in pieces}
    for link in links:
        one = group[link.first] | group[link.second]
        for piece in one:
            group[piece] = one
    return list(dict.fromkeys(tuple(one for one in pieces if one in group[piece]) for piece in pieces))


def _steps(taken: list[Taken], links: Sequence[Link], design: SizedDesign) -> tuple[Step, ...]:
    found = []
    for number, (off, way, left) in enumerate(reversed(taken), start=1):
        joints = [
            link
            for link in links
            if ((link.first in off and link.second in left) or (link.second in off and link.first in left))
            and _touching(link)
        ]
        joints.sort(
            key=lambda link: link.kind != "thread"
        )  # what is screwed in is screwed, whatever it slides in
        onto = tuple(dict.fromkeys(k.second if k.first in off else k.first for k in joints))
        lasting = next((link.lasting for link in joints if link.lasting), "")
        back = (-way[0] + 0.0, -way[1] + 0.0, -way[2] + 0.0)
        words = _words(off, onto, joints, lasting, design)
        found.append(Step(number, off, onto, back, words, lasting, (*off, *left)))
    return tuple(found)


def _touching(link: Link) -> bool:
    """Whether a link joins two pieces; faces that only stand so far from one another do not."""
    return link.kind != "face" or (abs(link.apart) < NEAR and not link.level)


def _words(
    off: tuple[Piece, ...],
    onto: tuple[Piece, ...],
    joints: Sequence[Link],
    lasting: str,
    design: SizedDesign,
) -> str:
    what = _named(off, design)
    if not joints:
        return f"Set {what} beside the rest."
    deed = DOES[lasting or joints[0].kind].capitalize()
    if joints[0].kind == "belt":
        return f"Set {what} in line with {_named(onto, design)}, and lay the belt round both."
    if joints[0].kind == "screw" and not lasting and not _screwed(joints, design):
        return f"Set {what} on {_named(onto, design)}, hole over hole."
    if joints[0].kind == "screw head":
        return f"Drive {what} through {_named(onto, design)}."
    where = "into" if any(k.first in onto and k.kind in ("fit", "thread") for k in joints) else "on"
    also = " They are together already." if len(off) > 1 else ""
    stays = f" It is {lasting} for good." if lasting else ""
    return f"{deed} {what} {where} {_named(onto, design)}.{also}{stays}"


def _screwed(joints: Sequence[Link], design: SizedDesign) -> bool:
    """Whether screws of the design hold these, and not only a pattern of holes that coincide."""
    held = {name for one in design.screw_joints for name in (*one.through, one.into)}
    held |= {name for one in design.screws for name in (*one.through, one.into)}
    names = {pair.words.partition(" on ")[0] for joint in joints for pair in joint.pairs}
    return bool(held & names)


def _named(pieces: tuple[Piece, ...], design: SizedDesign) -> str:
    names = [
        f"the {part.replace('_', ' ')}"
        + (f" ({n} of {design.part(part).count})" if design.part(part).count > 1 else "")
        for part, n in pieces
    ]
    return names[0] if len(names) == 1 else ", ".join(names[:-1]) + f" and {names[-1]}"


def _lasting(links: Sequence[Link], design: SizedDesign) -> tuple[str, ...]:
    return tuple(
        f"{_named((link.second,), design)} in {_named((link.first,), design)}: {link.lasting}"
        for link in links
        if link.lasting
    )
