"""BS 93: British Association threads, as Machinery's Handbook (31st edition) reprints the table.

The handbook rounds the depth to 0.005 mm and takes the effective diameter from
that, so it is met to 0.005 mm; the minor diameter is printed to 0.01 mm.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from tommybar.facts.threads import ba_tolerance, crest_radius, thread

# number: pitch, major, effective, minor, radius [mm]
TABLE = {
    0: ("1.0000", "6.00", "5.400", "4.80", "0.1808"),
    1: ("0.9000", "5.30", "4.760", "4.22", "0.1627"),
    2: ("0.8100", "4.70", "4.215", "3.73", "0.1465"),
    3: ("0.7300", "4.10", "3.660", "3.22", "0.1320"),
    4: ("0.6600", "3.60", "3.205", "2.81", "0.1193"),
    5: ("0.5900", "3.20", "2.845", "2.49", "0.1067"),
    6: ("0.5300", "2.80", "2.480", "2.16", "0.0958"),
    7: ("0.4800", "2.50", "2.210", "1.92", "0.0868"),
    8: ("0.4300", "2.20", "1.940", "1.68", "0.0778"),
    9: ("0.3900", "1.90", "1.665", "1.43", "0.0705"),
    10: ("0.3500", "1.70", "1.490", "1.28", "0.0633"),
    11: ("0.3100", "1.50", "1.315", "1.13", "0.0561"),
    12: ("0.2800", "1.30", "1.130", "0.96", "0.0506"),
    13: ("0.2500", "1.20", "1.050", "0.90", "0.0452"),
    14: ("0.2300", "1.00", "0.860", "0.72", "0.0416"),
    15: ("0.2100", "0.90", "0.775", "0.65", "0.0380"),
    16: ("0.1900", "0.79", "0.675", "0.56", "0.0344"),
}


@pytest.mark.parametrize("number", TABLE)
def test_basic_sizes(printed: Callable[[str], Any], number: int) -> None:
    """Pitch, diameters and radius of every size."""
    pitch, major, effective, minor, radius = TABLE[number]
    one = thread(f"{number} BA")

    assert one.pitch == printed(pitch)
    assert one.major == printed(major)
    assert one.pitch_diameter == pytest.approx(float(effective), abs=0.005)
    assert one.core == printed(minor)
    assert crest_radius(one.pitch, 47.5, 0.6 * one.pitch) == pytest.approx(float(radius), abs=0.0001)


# class, sizes, element: slope and fixed part of the tolerance, in p [mm]
RULES = [
    ("close", ("0 BA", "5 BA", "10 BA"), "major", 0.15, 0.0),
    ("close", ("0 BA", "5 BA", "10 BA"), "pitch_diameter", 0.08, 0.02),
    ("close", ("0 BA", "5 BA", "10 BA"), "minor", 0.16, 0.04),
    ("normal", ("0 BA", "5 BA", "10 BA"), "major", 0.20, 0.0),
    ("normal", ("0 BA", "5 BA", "10 BA"), "pitch_diameter", 0.10, 0.025),
    ("normal", ("0 BA", "5 BA", "10 BA"), "minor", 0.20, 0.05),
    ("normal", ("11 BA", "16 BA"), "major", 0.25, 0.0),
    ("normal", ("11 BA", "16 BA"), "pitch_diameter", 0.10, 0.025),
    ("normal", ("11 BA", "16 BA"), "minor", 0.20, 0.05),
    ("", ("0 BA", "16 BA"), "pitch_diameter", 0.12, 0.03),
    ("", ("0 BA", "16 BA"), "minor", 0.375, 0.0),
]


@pytest.mark.parametrize(("named", "sizes", "element", "slope", "fixed"), RULES)
def test_tolerance_rules(
    named: str, sizes: tuple[str, ...], element: str, slope: float, fixed: float
) -> None:
    """The handbook's tolerance formulas of bolts (close, normal) and nuts (no class)."""
    for size in sizes:
        one = thread(size)
        assert ba_tolerance(one, element, named) == pytest.approx(slope * one.pitch + fixed)
