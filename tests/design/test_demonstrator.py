"""The demonstrator loads, and its figures are those worked out by hand."""

from pathlib import Path

import pytest

from tommybar.design import load_design

PATH = Path(__file__).parents[2] / "examples" / "demonstrator" / "design.yaml"


@pytest.fixture(scope="module")
def demonstrator():
    """The design of examples/demonstrator."""
    return load_design(PATH)


def test_parts_and_their_lengths(demonstrator):
    """Lengths by hand: 14 + 10; 14 + 16 + (50 - 6 - 0.1) + 14; 3 + 10; 16 + 45 + 5 + 15; 8; 8 + 18."""
    sized = demonstrator.sized()
    lengths = {one.name: one.shape.length.value for one in sized.parts if one.shape}

    assert lengths == {
        "wheel": 24,
        "shaft": 87.9,
        "bush": 13,
        "pillar": 81,
        "base": 120,
        "crank": 8,
        "handle": 26,
    }
    assert [one.bought for one in sized.parts if one.kind == "bought"] == [
        "ISO 4026 M4 x 6",
        "ISO 4032 M6",
        "ISO 4762 M5 x 20",
    ]


def test_fits_have_the_limits_of_iso_286(demonstrator):
    """ISO 286-2: 10 H7 +15/0, 10 h8 0/-22, 8 f7 -13/-28, 12 p6 +29/+18 um."""
    sized = demonstrator.sized()
    dims = {
        one.dia.name: (one.dia.smallest, one.dia.largest)
        for part in ("wheel", "shaft", "bush")
        for one in (*sized.part(part).shape.outside, *sized.part(part).shape.bores)
        if one.dia.toleranced
    }

    assert dims == {
        "wheel.bore": (10.0, 10.015),
        "shaft.seat": (9.978, 10.0),
        "shaft.journal_a": (7.972, 7.987),
        "shaft.journal_b": (7.972, 7.987),
        "bush.body": (12.018, 12.029),
        "bush.bore": (8.0, 8.015),
    }


def test_the_end_float_is_the_float_that_was_named(demonstrator):
    """Base less two flanges less the seat leaves 0.1, within 0.05 to 0.2."""
    (loop,) = demonstrator.sized().loops

    assert sum(one.factor * one.value for one in loop.terms) == pytest.approx(0.1, abs=1e-9)
    assert (loop.least, loop.most, loop.made_last) == (0.05, 0.2, "shaft")


def test_the_wheel_can_be_chosen_smaller(demonstrator):
    """The axle comes down by the radius, since the finger's room stays as it is."""
    smaller = demonstrator.sized({"wheel_dia": 84.0})

    assert smaller.part("pillar").shape.length.value == 78
    assert demonstrator.evaluate({"wheel_dia": 84.0})["axle_high"] == 63


def test_bare_lengths_in_features_are_listed(demonstrator):
    """What no resize touches is told by its place."""
    kept = dict(demonstrator.kept())

    assert kept["wheel.rim.edges"] == 1
    assert kept["base.front.deep"] == 12
    assert "wheel.rim.dia" not in kept
