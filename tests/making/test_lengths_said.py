"""Lengths in sentences, as a reader of inches reads them."""

from __future__ import annotations

import pytest

from tommybar.making.lengths import Mm, spoken


@pytest.mark.parametrize(
    ("metric", "sentence", "inches"),
    [
        # a metric drill keeps the size marked on it: 5 / 25.4 = 0.19685
        ("Drill bore 5, pilot", f"Drill bore {Mm(5.0):tool}, pilot", "Drill bore 5 mm (0.197 in), pilot"),
        ("drill 5", f"drill {Mm(5.0):tool}", "drill 5 mm (0.197 in)"),
        ("drill 6.35", f"drill {Mm(6.35):tool}", "drill 1/4 in"),
        # 23 / 25.4 = 0.905512: rounded once, not first to 0.9055 and then down
        ("a bore of 23 mm", "a bore of 23 mm", "a bore of 0.906 in"),
        # 1.42 / 25.4^3 = 0.0000867: no powers of ten on a card
        ("1.42 mm3 in all", "1.42 mm3 in all", "0.0000867 in3 in all"),
    ],
)
def test_a_sentence_is_said_in_either_unit(metric, sentence, inches):
    assert spoken(sentence, "mm") == metric
    assert spoken(sentence, "in") == inches
