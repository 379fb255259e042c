"""Meshes: closed, always the same, of the right size, with what is cut really cut."""

from __future__ import annotations

import subprocess
import sys
from collections import Counter

import numpy as np
import pytest

from tommybar.refusals import Refusal
from tommybar.shapes.features import (
    Bore,
    CircleHoles,
    CrossHole,
    Cylinder,
    Dim,
    PlateHole,
    PlateShape,
    SpringShape,
    TurnedShape,
)
from tommybar.shapes.mesh import Mesh, mesh_of

WHEEL = TurnedShape(
    Dim(20.0),
    (Cylinder("rim", Dim(60.0), 0.0, 20.0, edge_start=1.0, round_end=2.0),),
    bores=(Bore("bore", Dim(10.0), "A", 20.0, True),),
    circle_holes=(CircleHoles("ease", Dim(8.0), 5, 36.0, 0.0, 0.0, 20.0),),
    cross_holes=(CrossHole("grub", Dim(4.0), 10.0, 90.0, 1, into="bore"),),
)
PLATE = PlateShape(
    Dim(60.0),
    Dim(40.0),
    Dim(12.0),
    holes=(PlateHole("low", "front", 10.0, 3.0, Dim(2.0), 5.0, bottom="flat"),),
)
SPRING = SpringShape("compression", 1.0, Dim(10.0), 6.0, 8.0, 30.0)


def sides(mesh: Mesh) -> Counter[tuple[int, int]]:
    """How often each side of a triangle is run in each direction."""
    return Counter((int(one[n]), int(one[(n + 1) % 3])) for one in mesh.triangles for n in range(3))


@pytest.mark.parametrize("shape", [WHEEL, PLATE, SPRING], ids=["wheel", "plate", "spring"])
def test_a_mesh_is_closed(shape: TurnedShape | PlateShape | SpringShape) -> None:
    """Each side of a triangle is run once one way and once the other: no gap, no flap."""
    found = sides(mesh_of(shape))

    assert all(count == 1 and found[(b, a)] == 1 for (a, b), count in found.items())


def test_a_mesh_is_the_same_every_time() -> None:
    """Points and triangles come in one order, in another process too."""
    text = (
        "import hashlib, sys; sys.path.insert(0, 'tests/shapes')\n"
        "from test_mesh import WHEEL; from tommybar.shapes.mesh import mesh_of\n"
        "m = mesh_of(WHEEL); print(hashlib.sha256(m.points.tobytes() + m.triangles.tobytes()).hexdigest())"
    )
    runs = {
        subprocess.run([sys.executable, "-c", text], capture_output=True, text=True, check=True).stdout
        for _ in range(2)
    }

    assert len(runs) == 1


def test_true_radii_stand_on_the_circle() -> None:
    """For contact the corners lie on the circle itself, for mass a little outside it."""
    true, kept = mesh_of(WHEEL, keep_volume=False), mesh_of(WHEEL)

    assert np.hypot(true.points[:, 0], true.points[:, 1]).max() == pytest.approx(30.0, abs=1e-9)
    assert np.hypot(kept.points[:, 0], kept.points[:, 1]).max() == pytest.approx(30.0107, abs=1e-4)
    # a polygon of n sides on the circle has n/2 sin(2 pi/n) / pi of its area: 7.1e-4 less at 96
    assert true.volume / kept.volume - 1 == pytest.approx(-7.1e-4, abs=1e-4)


def test_a_plate_stands_on_its_bottom_face() -> None:
    """x along the length, y along the width, z up: a hole 3 above the foot of the front is low in z."""
    low, high = mesh_of(PLATE).points.min(axis=0), mesh_of(PLATE).points.max(axis=0)
    floor = mesh_of(PLATE).points
    floor = floor[(floor[:, 1] > 4.9) & (floor[:, 1] < 5.1)]

    assert low == pytest.approx([0.0, 0.0, 0.0], abs=1e-9)
    assert high == pytest.approx([60.0, 40.0, 12.0], abs=1e-9)
    assert floor.mean(axis=0) == pytest.approx([10.0, 5.0, 3.0], abs=1e-3)


def test_too_few_facets_are_refused() -> None:
    """A mesh of three facets is no picture of a circle."""
    with pytest.raises(Refusal, match="it must have at least 8"):
        mesh_of(WHEEL, 3)


def test_the_kernel_is_imported_only_when_it_is_used() -> None:
    """Nothing that meshes or places loads the solid kernel, which takes seconds."""
    text = "import sys, tommybar.shapes.solids.kernel, tommybar.assembly.placing; print('OCP' in sys.modules)"
    done = subprocess.run([sys.executable, "-c", text], capture_output=True, text=True, check=True)

    assert done.stdout.strip() == "False"
