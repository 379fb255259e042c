"""Known routes through the dry run: what is right is silent, what is wrong says exactly one thing."""

from __future__ import annotations

import math
import time
from dataclasses import replace

import pytest
from shapely import Polygon, box
from shapely.errors import GEOSException

from tommybar.dryrun.cutting import cut_step
from tommybar.dryrun.run import run_part
from tommybar.dryrun.runs import PartRun
from tommybar.dryrun.sweep import counter_clockwise
from tommybar.dryrun.tool_shapes import ToolShape
from tommybar.making.cards import Card, Move, Step
from tommybar.shapes.features import Bore, Cylinder, Dim, Groove, Recess, TurnedShape
from tommybar.shapes.moments import ring_of_revolution

from .bench import FACE, PART_OFF, SHOP, bar, card, part, pin, step, turn, way


def numbers(run: PartRun) -> list[int]:
    return [finding.number for finding in run.findings]


def good_pin() -> list[Step]:
    """Face, turn to 16, part off: a pin 16 x 20 from a bar of 20."""
    return [
        step(1, "knife", FACE, "A"),
        step(2, "knife", turn(8.0, -22.5), "A"),
        step(3, "parting", PART_OFF, "P"),
    ]


def ran(steps: list[Step], shape: TurnedShape | None = None, **held: object) -> PartRun:
    shape = shape or pin()
    return run_part(part(shape), bar(), (card(steps, **held),), SHOP)  # type: ignore[arg-type]


def assert_conserved(run: PartRun) -> None:
    """What was removed, by its own rings, what was put aside and what is left make the blank again."""
    chips = sum(
        ring_of_revolution(list(ring[:-1])).volume
        for one in run.cards
        for done in one.steps
        for ring in done.removed
    )
    aside = sum(one.separated_volume for one in run.cards)
    assert chips + aside + run.left_volume == pytest.approx(run.blank_volume, rel=1e-6)
    assert run.removed_volume == pytest.approx(chips, rel=1e-6, abs=1e-6)


def test_a_good_route_is_silent_and_leaves_exactly_the_part() -> None:
    """Nothing found, nothing left over, nothing missing, nothing lost."""
    run = ran(good_pin())

    assert numbers(run) == []
    assert run.left_volume == pytest.approx(math.pi * 64 * 20, rel=1e-9)
    assert (run.surplus_volume, run.missing_volume) == (0.0, 0.0)
    assert_conserved(run)
    # the chuck side of the parting cut: 16 turned to -22.5, the bar's own 20 beyond
    assert run.cards[0].separated_volume == pytest.approx(math.pi * (64 * 0.5 + 100 * (59 - 22.5)), rel=1e-9)
    # the knife comes to 22.5 from the face, the blade's holder to 20 + 2 + 1; the jaws start at 30
    assert run.cards[0].smallest_gap == pytest.approx(7.0, abs=0.01)


def test_doing_a_step_twice_takes_nothing_more() -> None:
    """Idempotence: the second time removes nothing."""
    steps = good_pin()
    run = ran([steps[0], steps[1], replace(steps[1], number=3), steps[2]])

    assert run.cards[0].steps[2].removed_volume == pytest.approx(0.0, abs=1e-9)
    assert numbers(run) == []


def test_a_quick_move_through_metal_is_said_once() -> None:
    """The infeed at the wrong place: one finding 502, on that step."""
    wrong = way((1.5, 11.0), (-5.0, 11.0, "rapid"), (-5.0, 8.0, "rapid"), (-22.5, 8.0), (-22.5, 11.0))
    steps = [step(1, "knife", FACE, "A"), step(2, "knife", wrong, "A")]
    run = ran([*steps, step(3, "knife", turn(8.0, -22.5), "A"), step(4, "parting", PART_OFF, "P")])

    assert numbers(run) == [502]
    assert run.findings[0].step == 2
    assert_conserved(run)


