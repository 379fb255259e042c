"""Rotary table with vernier, and the look-up "divide"."""

from __future__ import annotations

import pytest

from tommybar.facts.dividing import table_settings
from tommybar.facts.dividing.topic import answer
from tommybar.refusals import Refusal


def test_settings_read_as_degrees_minutes_and_seconds() -> None:
    """What the scales read adds up to the exact angle within half the vernier, and nothing gathers."""
    for divisions in (7, 11, 13, 127):
        for setting in table_settings(divisions, 90, 10.0):
            read = setting.degrees + setting.minutes / 60 + setting.seconds / 3600
            assert read - setting.angle == pytest.approx(setting.error, abs=1e-9)
            assert abs(setting.error) <= 5 / 3600 + 1e-12
            assert setting.seconds % 10 == 0
            assert setting.turns == int(read // 4)


def test_a_vernier_that_cannot_be_is_refused() -> None:
    """Below 1 arc second no table reads."""
    with pytest.raises(Refusal, match=r"The vernier reads 0\.1 arc seconds"):
        table_settings(7, 90, 0.1)


def test_the_look_up_divides_exactly() -> None:
    """divide 7 --ratio 40 --plates 15-20,21-33: the keys that scripts rely on."""
    found = answer(("7",), {"ratio": "40", "plates": "15-20,21-33"})
    assert [found.data[key] for key in ("turns", "holes", "plate", "error_deg")] == [5, 15, 21, 0.0]
    assert not found.cautions
    assert found.data["others"] == [{"turns": 5, "holes": 20, "plate": 28}]


def test_the_look_up_tells_an_inexact_division() -> None:
    """127 on three plates: error, compound ways and single places, with a caution."""
    found = answer(("127",), {})
    assert found.data["exact"] is False
    assert found.data["error_deg"] != 0
    assert len(found.data["places"]) == 127
    assert abs(found.data["compound"][0]["error_deg"]) < abs(found.data["error_deg"])
    assert found.data["worst_error_deg"] < found.data["closing_error_deg"]
    assert found.cautions


def test_the_look_up_knows_angles_and_tables() -> None:
    """An angle marked deg, and the option vernier."""
    assert answer(("35 deg",), {}).data["holes"] == 16
    table = answer(("7",), {"ratio": "90", "vernier": "10"}).data
    assert (table["settings"][1]["minutes"], table["settings"][1]["seconds"]) == (25, 40.0)
    with pytest.raises(Refusal, match="it needs 1"):
        answer((), {})
