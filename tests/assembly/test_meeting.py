"""Pieces in one another, gaps of what turns, and the order of assembly, by figures of the mechanism."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from tommybar.assembly.interference import overlaps
from tommybar.assembly.order import order_of
from tommybar.assembly.placing import Assembly, Placement, assembled
from tommybar.assembly.sweep import Clearance, clearances
from tommybar.design.joints import SweepRelation
from tommybar.design.model import Purpose, SizedDesign
from tommybar.shapes.features import Bore, Cylinder, Dim, PlateHole, PlateShape, TurnedShape
from tommybar.shapes.solids.frames import shifted, within

from .mechanism import BUSH, SPINDLE, WHEEL, mechanism, part, with_shape


def moved(whole: Assembly, part: str, y: float = 0.0, z: float = 0.0) -> Assembly:
    """The assembly with one part carried elsewhere."""
    return replace(
        whole,
        placements=tuple(
            replace(one, frame=within(shifted(y=y, z=z), one.frame)) if one.part == part else one
            for one in whole.placements
        ),
    )


def test_a_sound_mechanism_has_no_overlap() -> None:
    """Fits at one nominal, faces in contact and pressed bushes share no metal to speak of."""
    assert overlaps(mechanism()) == ()


def test_a_wheel_let_down_into_the_foot_is_found_with_its_volume() -> None:
    """The rim, 20 in radius on an axis at 40, let down 15 reaches 5 into the foot of 10."""
    design = mechanism()
    found = next(
        one
        for one in overlaps(design, moved(assembled(design), "wheel", z=-15.0))
        if {one.first[0], one.second[0]} == {"foot", "wheel"}
    )
    # a segment 5 high of a circle of 20, 12 thick: r^2 acos((r-h)/r) - (r-h) sqrt(2 r h - h^2)
    segment = 400 * math.acos(0.75) - 15 * math.sqrt(175)

    assert found.volume == pytest.approx(12 * segment, rel=5e-3)
    assert found.reach[2] == pytest.approx(5.0, abs=0.02)


def test_a_shaft_too_thick_for_its_bore_is_found() -> None:
    """A seat 0.3 over its bore is no fit: a ring 0.15 thick is shared all along the bore."""
    lands = (
        Cylinder("tail", Dim(5.0), 0.0, 10.0),
        Cylinder("seat", Dim(8.3), 10.0, 35.8),
        Cylinder("nose", Dim(5.0), 35.8, 46.0),
    )
    found = overlaps(with_shape(mechanism(), "spindle", replace(SPINDLE, outside=lands)))

    assert [{one.first[0], one.second[0]} for one in found] == [{"spindle", "wheel"}]
    assert found[0].volume == pytest.approx(math.pi / 4 * (8.3**2 - 64) * 12, rel=2e-2)
    assert found[0].thick == pytest.approx(0.15, abs=0.01)


def test_the_gap_under_the_wheel_counts_at_every_angle() -> None:
    """Axis at 40, rim 20, foot 10 high: 10 are left; the bound is told."""
    found = {(one.moving[0], one.fixed[0]): one for one in clearances(mechanism())}
    under = found["wheel", "foot"]

    assert under.gap == pytest.approx(10.0, abs=under.bound)
    assert under.bound < 0.05
    assert under.wanted == 1.0
    assert not under.meets


def test_a_wheel_too_large_strikes_though_it_does_not_where_it_stands() -> None:
    """A lobe that looks up clears the foot as drawn, and strikes it when it has come round."""
    lobe = replace(WHEEL, outside=(Cylinder("rim", Dim(62.0), 0.0, 12.0),))
    found = {(one.moving[0], one.fixed[0]): one for one in clearances(with_shape(mechanism(), "wheel", lobe))}

    assert found["wheel", "foot"].meets
    assert found["wheel", "foot"].gap == 0.0


@pytest.mark.parametrize(("rim", "gap"), [(20.0, 12.0), (40.0, 9.0), (44.0, 9.0), (58.0, 2.0), (62.0, 0.0)])
def test_what_the_checks_ask_for_is_what_the_whole_answer_says(rim: float, gap: float) -> None:
    """Leaving out what is far from a whole turn changes nothing of what strikes or comes too near."""
    wheel = replace(WHEEL, outside=(Cylinder("rim", Dim(rim), 0.0, 12.0),))
    design = with_shape(mechanism(), "wheel", wheel)
    design = replace(design, sweeps=tuple(replace(one, gap=gap) for one in design.sweeps))

    def told(wanted_only: bool) -> set[tuple[object, ...]]:
        return {
            (one.moving, one.fixed, round(one.gap, 9), one.meets)
            for one in clearances(design, None, wanted_only)
            if one.meets or one.gap - one.bound < gap
        }

    assert told(True) == told(False)
    under = [one for one in told(False) if one[:2] == (("wheel", 1), ("foot", 1))]
    assert bool(under) == (rim / 2 + gap > 30.0)  # the axis stands 30 over the foot


def test_a_slide_is_followed_in_steps() -> None:
    """A wheel slid along its seat strikes the far flange where the gap to it is used up, and nothing before."""
    design = mechanism()
    whole = assembled(design)
    post = SweepRelation(("wheel",), "spindle.seat", ("foot",), 0.5, "slides", (0.0, 5.0))
    free = clearances(replace(design, sweeps=(post,)), whole)
    far = replace(post, travel=(0.0, 30.0), fixed=("bush", "post"))
    struck = clearances(replace(design, sweeps=(far,)), whole)

    assert not any(one.meets for one in free)
    assert any(one.meets for one in struck)
    first = min(one.at for one in struck if one.meets and one.at is not None)
    wheel = whole.of("wheel")
    assert wheel is not None
    # from its place to the far flange, whose inner face lies 28 along
    assert first == pytest.approx(28.0 - 12.0 - min(wheel.frame[7], 28.0 - 12.0), abs=0.1)


def test_a_purpose_without_a_sweep_is_swept_all_the_same() -> None:
    """Parts that turn together are taken round though no relation says so."""
    design = replace(mechanism(), sweeps=(), purposes=(Purpose(("spindle", "wheel"), 200.0),))

    assert any((one.moving[0], one.fixed[0]) == ("wheel", "foot") for one in clearances(design))


def test_the_order_presses_first_and_closes_last() -> None:
    """Bushes are pressed on the bench; the spindle goes in before the second post closes it in."""
    order = order_of(mechanism())
    words = [one.words for one in order.steps]
    place = {name: n for n, one in enumerate(order.steps) for name, _ in one.pieces}

    assert order.possible
    assert order.trapped == ()
    assert [one.lasting for one in order.steps][:2] == ["pressed", "pressed"]
    assert words[0].startswith("Press the bush (1 of 2) into the post (1 of 2).")
    assert place["spindle"] < place["wheel"] < place["post"]
    assert len(order.steps) == 6
    assert order.lasting == (
        "the bush (1 of 2) in the post (1 of 2): pressed",
        "the bush (2 of 2) in the post (2 of 2): pressed",
    )


def test_a_wheel_pressed_between_pressed_flanges_is_trapped() -> None:
    """Flanges outside and inside of both posts: once pressed, a bush cannot leave its post's two flanges."""
    both = replace(
        BUSH,
        length=Dim(10.0),
        outside=(
            Cylinder("flange", Dim(14.0), 0.0, 2.0),
            Cylinder("body", Dim(8.0), 2.0, 8.0),
            Cylinder("rim", Dim(14.0), 8.0, 10.0),
        ),
        bores=(Bore("bore", Dim(5.0), "A", 10.0, True),),
    )
    order = order_of(with_shape(mechanism(), "bush", both))

    assert not order.possible
    assert {("bush", 1), ("post", 1)} <= set(order.stuck)


