"""STEP and GLB files: read back by the solid kernel and by the format's own rules, and the same bytes each time."""

from __future__ import annotations

import hashlib
import json
import re
import struct
import subprocess
import sys
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from tommybar.assembly.placing import assembled
from tommybar.design.model import Part, SizedDesign
from tommybar.pack.glb import assembly_glb, part_glb
from tommybar.pack.solid_files import assembly_text, solid_files
from tommybar.pack.step import assembly_step, part_step
from tommybar.refusals import Refusal
from tommybar.shapes.features import (
    Bore,
    CircleHoles,
    CrossHole,
    Cylinder,
    Dim,
    FaceGroove,
    PlateHole,
    PlateShape,
    TurnedShape,
)
from tommybar.shapes.mesh import mesh_of
from tommybar.shapes.solids.kernel import solid_of, solid_properties
from tommybar.shapes.solids.step import read_step

WHEEL = Part(
    "wheel",
    "turned",
    "free-cutting brass",
    1,
    TurnedShape(
        Dim(20.0),
        (Cylinder("rim", Dim(60.0), 0.0, 20.0, edge_start=1.0, round_end=2.0),),
        bores=(Bore("bore", Dim(10.0), "A", 20.0, True),),
        circle_holes=(CircleHoles("ease", Dim(8.0), 5, 36.0, 0.0, 0.0, 20.0),),
        cross_holes=(CrossHole("grub", Dim(4.0), 10.0, 90.0, 1, into="bore"),),
        face_grooves=(FaceGroove("ring", "B", 48.0, 52.0, 1.0),),
    ),
)
STAND = Part(
    "stand",
    "plate",
    "mild steel",
    2,
    PlateShape(Dim(60.0), Dim(40.0), Dim(12.0), 3.0, (PlateHole("hole", "front", 10.0, 6.0, Dim(4.0), 8.0),)),
)
PIN = Part(
    "pin", "turned", "mild steel", 1, TurnedShape(Dim(30.0), (Cylinder("shank", Dim(10.0), 0.0, 30.0),))
)


def pinned() -> SizedDesign:
    """A wheel on a pin, and two stands that nothing places."""
    from tommybar.design.model import FitRelation

    fit = FitRelation("wheel.bore", "pin.shank", "H7/h6")
    return SizedDesign("It's a wheel", "B", "mm", (), (PIN, WHEEL, STAND), (fit,))


def glb_of(data: bytes) -> tuple[dict[str, Any], bytes]:
    """The two chunks of a GLB file, by the layout of glTF 2.0 section 4."""
    magic, version, length = struct.unpack_from("<4sII", data)
    size, kind = struct.unpack_from("<I4s", data, 12)
    rest = 20 + size
    more, second = struct.unpack_from("<I4s", data, rest)

    assert (magic, version, length) == (b"glTF", 2, len(data))
    assert (kind, second) == (b"JSON", b"BIN\0")
    assert size % 4 == more % 4 == 0
    assert rest + 8 + more == len(data)
    return json.loads(data[20:rest]), data[rest + 8 :]


@pytest.mark.parametrize("part", [WHEEL, STAND], ids=["wheel", "stand"])
def test_step_reads_back_with_the_same_volume(part: Part) -> None:
    """What is written in STEP has the volume of the solid within 1e-9, in mm, under the part's name."""
    data = part_step(part)
    assert part.shape is not None
    whole = solid_properties(solid_of(part.shape))
    back = solid_properties(read_step(data))

    assert back.volume == pytest.approx(whole.volume, rel=1e-9)
    assert back.centre == pytest.approx(whole.centre, abs=1e-7)
    assert f"PRODUCT('{part.name}'".encode() in data
    assert b"SI_UNIT(.MILLI.,.METRE.)" in data


def test_step_keeps_arcs_and_cylinders() -> None:
    """Round faces are written as such, not as facets: the rounded edge of the rim is a torus."""
    text = part_step(WHEEL).decode()

    assert text.count("TOROIDAL_SURFACE") == 1
    assert (
        text.count("CYLINDRICAL_SURFACE") >= 9
    )  # rim, bore, five holes, cross hole, two walls of the groove
    assert "FACETED" not in text


def test_an_assembly_holds_each_piece_where_it_stands() -> None:
    """Wheel and pin in one STEP: volumes add up, and the wheel lies in the middle of the pin."""
    design = pinned()
    data = assembly_step(design, assembled(design).placements)
    both = solid_properties(read_step(data))
    wheel, pin = (solid_properties(solid_of(one.shape)) for one in (WHEEL, PIN) if one.shape)

    assert both.volume == pytest.approx(wheel.volume + pin.volume, rel=1e-9)
    assert re.findall(r"NEXT_ASSEMBLY_USAGE_OCCURRENCE\('(\d)','(\w+)'", data.decode()) == [
        ("1", "pin"),
        ("2", "wheel"),
    ]
    # centres along the axis: 15 of the pin; the wheel's own, 5 on
    middle = (pin.volume * 15 + wheel.volume * (5 + wheel.centre[2])) / both.volume
    assert sorted(both.centre, key=abs)[-1] == pytest.approx(middle, abs=1e-6)


