"""Where the arcs of a disc cutter reach the surface: held against the solid of the part."""

from __future__ import annotations

import math

import pytest

from tommybar.pack.sheet import Line
from tommybar.pack.turned.run_out import disc_keyway, run_out
from tommybar.shapes.features import Cylinder, Dim, Keyway, TurnedShape
from tommybar.shapes.mesh import body_of
from tommybar.shapes.solids.construction import construction


def shaft(key: Keyway) -> TurnedShape:
    """A plain shaft of 20 mm with one keyway."""
    return TurnedShape(Dim(80.0), (Cylinder("body", Dim(20.0), 0.0, 80.0),), keyways=(key,))


def test_half_a_chord_by_hand() -> None:
    """A disc of 20 mm, 4 mm below the top: sqrt(10^2 - 6^2) = 8; at a flank 3 mm aside of a round of 5 mm radius 1 less deep."""
    assert run_out(15.0, 4.0, 20.0, 0.0) == pytest.approx(8.0)
    assert run_out(5.0, 4.0, 20.0, 3.0) == pytest.approx(math.sqrt(10.0**2 - 7.0**2))


@pytest.mark.parametrize(
    "key",
    [
        Keyway("sled", 30.0, 44.0, Dim(4.0), 2.0, 0.0, "sled", 30.0),
        Keyway("disc", 40.0, 40.0, Dim(5.0), 3.5, 0.0, "woodruff", 16.0),
    ],
    ids=lambda key: key.form,
)
def test_the_outline_is_where_the_solid_opens(key: Keyway) -> None:
    """The mesh of the part is cut just below the top and at the flank; its gap there is as long as the outline."""
    shape = shaft(key)
    solid = body_of(construction(shape), 720, False)
    ring = next(one for one in disc_keyway(shape, key, 1.0) if isinstance(one, Line) and one.closed).points
    for aside in (0.0, key.width.value / 2 * 0.999):
        high = math.sqrt(10.0**2 - aside**2) - 0.004
        gap = _gap(solid, aside, high)
        drawn = [x for x, y in ring if abs(y - (0.0 if aside == 0.0 else key.width.value / 2)) < 1e-9]
        assert (min(drawn), max(drawn)) == pytest.approx(gap, abs=0.05)


def _gap(solid: object, aside: float, high: float) -> tuple[float, float]:
    """From where to where a line along the axis, so far from it, is free of metal [mm]."""
    along = [n * 0.01 for n in range(100, 7900)]
    import numpy as np
    from shapely import Point, Polygon, prepare

    # across the axis: x is up, y is aside; the section in the plane y = aside has z along
    turned = solid.transform(  # type: ignore[attr-defined]
        np.array([[0.0, 0.0, 1.0, 0.0], [1.0, 0.0, 0.0, 0.0], [0.0, 1.0, 0.0, -aside]])
    )
    rings = [Polygon(one) for one in turned.slice(0.0).to_polygons()]
    whole = rings[0]
    for other in rings[1:]:
        whole = whole.symmetric_difference(other)
    prepare(whole)
    free = [z for z in along if not whole.contains(Point(z, high))]
    return min(free), max(free)
