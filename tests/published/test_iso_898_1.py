"""ISO 898-1 table of stress areas, coarse and fine (from memory; several seen in public lists)."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from tommybar.facts.threads import thread

AREAS = {
    "M3": "5.03",
    "M3.5": "6.78",
    "M4": "8.78",
    "M5": "14.2",
    "M6": "20.1",
    "M7": "28.9",
    "M8": "36.6",
    "M10": "58.0",
    "M12": "84.3",
    "M14": "115",
    "M16": "157",
    "M18": "192",
    "M20": "245",
    "M22": "303",
    "M24": "353",
    "M27": "459",
    "M30": "561",
    "M33": "694",
    "M36": "817",
    "M8x1": "39.2",
    "M10x1": "64.5",
    "M10x1.25": "61.2",
    "M12x1.25": "92.1",
    "M12x1.5": "88.1",
    "M14x1.5": "125",
    "M16x1.5": "167",
}


@pytest.mark.parametrize(("size", "area"), AREAS.items(), ids=AREAS)
def test_stress_area(printed: Callable[[str], Any], size: str, area: str) -> None:
    """The stress area comes out as the standard prints it."""
    assert thread(size).stress_area == printed(area)
