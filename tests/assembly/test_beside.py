"""Pieces that share a land, and screws that bear on what fills a bore, on the demonstrator and by hand."""

from __future__ import annotations

from pathlib import Path

import pytest

from tommybar.assembly.interference import overlaps
from tommybar.assembly.placing import Assembly, assembled
from tommybar.design import load_design
from tommybar.design.model import SizedDesign
from tommybar.shapes.solids.frames import point

EXAMPLES = Path(__file__).parents[2] / "examples"


@pytest.fixture(scope="module")
def design() -> SizedDesign:
    """The demonstrator as drawn."""
    return load_design(EXAMPLES / "demonstrator" / "design.yaml").sized()


@pytest.fixture(scope="module")
def whole(design: SizedDesign) -> Assembly:
    """It put together."""
    return assembled(design)


def test_every_piece_of_the_demonstrator_is_placed_and_none_stands_in_another(
    design: SizedDesign, whole: Assembly
) -> None:
    """Its relations say where nut, grub screw, crank and handle belong."""
    assert whole.unplaced == ()
    assert not any("no relation says it" in words for words in whole.said)
    assert overlaps(design, whole) == ()


def test_the_nut_stands_beyond_the_crank_on_the_same_thread(whole: Assembly) -> None:
    """Thread of 14 against its shoulder: 8 of crank, then 5.2 of nut leave 0.8 at the end (ISO 4032 M6)."""
    shaft, crank, nut = (whole.of(name) for name in ("shaft", "crank", "nut"))
    assert shaft and crank and nut
    end = point(shaft.frame, (0.0, 0.0, 0.0))[1]

    def along(place: object, z: float) -> float:
        return abs(point(place.frame, (0.0, 0.0, z))[1] - end)  # type: ignore[attr-defined]

    assert sorted([along(crank, 0.0), along(crank, 8.0)]) == pytest.approx([6.0, 14.0])
    assert sorted([along(nut, 0.0), along(nut, 5.2)]) == pytest.approx([0.8, 6.0])


def test_the_grub_screw_bears_on_the_shaft(whole: Assembly) -> None:
    """Shaft 10 in its bore H7: the screw of 6 stands from 5 to 11 off the axis, within half the bore's band."""
    shaft, grub = whole.of("shaft"), whole.of("grub")
    assert shaft and grub
    axis = point(shaft.frame, (0.0, 0.0, 0.0))
    ends = [point(grub.frame, (0.0, 0.0, z)) for z in (0.0, 6.0)]

    assert sorted(((x - axis[0]) ** 2 + (z - axis[2]) ** 2) ** 0.5 for x, _, z in ends) == pytest.approx(
        [5.0, 11.0], abs=0.008
    )