def test_a_gouge_is_said_with_its_depth() -> None:
    """0.1 mm too deep on radius over the whole pin: 500, and at the end metal is missing."""
    steps = good_pin()
    steps[1] = step(2, "knife", turn(7.9, -22.5), "A")
    run = ran(steps)

    assert numbers(run) == [500, 509]
    assert "0.1" in run.findings[0].figure
    assert run.missing_volume == pytest.approx(math.pi * (64 - 7.9**2) * 20, rel=1e-6)


def test_a_tool_that_runs_into_the_jaws_says_so_and_how_near_others_came() -> None:
    """A cut to 12 mm beyond the jaw fronts."""
    steps = good_pin()
    steps[1] = step(2, "knife", turn(8.0, -31.5), "A")
    run = ran(steps)

    assert [f.number for f in run.findings if f.severity == "stop"] == [501, 505]
    assert "jaws" in run.findings[0].words
    assert run.cards[0].smallest_gap == 0.0


def test_a_tool_that_passes_close_to_the_jaws_is_a_caution() -> None:
    """Half a millimetre from the jaws: 514, no stop."""
    steps = good_pin()
    steps[1] = step(2, "knife", turn(8.0, -29.5), "A")
    run = ran(steps)

    assert [(f.number, f.severity, f.figure) for f in run.findings] == [(514, "caution", "0.5 mm")]


def test_a_blade_that_is_too_short_says_so() -> None:
    """A blade of 14 reach in a bar of 40 brings its block into the metal."""
    shape = pin(40.0)
    steps = [
        step(1, "knife", way((2.0, 21.0), (0.0, 21.0, "rapid"), (0.0, -0.4), (1.0, -0.4)), "A"),
        step(2, "parting", way((-20.0, 22.0), (-20.0, -0.4), (-20.0, 22.0, "rapid")), "P"),
    ]
    run = run_part(part(shape), bar(40.0), (card(steps, dia=40.0, jaws="outside jaws", grip=20.0),), SHOP)

    assert numbers(run) == [504]
    assert "too short" in run.findings[0].words
    assert run.findings[0].figure == "reach 14 mm"


def test_a_thick_bar_in_a_small_bore_touches_the_far_wall() -> None:
    """A bar of 8 that stands out 1.6 needs 9.6 mm: in a 9 mm hole it rubs, in a 10 mm one it does not."""

    def bored(hole: float) -> PartRun:
        shape = TurnedShape(
            Dim(20.0),
            (Cylinder("body", Dim(20.0), 0.0, 20.0),),
            bores=(Bore("bore", Dim(hole + 0.4), "A", 20.0, True),),
        )
        r, inside = hole / 2 + 0.2, hole / 2 - 0.1
        moves = way((2, inside), (2, r, "rapid"), (-22, r), (-22, inside), (2, inside, "rapid"))
        steps = [
            step(1, "knife", FACE, "A"),
            step(2, "drill", way((20, 0), (2, 0, "rapid"), (-28, 0), (20, 0, "rapid")), size=hole),
            step(3, "boring", moves, "D"),
            step(4, "parting", way((-20, 12), (-20, 3), (-20, 12, "rapid")), "P"),
        ]
        return ran(steps, shape)

    assert numbers(bored(10.0)) == []
    assert numbers(bored(9.0)) == [503]


def test_turning_the_grip_away_says_so() -> None:
    """A second card that grips what its first step takes away."""
    shape = TurnedShape(
        Dim(20.0), (Cylinder("head", Dim(20.0), 0.0, 8.0), Cylinder("stem", Dim(10.0), 8.0, 20.0))
    )
    steps = [step(1, "knife", turn(5.0, -32.0, 2.0), "A")]
    run = run_part(part(shape), bar(), (card(steps, free="B", out=24.0),), SHOP)

    assert 505 in numbers(run)
    assert run.findings[[f.number for f in run.findings].index(505)].bound.startswith("20.0 mm")


def test_a_surface_that_is_not_there_cannot_be_gripped() -> None:
    """The card says 18 mm, the bar measures 20."""
    run = ran(good_pin(), dia=18.0)

    assert numbers(run)[0] == 506
    assert "20.00 mm" in run.findings[0].words


