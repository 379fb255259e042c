"""Preferred numbers, sheets, edges, finish and reference temperature by a second route."""

from __future__ import annotations

import math

import pytest

from tommybar.facts.drawing import edges, finish, preferred_numbers, reference_temperature, sheets
from tommybar.facts.materials.catalogue import material
from tommybar.refusals import Refusal


def test_preferred_numbers_follow_the_geometric_series() -> None:
    """Every R40 number lies within 1.3 % of 10^(i/40), the rounding that ISO 3 allows itself."""
    for place, number in enumerate(preferred_numbers.preferred_numbers("R40")):
        assert number == pytest.approx(10 ** (place / 40), rel=0.013)


def test_coarser_series_are_every_second_number() -> None:
    """R5 in R10 in R20 in R40."""
    held = [set(preferred_numbers.preferred_numbers(name)) for name in preferred_numbers.SERIES]
    assert held[0] < held[1] < held[2] < held[3]
    assert [len(numbers) for numbers in held] == [5, 10, 20, 40]


@pytest.mark.parametrize("number", [0.13, 1.0, 9.99, 37.0, 1234.0])
def test_the_nearest_preferred_number_is_within_half_a_step(number: float) -> None:
    """In every series the nearest number is no further off than half the ratio, and rounding."""
    for name in preferred_numbers.SERIES:
        near = preferred_numbers.nearest_preferred(number, name)
        half_step = math.log(preferred_numbers.series_ratio(name)) / 2
        assert abs(math.log(near / number)) <= half_step + 0.013
        assert preferred_numbers.coarsest_series(near) in preferred_numbers.SERIES


def test_no_preferred_number_is_refused() -> None:
    """3.2 is a habit, not a preferred number (3.15 is)."""
    with pytest.raises(Refusal, match=r"3\.2 is not a preferred number"):
        preferred_numbers.coarsest_series(3.2)


@pytest.mark.parametrize(("larger", "smaller"), [("A0", "A1"), ("A1", "A2"), ("A2", "A3"), ("A3", "A4")])
def test_each_sheet_is_half_the_one_before(larger: str, smaller: str) -> None:
    """Half of the long side is the next short side, to the millimetre that is dropped."""
    assert sheets.sheet(larger).trimmed[1] // 2 == sheets.sheet(smaller).trimmed[0]
    assert sheets.sheet(larger).trimmed[0] == sheets.sheet(smaller).trimmed[1]


@pytest.mark.parametrize("name", ["A0", "A1", "A2", "A3"])
def test_the_drawing_space_is_the_sheet_less_its_borders(name: str) -> None:
    """20 mm filing margin on a short edge, 10 mm on the others."""
    found = sheets.sheet(name)
    margin = sheets.frame_figure("filing margin width")
    other = sheets.frame_figure("other borders width")
    assert isinstance(margin, float) and isinstance(other, float)
    assert found.drawing_space == (found.trimmed[0] - 2 * other, found.trimmed[1] - margin - other)


def test_line_widths_grow_by_the_square_root_of_two() -> None:
    """Each width is 0.125 sqrt(2)^k, rounded, so it lies within 5 %."""
    for step in range(1, 10):
        assert sheets.line_width(step) == pytest.approx(0.125 * math.sqrt(2) ** (step - 1), rel=0.05)
    with pytest.raises(Refusal, match="steps 1 to 9"):
        sheets.line_width(10)


def test_scales_come_in_pairs() -> None:
    """Every enlarging scale has its reducing twin."""
    held = sheets.scales()
    for scale in held[:5]:
        large, one = scale.split(":")
        assert f"{one}:{large}" in held


def test_edges_mean_the_opposite_on_the_other_side_of_nought() -> None:
    """Plus leaves material on, minus takes it off; beyond 2.5 and at 0 refused."""
    assert edges.edge_of_size(0.3).state == "burr or passing allowed"
    assert edges.edge_of_size(-0.3).state == "material off"
    assert edges.edge_of_size(0.04).state == "sharp"
    for size in (0.0, 3.0):
        with pytest.raises(Refusal, match=r"up to 2\.5 mm with a sign"):
            edges.edge_of_size(size)


def test_every_process_is_found_again_by_its_roughness() -> None:
    """A process reaches the finest and coarsest Ra of its own range, and grades double each time."""
    assert "reaming" in finish.processes_reaching(finish.usual_roughness("reaming")[0])
    assert "sand casting" not in finish.processes_reaching(0.8)
    for number in range(1, 12):
        low, high = (finish.roughness_of_grade(f"N{n}") for n in (number, number + 1))
        assert 1.9 <= high / low <= 2.1
    with pytest.raises(Refusal, match='Did you mean "turning"'):
        finish.usual_roughness("turnning")


@pytest.mark.parametrize(
    ("metal", "alloy"),
    [
        ("steel", "mild steel"),
        ("brass", "free-cutting brass"),
        ("aluminium", "aluminium 6082"),
        ("bronze", "phosphor bronze"),
        ("cast iron", "grey cast iron"),
        ("stainless steel", "stainless steel 304"),
    ],
)
def test_round_expansions_agree_with_the_materials(metal: str, alloy: str) -> None:
    """The round figure of a kind of metal lies within 7 % of an alloy of that kind."""
    round_figure = reference_temperature.round_expansion(metal)
    assert round_figure == pytest.approx(material(alloy).expansion, rel=0.07)
