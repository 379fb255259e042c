"""Pieces that stand where the design says it, and nuts, washers and springs where their stack puts them.

Every expected place is worked out by hand from the sizes written beside it;
heights of washers and nuts are those of ISO 7089 and ISO 4032 as the tables
of fasteners give them.
"""

from __future__ import annotations

import math
from itertools import pairwise

import pytest

from tommybar.assembly.interference import overlaps
from tommybar.assembly.placing import assembled
from tommybar.design.loaded import design_from_text
from tommybar.design.model import SizedDesign
from tommybar.refusals import Refusal
from tommybar.shapes.solids.frames import Frame, Vector, direction, point

HEAD = "tommybar: 1\ndesign: Stand\nunits: mm\n"
PLATE = """  {name}:
    material: mild steel
    plate:
      length: {long}
      width: 30
      thick: {thick}
      holes: [{{name: bore, face: top, dia: {dia}, through: true, at: [[{x}, 15]]}}]
"""
STUD = """  stud:
    material: mild steel
    turned:
      outside:
        - {name: collar, dia: 16, long: 5}
        - {name: thread, thread: M8, long: THREAD}
"""


def sized(parts: str, relations: str, foot: str = "") -> SizedDesign:
    """A design of these parts and relations."""
    head = HEAD + (f"foot: {foot}\n" if foot else "")
    return design_from_text(f"{head}parts:\n{parts}relations:\n{relations}").sized()


def plate(name: str, long: float = 40, thick: float = 8, dia: float = 9, x: float = 20) -> str:
    return PLATE.format(name=name, long=long, thick=thick, dia=dia, x=x)


def at(frame: Frame, spot: Vector) -> Vector:
    x, y, z = (round(one, 6) + 0.0 for one in point(frame, spot))
    return x, y, z


def bolted(thread: float = 19, washer: str = "washer: ISO 7089, ") -> SizedDesign:
    parts = plate("bracket") + STUD.replace("THREAD", f"{thread:g}")
    parts += "  nut: {bought: ISO 4032 M8}\n  flat: {bought: ISO 7089 M8}\n"
    joint = f"  - {{screw: M8, through: bracket.bore, {washer}nut: ISO 4032, stud: stud.thread}}\n"
    return sized(parts, joint, "bracket.bottom")


def test_a_nut_and_its_washer_stand_behind_what_the_stud_holds():
    """Collar on the top of 8 mm of plate; washer from 0 down to -1.6, nut from there to -8.4 (6.8 high)."""
    whole = assembled(bolted())
    stud, flat, nut = (whole.of(name) for name in ("stud", "flat", "nut"))
    assert stud and flat and nut and whole.unplaced == ()
    assert at(stud.frame, (0, 0, 5)) == (20.0, 15.0, 8.0)
    assert sorted(at(flat.frame, (0, 0, z))[2] for z in (0.0, 1.6)) == [-1.6, 0.0]
    assert sorted(at(nut.frame, (0, 0, z))[2] for z in (0.0, 6.8)) == [-8.4, -1.6]
    assert overlaps(bolted()) == ()


def test_a_stud_too_short_for_its_nut_is_refused_with_both_figures():
    """8 + 1.6 + 6.8 + two pitches of 1.25 are 18.9."""
    with pytest.raises(Refusal, match=r"stud.thread is 18 mm long; .* are 18.9 mm"):
        bolted(thread=18)


def test_a_bought_screw_takes_its_washers_and_nut():
    """Two plates of 8: head over a washer on top, washer and nut below; ISO 7089 M8 is 1.6 thick."""
    parts = plate("upper") + plate("lower") + "  bolt: {bought: ISO 4017 M8 x 30}\n"
    parts += "  nut: {bought: ISO 4032 M8}\n  flats: {bought: ISO 7089 M8, count: 2}\n"
    joint = "  - {screw: M8, through: [upper.bore, lower.bore], head: ISO 4017, washer: [ISO 7089, ISO 7089], nut: ISO 4032}\n"
    whole = assembled(sized(parts, joint, "lower.bottom"))
    assert whole.unplaced == ()
    bolt, nut = whole.of("bolt"), whole.of("nut")
    flats = [whole.of("flats", n) for n in (1, 2)]
    assert bolt and nut and all(flats)
    assert at(bolt.frame, (0, 0, 0))[2] == pytest.approx(16 + 1.6)
    assert direction(bolt.frame, (0, 0, 1))[2] == pytest.approx(-1)
    ends = sorted(at(one.frame, (0, 0, z))[2] for one in flats if one for z in (0.0, 1.6))
    assert ends == pytest.approx([-1.6, 0.0, 16.0, 17.6])
    assert sorted(at(nut.frame, (0, 0, z))[2] for z in (0.0, 6.8)) == pytest.approx([-8.4, -1.6])


ROD = "  rod: {material: mild steel, turned: {outside: [{name: body, dia: 8, long: 30}]}}\n"


