"""Where two placed pieces would stand in one another.

Pieces are cut with one another as meshes whose corners lie on the true
circles. Fits, press joints and faces in contact share films of metal thinner
than THIN, and so do chords of one circle that do not stand corner to corner:
those belong to the fits and are not judged here.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tommybar.assembly.bodies import allowed, bodies_of
from tommybar.assembly.links import Piece, links_of
from tommybar.assembly.placing import Assembly, assembled
from tommybar.design.model import SizedDesign
from tommybar.shapes.solids.frames import Vector

FACETS = 96
THIN = 0.02  # mean thickness up to which shared metal is a matter of the fit [mm]


@dataclass(frozen=True)
class Overlap:
    """Two pieces that share metal."""

    first: Piece
    second: Piece
    volume: float  # [mm3]
    thick: float  # twice the volume over the surface of what they share [mm]
    at: Vector  # the middle of it [mm]
    reach: Vector  # its size along x, y and z [mm]


def overlaps(design: SizedDesign, whole: Assembly | None = None) -> tuple[Overlap, ...]:
    """Every pair of placed pieces that share metal, worst first.

    Examples
    --------
    >>> from tommybar.design.model import SizedDesign
    >>> overlaps(SizedDesign("nothing", "A", "mm", (), ()))
    ()
    """
    whole = whole or assembled(design)
    bodies = bodies_of(design, whole.placements, FACETS)
    frames = {(one.part, one.instance): one.frame for one in whole.placements}
    spared = allowed(links_of(design), frames, design)
    pieces = list(bodies)
    found = []
    for n, first in enumerate(pieces):
        for second in pieces[n + 1 :]:
            one, other = bodies[first].mesh, bodies[second].mesh
            if not _near(one.bounding_box(), other.bounding_box()):
                continue
            shared = one ^ other
            for spare in spared:
                if {spare.first, spare.second} == {first, second}:
                    shared = shared - spare.body
            if shared.is_empty():
                continue
            for lump in shared.decompose():
                volume, surface = lump.volume(), lump.surface_area()
                thick = 2 * volume / surface if surface > 0 else 0.0
                if thick > THIN:
                    box = np.array(lump.bounding_box()).reshape(2, 3)
                    middle, size = box.mean(axis=0), box[1] - box[0]
                    found.append(Overlap(first, second, volume, thick, _vector(middle), _vector(size)))
    return tuple(sorted(found, key=lambda each: (-each.volume, each.first, each.second)))


def _near(one: tuple[float, ...], other: tuple[float, ...]) -> bool:
    return all(one[n] < other[n + 3] and other[n] < one[n + 3] for n in range(3))


def _vector(values: NDArray[np.float64]) -> Vector:
    x, y, z = (round(float(v), 6) + 0.0 for v in values)
    return x, y, z
