"""The tail centre, its barrel and the tailstock in the way of the tools; figures by hand beside each."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tommybar.dryrun.keep_out import fixture
from tommybar.dryrun.run import run_part
from tommybar.making.cards import Card, Drive, Hold, Step, Tail

from .bench import FACE, SHOP, bar, card, part, pin, step, turn, way

DEAD = Tail("dead", 3.35, 18.0, 24.0, 18.0, 25.0, 46.0, 54.0)
HALF = replace(DEAD, kind="half")
HOLD = Hold("three-jaw, inside jaws", "inside jaws", "blank", 20.0, 20.0, 31.0, 0.06, "", tail=DEAD)


def carried(steps: list[Step], tail: Tail) -> Card:
    """A card whose free end the tailstock carries from its second step on."""
    one = card(steps)
    return replace(one, hold=replace(one.hold, tail=tail))


def up(number: int) -> Step:
    """The step that brings the centre up."""
    return replace(step(number, "hand", ()), tool="tailstock centre")


def stops(tail: Tail, *cuts: Step, facing: bool = True) -> list[str]:
    """Words of the collisions with the tail."""
    first = [step(1, "knife", FACE, "A")] if facing else []
    steps = [*first, up(2), *cuts]
    run = run_part(part(pin(8.0)), bar(), (carried(steps, tail),), SHOP)
    return [f.words for f in run.findings if f.number == 515]


def test_a_60_degree_point_rises_from_the_mouth_to_its_nose():
    """From 1.675 to 9 over 7.325 / tan 30 = 12.69; the barrel begins 24 - 1.675 / tan 30 = 21.10 from the face."""
    shapes = dict(fixture(HOLD, 1.0, SHOP).tail)

    corners = {(round(z, 2), round(r, 3)) for z, r in shapes["tail centre"].exterior.coords}
    assert {(0.0, 0.0), (0.0, 1.675), (12.69, 9.0), (21.1, 9.0), (21.1, 0.0)} <= corners
    assert shapes["tailstock barrel"].bounds == pytest.approx((21.10, 0.0, 67.10, 12.5), abs=0.01)
    assert shapes["tailstock"].bounds[0] == pytest.approx(67.10, abs=0.01)


def test_a_half_centre_stays_at_its_mouth_and_a_running_one_has_a_body():
    """Ground away to 1.675; a body of 36 in front of the barrel."""
    half = dict(fixture(replace(HOLD, tail=HALF), 1.0, SHOP).tail)["tail centre"]
    running = replace(DEAD, kind="running", nose=14.0, long=18.0, body=36.0)
    body = dict(fixture(replace(HOLD, tail=running), 1.0, SHOP).tail)["tail centre"]

    assert max(r for z, r in half.exterior.coords if z < 21.0) == pytest.approx(1.675)
    assert body.bounds[3] == 18.0
    assert body.bounds[2] == pytest.approx(18.0 - 2.901 + 30.0, abs=0.01)


def test_a_knife_that_turns_8_mm_meets_a_dead_centre_but_not_a_half_one():
    """Its corner starts at z 1.5, its shank of 8 ends at 9.5; there the point is 1.675 + 9.5 tan 30 = 7.16, the knife 5.0."""
    cut = step(3, "knife", turn(4.0, -15.0), "A")

    assert any("tail centre" in words for words in stops(DEAD, cut))
    assert stops(HALF, cut) == []


def test_at_16_mm_the_dead_centre_is_clear():
    """8 + 8 tan 7 = 8.98 at the heel of the shank, above 7.16."""
    assert stops(DEAD, step(3, "knife", turn(8.0, -15.0), "A")) == []


def test_facing_to_the_axis_runs_into_any_centre():
    """While it carries the work; before it is brought up the same cut is free."""
    again = step(3, "knife", FACE, "A")

    assert stops(HALF, again) and stops(DEAD, again)
    assert stops(DEAD) == []


def test_it_is_drawn_back_for_parting():
    """The blade goes to the axis behind the part, and the tailstock is away."""
    off = step(3, "parting", way((-20.0, 12.0), (-20.0, -0.4), (-20.0, 12.0, "rapid")), "P")

    assert stops(DEAD, off) == []


def test_a_barrel_that_stands_out_too_little_lets_the_post_into_the_tailstock():
    """Post from z 4.5 to 64.5, 20 above its corner: r 28. A casting of 60 diameter that begins at 26 is in its way."""
    near = replace(HALF, out=5.0, casting=60.0)
    cut = step(3, "knife", turn(8.0, -15.0), "A")

    assert any("runs into the tailstock" in words for words in stops(near, cut))
    assert stops(replace(near, out=45.0), cut) == []


def test_a_dog_and_its_plate_keep_out_where_they_turn():
    """Driven end at -40: the dog 12 wide from -40 to -28, outside 26; the plate 6 behind the end."""
    drive = Drive(-28.0, 12.0, 20.0, 52.0, 100.0, -40.0)
    hold = replace(
        HOLD, device="between centres", jaws="", sticks_out=28.0, length=12.0, drive=drive, tail=HALF
    )
    held = fixture(hold, 0.0, SHOP)
    shapes = {name: shape.bounds for name, shape in held.keep_out}

    assert shapes == {
        "driving dog": (-40.0, 10.0, -28.0, 26.0),
        "catch plate": (-58.0, 0.0, -46.0, 50.0),
        "head centre": pytest.approx((-46.0, 0.0, -40.0, 1.675 + 6.0 * 0.57735)),
    }
    assert (held.grip, held.radius) == ((-40.0, -28.0), 10.0)


def test_a_knife_that_goes_on_into_the_dog_is_told():
    """To z -30 with the dog's front at -28."""
    drive = Drive(-28.0, 12.0, 20.0, 52.0, 100.0, -40.0)
    long = step(1, "knife", turn(8.0, -30.0, near=1.5), "A")
    one = card([long], out=29.0, device="between centres", jaws="")
    one = replace(one, hold=replace(one.hold, drive=drive, tail=replace(HALF), length=12.0))
    run = run_part(part(pin(16.0, 40.0)), bar(finished=40.0, long=41.0), (one,), SHOP)

    assert any(f.number == 501 and "driving dog" in f.words for f in run.findings)


def test_only_a_close_pass_of_the_centre_is_told_and_it_hides_no_close_pass_of_the_jaws():
    """8 mm in radius past the dead point: heel 8.98, point 7.16; 6.3: heel 7.28, 0.1 off, nearer than 0.25."""
    wide = carried([step(1, "knife", FACE, "A"), up(2), step(3, "knife", turn(8.0, -29.5), "A")], DEAD)
    near = carried([step(1, "knife", FACE, "A"), up(2), step(3, "knife", turn(6.3, -15.0), "A")], DEAD)
    far, close = (run_part(part(pin(8.0)), bar(), (one,), SHOP) for one in (wide, near))

    assert [f.number for f in far.findings if f.number in (514, 516)] == [514]  # 0.5 mm from the jaws
    assert [f.number for f in close.findings if f.number in (514, 515, 516)] == [516]
    assert close.cards[0].smallest_gap < 0.25 and "tail centre" in close.cards[0].gap_where
    assert far.cards[0].smallest_gap == pytest.approx(0.5) and "jaws" in far.cards[0].gap_where
