"""Preferred fits: their words run from slack to shrink."""

from __future__ import annotations

from itertools import pairwise

import pytest

from tommybar.facts.fits.preferred import preferred_fit, preferred_fits
from tommybar.refusals import Refusal
from tommybar.sizes.fits import fit_of


@pytest.mark.parametrize("size", [3.0, 8.0, 25.0, 50.0, 100.0])
def test_the_list_runs_from_loosest_to_tightest(size: float) -> None:
    """At every size the middle clearance falls from word to word."""
    pairs = [fit_of(size, fit.hole_based) for fit in preferred_fits()]
    middles = [(fit.min_clearance_um + fit.max_clearance_um) / 2 for fit in pairs]
    assert all(later <= before for before, later in pairwise(middles))


@pytest.mark.parametrize("size", [8.0, 25.0, 50.0, 100.0])
def test_shaft_based_fits_feel_the_same(size: float) -> None:
    """The same fit on bright bar has the same clearances, but for JS, which has no delta."""
    for fit in preferred_fits():
        on_hole, on_bar = fit_of(size, fit.hole_based), fit_of(size, fit.shaft_based)
        assert on_bar.kind == on_hole.kind, fit.word
        if fit.word != "light push":
            assert on_bar.min_clearance_um == pytest.approx(on_hole.min_clearance_um, abs=1), fit.word


def test_an_unknown_word_is_refused_and_the_nearest_offered() -> None:
    """A slip of the keys is met with the right word."""
    with pytest.raises(Refusal, match='Did you mean "sliding"'):
        preferred_fit("slidng")
