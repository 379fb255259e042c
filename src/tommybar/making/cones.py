"""Cones with the top slide swivelled: angle, both scale readings, slant, cuts along it, and what to check."""

from __future__ import annotations

import math
from dataclasses import dataclass

from tommybar.facts.tapers import slant_travel
from tommybar.making.bench import Bench, cutting_minutes, named
from tommybar.making.cards import Measure, Move, Pass, Step
from tommybar.making.contours import beside, land_contour
from tommybar.making.cuts import feed_for, finishing_passes, roughing_passes
from tommybar.making.dials import travel_words
from tommybar.making.jobs import Job, in_card
from tommybar.making.lengths import Mm
from tommybar.making.practice import rule
from tommybar.making.rigidity import allowed_cut
from tommybar.making.workpiece import Workpiece
from tommybar.shapes.features import Cone, Cylinder, Dim

SPARE = 5.0  # of the top slide's travel, left for approach and run-out; common practice, no source [mm]
ON_CENTRE = "The tool exactly on centre: above or below it the side comes out hollow and the angle wrong."
SLICES = 12  # of a cone, where the metal left is looked at in steps


@dataclass(frozen=True)
class Slant:
    """A cone in the card frame: radius at its free side and at the chuck's side [mm, deg]."""

    near: float
    far: float
    r_near: float
    r_far: float

    @property
    def half_angle(self) -> float:
        """Angle between side and axis [deg]."""
        return math.degrees(math.atan2(abs(self.r_far - self.r_near), self.near - self.far))

    @property
    def side(self) -> float:
        """Length along the side [mm]."""
        return slant_travel(self.near - self.far, self.half_angle)


def longest_bite(travel: float, half_angle: float) -> float:
    """How much of a cone, along the axis, the top slide turns in one bite.

        L = s cos(a)

    Parameters
    ----------
    travel : float
        Travel s of the top slide, above 0 [mm]
    half_angle : float
        Angle a between side and axis, 0 to below 90 [deg]

    Returns
    -------
    float
        Length along the axis [mm]

    Examples
    --------
    40 mm of travel at 12.53 deg:

    >>> round(longest_bite(40.0, 12.53), 2)
    39.05

    References
    ----------
    source: geometry (first principles).
    """
    return travel * math.cos(math.radians(half_angle))


def set_over_between_centres(length: float, half_angle: float) -> float:
    """How far the tailstock is set over for a cone between centres.

        v = L sin(a)

    Parameters
    ----------
    length : float
        Whole length L of the work between centres, above 0 [mm]
    half_angle : float
        Angle a between side and axis, 0 to below 90 [deg]

    Returns
    -------
    float
        Set-over [mm]

    Examples
    --------
    >>> round(set_over_between_centres(100.0, 12.53), 1)
    21.7

    References
    ----------
    source: geometry (first principles); the work's own length is the slanted one.
    """
    return length * math.sin(math.radians(half_angle))


def slant_of(bench: Bench, cone: Cone) -> Slant:
    """A cone of the part as this card sees it."""
    (near, r_near), *_, (far, r_far) = land_contour(cone, bench.length, bench.option.free).points
    return Slant(near, far, r_near, r_far)


def cone_angle(bench: Bench, job: Job) -> float:
    """Half angle of a cone of the part [deg]."""
    cone = next(f for f in bench.shape.outside if f.name == job.feature)
    assert isinstance(cone, Cone)
    return slant_of(bench, cone).half_angle


def swivel_words(half_angle: float) -> str:
    """Both readings that a top slide's scale may have for an angle from the axis."""
    return (
        f"Half angle {half_angle:.2f} deg from the axis ({2 * half_angle:.2f} included): the scale reads {half_angle:.2f} "
        f"where it counts from the axis, {90 - half_angle:.2f} where it counts from the cross-slide."
    )


