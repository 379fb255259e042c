"""Facing and turning outside: roughing in equal cuts, two equal last cuts."""

from __future__ import annotations

import math

from tommybar.facts.drawing.general_tolerances import general_tolerance
from tommybar.making.bench import Bench, cutting_minutes, named
from tommybar.making.cards import Measure, Move, Pass, Step
from tommybar.making.contours import land_contour
from tommybar.making.cuts import feed_for, finishing_passes, roughing_passes, step_on_diameter
from tommybar.making.dials import graduation_words
from tommybar.making.jobs import Job, largest, span_in_card
from tommybar.making.lengths import Mm
from tommybar.making.practice import rule
from tommybar.making.reach import by_blade
from tommybar.making.rigidity import Taper, allowed_cut, taper_of
from tommybar.shapes.features import Cylinder, Dim, Land

IN_GROOVE = 0.25  # how far a knife runs over the edge of a groove, more than its nose; common practice, no source [mm]


def face(bench: Bench, *, to_length: bool, bored: float) -> None:
    """Face the free end to z = 0; the second end is faced to length and measured."""
    tool = bench.tool("knife", lambda t: t.hand in ("right", "both"), lambda t: t.nose, "the face")
    if tool is None:
        return
    top = bench.work.top
    dia = bench.work.largest(top, min(0.0, top) - 0.01)
    speed = bench.speed(tool, "facing", dia, "face")
    cut = allowed_cut(bench, tool, bench.work, top, dia, speed, facing=True)
    number = max(1, math.ceil((top - 0.001) / cut.depth))
    inner = -rule("cut", "over_centre") if bored <= 0 else max(0.0, bored / 2 - 1.0)
    moves = [Move(top + 1.0, dia / 2 + rule("cut", "approach"))]
    for n in range(1, number + 1):
        z = top * (1 - n / number)
        moves += [Move(z, dia / 2 + rule("cut", "approach"), rapid=True), Move(z, inner)]
        moves += [
            Move(z + rule("cut", "retract"), inner),
            Move(z + rule("cut", "retract"), dia / 2 + 1.0, rapid=True),
        ]
    length = bench.shape.length
    dim = bench.drawn.length
    measures: tuple[Measure, ...] = ()
    face_name = bench.option.free
    if to_length:
        measures = (bench.measured(f"{bench.part.name}.length", dim, "length"),)
        do, big, kind = f"Face {face_name} to overall length", f"{length.value:.2f}", "mm long"
    else:
        do, big, kind = f"Face {face_name} clean, take off", f"{top:.2f}", "Z mm"
    bench.add(
        Step(
            0,
            do,
            f"face {face_name}",
            named(tool),
            "knife",
            speed.rpm,
            speed.reached,
            cut.feed,
            big,
            kind,
            (
                f"{number} cut{'s' if number > 1 else ''} of {Mm(top / number):.2f} with the top slide "
                f"({graduation_words(bench.shop.lathe.top_slide)}).",
                "Lock the carriage. Touch Z on the finished face and set it to 0.",
            ),
            tuple(
                Pass(
                    round(top * (1 - n / number), 3),
                    round(top / number, 3),
                    f"Z {Mm(top * (1 - n / number)):.2f}",
                )
                for n in range(1, number + 1)
            ),
            cutting_minutes(moves, speed.rpm, cut.feed, number),
            why="A clean face is what every length of this card is measured from.",
            cautions=_kept(cut.bound),
            measure=measures,
            moves=tuple(moves),
            tool_letter=tool.letter,
        )
    )
    bench.work = bench.work.faced(0.0)


def _kept(bound: str) -> tuple[str, ...]:
    return (bound,) if bound else ()


def _stop_words(bench: Bench, far: float) -> str:
    carriage = bench.shop.lathe.carriage
    words = f"Stop at Z {Mm(-far):.2f} from the face"
    if carriage.per_division >= 0.05:
        return f"{words}: carriage {Mm(-far):.1f}, the rest with the top slide"
    return f"{words} on the carriage dial"


def _span(bench: Bench, job: Job) -> tuple[float, float, bool]:
    """(near, far to run to, whether a shoulder stands there)."""
    near, far = span_in_card(job.start, job.end, bench.length, bench.option.free)
    behind = [
        f
        for f in bench.shape.outside
        if abs(span_in_card(f.start, f.end, bench.length, bench.option.free)[0] - far) < 1e-6
    ]
    mine = _dia(bench, job)
    if behind and _first_dia(behind[0], bench) > mine + 1e-6:
        if bench.work.largest(far, far - IN_GROOVE) < mine - 1e-6:
            return near, far - IN_GROOVE, False  # over the edge of a groove that is cut there already
        return near, far, True
    run = rule("cut", "overrun")
    if behind and largest(behind[0]) > mine + 1e-6:  # a cone or curve rises behind: no cut may run into it
        contour = land_contour(behind[0], bench.length, bench.option.free)
        rises = next(z for z, r in contour.points if r > mine / 2 - 0.02)
        return near, far - min(run, max(0.0, far - rises)), False
    if not behind and bench.option.ending:
        run = (
            rule("blank", "part_rest") + 0.2
            if bench.option.ending == "part"
            else rule("blank", "saw_rest") + 0.2
        )
    if not bench.option.spigot and not bench.option.seat:
        run = min(run, max(0.0, far - bench.option.jaw_front - 0.5))
    return near, max(far - run, bench.work.bottom), False


