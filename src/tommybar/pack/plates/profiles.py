"""Figures of what runs right across: steps, vees and dovetails where their profile is seen, edges at a corner."""

from __future__ import annotations

import math

from tommybar.pack.plates.cuts import spot_on
from tommybar.pack.plates.figures import Deep, Figures, Lean, Pointed
from tommybar.pack.plates.spans import Side
from tommybar.pack.projected.directions import Looked
from tommybar.shapes.features import Dovetail, PlateEdge, PlateStep, Vee
from tommybar.shapes.plate_features import vee_depth


def profile_figures(figures: Figures) -> None:
    """Figures of all of them whose profile a view shows."""
    shape = figures.shape
    for step in shape.steps:
        _step(figures, step)
    for vee in shape.vees:
        if vee.face in ("top", "bottom"):
            _vee(figures, vee)
    for tail in shape.dovetails:
        _tail(figures, tail)
    if shape.outline is None:
        for edge in shape.edges:
            _edge(figures, edge)


def _view(figures: Figures, along: str) -> Looked | None:
    """The view that shows a profile which runs along x or y."""
    return "front" if along == "y" else figures.end


def _over(face: str) -> Side:
    return "above" if face == "top" else "below"


def _step(figures: Figures, step: PlateStep) -> None:
    shape = figures.shape
    long, wide, thick = shape.length.value, shape.width.value, shape.thickness.value
    lies = step.side in ("left", "right")
    looked = _view(figures, "y" if lies else "x")
    if looked is None:
        return
    floor = thick - step.depth.value if step.face == "top" else step.depth.value
    face = thick if step.face == "top" else 0.0
    whole, near = (long, step.side == "left") if lies else (wide, step.side == "front")
    outer, inner = (0.0, step.wide.value) if near else (whole, whole - step.wide.value)

    def spot(at: float, z: float) -> tuple[float, float, float]:
        return (at, 0.0, z) if lies else (0.0, at, z)

    across, deep = figures.told(step.name), figures.told(step.name)
    across.sized("width", "wide", step.wide)
    deep.sized("depth", "depth", step.depth)
    over = figures.say(across)
    figures.span(looked, _over(step.face), spot(outer, floor), spot(inner, face), step.wide.value, over)
    a, b = spot(outer, floor), spot(inner, face)
    left = figures.seen(looked, a)[0] < figures.seen(looked, b)[0]
    figures.span(looked, "left" if left else "right", a, b, step.depth.value, figures.say(deep))


def _vee(figures: Figures, vee: Vee) -> None:
    shape = figures.shape
    looked = _view(figures, vee.along)
    at = spot_on(shape, vee.face, *((0.0, vee.at) if vee.along == "x" else (vee.at, 0.0)))
    figures.place("top", vee.name, "y" if vee.along == "x" else "x", (*at[:2], shape.thickness.value))
    if looked is None:
        return
    out = 1.0 if vee.face == "top" else -1.0
    deep, half = vee_depth(vee), vee.width / 2
    along = (1.0, 0.0) if vee.along == "y" else (0.0, 1.0)
    a, b = ((at[0] + s * half * along[0], at[1] + s * half * along[1], at[2]) for s in (-1.0, 1.0))
    width, included = figures.told(vee.name), figures.told(vee.name)
    width.length("width", "width", vee.width)
    included.angle("included", vee.included)
    figures.span(looked, _over(vee.face), a, b, vee.width, figures.say(width))
    u, v = figures.seen(looked, (at[0], at[1], at[2] - out * deep))
    middle = 90.0 * out
    figures.put(
        looked,
        Lean(
            (u, v), middle - vee.included / 2, middle + vee.included / 2, vee.included, figures.say(included),
            math.hypot(deep, half),
        ),
    )  # fmt: skip


def _tail(figures: Figures, tail: Dovetail) -> None:
    shape = figures.shape
    looked = _view(figures, tail.along)
    top = shape.thickness.value
    at = spot_on(shape, "top", *((0.0, tail.at) if tail.along == "x" else (tail.at, 0.0)))
    figures.place("top", tail.name, "y" if tail.along == "x" else "x", at)
    if looked is None:
        return
    along = (1.0, 0.0) if tail.along == "y" else (0.0, 1.0)
    half, floor = tail.narrow.value / 2, top - tail.depth
    out = half + tail.depth / math.tan(math.radians(tail.angle))
    level = floor if tail.tail else top

    def spot(s: float, z: float) -> tuple[float, float, float]:
        return at[0] + s * along[0], at[1] + s * along[1], z

    narrow, deep, angle = (figures.told(tail.name) for _ in range(3))
    narrow.sized("width", "narrow", tail.narrow)
    deep.length("depth", "depth", tail.depth)
    angle.angle("angle", tail.angle)
    figures.span(looked, "above", spot(-half, level), spot(half, level), 2 * half, figures.say(narrow))
    words, lean = figures.say(deep), figures.say(angle)
    if tail.tail:
        ends = [figures.seen(looked, spot(s * out, top))[0] for s in (-1.0, 1.0)]
        whole = [
            figures.seen(looked, one)[0]
            for one in ((0.0, 0.0, 0.0), (shape.length.value, shape.width.value, 0.0))
        ]
        beside = tuple((e + w) / 2 for e, w in zip(sorted(ends), sorted(whole), strict=True))
        figures.put(looked, Deep(beside, top, floor, tail.depth, words))
        vertex, start = figures.seen(looked, spot(half, floor)), figures.seen(looked, spot(out, floor))
    else:
        middle = figures.seen(looked, at)[0]
        spots = tuple(middle + share * half for share in (-0.6, 0.6, 0.3, -0.3, 0.0))
        figures.put(looked, Deep(spots, top, floor, tail.depth, words))
        vertex, start = figures.seen(looked, spot(out, floor)), figures.seen(looked, spot(half, floor))
    right = start[0] > vertex[0]
    first, last = (0.0, tail.angle) if right else (180.0 - tail.angle, 180.0)
    figures.put(looked, Lean(vertex, first, last, tail.angle, lean, 0.0))


def _edge(figures: Figures, edge: PlateEdge) -> None:
    shape = figures.shape
    told = figures.told(edge.name)
    if edge.round:
        told.length("radius", "size", edge.size, "R")
    else:
        told.length("chamfer", "size", edge.size, after=" × 45°")
    told.say(", all round")
    half = edge.size / 2
    z = shape.thickness.value - half if edge.face == "top" else half
    figures.put("front", Pointed((shape.length.value - half, z), figures.say(told)))
