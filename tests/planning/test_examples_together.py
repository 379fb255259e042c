"""Every example put together: each piece has its place, nothing stands in anything, and what turns runs free."""

from __future__ import annotations

import math
from functools import cache
from pathlib import Path

import pytest

from tommybar.assembly.interference import overlaps
from tommybar.assembly.order import order_of
from tommybar.assembly.placing import Assembly, assembled
from tommybar.checks.together import look_together
from tommybar.design import load_design
from tommybar.design.loaded import design_from_text
from tommybar.design.model import SizedDesign
from tommybar.shapes.solids.frames import Vector, direction, point

EXAMPLES = Path(__file__).resolve().parents[2] / "examples"
NAMES = sorted(one.parent.name for one in EXAMPLES.glob("*/design.yaml"))
WRONG = (650, 652, 653, 654, 656, 659)
"""Not placed, relations that disagree, metal in metal, a strike in turning, no way together, not looked at."""


@cache
def together(name: str) -> tuple[SizedDesign, Assembly]:
    design = load_design(EXAMPLES / name / "design.yaml").sized()
    return design, assembled(design)


def test_there_are_ten():
    assert len(NAMES) == 10


@pytest.mark.parametrize("name", NAMES)
def test_every_piece_stands_and_none_in_another(name):
    design, whole = together(name)
    assert whole.unplaced == ()
    assert len(whole.placements) == sum(part.count for part in design.parts)
    assert overlaps(design, whole) == ()
    assert [one.words for one in look_together(design) if one.number in WRONG] == []


@pytest.mark.parametrize("name", [one for one in NAMES if one != "finger-top"])
def test_the_order_of_assembly_names_every_piece_but_the_first(name):
    design, whole = together(name)
    order = order_of(design, whole)
    assert order.possible
    told = {piece for step in order.steps for piece in step.pieces}
    assert len(told) == len(whole.placements) - 1


def without(name: str, line: str) -> SizedDesign:
    """An example without the line that begins so."""
    text = (EXAMPLES / name / "design.yaml").read_text(encoding="utf-8")
    lines = text.splitlines()
    assert sum(line in one for one in lines) == 1
    return design_from_text("\n".join(one for one in lines if line not in one)).sized()


@pytest.mark.parametrize(
    ("name", "line", "number"),
    [
        ("toolmakers-clamp", "stands: bar.bar", 650),
        ("toolmakers-clamp", "stands: clip.right", 651),
        ("tap-follower", "stands: plunger.spigot", 651),
        ("rope-drive-jockey", "stud: stud.thread", 650),
    ],
)
def test_a_relation_that_is_missing_is_told(name, line, number):
    """Each of these lines is what places a piece: without it a note says so."""
    assert number in [one.number for one in look_together(without(name, line))]


def test_a_keeper_too_short_meets_the_drum():
    """The planted fault: its leg 9 shorter than drum, rope and gap want."""
    text = (EXAMPLES / "rope-drive-jockey" / "design.yaml").read_text(encoding="utf-8")
    short = text.replace("drum_dia / 2 + rope + keeper_gap", "drum_dia / 2 - 1")
    assert short != text
    found = [one.number for one in look_together(design_from_text(short).sized())]
    assert {653, 654} & set(found)


def spot(name: str, part: str, at: Vector) -> Vector:
    placed = together(name)[1].of(part)
    assert placed
    return point(placed.frame, at)


def test_the_jaws_stand_parallel_and_as_far_apart_as_they_are_drawn():
    """Gripping faces 8 apart, noses at one end, the pilot on the floor of its dimple 4 deep in 12."""
    inner = [spot("toolmakers-clamp", jaw, (60.0, 0.0, 8.0)) for jaw in ("lower", "upper")]
    assert inner[0][2] == pytest.approx(12.0)
    assert inner[1][2] == pytest.approx(20.0)
    assert inner[0][:2] == pytest.approx(inner[1][:2])
    long = together("toolmakers-clamp")[0].part("back_screw").shape.length.value
    assert spot("toolmakers-clamp", "back_screw", (0.0, 0.0, long))[2] == pytest.approx(12.0 - 4.0)


def test_the_jockey_stands_by_its_stack():
    """Bracket 8, collar 5, drum 20 with 0.2 of float, washer 2 on the journal's end."""
    assert spot("rope-drive-jockey", "stud", (0, 0, 25.2))[2] == pytest.approx(8.0)
    drum = sorted(spot("rope-drive-jockey", "drum", (0, 0, z))[2] for z in (0.0, 20.0))
    assert 13.0 <= drum[0] <= 13.2
    washer = sorted(spot("rope-drive-jockey", "washer", (9, 9, z))[2] for z in (0.0, 2.0))
    assert washer == pytest.approx([33.2, 35.2])


def test_the_spring_of_the_follower_fills_its_place():
    """The pin 11 from the open end, 25 from the point: the rod ends 20 deep in 40, so the spring is 20 long."""
    spring = together("tap-follower")[0].part("spring").standing
    assert spring.free == pytest.approx(20.0)
    faces = sorted(spot("tap-follower", "spring", (0, 0, z))[2] for z in (0.0, 20.0))
    # the body of 60 stands on its closed end, its bore 40 deep: the floor 20 up, the rod's end 40 up
    assert faces == pytest.approx([20.0, 40.0])


def test_the_rod_of_the_dial_leans_by_the_latitude_and_points_out_of_the_root_of_its_hours():
    design, whole = together("gnomon-block")
    rod = whole.of("gnomon")
    assert rod
    x, y, z = direction(rod.frame, (0.0, 0.0, -1.0))
    assert math.degrees(math.asin(z)) == pytest.approx(52.0)
    assert (x > 0, y) == (True, pytest.approx(0.0, abs=1e-9))  # towards north, that is x of the dial
    low = spot("gnomon-block", "gnomon", (0.0, 0.0, 0.0))
    fan = design.part("dial").shape.rays[0]
    along = (3.0 - low[2]) / z  # to the top of the dial
    assert (low[0] + along * x, low[1] + along * y) == pytest.approx((fan.x, fan.y))
    # 20 from the edge to the block; its hole goes through the middle of it and leaves 20 / tan 52 / 2 before
    assert fan.x == pytest.approx(20 + 30 - 10 / math.tan(math.radians(52)))


def test_hours_at_52_degrees_by_hand():
    """sin 52 = 0.788011; tan 15, 30, 45, 60, 75 = 0.267949, 0.577350, 1, 1.732051, 3.732051."""
    fan = together("gnomon-block")[0].part("dial").shape.rays[0]
    tangents = (0.267949, 0.577350, 1.0, 1.732051, 3.732051)
    hand = [math.degrees(math.atan(0.788011 * one)) for one in tangents]
    assert [-one for one in fan.angles[7:12]] == pytest.approx(hand, abs=1e-3)
    assert fan.words[6] == "12" and len(fan.words) == len(fan.angles) == 13
