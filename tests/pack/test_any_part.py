"""Drawings of parts nobody looked at: whatever the shape, no words lie on words or on a thick line."""

from __future__ import annotations

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tommybar.design.model import Part
from tommybar.pack.drawing import part_drawing
from tommybar.pack.sheet import Dimension
from tommybar.shapes.features import (
    Bore,
    CircleHoles,
    CrossHole,
    Cylinder,
    Dim,
    PlateHole,
    PlateShape,
    Recess,
    Shape,
    TurnedShape,
)

from .handmade import DESIGN, IMPRINT
from .layout import LINES, THICK, clashes

LOOK = settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])


@st.composite
def shafts(draw: st.DrawFn) -> TurnedShape:
    """Stepped shafts, some bored through, some cross-drilled, from needles to rollers."""
    big = draw(st.sampled_from([3.0, 8.0, 20.0, 60.0]))
    z, cylinders = 0.0, []
    for n in range(draw(st.integers(1, 7))):
        dia = round(draw(st.floats(0.35, 1.0)) * big, 1)
        long = round(draw(st.floats(1.2, 45.0)), 1)
        limits = (dia - 0.015, dia) if draw(st.booleans()) else (None, None)
        size = Dim(dia, f"part.step_{n}", "h7" if limits[0] else "", *limits)
        cylinders.append(Cylinder(f"step_{n}", size, z, round(z + long, 2)))
        z = round(z + long, 2)
    bores: tuple[Bore, ...] = ()
    smallest = min(one.dia.value for one in cylinders)
    if draw(st.booleans()) and smallest > 2.5:
        dia = round(smallest / 2, 1)
        bores = (Bore("bore", Dim(dia, "part.bore", "H7", dia, dia + 0.012), "A", z, True),)
    widest = max(cylinders, key=lambda one: one.end - one.start)
    cross: tuple[CrossHole, ...] = ()
    if draw(st.booleans()) and widest.end - widest.start > 4 and widest.dia.value > 5:
        place = round((widest.start + widest.end) / 2, 2)
        cross = (CrossHole("pin", Dim(1.2, "part.pin"), place, 0.0, 2),)
    return TurnedShape(Dim(z, "part.length"), tuple(cylinders), bores=bores, cross_holes=cross)


@st.composite
def discs(draw: st.DrawFn) -> TurnedShape:
    """Wheels with a bore, perhaps a recess, perhaps holes on one circle or two."""
    dia = round(draw(st.floats(20.0, 200.0)), 1)
    wide = round(dia * draw(st.floats(0.1, 0.5)), 1)
    bore = round(dia * 0.12, 1)
    face = draw(st.sampled_from(["A", "B"]))
    recess = Recess("dish", face, round(dia * 0.3, 1), round(dia * 0.8, 1), round(wide * 0.4, 1), 0.2)
    ease = CircleHoles(
        "ease", Dim(round(dia * 0.08, 1)), draw(st.integers(1, 9)), round(dia * 0.55, 1), 90, 0, wide
    )
    small = CircleHoles("small", Dim(round(dia * 0.04, 1)), 4, round(dia * 0.88, 1), 0.0, 0.0, wide)
    holes = draw(st.sampled_from([(), (ease,), (ease, small)]))
    return TurnedShape(
        Dim(wide, "part.length"),
        (Cylinder("rim", Dim(dia, "part.rim"), 0.0, wide, 0.3, 0.3),),
        bores=(Bore("bore", Dim(bore, "part.bore", "H7", bore, bore + 0.02), "A", wide, True, edge=0.2),),
        recesses=(recess,) if draw(st.booleans()) else (),
        circle_holes=holes,
    )


@st.composite
def plates(draw: st.DrawFn) -> PlateShape:
    """Plates with holes on a coarse grid in the top and in the front edge."""
    long = round(draw(st.floats(20.0, 400.0)), 1)
    wide = round(long * draw(st.floats(0.2, 1.0)), 1)
    thick = round(draw(st.floats(4.0, 20.0)), 1)
    grid = draw(st.sets(st.tuples(st.integers(1, 5), st.integers(1, 3)), max_size=8))
    holes = [
        PlateHole(f"top_{i}{j}", "top", long * i / 6, wide * j / 4, Dim(round(wide / 20 + 0.5, 1)))
        for i, j in sorted(grid)
    ]
    for i in sorted(draw(st.sets(st.integers(1, 5), max_size=2))):
        holes.append(
            PlateHole(f"front_{i}", "front", long * i / 6, thick / 2, Dim(thick / 5), round(wide / 8, 1))
        )
    return PlateShape(Dim(long, "part.length"), Dim(wide), Dim(thick), holes=tuple(holes))


def sheet_of(shape: Shape) -> tuple[list[str], list[float]]:
    """Clashes and dimensioned figures of a part's drawing."""
    kind = "turned" if isinstance(shape, TurnedShape) else "plate"
    sheet = part_drawing(Part("part", kind, "mild steel", 1, shape), DESIGN, IMPRINT)  # type: ignore[arg-type]
    return clashes(sheet, LINES if kind == "turned" else THICK), [
        one.value for one in sheet.marks if isinstance(one, Dimension)
    ]


@LOOK
@given(shafts())
def test_any_shaft_is_drawn_without_a_clash_and_with_every_diameter(shape: TurnedShape) -> None:
    """Each step's diameter and the overall length are dimensioned."""
    found, figures = sheet_of(shape)

    assert found == []
    assert {one.dia.value for one in shape.outside if isinstance(one, Cylinder)} <= set(figures)
    assert shape.length.value in figures


@LOOK
@given(discs())
def test_any_disc_is_drawn_without_a_clash(shape: TurnedShape) -> None:
    """With an end view or without, recess in either face."""
    found, figures = sheet_of(shape)

    assert found == []
    assert shape.bores[0].dia.value in figures


@LOOK
@given(plates())
def test_any_plate_is_drawn_without_a_clash(shape: PlateShape) -> None:
    """The numbers of the holes find their place however close the holes stand."""
    found, figures = sheet_of(shape)

    assert found == []
    assert {shape.length.value, shape.width.value, shape.thickness.value} <= set(figures)
