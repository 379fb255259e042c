"""Accepting a size: guard bands, probability, and the choice of the instrument."""

from __future__ import annotations

import math

import numpy
import pytest

from tommybar.refusals import Refusal
from tommybar.sizes.acceptance import acceptance_zone, conformance_probability, instrument_verdict


def test_a_part_at_the_edge_of_the_zone_is_good_at_the_wanted_confidence() -> None:
    """At the guarded limit of a wide tolerance the probability of being within is 95 %."""
    zone = acceptance_zone(10.0, 10.1, 0.004)
    assert conformance_probability(zone.largest, 10.0, 10.1, 0.004) == pytest.approx(0.95, abs=1e-9)
    assert conformance_probability(zone.smallest, 10.0, 10.1, 0.004) == pytest.approx(0.95, abs=1e-9)
    assert zone.guard_mm == pytest.approx(1.645 * 0.004, rel=0.001)


def test_the_probability_is_that_of_a_simulation() -> None:
    """11.9835 measured for 11.982 to 12.000 with u = 0.002: 77.3 %."""
    true = 11.9835 + numpy.random.default_rng(1).normal(0, 0.002, 400_000)
    share = float(numpy.mean((true >= 11.982) & (true <= 12.0)))
    assert conformance_probability(11.9835, 11.982, 12.0, 0.002) == pytest.approx(share, abs=0.003)


def test_too_coarse_an_instrument_leaves_no_zone() -> None:
    """When two guard bands fill the tolerance nothing can be accepted."""
    zone = acceptance_zone(5.0, 5.012, 0.004)
    assert not zone.possible
    assert not zone.accepts(5.006)
    assert acceptance_zone(5.0, 5.012, 0.0).accepts(5.012)


@pytest.mark.parametrize(
    ("uncertainty", "word", "judges"),
    [
        (0.0009, "good", True),
        (0.001, "good", True),
        (0.0019, "usual", True),
        (0.0032, "last resort", True),
        (0.0039, "too coarse", False),
        (0.0050, "no use", False),
    ],
)
def test_the_verdict_goes_by_twice_the_standard_uncertainty(
    uncertainty: float, word: str, judges: bool
) -> None:
    """On a tolerance of 0.02 mm."""
    verdict = instrument_verdict(0.02, uncertainty)
    assert (verdict.word, verdict.can_judge) == (word, judges)
    assert verdict.ratio == pytest.approx(100 * uncertainty)


def test_bad_figures_are_refused() -> None:
    """Crossed limits, tolerance of nought, a doubtful confidence."""
    with pytest.raises(Refusal, match="first must not be above"):
        acceptance_zone(5.1, 5.0, 0.001)
    with pytest.raises(Refusal, match="tolerance is 0 mm"):
        instrument_verdict(0.0, 0.001)
    with pytest.raises(Refusal, match=r"at least 0\.5"):
        acceptance_zone(5.0, 5.1, 0.001, confidence=0.3)
    with pytest.raises(Refusal, match="uncertainty is nan mm"):
        instrument_verdict(0.02, math.nan)
