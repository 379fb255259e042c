"""Every relation read from a whole file, against figures worked out by hand."""

import math
from dataclasses import fields
from pathlib import Path

import pytest

from tommybar.design import load_design
from tommybar.design.relations import pair_for
from tommybar.sizes.fits import fit_of

WHOLE = Path(__file__).parent / "whole"


@pytest.fixture(scope="module")
def design():
    return load_design(WHOLE / "every_relation.yaml").sized()


def test_each_kind_of_relation_leaves_its_record(design):
    """Nothing written is dropped: one record or more of each kind."""
    empty = [
        one.name
        for one in fields(design)
        if one.name not in ("values", "loops", "cautions") and not getattr(design, one.name)
    ]
    assert empty == []


def test_a_clearance_in_figures_becomes_a_zone_pair(design):
    """10 H7/f8: 13 to 50 um of clearance (ISO 286: H7 0/+15, f8 -13/-35), the widest within 10 to 50."""
    fit = design.fits[0]
    assert (fit.zones, fit.clearance, fit.engaged) == ("H7/f8", (0.01, 0.05), 6.0)
    assert design.part("cover").shape.holes[2].dia.zone == "H7"
    found = fit_of(10.0, "H7/f8")
    assert (found.min_clearance_um, found.max_clearance_um) == (13, 50)
    assert pair_for(10.0, (0.001, 0.002)) == ""


def test_screw_lengths_are_worked_out(design):
    """Let in by 4 of 6 mm: 2 grip and 4 engaged; through 26 mm with washer 1, nut 4.7, two pitches 1.6: 33.3, so 35."""
    tapped, _, bolted = design.screw_joints
    assert (tapped.grip, tapped.needed, tapped.most, tapped.length) == (2.0, 6.0, 12.0, 6.0)
    assert (bolted.needed, bolted.length, bolted.spare) == pytest.approx((26 + 1 + 4.7 + 1.6, 35.0, 1.7))


def test_a_pattern_shares_the_play_of_its_holes(design):
    """A fixed fastener: 4.5 over 4 leaves 0.5, each pattern 0.25 (ASME Y14.5, appendix: H = F + 2 T)."""
    assert (design.patterns[0].play, design.patterns[0].place) == (0.5, 0.25)


def test_a_belt_runs_on_its_middle(design):
    """10 and 12 mm pulleys, 3 mm cord: 2 x 80 + pi (13 + 15)/2 + 4/320."""
    belt = design.belts[0]
    assert belt.length == pytest.approx(160 + math.pi * 14 + 4 / 320, abs=1e-6)
    assert belt.ratio == pytest.approx(13 / 15)


def test_angles_of_point_and_cup_come_from_their_features(design):
    """60 degrees in 90."""
    assert dict(design.contacts[0].figures) == {"point": pytest.approx(60), "cup": 90}


def test_a_seat_copies_the_table(design):
    """626: 19 mm outside."""
    assert (design.seats[0].figure, design.seats[0].value) == ("outside", 19.0)
