"""What machine, grip and work stand of a cut: its depth, and how far the work springs from it."""

from __future__ import annotations

import itertools
import math
from dataclasses import dataclass

from tommybar.facts.materials import material
from tommybar.making.bench import Bench
from tommybar.making.cuts import Speed, feed_span
from tommybar.making.grips import Option, jaw_force, slenderness
from tommybar.making.lengths import Mm
from tommybar.making.practice import rule
from tommybar.making.workpiece import Workpiece
from tommybar.mechanics.between_centres import alike_between_centres, centres_give
from tommybar.mechanics.cutting import cutting_force
from tommybar.mechanics.deflection import deflection
from tommybar.mechanics.drilling import lip_torque
from tommybar.mechanics.drive import deepest_cut, spindle_torque
from tommybar.mechanics.holding import grip_against_slip, tilt_moment
from tommybar.mechanics.nose_radius import in_plane_force, nose_chip
from tommybar.mechanics.stepped_bar import Lengths, stepped_give
from tommybar.shop.model import Tool

STEEL = 205000.0  # modulus of a boring bar [MPa]
APPROACH = 75.0  # angle of a knife's edge to the axis [deg]; common practice, no source


@dataclass(frozen=True)
class Allowed:
    """The deepest cut, and what keeps it there when it is not the bench's habit."""

    depth: float  # off the radius [mm]
    feed: float  # [mm/rev]
    bound: str = ""  # words for the card; empty when the rule of thumb is the least


def pieces(bench: Bench, work: Workpiece) -> Lengths:
    """Length, diameter and bore of what stands out of the jaws, from there outwards; the whole of it between centres [mm]."""
    front = bench.option.jaw_front if bench.option.dog is None else work.bottom
    marks = {front, *(z for near, far, _ in work.spans for z in (near, far))}
    hollow = []
    for bore in bench.shape.bores:
        has = bench.bored.get(bore.name, 0.0)
        if has <= 0:
            continue
        if bore.through:
            near, far = math.inf, -math.inf
        elif bore.face == bench.option.free:
            near, far = math.inf, -bore.depth
        else:
            near, far = -bench.length + bore.depth, -math.inf
        hollow.append((near, far, has))
        marks |= {z for z in (near, far) if abs(z) < 1e9}
    cuts = sorted(z for z in marks if front - 1e-9 <= z <= work.top + 1e-9)
    found = []
    for low, high in itertools.pairwise(cuts):
        dia = work.largest(high, low)
        if high - low < 1e-6 or dia <= 0:
            continue
        inside = max(
            (has for near, far, has in hollow if near >= high - 1e-6 and far <= low + 1e-6), default=0.0
        )
        found.append((high - low, dia, min(inside, 0.98 * dia)))
    return tuple(found)


def slender_now(bench: Bench) -> float:
    """How many of its diameters the work stands out of its grip, or lies between its centres, as it is now [-]."""
    out = pieces(bench, bench.work)
    if bench.option.dog is None or bench.option.mandrel > 0 or not out:
        return slenderness(out)
    return sum(long for long, _, _ in out) / alike_between_centres(out)


def give(bench: Bench, work: Workpiece, z: float) -> float:
    """How far the work gives way at z under one newton; 0 on a shoulder, which takes the push [mm/N]."""
    option = bench.option
    if option.mandrel:
        return _on_mandrel(option, z, bench.length)
    if option.spigot or option.seat or option.steady is not None:  # the fingers take the push
        return 0.0
    out = pieces(bench, work)
    whole = sum(long for long, _, _ in out)
    if option.dog is not None:
        at = min(max(z - work.bottom, 0.0), whole)
        return centres_give(out, at, material(bench.part.material).modulus) if out else 0.0
    at = min(z - option.jaw_front, whole)
    if not out or at <= 0:
        return 0.0
    return stepped_give(out, at, material(bench.part.material).modulus, bench.centred > 0)


def _on_mandrel(option: Option, z: float, length: float) -> float:
    """Give of a mandrel between centres at z, the work on it not counted as stiff [mm/N]."""
    assert option.dog is not None
    behind = rule("tailstock", "mandrel_gap") + option.dog.wide + rule("tailstock", "mandrel_end")
    whole = behind + length + rule("tailstock", "mandrel_free")
    at = min(max(z + length + behind, 0.0), whole)
    return centres_give(((whole, option.mandrel, 0.0),), at, STEEL)


