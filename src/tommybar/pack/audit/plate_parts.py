"""Plates, sheet and wire built from their printed figures; places count from the datum that the sheet marks."""

from __future__ import annotations

import math

from tommybar.facts.threads import thread
from tommybar.pack.audit.reading import NOUGHT, Figure, Reading, worked_out
from tommybar.pack.audit.turned_parts import Built
from tommybar.pack.plates.holes import groups_of, letter
from tommybar.pack.plates.pitch import PitchCircle, circles_of
from tommybar.shapes.features import PlateShape, RolledRing, SheetShape, SpringShape, WireShape

ENDS = {
    "open ends": "open",
    "closed ends, not ground": "closed",
    "closed ends, ground square": "ground",
    "a hook at each end": "hooks",
    "straight legs": "legs",
}
WAYS = {"right": 0.0, "up": 90.0, "left": 180.0, "down": 270.0}


def rebuilt_plate(shape: PlateShape, read: Reading, body: str = "plate") -> Built:
    """Every size of a plate as the sheet gives it; ``body`` is what its own sizes are said of.

    Of ``shape`` only names, letters and kinds are looked at: what the views
    show without a figure.
    """
    made: Built = {}
    overall = shape.outline is None
    for size in ("length", "width", "thickness"):
        if overall or size == "thickness" or body == "blank":
            made[body, size] = read.take(body, size)
    _holes(shape, read, made)
    _cuts(shape, read, made)
    _outline(shape, read, made)
    return made


def _holes(shape: PlateShape, read: Reading, made: Built) -> None:
    seen = {hole.name: letter(n) for n, group in enumerate(groups_of(shape)) for hole in group}
    letters: dict[str, list[str]] = {}
    circles = {name: one for one in circles_of(shape) for name in one.names}
    for hole in shape.holes:
        tag = read.word(hole.name, "tag").rstrip("0123456789") or seen[hole.name]
        letters.setdefault(tag, []).append(hole.name)
    for group in letters.values():
        said = next((one for one in group if read.has(one, "depth")), group[0])
        if len(group) > 1 or read.has(said, "count"):
            made[said, "of a letter"] = read.take(said, "count")
        for name in group:
            screw = read.word(said, "thread")
            made[name, "thread"] = screw
            made[name, "dia"] = Figure(thread(screw).major) if screw else read.take(said, "dia")
            made[name, "left"] = "left" if read.word(said, "hand") == "LH" else ""
            made[name, "depth"] = None if read.word(said, "depth") == "through" else read.take(said, "depth")
            made[name, "bottom"] = "flat" if read.word(said, "bottom") else "drill"
            for size in ("sink_dia", "sink_depth", "sink_angle", "tilt"):
                made[name, size] = read.maybe(said, size)
            made[name, "towards"] = _towards(read, said)
            made[name, "flat"] = "flat" if read.word(said, "flat") else ""
            face = read.word(said, "face").removeprefix(", from the ") or "top"
            made[name, "face"] = face
            if name in circles and read.has(circles[name].names[0], "circle"):
                _on_circle(name, circles[name], read, made)
                continue
            for axis in "xyz":
                if axis != {"top": "z", "bottom": "z", "front": "y", "back": "y"}.get(face, "x"):
                    made[name, axis] = _place(read, name, axis)
            if screw:
                for size in ("tapping_drill", "drilled"):
                    made[name, size] = read.maybe(said, size)


def _place(read: Reading, name: str, axis: str) -> Figure:
    """A place from the datum; one that has no figure stands on the datum itself, as the view shows."""
    return read.maybe(name, axis) or NOUGHT


def _on_circle(name: str, circle: PitchCircle, read: Reading, made: Built) -> None:
    """The place of a hole from the diameter and the middle of its circle and the angle of the first hole."""
    first = circle.names[0]
    across, start = read.take(first, "circle"), read.maybe(first, "first") or NOUGHT
    turn = 360.0 * circle.names.index(name) / len(circle.names)
    for axis, way in (("x", math.cos), ("y", math.sin)):
        middle = _place(read, f"{first} circle", axis)
        made[name, axis] = worked_out(
            lambda m, d, a, way=way: m + d / 2 * way(math.radians(a + turn)), middle, across, start
        )


def _towards(read: Reading, name: str) -> Figure | None:
    words = read.word(name, "towards")
    for way, degrees in WAYS.items():
        if words == f"going in towards the {way} of the face":
            return Figure(degrees)
    return read.maybe(name, "towards") if words else None


