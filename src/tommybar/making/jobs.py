"""What there is to cut on a turned part, as jobs a set-up can reach or not.

A job is one feature, or one edge of it, with the places it needs. All z are
distances from face A (part frame) [mm].
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from tommybar.shapes.features import Arc, Bore, Cylinder, Face, Land, TurnedShape
from tommybar.shapes.outside import arc_of

JobKind = Literal[
    "face",
    "outside",
    "groove",
    "bore",
    "recess",
    "edge",
    "round",
    "bore edge",
    "face groove",
    "bore taper",
    "cup",
    "centre",
    "bore groove",
]


@dataclass(frozen=True)
class Job:
    """One thing to cut. ``side`` is the free face it needs, or "" for either."""

    name: str  # "face A", "rim", "rim edge B", "bore", "bore edge A"
    kind: JobKind
    feature: str
    start: float
    end: float
    side: Face | Literal[""]
    size: float = 0.0  # of an edge [mm]
    as_supplied: bool = False  # the bar's own surface


def largest(feature: Land) -> float:
    """Largest finished diameter of an outside feature [mm]."""
    if isinstance(feature, Cylinder):
        return feature.dia.value
    ends = max(feature.start_dia, feature.end_dia)
    if isinstance(feature, Arc) and feature.bulge == "out":
        arc = arc_of(feature)
        if feature.start < arc.centre[0] < feature.end:
            return max(ends, 2 * (arc.centre[1] + arc.radius))
    return ends


def largest_outside(shape: TurnedShape) -> float:
    """Largest finished diameter of the part [mm]."""
    return max(largest(feature) for feature in shape.outside)


def _edges(feature: Cylinder) -> list[Job]:
    name, found = feature.name, []
    for side, z, edge, rounded in (
        ("A", feature.start, feature.edge_start, feature.round_start),
        ("B", feature.end, feature.edge_end, feature.round_end),
    ):
        face: Face = "A" if side == "A" else "B"
        if edge > 0:
            found.append(Job(f"{name} edge {face}", "edge", name, z, z, face, edge))
        if rounded > 0:
            found.append(Job(f"{name} round {face}", "round", name, z, z, face, rounded))
    return found


def keeps_bore(bore: Bore, hollow: float) -> bool:
    """Whether a through bore is left as the tube brings it: of its size, no thread, no limits."""
    plain = bore.through and not bore.thread and not bore.dia.toleranced and not bore.after
    return hollow > 0 and plain and abs(bore.dia.value - hollow) < 1e-6


def comes_out(bore: Bore, shape: TurnedShape, free: Face) -> float:
    """How deep below the free face a through bore comes out: at the end, or in a wider hole of the other face [mm]."""
    wider = [
        one.depth
        for one in shape.bores
        if not one.through and one.face != free and one.dia.value > bore.dia.value + 1e-6
    ]
    return shape.length.value - max(wider, default=0.0)


def bore_span(bore: Bore, length: float) -> tuple[float, float]:
    """Where a bore begins and ends, from face A [mm]."""
    if bore.through:
        return 0.0, length
    return (0.0, bore.depth) if bore.face == "A" else (length - bore.depth, length)


def mouth_level(shape: TurnedShape, bore: Bore, face: Face) -> float:
    """How deep below a face the mouth of a bore lies: on the floor of the wider bore or taper that it opens into [mm]."""
    floors = [
        one.depth
        for one in shape.bores
        if one.face == face and not one.through and one.dia.value > bore.dia.value + 1e-9
    ]
    floors += [
        one.start + one.depth
        for one in shape.bore_tapers
        if one.face == face and one.end_dia > bore.dia.value + 1e-9
    ]
    return max(floors, default=0.0)


def _bore_edges(bore: Bore, shape: TurnedShape) -> list[Job]:
    if bore.edge <= 0:
        return []
    found = []
    length = shape.length.value
    faces: tuple[Face, ...] = ("A", "B") if bore.through else (bore.face,)
    for face in faces:
        level = mouth_level(shape, bore, face)
        if not bore.through and level >= bore.depth - 1e-9:
            continue
        z = level if face == "A" else length - level
        found.append(Job(f"{bore.name} edge {face}", "bore edge", bore.name, z, z, face, bore.edge))
    return found


def jobs_of(shape: TurnedShape, bar: float = 0.0, hollow: float = 0.0) -> tuple[Job, ...]:
    """Every job of a turned part.

    ``bar`` is the diameter of a drawn or ground bar whose surface may be left
    as it is [mm]; 0 when everything outside is turned. ``hollow`` is the bore
    that a tube brings with it [mm].
    """
    length = shape.length.value
    found = [
        Job("face A", "face", "face A", 0.0, 0.0, "A"),
        Job("face B", "face", "face B", length, length, "B"),
    ]
    for feature in shape.outside:
        supplied = isinstance(feature, Cylinder) and bar > 0 and abs(feature.dia.value - bar) < 1e-6
        supplied = supplied and isinstance(feature, Cylinder) and not feature.thread and feature.knurl is None
        found.append(
            Job(feature.name, "outside", feature.name, feature.start, feature.end, "", as_supplied=supplied)
        )
        if isinstance(feature, Cylinder):
            found.extend(_edges(feature))
    found.extend(Job(g.name, "groove", g.name, g.start, g.end, "") for g in shape.grooves)
    for bore in shape.bores:
        start, end = bore_span(bore, length)
        found.append(
            Job(
                bore.name,
                "bore",
                bore.name,
                start,
                end,
                "" if bore.through else bore.face,
                as_supplied=keeps_bore(bore, hollow),
            )
        )
        found.extend(_bore_edges(bore, shape))
    sides: dict[str, Face | Literal[""]] = {
        bore.name: "" if bore.through else bore.face for bore in shape.bores
    }
    found.extend(
        Job(one.name, "bore groove", one.name, one.start, one.end, sides[one.on])
        for one in shape.bore_grooves
    )
    found.extend(_sunk("recess", one.name, one.face, one.depth, length) for one in shape.recesses)
    found.extend(_sunk("face groove", one.name, one.face, one.depth, length) for one in shape.face_grooves)
    found.extend(
        _sunk("bore taper", one.name, one.face, one.start + one.depth, length) for one in shape.bore_tapers
    )
    found.extend(_sunk("cup", one.name, one.face, one.mouth / 2, length) for one in shape.cups)
    found.extend(_sunk("centre", one.name, one.face, 2 * one.pilot, length) for one in shape.centres)
    return tuple(found)


def _sunk(kind: JobKind, name: str, face: Face, depth: float, length: float) -> Job:
    """What goes in from a face."""
    if face == "A":
        return Job(name, kind, name, 0.0, depth, "A")
    return Job(name, kind, name, length - depth, length, "B")


def in_card(z: float, length: float, free: Face) -> float:
    """A place of the part frame as the card sees it: 0 at the free face, negative towards the chuck [mm]."""
    return -z if free == "A" else z - length


def span_in_card(start: float, end: float, length: float, free: Face) -> tuple[float, float]:
    """(near, far) of a span in the card frame: near the free face first [mm]."""
    one, two = in_card(start, length, free), in_card(end, length, free)
    return max(one, two), min(one, two)
