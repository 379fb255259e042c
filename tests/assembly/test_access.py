"""Tools at a screw's axis: walls, posts and flanges in closed form, and laws of what stands in the way."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tommybar.assembly.access import NEAR, Obstacle, area_of, obstacle, obstructed
from tommybar.assembly.driving_tools import Arm, Column, DrivingTool, for_hexagon, for_slot, for_socket
from tommybar.shapes.features import Bore, Cylinder, Dim, TurnedShape
from tommybar.shapes.solids.frames import HERE, shifted

FAR = 400.0


def block(x0, x1, y0=-FAR, y1=FAR, z0=0.0, z1=FAR):
    """A block of metal in the screw's frame."""
    from manifold3d import Manifold

    mesh = Manifold.cube((x1 - x0, y1 - y0, z1 - z0)).translate((x0, y0, z0))
    return Obstacle(("wall", 1), mesh, tuple(mesh.bounding_box()))


def wall(gap, **box):
    """A wall whose face lies at a distance from the axis."""
    return block(gap, FAR, **box)


def tool(name, tools):
    """The first tool of that name."""
    return next(one for one in tools if one.name.startswith(name))


SPANNER = tool("size 10 open spanner", for_hexagon(10.0, 0.0, 4.0))
SOCKET = tool("size 10 socket", for_hexagon(10.0, 0.0, 4.0))
KEY = tool("size 5 hexagon key with its short", for_socket(5.0, 3.0, 6.0))


def test_a_column_meets_a_wall_at_its_radius():
    """A socket of 14.5 beside a wall: 7.25 is enough, and what lies above or below it does not count."""
    assert obstructed(SOCKET, [wall(7.25, z1=20.0)]) is None
    met = obstructed(SOCKET, [wall(7.0, z1=20.0)])
    assert (met.figure, met.bound, met.what) == (pytest.approx(7.0), 7.25, "its body")
    assert obstructed(SOCKET, [wall(3.0, z0=-9.0, z1=0.0)]) is None


@pytest.mark.parametrize(("gap", "goes"), [(9.6, True), (9.4, False)])
def test_jaws_beside_a_wall(gap, goes):
    """The mouth of jaws of 22 looks at the wall over 30 deg to either side: 11 cos 30 = 9.53 from the middle.

    At a turn m the corner where circle and wall meet stands 11 cos(acos(g / 11) + m) before the middle, and the
    jaws reach 5.5 there; m = 30 and 5.5 = 11 cos 60 give acos(g / 11) = 30.
    """
    met = obstructed(SPANNER, [wall(gap)])
    assert (met is None) == goes


def test_jaws_between_two_walls_want_their_whole_width():
    """In a channel the sides of the jaws count, 11 from the middle; at 11 they go in and cannot swing."""
    assert obstructed(SPANNER, [wall(11.0), block(-FAR, -11.0)]).swings
    met = obstructed(SPANNER, [wall(10.5), block(-FAR, -10.5)])
    assert (met.what, met.figure, met.bound) == ("its jaws", pytest.approx(10.5), 11.0)


@pytest.mark.parametrize("gap", [4.0, 10.0, 30.0])
def test_the_swing_between_two_walls(gap):
    """A bar of width w and length L between walls at g: 180 - 2 acos((g - w/2) / (L - w/2)) on each side."""
    arm = Arm(10.0, 14.0, 60.0, 4.0, 170.0)
    met = obstructed(DrivingTool("bar", (), arm), [wall(gap), block(-FAR, -gap)])
    half = math.degrees(math.acos((gap - 2.0 + NEAR) / 58.0))
    assert met.swings
    assert met.figure == pytest.approx(180.0 - 2 * half, abs=0.3)


def test_a_bar_in_a_round_hole_does_not_swing_and_over_it_does():
    """A ring all round blocks the whole turn at its height and nothing above it."""
    ring = TurnedShape(
        Dim(12.0), (Cylinder("rim", Dim(80.0), 0.0, 12.0),), bores=(Bore("bore", Dim(40.0), "A", 12.0, True),)
    )
    around = [obstacle(("ring", 1), ring, HERE, HERE)]
    assert obstructed(DrivingTool("bar", (), Arm(4.0, 8.0, 30.0, 4.0, 60.0)), around).figure == 0.0
    assert obstructed(DrivingTool("bar", (), Arm(12.0, 16.0, 30.0, 4.0, 360.0)), around) is None
    assert obstructed(DrivingTool("bar", (), Arm(4.0, 8.0, 19.9, 4.0, 360.0)), around) is None


