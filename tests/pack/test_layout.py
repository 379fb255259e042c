"""The measure of collisions itself: each kind of clash is found, and what only comes near is none."""

from __future__ import annotations

import pytest

from tommybar.pack.sheet import Area, Line, Sheet, Text

from .layout import LINES, clashes, crosses


@pytest.mark.parametrize(
    ("a", "b", "through"),
    [
        ((0.0, 5.0), (20.0, 5.0), True),
        ((0.0, 0.0), (20.0, 20.0), True),
        ((9.0, 9.0), (9.5, 9.5), True),  # wholly inside
        ((0.0, 10.0), (20.0, 10.0), False),  # along an edge
        ((0.0, 12.0), (12.0, 24.0), False),
        ((0.0, 5.0), (3.0, 5.0), False),  # ends before it
    ],
)
def test_a_stretch_of_line_is_held_to_a_box(
    a: tuple[float, float], b: tuple[float, float], through: bool
) -> None:
    """A box from (4, 2) to (10, 10)."""
    assert crosses(a, b, (4.0, 2.0, 10.0, 10.0)) is through


def test_each_kind_of_clash_is_found() -> None:
    """Words on words, under a thin line, on hatching, off the paper; the same words with room are none."""
    words = Text((20.0, 20.0), "80", 4.0)
    hatched = Area((((10.0, 10.0), (30.0, 10.0), (30.0, 30.0), (10.0, 30.0)),), "hatch", None)
    for name, other, kinds in (
        ("lies on '80'", Text((21.0, 20.5), "80", 4.0), LINES),
        ("a line runs through", Line(((0.0, 19.0), (90.0, 19.0)), "thin"), LINES),
        ("lies on hatching", hatched, LINES),
        ("runs off the sheet", Text((-5.0, 50.0), "12", 4.0), LINES),
    ):
        sheet = Sheet("sheet", marks=[words, other])
        assert any(name in one for one in clashes(sheet, kinds)), name
    assert clashes(Sheet("sheet", marks=[words, Text((40.0, 20.0), "80", 4.0)]), LINES) == []
    assert clashes(Sheet("sheet", marks=[words, Line(((0.0, 19.0), (90.0, 19.0)), "thin")])) == []
