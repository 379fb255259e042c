"""Realities 10, 15, 16 and 17: threads."""

import pytest

from tommybar.facts.threads import thread
from tommybar.refusals import Refusal

from ..conftest import DESIGN, SHOP
from .conftest import named, stands, warned

INCH_SCREW = SHOP.replace("leadscrew_pitch: 3\n", "leadscrew_pitch: 3.175\n").replace(
    "dies: [M2, M2.5, M3, M4, M5, M6, M8, M10]", "dies: [M2, M2.5, M3, M4, M5, M8, M10]"
)


def test_a_metric_thread_on_an_inch_screw_has_its_error_told():
    """1 mm from a screw of 8 a inch without a wheel of 127: the nearest train and its error."""
    design = DESIGN.replace("{name: thread, thread: crank_thread,", "{name: thread, thread: M6,")

    (one,) = warned(10, stands(shop=INCH_SCREW, design=design))

    assert one.words.startswith("M6 of shaft.thread has no die")
    assert "ppm" in one.figure
    assert one.figure == "+125 ppm"  # 20/80 x 63/50 of 3.175 mm is 1.000125 mm


def test_with_a_die_or_an_exact_train_nothing_is_told():
    """Shop R has the die; with a metric screw the pitch of 1 mm comes out exactly."""
    exact = INCH_SCREW.replace("leadscrew_pitch: 3.175", "leadscrew_pitch: 3")

    assert warned(10, stands()) == []
    assert (
        warned(
            10, stands(shop=exact, design=DESIGN.replace("thread: crank_thread, long", "thread: M6, long"))
        )
        == []
    )


def test_the_nearest_thread_by_strength_is_offered(rescued):
    """Without M6, M5 has 14.2 of 20.1 mm2 (71 %, ISO 898-1 areas); crank and shaft change together."""
    found = rescued(10, "shaft.thread")

    five = named(found, "Take M5 in place of M6")
    share = thread("M5").stress_area / thread("M6").stress_area
    assert f"{100 * share:.0f} %" in five.words
    assert {card.part for card in five.changes.cards} == {"shaft", "crank"}
    assert five.stops == ()
    assert five.change["pins"] == {"crank_thread": "M5"}
    assert found[-1].stops  # the one that goes without die and tap


def test_a_thread_that_breaks_out_is_foreseen():
    """M5 tapped 3 mm from the edge of the crank's disc is told by the check of walls."""
    design = DESIGN.replace(
        "throw:        {is: 16, follows: scale", "throw:        {is: 19.5, follows: scale"
    )

    assert any(one.part == "crank" and one.feature == "pin" for one in warned(15, stands(design=design)))
    assert not any(one.part == "crank" for one in warned(15, stands()))


def test_after_breaking_out_the_thread_is_smaller_or_turned_on(rescued):
    """M3 for the grub screw, or the same hole 90 degrees on; the wheel is kept."""
    found = rescued(15, "wheel.grub")

    smaller, turned = named(found, "tap M3"), named(found, "90 deg on")
    assert smaller.plan.design.part("wheel").shape.cross_holes[0].thread == "M3"
    assert turned.plan.design.part("wheel").shape.cross_holes[0].angle == 90.0
    assert smaller.lost == turned.lost == ()


def test_deep_threads_are_told():
    """12 mm of M5 in the base is 2.4 diameters; 8 mm of M6 in the crank is not told."""
    found = warned(16, stands())

    assert {one.part for one in found} == {"base"}
    assert "2.4 diameters" in found[0].words


def test_a_broken_tap_moves_the_pattern_by_half_its_pitch(rescued):
    """One hole on a circle: half a turn; or the next larger thread through the spoilt one."""
    found = rescued(16, "crank.pin")

    on, larger = named(found, "on by 180 deg"), named(found, "tap M5")
    assert on.plan.design.part("crank").shape.circle_holes[0].start_angle == pytest.approx(
        stands().plan.design.part("crank").shape.circle_holes[0].start_angle + 180
    )
    assert {card.part for card in larger.changes.cards} == {"crank", "handle"}


def test_a_blind_thread_that_has_no_room_is_told():
    """M5 x 12 with three pitches of lead and its point needs 15.7 mm; a wall of 16 leaves less than half one."""
    design = DESIGN.replace("deep: 12", "deep: 46")

    found = warned(17, stands(design=design))

    assert {one.part for one in found} == {"base"}
    assert "there are 50.0 mm" in found[0].words


def test_a_shallow_thread_is_left_or_bottomed(rescued):
    """At 9 mm the screw of the joint bottoms, which is told as a stop; a bottoming tap costs ten minutes."""
    found = rescued(17, "base.front", 9.0)

    assert found[0].words == "Take base.front to its depth with a bottoming tap."
    assert found[0].minutes == 10.0
    assert any("bottoms in base.front" in words for words in found[1].stops)
    holes = found[1].plan.design.part("base").shape.holes
    assert {hole.depth for hole in holes if hole.name.startswith("front")} == {9.0}


@pytest.mark.parametrize(
    ("number", "about", "value", "words"),
    [
        (10, "wheel.rim", 0, 'no thread "wheel.rim"'),
        (15, "shaft.nothing", 0, 'no thread "shaft.nothing"'),
        (17, "base.front", 0, "must be above 0"),
        (17, "wheel.grub", 5, "no depth of its own"),
    ],
)
def test_what_is_no_such_thread_is_refused(rescued, number, about, value, words):
    """Named wrongly, it is told."""
    with pytest.raises(Refusal, match=words):
        rescued(number, about, value)
