"""Asked in inches, no finding and no reason says a length in millimetres alone."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from tommybar import plan
from tommybar.design import load_design
from tommybar.making.lengths import Mm, spoken
from tommybar.shop import load_shop

EXAMPLES = Path(__file__).parents[2] / "examples"
# A figure in mm is good only as the name of a thing, with its inches behind it: "drill 7.8 mm (0.307 in)".
ALONE = re.compile(r"\d mm(?:[23])?(?![\w/])(?! \([\d. x-]+ in\))")


def sentences(planned):
    """Everything of a plan that is said in words about its sizes and findings."""
    for one in planned.findings:
        yield from (one.words, one.figure, one.bound, one.remedy)
    for row in planned.sizes:
        yield from (row.why, *row.choices)
    for bind in planned.binds:
        yield bind.what
    for line in planned.stock.buy:
        yield line.words


@pytest.fixture(scope="module")
def planned():
    """The demonstrator for a shop at a scale, its words in a unit."""
    design = load_design(EXAMPLES / "demonstrator" / "design.yaml")
    shops = {name: load_shop(EXAMPLES / "shops" / f"{name}.yaml") for name in ("inch-bench", "small-bench")}

    def of(shop, scale, unit):
        return plan(design, shops[shop], scale=scale, words_in=unit)

    return of


@pytest.mark.parametrize("shop", ["inch-bench", "small-bench"])
@pytest.mark.parametrize("scale", [None, 1.0, 1.6])
def test_no_length_is_left_in_millimetres(planned, shop, scale):
    """At the scale proposed, as drawn, and too large, so that most kinds of findings stand."""
    lines = list(sentences(planned(shop, scale, "in")))

    assert any(" in " in line for line in lines)
    assert [line for line in lines if ALONE.search(line)] == []


def test_the_same_findings_stand_in_either_unit(planned):
    """Turning the unit changes words and nothing else."""
    metric, inch = (planned("inch-bench", 1.6, unit) for unit in ("mm", "in"))

    def kinds(found):
        return sorted((one.number, one.severity, one.part, one.feature, one.card) for one in found.findings)

    assert kinds(metric) == kinds(inch)
    assert metric.plan_id == inch.plan_id
    assert [line for line in sentences(metric) if re.search(r"\d\.\d{3,} in\b", line)] == []


@pytest.mark.parametrize(
    ("metric", "inch"),
    [
        ("it is 12.7 mm", "it is 0.500 in"),
        ("0.05 mm TIR", "0.0020 in TIR"),
        ("jaws 3-36 mm", "jaws 0.118-1.417 in"),
        ("12.00 to 12.03 mm", "0.4724 to 0.4736 in"),
        ("drill 7.8 mm in a chuck", "drill 7.8 mm (0.307 in) in a chuck"),
        ("a 92 mm bar", "a 92 mm (3.622 in) bar"),
        ("52 x 16 mm plate", "52 x 16 mm (2.047 x 0.630 in) plate"),
        ("aluminium 6082, 194 mm long", "aluminium 6082, 7.638 in long"),
        ("ISO 4762 M3 x 20", "ISO 4762 M3 x 20"),
        ("14.2 mm2 of 20 kg mm2 and 0.1 mm/rev", "0.022 in2 of 20 kg mm2 and 0.1 mm/rev"),
        ("12 g mm", "12 g mm"),
    ],
)
def test_figures_written_out_are_turned_and_names_are_kept(metric, inch):
    """1 in = 25.4 mm exactly; 12.7 is half of it, 0.05 / 25.4 = 0.00197, 7.8 / 25.4 = 0.3071."""
    assert spoken(metric, "in") == inch
    assert spoken(metric, "mm") == metric


@pytest.mark.parametrize("value", [0.0123, 0.5, 1.999, 5.0, 72.0, 139.97])
def test_a_limit_is_rounded_to_its_safe_side(value):
    """A most never becomes larger than it is, a least never smaller, and neither by more than the last place."""
    for words, side in ((f"at most {value} mm", -1), (f"at least {value} mm", 1)):
        said = spoken(words, "in")
        found = float(said.split()[-2])
        step = 10.0 ** -len(said.split()[-2].partition(".")[2])
        assert side * (found - value / 25.4) + 1e-6 * step >= 0
        assert side * (found - value / 25.4) < step
    for spec, side in ((".2f mm most", -1), (".2f mm least", 1)):
        found = float(spoken(f"{Mm(value):{spec}}", "in").split()[0])
        assert side * (found - value / 25.4) + 1e-9 >= 0
        metric = float(spoken(f"{Mm(value):{spec}}", "mm").split()[0])
        assert 0 <= side * (metric - value) + 1e-9 < 0.01
