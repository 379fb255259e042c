"""The command ``facts``, called as a person calls it."""

from __future__ import annotations

import inspect
import json
import re
import resource
import subprocess
import sys
from importlib import import_module
from pathlib import Path
from typing import Any

import pytest
import typer
from typer.testing import CliRunner, Result

from tommybar.cli.facts import CONTEXT_SETTINGS, facts
from tommybar.sizes.topics import TOPICS

app = typer.Typer()
app.command(context_settings=CONTEXT_SETTINGS)(facts)


def call(*words: str) -> Result:
    """Run the command with these words."""
    return CliRunner().invoke(app, list(words))


def told(*words: str) -> dict[str, Any]:
    """The JSON object of a look-up that must succeed."""
    result = call(*words, "--json")
    assert result.exit_code == 0, result.output
    found: dict[str, Any] = json.loads(result.stdout)
    return found


KEYS = [
    (("limits", "8 H7"), ("lower_um", "upper_um")),
    (("fit", "8 H7/g6"), ("min_clearance_um", "max_clearance_um")),
    (
        ("thread", "M6"),
        (
            "pitch_mm",
            "major_mm",
            "pitch_diameter_mm",
            "minor_diameter_mm",
            "tapping_drill_mm",
            "stress_area_mm2",
            "external",
            "internal",
        ),
    ),
    (("drill", "#7"), ("diameter_mm", "diameter_in")),
    (("taper", "Morse 2"), ("taper_on_diameter", "half_angle_deg", "large_end_mm")),
    (("circle", "6", "33"), ("holes", "chord_mm")),
    (("divide", "7", "--ratio", "40", "--plates", "15-20,21-33"), ("turns", "holes", "plate", "error_deg")),
    (("gears", "1.25", "--leadscrew", "8 tpi"), ("train", "pitch_mm", "error_ppm")),
    (("material", "CW614N"), ("density_g_cm3",)),
    (("general", "25 m"), ("tolerance_mm",)),
]


@pytest.mark.parametrize(("words", "keys"), KEYS, ids=[words[0] for words, _ in KEYS])
def test_the_fixed_keys_are_there_and_a_source(words: tuple[str, ...], keys: tuple[str, ...]) -> None:
    """Scripts rely on these names; every answer names its source."""
    found = told(*words)
    assert set(keys) <= set(found)
    assert len(found["source"]) > 10


def test_pairs_of_thread_limits_are_two_figures_each() -> None:
    """external{major_mm[2], pitch_diameter_mm[2]}, internal{minor_mm[2], pitch_diameter_mm[2]}."""
    found = told("thread", "M6")
    for member, names in (
        ("external", ("major_mm", "pitch_diameter_mm")),
        ("internal", ("minor_mm", "pitch_diameter_mm")),
    ):
        for name in names:
            least, most = found[member][name]
            assert least < most


@pytest.mark.parametrize("topic", TOPICS, ids=lambda topic: topic.name)
def test_the_example_of_every_topic_answers(topic: Any) -> None:
    """The list that is shown without a topic holds only look-ups that work."""
    import shlex

    result = call(*shlex.split(topic.example))
    assert result.exit_code == 0, result.output
    assert result.stdout.rstrip().splitlines()[-1].startswith("Source: ")


def test_without_a_topic_the_list_is_shown() -> None:
    """Every topic with its example."""
    lines = call().stdout.splitlines()
    assert [line.split()[1] for line in lines] == [topic.name for topic in TOPICS]


def test_words_may_be_parted_or_together() -> None:
    """facts limits 8 H7 is facts limits "8 H7"."""
    assert told("limits", "8", "H7") == told("limits", "8 H7")


def test_lengths_are_turned_to_inches_at_this_door() -> None:
    """8.015 mm is 0.31555 in and 15 um 0.59 thou; angles and JSON stay."""
    table = call("limits", "8 H7", "--units", "in").stdout
    assert "0.31555 in" in table
    assert "0.59 thou" in table
    assert " mm\n" not in table
    assert told("limits", "8 H7", "--units", "in") == told("limits", "8 H7")


