"""Realities 2, 31, 38, 39, 40 and 45: stock, faces, sheets, alloys, seats."""

import pytest

from tommybar.refusals import Refusal

from ..conftest import SHOP, Hand
from .conftest import named, stands, warned


def test_little_skin_on_a_sawn_disc_is_told():
    """92 sawn for a rim of 90: 2 mm to clean."""
    (one,) = [one for one in warned(2, stands()) if one.part == "wheel"]

    assert "2.0 mm of skin to clean a diameter of 90 mm" in one.words


def test_a_bent_bar_cleans_up_to_less(rescued):
    """Least diameter 90.0 and bow 0.3: 90 - 0.6 - 0.2 = 89.2, so 89 on the grid; what follows the rim moves."""
    (one,) = rescued(2, "wheel", 90.0, bow=0.3, stand=stands(Hand()("tick", "wheel/1/1")))

    assert one.change["pins"] == {"wheel_dia": 89.0}
    assert one.lost == ()
    assert one.plan.design.part("pillar").shape.length.value == 80.5  # 16 + 89 / 2 + 5 + 15


def test_a_bar_that_cleans_up_is_used(rescued):
    """91 straight cleans at 90.8: go on, nothing changes."""
    (one,) = rescued(2, "wheel", 91.0)

    assert "cleans up at 90.80 mm" in one.words
    assert one.changes.cards == ()


def test_a_bar_used_up_to_its_end_is_told():
    """A wheel disc 27 long from a piece of just that leaves nothing for the saw."""
    blank = stands().plan.part("wheel").blank
    shop = SHOP.replace("round: 92, long: 60,", f"round: 92, long: {blank.length:g},")

    assert any(one.part == "wheel" for one in warned(38, stands(shop=shop)))
    assert not any(one.part == "wheel" for one in warned(38, stands()))


def test_a_short_blank_makes_a_shorter_part_or_a_new_blank(rescued):
    """1.0 short of 27: the rim or the boss 1 mm shorter, planned out of 26; or 1.4 kg of steel again."""
    stand = stands(Hand()("tick", "wheel/1/1"))
    assert stand.plan.part("wheel").blank.length == 27.0

    found = rescued(38, "wheel", 26.0, stand=stand)

    rim, boss, new = named(found, "rim_wide 13"), named(found, "boss_long 9"), named(found, "new blank")
    assert rim.plan.part("wheel").blank.length <= 26.0
    assert boss.plan.part("wheel").blank.length <= 26.0
    assert (rim.lost, boss.lost, new.lost) == ((), (), ("wheel",))
    assert new.metal == stand.plan.part("wheel").blank.mass == pytest.approx(1410, rel=0.02)
    assert found[-1] is new


def test_a_way_out_that_the_blank_does_not_allow_says_so(rescued):
    """With a rim of 12.5 the wheel would be held otherwise and want a longer blank: that is told, and comes last."""
    found = rescued(38, "wheel", 25.5)

    assert "wheel wants a blank of" in found[-1].stops[0]
    assert "25.5 mm are there" in found[-1].stops[0]
    assert found[0].stops == ()


def test_a_begun_part_of_another_shape_gets_new_cards(rescued):
    """The first step is ticked; the narrower wheel begins from its other end: its cards are new, and that is told."""
    found = rescued(38, "wheel", 25.5, stand=stands(Hand()("tick", "wheel/1/1")))

    rim = named(found, "rim_wide 12.5")
    assert {one.number for one in rim.plan.findings} >= {714}
    assert any("22.50" in s.big for c in rim.plan.part("wheel").cards for s in c.steps)


def test_metal_is_counted_before_anything_is_begun_too(rescued):
    """A blank that was sawn short is lost though no step of it is ticked."""
    assert named(rescued(38, "crank", 21.5), "new blank").metal > 50


def test_faces_that_look_alike_are_told():
    """The crank is a disc: no face is A by itself; a bush has its flange."""
    assert [one.part for one in warned(31, stands())] == ["crank"]