def test_the_files_say_nothing_of_when_and_where() -> None:
    """The header of STEP has a fixed date, no person, no machine; a quote in a title is doubled."""
    design = pinned()
    head = assembly_step(design, assembled(design).placements).decode().split("ENDSEC;")[0]

    assert "FILE_NAME('It''s a wheel','2000-01-01T00:00:00',(''),(''),'','tommybar','')" in head
    assert "2026" not in head


def test_the_same_solids_give_the_same_bytes() -> None:
    """In another process, and whatever was written before, every file has the same bytes."""
    text = (
        "import hashlib, sys; sys.path.insert(0, 'tests/pack')\n"
        "from test_step_glb import digest; print(digest())"
    )
    here = Path(__file__).parents[2]
    other = subprocess.run([sys.executable, "-c", text], capture_output=True, text=True, check=True, cwd=here)

    assert other.stdout.split() == [digest()]


def digest() -> str:
    """One figure for all files of solids of the design, and a proof that nothing else is printed."""
    files = solid_files(pinned(), lambda _: None)
    whole = hashlib.sha256()
    for name, content in files.items():
        whole.update(name.encode() + (content if isinstance(content, bytes) else content.encode()))
    return whole.hexdigest()


def test_glb_holds_the_mesh_in_millimetres_under_a_root_that_makes_metres() -> None:
    """Points are those of the mesh as 32-bit floats; the root scales by 0.001 and turns z up to y up."""
    head, body = glb_of(part_glb(WHEEL))
    assert WHEEL.shape is not None
    mesh = mesh_of(WHEEL.shape)
    points, numbers = (head["accessors"][n] for n in (0, 1))
    view = head["bufferViews"][points["bufferView"]]
    read = np.frombuffer(body, "<f4", points["count"] * 3, view["byteOffset"]).reshape(-1, 3)
    root = np.array(head["nodes"][0]["matrix"]).reshape(4, 4).T

    assert np.array_equal(read, mesh.points.astype("<f4"))
    assert numbers["count"] == mesh.triangles.size
    assert points["max"] == read.max(axis=0).tolist()
    assert (root @ [0.0, 0.0, 1000.0, 1.0])[:3] == pytest.approx([0.0, 1.0, 0.0])
    assert np.linalg.det(root[:3, :3]) == pytest.approx(1e-9)  # a turn, no mirror


def test_metals_have_their_colours() -> None:
    """Brass is yellower than steel: more red than blue by far."""
    brass, steel = (
        glb_of(part_glb(one))[0]["materials"][0]["pbrMetallicRoughness"]["baseColorFactor"]
        for one in (WHEEL, STAND)
    )

    assert brass[0] / brass[2] > 2
    assert steel[0] / steel[2] == pytest.approx(1.0, abs=0.1)


def test_glb_of_an_assembly_shares_meshes_and_places_pieces() -> None:
    """A node for each piece with its frame; the wheel stands 5 along the pin."""
    design = pinned()
    head, _ = glb_of(assembly_glb(design, assembled(design).placements))
    nodes = {one["name"]: one for one in head["nodes"][1:]}
    wheel = np.array(nodes["wheel"]["matrix"]).reshape(4, 4).T
    pin = np.array(nodes["pin"]["matrix"]).reshape(4, 4).T

    assert len(head["meshes"]) == 2
    assert (np.linalg.inv(pin) @ wheel)[:3, 3] == pytest.approx([0.0, 0.0, 5.0])


def test_what_is_not_shown_is_said_beside_the_files() -> None:
    """The text with the files names the stands that nothing places, and where the wheel may stand."""
    design = pinned()
    text = assembly_text(design, assembled(design), ["no STEP today"])

    assert "- stand 1: no relation says what it is joined to" in text
    assert "wheel: nothing says where along 10 mm" in text
    assert "- no STEP today" in text
    assert "In the order of assembly:\n1. Slide the wheel on the pin." in text


def test_without_the_kernel_the_other_files_are_written(monkeypatch: pytest.MonkeyPatch) -> None:
    """No kernel: GLB all the same, no STEP, and the text says what to install."""

    def missing() -> None:
        raise Refusal(
            "STEP files are made by the solid kernel, which is not installed.", "Install the extra."
        )

    monkeypatch.setattr("tommybar.shapes.solids.kernel.needs_the_kernel", missing)
    files = solid_files(pinned(), lambda _: None)

    assert [name for name in files if name.endswith(".step")] == []
    assert "parts/wheel.glb" in files
    assert "which is not installed. Install the extra." in str(files["assembly.txt"])


def test_an_assembly_of_nothing_is_refused() -> None:
    """A design of which nothing can be placed has no assembly file."""
    with pytest.raises(Refusal, match="needs at least one"):
        assembly_glb(pinned(), ())
