"""The sizes that a part has, as plain figures by feature, for comparison with what its sheet says."""

from __future__ import annotations

import math
from dataclasses import fields
from typing import Any

from tommybar.design.written_plates import PLATE_FEATURES
from tommybar.facts.threads import thread
from tommybar.pack.plates.cuts import spot_on
from tommybar.pack.plates.holes import datum_of, groups_of, in_plate
from tommybar.pack.turned.ends import has_end_view
from tommybar.shapes.features import (
    Arc,
    Boss,
    Cone,
    Corner,
    Cylinder,
    Dim,
    PlateShape,
    RolledRing,
    SheetShape,
    SpringShape,
    TurnedShape,
    WireShape,
)
from tommybar.shapes.plates import drilled_depth

Size = float | str | Dim | None
Sizes = dict[tuple[str, str], Size]
UNSAID: dict[
    str, tuple[str, ...]
] = {  # fields that are no figure of a sheet: what views show, what words say
    "Cylinder": (
        "name",
        "edge_angle",
        "edge_end_angle",
        "knurl",
        "edge_start",
        "edge_end",
        "corner_start",
        "corner_end",
    ),
    "Cone": ("name", "given", "limits"),
    "Arc": ("name", "bulge"),
    "Eccentric": ("name",),
    "Groove": ("name",),
    "Bore": ("name", "face", "through", "after"),
    "BoreTaper": ("name", "face"),
    "Cup": ("name", "face", "on"),
    "CentreHole": ("name", "face"),
    "BoreGroove": ("name", "on"),
    "Recess": ("name", "face"),
    "FaceGroove": ("name", "face"),
    "CircleHoles": ("name", "face", "blind", "start", "end"),
    "CrossHole": ("name", "into"),
    "Flats": ("name",),
    "HeadSlot": ("name", "face"),
    "CrossSlot": ("name",),
    "Keyway": ("name",),
    "BoreKeyway": ("name", "on"),
    "Slit": ("name", "face"),
    "Engraving": ("name", "on", "words"),
    "PlateHole": ("name", "x", "y", "place", "towards"),
    "Slot": ("name", "face", "x", "y"),
    "Pocket": ("name", "face", "x", "y"),
    "PlateStep": ("name", "face"),
    "Vee": ("name", "face", "along", "at"),
    "Dovetail": ("name", "along", "at"),
    "PlateEdge": ("name", "face", "round"),
    "PlateSlit": ("name", "at"),
    "Rays": ("name", "x", "y", "angles", "words"),
}
LISTS = (
    "grooves", "bores", "recesses", "circle_holes", "cross_holes", "face_grooves", "bore_tapers", "cups",
    "centres", "bore_grooves", "flats", "head_slots", "cross_slots", "keyways", "bore_keyways", "slits",
    "engravings",
)  # fmt: skip


def _plain(value: Any) -> Size:
    """A field's value as a figure or a word; what is truly absent is None."""
    if isinstance(value, bool):
        return ""
    if value is None or isinstance(value, str | Dim):
        return value
    if isinstance(value, int | float):
        return float(value)
    raise TypeError(f"no figure: {value!r}")


def _fields(one: Any, made: Sizes) -> None:
    unsaid = UNSAID[type(one).__name__]
    for field in fields(one):
        if field.name not in unsaid:
            value = getattr(one, field.name)
            made[one.name, field.name] = field.name if value is True else _plain(value)


