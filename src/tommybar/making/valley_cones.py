"""Cones between larger lands, turned with a knife that stands in the valley beside their small end.

A right-hand knife turns what rises towards the chuck, a left-hand one what
falls towards it, the top slide swivelled to its other side. Either needs the
floor beside the small end to be as wide as its shank. Where it is not, a
blade steps the cone out and a file blends it.
"""

from __future__ import annotations

from dataclasses import dataclass

from tommybar.making.bench import Bench, cutting_minutes, named
from tommybar.making.cards import Move, Pass, Step
from tommybar.making.cones import (
    ON_CENTRE,
    Slant,
    along_side,
    bites_of,
    called,
    check_words,
    cone_measures,
    swivel_words,
)
from tommybar.making.contours import land_contour
from tommybar.making.cuts import feed_for, finishing_passes, roughing_passes
from tommybar.making.dials import travel_words
from tommybar.making.jobs import Job
from tommybar.making.lengths import Mm
from tommybar.making.practice import rule
from tommybar.making.rigidity import allowed_cut
from tommybar.making.workpiece import Workpiece
from tommybar.shapes.features import Cone
from tommybar.shop.model import Tool

STANDS_OUT = (
    20.0  # of a knife beyond its post, where the shop file has no reach; common practice, no source [mm]
)
ROOM = 1.5  # of a valley's floor beside the knife's shank; common practice, no source [mm]
JAWS = 2.0  # from a left-hand knife's shank to the jaws; common practice, no source [mm]
CLEAR = 1.0  # between the post and what stands highest beside the valley; common practice, no source [mm]


@dataclass(frozen=True)
class InValley:
    """The knife of a cone in a valley, and whether it is a left-hand one."""

    tool: Tool
    left: bool


def slant_there(bench: Bench, cone: Cone) -> tuple[Slant, bool]:
    """A cone of the card as one that opens towards the chuck, and whether it was mirrored for that."""
    (near, r_near), *_, (far, r_far) = land_contour(cone, bench.length, bench.option.free).points
    if r_near > r_far:
        return Slant(-far, -near, r_far, r_near), True
    return Slant(near, far, r_near, r_far), False


def knife_for(bench: Bench, cone: Cone) -> InValley | None:
    """The knife that gets at a cone from the valley beside its small end; None where none finds room."""
    slant, left = slant_there(bench, cone)
    highest = max(land_contour(one, bench.length, bench.option.free).largest for one in bench.shape.outside)
    hands = ("left", "both") if left else ("right", "both")
    for tool in sorted(
        (t for t in bench.shop.tools if t.kind == "knife" and t.hand in hands),
        key=lambda t: (t.nose, t.letter),
    ):
        wide = tool.shank + ROOM
        near, far = (-slant.near, -slant.near - wide) if left else (slant.near + wide, slant.near)
        if left and far < bench.option.jaw_front + JAWS:
            continue
        if _floor(bench, near, far) > slant.r_near + 1e-6:
            continue
        if highest - slant.r_near <= (tool.reach or STANDS_OUT) - CLEAR:
            return InValley(tool, left)
    return None


def _floor(bench: Bench, near: float, far: float) -> float:
    """Largest finished radius of the part between two places of the card [mm]."""
    found = [0.0]
    for land in bench.shape.outside:
        contour = land_contour(land, bench.length, bench.option.free)
        top, low = contour.points[0][0], contour.points[-1][0]
        if top > far + 1e-6 and low < near - 1e-6:
            found.append(contour.most(min(near, top), max(far, low)))
    return max(found)


def waits_for_floor(bench: Bench, late: list[Job]) -> list[Job]:
    """Lands for the blade in order, a cone that a left-hand knife turns behind the floor that the knife stands over."""
    lands = {one.name: one for one in bench.shape.outside}
    order = list(late)
    for job in late:
        land = lands[job.feature]
        if not isinstance(land, Cone):
            continue
        found = knife_for(bench, land)
        if found is not None and found.left:
            place = order.index(job)
            if place + 1 < len(order):
                order[place], order[place + 1] = order[place + 1], order[place]
    return order


