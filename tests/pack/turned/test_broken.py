"""Places broken out of shafts and screws: what they show, where they stop, and where a hole stays as it is seen."""

from __future__ import annotations

import math

import pytest
import shapely
from tests.pack.handmade import DESIGN, IMPRINT
from tests.pack.layout import LINES, clashes

from tommybar.design.model import Part
from tommybar.pack.drawing import part_drawing
from tommybar.pack.sheet import Arc, Area, Line
from tommybar.pack.turned.broken import broken_out
from tommybar.pack.turned.view import shape_marks
from tommybar.shapes.features import CentreHole, CrossHole, Cylinder, Dim, Flats, Keyway, Knurl, TurnedShape


def shaft(
    *holes: CrossHole, centres: tuple[CentreHole, ...] = (), keys: tuple[Keyway, ...] = ()
) -> TurnedShape:
    """A solid shaft of 20 x 80."""
    return TurnedShape(
        Dim(80.0), (Cylinder("body", Dim(20.0), 0, 80),), cross_holes=holes, centres=centres, keyways=keys
    )


def hatched(shape: TurnedShape) -> shapely.Geometry:
    """All hatched metal of the view at full size, y upwards."""
    areas = [one for one in shape_marks(shape, 1.0) if isinstance(one, Area) and one.fill == "hatch"]
    return shapely.union_all(
        [shapely.Polygon([(x, -y) for x, y in one.rings[0]], [[(x, -y) for x, y in r] for r in one.rings[1:]])
         for one in areas]
    )  # fmt: skip


def test_a_hole_through_a_shaft_is_seen_in_a_place_broken_out_over_its_whole_height() -> None:
    """Hatching on both sides of the hole, from rim to rim, none in the hole and none far from it; no circle."""
    metal = hatched(shaft(CrossHole("pin", Dim(4.0), 40.0, 0.0, 2)))

    assert metal.bounds[1] == pytest.approx(-10.0)
    assert metal.bounds[3] == pytest.approx(10.0)
    assert not metal.intersects(shapely.box(38.01, -10, 41.99, 10))
    assert metal.contains(shapely.Point(37.0, 5.0))
    assert metal.contains(shapely.Point(43.0, -5.0))
    assert 34.0 < metal.bounds[0] < 37.0
    assert not [
        one
        for one in shape_marks(shaft(CrossHole("pin", Dim(4.0), 40.0, 0.0, 2)), 1.0)
        if isinstance(one, Arc)
    ]


def test_a_blind_hole_is_broken_out_on_its_side_only_and_ends_in_its_tip() -> None:
    """8 deep from the outside: flat at 2 above the axis, its tip of 118 degrees 1.2 mm below that."""
    metal = hatched(shaft(CrossHole("dimple", Dim(4.0), 40.0, 0.0, 1, depth=8.0)))
    tip = 2.0 - 2.0 / math.tan(math.radians(59.0))

    assert -6.0 < metal.bounds[1] < tip
    assert not metal.intersects(shapely.Point(40.0, tip + 0.05))
    assert metal.contains(shapely.Point(40.0, tip - 0.05))


def test_the_lines_of_the_outside_stop_at_the_freehand_line() -> None:
    """No stretch of the outline runs across the mouth of the hole; thin lines bound the metal."""
    marks = shape_marks(shaft(CrossHole("pin", Dim(4.0), 40.0, 0.0, 2)), 1.0)
    mouth = shapely.box(39.0, 9.9, 41.0, 10.1)  # the curve of the mouth runs below it
    thick = [
        shapely.LineString([(x, -y) for x, y in one.points])
        for one in marks
        if isinstance(one, Line) and one.kind == "thick"
    ]
    thin = [one for one in marks if isinstance(one, Line) and one.kind == "thin" and len(one.points) > 8]

    assert not any(line.intersects(mouth) for line in thick)
    assert len(thin) == 2


def test_a_centre_hole_is_broken_out_unless_it_must_not_stay() -> None:
    """Form A of 2.5: a mouth of 5.3 by ISO 6411 (table of the shapes); metal lies 0.1 mm beside it and not within."""
    kept = shaft(centres=(CentreHole("c", "A", "A", 2.5, "may"),))
    metal = hatched(kept)

    assert metal.contains(shapely.Point(0.05, 2.75))
    assert not metal.intersects(shapely.Point(0.05, 2.55))
    assert metal.bounds[2] < 14.0
    assert broken_out(shaft(centres=(CentreHole("c", "A", "A", 2.5, "must not"),))) == frozenset()


def test_a_hole_stays_as_it_is_seen_where_a_knurl_a_flat_or_a_keyway_has_the_same_place() -> None:
    """One view cannot show both."""
    hole = CrossHole("pin", Dim(4.0), 40.0, 0.0, 2)
    knurled = TurnedShape(
        Dim(80.0), (Cylinder("body", Dim(20.0), 0, 80, knurl=Knurl("straight", 1.0)),), cross_holes=(hole,)
    )
    flat = TurnedShape(
        Dim(80.0),
        (Cylinder("body", Dim(20.0), 0, 80),),
        cross_holes=(hole,),
        flats=(Flats("f", 2, 9.0, 30, 50, 0.0),),
    )

    assert broken_out(knurled) == broken_out(flat) == frozenset()
    assert broken_out(shaft(hole, keys=(Keyway("k", 38, 60, Dim(5.0), 3.0, 0.0),))) == frozenset()
    assert broken_out(shaft(hole, keys=(Keyway("k", 50, 60, Dim(5.0), 3.0, 0.0),))) == {"pin"}


def test_words_stay_clear_of_places_broken_out() -> None:
    """A tapped hole on each side of the axis, and both centre holes."""
    shape = shaft(
        CrossHole("up", Dim(4.0), 25.0, 90.0, 1, "M4", depth=9.0), CrossHole("down", Dim(3.0), 50.0, 270.0, 1, depth=6.0),
        centres=(CentreHole("a", "A", "A", 2.5, "may"), CentreHole("b", "B", "R", 2.5, "must")),
    )  # fmt: skip
    sheet = part_drawing(Part("shaft", "turned", "steel", 1, shape), DESIGN, IMPRINT)

    assert broken_out(shape) == {"up", "down", "a", "b"}
    assert clashes(sheet, LINES) == []
