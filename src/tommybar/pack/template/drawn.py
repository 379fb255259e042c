"""What a template shows of a plate: its outline, the centres and rims of its holes, what is milled in its top."""

from __future__ import annotations

import math
from dataclasses import dataclass

from tommybar.facts.threads import thread
from tommybar.pack.bent.strip import blank_of, middle_of_bend
from tommybar.pack.plates.holes import groups_of, in_plate, letter
from tommybar.pack.plates.pitch import circles_of
from tommybar.pack.plates.placed import few_places
from tommybar.shapes.features import PlateShape, SheetShape
from tommybar.shapes.outlines import Line as Straight
from tommybar.shapes.outlines import Loop, circle, plate_loop
from tommybar.shapes.plate_features import pocket_loop, slot_loop

CENTRE = 1.0  # radius of the small circle at a hole's centre [mm]
CROSS = 5.0  # half the length of its cross [mm]
CHORD = 0.4  # of an arc [mm]
Run = tuple[tuple[float, float], ...]


@dataclass(frozen=True)
class Face:
    """Lines of the face in the plate's own millimetres, y up; and the names of its holes with their places."""

    outline: tuple[Run, ...]
    rims: tuple[Run, ...]
    crosses: tuple[Run, ...]
    names: tuple[tuple[str, float, float, float], ...]  # name, x, y, radius
    width: float
    height: float


def face_of(shape: PlateShape | SheetShape) -> Face:
    """The top face of a plate, or the flat blank of a sheet with its bend lines."""
    bends = shape.bends if isinstance(shape, SheetShape) else ()
    folds = [middle_of_bend(shape, n) for n in range(len(bends))] if isinstance(shape, SheetShape) else []
    plate = blank_of(shape) if isinstance(shape, SheetShape) else shape
    rims: list[Run] = []
    crosses: list[Run] = []
    names: list[tuple[str, float, float, float]] = []
    few = few_places(plate)
    on_circles = {name for circle in circles_of(plate) for name in circle.names}
    for number, group in enumerate(groups_of(plate)):
        for n, hole in enumerate(group, 1):
            if hole.face not in ("top", "bottom") or (hole.face == "bottom" and hole.depth is not None):
                continue
            x, y, _ = in_plate(plate, hole)
            radius = (thread(hole.thread).tapping_drill if hole.thread else hole.dia.target) / 2
            rims += [run_of(circle(x, y, radius)), run_of(circle(x, y, min(CENTRE, radius / 2)))]
            reach = max(CROSS, radius + 2.0)
            crosses += [((x - reach, y), (x + reach, y)), ((x, y - reach), (x, y + reach))]
            alone = few or len(group) == 1 or hole.name in on_circles
            name = letter(number) if alone else f"{letter(number)}{n}"
            names.append((name, x, y, radius))
    rims += [run_of(slot_loop(one)) for one in plate.slots if one.face == "top"]
    rims += [run_of(pocket_loop(one)) for one in plate.pockets if one.face == "top"]
    rims += [((x, 0.0), (x, plate.width.value)) for x in folds]
    return Face(
        (run_of(plate_loop(plate)),), tuple(rims), tuple(crosses), tuple(names), plate.length.value,
        plate.width.value,
    )  # fmt: skip


def run_of(loop: Loop) -> Run:
    """A loop as one closed run of points."""
    points: list[tuple[float, float]] = []
    for one in loop:
        steps = 1 if isinstance(one, Straight) else max(2, math.ceil(one.length / CHORD))
        points += [one.at(n / steps) for n in range(steps)]
    points.append(loop[0].at(0.0))
    return tuple((round(x, 4), round(y, 4)) for x, y in points)
