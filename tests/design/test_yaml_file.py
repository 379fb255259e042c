"""The form of a file: YAML 1.2 core scalars, places, and what is refused."""

import pytest

from tommybar.design.yaml_file import read_yaml, yaml_from_text
from tommybar.refusals import Refusal


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("no", "no"),
        ("on", "on"),
        ("010", 10),
        ("12:30", "12:30"),
        ("1e3", 1000.0),
        ("true", True),
        (".5", 0.5),
    ],
)
def test_scalars_are_those_of_yaml_1_2(text, value):
    """Words that older YAML turns into truth, octals or minutes stay what they look like."""
    found = yaml_from_text(f"a: {text}").data["a"]

    assert found == value
    assert type(found) is type(value)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "f:1:1: The file is empty."),
        ("# only words\n", "f:1:1: The file is empty."),
        ("a: [1", "f:2:1: This is not YAML: did not find expected ',' or ']'."),
        ("a: !!python/name:x 1", "f:1:4: The tag tag:yaml.org,2002:python/name:x is not read."),
        ("a: &x 1\nb: 2", "f:1:4: The anchor &x is not read."),
        ("a: ~", "f:1:1: a: The key has no value."),
        ("1: a", "f:1:1: A key must be a word."),
        ("a: 1\n---\nb: 2", "f:2:1: A second document begins here"),
        ("a: " + "[" * 51 + "]" * 51, "f:1:53: Entries are nested 51 deep; at most 50."),
        ("a: " + "[" * 9000, "exceeded maximum nesting depth"),
        ("a: \x01", "This is not YAML: unacceptable character"),
    ],
)
def test_what_is_no_good_file_is_refused_with_its_place(text, said):
    """A fault of form names line and column, and never ends in a traceback."""
    with pytest.raises(Refusal) as refused:
        yaml_from_text(text, "f")

    assert said in str(refused.value)


def test_fifty_levels_are_read():
    """The bound belongs to what is read."""
    text = "a: " + "[" * 49 + "1" + "]" * 49

    assert str(yaml_from_text(text).data["a"]).count("[") == 49


def test_files_that_cannot_be_read_are_refused_in_one_line(tmp_path):
    """A missing file, a folder and bytes that are no text are told in one line each."""
    (tmp_path / "bytes.yaml").write_bytes(b"a: \xff\xfe")
    for path, said in [
        (tmp_path / "none.yaml", "There is no file"),
        (tmp_path, "is a folder"),
        (tmp_path / "bytes.yaml", "is not UTF-8 text (byte 3)"),
    ]:
        with pytest.raises(Refusal) as refused:
            read_yaml(path)
        assert said in str(refused.value)
        assert "\n" not in str(refused.value)


def test_place_of_quoted_text_counts_its_quote():
    """A column inside a quoted expression points at the character itself."""
    file = yaml_from_text('lathe:\n  speed: "12 mm"\n', "f")

    found = file.complaint(("lathe", "speed"), "Here.", offset=4)

    assert (found.line, found.column) == (2, 14)
    assert '  speed: "12 mm"'[found.column - 1] == "m"
