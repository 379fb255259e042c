"""ISO 273 clearance holes and ISO 4032 nuts, as public tables print them."""

from __future__ import annotations

import pytest

from tommybar.facts.fasteners import clearance_hole, nut, screw_head

HOLES = {
    "M1.6": (1.7, 1.8, 2.0),
    "M2": (2.2, 2.4, 2.6),
    "M2.5": (2.7, 2.9, 3.1),
    "M3": (3.2, 3.4, 3.6),
    "M4": (4.3, 4.5, 4.8),
    "M5": (5.3, 5.5, 5.8),
    "M6": (6.4, 6.6, 7.0),
    "M8": (8.4, 9.0, 10.0),
    "M10": (10.5, 11.0, 12.0),
    "M12": (13.0, 13.5, 14.5),
    "M16": (17.0, 17.5, 18.5),
}
NUTS = {
    "M1.6": (3.2, 1.3),
    "M2": (4.0, 1.6),
    "M2.5": (5.0, 2.0),
    "M3": (5.5, 2.4),
    "M4": (7.0, 3.2),
    "M5": (8.0, 4.7),
    "M6": (10.0, 5.2),
    "M8": (13.0, 6.8),
    "M10": (16.0, 8.4),
    "M12": (18.0, 10.8),
    "M16": (24.0, 14.8),
    "M20": (30.0, 18.0),
}
CAP_HEADS = {
    "M3": (5.5, 3.0, 2.5),
    "M4": (7.0, 4.0, 3.0),
    "M5": (8.5, 5.0, 4.0),
    "M6": (10.0, 6.0, 5.0),
    "M8": (13.0, 8.0, 6.0),
    "M10": (16.0, 10.0, 8.0),
    "M12": (18.0, 12.0, 10.0),
    "M16": (24.0, 16.0, 14.0),
}
COUNTERSUNK_HEADS = {
    "M3": (6.72, 1.86, 2.0),
    "M4": (8.96, 2.48, 2.5),
    "M5": (11.2, 3.1, 3.0),
    "M6": (13.44, 3.72, 4.0),
    "M8": (17.92, 4.96, 5.0),
    "M10": (22.4, 6.2, 6.0),
    "M12": (26.88, 7.44, 8.0),
}


@pytest.mark.parametrize(("size", "holes"), HOLES.items(), ids=HOLES)
def test_clearance_holes(size: str, holes: tuple[float, ...]) -> None:
    """ISO 273: fine, medium and coarse hole of each size."""
    assert tuple(clearance_hole(size, fit) for fit in ("fine", "medium", "coarse")) == holes


@pytest.mark.parametrize(("size", "figures"), NUTS.items(), ids=NUTS)
def test_nuts(size: str, figures: tuple[float, float]) -> None:
    """ISO 4032: across flats and greatest height of each size."""
    one = nut(size)

    assert (one.across_flats, one.height) == figures


@pytest.mark.parametrize(
    ("standard", "size", "figures"),
    [("ISO 4762", *item) for item in CAP_HEADS.items()]
    + [("ISO 10642", *item) for item in COUNTERSUNK_HEADS.items()],
)
def test_socket_heads(standard: str, size: str, figures: tuple[float, ...]) -> None:
    """ISO 4762 and ISO 10642: head diameter, head height and key of each size."""
    head = screw_head(standard, size)

    assert (head.diameter, head.height, head.key) == figures
