"""Plates, blocks, sheet, wire and bought parts read from a whole file, against figures worked out by hand."""

import math
from pathlib import Path

import pytest

from tommybar.design import design_from_text, load_design
from tommybar.design.shapes_of_parts import features_of, lengths_of
from tommybar.shapes.mass import mass_properties

WHOLE = Path(__file__).parent / "whole"


@pytest.fixture(scope="module")
def design():
    return load_design(WHOLE / "plates_sheet_wire.yaml").sized()


def hole(design, part, name):
    return next(one for one in design.part(part).shape.holes if one.name == name)


def test_an_outline_of_bosses_gives_the_overall_sizes(design):
    """Radii 10 and 6 about x 10 and 50: 56 long, 20 wide."""
    shape = design.part("lever").shape
    assert (shape.length.value, shape.width.value, shape.thickness.value) == (56, 20, 4)
    assert shape.edges[1].round and shape.edges[1].size == 0.3
    assert shape.slots[0].long == 14  # 10 between centres and 4 wide
    assert (shape.slots[0].width.smallest, shape.slots[0].width.largest) == (4.0, 4.1)
    assert hole(design, "lever", "pivot").place == 0.05
    assert hole(design, "lever", "pivot").dia.largest == pytest.approx(6.012)  # 6 H7 of ISO 286


def test_patterns_stand_where_they_should(design):
    """A grid row by row, a row by its step, a circle of 12 from 45 degrees."""
    assert [(one.x, one.y) for one in design.part("jaw").shape.holes[:4]] == [
        (10, 10),
        (50, 10),
        (10, 30),
        (50, 30),
    ]
    assert [hole(design, "jaw", f"ring_{n}").x for n in (1, 2, 3)] == [20, 30, 40]
    first = hole(design, "jaw", "round_1")
    assert (first.x, first.y) == pytest.approx((30 + 6 * math.sqrt(0.5), 20 + 6 * math.sqrt(0.5)))


def test_a_screw_gives_its_clearance_hole_and_its_seat(design):
    """M5 medium 5.5 mm (ISO 273); head 8.5 x 5 with 1 mm of room let in flush; a countersink of 90 degrees."""
    seat = hole(design, "jaw", "seat_1")
    assert (seat.dia.value, seat.sink_dia, seat.sink_depth, seat.sink_angle) == (5.5, 9.5, 5.0, 0.0)
    sunk = hole(design, "jaw", "sunk")
    assert (sunk.dia.value, sunk.sink_angle, sunk.sink_depth) == (4.5, 90.0, 0.0)


def test_a_slope_is_told_from_the_face(design):
    """60 degrees from the face is 30 from its normal."""
    lean = hole(design, "jaw", "lean")
    assert (lean.tilt, lean.towards) == (30.0, 90.0)


def test_developed_length_by_hand(design):
    """Legs 20, 30, 12 of 1.5 mm, bends of 90 and 45 degrees on 2 mm: setbacks 3.5 and 3.5 tan 22.5."""
    back = 3.5 * math.tan(math.radians(22.5))
    flat = 20 + 30 + 12 - 2 * 3.5 - 2 * back
    allowance = (math.pi / 2 + math.pi / 4) * (2 + 0.44 * 1.5)
    assert design.part("angle").shape.length.value == pytest.approx(flat + allowance)
    assert design.part("angle").shape.bends[0].at == pytest.approx(16.5)


def test_kinds_bench_work_and_lengths(design):
    """Each part has its kind; a rivet is its grip and 1.4 diameters; lengths may be named in loops."""
    kinds = {part.name: part.kind for part in design.parts}
    assert kinds == {
        "lever": "plate",
        "jaw": "plate",
        "angle": "sheet",
        "hoop": "sheet",
        "coil": "wire",
        "hook": "wire",
        "clip": "bought",
        "odd": "bought",
    }
    rivet = design.part("angle").bench[1]
    assert (rivet.kind, rivet.figure("length"), rivet.with_) == (
        "riveted",
        pytest.approx(5 + 1.4 * 3),
        ("lever",),
    )
    assert lengths_of(design.part("jaw"))["jaw.height"] == 20
    assert lengths_of(design.part("coil"))["coil.solid"] == pytest.approx(8 * 0.8)
    assert {"window", "top_edge"} <= set(features_of(design.part("lever").shape))
    scale = features_of(design.part("jaw").shape)["scale"]
    assert (scale.on, scale.divisions, scale.over, scale.long_every) == ("front", 40, 40.0, 5)
    assert design.part("odd").envelope.size("thickness") == 0.9


def test_everything_read_can_be_weighed(design):
    """No part of the file is without a mass."""
    for part in design.parts:
        assert mass_properties(part.shape or part.envelope, 7.85).mass > 0


def test_a_designation_that_follows_the_shop_may_leave_the_tables():
    """A screw of a size that no table has keeps its words and has no envelope."""
    text = (
        "tommybar: 1\ndesign: One\nunits: mm\nsizes:\n  clamp: {is: M4, follows: thread}\n"
        'parts:\n  screw: {bought: "ISO 4762 {clamp} x 16"}\n'
    )
    design = design_from_text(text, "one.yaml")
    assert design.sized().part("screw").envelope.size("thread_dia") == 4
    other = design.sized({"clamp": "M7"}).part("screw")
    assert (other.bought, other.envelope) == ("ISO 4762 M7 x 16", None)