@pytest.mark.parametrize(
    ("relation", "low"),
    [
        ("{stands: rod.body, on: plate.bore, way: centred}", 4 - 15.0),
        ("{stands: rod.body, on: plate.bore, way: through}", 4 - 15.0),
        ("{stands: rod.face_a, on: plate.top, way: level, apart: 2}", 8 + 2 - 30.0),
        ("{stands: rod.face_a, on: plate.bottom, way: level, apart: 3}", -3.0),
    ],
)
def test_a_rod_stands_along_its_hole_as_it_is_told(relation, low):
    """A rod of 30 in 8 mm of plate: middle on middle, or an end so far beyond a face."""
    parts = plate("plate") + ROD
    relations = f"  - {relation}\n"
    if "way: level" in relation:
        relations += "  - {stands: rod.body, on: plate.bore, way: through}\n"
    whole = assembled(sized(parts, relations, "plate.bottom"))
    rod = whole.of("rod")
    assert rod
    assert min(at(rod.frame, (0, 0, z))[2] for z in (0.0, 30.0)) == pytest.approx(low)
    assert (rod.open == "") == ("way: through" not in relation)


def test_faces_that_cannot_both_be_kept_are_a_disagreement():
    """Two faces of one rod told two places along one hole, 5 mm apart."""
    parts = plate("plate") + ROD
    relations = (
        "  - {stands: rod.body, on: plate.bore, way: through}\n"
        "  - {stands: rod.face_a, on: plate.top, way: level, apart: 2}\n"
        "  - {stands: rod.face_b, on: plate.bottom, way: level, apart: 25}\n"
    )
    whole = assembled(sized(parts, relations, "plate.bottom"))
    assert any("their faces stand 20 mm apart, not 25 mm" in one for one in whole.said)


def test_a_floor_stops_a_pilot_before_its_shoulder_does():
    """A pilot of 5 in a hole 4 deep: its end on the floor at 4, its shoulder 1 over the face."""
    parts = plate("plate").replace("through: true", "deep: 4")
    lands = "{name: body, dia: 12, long: 9}, {name: pilot, dia: 8, long: 5}"
    parts += f"  pin: {{material: mild steel, turned: {{outside: [{lands}]}}}}\n"
    whole = assembled(sized(parts, "  - {stands: pin.pilot, on: plate.bore, way: through}\n", "plate.bottom"))
    pin = whole.of("pin")
    assert pin
    assert at(pin.frame, (0, 0, 14))[2] == pytest.approx(4.0)
    assert at(pin.frame, (0, 0, 9))[2] == pytest.approx(9.0)


def test_a_piece_turns_about_its_one_screw_until_its_face_is_level():
    """An arm on one screw, its right end told level with the plate's back: a quarter turn."""
    parts = plate("plate").replace("dia: 9", "thread: M5") + plate("arm", thick=2, dia=5.5, x=5)
    parts += "  screw: {bought: ISO 4762 M5 x 8}\n"
    joint = "  - {screw: M5, through: arm.bore, into: plate.bore, head: ISO 4762}\n"
    back = "  - {stands: arm.right, on: plate.back, way: level, apart: 20}\n"
    whole = assembled(sized(parts, joint + back, "plate.bottom"))
    arm = whole.of("arm")
    assert arm and arm.open == ""
    assert at(arm.frame, (40, 15, 0))[:2] == (20.0, 50.0)
    assert not any("faces" in one for one in whole.said)


def test_pulleys_of_a_belt_stand_in_one_plane_at_their_centres():
    """A pulley of 60 x 10 that is bought, 140 from a drum 20 wide: middles at the same height."""
    parts = "  drum: {material: mild steel, turned: {outside: [{name: rim, dia: 100, long: 20}]}}\n"
    sizes = "{outside: 60, inside: 12, wide: 10}"
    parts += f"  wheel: {{bought: {{designation: wheel, kind: pulley, sizes: {sizes}, source: measured}}}}\n"
    whole = assembled(
        sized(parts, "  - {belt: wheel.outside, drives: drum.rim, centres: 140}\n", "drum.face_b")
    )
    wheel = whole.of("wheel")
    assert wheel and wheel.open == "the belt does not say to which side"
    x, y, z = at(wheel.frame, (0, 0, 5))
    assert (x * x + y * y) ** 0.5 == pytest.approx(140)
    assert z == pytest.approx(10)


