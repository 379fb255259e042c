"""Flats, prisms, slots, pockets, steps, vees and dovetails: closed forms, and what the cards say of them."""

from __future__ import annotations

import itertools
import math
from dataclasses import replace

import pytest

from tommybar.making.lengths import spoken
from tommybar.making.milling.cutters import depth_passes, mill_dial
from tommybar.making.milling.dovetails import between_pins, over_pins, told_dovetail
from tommybar.making.milling.flats import depth_of_flat, flat, lanes, width_of_flat
from tommybar.making.milling.pockets import pocket, wall_path
from tommybar.making.milling.prisms import across_corners, prism
from tommybar.making.milling.shoulders import axis_from_side, shoulder
from tommybar.making.milling.slots import slot, slot_path
from tommybar.making.milling.vees import flank, over_round, vee, vee_depth
from tommybar.shapes.features import Dim

OPEN = (False, True)


def words(bench) -> str:
    """All dials of a card, as read in mm."""
    return " ".join(spoken(line, "mm") for s in bench.steps for line in s.dial)


def found(bench) -> list[tuple[int, str]]:
    """Numbers and severities."""
    return [(f.number, f.severity) for f in bench.findings]


def test_a_flat_from_the_top_of_the_round(bench):
    """Round 20, flat 8 from the axis: 2 deep, chord 2 sqrt(100 - 64) = 12; measured across 10 + 8 = 18."""
    b = bench()
    flat(b, "flat", 20.0, 8.0, 0.0, 15.0, closed=OPEN)
    step = b.steps[0]

    assert (depth_of_flat(20.0, 8.0), width_of_flat(20.0, 8.0)) == (2.0, 12.0)
    assert step.tool_size == 16.0  # the smallest that covers 12 and its edges in one lane
    assert "comes out 12.00 wide; the cutter covers it at Y 0" in words(b)
    assert "18.000 when it is done" in words(b)
    assert step.passes[-1].to == 2.0


def test_the_depth_reads_on_the_mills_own_dial(bench, shop):
    """2.00 down: a turn of the metric dial of 0.02 a division; 0.0787 in on one of 0.001 in and 0.125 in a turn."""
    inch = replace(shop.mill, dial=replace(shop.mill.dial, per_division=0.0254, per_turn=3.175, unit="in"))

    assert mill_dial(shop.mill, 2.0) == "1 turn + 0 div"
    assert mill_dial(inch, 2.54) == "100 div"
    assert spoken(mill_dial(replace(shop.mill, readout=0.01), 2.0), "mm") == "2.00 on the read-out"


def test_cuts_are_equal_and_end_at_the_depth(bench):
    """2 mm with a 4 cutter in steel, a quarter of its diameter at a time: 2 cuts of 1."""
    cuts = depth_passes(bench(), 2.0, 4.0)

    assert [p.to for p in cuts] == [1.0, 2.0]
    assert len(depth_passes(bench(material="free-cutting brass"), 2.0, 4.0)) == 1


@pytest.mark.parametrize(("width", "cutter"), [(12.0, 16.0), (18.0, 16.0), (30.0, 10.0), (50.0, 16.0)])
def test_lanes_clean_the_whole_width(width, cutter):
    """The outermost lanes carry the cutter's edge past both edges, and no gap between lanes is left."""
    rows = lanes(width, cutter)

    assert rows[0] - cutter / 2 <= -width / 2
    assert rows[-1] + cutter / 2 >= width / 2
    assert all(b - a < cutter for a, b in itertools.pairwise(rows))


def test_a_flat_beyond_the_round_is_a_stop(bench):
    """11 from the axis of a round of 20 leaves nothing to cut."""
    b = bench()
    flat(b, "flat", 20.0, 11.0, 0.0, 15.0, closed=OPEN)

    assert found(b) == [(440, "stop")]


def test_a_hexagon_on_a_round(bench):
    """AF 17 on 19.6: each flat 8.5 from the axis and (19.6 - 17)/2 = 1.3 deep; over corners 17/cos 30 = 19.63."""
    b = bench()
    lines = prism(b, "hex", 6, Dim(17.0, "piece.hex"), 19.6, 0.0, 10.0, closed=OPEN)

    assert across_corners(17.0, 6) == pytest.approx(19.630, abs=0.0005)
    assert [s.big for s in b.steps] == ["1.30"] * 6
    assert [bool(s.measure) for s in b.steps] == [False] * 3 + [True] * 3  # opposite flats can be measured
    assert "0, 60, 120, 180, 240, 300 deg" in lines[0]
    assert found(b) == [(441, "note")]  # 19.63 over 19.6


def test_a_hexagon_without_dividing_is_a_stop_and_a_square_is_not(bench, bare):
    """A square is levelled with a square."""
    six, four = bench(bare), bench(bare)
    prism(six, "hex", 6, Dim(17.0, "piece.hex"), 20.0, 0.0, 10.0, closed=OPEN)
    lines = prism(four, "square", 4, Dim(14.0, "piece.square"), 20.0, 0.0, 10.0, closed=OPEN)

    assert found(six) == [(437, "stop")]
    assert six.steps == []
    assert "by a square" in lines[0]
    assert len(four.steps) == 4


def test_both_sides_of_a_slot():
    """8 wide with a 6 cutter: the axis 1 to either side; closed ends half a cutter short, open ends past by 3 + 2."""
    closed = slot_path(30.0, 8.0, 6.0, start_open=False, end_open=False)
    opened = slot_path(30.0, 8.0, 6.0, start_open=True, end_open=False)

    assert (closed.along, closed.beside) == ((-12.0, 12.0), (-1.0, 1.0))
    assert opened.along == (-20.0, 12.0)


