"""The figure that rules a rung, for readers of millimetres and of inches."""

from __future__ import annotations

from dataclasses import replace
from typing import Literal

import pytest

from tommybar.making.cards import Step
from tommybar.making.dials import graduation_words
from tommybar.making.lengths import spoken
from tommybar.pack.cardsheets.ladder import big_words, rung
from tommybar.pack.lettering import width_of
from tommybar.pack.sheet import Text
from tommybar.pack.units import Reader
from tommybar.shop.model import Dial


def step(big: str, kind: str, tool_size: float = 0.0) -> Step:
    """A step with only its figure filled in."""
    return Step(1, "Turn it", "rim", "", "knife", 400, 20, 0.1, big, kind, (), tool_size=tool_size)


@pytest.mark.parametrize(
    ("big", "kind", "tool_size", "said"),
    [
        ("90.50", "DIA mm", 0.0, ("3.563", "DIA in")),
        ("12.024", "DIA mm", 0.0, ("0.4734", "DIA in")),
        ("25.40", "mm long", 0.0, ("1.000", "in long")),
        ("0.5", "x 45 deg", 0.0, ("0.020", "in x 45 deg")),
        ("6.5", "DIA mm", 6.5, ("6.5", "DIA mm")),
        ("12 H7", "DIA mm", 12.0, ("12 H7", "DIA mm")),
        ("5", "places", 0.0, ("5", "places")),
        ("0.397", "x 45 deg", 0.0, ("0.0156", "in x 45 deg")),  # 1/64 in, no more figures than a dial has
    ],
)
def test_big_figures_in_inches(big: str, kind: str, tool_size: float, said: tuple[str, str]) -> None:
    """Lengths are turned (1 in = 25.4 mm), sizes marked on tools and counts are not."""
    assert big_words(step(big, kind, tool_size), Reader("in")) == said
    assert big_words(step(big, kind, tool_size), Reader("mm")) == (big, kind)


@pytest.mark.parametrize("unit", ["mm", "in"])
def test_a_long_figure_leaves_room_for_the_verb(unit: str) -> None:
    """The name of a unified thread with its depth is as wide as the rung: what it is goes under it."""
    tap = Step(
        6, "Tap 1/4-28 UNF by hand, spindle stopped", "seat", "tap 1/4-28 UNF", "tap", 0, 0, 0.9,
        "1/4-28 UNF", "0.375 in deep of full thread", (),
    )  # fmt: skip
    words = [one for one in rung(tap, 123.0, Reader(unit)).marks if isinstance(one, Text)]

    def box(one: Text) -> tuple[float, float, float, float]:
        wide = width_of(one.words, one.size, one.bold)
        left = one.at[0] - wide if one.anchor == "end" else one.at[0]
        return left, one.at[1] - 0.72 * one.size, left + wide, one.at[1]

    for n, one in enumerate(words):
        for other in words[:n]:
            a, b = box(one), box(other)
            apart = a[2] <= b[0] or b[2] <= a[0] or a[3] <= b[1] or b[3] <= a[1]
            assert apart, f"{one.words} on {other.words}"


def test_a_reader_of_inches_is_not_told_a_bare_metric_feed_or_dial() -> None:
    """0.15 a turn is 0.0059 in; the marks on a metric dial stay metric and say so: 0.02 read as inches is a scrapped part."""
    cut = Step(1, "Rough rim", "rim", "", "knife", 400, 20, 0.15, "12.70", "DIA mm", ())
    cut = replace(cut, tool="A: knife")
    dial = Dial(0.02, 50, "RAD")

    def told(unit: Literal["mm", "in"]) -> str:
        return " ".join(one.words for one in rung(cut, 123.0, Reader(unit)).marks if isinstance(one, Text))

    assert "feed 0.0059 in" in told("in")
    assert "feed 0.15" in told("mm")
    assert spoken(graduation_words(dial), "in") == "RAD dial, 0.02 millimetre a div"
    assert spoken(graduation_words(dial), "mm") == "RAD dial, 0.02 a div"
    assert (
        spoken(graduation_words(replace(dial, per_division=0.0254, unit="in")), "in")
        == "RAD dial, 0.001 in a div"
    )
