"""Look-up "fastener"."""

from __future__ import annotations

import json

import pytest

from tommybar.facts.fasteners.topic import answer
from tommybar.refusals import Refusal


def test_size_alone_gives_all_that_belongs_to_it() -> None:
    """M5: holes, cap head, nut and washer, each with its source."""
    data = answer(("M5",), {}).data

    assert data["clearance_medium_mm"] == 5.5
    assert data["head_diameter_mm"] == 8.5
    assert data["across_flats_mm"] == 8.0
    assert data["washer_outside_mm"] == 10.0
    for standard in ("ISO 273", "ISO 4762", "ISO 4032", "ISO 7089"):
        assert standard in data["source"]


@pytest.mark.parametrize(
    ("key", "name", "figure"),
    [
        ("ISO 7380 M4", "head_height_mm", 2.2),
        ("clearance M6", "clearance_fine_mm", 6.4),
        ("nut M6", "nut_height_mm", 5.2),
        ("washer M6", "washer_thickness_mm", 1.6),
        ("bearing 608", "outside_mm", 22.0),
        ("circlip 8 shaft", "groove_width_mm", 0.9),
        ("pin 3", "diameter_mm", 3.0),
        ("key 12", "width_mm", 4.0),
        ("woodruff 10", "disc_mm", 13.0),
        ("o-ring 012", "section_mm", 1.78),
        ("hexagon-key 4", "short_arm_mm", 29.0),
        ("spanner 10", "jaws_mm", 22.0),
        ("screwdriver M4", "tip_mm", 5.5),
    ],
)
def test_every_kind(key: str, name: str, figure: float) -> None:
    """Each kind answers, with a source and with rows for a person, and goes through JSON."""
    found = answer(tuple(key.split()), {})

    assert found.data[name] == figure
    assert found.source
    assert found.rows
    assert json.loads(json.dumps(found.data))["source"] == found.source


def test_slotted_heads_have_no_key() -> None:
    """A cheese head has a slot."""
    assert "key_mm" not in answer(("ISO 1207 M4",), {}).data


def test_what_is_not_there_is_refused() -> None:
    """No key, an unknown kind, an unknown size."""
    with pytest.raises(Refusal, match="needs one"):
        answer((), {})
    with pytest.raises(Refusal, match=r'no kind "bering".*Did you mean "bearing"'):
        answer(("bering", "608"), {})
    with pytest.raises(Refusal, match="no deep-groove bearing"):
        answer(("bearing", "1"), {})
