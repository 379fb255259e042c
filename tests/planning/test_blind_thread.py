"""A tapped hole that does not scale in a part that does: told of that part, and turned away from."""

from __future__ import annotations

import pytest

from tommybar.design import design_from_text
from tommybar.planning import Plan, plan
from tommybar.shop import example_shops, load_shop

KNOB = """\
tommybar: 1
design: Knob
revision: A
units: mm
sizes:
  dia: {is: %s, follows: scale, drives: true}
  long: {is: %s, follows: scale}
  stud: {is: M6, follows: thread}
  deep: {is: %s, follows: nothing}
parts:
  knob:
    material: mild steel
    turned:
      length: long
      outside: [{name: rim, dia: dia}]
      bores: [{name: socket, face: A, thread: stud, deep: deep}]
  cap:
    material: mild steel
    turned:
      length: long
      outside: [{name: rim, dia: dia}]
"""


def planned(dia: float, long: float, deep: float, scale: float | None = None) -> Plan:
    """The knob in shop R."""
    return plan(design_from_text(KNOB % (dia, long, deep)), load_shop(example_shops()["shop-r"]), scale=scale)


def test_a_drill_that_comes_out_is_told_of_its_part_and_the_rest_is_planned() -> None:
    """At 0.7 the part is 14 long; M5, 12 deep + 3 x 0.8 of lead is 14.4 before any tip: it comes out behind."""
    found = planned(24, 20, 12, 0.7)
    told = {(one.number, one.part) for one in found.stops}

    assert (517, "knob") in told and (685, "knob") in told
    assert not [one for one in found.stops if one.part == "cap"]
    assert found.part("cap").cards and found.part("cap").run is not None
    assert found.part("knob").cards == ()


@pytest.mark.parametrize(("long", "fits"), [(30, True), (21, False)])
def test_resize_turns_away_from_scales_at_which_the_drill_comes_out(long: float, fits: bool) -> None:
    """140 fits the swing at 0.76 at most: 30 x 0.76 is 22.8 long, 21 x 0.76 is 16, and the drill wants 17.66.

    M5 at that scale: 14 deep, 3 x 0.8 of lead, 0.3 x 4.2 of tip.
    """
    found = planned(140, long, 14)
    words = " ".join(one.words for one in found.stops)

    assert bool([one for one in found.stops if one.number in (100, 517, 685)]) != fits
    if fits:
        assert found.scale <= 0.77
    else:
        assert "Metal behind socket with its lead and tip of knob: -1.66 mm is too small" in words
