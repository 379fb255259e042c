"""Cards that are begun keep their order: what is measured later gives limits, not another route."""

from pathlib import Path

import pytest

from tommybar import load_design, load_shop, plan
from tommybar.made import load_made
from tommybar.made.record import Made, Measured, Ticked

EXAMPLES = Path(__file__).parents[2] / "examples"
OVER = Measured("wheel.bore", 10.021)


@pytest.fixture(scope="module")
def shaft():
    """The shaft's cards in short, and its plan, for what has been made so far."""
    design = load_design(EXAMPLES / "demonstrator" / "design.yaml")
    shop = load_shop(EXAMPLES / "shops" / "shop-r.yaml")

    def planned(*, measured=(), ticks=()):
        found = plan(design, shop, Made("", tuple(measured), tuple(ticks)))
        cards = found.part("shaft").cards
        order = [(c.hold.device, c.free_end, [s.feature for s in c.steps]) for c in cards]
        return order, found

    return planned


def test_a_bore_measured_after_the_shaft_was_begun_keeps_the_shafts_order(shaft):
    """The wheel's bore came out at 10.021: an untouched shaft starts from the other end, a begun one does not."""
    as_drawn, _ = shaft()
    untouched, _ = shaft(measured=[OVER])
    begun, found = shaft(measured=[OVER], ticks=[Ticked("shaft/1/1", after=0)])

    assert untouched != as_drawn
    assert begun == as_drawn
    (told,) = [one for one in found.findings if one.number == 713]
    assert (told.part, told.severity, told.figure) == ("shaft", "caution", "begun: shaft/1")
    limits = {m.size: m.dim for c in found.part("shaft").cards for s in c.steps for m in s.measure}
    assert limits["shaft.seat"].largest == pytest.approx(10.021)  # H7/h8: no more than the bore that was made


def test_a_shaft_begun_after_the_bore_was_measured_goes_by_the_bore(shaft):
    """Who begins with the measured bore on the record begins the new route, and keeps that."""
    untouched, _ = shaft(measured=[OVER])
    begun, found = shaft(measured=[OVER], ticks=[Ticked("shaft/1/1", after=1)])

    assert begun == untouched
    assert not [one for one in found.findings if one.number == 713]


def test_a_made_file_tells_which_came_first(tmp_path):
    """Entries stand in the order in which they happened; each tick knows how many sizes stood before it."""
    place = tmp_path / "made.yaml"
    place.write_text(
        "tommybar: 1\nmade:\n  - {step: shaft/1/1, done: true}\n"
        "  - {size: wheel.bore, is: 10.021}\n  - {step: shaft/1/2, done: true}\n"
    )

    made = load_made(place)

    assert [one.after for one in made.ticks] == [0, 1]
    assert made.when_begun("shaft").measured == ()
    assert made.when_begun("bush").measured == ()
