"""What goes into a face on the axis besides bores: centre holes, cups and countersinks, tapered bores."""

from __future__ import annotations

import math

from tommybar.facts.drills import centre_drill, point_length
from tommybar.making.as_machined import relief_deep, relief_drill
from tommybar.making.axial_drills import START, axial_moves, depth_words, drill_through_sizes
from tommybar.making.bench import Bench, cutting_minutes, named
from tommybar.making.cards import Move, Pass, Step
from tommybar.making.cones import SPARE, swivel_words
from tommybar.making.cuts import feed_for, finishing_passes, roughing_passes
from tommybar.making.dials import travel_words
from tommybar.making.drilling import floored
from tommybar.making.jobs import Job
from tommybar.making.lengths import Mm
from tommybar.making.practice import rule
from tommybar.making.reaming import openings
from tommybar.making.rigidity import boring_cut
from tommybar.shapes.features import Bore, BoreTaper, Cup, Dim

CONE = 60.0  # included angle of a centre hole (ISO 866) [deg]
COUNTERSINK = 90.0  # included angle of the drawer's countersinks [deg]


def centre_depth(pilot: float, mouth: float) -> float:
    """How deep the tip of a form A centre drill goes for a mouth.

        t = (D - d) / (2 tan 30) + d + tip

    Parameters
    ----------
    pilot : float
        Pilot diameter d, above 0 [mm]
    mouth : float
        Mouth diameter D, above d [mm]

    Returns
    -------
    float
        Depth of the tip below the face [mm]

    Examples
    --------
    A 2.5, mouth 5.3:

    >>> round(centre_depth(2.5, 5.3), 2)
    5.68

    References
    ----------
    source: geometry of ISO 866 form A (mouth 2.12 d, pilot as deep as it is
    wide: from memory); 118-degree tip 0.300 d.
    """
    return (mouth - pilot) / 2 / math.tan(math.radians(CONE / 2)) + pilot + point_length(pilot)


def centre_hole(bench: Bench, job: Job) -> None:
    """A centre hole to the mouth of its size, before anything is supported by it."""
    hole = next(one for one in bench.shape.centres if one.name == job.feature)
    owned = [size for size in bench.shop.centre_drills if abs(size - hole.pilot) < 1e-6]
    mouth = centre_drill(f"{hole.form} {hole.pilot:g}").mouth
    if not owned or hole.form != "A" or mouth is None:
        have = ", ".join(f"{size:g}" for size in bench.shop.centre_drills) or "none"
        bench.find(
            424,
            "stop",
            f"{job.feature}: a centre drill {hole.form} {hole.pilot:g} is wanted; the drawer's make form A.",
            feature=job.feature,
            figure=f"form {hole.form}, pilot {hole.pilot:g} mm",
            bound=f"form A, pilots {have} mm",
            remedy="Draw a form A of a pilot that is owned, or buy the drill.",
        )
        return
    deep = centre_depth(hole.pilot, mouth)
    speed = bench.speed(None, "centre drilling", hole.pilot, job.feature)
    moves = axial_moves(deep)
    bench.add(
        Step(
            0,
            f"Centre drill {job.feature}, A {hole.pilot:g}",
            job.feature,
            f"centre drill {Mm(hole.pilot):tool}",
            "centre drill",
            speed.rpm,
            speed.reached,
            0.03,
            f"{mouth:.2f}",
            "DIA mm mouth",
            (
                f"Until the mouth measures {Mm(mouth):.2f}: tip {Mm(deep):.1f} deep.",
                *depth_words(bench, deep, 100.0, 0.0),
            ),
            minutes=cutting_minutes(moves, speed.rpm, 0.03, 1),
            why="The cone carries the work, so it must be whole and smooth: oil, and back out once for the chips.",
            moves=tuple(moves),
            tool_size=hole.pilot,
        )
    )


