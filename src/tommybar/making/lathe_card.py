"""One lathe card: the steps of a grip in the order of the trade."""

from __future__ import annotations

import math

from tommybar.design.model import Part
from tommybar.findings import Finding
from tommybar.making.back_edges import back_edge, looks_into
from tommybar.making.bench import Bench
from tommybar.making.between_steps import drive_of, set_between, try_taper, why_between
from tommybar.making.cards import Card, Hold, Rejected, RunoutForecast, Step
from tommybar.making.cones import cone_angle, turn_cone
from tommybar.making.contours import in_front, land_contour
from tommybar.making.drilling import drill_bore, edge_of_bore, finish_bore
from tommybar.making.forms import plunge_shaped, round_edge, turn_curve
from tommybar.making.grips import Option
from tommybar.making.hollows import bore_taper, centre_hole, cup, taper_angle, taper_start
from tommybar.making.inside_grooves import inside_groove
from tommybar.making.jobs import Job, largest, span_in_card
from tommybar.making.parting import part_off, saw_off
from tommybar.making.practice import rule
from tommybar.making.reach import by_blade
from tommybar.making.rigidity import slender_now
from tommybar.making.route import SetUp
from tommybar.making.steadies import set_fixed, set_travelling
from tommybar.making.surfaces import edge, groove, knurl, recess, screw
from tommybar.making.tail_centre import bring_up, held_short, tail_brought_up
from tommybar.making.tubes import plugged
from tommybar.making.turning import face, finish, rough
from tommybar.making.valley_cones import waits_for_floor
from tommybar.making.warnings import before_starting, goes_wrong
from tommybar.making.workpiece import Workpiece
from tommybar.resize.limits import keeps_surface, may_be_picked, own_limits, same_material
from tommybar.shapes.features import Arc, Cone, Cylinder, Knurl, Land, TurnedShape
from tommybar.shop.model import Shop


def lathe_card(
    part: Part,
    drawn: TurnedShape,
    shape: TurnedShape,
    set_up: SetUp,
    jobs: tuple[Job, ...],
    work: Workpiece,
    bored: dict[str, float],
    number: int,
    of: int,
    shop: Shop,
    gives_to: dict[str, tuple[str, ...]],
    rejected: tuple[Rejected, ...],
    forecasts: tuple[RunoutForecast, ...],
    hollow: float = 0.0,
) -> tuple[Card, Workpiece, dict[str, float], list[Finding]]:
    """Write the card of one set-up; gives the card, the metal after it, bores so far, findings.

    ``hollow`` is the bore that a tube brings [mm].
    """
    option = plugged(set_up.option, part, hollow) if hollow > 0 else set_up.option
    bench = Bench(part, shape, drawn, option, shop, work, number, gives_to, dict(bored), hollow=hollow)
    todo = [job for job in jobs if job.name in set_up.jobs]
    drive = drive_of(option, shop, shape.length.value)
    sticks_out = work.top - (drive.front if drive and not drive.mandrel else option.jaw_front)
    second = (
        any(step_job.kind == "face" for step_job in jobs if step_job.name not in set_up.jobs) and number > 1
    )
    if number == 1:
        _measure_bar(bench, jobs)
    _cut_all(bench, todo, to_length=number > 1 or second)
    tail = tail_brought_up(bench)
    hold = Hold(
        option.device,
        option.jaws.name if option.jaws else "",
        option.surface,
        round(option.dia, 3),
        math.floor(option.grip * 100) / 100,
        round(sticks_out, 2),
        option.runout,
        _why_held(option.surface, number, bench, todo),
        _seat(option),
        option.seat,
        rejected,
        tail=tail,
        drive=drive,
    )
    card = Card(
        part.name,
        number,
        of,
        "lathe",
        _title(option.free, number, todo),
        option.free,
        hold,
        tuple(bench.steps),
        before_starting(option, shop, sticks_out, slender_now(bench), bench.steps),
        tuple(dict.fromkeys(step.tool for step in bench.steps)),
        minutes=round(bench.minutes + rule("minutes", "set_up"), 1),
        after=f"to card {number + 1}" if number < of else "done in the lathe",
        goes_wrong=goes_wrong(bench.steps, option, part),
        why=_why_order(todo, part),
        runout=forecasts,
    )
    return card, bench.work, bench.bored, bench.findings


def _measure_bar(bench: Bench, jobs: tuple[Job, ...]) -> None:
    """A toleranced size that the bar brings with it is measured before anything is cut."""
    for job in jobs:
        feature = _drawn(bench, job) if job.kind == "outside" and job.as_supplied else None
        if feature is None or not feature.dia.toleranced:
            continue
        _pick_bar(bench, feature)
        bench.add(
            Step(
                0,
                f"Measure the bar: it stays as {job.feature}",
                job.feature,
                "micrometer",
                "hand",
                0.0,
                0.0,
                0.0,
                f"{feature.dia.value:.2f}",
                "DIA mm",
                ("At three places and two ways round; roll it on a flat plate: it must not rock.",),
                minutes=rule("minutes", "measure"),
                why=feature.dia.because or "Its surface is not cut, so what the bar is, the part will be.",
                measure=(bench.measured(f"{bench.part.name}.{job.feature}", feature.dia, "outside"),),
            )
        )


