"""Laws of shape: how volume, mass and inertia follow the scale, and what a mirror leaves alone."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tommybar.shapes.features import Bore, CircleHoles, CrossHole, Cylinder, Dim, Face, Recess, TurnedShape
from tommybar.shapes.mass import mass_properties
from tommybar.shapes.section import half_section


@st.composite
def wheels(draw: st.DrawFn) -> TurnedShape:
    """Wheels with a rim, a boss, a recess, a bore, holes on a circle and a cross hole."""
    edges = st.one_of(st.just(0.0), st.floats(0.1, 1.0))
    rim, wide = draw(st.floats(40, 160)), draw(st.floats(8, 30))
    boss, boss_long = rim * draw(st.floats(0.2, 0.35)), draw(st.floats(4, 15))
    bore = boss * draw(st.floats(0.3, 0.6))
    rim_in, web = rim * draw(st.floats(0.65, 0.9)), wide * draw(st.floats(0.2, 0.6))
    length = wide + boss_long
    hole = (rim_in - boss) / 2 * draw(st.floats(0.2, 0.7))
    return TurnedShape(
        Dim(length),
        (
            Cylinder("rim", Dim(rim), 0.0, wide, draw(edges), draw(edges)),
            Cylinder("boss", Dim(boss), wide, length),
        ),
        bores=(Bore("bore", Dim(bore), "A", length, True),),
        recesses=(Recess("recess", "A", boss, rim_in, wide - web),),
        circle_holes=(
            CircleHoles("ease", Dim(hole), draw(st.integers(3, 8)), (boss + rim_in) / 2, 0, wide - web, wide),
        ),
        cross_holes=(CrossHole("grub", Dim(boss_long / 3), wide + boss_long / 2, draw(st.floats(0, 360))),),
    )


def scaled(shape: TurnedShape, s: float) -> TurnedShape:
    """The same form with every length times s."""

    def dim(one: Dim) -> Dim:
        return Dim(one.value * s)

    return TurnedShape(
        dim(shape.length),
        tuple(
            Cylinder(c.name, dim(c.dia), c.start * s, c.end * s, c.edge_start * s, c.edge_end * s)
            for c in shape.outside
            if isinstance(c, Cylinder)
        ),
        bores=tuple(replace(b, dia=dim(b.dia), depth=b.depth * s) for b in shape.bores),
        recesses=tuple(
            replace(r, inside=r.inside * s, outside=r.outside * s, depth=r.depth * s) for r in shape.recesses
        ),
        circle_holes=tuple(
            replace(h, dia=dim(h.dia), circle=h.circle * s, start=h.start * s, end=h.end * s)
            for h in shape.circle_holes
        ),
        cross_holes=tuple(replace(h, dia=dim(h.dia), z=h.z * s) for h in shape.cross_holes),
    )


def mirrored(shape: TurnedShape) -> TurnedShape:
    """The same form with its faces exchanged."""
    long = shape.length.value
    other: dict[Face, Face] = {"A": "B", "B": "A"}
    return TurnedShape(
        shape.length,
        tuple(
            Cylinder(c.name, c.dia, long - c.end, long - c.start, c.edge_end, c.edge_start)
            for c in shape.outside
            if isinstance(c, Cylinder)
        ),
        bores=tuple(replace(b, face=other[b.face]) for b in shape.bores),
        recesses=tuple(replace(r, face=other[r.face]) for r in shape.recesses),
        circle_holes=tuple(replace(h, start=long - h.end, end=long - h.start) for h in shape.circle_holes),
        cross_holes=tuple(replace(h, z=long - h.z) for h in shape.cross_holes),
    )


@settings(max_examples=40, deadline=None)
@given(wheels(), st.floats(0.3, 3.0))
def test_mass_goes_with_the_cube_and_inertia_with_the_fifth_power(shape: TurnedShape, s: float) -> None:
    """Scaling by s gives s3 of mass, s5 of inertia, s of the centre."""
    small, large = mass_properties(shape, 7.85), mass_properties(scaled(shape, s), 7.85)

    assert large.mass == pytest.approx(small.mass * s**3, rel=1e-7)
    assert large.centre == pytest.approx(small.centre * s, rel=1e-7)
    assert large.inertia_axis == pytest.approx(small.inertia_axis * s**5, rel=1e-7)
    assert large.inertia_across == pytest.approx(small.inertia_across * s**5, rel=1e-7)


@settings(max_examples=40, deadline=None)
@given(wheels())
def test_a_mirror_leaves_mass_and_inertia_alone(shape: TurnedShape) -> None:
    """Exchanging the faces moves the centre to the other side and changes nothing else."""
    one, other = mass_properties(shape, 7.85), mass_properties(mirrored(shape), 7.85)

    assert other.mass == pytest.approx(one.mass, rel=1e-9)
    assert other.centre == pytest.approx(shape.length.value - one.centre, rel=1e-9)
    assert other.inertia_across == pytest.approx(one.inertia_across, rel=1e-7)
    assert half_section(mirrored(shape)).area == pytest.approx(half_section(shape).area, rel=1e-12)


@settings(max_examples=40, deadline=None)
@given(wheels())
def test_a_body_is_never_flatter_than_a_disc(shape: TurnedShape) -> None:
    """Perpendicular axes: inertia across is at least half of that about the axis."""
    found = mass_properties(shape, 7.85)

    assert found.inertia_across >= found.inertia_axis / 2 * (1 - 1e-9)
    assert found.volume < half_section(shape).envelope.area * 3.1416 * shape.outside[0].dia.value  # type: ignore[union-attr]
