"""Figures of what is sunk in a face: slots, pockets, saw cuts, and the angle of a hole that leans."""

from __future__ import annotations

import math

from tommybar.pack.plates.cuts import spot_on
from tommybar.pack.plates.figures import Deep, Figures, Lean, Round
from tommybar.pack.plates.holes import in_plate
from tommybar.pack.plates.views import leans_along
from tommybar.shapes.features import PlateSlit, Pocket, Slot
from tommybar.shapes.outlines import extent
from tommybar.shapes.plate_features import slot_loop
from tommybar.shapes.plates import face_size

CENTRE = 3.0  # an extension line starts this far before a centre [mm on paper]


def inset_figures(figures: Figures) -> None:
    """Figures of all slots, pockets and slits."""
    shape = figures.shape
    for slot in shape.slots:
        if slot.face == "top" and round(slot.angle % 180.0, 6) in (0.0, 90.0):
            _slot(figures, slot)
    for pocket in shape.pockets:
        if pocket.face == "top":
            _pocket(figures, pocket)
    for slit in shape.slits:
        _slit(figures, slit)


def _slot(figures: Figures, slot: Slot) -> None:
    shape = figures.shape
    top = shape.thickness.value
    size = face_size(shape, slot.face)
    u1, v1, u2, v2 = extent(slot_loop(slot))
    if u1 < -1e-6 or v1 < -1e-6 or u2 > size.width + 1e-6 or v2 > size.height + 1e-6:
        return  # one that runs out of the plate is told in the table
    x, y, half = slot.x, slot.y, slot.width.value / 2
    lies = round(slot.angle % 180.0, 6) == 0.0
    out, flank = slot.long / 2, slot.long / 2 - half
    width, long = figures.told(slot.name), figures.told(slot.name)
    width.sized("width", "width", slot.width)
    long.length("length", "long", slot.long)
    wide, over = figures.say(width), figures.say(long)
    if lies:
        figures.span("top", "right", (x + flank, y - half, top), (x + flank, y + half, top), 2 * half, wide)
        figures.span("top", "above", (x - out, y, top), (x + out, y, top), slot.long, over)
    else:
        figures.span("top", "above", (x - half, y + flank, top), (x + half, y + flank, top), 2 * half, wide)
        figures.span("top", "right", (x, y - out, top), (x, y + out, top), slot.long, over)
    for axis in "xy":
        figures.place("top", slot.name, axis, (x, y, top))
    run, across = (out, half) if lies else (half, out)
    _depth(figures, slot.name, slot.depth, (x, y), run, across)


def _pocket(figures: Figures, pocket: Pocket) -> None:
    top = figures.shape.thickness.value
    x, y, a, b, r = (
        pocket.x,
        pocket.y,
        pocket.length.value / 2,
        pocket.width.value / 2,
        pocket.corner,
    )
    length, width, corner = (figures.told(pocket.name) for _ in range(3))
    length.sized("length", "length", pocket.length)
    width.sized("width", "width", pocket.width)
    figures.span("top", "above", (x - a, y + b - r, top), (x + a, y + b - r, top), 2 * a, figures.say(length))
    figures.span("top", "right", (x + a - r, y - b, top), (x + a - r, y + b, top), 2 * b, figures.say(width))
    if r:
        corner.say("4 ×")
        corner.length("radius", "corner", r, "R")
        figures.put("top", Round((x - a + r, y + b - r), r, 90.0, 180.0, figures.say(corner)))
    for axis in "xy":
        figures.place("top", pocket.name, axis, (x, y, top))
    _depth(figures, pocket.name, pocket.depth, (x, y), a, b)


def _depth(
    figures: Figures, name: str, depth: float | None, at: tuple[float, float], run: float, across: float
) -> None:
    """A depth in the first section that goes through the opening ``run`` long and ``across`` wide, halved."""
    top = figures.shape.thickness.value
    x, y = at
    for letter, plane in figures.planes.items():
        if depth is not None and abs(plane.at - y) < across - 1e-6:
            told = figures.told(name)
            told.length("depth", "depth", depth)
            spots = tuple(x + share * run for share in (0.5, -0.5, 0.0, 0.75, -0.75))
            figures.put(letter, Deep(spots, top, top - depth, depth, figures.say(told)))
            return


def _slit(figures: Figures, slit: PlateSlit) -> None:
    shape = figures.shape
    top = shape.thickness.value
    x, y, _ = spot_on(shape, slit.side, slit.at, 0.0)
    half = slit.width / 2
    width, long = figures.told(slit.name), figures.told(slit.name)
    width.length("width", "width", slit.width)
    long.length("depth", "long", slit.long)
    wide, deep = figures.say(width), figures.say(long)
    if slit.side in ("front", "back"):
        end = y + slit.long * (1.0 if slit.side == "front" else -1.0)
        side = "below" if slit.side == "front" else "above"
        figures.span("top", side, (x - half, y, top), (x + half, y, top), slit.width, wide)  # type: ignore[arg-type]
        figures.span("top", "right", (x + half, y, top), (x + half, end, top), slit.long, deep)
        figures.place("top", slit.name, "x", (x, y, top), CENTRE)
        return
    end = x + slit.long * (1.0 if slit.side == "left" else -1.0)
    side = "left" if slit.side == "left" else "right"
    figures.span("top", side, (x, y - half, top), (x, y + half, top), slit.width, wide)  # type: ignore[arg-type]
    figures.span("top", "above", (x, y + half, top), (end, y + half, top), slit.long, deep)
    figures.place("top", slit.name, "y", (x, y, top), CENTRE)


def lean_figures(figures: Figures) -> None:
    """Angles of holes that lean in the plane of a section, true there."""
    shape = figures.shape
    for hole in shape.holes:
        if not leans_along(hole):
            continue
        spot = in_plate(shape, hole)
        for letter, plane in figures.planes.items():
            if abs(plane.at - spot[1]) < 1e-6:
                towards = round(hole.towards % 360.0, 6)
                square = 90.0 if hole.face == "top" else 270.0
                left = (towards == 0.0) == (hole.face == "top")  # which way its axis leans outside the face
                axis = square + hole.tilt * (1.0 if left == (hole.face == "top") else -1.0)
                told = figures.told(hole.name)
                told.angle("tilt", hole.tilt)
                low, high = sorted((square, axis))
                reach = max(hole.dia.value, hole.sink_dia) / 2 / math.cos(math.radians(hole.tilt))
                words = figures.say(told)
                figures.put(letter, Lean((spot[0], spot[2]), low, high, hole.tilt, words, reach))
                break
