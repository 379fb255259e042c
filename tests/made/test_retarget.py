"""New limits from measured sizes."""

from __future__ import annotations

import pytest

from tommybar.made import Made, as_measured, retarget
from tommybar.made.dims import dims_of, lengths_of
from tommybar.made.record import Measured


def made(**sizes: float) -> Made:
    """A record of measured sizes, ``wheel_bore`` for wheel.bore and so on."""
    return Made("trial", tuple(Measured(name.replace("__", "."), value) for name, value in sizes.items()))


def numbers(findings):
    """Numbers of findings, in their order."""
    return [one.number for one in findings]


def test_nothing_measured_changes_nothing(design):
    """An empty record gives the design itself back, without a word."""
    assert retarget(design, Made()) == (design, (), {})


def test_a_bore_over_size_moves_the_shaft(design):
    """Bore 10.021 instead of 10.000 to 10.015: shaft 9.991 to 10.021 (clearance 0 to 0.030)."""
    new, findings, why = retarget(design, made(wheel__bore=10.021))

    seat = dims_of(new)["shaft.seat"]
    assert (seat.smallest, seat.largest) == (9.991, 10.021)
    assert seat.value == 10.0
    assert numbers(findings) == [701, 700]
    assert findings[0].words == "wheel.bore is 0.006 mm over its limit."
    assert findings[1].figure == "9.991 to 10.021 mm"
    assert why == {
        "shaft": "seat is now 9.991 to 10.021 mm (drawn 9.985 to 10.000 mm): "
        "wheel.bore measured 10.021 mm; keeps the fit H7/h7."
    }


def test_the_measured_size_keeps_what_is_drawn_and_says_what_it_is(design):
    """The bore is still 10 H7, so that its reamer is found; the measurement stands beside it."""
    new, _, _ = retarget(design, made(wheel__bore=10.021))

    bore = dims_of(new)["wheel.bore"]
    assert (bore.value, bore.smallest, bore.largest) == (10.0, 10.0, 10.015)
    assert bore.because == "measured 10.021 mm"


def test_a_shaft_made_first_moves_the_hole(design):
    """Seat 9.975, under size: the bore becomes 9.975 to 10.005."""
    new, findings, why = retarget(design, made(shaft__seat=9.975))

    bore = dims_of(new)["wheel.bore"]
    assert (bore.smallest, bore.largest) == (9.975, 10.005)
    assert numbers(findings) == [701, 700]
    assert list(why) == ["wheel"]


def test_a_nominal_outside_the_new_limits_moves_to_their_middle(design):
    """Journal at 7.90: the bush becomes 7.913 to 7.943; 8.0 would be wrong, so 7.928 is aimed at."""
    new, _, _ = retarget(design, made(shaft__journal_a=7.90))

    bore = dims_of(new)["bush.bore"]
    assert (bore.smallest, bore.largest, bore.value) == (7.913, 7.943, 7.928)


def test_one_hole_between_two_measured_shafts_suits_both(design):
    """Journals 7.980 and 7.985: the bush may be what suits both, 7.998 to 8.023."""
    new, _, _ = retarget(design, made(shaft__journal_a=7.98, shaft__journal_b=7.985))

    bore = dims_of(new)["bush.bore"]
    assert (bore.smallest, bore.largest) == (7.998, 8.023)


def test_no_size_for_two_that_differ_too_much(design):
    """Journals 7.98 and 7.92 ask for bores that do not meet: a stop, and the drawing stays."""
    new, findings, _ = retarget(design, made(shaft__journal_a=7.98, shaft__journal_b=7.92))

    told = next(one for one in findings if one.number == 704)
    assert (told.severity, told.feature) == ("stop", "bore")
    assert dims_of(new)["bush.bore"].largest == 8.015


def test_two_measured_mates_are_left_and_judged(design):
    """Both made: 0.010 of clearance holds H7/h7; 0.050 is too loose; -0.005 is too tight."""
    verdicts = {
        shaft: retarget(design, made(wheel__bore=10.01, shaft__seat=shaft)) for shaft in (10.0, 9.96, 10.015)
    }

    assert [numbers(found)[-1] for _, found, _ in verdicts.values()] == [702, 703, 703]
    assert "too loose" in verdicts[9.96][1][-1].words
    assert "too tight" in verdicts[10.015][1][-1].words
    assert all(dims_of(new)["shaft.seat"].smallest == 9.985 for new, _, _ in verdicts.values())


def test_the_length_made_last_closes_the_loop(design):
    """Base 50.06 and flanges 3.02: the seat is 43.82 to 43.97 long, and what lies beyond moves along."""
    record = Made("", (Measured("base.width", 50.06), Measured("bush.flange.long", 3.02)))
    new, findings, why = retarget(design, record)

    assert numbers(findings) == [705]
    assert findings[0].figure == "43.820 to 43.970 mm"
    assert lengths_of(new)["shaft.seat.long"] == pytest.approx(43.895)
    assert lengths_of(new)["shaft.journal_b.long"] == pytest.approx(20.0)
    assert dims_of(new)["shaft.length"].value == pytest.approx(79.895)
    assert new.loops[0].terms[2].value == 43.895
    assert "keeps the float of end float" in why["shaft"]


