"""How pieces leave what they are joined to when an assembly is drawn pulled apart."""

from __future__ import annotations

from functools import cache
from itertools import pairwise
from pathlib import Path

import pytest

from tommybar.assembly.placing import Assembly, assembled
from tommybar.design import load_design
from tommybar.shapes.solids.frames import point

EXAMPLES = Path(__file__).resolve().parents[2] / "examples"


@cache
def whole(name: str) -> Assembly:
    return assembled(load_design(EXAMPLES / name / "design.yaml").sized())


def heights(name: str, part: str, ends: tuple[float, float]) -> tuple[float, float]:
    """From where to where a piece reaches in height when it is pulled apart, by two z of its own frame."""
    one = whole(name).of(part)
    assert one
    found = sorted(point(one.frame, (0.0, 0.0, z))[2] + one.apart[2] for z in ends)
    return found[0], found[1]


def test_what_it_stands_on_stays() -> None:
    """Lower jaw, bracket, body and dial are the feet of their designs."""
    feet = {
        "toolmakers-clamp": "lower",
        "rope-drive-jockey": "bracket",
        "tap-follower": "body",
        "gnomon-block": "dial",
    }
    for name, part in feet.items():
        foot = whole(name).of(part)
        assert foot and foot.apart == (0.0, 0.0, 0.0)


def test_a_screw_leaves_by_its_head() -> None:
    """The middle screw, head up, is drawn over the clip and the jaw that it goes down through."""
    clip = whole("toolmakers-clamp").of("clip")
    upper = whole("toolmakers-clamp").of("upper")
    assert clip and upper
    over = max(point(one.frame, (0.0, 12.0, 0.0))[2] + one.apart[2] for one in (clip, upper))
    shank = heights("toolmakers-clamp", "middle_screw", (0.0, 40.0))
    assert shank[0] > over


def test_a_stack_stands_in_its_order() -> None:
    """Nut, washer, bracket, stud with drum over it, washer, from below; each clear of the next."""
    stack = [
        heights("rope-drive-jockey", "nut", (0.0, 6.8)),
        heights("rope-drive-jockey", "nut_washer", (0.0, 1.6)),
        heights("rope-drive-jockey", "bracket", (0.0, 8.0)),
        heights("rope-drive-jockey", "stud", (0.0, 44.2)),
        heights("rope-drive-jockey", "drum", (0.0, 20.0)),
        heights("rope-drive-jockey", "washer", (0.0, 2.0)),
    ]
    gaps = [above[0] - below[1] for below, above in pairwise(stack)]
    assert all(8.0 - 1e-6 <= gap < 12.0 for gap in gaps)


def test_a_pulley_goes_with_its_belt() -> None:
    """Drum and driving wheel, each 20 wide, stay in one plane."""
    drum, wheel = (heights("rope-drive-jockey", one, (0.0, 20.0)) for one in ("drum", "wheel"))
    assert wheel == pytest.approx(drum)


def test_a_piece_alone_on_its_axis_leaves_what_carries_it() -> None:
    """The leaning rod is drawn out along itself, as far as the block that it is glued in goes."""
    rod = whole("gnomon-block").of("gnomon")
    block = whole("gnomon-block").of("block")
    assert rod and block
    out = tuple(a - b for a, b in zip(rod.apart, block.apart, strict=True))
    assert out[0] / out[2] == pytest.approx(0.781286, abs=1e-5)  # 1 / tan 52
    assert out[2] > 20.0