def cup_level(bench: Bench, one: Cup) -> float:
    """How deep below its face a cup opens: on the floor of a larger bore, where it stands in one [mm]."""
    bore = next((b for b in bench.shape.bores if b.name == one.on), None)
    if bore is None:
        return 0.0
    return max(
        (
            b.depth
            for b in bench.shape.bores
            if b.face == one.face and not b.through and b.dia.value > bore.dia.value
        ),
        default=0.0,
    )


def cup(bench: Bench, job: Job) -> None:
    """A cup or countersink: its relief hole first, then the countersink, or the top slide for other angles."""
    one = next(c for c in bench.shape.cups if c.name == job.feature)
    level = cup_level(bench, one)
    lean = math.tan(math.radians(one.included / 2))
    if one.relief > 0 and not _relieved(bench, one, level):
        return
    able = [size for size in bench.shop.countersinks if size >= one.mouth - 1e-6]
    if abs(one.included - COUNTERSINK) > 0.5 or not able:
        start = max(
            one.relief,
            next((bench.bored.get(b.name, 0.0) for b in bench.shape.bores if b.name == one.on), 0.0),
        )
        small = BoreTaper(one.name, one.face, level, (one.mouth - start) / 2 / lean, one.mouth, start)
        if start <= 0 or not _slide(bench, small, start, f"cup of {one.included:g} deg"):
            _no_countersink(bench, one)
        return
    size = min(able)
    deep = level + one.mouth / 2 / lean
    speed = bench.speed(None, "countersinking", one.mouth, job.feature)
    moves = axial_moves(deep)
    bench.add(
        Step(
            0,
            f"Countersink {job.feature}, {one.included:g} deg",
            job.feature,
            f"countersink {Mm(size):tool}, {COUNTERSINK:g} deg",
            "countersink",
            speed.rpm,
            speed.reached,
            0.05,
            f"{one.mouth:.2f}",
            "DIA mm mouth",
            (
                f"Until the mouth measures {Mm(one.mouth):.2f}: the point, if it had one, {Mm(deep):.2f} deep.",
                "Slow and with oil, the last turns without feed: a chattered seat wears out the point.",
            ),
            minutes=2.0,
            why="In the same grip as what it must run true to." if not one.on else "",
            moves=tuple(moves),
            tool_size=size,
        )
    )


def _relieved(bench: Bench, one: Cup, level: float) -> bool:
    """The small hole at a cup's bottom, deep enough that a point never touches there."""
    drill = relief_drill(one, bench.shop)
    if drill <= 0:
        bench.find(
            424,
            "stop",
            f"{one.name}: no drill of {one.relief:g} mm for the hole at its bottom.",
            feature=one.name,
            figure=f"{one.relief:g} mm",
            bound="drills within 0.05 mm of it: none",
            remedy="Let the hole follow a drill that is owned.",
        )
        return False
    deep = level + relief_deep(one)
    drill_through_sizes(bench, one.name, (drill,), deep, blind_flat=False)
    return True


def _no_countersink(bench: Bench, one: Cup) -> None:
    have = ", ".join(f"{size:g}" for size in bench.shop.countersinks) or "none"
    bench.find(
        424,
        "stop",
        f"{one.name}: nothing in the drawer makes a cup of {one.included:g} deg, {one.mouth:g} mm at its mouth.",
        feature=one.name,
        figure=f"{one.included:g} deg, {one.mouth:g} mm",
        bound=f"countersinks of {COUNTERSINK:g} deg: {have}; boring bars need the hole they enter",
        remedy=f"Draw it {COUNTERSINK:g} deg and no larger than the countersink; or make a bit: silver steel of "
        f"{math.ceil(one.mouth):g} mm or more, its end turned to {one.included:g} deg, filed flat to the middle, hardened.",
    )


def taper_angle(bench: Bench, job: Job) -> float:
    """Half angle of a tapered bore [deg]."""
    one = next(t for t in bench.shape.bore_tapers if t.name == job.feature)
    return _half_angle(one)


def _half_angle(one: BoreTaper) -> float:
    return math.degrees(math.atan2((one.mouth - one.end_dia) / 2, one.depth))