def test_forgotten_metal_and_corner_radius_are_told_apart() -> None:
    """A shoulder turned with a 0.4 nose keeps a fillet; a shoulder not turned at all is forgotten."""
    shape = TurnedShape(
        Dim(20.0), (Cylinder("stem", Dim(10.0), 0.0, 8.0), Cylinder("head", Dim(16.0), 8.0, 20.0))
    )
    start = good_pin()[:2]
    stem = [step(n, "knife", turn(r, -8.0, away=9.0), "B") for n, r in ((3, 7.0), (4, 6.0), (5, 5.0))]
    end = [step(6, "parting", PART_OFF, "P")]

    rounded = ran([*start, *stem, *end], shape)
    assert numbers(rounded) == [508]
    fillet = (1 - math.pi / 4) * 0.16
    radius = 5.0 + 0.4 * (1 - 0.7766)  # centroid of the fillet, 0.2234 r from each side
    assert rounded.surplus_volume == pytest.approx(2 * math.pi * radius * fillet, rel=0.02)

    forgot = ran([*start, *end], shape)
    assert numbers(forgot) == [507]
    assert forgot.surplus_volume == pytest.approx(math.pi * (64 - 25) * 8, rel=1e-6)


def test_a_part_that_is_not_cut_off() -> None:
    """The blade stops at 2 mm radius: 511, and the stub stands over the part."""
    steps = good_pin()
    steps[2] = step(3, "parting", way((-20.0, 12.0), (-20.0, 2.0), (-20.0, 12.0, "rapid")), "P")

    assert numbers(ran(steps)) == [511, 507]


def test_turning_round_keeps_the_metal_and_the_second_face_is_cut_to_length() -> None:
    """Parted 0.3 long, turned round, faced: the part is finished and nothing was lost."""
    first = good_pin()
    first[2] = step(3, "parting", way((-20.3, 12.0), (-20.3, -0.4), (-20.3, 12.0, "rapid")), "P")
    second = [step(1, "knife", way((1.0, 10.0), (0.0, 10.0, "rapid"), (0.0, -0.4), (1.0, -0.4)), "A")]
    cards: tuple[Card, ...] = (
        card(first),
        card(second, dia=16.0, grip=14.0, out=6.3, free="B", number=2),
    )
    run = run_part(part(pin()), bar(), cards, SHOP)

    assert numbers(run) == []
    assert run.left_volume == pytest.approx(math.pi * 64 * 20, rel=1e-9)
    assert max(z for z, _ in run.cards[1].before[0]) == pytest.approx(0.3)
    assert_conserved(run)


def test_a_recess_and_a_groove_have_their_closed_volumes() -> None:
    """Ring 8 deep between 26 and 70, its last sweep exact; a groove of 1.5 beside a shoulder."""
    shape = TurnedShape(
        Dim(20.0),
        (Cylinder("rim", Dim(90.0), 0.0, 20.0),),
        grooves=(Groove("neck", 9.0, 10.5, 86.0),),
        recesses=(Recess("recess", "A", 26.0, 70.0, 8.0),),
    )
    plunges = [(1.0, 34.8)]
    moves = list(way(*plunges))
    for n in range(9):
        r = 34.8 - n * (34.8 - 16.2) / 8
        moves += way((1.0, r, "rapid"), (-7.8, r), (1.0, r, "rapid"))
    moves += way((1.0, 35.0, "rapid"), (-8.0, 35.0), (-8.0, 16.0), (1.0, 16.0))
    steps = [
        step(1, "knife", way((2, 47), (0, 47, "rapid"), (0, -0.4), (1, -0.4), (1, 47, "rapid")), "A"),
        step(2, "recess", moves, "R"),
        step(3, "groove", way((-9.5, 47), (-9.5, 43), (-9.5, 47), (-9, 47), (-9, 43), (-9, 47)), "G"),
    ]
    blank = bar(90.0, 21.0, 1.0)
    run = run_part(
        part(shape), blank, (card(steps, dia=90.0, grip=8.0, out=13.0, jaws="outside jaws"),), SHOP
    )

    assert numbers(run) == []
    assert run.cards[0].smallest_gap == pytest.approx(1.5)  # the groove ends 1.5 from the jaws
    assert run.cards[0].steps[1].removed_volume == pytest.approx(math.pi * (35**2 - 13**2) * 8, rel=1e-9)
    assert run.cards[0].steps[2].removed_volume == pytest.approx(math.pi * (45**2 - 43**2) * 1.5, rel=1e-9)
    assert_conserved(run)