def _pick_bar(bench: Bench, land: Cylinder) -> None:
    """A bar that may be out of the limits that its surface must keep is picked by measuring."""
    dim = land.dia
    assert dim.smallest is not None and dim.largest is not None
    bars = [bar for bar in (*bench.shop.rack, *bench.shop.obtainable) if may_be_picked(bar, land)]
    own = [bar for bar in bars if same_material(bar.material, bench.part.material) and bar.section == "round"]
    if not own or any(keeps_surface(bar, land) for bar in own):
        return
    smallest, largest = own_limits(own[0])
    bench.find(
        206,
        "caution",
        f"{land.name} keeps the bar's surface, since no route turns it: a bar as sold may be out of its limits.",
        feature=land.name,
        figure=f"{smallest:.3f} to {largest:.3f} mm, the bar as sold",
        bound=f"{dim.smallest:.3f} to {dim.largest:.3f} mm",
        remedy=f"Measure along the bar and take a piece that reads {max(smallest, dim.smallest):.3f} to "
        f"{min(largest, dim.largest):.3f} mm; or draw a centre hole in an end, so that it can be turned.",
        source="zones of bright and ground bar, from memory",
    )


def _cut_all(bench: Bench, todo: list[Job], *, to_length: bool) -> None:
    def of_kind(kind: str) -> list[Job]:
        return [job for job in todo if job.kind == kind]

    outside = sorted(
        of_kind("outside"),
        key=lambda job: (
            -round(_dia(bench, job), 6),
            not isinstance(
                _land(bench, job), Cylinder
            ),  # a curve in front is roughed with the cylinder behind it
        ),
    )
    inward = sorted(
        of_kind("outside"),
        key=lambda job: -span_in_card(job.start, job.end, bench.length, bench.option.free)[0],
    )
    held = bench.option
    _held_and_faced(bench, of_kind("face"), of_kind("centre"), to_length=to_length)
    late = [
        job
        for job in inward  # from the free end on, so that what is left stands on thick metal
        if by_blade(bench.shape, _land(bench, job), bench.option) > 0 and not _humped(bench, job)
    ]
    outside = [job for job in outside if job not in late]
    inward = [job for job in inward if job not in late]
    shaped = [job for job in inward if isinstance(_land(bench, job), Cone | Arc)]
    inward = [job for job in inward if job not in shaped]
    knurled = [job for job in outside if _knurl(bench, job) is not None]
    for job in knurled:
        rough(bench, job)
        finish(bench, job, whole=True)
        pattern = _knurl(bench, job)
        assert pattern is not None
        knurl(bench, job, pattern)
    bores = sorted(of_kind("bore"), key=lambda job: (not _through(bench, job), -_bore(bench, job)))
    for job in bores:
        drill_bore(bench, job)
    for job in of_kind("bore taper"):
        taper_start(bench, job)
    for job in outside:
        if job not in knurled:
            rough(bench, job)
    if held.dog is not None and held.mandrel == 0 and outside:
        try_taper(bench, [_land(bench, job) for job in outside])
    for job in (*of_kind("recess"), *of_kind("face groove")):
        recess(bench, job)
    inside = of_kind("bore groove")
    for job in inside:
        if _tapped(bench, job):
            inside_groove(bench, job)  # where the tap runs out
    for job in bores:
        finish_bore(bench, job)
    for job in inside:
        if not _tapped(bench, job):
            inside_groove(bench, job)
    for job in inward:
        if job not in knurled:
            finish(bench, job)
    for job in of_kind("groove"):
        groove(bench, job)
    low = frozenset(job.feature for job in late)
    in_valley = [job for job in of_kind("edge") if looks_into(bench, job, low)]
    for job in of_kind("edge"):
        if job not in in_valley:
            edge(bench, job)
    deep_edges = [job for job in of_kind("bore edge") if 0.0 < job.start < bench.length]
    for job in of_kind("bore edge"):
        if job not in deep_edges:
            edge_of_bore(bench, job)
    _swivelled(bench, shaped, of_kind("bore taper"), of_kind("cup"))
    for job in deep_edges:
        edge_of_bore(bench, job)
    for job in shaped:
        if isinstance(_land(bench, job), Arc):
            turn_curve(bench, job)
    behind = [job for job in of_kind("round") if job.side != held.free]
    for job in of_kind("round"):
        if job not in behind:
            round_edge(bench, job)
    for job in inward:
        if _thread(bench, job):
            screw(bench, job)
    for job in waits_for_floor(bench, late):
        plunge_shaped(bench, job)
    for job in in_valley:
        (edge if job.side == held.free else back_edge)(bench, job)
    for job in behind:
        round_edge(bench, job)
    if bench.option.ending == "part":
        part_off(bench)
    elif bench.option.ending == "saw":
        saw_off(bench)