def _over_shaped(bench: Bench, land: Land, near: float) -> float:
    """Where a last cut starts: it also runs over cones, curves and valleys in front, which are cut after it."""
    free = bench.option.free
    order = sorted(bench.shape.outside, key=lambda f: -span_in_card(f.start, f.end, bench.length, free)[0])
    for other in reversed(order[: order.index(land)]):
        if isinstance(other, Cylinder) and by_blade(bench.shape, other, bench.option) <= 0:
            break
        near = span_in_card(other.start, other.end, bench.length, free)[0]
    return near


def _first_dia(feature: Land, bench: Bench) -> float:
    if isinstance(feature, Cylinder):
        return feature.dia.value
    return feature.start_dia if bench.option.free == "A" else feature.end_dia


def _dia(bench: Bench, job: Job) -> float:
    return largest(next(f for f in bench.shape.outside if f.name == job.feature))


def rough(bench: Bench, job: Job, over: float = 0.0, to: float | None = None) -> None:
    """Rough an outside diameter over everything in front of it, leaving the finishing metal.

    ``over`` and ``to`` say another diameter and end than the land's own: the
    bar behind a disc, before a blade goes in there.
    """
    dia = over or _dia(bench, job)
    _, far, shoulder = _span(bench, job) if to is None else (0.0, to, False)
    has = bench.work.largest(bench.work.top, far)
    left = rule("cut", "finish_left")
    target = dia + left
    if has <= target + 0.05:
        return
    tool = bench.tool("knife", lambda t: t.hand in ("right", "both"), lambda t: -t.nose, job.feature)
    if tool is None:
        return
    stop = far + (rule("cut", "face_left") if shoulder else 0.0)
    speed = bench.speed(tool, "turning", has, job.feature)
    after = bench.work.turned(bench.work.top, stop, target)
    cut = allowed_cut(bench, tool, after, bench.work.top, has, speed)
    passes = roughing_passes(has, target, cut.depth, bench.cross)
    moves = _along(bench, [p.to for p in passes], bench.work.top, stop, has, square=False)
    after = bench.work.turned(bench.work.top, stop, passes[-1].to)
    bench.add(
        Step(
            0,
            f"Rough {'the bar over ' if over else ''}{job.feature}, {_cuts(passes)} of "
            f"{Mm(2 * passes[0].infeed):.2f} on diameter",
            job.feature,
            named(tool),
            "knife",
            speed.rpm,
            speed.reached,
            cut.feed,
            f"{passes[-1].to:.2f}",
            "DIA mm",
            (
                f"Touch on {Mm(has):.2f} DIA, set the cross-slide to 0; last cut {passes[-1].dial} in "
                f"({bench.cross_words}).",
                _stop_words(bench, stop) + ".",
            ),
            passes,
            cutting_minutes(moves, speed.rpm, cut.feed, len(passes)),
            why=f"Leaves {Mm(passes[-1].to - dia):.2f} on diameter for the last cuts.",
            cautions=_kept(cut.bound),
            moves=tuple(moves),
            tool_letter=tool.letter,
        )
    )
    bench.work = after


def _along(
    bench: Bench, dias: list[float], near: float, far: float, has: float, *, square: bool
) -> list[Move]:
    """Moves of cuts along the axis; ``square`` draws the tool out along the shoulder."""
    away = has / 2 + rule("cut", "retract")
    start = near + rule("cut", "approach")
    if near < bench.work.top and bench.work.largest(start, near) > min(dias) + 1e-6:
        start = near  # a finished land in front, thicker by less than its limits: go in at its end
    moves = [Move(start, away)]
    for dia in dias:
        moves += [Move(start, dia / 2, rapid=True), Move(far, dia / 2)]
        if square:
            moves.append(Move(far, away))
        else:
            moves.append(Move(far + rule("cut", "retract"), dia / 2 + rule("cut", "retract")))
            moves.append(Move(far + rule("cut", "retract"), away, rapid=True))
        moves.append(Move(start, away, rapid=True))
    return moves


