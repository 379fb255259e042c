"""Dogs, tail centres, steadies and mandrels of a shop file: never taken from an example."""

from pathlib import Path

import pytest

from tommybar.refusals import Refusal
from tommybar.shop import load_shop

EXAMPLES = Path(__file__).parents[2] / "examples" / "shops"


def shop(tmp_path, lines):
    """A shop file with little more than those lines, the rest filled up."""
    path = tmp_path / "shop.yaml"
    path.write_text(f"tommybar: 1\nshop: mine\nunits: in\nlathe: {{centre_height: 90 mm}}\n{lines}\n")
    return load_shop(path)


def test_what_is_written_is_owned_in_millimetres(tmp_path):
    """An inch file's figures turn at the door; a dog that was not measured is 10 mm wide; smallest dog first."""
    one = shop(
        tmp_path,
        "dogs: [{from: 1/2, to: 1}, {from: 1/8, to: 1/2, wide: 1/4}]\ncatch_plate: 4\n"
        "tail_centres: [{kind: half, nose: 1/2, long: 1}]\nsteadies: [{kind: travelling, from: 1/8, to: 1}]\nmandrels: [1/2]",
    )

    assert [(d.smallest, d.largest, d.wide) for d in one.dogs] == [(3.175, 12.7, 6.35), (12.7, 25.4, 10.0)]
    assert one.catch_plate == pytest.approx(101.6)
    (centre,) = one.tail_centres
    assert (centre.kind, centre.nose, centre.long, centre.body) == ("half", 12.7, 25.4, 12.7)
    assert [(s.kind, s.smallest, s.largest) for s in one.steadies] == [("travelling", 3.175, 25.4)]
    assert one.mandrels == (12.7,)


def test_what_is_left_out_is_not_owned(tmp_path):
    """No example shop lends a dog, and none is counted as assumed."""
    one = shop(tmp_path, "")

    assert (one.dogs, one.catch_plate, one.tail_centres, one.steadies, one.mandrels) == ((), 0.0, (), (), ())
    assert not any(
        "dog" in place or "centres" in place.split(".")[0] for place in one.assumed if "." not in place
    )


@pytest.mark.parametrize(
    ("lines", "words"),
    [
        ("dogs: [{from: 12, to: 3}]", "must end above its start"),
        ("steadies: [{kind: fixed, from: 40, to: 4}]", "must end above its start"),
        (
            "tail_centres: [{kind: dead, nose: 18 mm, long: 10 mm}]",
            "its point alone, up to 18 mm, is 15.59 mm",
        ),
    ],
)
def test_what_cannot_be_is_refused(tmp_path, lines, words):
    """With the figures: a 60-degree point of 18 mm is 9 / tan 30 = 15.59 long."""
    with pytest.raises(Refusal, match=words):
        shop(tmp_path, lines)