def allowed_cut(
    bench: Bench, tool: Tool, work: Workpiece, z: float, dia: float, speed: Speed, *, facing: bool = False
) -> Allowed:
    """The deepest roughing (or facing) cut at z on that diameter, with the feed that goes with it.

    ``work`` is the metal as it will stand when the last cut is taken. Below
    the least cut the feed is brought down; when even that does not help there
    is a stop with its figure.
    """
    kind = material(bench.part.material)
    soft = kind.family in ("brass", "aluminium", "plastic", "bronze", "copper")
    thumb = rule("cut", "face" if facing else "rough_soft" if soft else "rough_steel")
    feeds = feed_span(
        *(("facing", tool.material, "finishing") if facing else ("turning", tool.material, "roughing"))
    )
    usual = feeds.low + (feeds.high - feeds.low) / 3
    least = rule("cut", "least")
    for feed in (usual, feeds.low):
        limits = _limits(bench, work, z, dia, speed, feed, springs=not facing)
        depth, bound, figure = min(limits)
        if depth >= thumb:
            return Allowed(thumb, feed)
        if depth >= least:
            return Allowed(depth, feed, f"Cuts kept to {Mm(depth):.2f} deep: {bound}.")
    bench.find(
        403,
        "stop",
        f"Not even a cut of {least:g} mm can be taken on {dia:.1f} mm: {bound}.",
        feature=bench.option.surface,
        figure=f"{depth:.3f} mm deep at {feeds.low:g} mm/rev",
        bound=f"{least:g} mm, the least cut; {figure}",
        remedy="A longer or larger grip, a tailstock centre, a slower gear, or a smaller blank.",
        source="cutting force by specific cutting force; jaw forces are common practice, no source",
    )
    return Allowed(least, feeds.low, f"Cuts kept to {Mm(least):.2f} deep: {bound}.")


def _limits(
    bench: Bench, work: Workpiece, z: float, dia: float, speed: Speed, feed: float, *, springs: bool
) -> list[tuple[float, str, str]]:
    """(depth, words, the limit in figures) of everything that bounds a cut."""
    kind, lathe, option = material(bench.part.material), bench.shop.lathe, bench.option
    torque = spindle_torque(lathe.power, max(speed.rpm, 1.0), lathe.efficiency)
    found = [
        (
            deepest_cut(torque, dia, kind.kc11, kind.mc, feed, APPROACH),
            f"the motor gives {torque:.1f} N m at {speed.rpm:g} rev/min",
            f"{lathe.power:g} W",
        )
    ]
    if option.spigot or option.seat:
        if not option.mandrel:
            return found
        most = rule("tailstock", "mandrel_cut")
        found.append((most, "the taper of the mandrel alone turns the work", f"{most:g} mm, common practice"))
        return [*found, *_springs(bench, work, z, feed, springs)]
    if option.dog is not None:  # its screw does not slip
        return [*found, *_springs(bench, work, z, feed, springs)]
    force = cutting_force(kind.kc11, kind.mc, feed, 1.0, APPROACH)
    along, away = rule("cut", "along_share") * force, rule("cut", "away_share") * force
    has, rubs, safe = jaw_force(option), rule("holding", "friction"), rule("holding", "safety")
    needed = grip_against_slip(force, along, dia, option.dia, rubs, safe)
    found.append(
        (
            has / needed,
            f"{option.device} on {Mm(option.dia):.1f} would slip under more",
            f"{has:g} N of jaw force",
        )
    )
    lever = (z - option.jaw_front) / 1000
    if lever > 0 and not bench.centred and option.steady is None:
        _, most = tilt_moment(has, option.grip, option.dia, rubs)
        found.append(
            (
                most / (safe * math.hypot(force, away) * lever),
                f"a grip {Mm(option.grip):.1f} long would tilt under more, {Mm(1000 * lever):.0f} away from it",
                f"{has:g} N of jaw force",
            )
        )
    return [*found, *_springs(bench, work, z, feed, springs)]


def _springs(
    bench: Bench, work: Workpiece, z: float, feed: float, springs: bool
) -> list[tuple[float, str, str]]:
    """The depth at which the work springs as far as it may; between centres and with a centre, where it springs most."""
    kind = material(bench.part.material)
    away = rule("cut", "away_share") * cutting_force(kind.kc11, kind.mc, feed, 1.0, APPROACH)
    gives = give(bench, work, z) if springs else 0.0
    if springs and bench.option.dog is not None:
        low, high = work.bottom, work.top
        gives = max(give(bench, work, low + (high - low) * n / 8) for n in range(9))
    if gives <= 0:
        return []
    most = rule("cut", "spring_rough")
    return [(most / (gives * away), f"the work springs {Mm(most):g} then", f"{most:g} mm of spring")]


def drilling_feed_held(
    bench: Bench, drill: float, opened: float, speed: Speed, feed: float, feature: str
) -> Allowed:
    """The feed at which motor and grip turn a drill, over the hole that it opens [mm].

    The lips' torque and half as much again, which goes with the area that is
    cut: a hole opened before takes its share away. Torque goes with the feed
    to the power of 1 - mc.
    """
    if feed <= 0 or speed.rpm <= 0 or opened >= drill:
        return Allowed(drill, feed)
    kind = material(bench.part.material)
    share = 1 - (opened / drill) ** 2
    needs = rule("cut", "drill_torque") * share * lip_torque(kind.kc11, kind.mc, drill, feed)
    has, bound = _torque_there(bench, speed)
    if needs <= has:
        return Allowed(drill, feed)
    lower = float(feed * (has / needs) ** (1 / (1 - kind.mc)))
    if lower < rule("cut", "drill_feed_least") * feed:
        bench.find(
            405,
            "caution",
            f"{feature}: the drill of {drill:g} mm asks for {needs:.1f} N m, {has:.1f} is what {bound} gives.",
            feature=feature,
            figure=f"{needs:.1f} N m at {feed:.3f} mm/rev",
            bound=f"{has:.1f} N m",
            remedy="Open the hole in smaller steps, run a slower gear, or bore it from a smaller drill.",
            source="torque of the lips by specific cutting force, half as much again; jaw forces have no source",
        )
    return Allowed(drill, lower, f"Feed kept to {lower:.3f} a turn: {bound} gives {has:.1f} N m and no more.")


