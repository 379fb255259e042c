"""A groove inside a bore: for a circlip, an O-ring, or where a thread runs out."""

from __future__ import annotations

import math

from tommybar.facts.fasteners.circlips import Circlip, circlip
from tommybar.facts.materials import material
from tommybar.making.axial_drills import START
from tommybar.making.bench import Bench, cutting_minutes, named
from tommybar.making.cards import Measure, Move, Step
from tommybar.making.cuts import feed_for
from tommybar.making.dials import graduation_words, travel_words
from tommybar.making.grinding import top_rake
from tommybar.making.inside_tools import ROOM, groove_depths, narrowest_on_the_way, unfit, wall_there
from tommybar.making.jobs import Job
from tommybar.making.lengths import Mm
from tommybar.making.plunging import FLOOR_LEFT, OVERLAP
from tommybar.making.practice import rule
from tommybar.making.rigidity import STEEL, plunging_feed_held
from tommybar.mechanics.cutting import cutting_force
from tommybar.mechanics.deflection import deflection
from tommybar.refusals import Refusal
from tommybar.shapes.features import BoreGroove, Dim
from tommybar.shop.model import Dial, Tool

AIR = 0.3  # between the edge and the bore on the way in and out, radial; common practice, no source [mm]
FRONT = 10.0  # front clearance of an inside tool, before its heel is ground away; common practice, no source [deg]
WIDTH_ZONE = "H13"  # of a circlip's groove (DIN 471, DIN 472: from memory)
WIDTH_OVER = 0.14  # of that zone, up to 3 mm wide (IT13 of ISO 286-1: from memory) [mm]
BITS = (
    3.0,
    4.0,
    5.0,
    6.0,
    8.0,
)  # square bits that an inside tool is ground from; common practice, no source [mm]
FEED_LEAST = 0.01  # below it an edge rubs; common practice, no source [mm/rev]


def outward_reading(dial: Dial, travel: float) -> float:
    """What a cross-slide's dial reads after a travel outwards from its nought.

    Outwards in a bore is towards the operator, against the way the handle
    takes off metal outside: the figure runs down.

        reading = - t          numbered in travel (RAD)
        reading = - 2 t        numbered in diameter (DIA)

    Parameters
    ----------
    dial : Dial
        The cross-slide's dial
    travel : float
        Travel t of the slide outwards, nought or more [mm]

    Returns
    -------
    float
        Figure on the dial, in its own numbering [mm]

    Examples
    --------
    Half a millimetre deep all round:

    >>> outward_reading(Dial(0.02, 2.0, reads="RAD"), 0.5)
    -0.5
    >>> outward_reading(Dial(0.02, 2.0, reads="DIA"), 0.5)
    -1.0

    References
    ----------
    source: geometry; that the dial's figures rise as the tool goes towards
    the axis is how bench lathes are marked: common practice, no source.
    """
    return -travel * (2 if dial.reads == "DIA" else 1)


def front_relief(bore: float, below: float) -> float:
    """Least front clearance of an inside tool whose heel must pass the wall of its bore.

    The wall lies R on centre height and curves in below it:

        a = atan((R - sqrt(R^2 - h^2)) / h)

    Parameters
    ----------
    bore : float
        Diameter of the bore, above 2 h [mm]
    below : float
        How far the tool's heel lies below centre h, above 0 [mm]

    Returns
    -------
    float
        Angle from upright [deg]

    Raises
    ------
    Refusal
        If the heel lies no higher than the bore's lowest point.

    Examples
    --------
    A recess wall of 24 mm radius, 8 mm below centre, is 1.37 mm away:

    >>> round(front_relief(48.0, 8.0), 1)
    9.7

    References
    ----------
    source: geometry.
    """
    radius = bore / 2
    if below <= 0 or below >= radius:
        raise Refusal(
            f"The heel lies {below:g} mm below centre in a bore of {bore:g} mm; it must lie above its lowest point.",
            "Take a thinner shank.",
        )
    return math.degrees(math.atan((radius - math.sqrt(radius**2 - below**2)) / below))


