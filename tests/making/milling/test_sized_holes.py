"""Holes of a size at the mill: with the tools that are owned, at speeds of the mill's own list, or a stop."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tommybar.making.lengths import spoken
from tommybar.making.milling.counterbores import counterbore
from tommybar.making.milling.sized_holes import blind_hole, reamer_lead, through_hole
from tommybar.shapes.features import Dim
from tommybar.shop.model import Counterbore

FINE = Dim(22.0, "piece.hole", "H7", 22.0, 22.021)  # ISO 286-2: 22 H7 is +21/0 um


def kinds(bench):
    """Kinds of the steps in order."""
    return [s.tool_kind for s in bench.steps]


def found(bench, severity="stop"):
    """Numbers of a severity."""
    return [f.number for f in bench.findings if f.severity == severity]


def test_a_boring_head_is_used_where_one_is_owned(bench):
    """22 H7: no such reamer in shop R; the head goes from 10 to 40."""
    b = bench()
    through_hole(b, FINE, 10.0, "hole", 1, "hole")

    assert kinds(b)[-1] == "boring"
    assert b.steps[-1].measure[0].dim is FINE
    assert b.findings == []


def test_without_a_boring_head_it_is_a_stop_with_the_way_out(bench, bare):
    """The lathe's boring bars are no tool of the mill."""
    b = bench(bare)
    through_hole(b, FINE, 10.0, "hole", 1, "hole")
    stop = b.findings[0]

    assert b.steps == []
    assert (stop.number, stop.severity, stop.figure, stop.bound) == (
        416,
        "stop",
        "22 mm",
        "boring head: none",
    )
    assert "faceplate" in stop.remedy


def test_a_bore_beyond_the_head_is_a_stop_with_its_range(bench):
    """44 H7 against a head that ends at 40."""
    b = bench()
    through_hole(b, Dim(44.0, "piece.hole", "H7", 44.0, 44.025), 10.0, "hole", 1, "hole")

    assert found(b) == [416]
    assert b.findings[0].bound == "boring head 10 to 40 mm"


def test_a_head_of_unknown_range_is_used_with_a_caution(bench, shop):
    """The shop says that it bores with a head, and not how far."""
    b = bench(replace(shop, mill=replace(shop.mill, boring_head=(0.0, 0.0))))
    through_hole(b, FINE, 10.0, "hole", 1, "hole")

    assert kinds(b)[-1] == "boring"
    assert found(b, "caution") == [434]


def test_every_speed_stands_on_the_mills_own_list(bench, shop):
    """Drill, reamer and head alike."""
    b = bench()
    for dim in (FINE, Dim(8.0, "piece.pin", "H7", 8.0, 8.015), Dim(5.0, "piece.plain")):
        through_hole(b, dim, 10.0, "hole", 1, "hole")

    assert {s.speed for s in b.steps} <= set(shop.mill.speeds)


def test_a_mill_that_is_too_fast_is_a_caution(bench, shop):
    """Slowest 2000 rev/min on a 12 reamer in steel: pi x 12 x 2 = 75 m/min against 15."""
    b = bench(replace(shop, mill=replace(shop.mill, speeds=(2000.0, 3000.0))))
    through_hole(b, Dim(12.0, "piece.hole", "H7", 12.0, 12.018), 10.0, "hole", 1, "hole")
    said = [f for f in b.findings if f.number == 401]

    assert {f.severity for f in said} == {"caution"}
    assert any(f.figure == "75 m/min" and "reaming" in f.words for f in said)
    assert len(said) == len({f.words.split("(")[-1] for f in said})  # once an operation


def test_a_blind_reamed_hole_is_drilled_deeper_by_lead_and_point(bench):
    """8 H7, 10 deep: lead 1.5, drill 7.8 to 11.5, its point 0.3004 x 7.8 = 2.34 more: 13.84 of 16 - 1.5."""
    b = bench()
    blind_hole(b, Dim(8.0, "piece.pin", "H7", 8.0, 8.015), 10.0, 16.0, "pin", 1, "pin")
    drill = next(s for s in b.steps if s.tool_size == 7.8)

    assert reamer_lead(8.0) == 1.5
    assert "full diameter 11.5 deep, tip 13.8" in _plain(drill.dial[0])
    assert kinds(b)[-1] == "reamer"
    assert "11.50 below" in _plain(b.steps[-1].dial[0])
    assert b.findings == []


