"""The frame itself: what counts as agreeing with a printed figure."""

from __future__ import annotations

from types import ModuleType, SimpleNamespace
from typing import Any, cast

import pytest

from tommybar.refusals import Refusal

from . import frame
from .frame import Band, Row, Unmapped, difference, figure_of, half_unit, verdict


def row(value: str, value2: str = "", **words: str) -> Row:
    """A row with a printed value and nothing else of interest."""
    names = Row.__dataclass_fields__
    return Row(**{**dict.fromkeys(names, ""), "value": value, "value2": value2, **words})


@pytest.mark.parametrize(
    ("text", "half"), [("33.880", 0.0005), ("400", 0.5), ("-0.15", 0.005), ("2.25e-3", 0.000005)]
)
def test_half_a_unit_of_the_last_place_that_was_written(text: str, half: float) -> None:
    """Trailing noughts count as written places; an exponent shifts them."""
    assert half_unit(text) == pytest.approx(half)


@pytest.mark.parametrize(
    ("text", "degrees", "half"),
    [
        ("1deg 29' 27\"", 1.4908333, 0.5 / 3600),
        ("0deg 30'", 0.5, 0.5 / 60),
        ("-3deg", -3.0, 0.5),
    ],
)
def test_angles_in_minutes_and_seconds_become_degrees(text: str, degrees: float, half: float) -> None:
    """The last part that is written sets the tolerance."""
    assert figure_of(text) == (pytest.approx(degrees), pytest.approx(half))


def test_a_figure_just_inside_half_a_unit_agrees_and_just_outside_does_not() -> None:
    """The band is half a unit each way, no more."""
    assert difference(row("2.25"), 2.2549) == ""
    assert "computed 2.256" in difference(row("2.25"), 2.256)


def test_both_limits_are_compared() -> None:
    """A wrong second figure is seen, and so is a missing one."""
    assert difference(row("-14", "-5"), (-14.0, -5.0)) == ""
    assert "printed -5" in difference(row("-14", "-5"), (-14.0, -4.0))
    assert "printed 2 figures" in difference(row("-14", "-5"), -14.0)


def test_lists_in_one_cell_are_taken_apart() -> None:
    """Figures parted by semicolons or crosses are compared one by one."""
    assert difference(row("12 x 8"), (12, 8)) == ""
    assert difference(row("55;65;75"), (55, 65, 75)) == ""
    assert "printed 65" in difference(row("55;65;75"), (55, 64, 75))


def test_words_are_compared_without_regard_to_case_and_blanks() -> None:
    """Words must be the same words."""
    assert difference(row("Visible  edges"), "visible edges") == ""
    assert "computed 'hidden edges'" in difference(row("visible edges"), "hidden edges")


def test_a_range_holds_what_lies_inside_it() -> None:
    """With as_range the computed figure must lie in value..value2, widened by the band."""
    band = Band(relative=0.2, as_range=True)
    assert difference(row("100", "200"), 235.0, band) == ""
    assert "printed range" in difference(row("100", "200"), 260.0, band)


def test_a_row_that_no_rule_maps_is_unmapped_and_a_refusal_is_a_failure() -> None:
    """The three outcomes are kept apart."""

    def lost(asked: Row) -> float:
        raise Unmapped(asked.item)

    def refused(asked: Row) -> float:
        raise Refusal("The size is 0 mm.")

    def mapping(call: Any) -> ModuleType:
        return cast(ModuleType, SimpleNamespace(expected_call=call))

    assert verdict(row("1"), mapping(lost))[0] == "unmapped"
    assert verdict(row("1"), mapping(refused))[0] == "failed"
    assert verdict(row("1"), mapping(lambda asked: 2.0))[0] == "failed"
    assert verdict(row("1"), mapping(lambda asked: 1.2))[0] == "passed"


@pytest.mark.parametrize("file", frame.FILES)
def test_the_rows_that_are_shipped_are_all_there(file: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """Every file has rows with an id of its own and a basis that is known."""
    monkeypatch.delenv("TOMMYBAR_CHECKS", raising=False)
    rows = frame.all_rows(file)
    assert len(rows) >= 25
    assert len({one.id for one in rows}) == len(rows)
    assert {one.basis for one in rows} <= {*frame.OUTSIDE, "computed"}
    assert all(one.value and one.source for one in rows)


def test_another_folder_can_be_read(tmp_path: Any, monkeypatch: pytest.MonkeyPatch) -> None:
    """TOMMYBAR_CHECKS names the folder that is read."""
    head = "id,group,item,condition,value,value2,unit,source,basis,formula,computed,follows,note"
    line = "X1,named limits,8 H7,nominal 8 mm,0,15,um,somewhere,read,,,,"
    (tmp_path / "iso286.csv").write_text(f"# note\n{head}\n{line}\n", encoding="utf-8")
    monkeypatch.setenv("TOMMYBAR_CHECKS", str(tmp_path))
    assert [one.id for one in frame.all_rows("iso286")] == ["X1"]
    assert frame.all_rows("threads") == []
