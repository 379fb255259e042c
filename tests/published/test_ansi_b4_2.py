"""Preferred metric fits of ANSI B4.2-1978, hole basis, as handbooks reprint them (figures from memory).

None was taken from our own output: the pairs stand in the standard's own
tables of preferred limits for 10, 20, 40 and 100 mm.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from tommybar.sizes.fits import fit_of

TABLE = {  # nominal, pair: hole largest, shaft largest, shaft smallest [mm]
    (10, "H11/c11"): ("10.090", "9.920", "9.830"),
    (10, "H9/d9"): ("10.036", "9.960", "9.924"),
    (10, "H8/f7"): ("10.022", "9.987", "9.972"),
    (10, "H7/g6"): ("10.015", "9.995", "9.986"),
    (10, "H7/h6"): ("10.015", "10.000", "9.991"),
    (10, "H7/k6"): ("10.015", "10.010", "10.001"),
    (10, "H7/n6"): ("10.015", "10.019", "10.010"),
    (10, "H7/p6"): ("10.015", "10.024", "10.015"),
    (10, "H7/s6"): ("10.015", "10.032", "10.023"),
    (10, "H7/u6"): ("10.015", "10.037", "10.028"),
    (12, "H11/c11"): ("12.110", "11.905", "11.795"),
    (20, "H11/c11"): ("20.130", "19.890", "19.760"),
    (20, "H9/d9"): ("20.052", "19.935", "19.883"),
    (20, "H8/f7"): ("20.033", "19.980", "19.959"),
    (20, "H7/g6"): ("20.021", "19.993", "19.980"),
    (20, "H7/k6"): ("20.021", "20.015", "20.002"),
    (20, "H7/n6"): ("20.021", "20.028", "20.015"),
    (20, "H7/p6"): ("20.021", "20.035", "20.022"),
    (20, "H7/s6"): ("20.021", "20.048", "20.035"),
    (20, "H7/u6"): ("20.021", "20.054", "20.041"),
    (40, "H11/c11"): ("40.160", "39.880", "39.720"),
    (40, "H9/d9"): ("40.062", "39.920", "39.858"),
    (40, "H8/f7"): ("40.039", "39.975", "39.950"),
    (40, "H7/g6"): ("40.025", "39.991", "39.975"),
    (40, "H7/k6"): ("40.025", "40.018", "40.002"),
    (40, "H7/n6"): ("40.025", "40.033", "40.017"),
    (40, "H7/p6"): ("40.025", "40.042", "40.026"),
    (40, "H7/s6"): ("40.025", "40.059", "40.043"),
    (40, "H7/u6"): ("40.025", "40.076", "40.060"),
    (100, "H11/c11"): ("100.220", "99.830", "99.610"),
    (100, "H7/s6"): ("100.035", "100.093", "100.071"),
    (100, "H7/u6"): ("100.035", "100.146", "100.124"),
}


@pytest.mark.parametrize(("nominal", "pair"), TABLE, ids=str)
def test_preferred_hole_basis_fits(printed: Callable[[str], Any], nominal: int, pair: str) -> None:
    """Largest hole and both limits of the shaft; the smallest hole is the nominal size."""
    hole_largest, shaft_largest, shaft_smallest = TABLE[nominal, pair]
    fit = fit_of(float(nominal), pair)
    assert fit.hole.smallest == nominal
    assert fit.hole.largest == printed(hole_largest)
    assert fit.shaft.largest == printed(shaft_largest)
    assert fit.shaft.smallest == printed(shaft_smallest)
