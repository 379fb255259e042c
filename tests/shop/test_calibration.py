"""Short trials of a machine against the arithmetic done by hand."""

import pytest

from tommybar.shop.calibration import dial_by_one_cut, reamer_cuts, runout_of, slack_of


@pytest.mark.parametrize(
    ("marked", "divisions", "before", "after", "reads"),
    [
        (0.02, 50, 25.0, 23.0, "RAD"),  # 2.00 off the diameter: 0.04 a division
        (0.02, 50, 25.0, 24.0, "DIA"),  # 1.00 off: 0.02 a division
        (0.05, 10, 30.0, 29.48, "DIA"),  # 0.52: 4 % more than it says, within a caliper's doubt
        (0.0254, 40, 20.0, 18.0, "RAD"),  # a thou dial in mm: 0.05 a division
    ],
)
def test_a_cut_tells_diameter_from_radius(marked, divisions, before, after, reads):
    """One division takes what it says off the diameter, or twice as much."""
    assert dial_by_one_cut(marked, divisions, before, after).reads == reads


@pytest.mark.parametrize(
    ("before", "after", "words"),
    [(25.0, 23.5, "would be DIA"), (25.0, 25.0, "no cut"), (25.0, 26.0, "no cut"), (0.0, -1.0, "no cut")],
)
def test_a_cut_that_fits_neither_is_refused(before, after, words):
    """Between the two lies a slip: turned back, miscounted, or slack not taken up."""
    with pytest.raises(ValueError, match=words):
        dial_by_one_cut(0.02, 50, before, after)


def test_the_worst_reading_is_reckoned_with():
    """Slack and run-out: the largest of the readings."""
    assert slack_of([3, 5, 4]) == 5
    assert runout_of([0.03, 0.08]) == 0.08


@pytest.mark.parametrize("readings", [[], [-1.0], [3.0]])
def test_readings_out_of_reason_are_refused(readings):
    """No reading, one below nought, or a run-out of millimetres."""
    with pytest.raises(ValueError, match="readings lie between 0 and 2"):
        runout_of(readings)


def test_a_reamer_cuts_the_middle_of_its_holes():
    """Two holes 8.010 and 8.014: 8.012. A hole a quarter millimetre off is another reamer."""
    assert reamer_cuts(8.0, [8.010, 8.014]) == pytest.approx(8.012)
    with pytest.raises(ValueError, match=r"lies within 0\.1 mm"):
        reamer_cuts(8.0, [8.25])
    with pytest.raises(ValueError, match="No hole is given"):
        reamer_cuts(8.0, [])