@pytest.mark.parametrize("aside", [0.0, 4.0, 9.0])
def test_a_post_and_a_bore_as_lands_of_revolution(aside):
    """A bore of 40 whose axis lies a beside the screw's leaves 20 - a; a post of 12 at 20 leaves 20 - 6."""
    ring = TurnedShape(
        Dim(10.0), (Cylinder("rim", Dim(80.0), 0.0, 10.0),), bores=(Bore("bore", Dim(40.0), "A", 10.0, True),)
    )
    column = DrivingTool("rod", (Column("it", 25.0, 1.0, 9.0),))
    met = obstructed(column, [obstacle(("ring", 1), ring, shifted(x=aside), HERE)])
    assert met.figure == pytest.approx(20.0 - aside, abs=20 * (1 - math.cos(math.pi / 96)) + 1e-6)
    post = TurnedShape(Dim(10.0), (Cylinder("post", Dim(12.0), 0.0, 10.0),))
    met = obstructed(column, [obstacle(("post", 1), post, shifted(x=20.0), HERE)])
    assert met.figure == pytest.approx(14.0, abs=0.01)


def test_a_screw_in_its_own_nut_is_no_obstacle():
    """A stud of 6 that stands 5 out of its nut of 5: within the socket's hollow; 40 out is too much for it."""
    tools = list(for_hexagon(10.0, 0.0, 5.0, hollow=3.1))
    for long, goes in ((10.0, True), (45.0, False)):
        stud = TurnedShape(Dim(long), (Cylinder("stud", Dim(6.0), 0.0, long),))
        around = [obstacle(("stud", 1), stud, HERE, HERE)]
        assert (obstructed(tool("size 10 socket", tools), around) is None) == goes
        assert obstructed(tool("size 10 open spanner", tools), around) is None


def test_a_key_turns_over_a_shoulder_that_its_short_arm_clears():
    """A 5 mm key: 33 less 3 in the socket over a head of 6; its arm is 5.67 thick: the wall may be 30.3 high."""
    assert obstructed(KEY, [wall(9.0, z1=30.2)]) is None
    channel = [wall(9.0, z1=33.0), block(-FAR, -9.0, z1=33.0)]
    assert obstructed(KEY, channel).swings


def test_a_ceiling_over_a_slot_stops_the_screwdriver_and_its_stub():
    """M4: a handle begins 25 over the slot of a stub; a ceiling at 20 lets neither in, and no shorter one either."""
    for one in for_slot("M4", 2.6):
        assert obstructed(one, [block(-FAR, FAR, z0=20.0)]).near


TOOLS = {
    "spanner": SPANNER,
    "socket": SOCKET,
    "key": KEY,
    "screwdriver": next(for_slot("M4", 2.6)),
}


@settings(max_examples=40, deadline=None)
@given(
    name=st.sampled_from(sorted(TOOLS)),
    gap=st.floats(1.0, 40.0),
    away=st.floats(0.0, 30.0),
    high=st.floats(1.0, 60.0),
    both=st.booleans(),
)
def test_a_wall_that_moves_away_never_stands_more_in_the_way(name, gap, away, high, both):
    """Law: what gets in beside near walls gets in beside far ones, and beside lower ones."""

    def goes(at, top):
        walls = [wall(at, z1=top), *([block(-FAR, -at, z1=top)] if both else [])]
        return obstructed(TOOLS[name], walls) is None

    if goes(gap, high):
        assert goes(gap + away, high)
        assert goes(gap, max(0.5, high - away))


@settings(max_examples=30, deadline=None)
@given(angle=st.floats(0.0, 360.0), gap=st.floats(3.0, 15.0))
def test_turning_everything_about_the_axis_changes_nothing(angle, gap):
    """Law: no direction is special."""
    one = wall(gap, z1=40.0, y0=-20.0, y1=60.0)
    mesh = one.mesh.rotate((0.0, 0.0, angle))
    other = Obstacle(("wall", 1), mesh, tuple(mesh.bounding_box()))
    for each in TOOLS.values():
        first, second = obstructed(each, [one]), obstructed(each, [other])
        assert (first is None) == (second is None)
        if first is not None:
            assert first.figure == pytest.approx(second.figure, abs=0.5)


def test_an_area_with_a_hole_and_an_island_in_it():
    """A frame of 10 by 10 with a hole of 6 by 6 and an island of 2 by 2: 100 - 36 + 4."""

    def square(half, turn=1):
        return [(-half, -half), (half, -half), (half, half), (-half, half)][::turn]

    assert area_of([square(1.0), square(3.0, -1), square(5.0)]).area == pytest.approx(68.0)
