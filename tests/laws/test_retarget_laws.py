"""Laws of re-targeting: the clearance is kept, order does not matter, twice is once."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from tommybar.design.model import FitRelation, Part, SizedDesign
from tommybar.facts.fits.iso286 import limits_of_size
from tommybar.made import Made, retarget
from tommybar.made.dims import dims_of
from tommybar.made.record import Measured
from tommybar.shapes.features import Bore, Cylinder, Dim, TurnedShape
from tommybar.sizes.fits import fit_of

sizes = st.integers(4, 100).map(float)
pairs = st.sampled_from(["H7/h7", "H7/f7", "H7/g6", "H8/e8", "H7/p6", "H7/k6"])
errors_um = st.integers(-60, 60)


def pair_of(nominal: float, zones: str) -> SizedDesign:
    """A hub on a pin with the fit, limits from the standard."""
    hole_zone, shaft_zone = zones.split("/")

    def dim(name: str, zone: str) -> Dim:
        limits = limits_of_size(nominal, zone)
        return Dim(nominal, name, zone, limits.smallest, limits.largest)

    hub = TurnedShape(
        Dim(10.0, "hub.length"),
        (Cylinder("rim", Dim(3 * nominal, "hub.rim"), 0.0, 10.0),),
        bores=(Bore("bore", dim("hub.bore", hole_zone), "A", 10.0, through=True),),
    )
    pin = TurnedShape(Dim(30.0, "pin.length"), (Cylinder("body", dim("pin.body", shaft_zone), 0.0, 30.0),))
    parts = (Part("hub", "turned", "mild steel", 1, hub), Part("pin", "turned", "silver steel", 1, pin))
    return SizedDesign("Pair", "A", "mm", (), parts, (FitRelation("hub.bore", "pin.body", zones),))


@given(sizes, pairs, errors_um, st.booleans())
@settings(max_examples=60, deadline=None)
def test_the_clearance_of_the_fit_is_kept_at_both_ends(nominal, zones, error, hole_first):
    """Whichever is made first and however far it is out, the mate's limits give the fit's clearance."""
    design = pair_of(nominal, zones)
    name, mate = ("hub.bore", "pin.body") if hole_first else ("pin.body", "hub.bore")
    value = nominal + error / 1000

    new, _, _ = retarget(design, Made("", (Measured(name, value),)))

    dim, fit = dims_of(new)[mate], fit_of(nominal, zones)
    ends = [(value - one if hole_first else one - value) * 1000 for one in (dim.smallest, dim.largest)]
    assert abs(min(ends) - fit.min_clearance_um) < 0.06
    assert abs(max(ends) - fit.max_clearance_um) < 0.06
    assert dim.smallest <= dim.value <= dim.largest


@given(sizes, pairs, errors_um, errors_um)
@settings(max_examples=40, deadline=None)
def test_the_order_of_entries_does_not_matter_but_the_latest_of_one_size_counts(
    nominal, zones, first, second
):
    """Entries of different sizes commute; of two entries of one size the later one decides."""
    design = pair_of(nominal, zones)
    bore = Measured("hub.bore", nominal + first / 1000)
    again = replace(bore, value=nominal + second / 1000)
    pin = Measured("pin.body", nominal)

    assert retarget(design, Made("", (bore, pin)))[0] == retarget(design, Made("", (pin, bore)))[0]
    assert retarget(design, Made("", (bore, again)))[0] == retarget(design, Made("", (again,)))[0]


@given(sizes, pairs, errors_um)
@settings(max_examples=40, deadline=None)
def test_re_targeting_twice_is_re_targeting_once(nominal, zones, error):
    """The same record laid on a design that already follows it moves no limit further."""
    record = Made("", (Measured("hub.bore", nominal + error / 1000),))
    once, _, _ = retarget(pair_of(nominal, zones), record)
    twice, _, _ = retarget(once, record)

    assert dims_of(twice)["pin.body"].smallest == dims_of(once)["pin.body"].smallest
    assert dims_of(twice)["pin.body"].largest == dims_of(once)["pin.body"].largest
