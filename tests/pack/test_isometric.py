"""From which corner an isometric looks at a turned part: its open side and its holes towards the reader."""

from __future__ import annotations

import numpy as np
import pytest

from tommybar.pack.isometric import CORNERS, isometric_marks, telling_corner
from tommybar.pack.projected.directions import body, looked_at, mesh_in, seen_from_corner
from tommybar.shapes.features import Bore, CrossHole, Cylinder, Dim, TurnedShape


def pot(face: str, *holes: CrossHole) -> TurnedShape:
    """A pot of 30 x 20 that is open at one face."""
    return TurnedShape(
        Dim(20.0),
        (Cylinder("body", Dim(30.0), 0, 20),),
        bores=(Bore("hollow", Dim(26.0), face, 16.0, False),),  # type: ignore[arg-type]
        cross_holes=holes,
    )


@pytest.mark.parametrize(("face", "side"), [("A", -1), ("B", 1)])
def test_the_open_face_of_a_pot_is_towards_the_reader(face: str, side: int) -> None:
    """Face A lies to the left: the corner stands on the side of the opening."""
    assert telling_corner(pot(face))[0] == side


@pytest.mark.parametrize("angle", [0.0, 90.0, 180.0, 270.0])
def test_a_hole_in_the_wall_is_towards_the_reader_as_well(angle: float) -> None:
    """The middle of the hole on the outside of the mesh's body lies on the side of the eye."""
    shape = pot("A", CrossHole("hole", Dim(8.0), 10.0, angle, 1))
    corner = telling_corner(shape)
    solid, hollow = pot("A"), mesh_in(body(shape), seen_from_corner(corner, True))
    plain = mesh_in(body(solid), seen_from_corner(corner, True))
    middle = hollow.points.mean(axis=0)
    rim = np.array([p for p in hollow.points if not (np.abs(plain.points - p).max(axis=1) < 1e-6).any()])

    assert corner[0] == -1
    assert rim[:, 2].mean() > middle[2]


def test_of_corners_that_show_the_same_the_usual_one_is_taken() -> None:
    """A plain pin looks the same from all."""
    assert telling_corner(TurnedShape(Dim(20.0), (Cylinder("pin", Dim(6.0), 0, 20),))) == CORNERS[0]


def test_the_view_from_the_usual_corner_is_the_isometric() -> None:
    """And each of the eight is a turn: its axes are at right angles and not mirrored."""
    assert seen_from_corner(CORNERS[0]) == pytest.approx(looked_at("isometric"))
    for corner in CORNERS:
        turn = np.array(seen_from_corner(corner)).reshape(3, 4)[:, :3]
        assert np.allclose(turn @ turn.T, np.eye(3))
        assert np.linalg.det(turn) == pytest.approx(1.0)


def test_the_open_side_of_a_pot_shows_its_two_rims() -> None:
    """More line than the outline alone, which is all that is seen of its floor."""
    lines = isometric_marks(pot("B"))[0]

    assert len(lines) >= 3
