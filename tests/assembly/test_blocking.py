"""How high a piece stands over a grid of lines, against planes and a sphere in closed form."""

from __future__ import annotations

import numpy as np
from manifold3d import Manifold

from tommybar.assembly.blocking import CELL, _over_grid, _relief_of


def relief_of(body: Manifold) -> tuple[np.ndarray, np.ndarray, np.ndarray, np.ndarray]:
    """Places of the lines of the grid along x and y [mm], and the lowest and highest metal on them."""
    mesh = body.to_mesh64()
    low_x, low_y, lowest, highest = _relief_of(
        np.asarray(mesh.vert_properties)[:, :3], np.asarray(mesh.tri_verts, dtype=np.int64)
    )
    x = (np.arange(lowest.shape[0]) + low_x + 0.137) * CELL
    y = (np.arange(lowest.shape[1]) + low_y + 0.137) * CELL
    return x[:, None], y[None, :], lowest, highest


def test_a_sloping_block_stands_as_high_as_its_planes() -> None:
    """A block 20 x 10 x 4 sheared by z = z + 0.3 x + 0.1 y: both faces are planes, known on every line."""
    shear = np.array([[1.0, 0, 0, 3.3], [0, 1.0, 0, -1.7], [0.3, 0.1, 1.0, 2.0]])
    x, y, lowest, highest = relief_of(Manifold.cube((20.0, 10.0, 4.0)).transform(shear))
    inside = (x > 3.3) & (x < 23.3) & (y > -1.7) & (y < 8.3)
    under = 2.0 + 0.3 * (x - 3.3) + 0.1 * (y + 1.7)

    assert inside.sum() == np.isfinite(lowest).sum() == np.isfinite(highest).sum()
    assert np.abs(lowest - under)[inside].max() < 1e-9
    assert np.abs(highest - under - 4.0)[inside].max() < 1e-9


def test_a_ball_stands_as_high_as_its_circle_and_a_hole_has_no_metal() -> None:
    """A ball of radius 9 with a hole of radius 3 through it: z = sqrt(81 - r^2) outside the hole, nothing in it."""
    ball = Manifold.sphere(9.0, 256) - Manifold.cylinder(30.0, 3.0, 3.0, 256, True)
    x, y, lowest, highest = relief_of(ball)
    radius = np.hypot(x, y)
    metal = (radius > 3.01) & (radius < 8.9)
    height = np.sqrt(np.maximum(81.0 - radius**2, 0.0))

    assert np.abs(highest - height)[metal].max() < 0.01
    assert np.abs(lowest + height)[metal].max() < 0.01
    assert not np.isfinite(highest[radius < 2.99]).any()


def test_a_pin_blocks_a_plate_unless_it_stands_in_its_hole() -> None:
    """A plate with a hole of radius 4 drawn upwards passes a pin of radius 3 on its axis, and strikes it 2 aside."""
    plate = Manifold.cube((30.0, 30.0, 5.0), True) - Manifold.cylinder(20.0, 4.0, 4.0, 96, True)
    pin = Manifold.cylinder(10.0, 3.0, 3.0, 96).translate((0.0, 0.0, 8.0))

    def blocks(body: Manifold, sign: float = 1.0) -> bool:
        one, other = (
            _relief_of(
                np.asarray(each.to_mesh64().vert_properties)[:, :3],
                np.asarray(each.to_mesh64().tri_verts, dtype=np.int64),
            )
            for each in (plate, body)
        )
        return _over_grid(one, other, sign)

    assert not blocks(pin)
    assert blocks(pin.translate((2.0, 0.0, 0.0)))
    assert not blocks(pin.translate((2.0, 0.0, 0.0)), -1.0)
