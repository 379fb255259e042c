"""The stepped bar against the plain one, whose beam tables stand in ``deflection``."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tommybar.mechanics.deflection import deflection
from tommybar.mechanics.stepped_bar import alike_diameter, stepped_give
from tommybar.refusals import Refusal


@given(st.floats(0.05, 0.95), st.floats(0.05, 1.0), st.booleans())
def test_cutting_a_plain_bar_in_thought_changes_nothing(share, at, centre):
    """Two pieces of one diameter give as the beam tables say, with and without a centre."""
    long, dia, modulus = 150.0, 12.0, 205000.0
    two = ((share * long, dia, 0.0), ((1 - share) * long, dia, 0.0))
    support = "chuck_centre" if centre else "cantilever"

    assert stepped_give(two, at * long, modulus, centre) == pytest.approx(
        deflection(support, 1.0, at * long, long, dia, modulus), rel=1e-9, abs=1e-12
    )


def test_a_cantilever_of_two_diameters_by_hand():
    """20 at the root for 20 and 10 for 20: ((40^3 - 20^3)/20^4 + 20^3/10^4) x 64/(3 pi E) = 1.15 x 64/(3 pi E)."""
    pieces = ((20.0, 20.0, 0.0), (20.0, 10.0, 0.0))

    assert stepped_give(pieces, 40.0, 205000.0) == pytest.approx(1.15 * 64 / (3 * 3.14159265 * 205000.0))
    assert alike_diameter(pieces) == pytest.approx((40**3 / 1.15) ** 0.25)


def test_a_bar_without_length_is_refused():
    """No piece, no bar."""
    with pytest.raises(Refusal, match="no length"):
        stepped_give((), 0.0, 205000.0)
