"""Blind bores with tip and lead, by hand."""

from __future__ import annotations

import pytest

from tommybar.shapes.features import Bore, Dim

from .asking import disc, finds, found_in, part


def bored(depth: float, long: float, dia: float = 6.0, **more: object) -> object:
    """A round of 30 with one blind bore from face A."""
    return part("body", disc(30.0, long, bores=(Bore("hole", Dim(dia), "A", depth, False, **more),)))  # type: ignore[arg-type]


@pytest.mark.parametrize(("long", "figure"), [(43.0, "1.20 mm"), (43.5, "")])
def test_the_tip_of_a_drill_counts(long: float, figure: str) -> None:
    """6 drilled 40 deep: the 118 deg tip takes 1.80 (0.3 d), 43 - 41.8 = 1.2 of 1.5 wanted."""
    part_ = bored(40.0, long, bottom="drill")
    if figure:
        assert finds(684, part_).figure == figure  # type: ignore[arg-type]
    else:
        assert not [one for one in found_in(part_) if one.number in (684, 685)]  # type: ignore[arg-type]


def test_a_flat_floor_has_no_tip() -> None:
    """The same depth with a flat floor leaves 3 mm."""
    assert not [one for one in found_in(bored(40.0, 43.0)) if one.number in (684, 685)]  # type: ignore[arg-type]


def test_lead_and_tip_of_a_tapped_hole_come_out_behind() -> None:
    """M6: 10 of thread + 3 x 1 of lead + 0.3 x 5.0 of tip = 14.5, through a body of 14."""
    out = finds(685, bored(10.0, 14.0, thread="M6"))  # type: ignore[arg-type]
    assert out.severity == "stop"
    assert "goes 14.50 mm in (10 + 3.00 lead + 1.50 tip)" in out.words
    assert out.figure == "-0.50 mm"


def test_a_bore_from_the_other_face_takes_its_depth() -> None:
    """40 and 10 deep from both faces of 60, 1.8 of tip: 8.2 left; of 52: 0.2."""

    def both(long: float) -> object:
        bores = (
            Bore("hole", Dim(6.0), "A", 40.0, False, "drill"),
            Bore("back", Dim(10.0), "B", 10.0, False),
        )
        return part("body", disc(30.0, long, bores=bores))

    assert not [one for one in found_in(both(60.0)) if one.number in (684, 685)]  # type: ignore[arg-type]
    assert finds(684, both(52.0)).figure == "0.20 mm"  # type: ignore[arg-type]
