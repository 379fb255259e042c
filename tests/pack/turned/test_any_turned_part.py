"""Turned parts that nobody drew: whatever features meet, each figure is printed and no word touches a line."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st
from tests.pack.handmade import DESIGN, IMPRINT
from tests.pack.layout import LINES, clashes

from tommybar.design.model import Part
from tommybar.pack.drawing import part_drawing
from tommybar.pack.units import Reader
from tommybar.refusals import Refusal
from tommybar.shapes.features import (
    Bore,
    CentreHole,
    CircleHoles,
    Cone,
    CrossHole,
    Cup,
    Cylinder,
    Dim,
    Flats,
    Groove,
    HeadSlot,
    Keyway,
    Knurl,
    Land,
    Recess,
    TurnedShape,
)
from tommybar.shapes.profile import profile

LOOK = settings(
    max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow, HealthCheck.filter_too_much]
)


@st.composite
def turned_parts(draw: st.DrawFn) -> TurnedShape:
    """Lands in order with grooves, what is milled in them, and an end of each kind."""
    big = draw(st.sampled_from([6.0, 16.0, 40.0, 90.0]))
    lands: list[Land] = []
    grooves: list[Groove] = []
    keyways: list[Keyway] = []
    cross: list[CrossHole] = []
    flats: list[Flats] = []
    z = 0.0
    for n in range(draw(st.integers(1, 6))):
        dia = round(draw(st.floats(0.5, 1.0)) * big, 1)
        long = round(draw(st.floats(0.4, 1.5)) * big, 1)
        end = round(z + long, 2)
        kind = draw(st.sampled_from(["plain", "limits", "cone", "knurl", "groove", "key", "cross", "flats"]))
        size = Dim(dia, "", "h7", dia - 0.02, dia) if kind == "limits" else Dim(dia)
        if kind == "cone":
            lands.append(
                Cone(f"land_{n}", z, end, dia, round(dia * 0.8, 2), draw(st.sampled_from(["D d L", "D L a"])))
            )
        else:
            edge = draw(st.sampled_from([0.0, 0.02 * big]))
            knurl = Knurl("straight", 0.8) if kind == "knurl" else None
            lands.append(Cylinder(f"land_{n}", size, z, end, edge, 0.0, "", knurl))
        middle = round((z + end) / 2, 2)
        if kind == "groove":
            wide = round(long * draw(st.floats(0.05, 0.3)), 2)
            grooves.append(Groove(f"groove_{n}", middle, round(middle + wide, 2), round(dia * 0.85, 2)))
        elif kind == "key":
            keyways.append(
                Keyway(f"key_{n}", middle, round(middle + long / 4, 2), Dim(dia / 4), dia / 8, 90.0)
            )
        elif kind == "cross":
            angle = draw(st.sampled_from([0.0, 30.0, 90.0]))
            cross.append(CrossHole(f"cross_{n}", Dim(round(min(dia, long) / 5, 2)), middle, angle, 2))
        elif kind == "flats":
            count = draw(st.sampled_from([2, 4, 6]))
            level = round(dia * 0.45, 2)
            flats.append(Flats(f"flats_{n}", count, level, middle, end, 0.0, Dim(2 * level)))
        z = end
    least = min(min(one.start_dia, one.end_dia) for one in lands)
    inside = draw(
        st.sampled_from(["solid", "through", "blind", "recess", "cup", "slot", "centres", "circle"])
    )
    return _ended(TurnedShape(
        Dim(z), tuple(lands), tuple(grooves), keyways=tuple(keyways), cross_holes=tuple(cross), flats=tuple(flats)
    ), inside, least)  # fmt: skip


def _ended(shape: TurnedShape, inside: str, least: float) -> TurnedShape:
    length = shape.length.value
    first = shape.outside[0].start_dia
    bore = round(least * 0.4, 2)
    size = Dim(bore, "", "H7", bore, bore + 0.015)
    if inside == "through":
        return replace(shape, bores=(Bore("bore", size, "A", length, True),))
    if inside == "blind":
        return replace(shape, bores=(Bore("bore", size, "B", round(length / 3, 2), False, "drill"),))
    if inside == "recess":
        return replace(
            shape,
            recesses=(
                Recess("dish", "A", round(first * 0.3, 2), round(first * 0.7, 2), round(length * 0.1, 2)),
            ),
        )
    if inside == "cup":
        return replace(shape, cups=(Cup("cup", "A", bore, 90.0),))
    if inside == "slot":
        return replace(
            shape, head_slots=(HeadSlot("slot", "A", Dim(round(first / 8, 2)), round(length * 0.05, 2)),)
        )
    if inside == "centres" and least > 5.0:
        return replace(
            shape, centres=(CentreHole("centre", "A", "A", 1.0), CentreHole("far", "B", "A", 1.0, "must"))
        )
    if inside == "circle":
        holes = CircleHoles("holes", Dim(round(least / 12, 2)), 4, round(least * 0.6, 2), 45.0, 0.0, length)
        return replace(shape, circle_holes=(holes,))
    return shape


@LOOK
@given(turned_parts(), st.sampled_from(["mm", "in"]), st.sampled_from(["A4", "Letter"]))
def test_any_turned_part_is_drawn_without_a_collision_and_without_a_double(
    shape: TurnedShape, unit: str, paper: str
) -> None:
    """No word touches a word, a line or hatching; no size of a feature is printed twice; all lands are there."""
    try:
        profile(shape)
    except Refusal:
        assume(False)
    imprint = replace(IMPRINT, reader=Reader(unit), paper=paper)  # type: ignore[arg-type]
    sheet = part_drawing(Part("part", "turned", "mild steel", 1, shape), DESIGN, imprint)
    kept = sheet.dimensions()

    assert clashes(sheet, LINES) == []
    assert [key for key, count in Counter((one.feature, one.size) for one in kept).items() if count > 1] == []
    assert {one.name for one in shape.outside} <= {one.feature for one in kept}
