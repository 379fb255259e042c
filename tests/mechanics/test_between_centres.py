"""Work between centres: against the closed beam, the taper's own formula, and limits that need no book."""

from __future__ import annotations

import pytest

from tommybar.facts.tapers import tail_set_over
from tommybar.mechanics.between_centres import alike_between_centres, centres_give, tail_shift
from tommybar.mechanics.deflection import deflection
from tommybar.refusals import Refusal

E = 205000.0


@pytest.mark.parametrize("at", [0.0, 20.0, 75.0, 100.0, 149.0, 150.0])
def test_a_plain_bar_in_pieces_gives_like_the_closed_beam(at):
    """F a^2 b^2 / 3 E I L, beam on two supports (any text on strength of materials)."""
    pieces = ((30.0, 10.0, 4.0), (50.0, 10.0, 4.0), (70.0, 10.0, 4.0))

    assert centres_give(pieces, at, E) == pytest.approx(
        deflection("centres", 1.0, at, 150.0, 10.0, E, bore=4.0), rel=1e-9, abs=1e-15
    )


def test_a_stepped_bar_by_hand():
    """Halves of I and 16 I, load in the middle: F L^3 / 96 E I of each half, so (1 + 1/16) / 96."""
    thin, thick = 5.0, 10.0
    second = 3.141592653589793 * thin**4 / 64

    found = centres_give(((60.0, thin, 0.0), (60.0, thick, 0.0)), 60.0, E)

    assert found == pytest.approx((1 + 1 / 16) * 120.0**3 / (96 * E * second), rel=1e-9)


def test_turned_end_for_end_it_gives_the_same():
    """Maxwell's reciprocity for the mirrored bar."""
    pieces = ((30.0, 8.0, 0.0), (40.0, 12.0, 0.0), (20.0, 6.0, 0.0))

    assert centres_give(pieces, 35.0, E) == pytest.approx(centres_give(pieces[::-1], 55.0, E), rel=1e-12)


def test_both_centres_hold():
    """Nothing gives where a centre stands."""
    pieces = ((30.0, 8.0, 0.0), (40.0, 12.0, 0.0))

    assert centres_give(pieces, 0.0, E) == centres_give(pieces, 70.0, E) == pytest.approx(0.0, abs=1e-18)


def test_the_alike_bar_gives_as_much():
    """By its own definition, read back through the closed beam."""
    pieces = ((30.0, 8.0, 0.0), (40.0, 12.0, 0.0), (20.0, 6.0, 0.0))
    dia = alike_between_centres(pieces)

    assert deflection("centres", 1.0, 45.0, 90.0, dia, E) == pytest.approx(centres_give(pieces, 45.0, E))


def test_the_shift_that_takes_a_taper_away_is_the_set_over_that_makes_it():
    """A taper of 0.04 in 100 on work 150 long is made by a set-over of 0.03 (formula of the tapers' own table)."""
    assert tail_shift(0.04, 100.0, 150.0) == pytest.approx(tail_set_over(0.04 / 100.0, 150.0))
    assert tail_shift(-0.04, 100.0, 150.0) == -tail_shift(0.04, 100.0, 150.0)


@pytest.mark.parametrize(
    ("ask", "words"),
    [
        (lambda: centres_give((), 0.0, E), "has no length"),
        (lambda: centres_give(((10.0, 5.0, 0.0),), 11.0, E), "place of the tool"),
        (lambda: tail_shift(0.1, 200.0, 150.0), "places measured"),
        (lambda: tail_shift(0.1, 0.0, 150.0), "places measured"),
    ],
)
def test_what_cannot_be_is_refused(ask, words):
    """With its words."""
    with pytest.raises(Refusal, match=words):
        ask()
