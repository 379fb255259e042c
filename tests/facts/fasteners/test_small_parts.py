"""Bearings, circlips, pins, keys and O-rings."""

from __future__ import annotations

from itertools import pairwise

import pytest

from tommybar.facts.fasteners import (
    bearing,
    bearings_for_shaft,
    circlip,
    key_for_shaft,
    o_ring,
    o_ring_groove,
    parallel_pin,
    parallel_pin_diameters,
)
from tommybar.refusals import Refusal


@pytest.mark.parametrize(
    ("number", "size"),
    [
        ("605", (5, 14, 5)),
        ("606", (6, 17, 6)),
        ("608", (8, 22, 7)),
        ("623", (3, 10, 4)),
        ("625", (5, 16, 5)),
        ("626", (6, 19, 6)),
        ("629", (9, 26, 8)),
        ("6000", (10, 26, 8)),
        ("6001", (12, 28, 8)),
        ("6002", (15, 32, 9)),
        ("6003", (17, 35, 10)),
        ("6004", (20, 42, 12)),
        ("6005", (25, 47, 12)),
        ("6200", (10, 30, 9)),
        ("6201", (12, 32, 10)),
        ("6202", (15, 35, 11)),
        ("6203", (17, 40, 12)),
        ("6204", (20, 47, 14)),
        ("6205", (25, 52, 15)),
    ],
)
def test_bearings_that_public_tables_print(number: str, size: tuple[int, int, int]) -> None:
    """Bore, outside diameter and width as printed."""
    one = bearing(number)

    assert (one.bore, one.outside, one.width) == size


@pytest.mark.parametrize("written", ["608", "608-2Z", "608 ZZ", "608-2RS", "608-2RS1/C3"])
def test_suffixes_are_passed_over(written: str) -> None:
    """Shields, seals and play do not change the size."""
    assert bearing(written).number == "608"


@pytest.mark.parametrize("bore", [3, 4, 5, 6, 7, 8, 9, 10, 12, 15, 17, 20, 25])
def test_rings_have_room_for_balls(bore: float) -> None:
    """Outside beyond bore, shields never narrower, tolerances below nominal, play above 0."""
    found = bearings_for_shaft(bore)
    assert len(found) >= 2
    for one in found:
        assert one.outside > 1.2 * one.bore
        assert one.width_shielded >= one.width
        assert one.bore_deviation[0] < one.bore_deviation[1] == 0
        assert one.outside_deviation[0] < one.outside_deviation[1] == 0
        assert 0 < one.radial_play[0] < one.radial_play[1]


def test_bearing_that_is_not_there() -> None:
    """6400 is refused with the numbers there are; a shaft without bearings gets none."""
    with pytest.raises(Refusal, match="no deep-groove bearing for 6400; the table has 603"):
        bearing("6400")
    assert bearings_for_shaft(8.5) == ()


@pytest.mark.parametrize(
    ("written", "groove", "width", "edge"),
    [
        ("3 shaft", (2.76, 2.8), 0.5, 0.3),
        ("8 shaft", (7.54, 7.6), 0.9, 0.6),
        ("9 shaft", (8.49, 8.6), 1.1, 0.6),
        ("11 shaft", (10.39, 10.5), 1.1, 0.8),
        ("8 bore", (8.4, 8.49), 0.9, 0.6),
        ("10 bore", (10.4, 10.51), 1.1, 0.6),
        ("16 bore", (16.8, 16.91), 1.1, 1.2),
    ],
)
def test_circlip_grooves_that_public_tables_print(
    written: str, groove: tuple[float, float], width: float, edge: float
) -> None:
    """DIN 471 and 472: groove limits, least width and least land as printed."""
    one = circlip(written)

    assert one.groove_diameter == pytest.approx(groove)
    assert (one.groove_width, one.edge) == (width, edge)


