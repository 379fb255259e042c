"""DIN 471 and 472 circlips, ISO 773 keys, O-ring codes, as public tables print them."""

from __future__ import annotations

import pytest

from tommybar.facts.fasteners import circlip, key_for_shaft, o_ring

# groove diameter, tolerance (minus on a shaft, plus in a bore), least groove width, ring, least land [mm]
CIRCLIPS = {
    "3 shaft": (2.8, 0.04, 0.5, 0.4, 0.3),
    "4 shaft": (3.8, 0.05, 0.5, 0.4, 0.3),
    "5 shaft": (4.8, 0.05, 0.7, 0.6, 0.3),
    "6 shaft": (5.7, 0.05, 0.8, 0.7, 0.5),
    "7 shaft": (6.7, 0.06, 0.9, 0.8, 0.5),
    "8 shaft": (7.6, 0.06, 0.9, 0.8, 0.6),
    "9 shaft": (8.6, 0.11, 1.1, 1.0, 0.6),
    "10 shaft": (9.6, 0.11, 1.1, 1.0, 0.6),
    "11 shaft": (10.5, 0.11, 1.1, 1.0, 0.8),
    "8 bore": (8.4, 0.09, 0.9, 0.8, 0.6),
    "9 bore": (9.4, 0.09, 0.9, 0.8, 0.6),
    "10 bore": (10.4, 0.11, 1.1, 1.0, 0.6),
    "11 bore": (11.4, 0.11, 1.1, 1.0, 0.6),
    "12 bore": (12.5, 0.11, 1.1, 1.0, 0.8),
    "13 bore": (13.6, 0.11, 1.1, 1.0, 0.9),
    "14 bore": (14.6, 0.11, 1.1, 1.0, 0.9),
    "15 bore": (15.7, 0.11, 1.1, 1.0, 1.1),
    "16 bore": (16.8, 0.11, 1.1, 1.0, 1.2),
    "17 bore": (17.8, 0.11, 1.1, 1.0, 1.2),
}
# shaft over and up to, width, height, depth in shaft, in hub [mm]
KEYS = [
    (6, 8, 2, 2, 1.2, 1.0),
    (8, 10, 3, 3, 1.8, 1.4),
    (10, 12, 4, 4, 2.5, 1.8),
    (12, 17, 5, 5, 3.0, 2.3),
    (17, 22, 6, 6, 3.5, 2.8),
    (22, 30, 8, 7, 4.0, 3.3),
    (30, 38, 10, 8, 5.0, 3.3),
    (38, 44, 12, 8, 5.0, 3.3),
]
# code: inside diameter, section [mm]
RINGS = {
    "008": (4.47, 1.78),
    "010": (6.07, 1.78),
    "012": (9.25, 1.78),
    "014": (12.42, 1.78),
    "016": (15.60, 1.78),
    "020": (21.95, 1.78),
    "110": (9.19, 2.62),
    "120": (25.07, 2.62),
}


@pytest.mark.parametrize(("name", "figures"), CIRCLIPS.items(), ids=CIRCLIPS)
def test_circlips(name: str, figures: tuple[float, ...]) -> None:
    """Groove, ring and land of each size."""
    groove, tolerance, width, ring, land = figures
    one = circlip(name)
    limits = (groove - tolerance, groove) if name.endswith("shaft") else (groove, groove + tolerance)

    assert one.groove_diameter == pytest.approx(limits)
    assert (one.groove_width, one.thickness, one.edge) == (width, ring, land)


@pytest.mark.parametrize("row", KEYS, ids=lambda row: f"up to {row[1]}")
def test_parallel_keys(row: tuple[float, ...]) -> None:
    """Key and seats of each range; its upper bound belongs to it."""
    over, up_to, *figures = row
    for shaft in (over + 0.1, up_to):
        one = key_for_shaft(shaft)
        assert [one.width, one.height, one.shaft_depth, one.hub_depth] == figures


@pytest.mark.parametrize(("code", "figures"), RINGS.items(), ids=RINGS)
def test_o_rings(code: str, figures: tuple[float, float]) -> None:
    """Inside diameter and section of a code."""
    one = o_ring(code)

    assert (one.inside, one.section) == figures
