"""Bought parts as the envelope that their table gives: heads, shanks, rings, balls.

z runs along the part: a screw's head ends at z = 0 and its shank runs to
positive z; nuts, washers and bearings stand on z = 0. Sockets, threads and
rolling elements are not drawn.
"""

from __future__ import annotations

import math

from tommybar.refusals import Refusal
from tommybar.shapes.bought import BoughtShape
from tommybar.shapes.solids.nodes import Join, Node, Prism, Turn, less, rod
from tommybar.shapes.solids.rings import box, circle, polygon


def bought_part(shape: BoughtShape) -> Node:
    """The envelope of a bought part."""
    sizes = dict(shape.sizes)
    if "ball" in shape.kind and "bearing" not in shape.kind:
        return _ball(_first(shape, sizes, "dia", "outside"))
    if "screw" in shape.kind or "bolt" in shape.kind:
        return _screw(shape, sizes)
    outside = _first(shape, sizes, "across_flats", "outside", "head_dia", "dia")
    inside = _or(sizes, "inside", "hole", "thread_dia", "bore")
    if "o-ring" in shape.kind:
        cord = _first(shape, sizes, "thickness", "section", "cord")
        middle = (inside or outside - 2 * cord) / 2 + cord / 2
        return Turn(circle(cord / 2, middle, cord / 2))
    long = _first(shape, sizes, "length", "thickness", "height", "wide", "width")
    if "across_flats" in sizes:
        return less(_hexagon(outside, long), [rod(inside, -1.0, long + 1.0)] if inside else [])
    if "key" in shape.kind and "height" in sizes:
        return Prism(box(0.0, 0.0, long, sizes.get("wide", sizes.get("width", outside))), sizes["height"])
    return Turn(box(inside / 2, 0.0, outside / 2, long))


def _screw(shape: BoughtShape, sizes: dict[str, float]) -> Node:
    """Head and shank; a countersunk head is a cone, a grub screw has none."""
    dia = _first(shape, sizes, "thread_dia", "dia", "major")
    long, head = _first(shape, sizes, "length", "long"), _or(sizes, "head_dia", "across_corners")
    high = _or(sizes, "head_height", "height")
    if not head or not high:
        return rod(dia, 0.0, long)
    if "countersunk" in shape.kind:
        corners = [(0, 0), (head / 2, 0), (dia / 2, high), (dia / 2, long), (0, long)]
        return Turn(polygon(corners))
    if "across_flats" in sizes:
        from tommybar.shapes.solids.frames import shifted

        hexagon = _hexagon(sizes["across_flats"], high, shifted(z=-high))
        return Join((hexagon, rod(dia, -high / 2, long)))
    corners = [(0, -high), (head / 2, -high), (head / 2, 0), (dia / 2, 0), (dia / 2, long), (0, long)]
    return Turn(polygon(corners))


def _ball(dia: float) -> Node:
    return Turn(((0.0, -dia / 2, 1.0), (0.0, dia / 2, 0.0)))


def _hexagon(across: float, high: float, at: tuple[float, ...] | None = None) -> Prism:
    out = across / math.sqrt(3)
    ring = polygon(
        (out * math.cos(math.radians(60 * n)), out * math.sin(math.radians(60 * n))) for n in range(6)
    )
    return Prism(ring, high) if at is None else Prism(ring, high, at)


def _or(sizes: dict[str, float], *names: str) -> float:
    return next((sizes[name] for name in names if sizes.get(name)), 0.0)


def _first(shape: BoughtShape, sizes: dict[str, float], *names: str) -> float:
    found = _or(sizes, *names)
    if not found:
        known = ", ".join(sorted(sizes)) or "nothing"
        raise Refusal(
            f"{shape.designation} cannot be drawn: its table gives {known}, and one of "
            f"{', '.join(names)} is needed.",
            "Add the figure to the table, with its source.",
        )
    return found