def test_a_lost_face_is_found_by_what_differs(rescued):
    """The bush by its flange; of the crank either face may be A."""
    bush, crank = rescued(31, "bush"), rescued(31, "crank")

    assert any("face A is at flange" in one.words for one in bush)
    assert [one.words.split(",")[0] for one in crank] == ["Take either face of crank as A"]


def test_inch_dials_under_a_metric_sheet_are_told():
    """The slides that read otherwise are named."""
    shop = SHOP.replace("cross_slide: {division: 0.02,", "cross_slide: {unit: in, division: 0.02,")

    (one,) = warned(39, stands(shop=shop))

    assert one.words == "The design is in mm; cross slide read otherwise."
    assert warned(39, stands()) == []


def test_the_check_bar_gives_the_true_factor(rescued):
    """48 for 50 is 0.960; a crank cut off that sheet is 42.24 across and is frozen so, or made again."""
    (paper,) = rescued(39, "", 48.0)
    found = rescued(39, "crank.disc", 48.0, stand=stands(Hand()("tick", "crank/1/1")))

    assert "0.960 of the true ones" in paper.words
    assert named(found, "keep").readings == (("crank.disc", 42.24),)
    assert named(found, "make crank again").lost == ("crank",)


def test_a_guessed_alloy_is_told():
    """A piece whose stuff nobody knows is named for the part that is sawn from it."""
    shop = SHOP.replace(
        "round: 92, long: 60, skin: sawn}", "round: 92, long: 60, skin: sawn, certain: false}"
    )

    (one,) = warned(40, stands(shop=shop))

    assert (one.part, one.figure) == ("wheel", "mild steel")


def test_another_alloy_changes_speeds_masses_and_only_the_cards_of_its_part(rescued):
    """A crank of steel in place of aluminium: 2.9 times as dense; nothing but the crank's cards changes."""
    found = rescued(40, "crank", said="mild steel")

    steel = named(found, "Make crank of mild steel")
    assert "density +19" in steel.words
    assert {card.part for card in steel.changes.cards} == {"crank"}
    ratio = steel.plan.part("crank").mass / stands().plan.part("crank").mass
    assert ratio == pytest.approx(7.85 / 2.70, rel=0.01)


def test_edges_that_stay_sharp_are_named():
    """The members of the float loop."""
    (one,) = warned(45, stands())

    assert "base.width, bush.flange.long, shaft.seat.long" in one.words


def test_a_seat_faced_again_is_tied_into_its_loop(rescued):
    """Flanges of 2.95: 50 - 5.9 - (0.05 to 0.2) leaves the seat 43.9 to 44.05, its middle 43.975."""
    faced = named(rescued(45, "bush.flange.long", 2.95), "solve shaft anew")

    assert "seat.long is now 43.900 to 44.050 mm" in faced.plan.part("shaft").changed
    assert faced.plan.design.part("shaft").shape.length.value == pytest.approx(87.975)


@pytest.mark.parametrize(
    ("number", "about", "value", "said", "words"),
    [
        (2, "grub", 5, "", 'No blank is sawn for "grub"'),
        (2, "base", 5, "", "is not turned"),
        (31, "base", 0, "", "is not turned"),
        (31, "whel", 0, "", 'no part "whel"'),
        (38, "wheel", 100, "", "long enough"),
        (38, "wheel", 0, "", "must be above 0"),
        (39, "", 50.1, "", "the sheet is true"),
        (39, "", 0, "", "must be above 0"),
        (40, "crank", 0, "unobtanium", "unobtanium"),
        (40, "grub", 0, "mild steel", "is made here"),
        (45, "wheel.rim", 90, "", "no loop of lengths"),
        (45, "bush.flange.long", 0, "", "must be above 0"),
    ],
)
def test_what_does_not_fit_is_refused(rescued, number, about, value, said, words):
    """Told in words, with the bound."""
    with pytest.raises(Refusal, match=words):
        rescued(number, about, value, said)