def turned_sizes(shape: TurnedShape) -> Sizes:
    """Every size of a turned part."""
    made: Sizes = {("part", "length"): shape.length}
    lands = sorted(shape.outside, key=lambda one: one.start)
    for n, one in enumerate(lands):
        _fields(one, made)
        if isinstance(one, Cylinder):
            before = lands[n - 1].end_dia if n else 0.0
            after = lands[n + 1].start_dia if n + 1 < len(lands) else 0.0
            _edges(one, before, after, made)
            if one.knurl:
                made[one.name, "knurl.pattern"] = one.knurl.pattern
                made[one.name, "knurl.pitch"] = one.knurl.pitch
            if one.finish:
                made[one.name, "finish"] = one.finish.replace("_", " ")
        limits = getattr(one, "limits", None)
        if limits is not None:
            made[one.name, "start_dia" if one.start_dia > one.end_dia else "end_dia"] = limits
    for field in LISTS:
        for feature in getattr(shape, field):
            _fields(feature, made)
    for bore in shape.bores:
        made[bore.name, "edge_angle"] = 45.0 if bore.edge else None
        if bore.through:
            made[bore.name, "bottom"] = ""
    for cone in lands:
        if isinstance(cone, Cone):
            rise = abs(cone.end_dia - cone.start_dia) / 2
            made[cone.name, "half angle"] = math.degrees(math.atan2(rise, cone.end - cone.start))
    made |= {(g.name, "width"): g.end - g.start for g in shape.grooves}
    made |= {(g.name, "width"): g.end - g.start for g in shape.bore_grooves}
    long = shape.length.value
    for f in shape.flats:
        whole = f.start < 1e-6 and f.end > long - 1e-6
        made[f.name, "long"] = None if whole else f.end - f.start
    made |= {(slot.name, "long"): slot.end - slot.start for slot in shape.cross_slots}
    made |= {(key.name, "long"): key.end - key.start for key in shape.keyways}
    for arc in shape.outside:
        if isinstance(arc, Arc) and arc.form in ("fillet", "tip"):
            made[arc.name, "form"] = ""
    for holes in shape.circle_holes:
        if holes.blind:
            made[holes.name, "deep"] = holes.end - holes.start
    _clocking(shape, made)
    return made


def _edges(one: Cylinder, before: float, after: float, made: Sizes) -> None:
    """Chamfers where an edge is free and radii where a corner is; elsewhere there is none."""
    dia = one.dia.value
    for size, beside, angle in (
        ("start", before, one.edge_angle),
        ("end", after, one.edge_end_angle or one.edge_angle),
    ):
        edge, corner = getattr(one, f"edge_{size}"), getattr(one, f"corner_{size}")
        made[one.name, f"edge_{size}"] = edge if beside < dia - 1e-6 else 0.0
        made[one.name, f"edge_{size}_angle"] = angle if edge and beside < dia - 1e-6 else None
        made[one.name, f"corner_{size}"] = corner if beside > dia + 1e-6 else 0.0


def _clocking(shape: TurnedShape, made: Sizes) -> None:
    """Angles counted from the first where nothing on the sheet is told at an angle: the plane of the paper."""
    lists = (shape.cross_holes, shape.cross_slots, shape.keyways, shape.slits, shape.head_slots)
    several = [one for many in lists for one in many]
    if has_end_view(shape) or not several:
        return
    sided = [one for one in several if getattr(one, "walls", 1) == 1 and one not in shape.head_slots]
    first = (sided or several)[0].angle
    for one in several:
        turned = (one.angle - first) % 360.0
        made[one.name, "angle"] = turned if one in sided else turned % 180.0


