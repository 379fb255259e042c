"""Where pieces stand: figures by hand from the mechanism's own sizes."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import pytest

from tommybar.assembly.links import links_of
from tommybar.assembly.placing import assembled, placed
from tommybar.design.model import ScrewRelation
from tommybar.shapes.features import Bore, Cylinder, Dim, TurnedShape
from tommybar.shapes.solids.frames import Frame, Vector, point

from .mechanism import POST, SPINDLE, mechanism, part, with_shape


def at(frame: Frame, spot: Vector) -> Vector:
    """A point of a part where it stands, rounded."""
    x, y, z = (round(one, 6) + 0.0 for one in point(frame, spot))
    return x, y, z


def test_posts_stand_up_with_their_holes_over_the_threads() -> None:
    """The bore of each post is 40 up its 50, the foot holes 5 up the foot's 10: the axis lies at z = 40."""
    whole = assembled(mechanism())
    front, rear = whole.of("post", 1), whole.of("post", 2)

    assert front and rear
    # both bores lie over the middle of the foot, 30 along it; the posts' inner faces on its front and back
    assert at(front.frame, (40.0, 12.0, 0.0)) == (30.0, 0.0, 40.0)
    assert at(rear.frame, (40.0, 12.0, 0.0)) == (30.0, 30.0, 40.0)
    assert at(front.frame, (0.0, 12.0, 0.0))[2] == 0.0  # the foot of the post is level with the foot


def test_bushes_stand_with_their_flanges_inside() -> None:
    """Flanges inside leave 0.2 end float, outside 4.2: the design's float chooses."""
    whole = assembled(mechanism())
    first, second = whole.of("bush", 1), whole.of("bush", 2)

    assert first and second
    assert sorted([at(first.frame, (0, 0, 0))[1], at(second.frame, (0, 0, 0))[1]]) == pytest.approx(
        [2.0, 28.0]
    )
    assert sorted([at(first.frame, (0, 0, 8))[1], at(second.frame, (0, 0, 8))[1]]) == pytest.approx(
        [-6.0, 36.0]
    )


def test_the_spindle_bears_on_a_flange_and_the_wheel_is_told_to_be_free() -> None:
    """The spindle's shoulder lies on the first flange; where the wheel stands along the seat nothing says."""
    whole = assembled(mechanism())
    spindle, wheel = whole.of("spindle"), whole.of("wheel")

    assert spindle and wheel
    shoulders = sorted([at(spindle.frame, (0, 0, 10))[1], at(spindle.frame, (0, 0, 35.8))[1]])
    assert shoulders == pytest.approx([2.0, 27.8])
    assert at(spindle.frame, (0, 0, 0))[::2] == (30.0, 40.0)
    assert wheel.open == "nothing says where along 13.8 mm"
    assert any("wheel: nothing says where along 13.8 mm" in words for words in whole.said)


def test_what_nothing_places_is_said() -> None:
    """A part without a relation is left out, with the reason."""
    design = mechanism()
    lone = part("knob", TurnedShape(Dim(5.0), (Cylinder("head", Dim(9.0), 0.0, 5.0),)))
    whole = assembled(replace(design, parts=(*design.parts, lone)))

    assert whole.of("knob") is None
    assert [(one.part, one.reason) for one in whole.unplaced] == [
        ("knob", "no relation says what it is joined to")
    ]


def test_holes_that_do_not_match_are_said() -> None:
    """Posts drilled 1 mm wider than the threads cannot lie on them; the distance is told."""
    wide = replace(POST, holes=(POST.holes[0], replace(POST.holes[1], y=3.5), replace(POST.holes[2], y=20.5)))
    whole = assembled(with_shape(mechanism(), "post", wide))

    assert any("post.foot_1 on foot.front_1" in words and "apart" in words for words in whole.said)


def test_a_shoulder_too_long_for_the_gap_is_said() -> None:
    """With 26.5 of seat the shoulders stand 0.5 in a flange: more than the float."""
    lands = (
        Cylinder("tail", Dim(5.0), 0.0, 10.0),
        Cylinder("seat", Dim(8.0), 10.0, 36.5),
        Cylinder("nose", Dim(5.0), 36.5, 46.7),
    )
    whole = assembled(with_shape(mechanism(), "spindle", replace(SPINDLE, length=Dim(46.7), outside=lands)))

    assert any("the shoulder stands 0.5 mm in the other part" in words for words in whole.said)


def test_a_thread_that_only_one_part_takes_is_placed_and_said() -> None:
    """Two parts that alone have M5 are put together, and it is told that no relation says so."""
    rod = TurnedShape(
        Dim(30.0),
        (Cylinder("thread", Dim(5.0), 0.0, 10.0, thread="M5"), Cylinder("grip", Dim(9.0), 10.0, 30.0)),
    )
    knob = TurnedShape(
        Dim(8.0),
        (Cylinder("rim", Dim(20.0), 0.0, 8.0),),
        bores=(Bore("hole", Dim(4.2), "A", 8.0, True, thread="M5"),),
    )
    design = replace(mechanism(), parts=(part("rod", rod), part("knob", knob)), fits=(), screws=(), sweeps=())
    whole = assembled(design)

    assert len(whole.placements) == 2
    assert any("both have the thread M5" in words for words in whole.said)


def test_copies_are_dealt_out_in_the_order_written() -> None:
    """The second use of a post's holes belongs to the second post; one post has one link with the foot."""
    screws = [link for link in links_of(mechanism()) if link.kind == "screw"]

    assert [(link.first, link.second, len(link.pairs)) for link in screws] == [
        (("post", 1), ("foot", 1), 2),
        (("post", 2), ("foot", 1), 2),
    ]


def test_one_screw_says_that_the_turn_is_open() -> None:
    """A part held by one screw may be turned about it; that is told."""
    design = replace(
        mechanism(), fits=(), sweeps=(), screws=(ScrewRelation(("post.foot_1",), "foot.front_1", "M4"),)
    )
    place = assembled(design).of("post")

    assert place is not None
    assert place.open == "one screw does not say how it is turned"


def test_pieces_are_pulled_apart_in_order_along_the_axis() -> None:
    """Pulled apart, no two pieces on the axis overlap along it, and their order stays."""
    reach = {"post": (0.0, 6.0), "bush": (0.0, 8.0), "spindle": (0.0, 46.0), "wheel": (0.0, 12.0)}
    spans = []
    for one in placed(mechanism()):
        if one.part in reach:
            ends = [point(one.frame, (0.0, 0.0, z))[1] + one.apart[1] for z in reach[one.part]]
            spans.append((min(ends), max(ends), one.part))
    spans.sort()

    names = [name for _, _, name in spans]
    assert (names[:2], sorted(names[2:4]), names[4:]) == (
        ["post", "bush"],
        ["spindle", "wheel"],
        ["bush", "post"],
    )
    assert all(before[1] < after[0] for before, after in pairwise(spans))
