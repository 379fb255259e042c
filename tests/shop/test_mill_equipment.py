"""Boring head, vee block, sine bar, counterbores and long drills of a shop file: never taken from an example."""

from pathlib import Path

import pytest

from tommybar.refusals import Refusal
from tommybar.shop import load_shop

EXAMPLES = Path(__file__).parents[2] / "examples" / "shops"


def shop(tmp_path, extra):
    """The small example bench with some lines more."""
    text = (EXAMPLES / "small-bench.yaml").read_text()
    mill, rest = extra
    text = text.replace("  vice_width: 50\n", "  vice_width: 50\n" + mill) + rest
    path = tmp_path / "shop.yaml"
    path.write_text(text)
    return load_shop(path)


def test_what_is_written_is_owned(tmp_path):
    """Figures of the file, in mm."""
    one = shop(
        tmp_path,
        (
            "  boring_head: [8, 30]\n  vee_to: 30\n  vee_bottom: 8\n  sine_bar: 100\n",
            "\ncounterbores: [{dia: 10, pilot: 5.5}]\nlong_drills: [3.3, 5]\n",
        ),
    )

    assert one.mill.boring_head == (8.0, 30.0)
    assert (one.mill.vee_to, one.mill.vee_bottom, one.mill.sine_bar) == (30.0, 8.0, 100.0)
    assert [(c.dia, c.pilot) for c in one.counterbores] == [(10.0, 5.5)]
    assert one.long_drills == (3.3, 5.0)


def test_what_is_left_out_is_not_owned(tmp_path):
    """No example shop lends a boring head."""
    one = shop(tmp_path, ("", ""))

    assert (one.mill.boring_head, one.mill.vee_to, one.mill.sine_bar) == ((0.0, 0.0), 0.0, 0.0)
    assert (one.counterbores, one.long_drills) == ((), ())
    assert not any("boring_head" in place or "sine_bar" in place for place in one.assumed)


@pytest.mark.parametrize(
    ("mill", "rest", "words"),
    [
        ("  boring_head: [30, 8]\n", "", "must end above 30 mm"),
        ("", "\ncounterbores: [{dia: 5, pilot: 5}]\n", "the pilot is smaller"),
    ],
)
def test_what_cannot_be_is_refused(tmp_path, mill, rest, words):
    """With the figures and the remedy."""
    with pytest.raises(Refusal, match=words):
        shop(tmp_path, (mill, rest))