def _torque_there(bench: Bench, speed: Speed) -> tuple[float, str]:
    """What turns the work at that speed, the motor or the grip, whichever gives less [N m], and which it is."""
    lathe, option = bench.shop.lathe, bench.option
    motor = spindle_torque(lathe.power, speed.rpm, lathe.efficiency)
    if not option.spigot and not option.seat:
        holds = (
            jaw_force(option) * rule("holding", "friction") * option.dia / 2000 / rule("holding", "safety")
        )
        if holds < motor:
            return holds, f"{option.device} on {Mm(option.dia):.1f}"
    return motor, f"the motor at {speed.rpm:g} rev/min"


def plunging_feed_held(
    bench: Bench, wide: float, dia: float, speed: Speed, feed: float, feature: str
) -> Allowed:
    """The feed at which motor and grip turn the work against a blade of that width [mm].

    The whole edge cuts at once: force b h^(1 - mc) kc1.1 at the rim.
    """
    if feed <= 0 or speed.rpm <= 0 or dia <= 0:
        return Allowed(wide, feed)
    kind = material(bench.part.material)
    needs = cutting_force(kind.kc11, kind.mc, feed, wide, 90.0) * dia / 2000
    has, bound = _torque_there(bench, speed)
    if needs <= has:
        return Allowed(wide, feed)
    lower = float(feed * (has / needs) ** (1 / (1 - kind.mc)))
    if lower < rule("cut", "drill_feed_least") * feed:
        bench.find(
            405,
            "caution",
            f"{feature}: a blade {wide:g} mm wide asks for {needs:.1f} N m at the rim, {has:.1f} is what {bound} gives.",
            feature=feature,
            figure=f"{needs:.1f} N m at {feed:.3f} mm/rev",
            bound=f"{has:.1f} N m",
            remedy="Take a narrower blade, a slower gear or a longer grip; or saw it off.",
            source="cutting force by specific cutting force; jaw forces have no source",
        )
    return Allowed(wide, lower, f"Feed kept to {lower:.3f} a turn: {bound} gives {has:.1f} N m and no more.")


def boring_cut(bench: Bench, tool: Tool, depth: float, feed: float) -> float:
    """The deepest cut that a steel bar standing out so far makes without springing more than a roughing cut may [mm]."""
    kind = material(bench.part.material)
    gives = deflection("cantilever", 1.0, depth, depth, max(tool.shank, 1.0), STEEL)
    away = rule("cut", "away_share") * cutting_force(kind.kc11, kind.mc, feed, 1.0, APPROACH)
    return min(rule("cut", "bore"), rule("cut", "spring_rough") / (gives * away))


def last_cut_push(bench: Bench, tool: Tool, depth: float, feed: float) -> float:
    """How hard a last cut pushes the work away from the tool [N]."""
    kind = material(bench.part.material)
    if tool.nose <= feed / 2 or depth >= 2 * tool.nose:
        return rule("cut", "away_share") * cutting_force(kind.kc11, kind.mc, feed, depth, APPROACH)
    chip = nose_chip(tool.nose, depth, feed, APPROACH)
    force = kind.kc11 * chip.edge * chip.thickness ** (1 - kind.mc)
    return in_plane_force(force, rule("cut", "thin_share"), tool.nose, depth, feed, APPROACH).radial


@dataclass(frozen=True)
class Taper:
    """What the spring of the last cuts leaves: larger at the free end, on diameter [mm]."""

    first: float  # after the last cut alone
    left: float  # after the spring passes
    passes: int  # cuts without further infeed


def taper_of(
    bench: Bench, tool: Tool, work: Workpiece, near: float, far: float, depth: float, feed: float, most: float
) -> Taper:
    """The taper between both ends of a land, and the spring passes that bring it to ``most`` [mm].

    The same spring all along is measured and taken off with the last cut;
    what stays is the difference between its ends.
    """
    more = give(bench, work, near) - give(bench, work, max(far, bench.option.jaw_front))
    if bench.centred:
        middle = max(give(bench, work, near + (far - near) * n / 8) for n in range(9))
        more = middle - min(give(bench, work, near), give(bench, work, max(far, bench.option.jaw_front)))
    stiff = last_cut_push(bench, tool, depth, feed) / depth
    q = more * stiff
    left = 2 * depth * q / (1 + q)
    first = left
    passes = 0
    while left > most and passes < rule("cut", "spring_passes") and left / 2 > rule("cut", "rubs"):
        passes += 1
        left *= q / (1 + q)
    return Taper(first, left, passes)
