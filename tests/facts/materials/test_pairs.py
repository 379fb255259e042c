"""Which materials may run together."""

from __future__ import annotations

from itertools import product

import pytest

from tommybar.facts.materials import material, material_names, may_run_together
from tommybar.refusals import Refusal


@pytest.mark.parametrize(
    ("first", "second", "verdict"),
    [
        ("silver steel", "phosphor bronze", "good"),
        ("mild steel", "mild steel", "no"),
        ("304", "316", "no"),
        ("6082", "6082", "no"),
        ("brass", "brass", "no"),
        ("grey cast iron", "grey cast iron", "good"),
        ("mild steel", "free-cutting brass", "good"),
        ("silver steel", "silver steel", "with care"),
        ("titanium", "mild steel", "no"),
        ("silver steel", "acetal", "good"),
    ],
)
def test_known_pairs(first: str, second: str, verdict: str) -> None:
    """The trade's verdicts: hard on soft, unlike on unlike, never aluminium on aluminium."""
    found = may_run_together(first, second)
    assert found.verdict == verdict
    assert bool(found) == (verdict != "no")
    assert len(found.reason) > 10


def test_every_pair_has_a_verdict_and_order_does_not_matter() -> None:
    """All materials of the table, both ways round."""
    for first, second in product(material_names(), repeat=2):
        found = may_run_together(first, second)
        assert found == may_run_together(second, first)
        assert found.verdict in ("good", "with care", "no")


def test_soft_metals_never_run_on_themselves() -> None:
    """Only cast iron and hardened steel may meet their own kind."""
    for name in material_names():
        verdict = may_run_together(name, name).verdict
        if material(name).family in ("brass", "bronze", "copper", "aluminium", "titanium", "stainless"):
            assert verdict == "no", name


def test_an_unknown_partner_is_refused() -> None:
    """A name that is not in the table is refused, not judged."""
    with pytest.raises(Refusal, match='The material is "unobtainium"'):
        may_run_together("brass", "unobtainium")
