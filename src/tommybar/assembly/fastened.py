"""Nuts, washers and screws of the screw joints, each where the stack of what it holds puts it."""

from __future__ import annotations

from dataclasses import replace

from tommybar.assembly.axes import Axis, axis_of, axis_of_bought, count_of
from tommybar.assembly.joined import Joined, Kind, Link, Piece
from tommybar.design.joints import ScrewJoint
from tommybar.design.model import Part, SizedDesign
from tommybar.facts.fasteners import washer
from tommybar.refusals import Refusal
from tommybar.shapes.solids.frames import HERE


class _Store:
    """The bought pieces of a design, given out one after another."""

    def __init__(self, design: SizedDesign) -> None:
        self.parts = {part.name: part for part in design.parts}
        self.given: dict[str, int] = {}
        seated = {one.bought for one in design.seats}
        self.free = [part for part in design.parts if part.envelope and part.name not in seated]

    def next_of(self, part: Part | None) -> Piece | None:
        """The next piece of a part; None when all are given out."""
        if part is None:
            return None
        number = self.given.get(part.name, 0) + 1
        if number > part.count:
            return None
        self.given[part.name] = number
        return part.name, number

    def bought(self, standard: str, size: str) -> Part | None:
        """The bought part of that standard and size, unless a relation of its own seats it."""
        wanted = f"{standard} {size}"
        alike = [one for one in self.free if " ".join(one.bought.replace("×", "x").split()) == wanted]
        return next((one for one in alike if self.given.get(one.name, 0) < one.count), None)


def fastened(design: SizedDesign) -> list[Link]:
    """Bought screws, washers and nuts of the joints, and made studs through what their nuts hold."""
    store = _Store(design)
    used: dict[str, int] = {}
    holes = [one.through[0] for one in design.screw_joints if one.through]
    found: list[Link] = []
    for joint in design.screw_joints:
        if not joint.through:
            continue
        if joint.stud:
            found += _on_stud(design, joint, store)
            continue
        found += _screwed(design, joint, holes, used, store)
    return found


def _screwed(
    design: SizedDesign, joint: ScrewJoint, holes: list[str], used: dict[str, int], store: _Store
) -> list[Link]:
    """A bought screw in each hole that falls to this joint, with its washers and its nut."""
    hole = joint.through[0]
    name, _, feature = hole.partition(".")
    part, bought = store.parts.get(name), store.parts.get(_screw_of(design, joint))
    use = used[hole] = used.get(hole, 0) + 1
    if part is None or bought is None or bought.envelope is None:
        return []
    equal, uses = count_of(part.shape, feature), holes.count(hole)
    places = part.count * equal
    found: list[Link] = []
    for copy in range(max(1, places // uses)):
        place = (use - 1 + copy * uses) % places
        axis = axis_of(part.standing, feature, place % equal)
        screw = store.next_of(bought)
        if axis is None or screw is None:
            continue
        one = (name, place // equal + 1)
        under, thick = _washer_piece(joint, 0, store)
        seat = replace(axis, high=axis.high - joint.seat + thick) if axis.high_open else axis
        joined = Joined(seat, seat, f"{bought.name} in {hole}")
        guessed = "" if joint.bought else f"it is the only {joint.head} {joint.screw} of the design"
        found.append(Link("screw head", one, screw, (joined,), guessed=guessed))
        shank = Axis(HERE, 0.0, dict(bought.envelope.sizes)["length"], False, True, False, False, True)
        if under:
            found.append(_about(under, "fit", screw, bought.name, shank, 0.0, store))
        if joint.nut:
            found += _beyond(joint, screw, bought.name, shank, thick + joint.grip, 1, store)
    return found


def _on_stud(design: SizedDesign, joint: ScrewJoint, store: _Store) -> list[Link]:
    """What a stud goes through, from its shoulder on, then the washer and the nut."""
    owner, _, land = joint.stud.partition(".")
    part = store.parts[owner]
    axis = axis_of(part.shape, land)
    if axis is None:
        return []
    found: list[Link] = []
    for copy in range(part.count):
        stud, far = (owner, copy + 1), 0.0
        for hole in joint.through:
            name, _, feature = hole.partition(".")
            held = store.parts[name]
            inside = axis_of(held.shape, feature, copy % count_of(held.shape, feature))
            if inside is None:
                continue
            if inside.entry == "high":  # the shoulder bears where the hole is drilled from
                inside = replace(inside, low_stop=False)
            words = f"{hole} on {joint.stud}"
            piece = (name, min(held.count, copy // count_of(held.shape, feature) + 1))
            found.append(Link("fit", piece, stud, (Joined(inside, _from(axis, far, inside.long), words),)))
            far += inside.long
        found += _beyond(joint, stud, joint.stud, axis, far, 0, store)
    return found


def _beyond(
    joint: ScrewJoint, screw: Piece, name: str, shank: Axis, far: float, place: int, store: _Store
) -> list[Link]:
    """The washer and the nut that come ``far`` along a shank [mm]."""
    found = []
    flat, thick = _washer_piece(joint, place, store)
    if flat:
        found.append(_about(flat, "fit", screw, name, shank, far, store))
    nut = store.next_of(store.bought(joint.nut, joint.screw))
    if nut:
        found.append(_about(nut, "thread", screw, name, shank, far + thick, store))
    return found


def _washer_piece(joint: ScrewJoint, place: int, store: _Store) -> tuple[Piece | None, float]:
    """The washer at that place of a joint and its thickness [mm]; nothing where there is none."""
    if place >= len(joint.washers):
        return None, 0.0
    try:
        thick = washer(joint.screw, joint.washers[place]).thickness
    except Refusal:
        return None, 0.0
    return store.next_of(store.bought(joint.washers[place], joint.screw)), thick


def _about(piece: Piece, kind: Kind, screw: Piece, name: str, shank: Axis, far: float, store: _Store) -> Link:
    """A nut or washer on a shank."""
    envelope = store.parts[piece[0]].envelope
    assert envelope is not None
    own = axis_of_bought(envelope, inside=True)
    return Link(kind, piece, screw, (Joined(own, _from(shank, far, own.long), f"{piece[0]} on {name}"),))


def _from(shank: Axis, far: float, long: float) -> Axis:
    """The stretch of a shank ``far`` from its shoulder, as if the shoulder stood there [mm]."""
    if shank.low_stop or not shank.high_stop:
        low = shank.low + far
        return replace(shank, low=low, high=low + long, low_stop=True, high_stop=False, high_open=True)
    high = shank.high - far
    return replace(shank, low=high - long, high=high, low_stop=False, high_stop=True, low_open=True)


def _screw_of(design: SizedDesign, joint: ScrewJoint) -> str:
    """The bought screw of a joint: the one it names, or the only one of its head and size."""
    if joint.bought:
        return joint.bought
    alike = [one.name for one in design.parts if one.bought.startswith(f"{joint.head} {joint.screw} ")]
    return alike[0] if len(alike) == 1 else ""