def inside_groove(bench: Bench, job: Job) -> None:
    """Plunge a groove into a bore's wall, side by side where it is wider than the tool, and sweep its floor."""
    groove = next(one for one in bench.shape.bore_grooves if one.name == job.feature)
    face = bench.option.free
    owned = [tool for tool in bench.shop.tools if tool.kind == "inside groove"]
    able = [tool for tool in owned if not unfit(tool, bench.shape, groove, face)]
    if not able:
        _none_does_it(bench, groove, owned)
        return
    tool = max(able, key=lambda t: (t.width, t.shank, t.letter))
    near, far = groove_depths(groove, bench.length, face)
    has = wall_there(bench.shape, groove)
    deep, w = (groove.floor - has) / 2, tool.width
    speed = bench.speed(tool, "grooving", groove.floor, groove.name)
    feed, held = _feed(
        bench,
        tool,
        far,
        groove,
        plunging_feed=feed_for(bench.part.material, tool.material, "grooving", "roughing"),
        rpm_for=has,
    )
    count = 1 if far - near <= w + 1e-6 else math.ceil((far - near - w) / (OVERLAP * w) - 1e-6) + 1
    left = 0.0 if count == 1 else min(FLOOR_LEFT, deep / 2)
    places = [-far + (far - near - w) * n / max(count - 1, 1) for n in range(count)]
    moves = _moves(places, has, groove.floor, left, narrowest_on_the_way(bench.shape, groove, face))
    ring = ring_of(bench, groove)
    ratio = far / max(tool.shank, 1.0)
    cautions = [
        "It cuts unseen: carriage locked for each plunge; back into the middle of the bore before you move along."
    ]
    if ratio > 4:
        cautions.append(f"The tool stands {ratio:.1f} x its thickness into the bore: it springs and hums.")
    if held:
        cautions.append(held)
    bench.add(
        Step(
            0,
            f"Groove {groove.name} inside {groove.on}"
            + (f", {count} plunges, then sweep its floor" if count > 1 else ", one plunge"),
            groove.name,
            named(tool),
            "inside groove",
            speed.rpm,
            speed.reached,
            feed,
            f"{groove.floor:.2f}",
            "DIA mm",
            (
                *_place_words(bench, places, near, far, w),
                _depth_words(bench, has, _on_marks(bench.cross, deep) if ring else deep),
                *((_ring_words(ring),) if ring else ()),
                "Then spindle stopped, scraper round both edges, and the bore's gauge again.",
            ),
            minutes=cutting_minutes(moves, speed.rpm, feed, count) + rule("minutes", "measure"),
            why="In this grip after its bore: the bore is measured, so the depth starts from a known diameter."
            if any(step.feature == groove.on for step in bench.steps)
            else "The bore is finished, so the depth starts from a known diameter.",
            cautions=tuple(cautions),
            measure=(_width(bench, groove, ring),),
            moves=tuple(moves),
            tool_letter=tool.letter,
        )
    )


def _on_marks(dial: Dial, deep: float) -> float:
    """The next half division that is no less deep: a ring's floor has a least diameter [mm]."""
    half = dial.per_division / 2
    return math.ceil(deep / half - 1e-6) * half


def _feed(
    bench: Bench, tool: Tool, out: float, groove: BoreGroove, *, plunging_feed: float, rpm_for: float
) -> tuple[float, str]:
    """The feed at which motor, grip and the bar stand the whole edge in the cut, and what bounds it in words."""
    speed = bench.speed(tool, "grooving", groove.floor, groove.name)
    held = plunging_feed_held(bench, tool.width, rpm_for, speed, plunging_feed, groove.name)
    kind = material(bench.part.material)
    gives = deflection("cantilever", 1.0, out, out, max(tool.shank, 1.0), STEEL)
    away = rule("cut", "away_share") * cutting_force(kind.kc11, kind.mc, held.feed, tool.width, 90.0)
    most = rule("cut", "spring_rough")
    if gives * away <= most:
        return held.feed, held.bound
    feed = float(held.feed * (most / (gives * away)) ** (1 / (1 - kind.mc)))
    if feed >= FEED_LEAST:
        return feed, f"Feed kept to {feed:.3f} a turn: the bar springs {Mm(most):g} then."
    bench.find(
        405,
        "caution",
        f"{groove.name}: a bar {tool.shank:g} mm thick, {out:.1f} mm out, springs {gives * away:.2f} mm from an edge "
        f"{tool.width:g} mm wide.",
        feature=groove.name,
        figure=f"{gives * away:.2f} mm at {held.feed:.3f} mm/rev",
        bound=f"{most:g} mm",
        remedy="A stouter or shorter bar, or a narrower edge and more plunges.",
        source="cantilever under the push of the cut; its share of the cutting force is common practice, no source",
    )
    return FEED_LEAST, f"Feed by hand as finely as it cuts: the bar springs {Mm(gives * away):.2f} otherwise."


def _moves(places: list[float], has: float, floor: float, left: float, mouth: float) -> list[Move]:
    """Moves of the edge's corner towards the chuck: in, each plunge, the sweep, out."""
    clear = min(has, mouth) / 2 - AIR
    moves = [Move(START, clear)]
    for z in places:
        moves += [Move(z, clear, rapid=True), Move(z, floor / 2 - left), Move(z, clear)]
    if len(places) > 1:
        moves += [
            Move(places[-1], floor / 2),
            Move(places[0], floor / 2),
            Move(places[0], clear),
        ]
    return [*moves, Move(START, clear, rapid=True)]


