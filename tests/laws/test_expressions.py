"""Laws of expressions and of the design file that hold for any text."""

from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tommybar.design import design_from_text
from tommybar.design.expressions import parse
from tommybar.design.figures import figure
from tommybar.design.quantities import LENGTH
from tommybar.design.working import Scope, worker
from tommybar.refusals import Refusal

DEMONSTRATOR = Path(__file__).parents[2] / "examples" / "demonstrator" / "design.yaml"
PIECES = st.sampled_from(
    [
        "1",
        "2.5",
        "3/8",
        '"',
        " in",
        " mm",
        "a",
        "b",
        "+",
        "-",
        "*",
        "/",
        "(",
        ")",
        ",",
        "min(",
        "sqrt(",
        "sin(",
        " ",
        "deg",
    ]
)


def lengths():
    """Expressions of lengths a and b and bare figures, built from the grammar, with brackets."""
    leaf = st.sampled_from(["a", "b", "2.5", "7", "0.25"])
    return st.recursive(
        leaf,
        lambda inner: st.one_of(
            st.tuples(inner, st.sampled_from("+-"), inner).map(lambda t: f"({t[0]} {t[1]} {t[2]})"),
            st.tuples(st.sampled_from(["2", "0.5", "3"]), inner).map(lambda t: f"{t[0]} * {t[1]}"),
            st.tuples(inner, inner).map(lambda t: f"max({t[0]}, {t[1]})"),
        ),
        max_leaves=6,
    )


def text_worker(text, unit):
    """The expression made ready as a length in a file of that unit."""
    return worker(parse(text), Scope.of(unit, {"a": LENGTH, "b": LENGTH}), "length")


@given(lengths(), st.floats(0.1, 500), st.floats(0.1, 500))
def test_turning_a_file_to_inches_scales_every_length(text, a, b):
    """The same text in an inch file, its sizes 25.4 times as large, is 25.4 times as long."""
    if len(text) > 200:
        return
    in_mm = text_worker(text, "mm")({"a": a, "b": b})
    in_inch = text_worker(text, "in")({"a": a * 25.4, "b": b * 25.4})

    assert in_inch == pytest.approx(25.4 * in_mm, rel=1e-9, abs=1e-6)


@given(st.floats(0.001, 1000).map(lambda value: round(value, 4)))
def test_a_unit_written_out_overrules_the_unit_of_the_file(value):
    """A figure with its unit is the same length in every file."""
    assert figure(f"{value:f} mm", "in") == figure(f"{value:f}", "mm")


@given(st.integers(0, 40), st.integers(1, 63), st.sampled_from([2, 4, 8, 16, 32, 64]))
def test_mixed_numbers_are_their_parts_added(whole, top, bottom):
    """1 3/8 in is one inch and three eighths, with either sign for the unit."""
    want = (whole + top / bottom) * 25.4

    assert figure(f"{whole} {top}/{bottom} in") == pytest.approx(want, rel=1e-12)
    assert figure(f'{whole} {top}/{bottom}"') == pytest.approx(want, rel=1e-12)


@settings(max_examples=400)
@given(st.one_of(st.text(max_size=40), st.lists(PIECES, max_size=20).map("".join)))
def test_any_text_is_a_figure_or_a_refusal_with_its_column(text):
    """No text ends in anything but a finite figure or a refusal that stays within the text."""
    try:
        value = text_worker(text, "mm")({"a": 10.0, "b": 4.0})
    except Refusal as refusal:
        assert all(1 <= one.column <= len(text) + 1 for one in refusal.complaints)
    else:
        assert abs(value) < float("inf")


@settings(max_examples=150, suppress_health_check=[HealthCheck.too_slow], deadline=None)
@given(
    st.integers(0, 6000),
    st.integers(0, 30),
    st.sampled_from(["", "x", "-", ": ", "9", "[", "}", "\n", " 0", '"', "deg"]),
)
def test_a_damaged_design_is_refused_with_a_place_or_still_whole(start, cut, put):
    """The demonstrator with any piece cut out or put in is loaded, or refused with lines inside it."""
    text = DEMONSTRATOR.read_text()
    start = min(start, len(text))
    damaged = text[:start] + put + text[start + cut :]
    try:
        design_from_text(damaged, "d.yaml")
    except Refusal as refusal:
        lines = damaged.count("\n") + 2
        assert all(1 <= one.line <= lines and one.column >= 1 for one in refusal.complaints)
        assert all(one.file == "d.yaml" for one in refusal.complaints)