def test_lengths_not_measured_yet_are_named(design):
    """With only the base measured the solution is a caution that names the flange."""
    _, findings, _ = retarget(design, Made("", (Measured("base.width", 50.06),)))

    assert numbers(findings) == [706]
    assert findings[0].severity == "caution"
    assert "Measure bush.flange.long before shaft.seat.long is cut." in findings[0].remedy


def test_a_closed_loop_is_judged(design):
    """All three measured: 0.10 of float is right, 0.30 is not."""

    def loop(seat: float):
        sizes = {"base.width": 50.0, "bush.flange.long": 3.0, "shaft.seat.long": seat}
        return retarget(design, Made("", tuple(Measured(name, value) for name, value in sizes.items())))[1]

    assert numbers(loop(43.9)) == [708]
    assert numbers(loop(43.7)) == [707]
    assert loop(43.7)[0].figure == "0.300 mm"


def test_a_loop_that_cannot_close_stops(design):
    """A base of 5 mm leaves no room for a seat."""
    _, findings, _ = retarget(design, Made("", (Measured("base.width", 5.0),)))

    assert 707 in numbers(findings)


def test_the_last_length_made_first_asks_for_the_others(design):
    """A seat that is measured before the base is a caution that names what must suit it."""
    _, findings, _ = retarget(design, Made("", (Measured("shaft.seat.long", 43.8),)))

    assert numbers(findings) == [706]
    assert "base.width and bush.flange.long must now suit it" in findings[0].words


def test_a_name_that_is_not_in_the_design_offers_the_nearest(design):
    """wheel.bor is not lost in silence."""
    _, findings, _ = retarget(design, made(wheel__bor=10.02))

    assert numbers(findings) == [710]
    assert findings[0].remedy == 'Did you mean "wheel.bore"?'


@pytest.mark.parametrize(("value", "words"), [(0.3937, "inches"), (5.0, "radius"), (20.01, "radius")])
def test_slips_of_the_pen_are_suspected(design, value, words):
    """An inch figure, a radius or a double is asked about."""
    _, findings, _ = retarget(design, made(wheel__bore=value))

    assert findings[0].number == 711
    assert words in findings[0].words


def test_every_piece_of_several_alike_has_its_say(design):
    """Bushes at 8.020 and 8.006 in H7/f7 (clearance 0.013 to 0.043): 7.977 to 8.007 and 7.963 to 7.993, so 7.977 to 7.993."""
    two = Made(measured=(Measured("bush.bore", 8.020), Measured("bush.bore", 8.006, note="piece 2")))

    new, findings, why = retarget(design, two)

    for journal in ("shaft.journal_a", "shaft.journal_b"):
        assert (dims_of(new)[journal].smallest, dims_of(new)[journal].largest) == (7.977, 7.993)
    assert "bush.bore of piece 2 measured 8.006 mm" in why["shaft"]
    assert [one.words for one in findings if one.number == 701] == ["bush.bore is 0.005 mm over its limit."]


def test_pieces_that_no_one_mate_suits_are_told(design):
    """8.050 wants 8.007 at least, 8.000 wants 7.987 at most."""
    two = Made(measured=(Measured("bush.bore", 8.050), Measured("bush.bore", 8.000, note="piece 2")))

    assert 704 in numbers(retarget(design, two)[1])


def test_a_piece_that_fits_one_mate_need_only_be_kept_from_the_other(design):
    """A journal of 8.005 runs in 8.020 (15 um) and sticks in 8.006: a caution, and a stop without the first."""
    large, small = Measured("bush.bore", 8.020), Measured("bush.bore", 8.006, note="piece 2")
    journal = Measured("shaft.journal_a", 8.005)

    both = retarget(design, Made(measured=(large, small, journal)))[1]
    one = retarget(design, Made(measured=(small, journal)))[1]

    assert [(f.severity, f.remedy) for f in both if f.number == 703] == [
        ("caution", "Pair each with the one that it fits, and mark the pairs.")
    ]
    assert [f.severity for f in one if f.number == 703] == ["stop"]


def test_a_measured_size_is_joined_as_it_is(design):
    """What is pressed or turned in it meets 8.006 to 8.020, and no longer 8.000 to 8.015."""
    two = Made(measured=(Measured("bush.bore", 8.020), Measured("bush.bore", 8.006, note="piece 2")))

    bore = dims_of(as_measured(design, two))["bush.bore"]

    assert (bore.value, bore.smallest, bore.largest) == (8.0, 8.006, 8.020)


def test_flanges_of_two_bushes_stand_in_the_loop_each_once(design):
    """Base 50.00, flanges 3.05 and 2.95: the seat is 50 - 6.00 - 0.05 to 0.2, as if both were 3.00."""
    alike = {"base.width": 50.0}
    two = (Measured("bush.flange.long", 3.05), Measured("bush.flange.long", 2.95, note="piece 2"))
    base = tuple(Measured(name, value) for name, value in alike.items())

    _, _, why = retarget(design, Made(measured=(*base, *two)))

    assert "43.800 to 43.950 mm" in why["shaft"]