def turn_cone(bench: Bench, job: Job) -> None:
    """Cut a cone that opens towards the chuck in cuts along its side."""
    cone = next(f for f in bench.shape.outside if f.name == job.feature)
    assert isinstance(cone, Cone)
    slant = slant_of(bench, cone)
    tool = bench.tool("knife", lambda t: t.hand in ("right", "both"), lambda t: t.nose, job.feature)
    if tool is None:
        return
    angle = slant.half_angle
    ahead, behind = beside(bench.shape, cone, bench.option.free)
    shoulder = behind > slant.r_far + 1e-6
    kept = tool.nose if _rises_on(bench, slant) else 0.0
    has = bench.work.largest(slant.near, slant.far)
    speed = bench.speed(tool, "turning", has, job.feature)
    left = rule("cut", "finish_left")
    small = 2 * slant.r_near
    after = _sliced(bench.work, slant)
    deepest = allowed_cut(bench, tool, after, (slant.near + slant.far) / 2, has, speed)
    radial = deepest.depth / math.cos(math.radians(angle))
    passes: tuple[Pass, ...] = ()
    start = has
    if has - small > left + 0.05:
        passes = roughing_passes(has, small + left, radial, bench.cross)
        start = passes[-1].to
    feed = feed_for(bench.part.material, tool.material, "turning", "finishing")
    limits = cone.limits is not None and cone.limits.toleranced
    passes = (*passes, *finishing_passes(start, small, bench.cross, two=limits or cone.taper != ""))
    bites = bites_of(bench, slant, job.feature)
    offsets = [cut.to / 2 - slant.r_near for cut in passes[:-1]] + [0.0]
    moves = along_side(slant, offsets, tool.nose, has, ahead, shoulder=shoulder, kept=kept)
    point = slant.r_near < 1e-6
    bench.add(
        Step(
            0,
            f"Turn the {called('point' if point else 'taper' if cone.taper else 'cone', job.feature)}, {len(passes)} "
            f"cut{'s' if len(passes) > 1 else ''} along its side",
            job.feature,
            named(tool),
            "knife",
            speed.rpm,
            speed.reached,
            feed,
            f"{angle:.2f}",
            "deg from the axis",
            (
                swivel_words(angle),
                f"Lock the carriage. The side is {Mm(slant.side):.2f} long: top slide "
                f"{travel_words(bench.shop.lathe.top_slide, slant.side)} each cut, wound by hand.",
                f"Infeed with the cross-slide, last cut {passes[-1].dial} ({bench.cross_words}); at Z "
                f"{Mm(-slant.near):.2f} it ends at {Mm(small):.2f} DIA, at {Mm(-slant.far):.2f} at {Mm(2 * slant.r_far):.2f}.",
                *_point_words(slant, point),
                *bites,
                check_words(slant, cone),
            ),
            passes,
            cutting_minutes(moves, speed.rpm, feed, len(passes)) + rule("minutes", "measure"),
            why="Swivelled once for all cones of this angle, when every length is finished: swivelling loses the slide's zero.",
            cautions=(
                ON_CENTRE,
                *((deepest.bound,) if deepest.bound else ()),
            ),
            measure=cone_measures(bench, cone, slant),
            moves=tuple(moves),
            tool_letter=tool.letter,
        )
    )
    bench.work = after


def called(kind: str, name: str) -> str:
    """A feature by its kind and name, said once where the name says the kind."""
    return name if kind in name.split("_") else f"{kind} {name}"


def _sliced(work: Workpiece, slant: Slant) -> Workpiece:
    for n in range(SLICES):
        one = slant.near + (slant.far - slant.near) * n / SLICES
        two = slant.near + (slant.far - slant.near) * (n + 1) / SLICES
        thick = 2 * (slant.r_near + (slant.r_far - slant.r_near) * (n + 1) / SLICES)
        work = work.turned(one, two, thick)
    return work


