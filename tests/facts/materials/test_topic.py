"""The look-up "material"."""

from __future__ import annotations

import pytest

from tommybar.facts.materials.topic import answer
from tommybar.refusals import Refusal


def test_a_material_answers_with_units_in_its_keys_and_its_sources() -> None:
    """Keys end in their units, tempers and sources are there."""
    found = answer(("EN", "AW-6082"), {})
    assert found.data["name"] == "aluminium 6082"
    assert found.data["density_g_cm3"] == 2.7
    assert found.data["modulus_mpa"] == 70_000
    assert {temper["name"] for temper in found.data["tempers"]} >= {"T6 bar to 20 mm", "T6 bar 20-150 mm"}
    assert "EN 755-2:2008" in found.source


def test_a_hazard_becomes_a_caution() -> None:
    """Magnesium answers with its fire."""
    assert any("class D" in words for words in answer(("AZ31",), {}).cautions)


def test_a_pair_answers_with_verdict_and_reason() -> None:
    """The option "on" asks for the pair."""
    found = answer(("brass",), {"on": "silver steel"})
    assert (found.data["verdict"], found.data["pair"]) == ("good", ["free-cutting brass", "silver steel"])


def test_a_density_answers_with_what_it_may_be() -> None:
    """The option "density" asks for look-alikes; a beryllium candidate brings its warning."""
    found = answer((), {"density": "8.3", "magnet": "no"})
    names = [one["name"] for one in found.data["likely"]]
    assert "beryllium copper" in names
    assert any("beryllium" in words for words in found.cautions)


@pytest.mark.parametrize(
    ("keys", "options", "words"),
    [((), {}, "has no name"), ((), {"density": "8", "magnet": "perhaps"}, "it says yes or no")],
)
def test_what_cannot_be_answered_is_refused(
    keys: tuple[str, ...], options: dict[str, str], words: str
) -> None:
    """No name, or a magnet that says neither."""
    with pytest.raises(Refusal, match=words):
        answer(keys, options)
