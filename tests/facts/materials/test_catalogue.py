"""Materials by every name they bear."""

from __future__ import annotations

import pytest

from tommybar.facts.materials import cutting_group, material, material_names
from tommybar.refusals import Refusal


@pytest.mark.parametrize(
    ("word", "name"),
    [
        ("mild steel", "mild steel"),
        ("BMS", "mild steel"),
        ("1018", "mild steel"),
        ("free-cutting brass", "free-cutting brass"),
        ("cw614n", "free-cutting brass"),
        ("C36000", "free-cutting brass"),
        ("Silver Steel", "silver steel"),
        ("1.2210", "silver steel"),
        ("phosphor bronze", "phosphor bronze"),
        ("EN AW-6082-T6", "aluminium 6082"),
        ("en-gjl-250", "grey cast iron"),
        ("SAE660", "bearing bronze"),
        ("POM", "acetal"),
    ],
)
def test_trade_names_and_designations_lead_to_one_material(word: str, name: str) -> None:
    """Trade name, EN, UNS and loose spelling give the same record."""
    assert material(word).name == name


def test_no_designation_belongs_to_two_materials() -> None:
    """Every name leads to the material that lists it."""
    for name in material_names():
        assert material(name).name == name
        for designation in material(name).designations:
            assert material(designation).name == name, designation


def test_there_are_about_forty_or_more_and_every_figure_is_plausible() -> None:
    """Density, modulus, strengths and expansion lie in what solids have, and each record names a source."""
    names = material_names()
    assert len(names) >= 40
    for name in names:
        one = material(name)
        assert 0.9 < one.density < 9.0
        assert 400 < one.modulus < 220_000
        assert 0.25 < one.poisson < 0.5
        assert 0 < one.yield_strength <= one.tensile_strength
        assert 8 < one.expansion < 200
        assert one.melting[0] <= one.melting[1]
        assert one.tell
        assert "(" in one.source and one.kc11 > 0
        assert len(one.hazards) == len(one.cautions)


def test_look_alikes_are_materials_of_the_table() -> None:
    """What a material is mistaken for can itself be looked up."""
    for name in material_names():
        for other in material(name).look_alikes:
            assert material(other).name == other


@pytest.mark.parametrize(
    ("name", "hazard"),
    [
        ("CW614N", "leaded"),
        ("12L14", "leaded"),
        ("C17200", "beryllium"),
        ("AZ31", "magnesium fire"),
        ("304", "stainless dust and fume"),
        ("GJL-250", "cast iron dust"),
        ("PTFE", "fluorine fume when overheated"),
    ],
)
def test_hazards_stand_where_they_bite(name: str, hazard: str) -> None:
    """The dangerous stuffs say so, with what to do."""
    one = material(name)
    assert hazard in one.hazards
    assert len(one.cautions[one.hazards.index(hazard)]) > 40


def test_an_unknown_name_is_refused_with_the_nearest() -> None:
    """A slip of the pen is answered with the name meant."""
    with pytest.raises(Refusal, match=r'The material is "phosfor bronze".*Did you mean "phosphor bronze"'):
        material("phosfor bronze")


def test_an_unknown_family_or_group_is_refused() -> None:
    """Families and cutting groups outside the table are refused with what there is."""
    with pytest.raises(Refusal, match=r'The family is "brasses".*Did you mean "brass"'):
        material_names("brasses")
    with pytest.raises(Refusal, match='The cutting group is "99"'):
        cutting_group("99")


@pytest.mark.parametrize(
    ("group", "kc11", "mc"),
    [("1", 1350, 0.21), ("10", 2450, 0.23), ("16", 1350, 0.28), ("22", 800, 0.25), ("27", 700, 0.27)],
)
def test_cutting_force_groups_of_vdi_3323(group: str, kc11: float, mc: float) -> None:
    """Figures of the VDI 3323 reprint."""
    assert (cutting_group(group).kc11, cutting_group(group).mc) == (kc11, mc)
