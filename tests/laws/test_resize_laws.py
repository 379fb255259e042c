"""Laws of resizing: units, tools, limits and scales change it only in the way they should."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tommybar.design import Design, design_from_text, load_design
from tommybar.resize import Resized, resize
from tommybar.resize.scales import Scales
from tommybar.shop import load_shop
from tommybar.shop.model import Reamer, Shop

RESIZE = Path(__file__).parent.parent / "resize"
FEW = settings(max_examples=8, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))


@cache
def jockey() -> Design:
    """The rope-drive jockey."""
    return load_design(RESIZE / "jockey.yaml")


@cache
def shop() -> Shop:
    """The small shop."""
    return load_shop(RESIZE / "small-shop.yaml")


def cost(design: Design, one: Shop) -> tuple[float, float]:
    """Scale, and how far its sizes depart from it."""
    found, _, _ = Scales(design, one, "ask", {}, ()).largest(1.0)
    assert found is not None
    return found.scale, sum(choice.cost for choice in found.picks.values())


def figures(found: Resized) -> dict[str, float | str]:
    """New figures by name."""
    return {row.name: row.new for row in found.rows}


@FEW
@given(
    size=st.sampled_from([4.5, 5.5, 6.5, 6.8, 7.0, 7.5, 9.0, 10.0]), kind=st.sampled_from(["reamer", "drill"])
)
def test_one_more_tool_never_makes_it_worse(size, kind):
    """With a tool more, the scale is not smaller and at the same scale the departures are not larger."""
    before = shop()
    if kind == "reamer":
        after = replace(before, reamers=(*before.reamers, Reamer(size)))
    else:
        after = replace(before, drills=tuple(sorted({*before.drills, size + 0.1})))
    scale_before, cost_before = cost(jockey(), before)
    scale_after, cost_after = cost(jockey(), after)

    assert scale_after >= scale_before
    assert scale_after > scale_before or cost_after <= cost_before + 1e-9


@FEW
@given(swings=st.tuples(st.integers(64, 104), st.integers(64, 104)))
def test_a_larger_lathe_never_makes_it_smaller(swings):
    """The scale rises with the swing over the cross-slide, or stays."""
    less, more = sorted(swings)
    found = [
        Scales(
            jockey(), replace(shop(), lathe=replace(shop().lathe, swing_cross_slide=swing)), "ask", {}, ()
        ).largest(1.0)[0]
        for swing in (less, more)
    ]

    assert found[0] is None or (found[1] is not None and found[1].scale >= found[0].scale)


def test_taking_the_binding_limit_away_strictly_helps():
    """Without the swing that binds the scale rises to what the jaws allow."""
    bound = resize(jockey(), shop(), stock="ask")
    free = replace(shop(), lathe=replace(shop().lathe, swing_cross_slide=1000.0, swing_bed=1000.0))

    assert [one.what for one in bound.limits if one.binds] == ["swing over the cross-slide"]
    assert resize(jockey(), free, stock="ask").scale > bound.scale


@FEW
@given(scales=st.tuples(st.integers(30, 100), st.integers(30, 100)))
def test_scaled_sizes_rise_with_the_scale(scales):
    """The best choice of every size by itself is not smaller at a larger scale."""
    less, more = sorted(scales)
    offers = Scales(jockey(), shop(), "ask", {}, ()).offers
    small, large = offers.at(less / 100), offers.at(more / 100)

    for size in jockey().named:
        if size.follows in ("scale", "reamer", "plate", "sheet"):
            assert small[size.name].ordered[0].value <= large[size.name].ordered[0].value


def test_it_does_not_matter_in_which_unit_the_figures_are_written():
    """The same design with every length written in inches gives the same sizes to a thousandth."""
    text = jockey().file_text
    lines = []
    for line in text.splitlines():
        if "{is: " in line and "follows" in line and "thread" not in line.split("follows")[1]:
            head, _, tail = line.partition("{is: ")
            figure, _, rest = tail.partition(",")
            line = f"{head}{{is: {float(figure) / 25.4!r} in,{rest}"
        lines.append(line)
    inches = design_from_text("\n".join(lines))
    one, other = (figures(resize(design, shop(), stock="rack")) for design in (jockey(), inches))

    assert "is: 3.937" in "\n".join(lines)
    for name, value in one.items():
        assert other[name] == (value if isinstance(value, str) else pytest.approx(value, abs=1e-6))


def test_the_same_asking_gives_the_same_answer():
    """Two runs are equal to the last figure, the count of evaluations too."""
    assert resize(jockey(), shop(), stock="rack") == resize(jockey(), shop(), stock="rack")
