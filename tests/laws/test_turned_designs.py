"""Laws of turned sections and designs: exact and polygon agree, nothing ends in anything but a refusal."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon

from tommybar.design import design_from_text
from tommybar.refusals import Refusal
from tommybar.shapes.curves import ArcPiece, Line, Ring
from tommybar.shapes.cutting import area, difference
from tommybar.shapes.mass import mass_properties
from tommybar.shapes.moments import revolved
from tommybar.shapes.profile import profile

HEAD = """tommybar: 1
design: Drawn at random
units: mm
parts:
  part:
    material: mild steel
    turned:
"""


def lens(x: float, y: float, radius: float, chord: float) -> Ring:
    """A ring of one arc and its chord."""
    half = min(chord, 1.9 * radius) / 2
    low = y - math.sqrt(radius**2 - half**2)
    a, b = (x + half, y), (x - half, y)
    return (ArcPiece(a, b, (x, low), True), Line(b, a))


def polygon(ring: Ring) -> Polygon:
    """The ring with its arcs as very many chords."""
    points = []
    for piece in ring:
        count = 1500 if isinstance(piece, ArcPiece) else 1
        points += [piece.at(n / count) for n in range(count)]
    return Polygon(points)


pieces = st.tuples(st.floats(-3, 3), st.floats(-3, 3), st.floats(0.5, 4), st.floats(0.4, 6)).map(
    lambda given: lens(*given)
)


@settings(max_examples=60, deadline=None)
@given(pieces, st.lists(pieces, min_size=1, max_size=3))
def test_what_is_left_of_a_region_is_what_polygons_leave(body: Ring, cuts: list[Ring]) -> None:
    """Lines and arcs cut out of lines and arcs have the area that a polygon library finds for fine chords."""
    rings: tuple[Ring, ...] = (body,)
    left = polygon(body)
    for cut in cuts:
        rings = difference(rings, cut)
        left = left.difference(polygon(cut))

    assert area(rings) == pytest.approx(left.area, abs=1e-4)


def number(low: float, high: float) -> st.SearchStrategy[float]:
    """A figure of a drawing, to a tenth."""
    return st.floats(low, high).map(lambda value: round(value, 1))


@st.composite
def designs(draw: st.DrawFn) -> str:
    """A turned part with a few features whose figures are drawn without regard to each other."""
    dias = draw(st.lists(number(8, 40), min_size=1, max_size=4))
    lines = ["      outside:"]
    for n, dia in enumerate(dias):
        edge = draw(
            st.sampled_from(
                ["", ", edges: 0.3", ", edge_b: 0.5 round", ", edges: 1 x 15 deg", ", corner: 0.4"]
            )
        )
        if "edge_b" in edge and n + 1 < len(dias) and dias[n + 1] >= dia:
            edge = ""
        lines.append(f"        - {{name: land{n}, dia: {dia}, long: {draw(number(6, 30))}{edge}}}")
    last, least = dias[-1], min(dias)
    end = draw(
        st.sampled_from(
            [
                "",
                f"{{name: dome, dia: {last}, dome: {{radius: {last}}}}}",
                f"{{name: point, dia: {last}, point: {{included: 90 deg, flat: 1}}}}",
                f"{{name: cone, cone: {{large: {last}, half_angle: 10 deg}}, long: 5}}",
                f"{{name: cove, cove: {{a: {last}, b: {last}, radius: 20}}, long: 6}}",
            ]
        )
    )
    if end:
        lines.append(f"        - {end}")
    wide = draw(number(1, 8))
    form, walls = draw(st.sampled_from(["square", "round", "vee"])), draw(st.sampled_from([1, 2]))
    count, angle = draw(st.sampled_from([1, 2, 4, 6])), draw(number(0, 360))
    deep, level = draw(number(0.3, 3)), draw(number(dias[0] * 0.4, dias[0] * 0.49))
    hole, bore, mouth = draw(number(1, 5)), draw(number(2, least * 0.8)), draw(number(2, dias[0]))
    more = {
        "grooves": f"{{name: g, on: land0, at: middle, wide: {wide}, deep: {deep}, form: {form}}}",
        "bores": f"{{name: b, dia: {bore}, through: true, edge: 0.3}}",
        "cross_holes": f"{{name: h, dia: {hole}, on: land0, walls: {walls}, angle: {angle} deg}}",
        "flats": f"{{name: f, on: land0, count: {count}, level: {level}}}",
        "keyways": f"{{name: k, on: land0, from_a: 1, long: {draw(number(3, 20))}, wide: 2, deep: {deep}}}",
        "head_slots": f"{{name: s, face: A, wide: 1, deep: {deep}}}",
        "cups": f"{{name: c, face: A, mouth: {mouth}, included: 90 deg}}",
    }
    for key in draw(st.lists(st.sampled_from(sorted(more)), max_size=3, unique=True)):
        lines.append(f"      {key}: [{more[key]}]")
    return HEAD + "\n".join(lines) + "\n"


def test_designs_drawn_at_random_load_or_are_refused_with_a_place() -> None:
    """Three hundred designs: a closed section and a weight, or a refusal that says where; most are accepted."""
    told = {"accepted": 0, "refused": 0}

    @settings(max_examples=300, deadline=None, database=None, derandomize=True)
    @given(designs())
    def each(text: str) -> None:
        try:
            shape = design_from_text(text, "drawn.yaml").sized().part("part").shape
        except Refusal as refusal:
            assert all(one.line > 0 for one in refusal.complaints)
            told["refused"] += 1
            return
        told["accepted"] += 1
        ring = profile(shape)
        ends = [*ring[1:], ring[0]]
        assert all(math.dist(one.end, other.start) < 1e-9 for one, other in zip(ring, ends, strict=True))
        assert area([ring]) > 0

    each()
    assert told["accepted"] >= 0.6 * (told["accepted"] + told["refused"]), told


@settings(max_examples=40, deadline=None)
@given(designs())
def test_what_is_milled_leaves_a_body_of_the_same_laws(text: str) -> None:
    """Metal is left, never more than was turned, and it is no flatter than a disc."""
    try:
        shape = design_from_text(text).sized().part("part").shape
    except Refusal:
        return
    found = mass_properties(shape, 7.85)

    assert 0 < found.volume <= revolved(profile(shape)).volume * (1 + 1e-9)
    assert found.inertia_across >= found.inertia_axis / 2 * (1 - 1e-9)
