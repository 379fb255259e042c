"""Scale and pins: what is wished for stands, and what it breaks is told."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tommybar.design import design_from_text
from tommybar.refusals import Refusal
from tommybar.resize import resize, second_choice


def new(resized):
    """New figures by name."""
    return {one.name: one.new for one in resized.rows}


def test_a_scale_stands_whatever_it_breaks(jockey, small_shop):
    """1.0 in the small shop: nothing is changed that could be made, and each broken limit is a stop."""
    found = resize(jockey, small_shop, 1.0, stock="rack")
    stops = {one.words.split(" of ")[0] for one in found.findings if one.severity == "stop"}

    assert found.scale == 1.0
    assert new(found)["drum_dia"] == 100
    assert {"Largest jaws", "Swing over the cross-slide", "Largest round aluminium 6082"} <= stops
    assert all(100 <= one.number < 200 for one in found.findings)


def test_a_design_is_not_enlarged_unless_asked(jockey, small_shop):
    """In a shop of any size the scale stays 1; asked for 1.2 it is 1.2."""
    lathe = replace(small_shop.lathe, swing_cross_slide=500, swing_bed=500)
    jaws = (replace(small_shop.jaws[1], ranges=((10, 400, 10),)),)
    large = replace(small_shop, lathe=lathe, jaws=jaws)

    assert resize(jockey, large, stock="ask").scale == 1.0
    assert new(resize(jockey, large, 1.2, stock="ask"))["drum_dia"] == 120


def test_a_pinned_size_is_never_changed_and_others_are_chosen_round_it(jockey, small_shop):
    """The hub pinned to 24 stays 24; the circle of holes follows it."""
    found = resize(jockey, small_shop, pins={"hub": 24.0}, stock="rack")

    assert (found.scale, new(found)["hub"]) == (0.68, 24.0)
    assert new(found)["ease_circle"] == (24 + 54.5) / 2
    assert next(one.why for one in found.rows if one.name == "hub") == "pinned by the builder"


def test_a_pin_on_the_driving_size_is_the_scale(jockey, small_shop):
    """60 for a drum drawn 100 is scale 0.6, and stands."""
    found = resize(jockey, small_shop, pins={"drum_dia": 60.0}, stock="rack")

    assert found.scale == pytest.approx(0.6)
    assert new(found)["bore"] == 6.0


def test_a_pin_that_breaks_the_design_is_told(jockey, small_shop):
    """A hub of 7 round a bore of 6 at scale 0.68 leaves 0.5 where 2 is asked."""
    found = resize(jockey, small_shop, 0.68, pins={"hub": 7.0, "bore": 6.0}, stock="rack")
    stop = next(one for one in found.findings if one.number == 102)

    assert stop.figure == "1.5 mm short"
    assert stop.bound == "(hub - bore) / 2 >= 2: metal of the hub"


def test_pins_that_leave_no_part_are_refused_with_their_places(jockey, small_shop):
    """A hub pinned to 60 inside a rim of 54.5: the refusal names the scale, and the places in the file."""
    with pytest.raises(Refusal, match=r"At scale 0\.68 .* cannot be made of metal") as told:
        resize(jockey, small_shop, 0.68, pins={"hub": 60.0}, stock="rack")

    assert told.value.complaints[1].place.startswith("parts.drum.turned.recesses.0")


@pytest.mark.parametrize(
    ("wish", "words"),
    [
        ({"scale": 0.1}, "must lie between 0.25 and 4"),
        ({"stock": "steal"}, "must be one of rack, buy, ask"),
        ({"pins": {"hubb": 3.0}}, 'No size is named "hubb"'),
        ({"pins": {"recess": 3.0}}, "is worked out and cannot be chosen"),
    ],
)
def test_nonsense_is_refused(jockey, small_shop, wish, words):
    """A scale, a mode or a pin that cannot be meant, each with its bound."""
    with pytest.raises(Refusal, match=words):
        resize(jockey, small_shop, **wish)


def test_every_size_has_a_row_with_a_reason(jockey, small):
    """All named sizes, in the order of the design, none without a why."""
    assert [one.name for one in small.rows] == [one.name for one in jockey.named]
    assert all(one.why for one in small.rows)


def test_the_designers_preference_goes_before_the_nearest(jockey, small_shop):
    """A bore that prefers 8 gets 8 at 0.68 although 6 is nearer; the collar grows with it."""
    text = jockey.file_text.replace("{is: 10, follows: reamer}", "{is: 10, follows: reamer, prefers: [8]}")
    found = resize(design_from_text(text), small_shop, stock="rack")

    assert (found.scale, new(found)["bore"], new(found)["collar"]) == (0.68, 8.0, 12.0)


def test_a_preference_never_costs_scale(jockey, small_shop):
    """A hub of at least 17 cannot stand round a preferred bore of 8 with 5 of metal: 6 is taken, not less scale."""
    text = jockey.file_text.replace("{is: 10, follows: reamer}", "{is: 10, follows: reamer, prefers: [8]}")
    text = text.replace("(hub - bore) / 2 >= 2,", "(hub - bore) / 2 >= 6,")
    found = resize(design_from_text(text), small_shop, stock="rack")

    assert (found.scale, new(found)["bore"]) == (0.68, 6.0)


def test_bounds_of_a_size_are_kept(jockey, small_shop):
    """A drum of at least 80 and a swing that allows 68 cannot both hold: both are named."""
    text = jockey.file_text.replace("between: [30, 200]", "between: [80, 200]")
    words = resize(design_from_text(text), small_shop, stock="ask").findings[0].words

    assert "drum_dia leaves the bounds" in words
    assert "Swing over the cross-slide of drum" in words


def test_no_second_choice_where_the_first_lands_well(jockey, small_shop):
    """At 0.60 the bore is exact already: nothing smaller is offered."""
    assert second_choice(jockey, small_shop, 0.60, stock="rack") is None


def test_reasons_of_an_inch_design_say_that_they_are_in_millimetres(small_shop):
    """Figures in reasons are millimetres; a design in inches is told so."""
    design = design_from_text(
        "tommybar: 1\ndesign: Disc\nunits: in\nsizes:\n  disc: {is: 4, follows: scale}\nparts:\n  disc:\n"
        "    material: mild steel\n    turned: {length: 0.5, outside: [{name: rim, dia: disc}]}\n"
    )
    row = resize(design, small_shop, stock="ask").rows[0]

    assert row.why == "scaled from 101.6 mm, on the grid"
    assert row.new / 25.4 * 64 == pytest.approx(round(row.new / 25.4 * 64))
