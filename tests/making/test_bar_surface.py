"""A land keeps the bar's own surface only when any bar of that size lies within its limits."""

from __future__ import annotations

import pytest

from tommybar.design.model import Part
from tommybar.making.blanks import round_choices
from tommybar.making.parts import route_part
from tommybar.resize.limits import skin_on
from tommybar.shapes.features import Cylinder, Dim, TurnedShape
from tommybar.shop.model import Bar


def pin(material, *limits):
    """A plain pin 10 x 20."""
    dim = Dim(10.0, "p.land", "limits" if limits else "", *(limits or (None, None)))
    return Part(
        "p", "turned", material, 1, TurnedShape(Dim(20.0, "p.length"), (Cylinder("land", dim, 0.0, 20.0),))
    )


@pytest.mark.parametrize(
    ("material", "limits", "stays"),
    [
        ("silver steel", (9.978, 10.0), True),  # 10 h8, ISO 286-2: 0/-22; ground bar is h8
        ("silver steel", (9.985, 10.0), False),  # 10 h7: 0/-15
        ("mild steel", (9.91, 10.0), True),  # 10 h11: 0/-90; bright drawn bar may be h11
        ("mild steel", (9.964, 10.0), False),  # 10 h9: 0/-36
        ("mild steel", (), True),  # ISO 2768-1 m: +-0.2
    ],
    ids=["h8 ground", "h7 ground", "h11 drawn", "h9 drawn", "no limits"],
)
def test_the_bars_own_zone_decides_whether_it_stays(shop_r, material, limits, stays):
    """Otherwise the next larger bar is turned, and the blank is larger than the land."""
    part = pin(material, *limits)
    bar, kept = round_choices(part, shop_r)[0]
    making = route_part(part, {}, shop_r)

    assert kept is stays
    assert (bar.size == 10.0) is stays
    assert (making.blank.size == 10.0) is stays
    turned = {s.feature for c in making.cards for s in c.steps if s.tool_kind == "knife"}
    assert ("land" in turned) is not stays


def test_resize_reckons_with_the_same_skin():
    """What the route will turn needs skin in resize too."""
    bar = Bar("10 ground", "silver steel", "round", 10.0, 330.0, skin="ground")

    assert skin_on(bar, pin("silver steel", 9.978, 10.0).shape) == 0.0
    assert skin_on(bar, pin("silver steel", 9.985, 10.0).shape) > 0.0