def test_a_belt_may_say_to_which_side_its_driver_stands():
    """At 30 deg about the driven drum: 140 cos 30 and 140 sin 30 from its axis."""
    parts = "  drum: {material: mild steel, turned: {outside: [{name: rim, dia: 100, long: 20}]}}\n"
    parts += "  wheel: {material: mild steel, turned: {outside: [{name: rim, dia: 60, long: 20}]}}\n"
    relation = "  - {belt: wheel.rim, drives: drum.rim, centres: 140, towards: 30 deg}\n"
    whole = assembled(sized(parts, relation, "drum.face_a"))
    drum, wheel = whole.of("drum"), whole.of("wheel")
    assert drum and wheel and wheel.open == ""
    x, y, z = at(wheel.frame, (0, 0, 10))
    along = direction(drum.frame, (math.cos(math.radians(30)), math.sin(math.radians(30)), 0))
    assert (x, y, z) == pytest.approx((140 * along[0], 140 * along[1], 10.0), abs=1e-5)


def test_a_fitted_spring_is_as_long_as_its_place():
    """A spring of 24, fitted to 20 between a floor and a shoulder: nothing stands in anything."""
    parts = """  cup:
    material: mild steel
    turned:
      outside: [{name: body, dia: 14, long: 30}]
      bores: [{name: bore, dia: 8, face: A, deep: 25, bottom: flat}]
  peg:
    material: mild steel
    turned: {outside: [{name: body, dia: 8, long: 10}, {name: spigot, dia: 4, long: 6}]}
  spring:
    material: spring wire
    spring: {wire: 0.8, outside: 7, active: 8, free: 24, fitted: FITTED, ends: ground}
"""
    relations = """  - {fit: cup.bore, on: peg.body, limits: H7/f7}
  - {stands: peg.face_a, on: cup.face_a, way: level, apart: 5}
  - {stands: peg.spigot, on: spring.inside, way: through}
  - {stands: spring.face_a, on: peg.body.face_b}
  - {stands: spring.face_b, on: cup.bore.floor}
"""
    design = sized(parts.replace("FITTED", "20"), relations, "cup.face_b")
    whole = assembled(design)
    assert whole.unplaced == () and whole.said == ()
    assert overlaps(design, whole) == ()
    longer = sized(parts.replace("FITTED", "23"), relations, "cup.face_b")
    assert any("faces" in one for one in assembled(longer).said)


def test_a_bent_strip_is_screwed_by_the_holes_that_its_bends_have_moved():
    """A leg of 20 outside turned up by 90 deg: the hole 8 from the blank's far end stands 12 up, at x = 30."""
    parts = """  angle:
    material: mild steel
    sheet:
      width: 20
      thick: 2
      legs: [30, 20]
      bends: [{name: up, angle: 90 deg, radius: 2}]
      holes: [{name: fix, face: top, dia: 8.5, through: true, at: [[FIX, 10]]}]
""" + ROD.replace("long: 30", "long: 10")
    # blank: 30 + 20 less two setbacks of 4, plus the allowance pi/2 (2 + 0.44 x 2) = 4.524
    length = 30 + 20 - 2 * 4 + 3.141592653589793 / 2 * (2 + 0.44 * 2)
    relation = "  - {stands: rod.body, on: angle.fix, way: centred}\n"
    design = sized(parts.replace("FIX", f"{length - 8:.9f}"), relation, "angle.bottom")
    rod = assembled(design).of("rod")
    assert rod
    ends = sorted(at(rod.frame, (0, 0, z)) for z in (0.0, 10.0))
    assert ends[0] == pytest.approx(
        (24.0, 10.0, 12.0), abs=1e-6
    )  # 29 in the middle of the sheet, 5 to each side
    assert ends[1] == pytest.approx((34.0, 10.0, 12.0), abs=1e-6)


def test_the_foot_lies_below():
    """On its left side a plate of 40 stands 40 high; every piece goes with it."""
    whole = assembled(
        sized(plate("plate") + ROD, "  - {stands: rod.body, on: plate.bore, way: centred}\n", "plate.left")
    )
    plate_, rod = whole.of("plate"), whole.of("rod")
    assert plate_ and rod
    heights = [at(plate_.frame, (x, 0, 0))[2] for x in (0.0, 40.0)]
    assert heights == pytest.approx([0.0, 40.0])
    assert all(at(rod.frame, (0, 0, z))[2] == pytest.approx(20.0) for z in (0.0, 30.0))
    assert all(a <= b for a, b in pairwise(heights))


@pytest.mark.parametrize(
    ("relation", "words"),
    [
        ("{stands: rod.face_c, on: plate.top}", "face_c"),
        ("{stands: rod.face_a, on: rod.face_b}", "are of one part"),
        (
            "{stands: rod.body, on: plate.bore, way: centred, apart: 2}",
            "Faces stand apart; the way is centred",
        ),
        ("{stands: rod.body, on: small.bore, way: through}", "rod.body is 8 mm; small.bore is 5 mm"),
    ],
)
def test_what_cannot_stand_is_refused_with_its_place(relation, words):
    """Each in words of the trade, before anything is placed."""
    with pytest.raises(Refusal, match=r"relations\.0") as refused:
        sized(plate("plate") + plate("small", dia=5) + ROD, f"  - {relation}\n")
    assert words in str(refused.value)