def test_a_mate_is_given_for_a_measured_member() -> None:
    """Hole measured 8.022 for H7/g6: shaft 8.022 - 0.029 to 8.022 - 0.005."""
    found = told("fit", "8 H7/g6", "--hole", "8.022")
    assert (found["mate"], found["mate_smallest_mm"], found["mate_largest_mm"]) == ("shaft", 7.993, 8.017)


def test_an_inch_fit_is_given_in_thousandths() -> None:
    """1/2 in RC4 by a size in inches, with or without the mark."""
    found = told("fit", "0.5", "RC4")
    assert (found["min_clearance_thou"], found["max_clearance_thou"]) == (0.6, 2.3)
    assert told("fit", "1/2 in RC4")["hole_thou"] == [0.0, 1.0]


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("limmits", "8 H7"), 'Did you mean "limits"?'),
        (("limits", "200 H7"), "up to 120 mm"),
        (("limits",), 'For example: limits "8 H7"'),
        (("limits", "H7"), "names no size"),
        (("fit", "8", "slidng"), 'Did you mean "sliding"?'),
        (("fit", "8 H7"), "names only one member"),
        (("fit", "8 H7/g6", "--hole", "8", "--shaft", "8"), "Both the hole and the shaft"),
        (("general", "25 q"), "has f, m, c, v"),
        (("general", "25"), "not a size and a class"),
        (("drawing", "sheet", "A9"), "ISO 5457 has"),
        (("drawing", "sheets", "A3"), 'Did you mean "sheet"?'),
        (("balance",), "For example: balance flywheel"),
        (("limits", "8 H7", "--ratio", "40"), "does not take --ratio"),
        (("divide", "7", "--raito", "40"), 'Did you mean "--ratio"?'),
        (("limits", "8 H7", "--units", "inch"), "they are mm or in"),
        (("drill", "#99"), "99"),
        (("material", "CW614M"), 'Did you mean "CW614N"?'),
    ],
)
def test_what_cannot_be_answered_is_refused_with_a_way_out(words: tuple[str, ...], said: str) -> None:
    """Exit status 1, words on the error stream, nothing on the other."""
    result = call(*words)
    assert result.exit_code == 1
    assert said in result.stderr
    assert result.stdout == ""


def test_a_key_below_nought_is_no_option() -> None:
    """An edge of -0.3 passes the door."""
    assert told("drawing", "edge", "-0.3")["size_mm"] == -0.3


def test_the_options_of_the_topics_are_those_of_the_command() -> None:
    """Each option named in a topic can be given, and none stands without a topic."""
    taken = {option for topic in TOPICS for option in topic.options}
    offered = set(inspect.signature(facts).parameters) - {"context", "topic", "keys", "as_json", "units"}
    assert taken == offered


@pytest.mark.parametrize("topic", TOPICS, ids=lambda topic: topic.name)
def test_a_topic_reads_only_options_it_is_listed_with(topic: Any) -> None:
    """What a module asks of its options is what topics.py lists for it."""
    text = Path(str(import_module(topic.module).__file__)).read_text(encoding="utf-8")
    read = set(re.findall(r'options(?:\.get\(|\[)"(\w+)"|"(\w+)" in options', text))
    assert {first or second for first, second in read} == set(topic.options)


def test_a_cold_look_up_takes_at_most_four_tenths_of_a_second() -> None:
    """The budget of the door, best of three fresh interpreters; processor time, since tests share the machine."""
    code = (
        "import sys, typer; from tommybar.cli.facts import facts; "
        "app = typer.Typer(); app.command()(facts); sys.argv = ['facts', 'limits', '8', 'H7']; app()"
    )
    times = []
    for _ in range(3):
        began = resource.getrusage(resource.RUSAGE_CHILDREN)
        done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False)
        ended = resource.getrusage(resource.RUSAGE_CHILDREN)
        times.append(ended.ru_utime + ended.ru_stime - began.ru_utime - began.ru_stime)
        assert "15.0 um" in done.stdout, done.stderr
    assert min(times) < 0.4
