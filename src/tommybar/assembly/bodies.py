"""The pieces of an assembly as meshes where they stand, and where two may share metal on purpose."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

import numpy as np

from tommybar.assembly.links import Link, Piece
from tommybar.assembly.placing import Placement
from tommybar.design.model import SizedDesign
from tommybar.shapes.bought import BoughtShape
from tommybar.shapes.features import Shape
from tommybar.shapes.mesh import body_of
from tommybar.shapes.solids.construction import construction
from tommybar.shapes.solids.frames import Frame, within
from tommybar.shapes.solids.nodes import rod

ROUND = 0.05  # a thread's allowance stands out over its major radius by this much [mm]


@dataclass(frozen=True)
class Body:
    """One piece where it stands, its circles in chords whose corners lie on the circle."""

    piece: Piece
    mesh: Any


def bodies_of(design: SizedDesign, placements: Sequence[Placement], facets: int) -> dict[Piece, Body]:
    """Every placed piece as a body of the mesh kernel."""
    found = {}
    for one in placements:
        part = design.part(one.part)
        shape = part.standing
        if shape is not None:
            piece = (one.part, one.instance)
            found[piece] = Body(piece, standing(own_body(shape, facets), one.frame))
    return found


@lru_cache(maxsize=64)
def own_body(shape: Shape | BoughtShape, facets: int) -> Any:
    """A shape as a body of the mesh kernel, in its own frame."""
    return body_of(construction(shape), facets, False)


def standing(mesh: Any, at: Frame) -> Any:
    """A body of the mesh kernel carried to a frame."""
    return mesh.transform(np.array(at, dtype=np.float64).reshape(3, 4))


@dataclass(frozen=True)
class Allowed:
    """Two pieces that share metal on purpose: a thread drawn at its major diameter in its tapping hole."""

    first: Piece
    second: Piece
    body: Any


def allowed(links: Sequence[Link], frames: dict[Piece, Frame], design: SizedDesign) -> tuple[Allowed, ...]:
    """Round each thread, a body within which its two pieces may overlap."""
    found = []
    for link in links:
        if link.kind == "thread" and link.first in frames and link.second in frames:
            for pair in link.pairs:
                dia = _dia(design, pair.words.rpartition(" on ")[2])
                own = rod(dia + 2 * ROUND, pair.shaft.low - 0.5, pair.shaft.high + 0.5)
                at = within(frames[link.second], pair.shaft.at)
                found.append(Allowed(link.first, link.second, standing(body_of(own, 48, False), at)))
        elif link.kind == "screw head" and link.second in frames:
            part = design.part(link.second[0])
            sizes = dict(part.envelope.sizes) if part.envelope else {}
            dia = sizes.get("thread_dia", sizes.get("dia", 0.0))
            own = rod(dia + 2 * ROUND, -0.5, sizes.get("length", 0.0) + 0.5)
            body = standing(body_of(own, 48, False), frames[link.second])
            others = {link.first}
            for one in links:
                if one.kind == "screw" and link.first in (one.first, one.second):
                    others |= {one.first, one.second}
            found += [Allowed(one, link.second, body) for one in sorted(others)]
    return tuple(found)


def _dia(design: SizedDesign, name: str) -> float:
    """Major diameter of the land of that name, or of a bought screw [mm]."""
    part, _, land = name.partition(".")
    bought = design.part(part).envelope
    if bought is not None:
        return dict(bought.sizes).get("thread_dia", 0.0)
    outside = getattr(design.part(part).shape, "outside", ())
    return max((max(one.start_dia, one.end_dia) for one in outside if one.name == land), default=0.0)
