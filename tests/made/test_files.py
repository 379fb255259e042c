"""Made files: read, added to, and nothing lost."""

from __future__ import annotations

import os
from concurrent.futures import ThreadPoolExecutor

import pytest

from tommybar.made import append_entry, load_made, write_measured
from tommybar.made.record import Measured, Ticked, Whereabouts
from tommybar.refusals import Refusal

SAMPLE = """\
tommybar: 1
of: demonstrator
# the first evening
made:
  - {size: wheel.bore, is: 10.021, with: plug 0.01, on: 2026-05-02, by: R}   # reamed warm
  - {card: wheel/2, done: true}
  - {step: shaft/1/3, done: true}
  - {step: shaft/1/4, skipped: no emery left}
  - part: shaft
    where: in the chuck
# end of the record
"""


@pytest.fixture
def sample(tmp_path):
    """A made file with comments."""
    file = tmp_path / "made.yaml"
    file.write_text(SAMPLE)
    return file


def test_the_sample_reads_as_it_says(sample):
    """Sizes, ticks, a skipped step and whereabouts come out as records."""
    made = load_made(sample)

    assert made.design == "demonstrator"
    assert made.measured == (Measured("wheel.bore", 10.021, "plug 0.01", "2026-05-02", "R"),)
    assert made.ticks == (
        Ticked("wheel/2", after=1),
        Ticked("shaft/1/3", after=1),
        Ticked("shaft/1/4", done=False, skipped="no emery left", after=1),
    )
    assert made.whereabouts == (Whereabouts("shaft", "in the chuck"),)


def test_an_entry_is_added_after_the_last_one_and_comments_stay(sample):
    """Only one line is new; every other line is as it was, in its order."""
    write_measured(sample, "demonstrator", "shaft.seat", 9.998, instrument="mic 0-25", on="2026-05-03")

    before, after = SAMPLE.splitlines(), sample.read_text().splitlines()
    new = '  - {size: shaft.seat, is: 9.998, with: mic 0-25, on: "2026-05-03"}'
    assert after == [*before[:-1], new, before[-1]]


def test_a_later_measurement_counts_and_the_earlier_one_stays(sample):
    """Two entries of one size: the later is the size, both are in the file."""
    made = write_measured(sample, "demonstrator", "wheel.bore", 10.018)

    assert made.size("wheel.bore").value == 10.018
    assert [one.value for one in made.measured] == [10.021, 10.018]
    assert load_made(sample) == made


def test_a_file_is_begun_when_there_is_none(tmp_path):
    """The first entry makes the file, with the design's id."""
    file = tmp_path / "new.yaml"
    write_measured(file, "My flywheel: rev A", "wheel.bore", 10.02)

    assert file.read_text() == (
        'tommybar: 1\nof: "My flywheel: rev A"\nunits: mm\nmade:\n  - {size: wheel.bore, is: 10.02}\n'
    )
    assert load_made(file).design == "My flywheel: rev A"


@pytest.mark.parametrize(
    "made",
    ["made: []\n", "made: [{card: a/1, done: true}]\n", "made:\n- card: a/1\n  done: true\nunits: mm\n", ""],
    ids=["empty list", "one line", "block without indent", "no list yet"],
)
def test_every_layout_can_be_added_to(tmp_path, made):
    """Lists in brackets, after dashes with and without indent, and none at all."""
    file = tmp_path / "made.yaml"
    file.write_text(f"tommybar: 1\n{made}")
    earlier = load_made(file).ticks

    append_entry(file, "", {"step": "a/1/2", "done": True})

    assert load_made(file).ticks == (*earlier, Ticked("a/1/2"))


@pytest.mark.parametrize("words", ["1", "true", "a: b", 'say "so"', "ends #1", "- dash", "[x]", "*a", "ü 5°"])
def test_any_words_come_back_as_they_were(tmp_path, words):
    """Words that YAML would read as something else are put in quotes."""
    file = tmp_path / "made.yaml"
    write_measured(file, words, "wheel.bore", 10.0, instrument=words, by=words)

    made = load_made(file)
    assert (made.design, made.measured[0].instrument, made.measured[0].by) == (words, words, words)


def test_an_inch_file_keeps_millimetres_that_are_written_into_it(tmp_path):
    """A size of 25.4 mm is still 25.4 mm after being added to a file in inches."""
    file = tmp_path / "made.yaml"
    file.write_text("tommybar: 1\nunits: in\nmade:\n  - {size: a.b, is: 1/2}\n")

    made = write_measured(file, "", "a.b", 25.4)

    assert [one.value for one in made.measured] == [12.7, 25.4]


def test_the_record_of_another_design_is_not_added_to(sample):
    """The file says which design it is of."""
    with pytest.raises(Refusal, match='records a making of "demonstrator", not of "clock"'):
        write_measured(sample, "clock", "wheel.bore", 10.0)
    assert sample.read_text() == SAMPLE


def test_a_broken_file_is_refused_and_left_alone(tmp_path):
    """Nothing is written to a file that cannot be read."""
    file = tmp_path / "made.yaml"
    file.write_text("tommybar: 1\nmade:\n  - {size: wheel.bore}\n")

    with pytest.raises(Refusal, match=r"made\.yaml:3:5: made\.0: A measured size has two keys"):
        write_measured(file, "", "wheel.bore", 10.0)
    assert file.read_text() == "tommybar: 1\nmade:\n  - {size: wheel.bore}\n"


BAD = {
    "about two things": (
        "{size: a.b, is: 1, card: a/1, done: true}",
        "The entry is about size and card; it must",
    ),
    "about nothing": (
        "{done: true}",
        "The entry is about nothing; it must be about one of size, card, step, part",
    ),
    "neither done nor skipped": ("{step: a/1/1}", "The step is neither done nor skipped. Add done: true"),
    "below nought": ("{size: a.b, is: -3}", "The figure is -3; it must be above 0."),
    "no size": ("{size: bore, is: 3}", '"bore" is no size; it must be part.size.'),
    "nowhere": ("{part: shaft}", "The part's whereabouts are missing. Add where: in the chuck."),
}


@pytest.mark.parametrize("kind", BAD)
def test_bad_entries_are_refused_in_words(tmp_path, kind):
    """Each fault of an entry says what is wrong with it, and where."""
    line, words = BAD[kind]
    file = tmp_path / "made.yaml"
    file.write_text(f"tommybar: 1\nmade:\n  - {line}\n")

    with pytest.raises(Refusal) as told:
        load_made(file)

    assert words in str(told.value)
    assert f"{file}:3:" in str(told.value)


def test_writers_at_the_same_time_lose_nothing(tmp_path):
    """Twenty entries from four writers at once are all there afterwards."""
    file = tmp_path / "made.yaml"
    with ThreadPoolExecutor(4) as pool:
        list(pool.map(lambda n: write_measured(file, "d", f"a.s{n}", 1.0 + n), range(20)))

    assert {one.size for one in load_made(file).measured} == {f"a.s{n}" for n in range(20)}
    assert [one.name for one in tmp_path.iterdir()] == ["made.yaml"]


def test_a_failing_disc_leaves_the_old_file(sample, monkeypatch):
    """When the new file cannot take its place, the old one stands and nothing lies about."""

    def fails(*_):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "replace", fails)
    with pytest.raises(Refusal, match="cannot be written: No space left on device"):
        write_measured(sample, "demonstrator", "wheel.bore", 10.0)

    assert sample.read_text() == SAMPLE
    assert [one.name for one in sample.parent.iterdir()] == ["made.yaml"]
