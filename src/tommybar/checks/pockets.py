"""Pockets and slots of plates: the floor under them, and the metal to the edges, holes and one another."""

from __future__ import annotations

import math
from itertools import combinations

from tommybar.checks.checked import Checked, at_least
from tommybar.checks.walls import LEAST_WALL, LEAST_WEB
from tommybar.design.model import Part, SizedDesign
from tommybar.findings import Finding
from tommybar.shapes.features import PlateFace, PlateShape, Pocket, Slot
from tommybar.shapes.holes import drawn_hole
from tommybar.shapes.plates import face_size
from tommybar.shop.model import Shop

REMEDY = "Make it smaller or shallower, move it, or give the plate more metal there."
Box = tuple[float, float, float, float]  # least x, least y, greatest x, greatest y on the face [mm]


def look(design: SizedDesign, shop: Shop) -> Checked:
    """Every plate with pockets or slots."""
    found: list[Finding | None] = []
    for part in design.parts:
        if isinstance(part.shape, PlateShape):
            cuts: list[Pocket | Slot] = [*part.shape.pockets, *part.shape.slots]
            for cut in cuts:
                found += [_floor(part, part.shape, cut), _edge(part, part.shape, cut)]
                found += _to_holes(part, part.shape, cut)
            for one, other in combinations(cuts, 2):
                if one.face == other.face:
                    found.append(_between(part, one, other))
    return Checked(tuple(one for one in found if one is not None))


def _box(cut: Pocket | Slot) -> Box:
    if isinstance(cut, Pocket):
        half = cut.length.value / 2, cut.width.value / 2
    else:
        a, straight = math.radians(cut.angle), cut.long / 2 - cut.width.value / 2
        half = (
            abs(straight * math.cos(a)) + cut.width.value / 2,
            abs(straight * math.sin(a)) + cut.width.value / 2,
        )
    return cut.x - half[0], cut.y - half[1], cut.x + half[0], cut.y + half[1]


def _floor(part: Part, shape: PlateShape, cut: Pocket | Slot) -> Finding | None:
    if cut.depth is None:
        return None
    left = face_size(shape, cut.face).depth - cut.depth
    place = {"part": part.name, "feature": cut.name, "remedy": REMEDY}
    return at_least(627, f"The floor of {cut.name} is thin", left, LEAST_WEB, **place)


def _edge(part: Part, shape: PlateShape, cut: Pocket | Slot) -> Finding | None:
    """The wall to the nearest side of a rectangle; an end that lies beyond it is open and meant so."""
    face: PlateFace = cut.face
    size, box = face_size(shape, face), _box(cut)
    walls = [one for one in (box[0], box[1], size.width - box[2], size.height - box[3]) if one > 1e-6]
    if shape.outline is not None or not walls:
        return None
    place = {"part": part.name, "feature": cut.name, "remedy": REMEDY}
    return at_least(628, f"The wall beside {cut.name} is thin", min(walls), LEAST_WALL, **place)


def _to_holes(part: Part, shape: PlateShape, cut: Pocket | Slot) -> list[Finding | None]:
    found: list[Finding | None] = []
    box = _box(cut)
    for hole in shape.holes:
        inside = box[0] <= hole.x <= box[2] and box[1] <= hole.y <= box[3]
        if hole.face != cut.face or inside or hole.tilt or (isinstance(cut, Slot) and cut.angle % 90):
            continue
        aside = max(box[0] - hole.x, hole.x - box[2], 0.0), max(box[1] - hole.y, hole.y - box[3], 0.0)
        left = math.hypot(*aside) - max(drawn_hole(hole.dia, hole.thread), hole.sink_dia) / 2
        words = f"Little metal between {cut.name} and {hole.name}"
        place = {"part": part.name, "feature": cut.name, "remedy": REMEDY}
        found.append(at_least(629, words, left, LEAST_WALL, **place))
    return found


def _between(part: Part, one: Pocket | Slot, other: Pocket | Slot) -> Finding | None:
    """Metal between two cuts of one face; those that overlap are one shape and meant so."""
    a, b = _box(one), _box(other)
    aside = max(a[0] - b[2], b[0] - a[2], 0.0), max(a[1] - b[3], b[1] - a[3], 0.0)
    left = math.hypot(*aside)
    if left <= 1e-6:
        return None
    words = f"Little metal between {one.name} and {other.name}"
    place = {"part": part.name, "feature": one.name, "remedy": REMEDY}
    return at_least(629, words, left, LEAST_WALL, **place)
