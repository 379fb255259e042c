"""Plots: round ticks, words that never lie on other words, marks where the figures are."""

from __future__ import annotations

import math
import re
from itertools import combinations, pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tommybar.checks.curves import Curve, Level
from tommybar.checks.engaged import Engaged
from tommybar.checks.zones import FitZones, FloatStack, Member, Zone
from tommybar.pack.units import Reader
from tommybar.web.plot import WIDE, box_of, round_ticks, tick_words
from tommybar.web.plots import curve_plot, engaged_plot, fit_plot, float_plot

READERS = [Reader(), Reader("in")]


@given(st.floats(-1e6, 1e6), st.floats(1e-6, 1e6))
def test_ticks_are_round_few_and_hold_the_figures(low, span):
    """Steps of 1, 2 or 5 times a power of ten; no more than seven ticks; both ends within them."""
    ticks = round_ticks(low, low + span)
    steps = [b - a for a, b in pairwise(ticks)]
    first = float(f"{steps[0]:.0e}".partition("e")[0])

    assert 2 <= len(ticks) <= 7
    assert first in (1, 2, 5)
    assert steps == pytest.approx([steps[0]] * len(steps), rel=1e-6)
    air = 1e-6 * max(abs(low), span)
    assert ticks[0] <= low + air and low + span - air <= ticks[-1]


def test_tick_words_have_the_decimals_of_their_step():
    """No tick is written rounder than it is, none with more noughts than its step asks for."""
    assert tick_words((0.0, 0.05, 0.1)) == ("0.00", "0.05", "0.10")
    assert tick_words((-20.0, -10.0, 0.0)) == ("–20", "–10", "0")
    assert tick_words((0.0, 0.5, 1.0)) == ("0.0", "0.5", "1.0")


def curve(most=38.0, level=10.0, what="energy of turning", unit="J"):
    """A figure that grows with the square of the speed up to ``most``."""
    points = tuple((n * 10.0, most * (n / 48) ** 2) for n in range(49))
    return Curve(
        what, "disc", unit, points, points[24], (Level("too much", level, 1.0, "s"),), "f", ("i",), "s"
    )


def falling():
    """A figure that falls as one over the speed, with two levels near to one another."""
    points = tuple((n * 10.0, 12000.0 / n) for n in range(6, 49))
    levels = (
        Level("half the run-out of rim", 300.0, 1.0, "s"),
        Level("half the run-out of a", 280.0, 1.0, "s"),
    )
    return Curve("permissible eccentricity", "a, b", "um", points, (240.0, 500.0), levels, "f", ("i",), "s")


def fit(hole=(0.0, 0.015), shaft=(-0.014, -0.005)):
    zones = (
        Zone("wheel.bore", *hole, hole[0] == hole[1]),
        Zone("a_very_long_name_of_a_shaft.journal_a", *shaft, False),
    )
    return FitZones("H7/g6", "", 8.0, *zones)


def stack(gap=30.02):
    opens = (Member("frame.gap", 1.0, gap, False), Member("spacer.long", 1.0, 0.5, True))
    fills = (Member("washer.thick", -2.0, 1.0, False), Member("shaft.seat.long", -1.0, 28.4, False))
    return FloatStack("end float of the shaft", opens, fills, 0.05, 0.2, "washer", (0.96, 1.035))


JOINTS = tuple(
    Engaged(f"M{n} x 20", f"a_part_with_a_long_name.tapped_hole_{n}", 4.8, 5.2, 6.0, "how") for n in range(3)
)


def drawings():
    for reader in READERS:
        for one in (curve(), curve(0.0004), curve(38, 39), curve(9e5, 1e5), falling()):
            yield curve_plot(one, reader)
        for one in (fit(), fit((0.021, 0.021)), fit((0.0, 0.015), (0.015, 0.024)), fit((0, 0), (0, 0))):
            yield fit_plot(one, reader)
        for gap in (30.02, 29.0, 30.6):
            yield float_plot(stack(gap), reader)
        yield engaged_plot(JOINTS, reader)


def words_of(svg):
    """Each piece of words with the room it takes."""
    for kind, x, y, words in re.findall(
        r'<text class="([\w ]+)" x="([-\d.]+)" y="([-\d.]+)">([^<]+)</text>', svg
    ):
        yield words, box_of(float(x), float(y), words, kind.split()[0], "bold" in kind)


@pytest.mark.parametrize("drawn", list(drawings()), ids=lambda one: one.title)
def test_no_words_lie_on_others_or_outside(drawn):
    """Boxes of words measured from the font: apart from each other and inside the picture."""
    height = float(re.search(r'viewBox="0 0 \d+ (\d+)"', drawn.svg)[1])
    found = list(words_of(drawn.svg))

    assert len(found) > 4
    for words, (left, top, right, bottom) in found:
        assert left >= -4 and top >= 0 and right <= WIDE + 4 and bottom <= height, words
    for (one, a), (other, b) in combinations(found, 2):
        apart = a[2] <= b[0] + 4 or b[2] <= a[0] + 4 or a[3] <= b[1] or b[3] <= a[1]
        assert apart, (one, other)


def axis_of(svg):
    """Figure of a place along the foot: from the first and last tick's words and places."""
    marks = re.findall(r'<text class="middle" x="([\d.]+)" y="[\d.]+">(–?[\d.]+)</text>', svg)
    (x0, low), (x1, high) = ((float(x), float(words.replace("–", "-"))) for x, words in (marks[0], marks[-1]))
    return lambda x: low + (x - x0) / (x1 - x0) * (high - low)