def _rises_on(bench: Bench, slant: Slant) -> bool:
    """Whether a cone or curve goes on rising from the cone's large end, so that no cut may run over it."""
    free = bench.option.free
    after = [
        land_contour(land, bench.length, free)
        for land in bench.shape.outside
        if not isinstance(land, Cylinder)
    ]
    return any(
        abs(one.points[0][0] - slant.far) < 1e-6
        and abs(one.points[0][1] - slant.r_far) < 0.02
        and one.largest > slant.r_far + 1e-6
        for one in after
    )


def along_side(
    slant: Slant,
    offsets: list[float],
    nose: float,
    has: float,
    ahead: float,
    *,
    shoulder: bool,
    kept: float = 0.0,
) -> list[Move]:
    """Moves of the theoretical corner for cuts parallel to the side, each ``offsets`` over it [mm on radius]."""
    a = math.radians(slant.half_angle)
    rise = math.tan(a)
    back_z, back_r = nose * (math.sin(a) - 1), nose * (math.cos(a) - 1)
    away = has / 2 + rule("cut", "retract")
    room = rule("cut", "approach")
    if ahead > 0 and rise > 0:
        room = min(
            room, (slant.r_near - ahead + back_r) / rise
        )  # the nose must not go below what stands in front
    if ahead <= 0 and rise > 0:
        room = min(room, max(0.2, (slant.r_near + 0.3) / rise))
    start = slant.near + room
    moves = [Move(start + back_z, away)]
    for off in offsets:
        low = slant.r_near + off - rise * room
        end_z = slant.far - back_z if shoulder else slant.far - min(0.3, 0.2 / max(rise, 0.05))
        reach = slant.near - (has / 2 + 0.05 - slant.r_near - off) / max(rise, 1e-9)
        end_z = max(end_z, reach, slant.far + kept if kept else end_z)
        end_r = slant.r_near + off + rise * (slant.near - end_z)
        moves += [Move(start + back_z, low + back_r), Move(end_z + back_z, end_r + back_r)]
        moves += [Move(end_z + back_z, away), Move(start + back_z, away, rapid=True)]
    return moves


def bites_of(bench: Bench, slant: Slant, feature: str) -> tuple[str, ...]:
    """What is said when the side is longer than the top slide travels; a stop when two bites are not enough."""
    travel = bench.shop.lathe.top_slide.travel
    if travel <= 0:
        bench.find(
            422,
            "caution",
            f"{feature}: the top slide must travel {slant.side:.1f} mm; its travel is not in the shop file.",
            feature=feature,
            figure=f"{slant.side:.1f} mm along the side",
            bound="lathe.top_slide.travel: not said",
            remedy=f"Wind it out and measure; {SPARE:g} mm are left over for approach and run-out.",
            source="geometry",
        )
        return ()
    if slant.side <= travel - SPARE + 1e-9:
        return ()
    angle = slant.half_angle
    one = longest_bite(travel, angle)
    reaches = 2 * (slant.r_far - one * math.tan(math.radians(angle)))
    over = set_over_between_centres(bench.length, angle)
    shorter = _shorter(slant, travel)
    enough = slant.side <= 2 * (travel - SPARE)
    bench.find(
        422,
        "caution" if enough else "stop",
        f"{feature}: its side is {slant.side:.1f} mm long, the top slide travels {travel:g} mm. One bite makes {one:.2f} mm of "
        f"its length, down to {max(reaches, 0.0):.2f} mm in diameter.",
        feature=feature,
        figure=f"{slant.side:.1f} mm along the side",
        bound=f"{travel:g} mm of top slide travel, {SPARE:g} mm of it to spare",
        remedy=("Turn it in two bites and blend them, as the card says. " if enough else "")
        + f"Or draw the cone {shorter} mm long; or set the tailstock over by {over:.1f} mm between centres, if it goes so far; "
        "or finish the small end with a form tool.",
        source="slant L / cos(a), set-over L sin(a): geometry",
    )
    if not enough:
        return ()
    half = (slant.near - slant.far) / 2
    return (
        f"Two bites: first the end near the chuck from Z {Mm(-(slant.near - half)):.2f} on, then carriage back by "
        f"{Mm(half):.2f}, and on from {Mm(-slant.near):.2f} until the second runs into the first. The angle stays as it is; "
        "blend the join with a fine file.",
    )


