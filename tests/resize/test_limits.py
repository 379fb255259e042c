"""Limits of machines and stock, and walls, on parts whose figures can be told by hand."""

from __future__ import annotations

from dataclasses import replace
from types import SimpleNamespace

import pytest

from tommybar.design import design_from_text
from tommybar.resize.limits import machine_limits
from tommybar.resize.table import Bind
from tommybar.resize.told import held_finding
from tommybar.resize.walls import walls

TEXT = """tommybar: 1
design: Parts
units: mm
sizes: {{}}
parts:
  part:
    material: {material}
    {body}
"""


def asked(body, shop, stock="ask", material="mild steel"):
    """What is asked of a design of one part, by its words."""
    sized = design_from_text(TEXT.format(material=material, body=body)).sized()
    return {one.what: one for one in (*machine_limits(sized, shop, stock), *walls(sized))}


def test_a_disc_against_jaws_and_swing(small_shop):
    """60 from sawn 70: blank 62 against jaws of 75, 64 turning against 72 and 110."""
    found = asked(
        "turned: {length: 12, outside: [{name: rim, dia: 60}]}", small_shop, material="aluminium 6082"
    )

    assert (found["largest jaws"].figure, found["largest jaws"].bound) == (62, 75)
    assert found["swing over the cross-slide"].slack == pytest.approx(8)
    assert found["swing over the bed"].bound == 110
    assert "largest round aluminium 6082" not in found


def test_a_bar_used_as_drawn_needs_no_skin(small_shop):
    """A 16 pin is the 16 rod itself; with a thread on that diameter it must be turned from more."""
    plain = asked("turned: {length: 40, outside: [{name: body, dia: 16}]}", small_shop, "rack")
    screw = asked("turned: {length: 40, outside: [{name: body, thread: M16}]}", small_shop, "rack")

    assert plain["largest round mild steel"].slack == 0
    assert screw["largest round mild steel"].slack == pytest.approx(-0.5)


def test_a_long_part_passes_the_spindle_or_lies_between_centres(small_shop):
    """10 passes the bore of 10.5; 12 does not, and 240 and 2 for facing are over 210 between centres."""
    through = asked("turned: {length: 240, outside: [{name: body, dia: 10}]}", small_shop)
    outside = asked("turned: {length: 240, outside: [{name: body, dia: 12}]}", small_shop)

    assert "distance between centres" not in through
    assert (outside["distance between centres"].figure, outside["distance between centres"].bound) == (
        242,
        210,
    )


def test_a_large_bore_needs_a_bar_that_reaches(small_shop):
    """14 is beyond the drills: 30 deep against a bar of 25; 8 is reamed and asks nothing."""
    body = "turned: {{length: 30, outside: [{{name: rim, dia: 40}}], bores: [{{name: bore, dia: {}, through: true}}]}}"

    assert asked(body.format(14), small_shop)["reach of the boring bar, bore"].slack == -5
    assert not [what for what in asked(body.format(8), small_shop) if "boring" in what]


def test_a_recess_needs_a_floor_wider_than_its_tool(small_shop):
    """Floor (40 - 30) / 2 = 5 where the 4 wide tool asks 6; with a 3 wide tool it does."""
    body = (
        "turned: {length: 12, outside: [{name: rim, dia: 50}],"
        " recesses: [{name: dish, face: A, inside: 30, outside: 40, deep: 5}]}"
    )
    narrow = replace(
        small_shop,
        tools=tuple(replace(tool, width=3.0) if tool.kind == "recess" else tool for tool in small_shop.tools),
    )

    assert asked(body, small_shop)["floor of dish for its tool"].slack == -1
    assert asked(body, narrow)["floor of dish for its tool"].slack == 0


def test_a_plate_against_travel_and_rack(small_shop):
    """Holes 150 apart against 140 of travel; 60 wide against flats of 40. Lying flat it is clamped down: no vice."""
    found = asked(
        "plate: {length: 170, width: 60, thick: 6, holes: [{name: h, face: top, dia: 5, through: true,"
        " at: [[10, 30], [160, 30]]}]}",
        small_shop,
        "rack",
    )

    assert "opening of the mill vice" not in found
    assert found["mill travel, top face"].slack == -10
    assert not found["width of the mild steel"].holds


def test_a_plate_that_stands_must_go_into_the_vice(small_shop):
    """60 thick against 50 of vice when a hole is drilled in its front."""
    found = asked(
        "plate: {length: 80, width: 60, thick: 60, holes: [{name: h, face: front, dia: 5, through: true,"
        " at: [[10, 30]]}]}",
        small_shop,
        "ask",
    )

    assert found["opening of the mill vice"].slack == -10


def test_walls_beside_a_circle_of_holes(small_shop):
    """Circle 36, holes 8, bore 16, rim 50: 6 inside, 3 outside, and 36 sin 36 deg - 8 between."""
    found = asked(
        "turned: {length: 12, outside: [{name: rim, dia: 50}], bores: [{name: bore, dia: 16, through: true}],"
        " holes: [{name: ease, dia: 8, count: 5, circle: 36}]}",
        small_shop,
    )

    assert found["metal inside ease"].figure == pytest.approx(6)
    assert found["metal outside ease"].figure == pytest.approx(3)
    assert found["metal between ease"].figure == pytest.approx(13.160, abs=1e-3)
    assert found["metal inside ease"].bound == 1.5


def test_metal_between_a_hole_and_an_edge(small_shop):
    """M6 at 7 from the edge leaves 4 where 1.5 is asked; at 4 it leaves 1, which is refused."""
    body = (
        "plate: {{length: 60, width: 40, thick: 8, holes: [{{name: m, face: top, thread: M6, through: true,"
        " at: [[{}, 20]]}}]}}"
    )

    assert asked(body.format(7), small_shop)["edge of top m"].figure == pytest.approx(4)
    assert asked(body.format(7), small_shop)["edge of top m"].holds
    assert not asked(body.format(4), small_shop)["edge of top m"].holds


def test_metal_round_an_internal_thread(small_shop):
    """M8 in a 14 body leaves 3 where half the thread, 4, is asked."""
    found = asked(
        "turned: {length: 12, outside: [{name: rim, dia: 14}], bores: [{name: t, thread: M8, through: true}]}",
        small_shop,
    )

    assert (found["metal round the thread t"].figure, found["metal round the thread t"].bound) == (3, 4)
    assert not found["metal round the thread t"].holds


def test_a_limit_that_many_scales_met_is_told_once():
    """Each smaller scale runs into the same tool; the note says it one time for each part."""
    met = [Bind("Ream bore", "disc", 1 - n / 100, 0.83, 0.83, True) for n in range(4)]
    note = held_finding(SimpleNamespace(scale=0.83), [*met, replace(met[0], part="cap")], 1.0)

    assert note.words == "It is made at scale 0.83: for disc, Ream bore; for cap, Ream bore."