def _held_and_faced(bench: Bench, faces: list[Job], centres: list[Job], *, to_length: bool) -> None:
    """Steady, face and centre hole, in that order; then dog, tail centre or travelling steady for what follows."""
    held = bench.option
    pushed = held.dia <= bench.shop.lathe.spindle_bore  # back into the spindle
    short = held.centre > 0 and held.surface == "blank" and held.dog is None and pushed
    if held.steady is not None and held.steady.kind == "fixed":
        set_fixed(bench)
    if short:
        bench.option = held_short(held)
    if faces:
        made = max((bench.bored.get(b.name, 0.0) for b in bench.shape.bores if b.through), default=0.0)
        face(bench, to_length=to_length, bored=made)
    for job in centres:
        centre_hole(bench, job)
    bench.option = held
    if held.dog is not None:
        set_between(bench)
    elif held.centre > 0:
        bring_up(bench, drawn_out=short)
    if held.steady is not None and held.steady.kind == "travelling":
        set_travelling(bench)


def _swivelled(bench: Bench, shaped: list[Job], tapers: list[Job], cups: list[Job]) -> None:
    """What the swivelled top slide cuts, one angle after the other, so that it is set once for each."""
    for job in cups:
        cup(bench, job)
    slides = [
        (cone_angle(bench, job), turn_cone, job) for job in shaped if isinstance(_land(bench, job), Cone)
    ]
    slides += [(taper_angle(bench, job), bore_taper, job) for job in tapers]
    for _, cut, job in sorted(slides, key=lambda one: (round(one[0], 3), one[2].name)):
        cut(bench, job)


def _land(bench: Bench, job: Job) -> Land:
    return next(f for f in bench.shape.outside if f.name == job.feature)


def _humped(bench: Bench, job: Job) -> bool:
    """Whether a curve rises before it falls, in the open, so that knife and blade share it."""
    land = _land(bench, job)
    if not isinstance(land, Arc):
        return False
    contour = land_contour(land, bench.length, bench.option.free)
    near, r_near = contour.points[0]
    open_to_knife = in_front(bench.shape, land, bench.option.free) <= r_near + 1e-6
    return open_to_knife and contour.apex < near - 1e-6


def _dia(bench: Bench, job: Job) -> float:
    return largest(next(f for f in bench.shape.outside if f.name == job.feature))


def _drawn(bench: Bench, job: Job) -> Cylinder | None:
    feature = next(f for f in bench.drawn.outside if f.name == job.feature)
    return feature if isinstance(feature, Cylinder) else None


def _knurl(bench: Bench, job: Job) -> Knurl | None:
    feature = _drawn(bench, job)
    return feature.knurl if feature else None


def _thread(bench: Bench, job: Job) -> str:
    feature = _drawn(bench, job)
    return feature.thread if feature else ""


def _bore(bench: Bench, job: Job) -> float:
    return next(b.dia.value for b in bench.drawn.bores if b.name == job.feature)


def _tapped(bench: Bench, job: Job) -> bool:
    groove = next(one for one in bench.drawn.bore_grooves if one.name == job.feature)
    return any(b.name == groove.on and b.thread for b in bench.drawn.bores)


def _through(bench: Bench, job: Job) -> bool:
    return next(b.through for b in bench.drawn.bores if b.name == job.feature)


def _title(free: str, number: int, todo: list[Job]) -> str:
    main = [job.feature for job in todo if job.kind in ("outside", "bore", "recess")]
    ends = "face and centre" if any(job.kind == "centre" for job in todo) else "face"
    what = ", ".join(dict.fromkeys(main)) or ends
    return (
        f"{'first' if number == 1 else 'second' if number == 2 else 'next'} end, face {free} outwards: {what}"
    )


def _why_held(surface: str, number: int, bench: Bench, todo: list[Job]) -> str:
    together = [
        f"{need.of} and {need.to}"
        for need in bench.part.needs
        if {need.of, need.to} <= {j.name for j in todo}
    ]
    if together:
        return "One grip, because " + "; ".join(together) + " must run true to each other."
    if bench.option.dog is not None:
        return why_between(bench.option)
    if surface == "blank":
        return "The blank's own surface is the only grip there is before anything is turned."
    return f"{surface} is finished and long enough to hold by; what is left needs the other face free."


def _seat(option: Option) -> str:
    if option.jaws is not None and option.jaws.device == "collets" and "sleeve" not in option.device:
        return ""  # a collet has nothing to seat against
    if option.dog is not None:
        return ""
    if option.surface == "blank":
        return (
            "" if option.ending or option.jaw_front > -option.dia / 4 else "seated back against the jaw steps"
        )
    return "seated on its finished face, tapped home while tightening"


def _why_order(todo: list[Job], part: Part) -> str:
    kinds = {job.kind for job in todo}
    words = ["Face first, because every length is measured from it."] if "face" in kinds else []
    if "bore" in kinds and "outside" in kinds:
        words.append(
            "Heavy roughing before the reamer and the last cuts, because it heats and springs the metal."
        )
    return " ".join(words)