def test_a_closed_slot_begins_with_a_hole(bench):
    """8 x 30, 5 deep at 40, 12: cutter 8, start hole under 8 whose point stays above the floor."""
    b = bench()
    slot(b, "slot", 30.0, Dim(8.0, "piece.slot"), 5.0, middle=(40.0, 12.0))
    drill, mill = b.steps

    assert drill.tool_kind == "drill"
    assert "tip 5.0 below" in words(b)
    assert mill.tool_size == 8.0
    assert "+29.00 to +51.00" in words(b)
    assert "across +12.00" in words(b)
    assert b.findings == []


def test_a_slot_with_limits_is_cut_from_both_sides(bench):
    """8 H9 (ISO 286-2: +36/0): not trusted to an 8 cutter, which cuts over; with a 6 at 1.009 to a side."""
    b = bench()
    dim = Dim(8.0, "piece.slot", "H9", 8.0, 8.036)
    slot(b, "slot", 30.0, dim, 5.0, start_open=True, end_open=True, middle=(0.0, 0.0))
    mill = b.steps[-1]

    assert mill.tool_size == 6.0
    assert "-1.009 and +1.009" in words(b)
    assert mill.measure[0].dim is dim


def test_a_slot_that_no_cutter_reaches_is_a_stop(bench):
    """3 wide, 12 deep: teeth of a 3 end mill are 7.5 long."""
    b = bench()
    slot(b, "slot", 20.0, Dim(3.0, "piece.slot"), 12.0, start_open=True, end_open=True)

    assert found(b) == [(418, "stop")]


def test_ends_that_do_not_come_out_round_are_told(bench, shop):
    """9 wide, with an 8 at most: corners of 4 where 4.5 is drawn."""
    b = bench()
    slot(b, "slot", 30.0, Dim(9.0, "piece.slot"), 5.0)

    assert (442, "caution") in found(b)
    assert b.findings[0].figure == "corner 4 mm"


def test_a_pockets_cutter_is_no_larger_than_its_corner(bench):
    """Corner 4: cutter 8, walls at (40 - 8)/2 = 16 and (24 - 8)/2 = 8 from the middle at 30, 20."""
    b = bench()
    pocket(b, "well", 30.0, 20.0, Dim(40.0, "piece.l"), Dim(24.0, "piece.w"), 4.0, 6.0)

    assert wall_path(40.0, 24.0, 8.0) == (16.0, 8.0)
    assert b.steps[-1].tool_size == 8.0
    assert "X 14.000 and 46.000, Y 12.000 and 28.000" in words(b)
    assert b.findings == []


def test_a_pocket_with_sharper_corners_than_any_cutter_is_a_stop(bench):
    """Corner 1: a cutter of 2 at most, the smallest is 3."""
    b = bench()
    pocket(b, "well", 30.0, 20.0, Dim(40.0, "piece.l"), Dim(24.0, "piece.w"), 1.0, 6.0)

    assert found(b) == [(418, "stop")]
    assert "up to 2 mm" in b.findings[0].figure


def test_a_step_from_either_side(bench):
    """6 wide with a 16 cutter: the axis 2 outside the near side, 2 beyond 50 at the far one."""
    near, far = bench(), bench()
    shoulder(near, "step", "front", Dim(6.0, "piece.step"), Dim(4.0, "piece.deep"), extent=50.0)
    shoulder(far, "step", "back", Dim(6.0, "piece.step"), Dim(4.0, "piece.deep"), extent=50.0)

    assert axis_from_side(6.0, 16.0) == -2.0
    assert "axis at Y -2.000" in words(near)
    assert "axis at Y 52.000" in words(far)
    assert "axis at Y -2.20" in words(near)  # roughing stays outside the wall
    assert "axis at Y 52.20" in words(far)


def test_a_vee_by_the_cutters_corner(bench):
    """10 wide at 90 deg: 5 deep, flanks 7.07; a 10 round stands 7.071 + 5 - 5 = 7.071 above the face."""
    b = bench()
    vee(b, "vee", 10.0, 90.0, 15.0)

    assert (vee_depth(10.0), flank(10.0)) == pytest.approx((5.0, 7.0711), abs=1e-4)
    assert over_round(10.0, 5.0) == pytest.approx(10 / math.sqrt(2))
    assert "shank of a drill 10 laid in it stands 7.07 above the face" in words(b)


def test_another_angle_than_ninety_is_a_stop(bench):
    """60 deg: 10/2/tan 30 = 8.66 deep."""
    b = bench()
    vee(b, "vee", 10.0, 60.0, 15.0)

    assert found(b) == [(444, "stop")]
    assert "8.66 mm deep" in b.findings[0].words


def test_a_dovetail_over_rounds(bench):
    """Handbook form D (1 + cot(a/2)): at 60 deg 2.732 D. Tail 20: 20 + 16.392; slot 20 at its mouth, 8 deep: 29.238 - 16.392."""
    b = bench()
    told_dovetail(b, "tail", 20.0, 8.0, 60.0, tail=True)

    assert over_pins(20.0, 6.0, 60.0) == pytest.approx(36.392, abs=0.0005)
    assert between_pins(20.0, 8.0, 6.0, 60.0) == pytest.approx(12.845, abs=0.0005)
    assert found(b) == [(905, "stop")]
    assert "over two rounds of 10.5 mm" in b.findings[0].words  # touches the flank at 7.875, inside 8