def _place_words(bench: Bench, places: list[float], near: float, far: float, w: float) -> tuple[str, ...]:
    slide = bench.shop.lathe.top_slide
    first = (
        f"The tool's left side, towards the chuck, on the face: Z 0. Left side at Z {Mm(far):.2f}, the far wall: top slide "
        f"{travel_words(slide, far)} ({graduation_words(slide)})"
    )
    if len(places) == 1:
        return (f"{first}; its right side, {Mm(w):tool} nearer, is at {Mm(far - w):.2f}.",)
    step = (places[-1] - places[0]) / (len(places) - 1)
    return (
        f"{first}. Then {Mm(step):.2f} nearer each, the last with the left side at Z {Mm(-places[-1]):.2f}, its right side at "
        f"{Mm(near):.2f}, the near wall.",
    )


def _depth_words(bench: Bench, has: float, deep: float) -> str:
    """The way in and out of the depth on the dial; slack is taken up by touching on the way out."""
    cross = bench.cross
    reading = outward_reading(cross, deep)
    unit = 25.4 if cross.unit == "in" else 1.0
    shown = f"{reading / unit:.4f} in" if cross.unit == "in" else f"{reading:.2f} mm"
    return (
        f"Touch the wall, {Mm(has):.2f} DIA, coming outwards, so that slack is taken up: dial 0. Then out, towards you, "
        f"{travel_words(cross, deep)}: it runs down to {shown} ({bench.cross_words})."
    )


def ring_of(bench: Bench, groove: BoreGroove) -> Circlip | None:
    """The circlip whose groove this is, by its bore and floor; None where it is another groove."""
    bore = next(one for one in bench.drawn.bores if one.name == groove.on)
    try:
        ring = circlip(f"{bore.dia.value:g} bore")
    except Refusal:
        return None
    low, high = ring.groove_diameter
    fits = low - 0.01 <= groove.floor <= high + 0.01
    return ring if fits and groove.end - groove.start >= ring.groove_width - 0.01 else None


def _ring_words(ring: Circlip) -> str:
    low, high = ring.groove_diameter
    return f"{ring.standard} {ring.diameter:g}: floor {Mm(low):.2f} to {Mm(high):.2f}; the ring springs in and turns freely."


def _width(bench: Bench, groove: BoreGroove, ring: Circlip | None) -> Measure:
    """Its width is tried with a strip; a ring's is of H13, which its table gives as the least."""
    name = f"{bench.part.name}.{groove.name}.wide"
    wide = groove.end - groove.start
    dim = Dim(wide, name)
    if ring is not None:
        dim = Dim(wide, name, WIDTH_ZONE, ring.groove_width, round(ring.groove_width + WIDTH_OVER, 3))
    by = "a strip or the ring itself" if ring else "a strip, or the shank of a drill"
    return Measure(name, dim, by, bench.gives_to.get(name, ()))


def _none_does_it(bench: Bench, groove: BoreGroove, owned: list[Tool]) -> None:
    face = bench.option.free
    _, far = groove_depths(groove, bench.length, face)
    mouth = narrowest_on_the_way(bench.shape, groove, face)
    deep, wide = (groove.floor - mouth) / 2, groove.end - groove.start
    shank = max((one for one in BITS if one <= mouth - deep - 2 * AIR), default=0.0)
    have = "; ".join(f"{t.letter} {unfit(t, bench.shape, groove, face)}" for t in owned)
    remedy = "A larger bore, a shallower groove, or one in the mate outside."
    if shank > 0:
        angle = max(FRONT, math.ceil(front_relief(mouth, shank / 2)))
        remedy = (
            f"Grind one from a bit of {shank:g} mm: edge at most {wide:g} wide, its neck standing out "
            f"{deep + AIR:.1f} or more, {far + ROOM:.0f} long, front clearance {angle:g} deg and the heel ground off below "
            f"it, 2 deg on each side, top rake {top_rake(bench.part.material):g} deg; write it in the shop file as an inside "
            "groove tool."
        )
    bench.find(
        429,
        "stop",
        f"{groove.name}: no inside grooving tool in the drawer cuts {wide:g} mm wide and {deep:.2f} mm deep, {far:.1f} mm "
        f"inside a bore of {mouth:g} mm.",
        feature=groove.name,
        figure=f"{wide:g} wide, {deep:.2f} deep, {far:.1f} mm in",
        bound=have or "inside grooving tools owned: none",
        remedy=remedy,
        source="geometry; clearances are common practice, no source",
    )
