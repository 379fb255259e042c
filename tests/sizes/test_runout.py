"""Run-out stacks: the exact quantile against closed forms, simulation and the worst case."""

from __future__ import annotations

import math

import numpy
import pytest

from tommybar.refusals import Refusal
from tommybar.sizes.runout import (
    eccentricity_quantile,
    offset_eccentricity,
    rayleigh_eccentricity,
    runout_stack,
)
from tommybar.sizes.vector_sum import quantile_of_sum


def simulated(terms: list[float], share: float, count: int = 400_000) -> float:
    """Quantile of the sum of vectors of these lengths in random directions."""
    draw = numpy.random.default_rng(7)
    total = numpy.zeros(count, dtype=complex)
    for term in terms:
        total += term * numpy.exp(2j * numpy.pi * draw.random(count))
    return float(numpy.quantile(numpy.abs(total), share))


@pytest.mark.parametrize(
    "terms",
    [[40.0, 25.0], [40.0, 10.0, 5.0], [25.0, 25.0, 10.0, 5.0], [10.0] * 6, [30.0, 0.01, 0.001]],
    ids=str,
)
@pytest.mark.parametrize("share", [0.3, 0.5, 0.9, 0.95, 0.99])
def test_the_exact_quantile_is_that_of_a_simulation(terms: list[float], share: float) -> None:
    """400,000 draws agree to 0.5 % of the worst case."""
    exact = eccentricity_quantile(terms, share)
    assert exact == pytest.approx(simulated(terms, share), abs=0.005 * sum(terms))


def test_three_terms_by_hand() -> None:
    """40, 10, 5 um at 95 %: 53.16 um, so 106.3 um on the indicator; the quick estimate is capped at 55."""
    stack = runout_stack([40.0, 10.0, 5.0], 0.95)
    assert stack.rms_um == pytest.approx(41.533, abs=0.001)
    assert stack.quantile_um == pytest.approx(53.159, rel=0.002)
    assert stack.runout_um == pytest.approx(106.32, rel=0.002)
    assert rayleigh_eccentricity([40.0, 10.0, 5.0]) == stack.worst_um == 55.0


def test_finer_shares_move_the_answer_less_and_less() -> None:
    """The error falls at least as fast as the shares grow in number: below 4 um over their count."""
    terms = [25.0, 25.0, 10.0, 5.0]
    finest = quantile_of_sum(terms, 0.95, 2048)
    for atoms in (16, 32, 64, 128, 256, 512, 1024):
        assert abs(quantile_of_sum(terms, 0.95, atoms) - finest) < 4.0 / atoms


def test_many_similar_terms_come_near_the_quick_estimate() -> None:
    """With twelve equal terms the Rayleigh limit lies within 2 %."""
    assert eccentricity_quantile([10.0] * 12) == pytest.approx(rayleigh_eccentricity([10.0] * 12), rel=0.02)


def test_few_terms_lie_below_the_quick_estimate() -> None:
    """Two equal terms at 99 %: the estimate exceeds the worst case and is capped."""
    assert eccentricity_quantile([10.0, 10.0], 0.99) < rayleigh_eccentricity([10.0, 10.0], 0.99) == 20.0


def test_one_term_and_none() -> None:
    """A single eccentricity is itself; terms of nought add nothing."""
    assert eccentricity_quantile([12.0]) == 12.0
    assert eccentricity_quantile([]) == 0.0
    assert eccentricity_quantile([12.0, 0.0, 0.0]) == 12.0


def test_a_known_offset_with_random_errors_is_that_of_a_simulation() -> None:
    """Rice quantile of 20 um and 10 um: 22.46 at half, 38.26 at 95 %."""
    draw = numpy.random.default_rng(3)
    away = numpy.hypot(20.0 + draw.normal(0, 10, 400_000), draw.normal(0, 10, 400_000))
    for share in (0.5, 0.95):
        assert offset_eccentricity(20.0, 10.0, share) == pytest.approx(
            float(numpy.quantile(away, share)), rel=0.005
        )
    assert offset_eccentricity(0.0, 10.0) == pytest.approx(10 * math.sqrt(-2 * math.log(0.05)), rel=1e-6)


@pytest.mark.parametrize(
    ("terms", "share", "words"),
    [([-1.0], 0.95, "eccentricity is -1 um"), ([1.0], 1.0, "between 0 and 1"), ([math.nan], 0.5, "nan um")],
)
def test_bad_figures_are_refused(terms: list[float], share: float, words: str) -> None:
    """No eccentricity below nought, no certainty."""
    with pytest.raises(Refusal, match=words):
        eccentricity_quantile(terms, share)
