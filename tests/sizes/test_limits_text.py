"""Limits and fits as people write them."""

from __future__ import annotations

import pytest

from tommybar.refusals import Refusal
from tommybar.sizes.limits_text import fit_from_text, limits_from_text


@pytest.mark.parametrize(
    ("text", "smallest", "largest"),
    [
        ("8 H7", 8.0, 8.015),
        ("8H7", 8.0, 8.015),
        ("8 mm H7", 8.0, 8.015),
        ("12 +0.02/-0.01", 11.99, 12.02),
        ("12 -0.01/+0.02", 11.99, 12.02),
        ("12 +0.02 -0.01", 11.99, 12.02),
        ("12 0/-0.05", 11.95, 12.0),
        ("12 -0.02/-0.05 mm", 11.95, 11.98),
        ("12 +/-0.05", 11.95, 12.05),
        ("12 \u00b10.05", 11.95, 12.05),
        ("11.95 to 12.05", 11.95, 12.05),
        ("11.95 - 12.05 mm", 11.95, 12.05),
        ("16 js6", 15.9945, 16.0055),
        ("3/8 in +0.001/0", 9.525, 9.5504),
        ("1 1/2 in +/-0.005", 37.973, 38.227),
        ('0.5" H7', 12.7, 12.718),
        ("0.374 to 0.376 in", 9.4996, 9.5504),
    ],
)
def test_the_ways_of_writing_limits(text: str, smallest: float, largest: float) -> None:
    """Classes, deviations in either order, even tolerances and ranges."""
    limits = limits_from_text(text)
    assert (limits.smallest, limits.largest) == pytest.approx((smallest, largest), abs=1e-9)


def test_the_size_may_come_from_elsewhere() -> None:
    """A design names the size once and the limits beside it."""
    assert limits_from_text("H7", nominal=8.0) == limits_from_text("8 H7")
    assert limits_from_text("+0.02/-0.01", nominal=12.0).upper_um == 20
    assert limits_from_text("11.95 to 12.05", nominal=12.0).nominal == 12.0


@pytest.mark.parametrize(
    ("text", "nominal", "words"),
    [
        ("H7", None, "names no size"),
        ("8", None, "names no limits"),
        ("8 H7", 9.0, "names 8 mm, but the size it belongs to is 9 mm"),
        ("8 about right", None, "cannot be read as limits"),
        ("12 0.02/0.01", None, "cannot be read as limits"),
        ("12.05 to 11.95", None, "first limit is above the second"),
        ("200 H7", None, "up to 120 mm"),
    ],
)
def test_what_cannot_be_read_is_refused(text: str, nominal: float | None, words: str) -> None:
    """Each with its reason."""
    with pytest.raises(Refusal, match=words):
        limits_from_text(text, nominal)


@pytest.mark.parametrize("text", ["14 H7/p6", "14H7/p6", "14 H7-p6", "14 press", "14 press fit"])
def test_the_ways_of_writing_a_fit(text: str) -> None:
    """A pair or a word of the trade."""
    fit = fit_from_text(text)
    assert (fit.text, fit.kind) == ("14 H7/p6", "interference")


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("14 H7", "names only one member"),
        ("14 g6/H7", "holes with capitals"),
        ("14 H7/H7", "holes with capitals"),
        ("14 snug", "is not a preferred fit"),
    ],
)
def test_what_is_no_fit_is_refused(text: str, words: str) -> None:
    """Each with its reason."""
    with pytest.raises(Refusal, match=words):
        fit_from_text(text)