def _shorter(slant: Slant, travel: float) -> str:
    """The longest whole millimetre at which the same diameters are made in one bite."""
    drop = slant.r_far - slant.r_near
    length = math.sqrt(max(0.0, travel**2 - drop**2))
    return f"{math.floor(length):g}"


def _point_words(slant: Slant, point: bool) -> tuple[str, ...]:
    if not point:
        return ()
    a = math.radians(slant.half_angle)
    return (
        "Stop when the flat just vanishes: the tip then lies in the faced plane. Each "
        f"{Mm(0.01):.2f} too deep shortens it by {Mm(0.01 / math.tan(a)):.3f}; the length was measured while the end was flat.",
    )


def check_words(slant: Slant, cone: Cone) -> str:
    """How a cone is checked: a taper by bluing, any other by two diameters."""
    if cone.taper:
        return (
            f"{cone.taper}: blue a gauge or the sleeve it goes in, turn it a quarter, look: rubbed at the thick end, the angle "
            "is too small; at the thin end, too large."
        )
    span = math.floor(0.8 * (slant.near - slant.far) * 2) / 2 or slant.near - slant.far
    more = 2 * span * math.tan(math.radians(slant.half_angle))
    return f"Check: two diameters {Mm(span):.1f} apart along the axis differ by {Mm(more):.2f}."


def cone_measures(bench: Bench, cone: Cone, slant: Slant) -> tuple[Measure, ...]:
    """What is measured of a cone: its diameter, where the drawing gives limits."""
    name = f"{bench.part.name}.{cone.name}"
    drawn = next(f for f in bench.drawn.outside if f.name == cone.name)
    limits = drawn.limits if isinstance(drawn, Cone) else None
    return (bench.measured(name, limits or Dim(2 * slant.r_far, name), "outside"),) if limits else ()


def slope_edge(bench: Bench, job: Job, radius: float, angle: float) -> None:
    """An outside edge at another angle than 45 degrees, with the knife along the swivelled top slide."""
    near = in_card(job.start, bench.length, bench.option.free)
    drop = job.size * math.tan(math.radians(angle))
    slant = Slant(near, near - job.size, radius - drop, radius)
    tool = bench.tool("knife", lambda t: t.hand in ("right", "both"), lambda t: t.nose, job.name)
    if tool is None:
        return
    speed = bench.speed(tool, "turning", 2 * radius, job.feature)
    feed = feed_for(bench.part.material, tool.material, "turning", "finishing")
    ahead = bench.work.largest(bench.work.top, near) / 2 if near < -1e-6 else 0.0
    count = max(1, math.ceil(drop / rule("cut", "rough_steel")))
    offsets = [drop * (count - n) / count for n in range(1, count + 1)]
    moves = along_side(slant, offsets, tool.nose, 2 * radius, ahead, shoulder=False)
    bench.add(
        Step(
            0,
            f"Turn the lead {job.feature}, {angle:g} deg",
            job.feature,
            named(tool),
            "knife",
            speed.rpm,
            speed.reached,
            feed,
            f"{angle:g}",
            "deg from the axis",
            (
                swivel_words(angle),
                f"{Mm(job.size):g} long, {Mm(drop):.2f} deep: in {travel_words(bench.cross, drop)} from touching the corner "
                f"({bench.cross_words}), top slide along the side.",
            ),
            minutes=cutting_minutes(moves, speed.rpm, feed, count),
            why="A lead so slender guides a press or a mate in; a chamfer of 45 deg would not.",
            moves=tuple(moves),
            tool_letter=tool.letter,
        )
    )