def test_a_recess_tool_too_short_for_its_recess() -> None:
    """A tool of 4 mm reach brought 8 mm deep."""
    shape = TurnedShape(
        Dim(20.0),
        (Cylinder("rim", Dim(90.0), 0.0, 20.0),),
        recesses=(Recess("recess", "A", 64.0, 70.0, 8.0),),
    )
    steps = [
        step(1, "knife", way((2, 47), (0, 47, "rapid"), (0, -0.4), (1, -0.4), (1, 47, "rapid")), "A"),
        step(2, "recess", way((1, 35), (-8, 35), (1, 35)), "S"),
    ]
    run = run_part(
        part(shape), bar(90.0, 21.0), (card(steps, dia=90.0, grip=8.0, out=13.0, jaws="outside jaws"),), SHOP
    )

    assert numbers(run) == [504]


def test_chamfers_and_tools_that_take_nothing() -> None:
    """The flank of a 90 degree point leaves the drawn edge; tap and hand work take nothing."""
    steps = good_pin()
    chamfer = step(3, "chamfer", way((1.0, 9.0), (1.0, 6.0), (1.0, 9.0)), "C")  # tip 8 - 1 - 1 at z 1
    steps = [*steps[:2], chamfer, step(4, "tap", (), size=6.0), replace(steps[2], number=5)]
    shape = TurnedShape(Dim(20.0), (Cylinder("body", Dim(16.0), 0.0, 20.0, 1.0, 0.0),))
    run = ran(steps, shape)

    assert numbers(run) == []
    assert run.cards[0].steps[3].removed_volume == 0.0


def test_an_unknown_tool_is_said() -> None:
    """Never silent: a step of a kind that has no shape yet leaves a note."""
    steps = good_pin()
    steps.insert(2, step(9, "form tool", way((0.0, 9.0), (0.0, 8.0)), ""))

    assert numbers(ran(steps)) == [513]


def test_a_deep_roughing_is_fast() -> None:
    """Sixty passes, 240 moves: well under the time for a whole part."""
    passes = [step(n + 2, "knife", turn(9.95 - n * 0.1, -22.5), "B") for n in range(60)]
    began = time.perf_counter()
    run = ran([step(1, "knife", FACE, "A"), *passes], pin(8.0))
    took = time.perf_counter() - began

    assert took < 0.6
    assert_conserved(run)


def test_a_step_that_grows_without_end_is_left_out_and_said(monkeypatch: pytest.MonkeyPatch) -> None:
    """With a ceiling of 4 corners the first cut is given up: 512, nothing removed, the rest goes on."""
    monkeypatch.setattr("tommybar.dryrun.cutting.MOST_CORNERS", 4)
    run = ran(good_pin()[:1])

    assert numbers(run)[0] == 512
    assert run.removed_volume == 0.0


def test_an_overlay_that_fails_is_tried_once_more_on_a_grid(monkeypatch: pytest.MonkeyPatch) -> None:
    """A failing plain overlay is marked with a note; the cut is the same to a nanometre."""
    plain = Polygon.difference

    def failing(self: Polygon, other: Polygon, grid_size: float | None = None) -> object:
        if grid_size is None:
            raise GEOSException("made to fail")
        return plain(self, other, grid_size=grid_size)

    edge = counter_clockwise([(0, 0), (1, 0), (1, 9), (0, 9)])
    moves = (Move(5, 2), Move(-5, 2))
    expected = cut_step(box(-20, 0, 0, 8), ToolShape("test", (edge,)), moves)
    monkeypatch.setattr("shapely.geometry.base.BaseGeometry.difference", failing)
    done = cut_step(box(-20, 0, 0, 8), ToolShape("test", (edge,)), moves)

    assert (expected.retried, done.retried) == (0, 1)
    assert done.work.area == pytest.approx(expected.work.area, abs=1e-5)
