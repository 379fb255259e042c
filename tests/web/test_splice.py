"""A value is put down at its own place: everything else of the text stays, letter for letter."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tommybar.design.yaml_file import yaml_from_text
from tommybar.web.splice import as_written, put, spliced, value_text, without

TEXT = """\
tommybar: 1   # öäü ½
sizes:
  a: {is: 1, follows: scale}  # first
  b: a + 1  # worked out
parts:
  one:
    list:
      - {name: x, dia: a}
      - name: y
        dia: 2
# the end
"""


@pytest.mark.parametrize(
    ("place", "was"),
    [
        (("sizes", "a", "is"), "1"),
        (("sizes", "b"), "a + 1"),
        (("parts", "one", "list", 0, "dia"), "a"),
        (("parts", "one", "list", 1, "dia"), "2"),
    ],
)
def test_only_the_value_changes(place, was):
    """Before and after the value the text is the same; comments too."""
    at = TEXT.index(value_text(TEXT, place), TEXT.index(str(place[-1] if isinstance(place[-1], str) else "")))
    after = spliced(TEXT, place, "7")

    assert value_text(TEXT, place) == was
    assert value_text(after, place) == "7"
    assert len(after) == len(TEXT) - len(was) + 1
    assert after[:at].startswith(TEXT[:10])
    assert after.count("#") == TEXT.count("#")


@given(st.text(min_size=1).filter(str.strip))
def test_any_words_come_back_as_the_words_they_were(words):
    """Law: what is put down as a value is read back, with its spaces drawn together."""
    wanted = " ".join(words.split())
    try:
        data = yaml_from_text(spliced("a: {is: 1, b: 2}\n", ("a", "is"), as_written(words))).data
    except ValueError:
        return  # a character that YAML forbids in any form
    got = data["a"]["is"]
    assert str(got) == wanted or float(got) == float(wanted)
    assert data["a"]["b"] == 2


def test_a_key_that_is_not_there_is_added_to_its_group():
    """In braces, in a block, and with the group itself missing."""
    assert yaml_from_text(put(TEXT, ("sizes", "a", "because"), "so")).data["sizes"]["a"]["because"] == "so"
    assert yaml_from_text(put(TEXT, ("sizes", "c"), "3")).data["sizes"]["c"] == 3
    assert yaml_from_text(put(TEXT, ("new", "x", "y"), "3")).data["new"] == {"x": {"y": 3}}
    assert "# worked out\n  c: 3\nparts" in put(TEXT, ("sizes", "c"), "3")


def test_a_key_is_taken_out_of_braces():
    """First, middle and last, with its comma."""
    text = "a: {x: 1, y: 2, z: 3}\n"

    assert without(text, ("a", "x")) == "a: {y: 2, z: 3}\n"
    assert without(text, ("a", "y")) == "a: {x: 1, z: 3}\n"
    assert without(text, ("a", "z")) == "a: {x: 1, y: 2}\n"


def test_a_place_that_is_gone_is_told():
    """The file was changed by someone else in the meantime."""
    with pytest.raises(ValueError, match=r"no entry sizes\.zz any more"):
        spliced(TEXT, ("sizes", "zz"), "1")