@pytest.mark.parametrize("kind", ["shaft", "bore"])
def test_every_groove_is_wider_than_its_ring(kind: str) -> None:
    """The ring goes into its groove, and the groove into the metal."""
    for diameter in (8, 10, 12, 15, 16, 17, 18, 20, 22, 24, 25, 28, 30):
        one = circlip(f"{diameter} {kind}")
        assert one.groove_width > one.thickness
        inward = one.groove_diameter[1] < diameter
        assert inward == (kind == "shaft")


def test_circlips_that_are_not_there() -> None:
    """Sizes and words outside the table."""
    with pytest.raises(
        Refusal, match=r"no circlip for a shaft of 8\.5 mm in DIN 471.*nearest are 8 and 9 mm"
    ):
        circlip("8.5 shaft")
    with pytest.raises(Refusal, match='"8 hub" is no circlip'):
        circlip("8 hub")


def test_pins() -> None:
    """Diameters rise, lengths too; a size that is not made names its neighbours."""
    sizes = parallel_pin_diameters()
    assert all(a < b for a, b in pairwise(sizes))
    assert all(len(parallel_pin(size).lengths) > 4 for size in sizes)
    with pytest.raises(Refusal, match=r"no parallel pin of 3\.5 mm.*nearest are 3 and 4 mm"):
        parallel_pin(3.5)


@pytest.mark.parametrize("kind", ["parallel", "woodruff"])
def test_key_seats_leave_a_clearance_over_the_key(kind: str) -> None:
    """Depth in shaft and hub together exceed the key's height; the key is narrower than the shaft."""
    for shaft in (6.5, 8, 10, 12, 15, 20, 25):
        one = key_for_shaft(shaft, kind)
        assert 0 < one.shaft_depth + one.hub_depth - one.height <= 0.4
        assert one.width < shaft / 2
        assert (one.disc is not None) == (kind == "woodruff")


def test_key_range_has_its_bound_below() -> None:
    """A shaft of exactly 12 belongs to "over 10 up to 12"; outside it is refused."""
    assert key_for_shaft(12).width == 4
    assert key_for_shaft(12.1).width == 5
    with pytest.raises(Refusal, match="shaft is 5 mm; ISO 773 here runs over 6 and up to 44 mm"):
        key_for_shaft(5)
    with pytest.raises(Refusal, match='no "square" key'):
        key_for_shaft(10, "square")


@pytest.mark.parametrize(
    ("written", "name"), [("012", "012"), ("-12", "012"), ("12", "012"), ("10 x 2", "10x2")]
)
def test_ways_to_name_an_o_ring(written: str, name: str) -> None:
    """A code with or without its dash and nought, or the dimensions."""
    assert o_ring(written).name == name


def test_o_ring_by_its_dimensions_finds_the_code() -> None:
    """9.25 x 1.78 is 012; what is near is offered."""
    assert o_ring("9.25x1.78").name == "012"
    with pytest.raises(Refusal, match=r"No O-ring of 9\.3 x 1\.8 mm.*nearest are 9\.25 x 1\.78"):
        o_ring("9.3x1.8")
    with pytest.raises(Refusal, match='no O-ring "big"'):
        o_ring("big")


@pytest.mark.parametrize("section", [1.0, 1.78, 2.62, 3.53])
def test_grooves_squeeze_the_ring(section: float) -> None:
    """A groove is shallower than the ring is thick, wider too, and holds the ring's area."""
    for use in ("static", "moving"):
        groove = o_ring_groove(section, use)
        assert groove.depth[0] < groove.depth[1] < section < groove.width
        assert groove.depth[0] * groove.width > 0.785 * section**2
    assert o_ring_groove(section, "moving").depth[0] > o_ring_groove(section).depth[0]


def test_groove_bounds() -> None:
    """Sections and uses outside the rule."""
    with pytest.raises(Refusal, match=r"from 1 to 3\.53 mm"):
        o_ring_groove(5.0)
    with pytest.raises(Refusal, match='"gas" is no use'):
        o_ring_groove(2.0, "gas")
