"""ISO 273 clearance holes, as a public table prints them."""

from __future__ import annotations

import pytest

from tommybar.facts.fasteners import clearance_hole

# size: fine, medium, coarse [mm]
HOLES = {
    "M1": (1.1, 1.2, 1.3),
    "M1.2": (1.3, 1.4, 1.5),
    "M1.4": (1.5, 1.6, 1.8),
    "M1.6": (1.7, 1.8, 2.0),
    "M2": (2.2, 2.4, 2.6),
    "M2.5": (2.7, 2.9, 3.1),
    "M3": (3.2, 3.4, 3.6),
    "M3.5": (3.7, 3.9, 4.2),
    "M4": (4.3, 4.5, 4.8),
    "M5": (5.3, 5.5, 5.8),
    "M6": (6.4, 6.6, 7.0),
    "M7": (7.4, 7.6, 8.0),
    "M8": (8.4, 9.0, 10.0),
    "M10": (10.5, 11.0, 12.0),
    "M12": (13.0, 13.5, 14.5),
    "M14": (15.0, 15.5, 16.5),
    "M16": (17.0, 17.5, 18.5),
}


@pytest.mark.parametrize(("size", "holes"), HOLES.items(), ids=HOLES)
def test_clearance_holes(size: str, holes: tuple[float, ...]) -> None:
    """Fine, medium and coarse hole of each size."""
    assert tuple(clearance_hole(size, fit) for fit in ("fine", "medium", "coarse")) == holes
