"""GLB files (glTF 2.0, binary): a part, or an assembly, for any viewer of solids.

Points are written in mm in the part's own frame; the root of the scene turns z
up to y up and makes metres of them, as glTF wants it. The same solids give
the same bytes.
"""

from __future__ import annotations

import json
import struct
from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

import numpy as np

from tommybar.assembly.placing import Placement
from tommybar.design.model import Part, SizedDesign
from tommybar.facts.materials import material
from tommybar.refusals import Refusal
from tommybar.shapes.mesh import Mesh, mesh_of

if TYPE_CHECKING:
    from tommybar.shapes.bought import BoughtShape
    from tommybar.shapes.features import Shape

ROOT = (0.001, 0, 0, 0, 0, 0, -0.001, 0, 0, 0.001, 0, 0, 0, 0, 0, 1)  # column by column
# Colours of metals as the eye knows them, linear, with how rough they are; common practice, no source.
COLOURS: tuple[tuple[str, tuple[float, float, float], float], ...] = (
    ("brass", (0.73, 0.54, 0.22), 0.35),
    ("bronze", (0.60, 0.38, 0.20), 0.40),
    ("copper", (0.72, 0.37, 0.23), 0.35),
    ("stainless", (0.60, 0.61, 0.62), 0.30),
    ("cast iron", (0.21, 0.21, 0.21), 0.60),
    ("steel", (0.42, 0.43, 0.44), 0.40),
    ("alumin", (0.75, 0.76, 0.77), 0.40),
    ("magnesium", (0.66, 0.66, 0.64), 0.45),
)
PLAIN = ((0.55, 0.55, 0.53), 0.6)


def part_glb(part: Part) -> bytes:
    """One part, standing in its own frame."""
    mesh = _mesh(part, part.shape or part.envelope)
    return _written([(part.name, mesh, _colour(part.material))], [(part.name, 0, None)])


def assembly_glb(design: SizedDesign, placements: Sequence[Placement]) -> bytes:
    """All parts that are placed, each piece where it stands."""
    solids: list[tuple[str, Mesh, tuple[tuple[float, float, float], float]]] = []
    nodes: list[tuple[str, int, tuple[float, ...] | None]] = []
    number: dict[str, int] = {}
    for one in placements:
        part = design.part(one.part)
        if one.part not in number:
            number[one.part] = len(solids)
            solids.append((one.part, _mesh(part, part.standing), _colour(part.material)))
        name = one.part if part.count == 1 else f"{one.part} {one.instance}"
        nodes.append((name, number[one.part], one.frame))
    if not nodes:
        raise Refusal("No part of the design can be placed; an assembly needs at least one.")
    return _written(solids, nodes)


def _mesh(part: Part, shape: Shape | BoughtShape | None) -> Mesh:
    if shape is None:
        raise Refusal(f"{part.name} is bought and no table gives its size; it cannot be drawn as a solid.")
    return mesh_of(shape)


def _colour(name: str) -> tuple[tuple[float, float, float], float]:
    """Colour and roughness of a material by its family."""
    try:
        family = material(name).family.lower()
    except Refusal:
        return PLAIN
    return next(((colour, rough) for word, colour, rough in COLOURS if word in family), PLAIN)


def _written(
    solids: list[tuple[str, Mesh, tuple[tuple[float, float, float], float]]],
    nodes: list[tuple[str, int, tuple[float, ...] | None]],
) -> bytes:
    body = bytearray()
    views: list[dict[str, Any]] = []
    accessors: list[dict[str, Any]] = []
    meshes: list[dict[str, Any]] = []
    materials: list[dict[str, Any]] = []
    for name, mesh, (colour, rough) in solids:
        points = mesh.points.astype("<f4")
        numbers = mesh.triangles.astype("<u4")
        for data, target in ((points.tobytes(), 34962), (numbers.tobytes(), 34963)):
            views.append({"buffer": 0, "byteOffset": len(body), "byteLength": len(data), "target": target})
            body += data
        accessors.append(
            {
                "bufferView": len(views) - 2,
                "componentType": 5126,
                "count": len(points),
                "type": "VEC3",
                "min": points.min(axis=0).tolist(),
                "max": points.max(axis=0).tolist(),
            }
        )
        accessors.append(
            {"bufferView": len(views) - 1, "componentType": 5125, "count": numbers.size, "type": "SCALAR"}
        )
        look = {"baseColorFactor": [*colour, 1.0], "metallicFactor": 0.6, "roughnessFactor": rough}
        if look not in [one["pbrMetallicRoughness"] for one in materials]:
            materials.append({"pbrMetallicRoughness": look})
        which = [one["pbrMetallicRoughness"] for one in materials].index(look)
        primitive = {
            "attributes": {"POSITION": len(accessors) - 2},
            "indices": len(accessors) - 1,
            "material": which,
        }
        meshes.append({"name": name, "primitives": [primitive]})
    tree: list[dict[str, Any]] = [
        {"name": "millimetres", "matrix": list(ROOT), "children": list(range(1, len(nodes) + 1))}
    ]
    for name, number, frame in nodes:
        node: dict[str, Any] = {"name": name, "mesh": number}
        if frame is not None:
            rows = np.array([*frame, 0.0, 0.0, 0.0, 1.0]).reshape(4, 4)
            node["matrix"] = [float(v) + 0.0 for v in rows.T.ravel()]
        tree.append(node)
    head = {
        "asset": {"version": "2.0", "generator": "tommybar"},
        "scene": 0,
        "scenes": [{"nodes": [0]}],
        "nodes": tree,
        "meshes": meshes,
        "materials": materials,
        "accessors": accessors,
        "bufferViews": views,
        "buffers": [{"byteLength": len(body)}],
    }
    text = json.dumps(head, separators=(",", ":")).encode()
    text += b" " * (-len(text) % 4)
    whole = struct.pack("<4sII", b"glTF", 2, 20 + len(text) + 8 + len(body))
    whole += struct.pack("<I4s", len(text), b"JSON") + text
    return whole + struct.pack("<I4s", len(body), b"BIN\0") + bytes(body)