def _bars(bench: Bench) -> str:
    """The boring bars of the drawer in words."""
    bars = [t for t in bench.shop.tools if t.kind == "boring"]
    return (
        "; ".join(f"{t.letter} from {t.smallest_bore or t.shank:g}, {t.reach:g} deep" for t in bars) or "none"
    )


def _hole_there(bench: Bench, one: BoreTaper) -> float:
    """The largest bore that a taper opens from its small end, as far as it is made [mm]; 0 where none is drawn."""
    deep = one.start + one.depth
    return max(
        (
            bench.bored.get(b.name, 0.0)
            for b in bench.shape.bores
            if b.dia.value <= one.end_dia + 1e-6
            and (
                b.through
                or (b.face == one.face and b.depth >= deep - 1e-6)
                or (b.face != one.face and bench.length - b.depth <= deep - 1e-6)
            )
        ),
        default=0.0,
    )


def taper_start(bench: Bench, job: Job) -> None:
    """The hole in which a blind taper's boring bar starts: drilled, its floor flattened by a slot drill."""
    one = next(t for t in bench.shape.bore_tapers if t.name == job.feature)
    deep = one.start + one.depth
    if _hole_there(bench, one) > 0:
        return
    able = [
        c
        for c in bench.shop.cutters
        if c <= min(bench.shop.lathe.drill_chuck, one.end_dia) + 1e-6
        and any(
            t.kind == "boring" and (t.smallest_bore or t.shank) <= c + 1e-6 and t.reach >= deep - 1e-6
            for t in bench.shop.tools
        )
    ]
    if not able:
        return  # told where the taper is bored
    cutter = max(able)
    short = deep - rule("cut", "face_left")
    before = [d for d in bench.shop.drills if d <= cutter - 0.3 and point_length(d) < short]
    drills = openings(max(before), bench.shop, short) if before else ()
    drill_through_sizes(bench, one.name, drills, short, blind_flat=True)
    floored(bench, Bore(one.name, Dim(cutter), one.face, deep, False), cutter)


def bore_taper(bench: Bench, job: Job) -> None:
    """A tapered bore with the boring bar along the swivelled top slide."""
    one = next(t for t in bench.shape.bore_tapers if t.name == job.feature)
    deep = one.start + one.depth
    start = _hole_there(bench, one)
    blind = start <= 0
    if blind:
        start = bench.bored.get(one.name, 0.0)
    if start <= 0:
        cutters = [f"{c:g}" for c in bench.shop.cutters if c <= one.end_dia]
        bench.find(
            425,
            "stop",
            f"{one.name}: there is no hole at its small end of {one.end_dia:g} mm for the boring bar to start in, and no slot "
            f"drill of the drawer makes one that a bar enters and reaches {deep:g} mm through.",
            feature=one.name,
            figure=f"{one.end_dia:g} mm at {deep:g} mm deep",
            bound=f"slot drills up to it: {', '.join(cutters) or 'none'}; bars: {_bars(bench)}",
            remedy="Draw a bore through it or below it, for the drawbar or for clearance; or a longer, thinner bar.",
        )
        return
    if not _slide(bench, one, start, one.taper or "tapered bore"):
        bench.find(
            425,
            "stop",
            f"{one.name}: no boring bar enters a hole of {start:g} mm and reaches {deep:g} mm.",
            feature=one.name,
            figure=f"{start:g} mm, {deep:g} mm deep",
            bound=_bars(bench),
            remedy="A taper reamer, a thinner bar, or a larger hole at the small end.",
        )