def plate_sizes(shape: PlateShape, body: str = "plate") -> Sizes:
    """Every size of a plate, places from its datum."""
    made: Sizes = {}
    for size in ("length", "width", "thickness"):
        if shape.outline is None or size == "thickness" or body == "blank":
            made[body, size] = getattr(shape, size)
    x0, y0 = datum_of(shape)

    def put(name: str, face: str, spot: tuple[float, float, float], axes: str = "xyz") -> None:
        across = {"top": "z", "bottom": "z", "front": "y", "back": "y"}.get(face, "x")
        for axis, value in zip("xyz", (spot[0] - x0, spot[1] - y0, spot[2]), strict=True):
            if axis != across and axis in axes:
                made[name, axis] = value

    for field in PLATE_FEATURES:
        for one in getattr(shape, field):
            _fields(one, made)
    for hole in shape.holes:
        made[hole.name, "face"] = hole.face
        made[hole.name, "towards"] = hole.towards % 360.0 if hole.tilt else None
        if hole.sink_angle:
            made[hole.name, "sink_depth"] = None
        if hole.thread and hole.depth is not None:
            made[hole.name, "tapping_drill"] = thread(hole.thread).tapping_drill
            made[hole.name, "drilled"] = drilled_depth(hole, shape)
        put(hole.name, hole.face, in_plate(shape, hole))
    for group in groups_of(shape):
        if len(group) > 1:
            made[group[0].name, "of a letter"] = float(len(group))
    for slot in shape.slots:
        put(slot.name, slot.face, spot_on(shape, slot.face, slot.x, slot.y))
    for pocket in shape.pockets:
        put(pocket.name, pocket.face, spot_on(shape, pocket.face, pocket.x, pocket.y))
    for vee in shape.vees:
        spot = spot_on(shape, vee.face, *((0.0, vee.at) if vee.along == "x" else (vee.at, 0.0)))
        axes = {"top": "xy", "bottom": "xy", "front": "xz", "back": "xz"}.get(vee.face, "yz")
        put(vee.name, vee.face, spot, axes[1 if vee.along == "x" else 0])
    for tail in shape.dovetails:
        spot = spot_on(shape, "top", *((0.0, tail.at) if tail.along == "x" else (tail.at, 0.0)))
        put(tail.name, "top", spot, "y" if tail.along == "x" else "x")
    for fan in shape.rays:
        put(fan.name, "top", spot_on(shape, "top", fan.x, fan.y))
        made |= {(fan.name, f"angle {n}"): angle for n, angle in enumerate(fan.angles, start=1)}
    for slit in shape.slits:
        spot = spot_on(shape, slit.side, slit.at, 0.0)
        put(slit.name, "top", spot, "x" if slit.side in ("front", "back") else "y")
    if shape.outline is None:
        made["outline", "corner"] = shape.corner
        made["outline", "corners"] = 4.0 if shape.corner else None
    elif shape.outline.form == "disc":
        made["outline", "disc"] = 2 * shape.outline.bosses[0].radius
    else:
        bosses = shape.outline.form == "bosses"
        ends: list[Boss | Corner] = [*(shape.outline.bosses if bosses else shape.outline.corners)]
        for n, end in enumerate(ends, 1):
            name = f"end_{n}" if bosses else f"corner_{n}"
            made[name, "x"], made[name, "y"], made[name, "radius"] = end.x - x0, end.y - y0, end.radius
    return made


def bent_sizes(shape: SheetShape | RolledRing | SpringShape | WireShape) -> Sizes:
    """Every size of a part of sheet or wire."""
    if isinstance(shape, RolledRing):
        made: Sizes = {("ring", "inside"): shape.inside, ("ring", "thickness"): shape.thickness}
        if not shape.round:
            made["ring", "width"] = shape.width
        return made | {("ring", "gap"): shape.gap, ("ring", "joint"): shape.joint}
    if isinstance(shape, SpringShape):
        made = {
            ("spring", size): getattr(shape, size)
            for size in ("wire", "outside", "active", "total", "free", "leg", "kind", "ends")
        }
        return made | {("spring", "left"): "left" if shape.left else ""}
    if isinstance(shape, WireShape):
        made = {("wire", "dia"): shape.dia}
        made |= {(f"leg_{n}", "long"): leg for n, leg in enumerate(shape.legs, 1)}
        for n, (radius, angle) in enumerate(shape.bends, 1):
            made[f"bend_{n}", "angle"], made[f"bend_{n}", "radius"] = angle, radius
        return made
    from tommybar.pack.bent.strip import blank_of, middle_of_bend

    made = plate_sizes(blank_of(shape), "blank")
    for n, bend in enumerate(sorted(shape.bends, key=lambda one: one.at)):
        made[bend.name, "angle"], made[bend.name, "radius"] = bend.angle, bend.radius
        made[bend.name, "x"] = middle_of_bend(shape, n)
    return made | {("legs", f"leg_{n}"): leg for n, leg in enumerate(shape.legs, 1)}


__all__ = ["Size", "Sizes", "bent_sizes", "plate_sizes", "turned_sizes"]
