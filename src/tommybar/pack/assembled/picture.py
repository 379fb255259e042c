"""An assembly pulled apart along its axes, seen from one corner, hidden lines taken out."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from tommybar.assembly.placing import Assembly
from tommybar.design.model import SizedDesign
from tommybar.pack.projected.directions import body, body_in, looked_at
from tommybar.pack.projected.edges import faces_of
from tommybar.pack.projected.hidden import Behind, seen
from tommybar.pack.projected.lines import view_marks
from tommybar.pack.sheet import Mark
from tommybar.refusals import Refusal
from tommybar.shapes.mesh import Mesh, as_mesh
from tommybar.shapes.solids.frames import Frame, within

FACETS = 48
OFFERED = 12  # places on a part to which a balloon may point

Spot = tuple[float, float]


@dataclass(frozen=True)
class Picture:
    """Marks at 1:1 with the view's origin at (0, 0), and on each part places that are seen [mm on paper]."""

    marks: tuple[Mark, ...]
    spots: dict[str, tuple[Spot, ...]]
    left_out: tuple[str, ...]
    unseen: tuple[str, ...]  # parts of which nothing shows


def picture_of(design: SizedDesign, whole: Assembly) -> Picture:
    """The exploded isometric of all pieces that stand."""
    meshes: list[tuple[str, Mesh]] = []
    left_out: list[str] = []
    iso = looked_at("isometric")
    for one in sorted(whole.placements, key=lambda placed: placed.order):
        part = design.part(one.part)
        shape = part.standing
        if shape is None:
            continue
        try:
            solid = body(shape, FACETS)
        except Refusal as refusal:
            left_out.append(f"{one.part.replace('_', ' ')}: {refusal}")
            continue
        moved: Frame = (1.0, 0.0, 0.0, one.apart[0], 0.0, 1.0, 0.0, one.apart[1], 0.0, 0.0, 1.0, one.apart[2])
        at = within(iso, within(moved, one.frame))
        meshes.append((one.part, as_mesh(body_in(solid, at))))
    if not meshes:
        raise Refusal("No piece of the assembly can be placed.", "Add relations that say what goes where.")
    whole_mesh = _together([mesh for _, mesh in meshes])
    size = float(np.ptp(whole_mesh.points[:, :2], axis=0).max())
    marks = view_marks(seen(whole_mesh, max(size / 400.0, 0.3)), 1.0, (), False, "rule")
    behind = Behind(faces_of(whole_mesh))
    spots: dict[str, tuple[Spot, ...]] = {}
    for name, mesh in meshes:
        found = _seen_spots(mesh, behind)
        if found and len(found) > len(spots.get(name, ())):
            spots[name] = found
    unseen = tuple(sorted({name for name, _ in meshes} - set(spots)))
    return Picture(tuple(marks), spots, tuple(left_out), unseen)


def _together(meshes: list[Mesh]) -> Mesh:
    """Several meshes as one, each closed for itself."""
    starts = np.cumsum([0, *(len(mesh.points) for mesh in meshes[:-1])])
    return Mesh(
        np.concatenate([mesh.points for mesh in meshes]),
        np.concatenate([mesh.triangles + start for mesh, start in zip(meshes, starts, strict=True)]),
    )


def _seen_spots(mesh: Mesh, behind: Behind) -> tuple[Spot, ...]:
    """Places on a piece that nothing hides, on its largest faces first."""
    faces = faces_of(mesh)
    front = np.flatnonzero(faces.normals[:, 2] > 0.05)
    corners = faces.corners[front]
    across = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])[:, 2]
    order = np.argsort(-np.round(across, 6), kind="stable")[:200]
    middles = corners[order].mean(axis=1)
    free = ~behind.covered(middles[:, :2], middles[:, 2])
    return tuple((round(float(u), 3), round(-float(v), 3)) for u, v, _ in middles[free][:OFFERED])
