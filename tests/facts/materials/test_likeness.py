"""Weighing and measuring an offcut; densities against a second, independent source."""

from __future__ import annotations

import math

import pytest

from tommybar.facts.materials import density_of_piece, likely_materials, material
from tommybar.refusals import Refusal

# mass of round bar, kg a metre for each mm2 of d squared: stockholders' tables (from memory)
ROUND_BAR = {
    "mild steel": 0.00617,
    "stainless steel 304": 0.00623,
    "free-cutting brass": 0.00667,
    "copper": 0.00702,
    "aluminium 6082": 0.00212,
}

# mass fractions, middle of the standard's range; densities of the elements [g/cm3]
ELEMENTS = {"Cu": 8.96, "Zn": 7.14, "Sn": 7.31, "Pb": 11.34, "Al": 2.70, "Mg": 1.74, "Fe": 7.87, "Ni": 8.91}
MIXTURES = {
    "phosphor bronze": {"Cu": 0.948, "Sn": 0.052},
    "bearing bronze": {"Cu": 0.83, "Sn": 0.07, "Pb": 0.07, "Zn": 0.03},
    "gunmetal": {"Cu": 0.85, "Sn": 0.05, "Zn": 0.05, "Pb": 0.05},
    "free-cutting brass": {"Cu": 0.58, "Zn": 0.39, "Pb": 0.03},
    "nickel silver": {"Cu": 0.62, "Ni": 0.18, "Zn": 0.20},
    "copper": {"Cu": 1.0},
}


@pytest.mark.parametrize("name", ROUND_BAR)
def test_densities_agree_with_stockholders_bar_tables(name: str) -> None:
    """A second published source: a metre of 20 mm bar weighs what the bar table says, within 1 %."""
    grams = ROUND_BAR[name] * 20**2 * 1000
    assert density_of_piece(grams, 20.0, 1000.0) == pytest.approx(material(name).density, rel=0.01)


@pytest.mark.parametrize("name", MIXTURES)
def test_densities_agree_with_the_mixture_of_the_elements(name: str) -> None:
    """A second route: volumes of the elements added, within 4 % (brass shrinks as it mixes)."""
    mixed = 1 / sum(share / ELEMENTS[element] for element, share in MIXTURES[name].items())
    assert material(name).density == pytest.approx(mixed, rel=0.04)


def test_an_offcut_is_known_by_weight_and_magnet() -> None:
    """A round of 25 x 40 that weighs 154.2 g and holds a magnet is steel, not iron or stainless."""
    density = density_of_piece(154.2, 25.0, 40.0)
    names = [one.name for one in likely_materials(density, within=1.0, magnetic=True)]
    assert "mild steel" in names
    assert "silver steel" in names
    assert "stainless steel 304" not in names
    assert "grey cast iron" not in names


def test_likely_materials_stand_nearest_first() -> None:
    """Departures rise down the list and say their sign."""
    found = likely_materials(8.5, within=3.0, magnetic=False)
    assert [abs(one.off) for one in found] == sorted(abs(one.off) for one in found)
    assert found[0].name == "free-cutting brass"
    assert found[0].off == pytest.approx(100 * (8.5 - 8.47) / 8.47)


@pytest.mark.parametrize(
    ("density", "within"), [(0.1, 2.0), (30.0, 2.0), (math.nan, 2.0), (8.0, 0.0), (8.0, 50.0)]
)
def test_figures_outside_the_range_are_refused(density: float, within: float) -> None:
    """A density or a band that cannot be is refused with its bound."""
    with pytest.raises(Refusal, match=r"density is|band is"):
        likely_materials(density, within)


def test_a_piece_without_size_is_refused() -> None:
    """Nought and less are no sizes."""
    with pytest.raises(Refusal, match="The diameter is 0 mm; it must be above 0"):
        density_of_piece(10.0, 0.0, 10.0)
