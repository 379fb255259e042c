"""Every entry of a part is found at its place in the file, with what it comes to."""

from __future__ import annotations

import pytest

from tommybar.design.written_figures import written_figures
from tommybar.design.yaml_file import yaml_from_text
from tommybar.shop.examples import example_folder

TEXT = (example_folder() / "demonstrator" / "design.yaml").read_text(encoding="utf-8")
FILE = yaml_from_text(TEXT)


def at(data, place):
    """What stands at a place of the data."""
    for step in place:
        data = data[step]
    return data


@pytest.mark.parametrize("part", ["wheel", "shaft", "bush", "pillar", "base", "crank", "handle", "grub"])
def test_places_lead_to_what_is_written(part):
    """Each place of each entry holds the very words that the entry is given."""
    found = written_figures(FILE, part)

    assert found
    for one in found:
        written = at(FILE.data, one.place)
        assert one.words == (
            {True: "true", False: "false"}[written] if isinstance(written, bool) else str(written)
        )


@pytest.mark.parametrize(
    ("part", "feature", "key", "value", "names"),
    [
        ("wheel", "rim", "dia", 90.0, ("wheel_dia",)),
        ("wheel", "ease", "circle", 48.0, ("boss", "rim_in")),  # (26 + 70) / 2
        ("wheel", "dish", "deep", 8.0, ("recess",)),  # 14 - 6
        ("shaft", "thread", "thread", 6.0, ("crank_thread",)),
        ("shaft", "journal_a", "long", 16.0, ("pillar_thick", "flange_thick")),  # 10 + 3 + 3
        ("pillar", "", "length", 81.0, ("pillar_tall",)),  # 16 + 45 + 5 + 15
        ("wheel", "rim", "edges", 1.0, ()),
    ],
)
def test_figures_come_to_what_the_drawing_shows(part, feature, key, value, names):
    """Worked out by hand from the sizes of the example."""
    one = next(one for one in written_figures(FILE, part) if (one.feature, one.key) == (feature, key))

    assert one.value == value
    assert one.names == names


def test_words_are_no_figures():
    """Material and limits have no value; a count has no unit."""
    found = {(one.feature, one.key): one for one in written_figures(FILE, "wheel")}

    assert found[("", "material")].value is None
    assert (found[("ease", "count")].value, found[("ease", "count")].unit) == (5.0, "")
