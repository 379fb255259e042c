"""Screw heads, grub screws, nuts and washers, as public tables print their standards.

ISO 4017 is taken from tables of DIN 933, which agree with it up to M8 and for M16.
"""

from __future__ import annotations

import pytest

from tommybar.facts.fasteners import nut, screw_head, washer

# head diameter, head height, key [mm]
HEADS = {
    ("ISO 4762", "M1.6"): (3.0, 1.6, 1.5),
    ("ISO 4762", "M2"): (3.8, 2.0, 1.5),
    ("ISO 4762", "M2.5"): (4.5, 2.5, 2.0),
    ("ISO 4762", "M3"): (5.5, 3.0, 2.5),
    ("ISO 4762", "M4"): (7.0, 4.0, 3.0),
    ("ISO 4762", "M5"): (8.5, 5.0, 4.0),
    ("ISO 4762", "M6"): (10.0, 6.0, 5.0),
    ("ISO 4762", "M8"): (13.0, 8.0, 6.0),
    ("ISO 4762", "M10"): (16.0, 10.0, 8.0),
    ("ISO 4762", "M12"): (18.0, 12.0, 10.0),
    ("ISO 4762", "M16"): (24.0, 16.0, 14.0),
    ("ISO 4762", "M20"): (30.0, 20.0, 17.0),
    ("ISO 10642", "M3"): (6.72, 1.86, 2.0),
    ("ISO 10642", "M4"): (8.96, 2.48, 2.5),
    ("ISO 10642", "M5"): (11.2, 3.1, 3.0),
    ("ISO 10642", "M6"): (13.44, 3.72, 4.0),
    ("ISO 10642", "M8"): (17.92, 4.96, 5.0),
    ("ISO 10642", "M10"): (22.4, 6.2, 6.0),
    ("ISO 10642", "M12"): (26.88, 7.44, 8.0),
    ("ISO 7380", "M3"): (5.7, 1.65, 2.0),
    ("ISO 7380", "M4"): (7.6, 2.2, 2.5),
    ("ISO 7380", "M5"): (9.5, 2.75, 3.0),
    ("ISO 7380", "M6"): (10.5, 3.3, 4.0),
    ("ISO 7380", "M8"): (14.0, 4.4, 5.0),
    ("ISO 7380", "M10"): (17.5, 5.5, 6.0),
    ("ISO 7380", "M12"): (21.0, 6.6, 8.0),
    ("ISO 4017", "M3"): (6.01, 2.0, 5.5),
    ("ISO 4017", "M4"): (7.66, 2.8, 7.0),
    ("ISO 4017", "M5"): (8.79, 3.5, 8.0),
    ("ISO 4017", "M6"): (11.05, 4.0, 10.0),
    ("ISO 4017", "M8"): (14.38, 5.3, 13.0),
    ("ISO 4017", "M16"): (26.75, 10.0, 24.0),
    ("ISO 1207", "M1.6"): (3.0, None, None),
    ("ISO 1207", "M3"): (5.5, 2.0, None),
    ("ISO 1207", "M4"): (7.0, 2.6, None),
    ("ISO 1207", "M5"): (8.5, 3.3, None),
    ("ISO 1207", "M6"): (10.0, 3.9, None),
    ("ISO 1207", "M8"): (13.0, 5.0, None),
    ("ISO 1207", "M10"): (16.0, 6.0, None),
    ("ISO 4026", "M2"): (1.0, 0.0, 0.9),
    ("ISO 4026", "M2.5"): (1.5, 0.0, 1.3),
    ("ISO 4026", "M3"): (2.0, 0.0, 1.5),
    ("ISO 4026", "M4"): (2.5, 0.0, 2.0),
    ("ISO 4026", "M5"): (3.5, 0.0, 2.5),
    ("ISO 4026", "M6"): (4.0, 0.0, 3.0),
    ("ISO 4026", "M8"): (5.5, 0.0, 4.0),
    ("ISO 4026", "M10"): (7.0, 0.0, 5.0),
    ("ISO 4026", "M12"): (8.5, 0.0, 6.0),
}
# across flats, greatest height [mm]
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
    "M14": (21.0, 12.8),
    "M16": (24.0, 14.8),
    "M20": (30.0, 18.0),
}
# inside, outside, thickness [mm]
WASHERS = {
    "M1.6": (1.7, 4.0, 0.3),
    "M2": (2.2, 5.0, 0.3),
    "M2.5": (2.7, 6.0, 0.5),
    "M3": (3.2, 7.0, 0.5),
    "M4": (4.3, 9.0, 0.8),
    "M5": (5.3, 10.0, 1.0),
    "M6": (6.4, 12.0, 1.6),
    "M8": (8.4, 16.0, 1.6),
    "M10": (10.5, 20.0, 2.0),
    "M12": (13.0, 24.0, 2.5),
    "M14": (15.0, 28.0, 2.5),
    "M16": (17.0, 30.0, 3.0),
    "M20": (21.0, 37.0, 3.0),
}


@pytest.mark.parametrize(("screw", "figures"), HEADS.items(), ids=[" ".join(screw) for screw in HEADS])
def test_heads(screw: tuple[str, str], figures: tuple[float | None, ...]) -> None:
    """Head (or point) diameter, height and key; where a table leaves one out it is not compared."""
    head = screw_head(*screw)

    for printed, found in zip(figures, (head.diameter, head.height, head.key), strict=True):
        assert printed is None or found == printed


@pytest.mark.parametrize(("size", "figures"), NUTS.items(), ids=NUTS)
def test_nuts(size: str, figures: tuple[float, float]) -> None:
    """ISO 4032: across flats and greatest height."""
    one = nut(size)

    assert (one.across_flats, one.height) == figures


@pytest.mark.parametrize(("size", "figures"), WASHERS.items(), ids=WASHERS)
def test_washers(size: str, figures: tuple[float, float, float]) -> None:
    """ISO 7089: inside, outside and thickness."""
    one = washer(size)

    assert (one.inside, one.outside, one.thickness) == figures
