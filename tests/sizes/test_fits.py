"""Fits of members whose limits came from anywhere, re-targets and warm sizes."""

from __future__ import annotations

import pytest

from tommybar.facts.fits.limits import Limits
from tommybar.refusals import Refusal
from tommybar.sizes.fits import fit_between, fit_of
from tommybar.sizes.retarget import departure_um, mate_limits
from tommybar.sizes.temperature import size_when_cool, thermal_growth


def test_the_kind_goes_by_the_ends_of_the_clearance() -> None:
    """H7/h6 may just touch and is a clearance fit; 40 H7/p6 always grips; k6 may do either."""
    assert fit_of(20.0, "H7/h6").kind == "clearance"
    assert fit_of(40.0, "H7/p6").kind == "interference"
    assert fit_of(20.0, "H7/k6").kind == "transition"


def test_members_of_different_nominal_sizes() -> None:
    """Hole 8 +0.05/0 on shaft 7.9 +-0.01: 90 to 160 um."""
    fit = fit_between(Limits(8.0, "+0.05/0", 0.0, 50.0), Limits(7.9, "+/-0.01", -10.0, 10.0))
    assert (fit.min_clearance_um, fit.max_clearance_um) == pytest.approx((90.0, 160.0))


def test_a_bore_that_came_out_large_moves_its_shaft() -> None:
    """10.022 for 10 H7/g6 (5 to 29 um): shaft 9.993 to 10.017."""
    fit = fit_of(10.0, "H7/g6")
    assert mate_limits(10.022, fit, made="hole") == pytest.approx((9.993, 10.017))
    assert mate_limits(9.99, fit, made="shaft") == pytest.approx((9.995, 10.019))
    assert departure_um(10.022, fit.hole) == pytest.approx(7.0)
    assert departure_um(9.9, fit.hole) == pytest.approx(-100.0)
    assert departure_um(10.01, fit.hole) == 0.0


def test_measured_sizes_that_make_no_sense_are_refused() -> None:
    """Nought, no member, and a mate that vanishes."""
    fit = fit_of(10.0, "H7/g6")
    with pytest.raises(Refusal, match="measured size is 0 mm"):
        mate_limits(0.0, fit, made="hole")
    with pytest.raises(Refusal, match="it is a hole or a shaft"):
        mate_limits(10.0, fit, made="bore")  # type: ignore[arg-type]
    with pytest.raises(Refusal, match="leaves no mate"):
        mate_limits(0.02, fit, made="hole")


def test_a_warm_size_taken_back_grows_again() -> None:
    """Cooling and warming undo each other."""
    cool = size_when_cool(60.0, 20.5, 20.0)
    assert cool + thermal_growth(cool, 20.5, 20.0) / 1000 == pytest.approx(60.0, abs=1e-12)
    with pytest.raises(Refusal, match="length is -1 mm"):
        thermal_growth(-1.0, 11.5, 10.0)