def test_part_of_a_turn_is_followed_until_it_strikes() -> None:
    """An arm 10 wide swings towards a post 4 across that stands 25 off at 60 degrees.

    They meet when the post's middle is 5 + 2 beside the arm's: sin(60 - a) = 7 / 25, a = 43.74 degrees.
    """
    arm = PlateShape(Dim(40.0), Dim(10.0), Dim(4.0), holes=(PlateHole("hole", "top", 5.0, 5.0, Dim(6.1)),))
    pin = TurnedShape(Dim(10.0), (Cylinder("shank", Dim(6.0), 0.0, 10.0),))
    post = TurnedShape(Dim(10.0), (Cylinder("shank", Dim(4.0), 0.0, 10.0),))
    x, y = 25 * math.cos(math.radians(60)), 25 * math.sin(math.radians(60))
    places = {"arm": shifted(-5.0, -5.0, 3.0), "pin": shifted(), "post": shifted(x, y)}
    whole = Assembly(
        tuple(
            Placement(name, 1, frame, (0.0, 0.0, 0.0), (0.0, 0.0, 1.0), n)
            for n, (name, frame) in enumerate(places.items(), start=1)
        ),
        (),
        (),
    )

    def swung(to: float) -> Clearance:
        sweep = SweepRelation(("arm",), "pin.shank", ("post",), 0.2, "turns", (0.0, to))
        parts = (part("arm", arm), part("pin", pin), part("post", post))
        design = SizedDesign("Arm", "A", "mm", (), parts, sweeps=(sweep,))
        return next(one for one in clearances(design, whole) if one.fixed == ("post", 1))

    angle = 60 - math.degrees(math.asin(7 / 25))
    struck, free = swung(90.0), swung(42.0)

    assert struck.meets
    assert struck.at == pytest.approx(angle, abs=0.2)
    assert not free.meets
    assert free.gap == pytest.approx(25 * math.sin(math.radians(18.0)) - 7, abs=0.02)