def test_where_there_is_no_room_below_it_is_bored_flat(bench):
    """12 H7 10 deep in 12: reaming wants 10 + 1.8 + 3.5 and more; the head bores it to a flat bottom."""
    b = bench()
    blind_hole(b, Dim(12.0, "piece.pin", "H7", 12.0, 12.018), 10.0, 12.0, "pin", 1, "pin")

    assert kinds(b) == ["drill", "boring"]
    assert "To 10.00 below" in _plain(b.steps[-1].dial[0])


def test_without_room_and_without_a_head_it_is_a_stop_with_the_depth_that_would_do(bench, bare):
    """8 H7, 10 deep in 14: 10 + 1.5 + 2.343 = 13.84 against 12.5, so 1.3 less."""
    b = bench(bare)
    blind_hole(b, Dim(8.0, "piece.pin", "H7", 8.0, 8.015), 10.0, 14.0, "pin", 1, "pin")
    stop = b.findings[0]

    assert (stop.number, stop.figure) == (905, "13.84 mm")
    assert stop.bound.startswith("12.50 mm")
    assert "8.7 mm deep" in stop.remedy
    assert b.steps == []


def test_a_flat_bottom_is_plunged_with_an_end_mill_of_that_size(bench):
    """10 is owned; the drill before it stays above the floor with its point."""
    b = bench()
    blind_hole(b, Dim(10.0, "piece.seat"), 6.0, 12.0, "seat", 1, "seat", flat=True)
    drill, mill = b.steps

    assert (mill.tool_kind, mill.tool_size) == ("end mill", 10.0)
    assert "tip 6.0 below" in _plain(drill.dial[0])


def test_a_drills_point_that_comes_out_is_a_stop(bench):
    """10 drill 8 deep in 10: point 3.0 more."""
    b = bench()
    blind_hole(b, Dim(10.0, "piece.seat"), 8.0, 10.0, "seat", 1, "seat")

    assert found(b) == [417]
    assert b.findings[0].figure == "11.00 mm"


def _plain(words):
    """A sentence as it is read in mm."""
    return spoken(words, "mm")


@pytest.mark.parametrize(
    ("counterbores", "kind", "size"),
    [
        ((Counterbore(11.0, 6.4),), "counterbore", 11.0),
        (
            (Counterbore(11.0, 5.0),),
            "boring",
            11.0,
        ),  # a pilot of 5 wobbles in 6.6; no end mill of 11 is owned
        ((), "boring", 11.0),
    ],
)
def test_the_pilot_must_run_in_the_hole(bench, shop, counterbores, kind, size):
    """11 on a 6.6 hole."""
    head = replace(shop.mill, boring_head=(6.0, 40.0))
    b = bench(replace(shop, counterbores=counterbores, mill=head))
    counterbore(b, 11.0, 6.4, 6.6, "foot", 2, "foot")

    assert [(s.tool_kind, s.tool_size) for s in b.steps] == [(kind, size)]
    assert b.findings == []


def test_an_end_mill_of_the_seats_size_makes_it(bench):
    """10 on 5.5, 5.4 deep: quill stop at the depth."""
    b = bench()
    counterbore(b, 10.0, 5.4, 5.5, "foot", 1, "foot")

    assert (b.steps[0].tool_kind, b.steps[0].tool_size, b.steps[0].big) == ("end mill", 10.0, "5.40")


def test_a_seat_that_nothing_cuts_is_a_stop_with_what_is_owned(bench):
    """11 on 6.6: end mills 10 and 12, and the head of shop R enters no hole under 10."""
    b = bench()
    counterbore(b, 11.0, 6.4, 6.6, "foot", 1, "foot")

    assert (b.findings[0].number, b.findings[0].figure) == (905, "11 mm")
    assert "10, 12" in b.findings[0].bound
    assert b.steps == []
