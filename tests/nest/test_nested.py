"""``nest``: the rack first, then the request slip."""

from __future__ import annotations

from dataclasses import replace
from math import pi

import pytest

from tommybar.making.cards import Blank
from tommybar.making.lengths import spoken
from tommybar.nest import nest
from tommybar.refusals import Refusal
from tommybar.shop import example_shops, load_shop
from tommybar.shop.model import Bar


def test_offcuts_are_sawn_before_anything_is_bought(store, blank):
    """Two pins of 40 from an offcut of 82: kerf 1.5 between, 0.5 left, nothing bought."""
    shop = store(
        (Bar("offcut", "mild steel", "round", 12, 82),), (Bar("12 round", "mild steel", "round", 12, 3000),)
    )

    cuts, findings = nest((blank("pin", 12, 40, 2),), shop, "buy")

    assert [(cut.start, cut.end) for cut in cuts.bars[0].cuts] == [(0, 40), (41.5, 81.5)]
    assert cuts.bars[0].left == 0
    assert cuts.buy == ()
    assert findings == ()
    assert cuts.bound_words == "Everything comes from the rack: no plan can buy less."


def test_a_piece_as_long_as_the_bar_needs_no_kerf(store, blank):
    """Two of 40 and one kerf of 1.5 go on 81.5 exactly, and not on 81.4."""
    fits = store((Bar("offcut", "mild steel", "round", 12, 81.5),))
    short = store((Bar("offcut", "mild steel", "round", 12, 81.4),))

    assert nest((blank("pin", 12, 40, 2),), fits, "rack")[1] == ()
    assert [one.severity for one in nest((blank("pin", 12, 40, 2),), short, "rack")[1]] == ["stop"]


def test_the_short_offcut_is_taken_and_the_long_bar_left_whole(store, blank):
    """One pin of 40 comes from the 50 offcut, not from the 300 bar."""
    rack = (Bar("long", "mild steel", "round", 12, 300), Bar("short", "mild steel", "round", 12, 50))

    cuts, _ = nest((blank("pin", 12, 40),), store(rack), "rack")

    assert [bar.bar for bar in cuts.bars] == ["short"]


def test_a_rack_that_cannot_serve_stops_and_says_what_it_has(store, blank):
    """Rack mode: a stop with the blank's figure and the largest piece there is."""
    shop = store((Bar("end of 60 bar", "aluminium 6082", "round", 60, 40),))

    cuts, findings = nest((blank("wheel", 92, 27, material="aluminium 6082"),), shop, "rack")

    assert cuts.bars == () and cuts.buy == ()
    assert findings[0].number == 200 and findings[0].severity == "stop"
    assert findings[0].figure == "92 mm round x 27 mm"
    assert findings[0].bound == "largest on the rack: 60 mm round (end of 60 bar)"


def test_the_slip_speaks_shop_words_with_mass_and_alternatives(store, blank):
    """A disc of brass is asked for as a slice, with the mass of its cylinder at 8.47 g/cm3."""
    sold = (
        Bar("70 brass", "free-cutting brass", "round", 70, 1000),
        Bar("75 brass", "free-cutting brass", "round", 75, 1000),
    )

    cuts, findings = nest((blank("drum", 70, 16.5, material="free-cutting brass"),), store((), sold), "ask")

    line = cuts.buy[0]
    assert line.words.startswith(
        "Ask for a slice of 70 mm round free-cutting brass, 17 mm long, saw cut is fine"
    )
    assert line.mass == pytest.approx(pi / 4 * 7.0**2 * 1.7 * 8.47, rel=1e-9)
    assert line.accept[0] == "75 mm round"
    assert [one.number for one in findings] == [201]


def test_an_inch_shop_reads_sixteenths(store, blank):
    """A bar of 25.4 mm is asked for as 1 in; 17 mm is under 11/16 in, 17.4625 mm."""
    shop = store((), (Bar("bar", "mild steel", "round", 25.4, 900),), unit="in")

    words = nest((blank("boss", 25.4, 17),), shop, "buy")[0].buy[0].words

    assert words.startswith("Buy a slice of 1 in round mild steel, 17 mm long (11/16 in by the rule),")


def test_an_inch_size_is_never_rounded_to_hundredths_of_a_millimetre(store, blank):
    """1/8 in is 3.175 mm: said as 3.17 mm it would be read as 0.1248 in."""
    for unit in ("mm", "in"):
        shop = store((), (Bar("bar", "mild steel", "round", 3.175, 900),), unit=unit)
        found, findings = nest((blank("pin", 3.175, 40),), shop, "buy")
        assert "a piece of 1/8 in round mild steel" in found.buy[0].words
        assert findings[0].figure.startswith("1/8 in round x ")


def test_a_tube_is_asked_for_by_its_outside_and_its_bore(store, blank):
    """Which of the two figures is which is said; in inches it keeps the name it is sold by."""
    shop = store((), (Bar("tube", "mild steel", "tube", 25, 900, width=23),))
    words = nest((blank("bell", 25, 100, section="tube", width=23),), shop, "buy")[0].buy[0].words
    assert "a piece of tube 25 x 23 mm (outside by bore) mild steel, 100 mm long" in words
    # 25 and 23 mm over 25.4
    assert "tube 25 x 23 mm (0.984 x 0.906 in) (outside by bore)" in spoken(words, "in")


def test_unequal_pieces_share_the_fewest_bars(store, blank):
    """60 x 5 and 45 x 6 with kerf 1.5 come from two bars of 305."""
    shop = store((), (Bar("bar", "mild steel", "round", 12, 305),))

    cuts, _ = nest((blank("long", 12, 60, 5), blank("short", 12, 45, 6)), shop, "buy")

    assert len(cuts.bars) == 2
    assert "no plan needs fewer" in cuts.bound_words