def _slide(bench: Bench, one: BoreTaper, has: float, words: str) -> bool:
    """Cuts along a tapered bore's side, deepest at its mouth; False where no bar gets in."""
    deep = one.start + one.depth
    bars = [
        t
        for t in bench.shop.tools
        if t.kind == "boring" and (t.smallest_bore or t.shank) <= has + 1e-6 and t.reach >= deep - 1e-6
    ]
    if not bars:
        return False
    tool = max(bars, key=lambda t: (t.shank, t.letter))
    angle = _half_angle(one)
    a = math.radians(angle)
    side = one.depth / math.cos(a)
    travel = bench.shop.lathe.top_slide.travel
    if 0 < travel < side + SPARE:
        bench.find(
            422,
            "stop",
            f"{one.name}: its side is {side:.1f} mm long, the top slide travels {travel:g} mm.",
            feature=one.name,
            figure=f"{side:.1f} mm along the side",
            bound=f"{travel:g} mm of travel, {SPARE:g} mm of it to spare",
            remedy="A taper reamer, or a shorter taper.",
            source="geometry",
        )
        return True
    speed = bench.speed(tool, "boring", one.mouth, one.name)
    feed = feed_for(bench.part.material, tool.material, "boring", "finishing")
    deepest = boring_cut(bench, tool, deep, feed) / math.cos(a)
    left = rule("cut", "finish_left")
    passes: tuple[Pass, ...] = ()
    start = has
    if one.mouth - left > has + 0.05:
        passes = roughing_passes(has, one.mouth - left, deepest, bench.cross, +1.0)
        start = passes[-1].to
    passes = (*passes, *finishing_passes(start, one.mouth, bench.cross, +1.0))
    moves = _inside_moves(
        one,
        [one.mouth / 2 - cut.to / 2 for cut in passes[:-1]] + [0.0],
        tool.nose,
        has,
        _hole_there(bench, one) > 0,
    )
    bench.add(
        Step(
            0,
            f"Bore {one.name}, {len(passes)} cuts along its side",
            one.name,
            named(tool),
            "boring",
            speed.rpm,
            speed.reached,
            feed,
            f"{angle:.2f}",
            "deg from the axis",
            (
                swivel_words(angle),
                f"Carriage locked. The side is {Mm(side):.2f} long: top slide "
                f"{travel_words(bench.shop.lathe.top_slide, side)} each cut.",
                f"From {Mm(has):.2f} outwards, last cut {passes[-1].dial} ({bench.cross_words}): mouth {Mm(one.mouth):.2f} at "
                f"{Mm(one.start):.2f} deep, {Mm(one.end_dia):.2f} at {Mm(deep):.2f}.",
                f"Check the {words} with its gauge or its mate and blue: rubbed at the mouth, the angle is too large; inside, "
                "too small.",
            ),
            passes,
            cutting_minutes(moves, speed.rpm, feed, len(passes)) + rule("minutes", "measure"),
            why="After the straight bore, with the top slide swivelled once for this angle; its zero is lost by it.",
            cautions=("The bar exactly on centre: off it, the side comes out hollow and the angle wrong.",),
            moves=tuple(moves),
            tool_letter=tool.letter,
        )
    )
    return True


def _inside_moves(
    one: BoreTaper, offsets: list[float], nose: float, has: float, runs_out: bool
) -> list[Move]:
    """Moves of a bar's theoretical corner for cuts parallel to the side, ``offsets`` inside it [mm]."""
    rise = (one.mouth - one.end_dia) / 2 / one.depth
    a = math.atan(rise)
    off_z, off_r = nose * (math.sin(a) - 1), nose * (1 - math.cos(a))
    clear = has / 2 - 0.3
    room = 0.5 if one.start <= 0 else 0.0
    begin = -one.start + room
    moves = [Move(START, clear)]
    for off in offsets:
        mouth = one.mouth / 2 - off + rise * room
        end_z = -(one.start + one.depth) - (0.2 if runs_out and abs(has - one.end_dia) < 1e-6 else off_z)
        stop = begin - (mouth - has / 2 + 0.02) / rise
        end_z = max(end_z, stop)
        end_r = mouth - rise * (begin - end_z)
        moves += [Move(begin + off_z, clear, rapid=True), Move(begin + off_z, mouth + off_r)]
        moves += [
            Move(end_z + off_z, end_r + off_r),
            Move(end_z + off_z, clear),
            Move(START, clear, rapid=True),
        ]
    return moves
