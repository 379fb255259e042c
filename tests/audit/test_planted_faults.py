"""The audit finds each fault that is planted in a sheet: a figure left out, a digit wrong, one said twice."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from tommybar.pack.audit.comparing import audited, faults_of
from tommybar.pack.printed import PrintedDimension
from tommybar.pack.sheet import Dimension
from tommybar.pack.units import INCH
from tommybar.shapes.features import Shape

from .conftest import DESIGNS, name_of, sheets_of

designs = pytest.mark.parametrize("path", DESIGNS, ids=name_of)
BESIDES = ("runout", "position", "finish")
Printed = tuple[PrintedDimension, ...]


def _same_line(one: PrintedDimension, other: PrintedDimension) -> bool:
    """Whether both are one figure on the paper: several features may end at one dimensioned place."""
    if one == other:
        return True
    line = (one.kind, one.datum, one.words, one.figure, one.start, one.end)
    return one.end is not None and line == (
        other.kind, other.datum, other.words, other.figure, other.start, other.end
    )  # fmt: skip


def _figures(path: Path, unit: str = "mm") -> Iterator[tuple[Shape, Printed, int]]:
    """Every printed figure of a design's sheets, each line of the paper once; words that a view shows left out."""
    for part, sheet in sheets_of(path, unit, "A4" if unit == "mm" else "Letter"):
        printed = sheet.dimensions()
        for n, one in enumerate(printed):
            shown = one.size == "tag" or (one.kind == "form" and one.size in ("form", "bottom"))
            first = next(k for k, other in enumerate(printed) if _same_line(one, other))
            if one.kind not in BESIDES and not shown and first == n:
                assert part.shape is not None
                yield part.shape, printed, n


def _with(printed: Printed, n: int, **new: object) -> Printed:
    return tuple(
        replace(one, **new) if _same_line(one, printed[n]) else one  # type: ignore[arg-type]
        for one in printed
    )


@designs
def test_each_figure_left_out_is_missed(path: Path) -> None:
    """No printed figure is needless: without it the part cannot be built."""
    unseen = []
    for shape, printed, n in _figures(path):
        left = tuple(one for one in printed if not _same_line(one, printed[n]))
        if not faults_of(shape, left):
            unseen.append((printed[n].feature, printed[n].size))

    assert unseen == []


@designs
def test_each_figure_wrong_by_its_last_digit_is_found(path: Path) -> None:
    """Away from the true figure by one in the third decimal."""
    unseen = []
    for shape, printed, n in _figures(path, "in"):
        one = printed[n]
        if one.unit == "":
            continue
        true = one.value / INCH if one.unit == "in" else one.value
        decimals = max(len(one.figure.partition(".")[2]), 3)
        step = 10.0**-decimals if float(one.figure) >= true else -(10.0**-decimals)
        if not faults_of(shape, _with(printed, n, figure=f"{float(one.figure) + step:.{decimals}f}")):
            unseen.append((one.feature, one.size))

    assert unseen == []


@designs
def test_each_figure_said_twice_is_found(path: Path) -> None:
    """The same figure of the same feature once more."""
    for shape, printed, n in _figures(path):
        assert "twice" in {fault.kind for fault in faults_of(shape, (*printed, printed[n]))}


@designs
def test_limits_wider_than_the_size_allows_or_left_out_are_found(path: Path) -> None:
    """A last digit outside either limit is already too much."""
    for shape, printed, n in _figures(path):
        if printed[n].limits is None:
            continue
        low, high = printed[n].limits or ("", "")
        places = len(low.partition(".")[2])
        lower, higher = f"{float(low) - 10**-places:.{places}f}", f"{float(high) + 10**-places:.{places}f}"
        for limits in ((lower, high), (low, higher), None):
            assert faults_of(shape, _with(printed, n, limits=limits)), (printed[n], limits)


def test_a_dimension_drawn_twice_and_a_word_off_the_paper_are_found() -> None:
    """The marks of the sheet are looked at as well as what is kept of them."""
    part, sheet = sheets_of(DESIGNS[0], "mm", "A4")[0]
    drawn = next(one for one in sheet.marks if isinstance(one, Dimension))
    doubled = replace(sheet, marks=[*sheet.marks, drawn])
    bare = replace(sheet, marks=[one for one in sheet.marks if one is not drawn])

    assert [fault.kind for fault in audited(part, sheet).faults] == []
    assert [fault.kind for fault in audited(part, doubled).faults] == ["twice"]
    assert {fault.kind for fault in audited(part, bare).faults} == {"not on the sheet"}


def test_a_length_that_closes_a_chain_is_found() -> None:
    """Both ends of a groove from face A and its width as well."""
    path = next(one for one in DESIGNS if one.parent.name == "demonstrator")
    part, sheet = next(one for one in sheets_of(path, "mm", "A4") if one[0].name == "shaft")
    printed = sheet.dimensions()
    place = next(one for one in printed if one.feature == "undercut" and one.size in ("start", "end"))
    width = next(one for one in printed if one.feature == "undercut" and one.size == "width")
    other, way = ("start", -1) if place.size == "end" else ("end", 1)
    value = place.value + way * width.value
    extra = replace(place, size=other, figure=f"{value:g}", words=f"{value:g}", value=value)

    assert part.shape is not None
    assert {one.kind for one in faults_of(part.shape, (*printed, extra))} == {"closed chain"}


def test_a_figure_at_a_dimension_that_belongs_to_nothing_is_found() -> None:
    """A dimension drawn with a figure that no feature has."""
    part, sheet = sheets_of(DESIGNS[0], "mm", "A4")[0]
    drawn = next(one for one in sheet.marks if isinstance(one, Dimension))
    stray = replace(drawn, at=drawn.at + 3.0, a=(drawn.a[0] + 1.0, drawn.a[1] + 1.0),
                    words=(replace(drawn.words[0], words="987.6"),))  # fmt: skip
    odd = replace(sheet, marks=[*sheet.marks, stray])

    assert [(one.kind, one.size) for one in audited(part, odd).faults] == [("of nothing", "987.6")]