def finish(bench: Bench, job: Job, *, whole: bool = False) -> None:
    """Two equal last cuts to the middle of the limits (one where none are given).

    ``whole`` runs the cut from the free face, when what stands in front is
    not turned yet.
    """
    feature = next(f for f in bench.shape.outside if f.name == job.feature)
    assert isinstance(feature, Cylinder)
    plain = next(f for f in bench.drawn.outside if f.name == job.feature)
    drawn = (
        plain if isinstance(plain, Cylinder) else feature
    )  # an eccentric land as the round that it swings in
    near, far, shoulder = _span(bench, job)
    near = bench.work.top if whole else _over_shaped(bench, feature, near)
    has = bench.work.largest(near, far + (rule("cut", "face_left") + 0.01 if shoulder else 0.0))
    limits = drawn.dia.toleranced
    tool = bench.tool("knife", lambda t: t.hand in ("right", "both"), lambda t: t.nose, job.feature)
    if tool is None:
        return
    speed = bench.speed(tool, "turning", has, job.feature)
    feed = feed_for(bench.part.material, tool.material, "turning", "finishing")
    passes = finishing_passes(has, feature.dia.value, bench.cross, two=limits)
    after = bench.work.turned(near, far, feature.dia.value)
    sprung = (
        _sprung(
            bench,
            job,
            drawn.dia,
            taper_of(
                bench,
                tool,
                after,
                min(near, bench.work.top),
                far,
                (has - feature.dia.value) / 2 / len(passes),
                feed,
                rule("cut", "taper_share") * _width(drawn.dia),
            ),
        )
        if has > feature.dia.value + 1e-6
        else ()
    )
    behind = bench.work.largest(far, far - 0.5) if shoulder else has
    moves = _along(
        bench,
        [*(p.to for p in passes[:-1]), feature.dia.value],
        min(near, bench.work.top),
        far,
        max(has, behind),
        square=shoulder,
    )
    do = f"{'Two equal last cuts' if limits else 'Finish cut'} on {job.feature}"
    if drawn.thread:
        do = f"Turn {job.feature} to the blank for {drawn.thread}"
    dial = [
        _last_cut_words(passes, bench, feature.dia.value),
        _stop_words(bench, far) + (", then draw the tool out to square the shoulder." if shoulder else "."),
        *sprung,
    ]
    measures: tuple[Measure, ...] = ()
    if limits:
        measures = (bench.measured(f"{bench.part.name}.{job.feature}", drawn.dia, "outside"),)
    bench.add(
        Step(
            0,
            do,
            job.feature,
            named(tool),
            "knife",
            speed.rpm,
            speed.reached,
            feed,
            _figure(feature.dia, limits),
            "DIA mm",
            tuple(dial),
            passes,
            cutting_minutes(moves, speed.rpm, feed, len(passes))
            + (rule("minutes", "measure") if limits else 0.0),
            why=(drawn.dia.because[:1].upper() + drawn.dia.because[1:] + ".")
            if drawn.dia.because
            else "Two cuts of the same depth spring the same, so the second lands where the first foretold."
            if limits
            else "",
            cautions=coarse_dial(bench, drawn.dia),
            measure=measures,
            moves=tuple(moves),
            tool_letter=tool.letter,
        )
    )
    bench.work = after


def _width(dim: Dim) -> float:
    """How wide the limits are; ISO 2768-1 class m where none are given [mm]."""
    if dim.smallest is not None and dim.largest is not None:
        return dim.largest - dim.smallest
    return 2 * general_tolerance(max(dim.value, 0.5), "m")


def _sprung(bench: Bench, job: Job, dim: Dim, taper: Taper) -> tuple[str, ...]:
    """What the card says of spring; a finding when it uses up the limits."""
    width = _width(dim)
    most = rule("cut", "taper_share") * width
    if taper.left > most:
        bench.find(
            404,
            "stop" if taper.left > width else "caution",
            f"{job.feature} springs from its last cut: {taper.left:.3f} mm larger at its free end than at the other.",
            feature=job.feature,
            figure=f"{taper.left:.3f} mm on diameter",
            bound=f"{most:.3f} mm, a quarter of its limits of {width:.3f} mm",
            remedy="Support the free end with the tailstock centre, hold it shorter, or use a sharper tool.",
            source="stepped cantilever under the push of the last cut; the chuck's own give is left out",
        )
    if not taper.passes:
        return ()
    times = "once" if taper.passes == 1 else "twice" if taper.passes == 2 else f"{taper.passes} times"
    return (
        f"It springs {Mm(taper.first):.3f}: run over it {times} more without infeed, then measure both ends.",
    )


def coarse_dial(bench: Bench, dim: Dim) -> tuple[str, ...]:
    """The caution where half a division is more than the limits are wide; nothing else."""
    step, width = step_on_diameter(bench.cross), _width(dim)
    if not dim.toleranced or step <= width + 1e-9:
        return ()
    return (
        f"Half a division is {Mm(step):.3f} on diameter, the limits are {Mm(width):.3f} wide: the marks alone do not "
        "hold them. Measure before the last cut, come to the figure between the marks, measure again.",
    )


def _last_cut_words(passes: tuple[Pass, ...], bench: Bench, target: float) -> str:
    dial = bench.cross_words
    if abs(passes[-1].to - target) > 0.0005:
        dial += f"; the marks land on {Mm(passes[-1].to):.3f}"
    if len(passes) > 1:
        return f"Measure. Half of what is left is each cut: {passes[0].dial} if roughing landed ({dial})."
    return f"Measure, then take off what is left: in {passes[0].dial} if roughing landed ({dial})."


def _cuts(passes: tuple[Pass, ...]) -> str:
    return f"{len(passes)} cut{'s' if len(passes) > 1 else ''}"


def _figure(dim: Dim, limits: bool) -> str:
    return f"{dim.value:.3f}" if limits else f"{dim.value:.2f}"