def _cuts(shape: PlateShape, read: Reading, made: Built) -> None:
    def depth(name: str) -> Figure | None:
        return None if read.word(name, "depth") == "through" else read.take(name, "depth")

    def place(name: str, axes: str) -> None:
        for axis in axes:
            made[name, axis] = _place(read, name, axis)

    for slot in shape.slots:
        name = slot.name
        made[name, "width"], made[name, "long"] = read.take(name, "width"), read.take(name, "long")
        made[name, "depth"], made[name, "angle"] = depth(name), read.maybe(name, "angle")
        if _in_a_row(read, name, "width"):
            read.told(name, "ends")
        place(name, _axes(slot.face))
    for pocket in shape.pockets:
        name = pocket.name
        for size in ("length", "width", "corner"):
            made[name, size] = read.take(name, size)
        made[name, "depth"] = depth(name)
        place(name, _axes(pocket.face))
    for step in shape.steps:
        side = read.word(step.name, "side").removeprefix("along the ").removesuffix(" side:")
        made[step.name, "side"] = side if _in_a_row(read, step.name, "wide") else step.side
        made[step.name, "wide"] = read.take(step.name, "wide")
        made[step.name, "depth"] = read.take(step.name, "depth")
    for vee in shape.vees:
        made[vee.name, "included"] = read.take(vee.name, "included")
        made[vee.name, "width"] = read.take(vee.name, "width")
        place(vee.name, _axes(vee.face)[1 if vee.along == "x" else 0])
    for tail in shape.dovetails:
        made[tail.name, "tail"] = "tail" if read.word(tail.name, "tail").startswith("left") else ""
        for size in ("narrow", "depth", "angle"):
            made[tail.name, size] = read.take(tail.name, size)
        place(tail.name, "y" if tail.along == "x" else "x")
    for slit in shape.slits:
        made[slit.name, "side"] = read.word(slit.name, "side").removeprefix("saw cut from the ")
        made[slit.name, "width"] = read.take(slit.name, "width")
        made[slit.name, "long"] = read.take(slit.name, "long")
        place(slit.name, "x" if slit.side in ("front", "back") else "y")
    for edge in shape.edges:
        made[edge.name, "size"] = read.take(edge.name, "size")
    for mark in shape.engravings:
        for size in ("divisions", "over", "short"):
            made[mark.name, size] = read.take(mark.name, size)
        made[mark.name, "long"] = read.maybe(mark.name, "long")
        made[mark.name, "long_every"] = read.maybe(mark.name, "long_every")
    for fan in shape.rays:
        for size in ("inner", "outer", *(f"angle {n + 1}" for n in range(len(fan.angles)))):
            made[fan.name, size] = read.take(fan.name, size)
        place(fan.name, "xy")


def _in_a_row(read: Reading, name: str, size: str) -> bool:
    """Whether a width stands in words of the table; beside a view it stands alone, and the view shows the rest."""
    return any(one.feature == name and one.size == size and " wide" in one.words for one in read.said)


def _axes(face: str) -> str:
    """The two axes of the plate in which a place on a face is told."""
    return {"top": "xy", "bottom": "xy", "front": "xz", "back": "xz"}.get(face, "yz")


def _outline(shape: PlateShape, read: Reading, made: Built) -> None:
    outline = shape.outline
    if outline is None:
        corner = read.maybe("outline", "corner")
        made["outline", "corner"] = corner
        made["outline", "corners"] = read.take("outline", "corners") if corner else None
        return
    if outline.form == "disc":
        made["outline", "disc"] = read.take("outline", "disc")
        return
    if outline.form == "bosses" and len(outline.bosses) > 1:
        read.told("outline", "flanks")
    many = outline.bosses if outline.form == "bosses" else outline.corners
    for n in range(1, len(many) + 1):
        name = f"end_{n}" if outline.form == "bosses" else f"corner_{n}"
        for axis in "xy":
            made[name, axis] = _place(read, name, axis)
        made[name, "radius"] = read.maybe(name, "radius")


def rebuilt_sheet(shape: SheetShape, read: Reading) -> Built:
    """A sheet part: its flat blank, the bends in it and the legs that they leave."""
    from tommybar.pack.bent.strip import blank_of

    made = rebuilt_plate(blank_of(shape), read, "blank")
    for bend in shape.bends:
        way = -1.0 if read.told(bend.name, "way") == "down," else 1.0
        made[bend.name, "angle"] = worked_out(lambda a, w=way: w * a, read.take(bend.name, "angle"))
        made[bend.name, "radius"] = read.take(bend.name, "radius")
        made[bend.name, "x"] = read.take(bend.name, "x")
    for n in range(1, len(shape.legs) + 1):
        made["legs", f"leg_{n}"] = read.take("legs", f"leg_{n}")
    return made


def rebuilt_ring(shape: RolledRing, read: Reading) -> Built:
    """A rolled ring: inside, section and joint."""
    made: Built = {("ring", size): read.take("ring", size) for size in ("inside", "thickness")}
    if not shape.round:
        made["ring", "width"] = read.take("ring", "width")
    made["ring", "gap"] = read.maybe("ring", "gap")
    joint = read.word("ring", "joint")
    made["ring", "joint"] = {"butted": "butt", "lapped": "lap"}.get(joint, joint)
    return made


def rebuilt_spring(shape: SpringShape, read: Reading) -> Built:
    """A wound spring."""
    made: Built = {
        ("spring", size): read.take("spring", size) for size in ("wire", "outside", "active", "total", "free")
    }
    made["spring", "leg"] = read.maybe("spring", "leg")
    made["spring", "kind"] = read.word("spring", "kind").removesuffix(" spring,")
    made["spring", "left"] = "left" if read.told("spring", "hand").endswith("left-handed") else ""
    made["spring", "ends"] = ENDS.get(read.told("spring", "ends"), "")
    return made


def rebuilt_wire(shape: WireShape, read: Reading) -> Built:
    """Bent wire: legs and bends in their order."""
    made: Built = {("wire", "dia"): read.take("wire", "dia")}
    for n in range(1, len(shape.legs) + 1):
        made[f"leg_{n}", "long"] = read.take(f"leg_{n}", "long")
    for n in range(1, len(shape.bends) + 1):
        name = f"bend_{n}"
        way = -1.0 if read.told(name, "way") == "to the right," else 1.0
        made[name, "angle"] = worked_out(lambda a, w=way: w * a, read.take(name, "angle"))
        made[name, "radius"] = read.take(name, "radius")
    return made