def test_a_slightly_larger_bar_that_is_owned_beats_a_new_one(store, blank):
    """A 12 blank comes from owned 13 round (area 1.17 times), not from owned 20 round."""
    rack = (Bar("thirteen", "mild steel", "round", 13, 60), Bar("twenty", "mild steel", "round", 20, 60))

    cuts, findings = nest((blank("pin", 12, 40),), store(rack), "ask")

    assert [bar.bar for bar in cuts.bars] == ["thirteen"]
    assert [one.number for one in findings] == [204]
    assert nest((blank("pin", 12, 40),), store(rack[1:]), "ask")[0].buy[0].size == 12


def test_a_guessed_alloy_is_a_caution(store, blank):
    """A bar whose alloy is not certain is used, and the builder is told."""
    shop = store((Bar("mystery", "mild steel", "round", 12, 60, certain=False),))

    assert [(one.number, one.severity) for one in nest((blank("pin", 12, 40),), shop, "rack")[1]] == [
        (202, "caution")
    ]


def test_names_of_one_material_are_one_material(store, blank):
    """EN3B on the rack serves a part of mild steel; silver steel does not."""
    en3 = store((Bar("rod", "EN3B", "round", 12, 60),))
    silver = store((Bar("rod", "silver steel", "round", 12, 60),))

    assert len(nest((blank("pin", 12, 40),), en3, "rack")[0].bars) == 1
    assert len(nest((blank("pin", 12, 40),), silver, "rack")[0].bars) == 0


def test_plates_lie_side_by_side_on_a_sheet(store, blank):
    """Two brackets 54.5 x 34 lie across a sheet 70 wide; none overlap, a kerf stands between."""
    sheet = Bar("sheet", "mild steel", "sheet", 2, 56, 70)
    two = (blank("bracket", 2, 54.5, 2, section="plate", width=34),)

    cuts, findings = nest(two, store((sheet,)), "rack")

    lower, upper = cuts.bars[0].cuts
    assert findings == ()
    assert (lower.edge, lower.far_edge, upper.edge, upper.far_edge) == (0, 34, 35.5, 69.5)
    assert cuts.bars[0].left == 0


def test_a_flat_of_the_width_is_cut_to_length(store, blank):
    """Two pillars from 30 x 10 flat, 300 long, one behind the other."""
    flat = Bar("flat", "mild steel", "flat", 10, 300, 30)

    cuts, _ = nest((blank("pillar", 10, 81, 2, section="flat", width=30),), store((flat,)), "rack")

    assert [(cut.start, cut.end) for cut in cuts.bars[0].cuts] == [(0, 81), (82.5, 163.5)]
    assert cuts.bars[0].left == pytest.approx(300 - 163.5 - 1.5)


def test_longer_than_any_length_sold_is_a_stop(store, blank):
    """A blank of 400 where lengths of 330 are sold."""
    shop = store((), (Bar("rod", "silver steel", "round", 10, 330),))

    findings = nest((blank("spindle", 10, 400, material="silver steel"),), shop, "buy")[1]

    assert [(one.number, one.severity) for one in findings] == [(205, "stop"), (201, "note")]
    assert findings[0].bound == "330 mm, rod"


def test_a_section_nobody_sells_is_said(store, blank):
    """Buying what no list holds is a caution, and the slip asks for the size itself."""
    cuts, findings = nest((blank("pin", 12, 40),), store(), "buy")

    assert [(one.number, one.severity) for one in findings] == [(203, "caution"), (201, "note")]
    assert cuts.buy[0].size == 12


@pytest.mark.parametrize(("stock", "length"), [("steal", 40.0), ("buy", 0.0)])
def test_nonsense_is_refused(store, blank, stock, length):
    """An unknown stock mode and a blank without length are refused with their figure."""
    with pytest.raises(Refusal, match=r"stock mode is \"steal\"|must be above 0"):
        nest((blank("pin", 12, length),), store(), stock)


def test_the_same_asking_gives_the_same_list(store, blank):
    """Seeds are fixed: two runs are equal to the last figure."""
    rack = tuple(Bar(f"offcut {n}", "mild steel", "round", 12, 40 + 17 * n) for n in range(9))
    wanted = tuple(blank(f"part {n}", 12, 13 + 5.3 * n, 2) for n in range(8))

    assert nest(wanted, store(rack), "ask") == nest(wanted, store(rack), "ask")


def test_blanks_of_one_size_and_two_metals_come_from_bars_of_their_own_metal():
    """12 round in silver steel and in brass: each from its own bar, and neither from the other's."""
    shop = replace(
        load_shop(example_shops()["shop-r"]),
        rack=(
            Bar("brass 12", "free-cutting brass", "round", 12.0, 200.0),
            Bar("steel 12", "silver steel", "round", 12.0, 200.0, skin="ground"),
        ),
    )
    blanks = tuple(
        Blank(part, metal, "round", 12.0, 0.0, 90.0, 88.0, (("face first end", 1.0),))
        for part, metal in (("shaft", "silver steel"), ("handle", "free-cutting brass"))
    )

    for order in (blanks, blanks[::-1]):
        cut_list, _ = nest(order, shop, "rack")
        assert {(bar.material, cut.part) for bar in cut_list.bars for cut in bar.cuts} == {
            ("silver steel", "shaft"),
            ("free-cutting brass", "handle"),
        }
