"""Three hundred whole designs drawn at random, as files: refused with a place, or closed, weighed and drawn."""

from __future__ import annotations

import math
from collections import Counter
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from tests.laws.drawn_designs import designs

from tommybar.design import load_design
from tommybar.design.model import Part, SizedDesign
from tommybar.pack.audit.comparing import audited
from tommybar.pack.drawing import part_drawing
from tommybar.pack.imprint import Imprint
from tommybar.pack.units import Reader
from tommybar.refusals import Refusal
from tommybar.shapes.cutting import area
from tommybar.shapes.features import BoughtShape, TurnedShape
from tommybar.shapes.mass import mass_properties
from tommybar.shapes.profile import profile

WANTED = 300
ROOM = "must have room"  # a drawing may ask for larger paper


def _closed_and_weighed(part: Part) -> None:
    """A section without a gap, metal in it, and a body that could exist: no axis lighter than the plane allows."""
    assert part.shape is not None
    if isinstance(part.shape, TurnedShape):
        ring = profile(part.shape)
        ends = [*ring[1:], ring[0]]
        assert all(math.dist(one.end, other.start) < 1e-9 for one, other in zip(ring, ends, strict=True))
        assert area([ring]) > 0
    found = mass_properties(part.shape, 7.85)
    assert math.isfinite(found.volume)
    assert found.volume > 0


def _drawn(part: Part, design: SizedDesign, told: Counter[str]) -> None:
    """A sheet from which the part can be built."""
    try:
        sheet = part_drawing(part, design, Imprint("Drawn at random", "", "", 1.0, "", Reader()))
    except Refusal as refusal:
        assert ROOM in str(refusal)
        told["no room on paper"] += 1
        return
    told["drawn"] += 1
    assert audited(part, sheet).faults == ()


def test_three_hundred_whole_designs_are_refused_with_a_place_or_weighed_and_drawn(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Turned, plates, sheet, wire, springs, bought parts, relations; at least six in ten are accepted."""
    told: Counter[str] = Counter()
    kinds: Counter[str] = Counter()
    seen: set[str] = set()  # the same is drawn at random more than once
    path = tmp_path / "drawn.yaml"
    for place in ("drawing", "plates.sheet", "bent.sheet"):  # isometrics take longest and say no figure
        monkeypatch.setattr(f"tommybar.pack.{place}.with_isometric", lambda _shape, marks, *_: marks)

    @settings(
        max_examples=800,
        deadline=None,
        database=None,
        derandomize=True,
        suppress_health_check=list(HealthCheck),
    )
    @given(designs())
    def each(text: str) -> None:
        if text in seen or len(seen) >= WANTED:
            return
        seen.add(text)
        path.write_text(text, encoding="utf-8")
        try:
            design = load_design(path).sized()
        except Refusal as refusal:
            for one in refusal.complaints:
                assert one.file == str(path)
                assert 1 <= one.line <= text.count("\n")
                assert one.column >= 1
                assert one.what
            told["refused"] += 1
            return
        told["accepted"] += 1
        made = [
            part
            for part in design.parts
            if part.shape is not None and not isinstance(part.shape, BoughtShape)
        ]
        for part in made:
            kinds[type(part.shape).__name__] += 1
            _closed_and_weighed(part)
        _drawn(made[0], design, told)

    each()
    assert told["accepted"] + told["refused"] == WANTED
    assert told["accepted"] >= 0.6 * (told["accepted"] + told["refused"]), told
    assert told["refused"] >= 15, "bad figures have to be among them"
    assert told["no room on paper"] <= 0.02 * told["drawn"], told
    assert len(kinds) >= 5, "turned, plates, and most of sheet, rings, springs and wire"
    assert kinds["TurnedShape"] >= 60
    assert kinds["PlateShape"] >= 60


@pytest.mark.parametrize("text", ["", "tommybar: 1\n", "tommybar: 1\ndesign: x\nunits: mm\nparts: {}\n"])
def test_a_file_with_nothing_in_it_is_refused(tmp_path: Path, text: str) -> None:
    """Words, and no traceback."""
    path = tmp_path / "drawn.yaml"
    path.write_text(text, encoding="utf-8")

    with pytest.raises(Refusal, match=r"."):
        load_design(path).sized()
