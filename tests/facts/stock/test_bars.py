"""Round bar on sale."""

from __future__ import annotations

import pytest

from tommybar.facts.stock import bars_sold, bright_bar_zones
from tommybar.refusals import Refusal


@pytest.mark.parametrize("system", ["metric", "inch"])
def test_bars_rise(system: str) -> None:
    """Each list rises from thin to thick and knows its system."""
    bars = bars_sold(system)

    assert [bar.diameter for bar in bars] == sorted(bar.diameter for bar in bars)
    assert {bar.system for bar in bars} == {system}


def test_mixed_inches() -> None:
    """1 1/4 in is 31.75 mm."""
    assert {bar.name: bar.diameter for bar in bars_sold("inch")}["1 1/4"] == pytest.approx(31.75)


def test_bright_bar_lies_between_two_zones() -> None:
    """Finest first."""
    assert bright_bar_zones() == ("h9", "h11")


def test_unknown_system_is_refused() -> None:
    """Metric or inch, nothing else."""
    with pytest.raises(Refusal, match='no "cubit" bar'):
        bars_sold("cubit")
