"""Whatever shaft has a centre hole in each face: no tool meets the centre that carries it, nor the dog that drives it.

The laws are looked at by arithmetic of their own: places along each move and
along the tool's lower edge, against the cone of the centre. They know neither
the dry run's overlays nor the choice of a centre.
"""

from __future__ import annotations

import itertools
import math
from dataclasses import replace
from pathlib import Path

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tommybar.design.model import Part, RunoutNeed
from tommybar.dryrun import run_part
from tommybar.making.as_machined import as_drilled
from tommybar.making.parts import route_part
from tommybar.making.route_check import route_faults
from tommybar.shapes.features import CentreHole, Cylinder, Dim, TurnedShape
from tommybar.shop import load_shop

SHOP_R = load_shop(Path(__file__).parents[2] / "examples" / "shops" / "shop-r.yaml")
FEW = settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow], derandomize=True)
TAN_30 = math.tan(math.radians(30.0))
TAN_7 = math.tan(math.radians(7.0))  # a knife's trailing edge, as the dry run draws it


@st.composite
def shafts(draw, true=False):
    """Stepped shafts of two to four lands with a centre hole in each face, thickest in the middle or anywhere.

    ``true``: thickest in the middle, and both ends must run truer to each other than a re-grip does.
    """
    sizes = draw(st.lists(st.sampled_from([6, 8, 10, 12, 14, 16]), min_size=2, max_size=4))
    if true:
        sizes = [min(sizes), max(sizes) + 2, min(sizes)]
    elif draw(st.booleans()):
        half = len(sizes) // 2
        sizes = [*sorted(sizes[:half]), *sorted(sizes[half:], reverse=True)]
    lands, z = [], 0.0
    for n, dia in enumerate(sizes):
        long = draw(st.integers(8, 60))
        limits = (dia - 0.018, float(dia)) if draw(st.booleans()) else (None, None)
        edges = [0.5 if draw(st.booleans()) else 0.0 for _ in range(2)]
        first, last = n == 0, n == len(sizes) - 1
        lands.append(
            Cylinder(
                f"land_{n}",
                Dim(float(dia), f"p.land_{n}", "h7" if limits[0] else "", *limits),
                z,
                z + long,
                edges[0] if first else 0.0,
                edges[1] if last else 0.0,
            )
        )
        z += long
    pilot = 1.6 if min(sizes[0], sizes[-1]) < 8 else draw(st.sampled_from([1.6, 2.5]))
    centres = (CentreHole("a", "A", "A", pilot), CentreHole("b", "B", "A", pilot))
    needs = (RunoutNeed("land_0", lands[-1].name, 0.008 if true else draw(st.sampled_from([0.008, 0.05]))),)
    shape = TurnedShape(Dim(z, "p.length"), tuple(lands), centres=centres)
    return Part("p", "turned", "mild steel", 1, shape, needs)


@st.composite
def shops(draw):
    """The reference shop with one, two or all of its tail centres."""
    kinds = draw(
        st.sampled_from([("dead", "half", "running"), ("half",), ("dead",), ("running",), ("dead", "half")])
    )
    return replace(SHOP_R, tail_centres=tuple(c for c in SHOP_R.tail_centres if c.kind in kinds))


def planned(part, shop):
    """The making of a part, and its dry run where there are cards."""
    making = route_part(part, {}, shop)
    run = run_part(as_drilled(part, shop), making.blank, making.cards, shop) if making.cards else None
    return making, run


def rises(tail, z):
    """Radius of a centre on the tool's side, so far beyond the face."""
    beyond = z - tail.at
    if beyond < 0:
        return 0.0
    if beyond > tail.long - tail.mouth / 2 / TAN_30:
        return tail.body / 2
    return tail.mouth / 2 if tail.kind == "half" else min(tail.nose / 2, tail.mouth / 2 + beyond * TAN_30)


def places(step, tool):
    """Places along every move and along the tool's lower edge."""
    for one, other in itertools.pairwise(step.moves):
        for n in range(9):
            z, r = one.z + (other.z - one.z) * n / 8, one.r + (other.r - one.r) * n / 8
            if step.tool_kind == "knife":
                for m in range(9):
                    along = tool.shank * m / 8
                    yield z + along, r + along * TAN_7
            elif step.tool_kind == "chamfer":
                for m in range(-4, 5):
                    along = tool.shank / 2 * m / 4
                    yield z + along, r + abs(along)
            elif step.tool_kind in ("groove", "parting"):
                yield z, r


@FEW
@given(shafts(), shops())
def test_no_tool_meets_the_centre_that_carries_the_work(part, shop):
    """Either the plan stops at it, or every place of every cut is clear of the cone."""
    making, run = planned(part, shop)
    told = run is not None and any(f.number == 515 for f in run.findings)
    tools = {tool.letter: tool for tool in shop.tools}
    met = []
    for card in making.cards:
        tail, up = card.hold.tail, card.hold.drive is not None
        for step in card.steps:
            up = up or step.tool == "tailstock centre"
            if (
                tail is None
                or not up
                or step.tool_kind in ("parting", "die")
                or step.tool_letter not in tools
            ):
                continue
            met += [step.key for z, r in places(step, tools[step.tool_letter]) if r < rises(tail, z) - 1e-6]

    assert bool(met) <= told
    if shop.tail_centres[-1:] and any(c.kind == "half" for c in shop.tail_centres):
        assert not told  # past a half centre every knife of the drawer gets to the mouth


@FEW
@given(shafts(true=True))
def test_between_centres_both_ends_are_centred_first_and_nothing_is_cut_at_the_dog(part):
    """And the route replays, the dry run is clean, and what must run true is within its need."""
    making, run = planned(part, SHOP_R)
    if any(f.severity == "stop" for f in making.findings):
        return
    assert route_faults(part, making.cards, SHOP_R) == ()
    assert [f.words for f in run.findings if f.severity == "stop"] == []
    done = set()
    for card in making.cards:
        drive = card.hold.drive
        if drive is not None:
            assert {"face A", "face B", "a", "b"} <= done
            cut = [
                move.z for step in card.steps if step.tool_kind in ("knife", "groove") for move in step.moves
            ]
            assert min(cut) >= drive.front + 2.0 - 1e-6
            assert drive.front <= drive.end + drive.wide + part.shape.length.value
        for forecast in card.runout:
            assert forecast.expected <= forecast.within
        done |= {step.feature for step in card.steps}