def test_the_design_s_speed_is_marked_where_it_lies():
    """The dot stands over 240 rev/min and is told in bold words beside it."""
    drawn = curve_plot(curve(), Reader())
    x = float(re.search(r'class="here" cx="([\d.]+)"', drawn.svg)[1])

    assert axis_of(drawn.svg)(x) == pytest.approx(240.0, abs=0.5)
    assert "240 rev/min: 9.5 J</text>" in drawn.svg
    assert drawn.reads[0] == "At 240 rev/min it is 9.5 J."
    assert ("240", "9.5") in drawn.rows
    assert 'class="level"' in drawn.svg
    assert 'class="level"' not in curve_plot(curve(level=1000.0), Reader()).svg


def test_a_small_length_is_told_in_the_reader_s_own_unit():
    """500 um is 19.7 thousandths of an inch; a level of 300 um is 11.8."""
    metric, inch = (curve_plot(falling(), reader) for reader in READERS)

    assert metric.reads[:2] == (
        "At 240 rev/min it is 500 µm.",
        "Half the run-out of rim: 300 µm, the grade allows it up to 1 rev/min.",
    )
    assert inch.reads[:2] == (
        "At 240 rev/min it is 19.7 thou.",
        "Half the run-out of rim: 11.8 thou, the grade allows it up to 1 rev/min.",
    )
    assert ("240", "500") in metric.rows and ("240", "19.7") in inch.rows


@pytest.mark.parametrize("reader", READERS, ids=lambda one: one.unit)
def test_zones_are_bars_between_their_limits(reader):
    """Left and right end of each bar read off the axis are the limits, in um or thousandths of an inch."""
    drawn = fit_plot(fit(), reader)
    at = axis_of(drawn.svg)
    bars = re.findall(r'<rect class="zone \w+" x="([\d.]+)" y="[\d.]+" width="([\d.]+)"', drawn.svg)
    per = 25.4 if reader.unit == "in" else 1.0

    for (x, wide), (low, high) in zip(bars, ((0, 15), (-14, -5)), strict=True):
        assert at(float(x)) == pytest.approx(low / per, abs=0.05)
        assert at(float(x) + float(wide)) == pytest.approx(high / per, abs=0.05)
    least, most = (5 / per, 29 / per)
    assert drawn.reads == (f"It plays {least:.3g} to {most:.3g} {'thou' if per > 1 else 'µm'}.",)


@pytest.mark.parametrize(
    ("hole", "shaft", "words"),
    [
        ((0.0, 0.015), (0.015, 0.024), "It is pressed by 0 to 24 µm."),
        ((0.0, 0.015), (0.001, 0.010), "It may be 10 µm tight or 14 µm loose."),
        ((0.021, 0.021), (-0.014, -0.005), "It plays 26 to 35 µm."),
    ],
)
def test_a_fit_is_told_in_words(hole, shaft, words):
    """Pressed, between the two, loose."""
    assert fit_plot(fit(hole, shaft), Reader()).reads == (words,)


@pytest.mark.parametrize(
    ("gap", "words"), [(30.02, "0.12 mm: right"), (29.0, "-0.9 mm: wrong"), (30.6, "0.7 mm: wrong")]
)
def test_a_float_is_right_or_wrong(gap, words):
    """30.02 + 0.5 less 2 and 28.4 leaves 0.12, within 0.05 to 0.2."""
    drawn = float_plot(stack(gap), Reader())

    assert drawn.reads[0] == f"It leaves {words}."
    assert drawn.reads[1] == "washer is made last: 0.960 to 1.035 mm keeps the float."


def test_too_little_thread_is_said_in_words():
    """Bar and stroke are not all that tells it."""
    drawn = engaged_plot((JOINTS[0], Engaged("a M5", "b.c", 9.0, 5.0, 12.0, "how")), Reader())

    assert drawn.reads[1:] == ("M0 x 20 in a part with a long name tapped hole 0 has 4.8 mm, 5.2 wanted.",)
    assert [row[1:] for row in drawn.rows] == [("4.8", "5.2", "6"), ("9", "5", "12")]


def test_checks_shows_each_plot_with_reason_and_table(opened, words):
    """Every plot has its picture, a why and a table; in inches the axes are in inches."""
    page = opened.get("/designs/demo/checks").text
    count = page.count('<svg class="plot"')

    assert count == page.count("<article>") == page.count("<summary>as a table</summary>")
    for title in ("Energy of turning", "Permissible eccentricity", "Stress at the bore", "wheel bore on shaft seat",
                  "End float of the shaft", "Thread engaged"):  # fmt: skip
        assert title in page
    assert page.count(">rev/min<") == 0 and "speed, rev/min</text>" in page
    opened.client.cookies.set("unit", "in")
    inches = opened.get("/designs/demo/checks").text
    opened.client.cookies.delete("unit")
    assert "thou</text>" in inches and "float, in</text>" in inches
    assert ", µm</text>" not in inches and ", mm</text>" not in inches


def test_a_design_without_purpose_fit_or_thread_has_no_plots(browser):
    """Nothing is invented."""
    browser.settled(browser.post("/designs", {"kind": "disc", "name": "plain", "a": "60", "b": "12"}))

    assert '<svg class="plot"' not in browser.settled(browser.get("/designs/plain/checks")).text


def test_a_figure_has_three_places_and_no_exponent():
    """Small and large figures alike."""
    from tommybar.web.plots import figure

    for power in range(-6, 7):
        words = figure(1.2345 * 10.0**power)
        assert "e" not in words
        assert math.isclose(float(words), 1.2345 * 10.0**power, rel_tol=5e-3)
