"""Work of the hand stands on a last card, heat before final fits, with the cautions that bite."""

from __future__ import annotations

from pathlib import Path

import pytest

from tommybar.design.joints import BENCH_KINDS, BenchWork
from tommybar.design.model import Part
from tommybar.making.handwork.bench_work import RANK, SAID, bench_card
from tommybar.shapes.features import Cylinder, Dim, TurnedShape
from tommybar.shop import load_shop


@pytest.fixture(scope="module")
def shop():
    """The reference shop."""
    return load_shop(Path(__file__).parents[3] / "examples" / "shops" / "shop-r.yaml")


def point(*work, metal="silver steel"):
    """A turned pin with limits on its point."""
    land = Cylinder("point", Dim(6.0, "piece.point", "h6", 5.992, 6.0), 0.0, 30.0)
    return Part("piece", "turned", metal, 1, TurnedShape(Dim(30.0), (land,)), bench=work)


def test_every_kind_of_work_has_its_words_and_its_place():
    assert set(RANK) == set(SAID) == set(BENCH_KINDS)


def test_heat_comes_before_the_final_fit_and_the_skin_last(shop):
    written = [BenchWork(kind, kind, ("point",)) for kind in ("polished", "lapped", "tempered", "hardened")]
    card, found = bench_card(point(*written), shop, {}, 2)

    assert [step.do.split(":")[0] for step in card.steps] == ["Harden", "Temper", "Lap", "Polish"]
    assert card.number == 3 and [f.number for f in found] == [464]


def test_hardening_says_its_heat_and_its_danger_and_is_measured_after(shop):
    card, _ = bench_card(point(BenchWork("tip", "hardened", ("point",))), shop, {}, 0)
    step = card.steps[0]

    assert any("deg C" in line for line in step.dial)
    assert "flares" in " ".join(step.cautions)
    assert [m.size for m in step.measure] == ["piece.point"]


def test_brass_that_is_to_be_hardened_is_a_caution(shop):
    _, found = bench_card(point(BenchWork("tip", "hardened", ()), metal="free-cutting brass"), shop, {}, 0)

    assert [(f.number, f.severity) for f in found] == [(465, "caution")]


def test_solder_on_a_hardened_part_is_a_caution(shop):
    work = (BenchWork("tip", "hardened", ("point",)), BenchWork("joint", "soldered", ()))
    _, found = bench_card(point(*work), shop, {}, 0)

    assert 466 in {f.number for f in found}


def test_a_part_without_such_work_has_no_such_card(shop):
    assert bench_card(point(), shop, {}, 0) == (None, [])


def test_a_rivet_says_its_length(shop):
    """Grip 5 and 1.4 diameters of 3: 9.2."""
    rivet = BenchWork("r", "riveted", (), (("dia", 3.0), ("grip", 5.0), ("allowance", 1.4), ("length", 9.2)))
    card, _ = bench_card(point(rivet), shop, {}, 0)

    assert (card.steps[0].big, card.steps[0].big_kind) == ("9.2", "mm long")