def turn_in_valley(bench: Bench, cone: Cone) -> bool:
    """Turn a cone with the knife that stands in the valley; False where none finds room or the slide is too short."""
    found = knife_for(bench, cone)
    slant, left = slant_there(bench, cone)
    travel = bench.shop.lathe.top_slide.travel
    if found is None or (0 < travel < slant.side):
        return False
    tool = found.tool
    near, far = (-slant.far, -slant.near) if left else (slant.near, slant.far)
    has = bench.work.largest(near, far)
    highest = max(land_contour(one, bench.length, bench.option.free).largest for one in bench.shape.outside)
    speed = bench.speed(tool, "turning", has, cone.name)
    feed = feed_for(bench.part.material, tool.material, "turning", "finishing")
    small = 2 * slant.r_near
    after = _cut_to(bench.work, slant, left)
    deepest = allowed_cut(bench, tool, after, (near + far) / 2, has, speed)
    leave = rule("cut", "finish_left")
    passes: tuple[Pass, ...] = ()
    start = has
    if has - small > leave + 0.05:
        passes = roughing_passes(has, small + leave, deepest.depth, bench.cross)
        start = passes[-1].to
    limits = cone.limits is not None and cone.limits.toleranced
    passes = (*passes, *finishing_passes(start, small, bench.cross, two=limits or cone.taper != ""))
    offsets = [cut.to / 2 - slant.r_near for cut in passes[:-1]] + [0.0]
    moves = along_side(slant, offsets, tool.nose, has, slant.r_near, shoulder=False)
    moves = [Move(-m.z if left else m.z, m.r, m.rapid) for m in moves]
    over = max(highest, has / 2) + rule("cut", "retract")
    moves = [Move(m.z, over, m.rapid) if m.r >= has / 2 + rule("cut", "retract") - 1e-6 else m for m in moves]
    side = "its other side, for a left-hand knife fed towards the tailstock" if left else "its usual side"
    bench.add(
        Step(
            0,
            f"Turn the {called('taper' if cone.taper else 'cone', cone.name)} from its valley, {len(passes)} cuts",
            cone.name,
            named(tool),
            "knife",
            speed.rpm,
            speed.reached,
            feed,
            f"{slant.half_angle:.2f}",
            "deg from the axis",
            (
                f"{swivel_words(slant.half_angle)} Swivelled to {side}.",
                f"Lock the carriage. The side is {Mm(slant.side):.2f} long: top slide "
                f"{travel_words(bench.shop.lathe.top_slide, slant.side)} each cut, from the small end up.",
                f"Infeed with the cross-slide, last cut {passes[-1].dial} ({bench.cross_words}): {Mm(small):.2f} DIA at Z "
                f"{Mm(-(far if left else near)):.2f}, {Mm(2 * slant.r_far):.2f} at {Mm(-(near if left else far)):.2f}.",
                f"The knife stands {Mm(highest - slant.r_near):.1f} deep between the lands: set it out so far and no further.",
                *bites_of(bench, slant, cone.name),
                check_words(slant, cone),
            ),
            passes,
            cutting_minutes(moves, speed.rpm, feed, len(passes)) + rule("minutes", "measure"),
            why="The floor beside its small end is wide enough for the knife's shank, so it need not be stepped out and filed.",
            cautions=(
                ON_CENTRE,
                "Turn the spindle by hand with the knife at the deepest place: its shank clears both lands.",
                *((deepest.bound,) if deepest.bound else ()),
            ),
            measure=cone_measures(bench, cone, slant),
            moves=tuple(moves),
            tool_letter=tool.letter,
        )
    )
    bench.work = after
    return True


def _cut_to(work: Workpiece, slant: Slant, mirrored: bool) -> Workpiece:
    """The metal after the cone, in steps no thinner than it."""
    count = 12
    for n in range(count):
        one = slant.near + (slant.far - slant.near) * n / count
        two = slant.near + (slant.far - slant.near) * (n + 1) / count
        thick = 2 * (slant.r_near + (slant.r_far - slant.r_near) * (n + 1) / count)
        work = work.turned(-two, -one, thick) if mirrored else work.turned(one, two, thick)
    return work
