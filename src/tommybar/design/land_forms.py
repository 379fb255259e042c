"""Lands that are no plain cylinder: how long each is by its own figures, and what it is made of."""

from __future__ import annotations

import math
from typing import Literal

from tommybar.design.reading import TINY, Reading
from tommybar.design.written_lands import WrittenCone, WrittenCurve, WrittenLand
from tommybar.design.yaml_file import Place
from tommybar.facts.tapers import taper
from tommybar.refusals import Refusal
from tommybar.shapes.features import Arc, Cone, Eccentric
from tommybar.shapes.features import Land as Outside

AGREES = 1e-3  # a length that is written and one that follows may differ by so much [mm]


def own_long(read: Reading, land: WrittenLand, place: Place) -> float:
    """Length by the land's own figures [mm]; nan when it is left out, to take what is left."""
    written = read.of(land.long, math.nan)
    follows = _following(read, land, place)
    if math.isnan(follows):
        return written
    if land.long is not None and abs(written - follows) > AGREES:
        what = (
            f"The {land.form} comes to {follows:.4g} mm of length by its figures; long says {written:g} mm."
        )
        read.complain((*place, "long"), what, "Leave long out, or change a figure.")
    return follows


def _following(read: Reading, land: WrittenLand, place: Place) -> float:
    """The length that follows from a form's figures, or nan."""
    dia = read.of(land.dia, math.nan)
    if land.point:
        half = _half(read, read.of(land.point.included) / 2, (*place, "point", "included"))
        flat = read.of(land.point.flat)
        if flat >= dia:
            what = f"The flat of the point is {flat:g} mm; its land is {dia:g} mm in diameter."
            read.complain((*place, "point", "flat"), what, "Make the flat smaller.")
            return math.nan
        return (dia - flat) / 2 / math.tan(math.radians(half))
    if land.dome and land.dome.radius:
        radius = read.of(land.dome.radius)
        if radius < dia / 2 - TINY:
            what = f"The dome's radius is {radius:g} mm; its land of {dia:g} mm needs {dia / 2:g} mm or more."
            read.complain((*place, "dome", "radius"), what, "Make the radius larger.")
            return math.nan
        return radius - math.sqrt(max(0.0, radius**2 - dia**2 / 4))
    if land.ball:
        return _ball_long(read, land, place)
    if land.fillet:
        radius, step = read.of(land.fillet.radius), _step(read, land.fillet)
        if step > radius + TINY or step <= TINY:
            what = f"The fillet's radius is {radius:g} mm; the step from end to end is {step:g} mm."
            read.complain(
                (*place, "fillet", "radius"), what, "A fillet's step lies between 0 and its radius."
            )
            return math.nan
        return math.sqrt(max(0.0, radius**2 - (radius - step) ** 2))
    if land.ogee and land.ogee.radius:
        radius = read.of(land.ogee.radius)
        step = abs(read.of(land.ogee.a) - read.of(land.ogee.b)) / 2
        if step > 2 * radius + TINY or step <= TINY:
            what = f"The ogee's radii are {radius:g} mm each; the step from end to end is {step:g} mm."
            read.complain(
                (*place, "ogee", "radius"), what, "Its step lies between 0 and both radii together."
            )
            return math.nan
        return math.sqrt(max(0.0, 4 * radius * step - step**2))
    if isinstance(land.cone, WrittenCone):
        return _cone_long(read, land.cone, land.long is not None, place)
    return math.nan


def _ball_long(read: Reading, land: WrittenLand, place: Place) -> float:
    assert land.ball is not None
    radius, long = read.of(land.ball.dia) / 2, 0.0
    for key, neck in (("neck_a", land.ball.neck_a), ("neck_b", land.ball.neck_b)):
        half = read.of(neck) / 2
        if half > radius:
            what = f"The neck is {2 * half:g} mm in diameter; the ball is {2 * radius:g} mm."
            read.complain((*place, "ball", key), what, "Make the neck smaller.")
            return math.nan
        long += math.sqrt(max(0.0, radius**2 - half**2))
    return long


def _step(read: Reading, curve: WrittenCurve) -> float:
    return abs(read.of(curve.a) - read.of(curve.b)) / 2


def _half(read: Reading, angle: float, place: Place) -> float:
    """A half angle that may be [deg]; 45 in place of one that is refused."""
    if angle <= 0 or angle >= 90:
        what = f"The angle comes to {2 * angle:g} deg between the sides; it must lie between 0 and 180 deg."
        read.complain(place, what, "Check the angle.")
        return 45.0
    return angle


def cone_half_angle(
    read: Reading, cone: WrittenCone, place: Place, key: str = "cone"
) -> tuple[float, float, float]:
    """Half angle [deg], large diameter and length of a standard taper [mm]; nan for what is not said."""
    if cone.taper:
        try:
            found = taper(cone.taper)
        except Refusal as refusal:
            read.wrong += read.file.complaints((*place, key, "taper"), refusal)
            return 45.0, math.nan, math.nan
        return found.half_angle, found.large_end or math.nan, found.length or math.nan
    if cone.half_angle:
        return _half(read, read.of(cone.half_angle), (*place, key, "half_angle")), math.nan, math.nan
    if cone.included:
        return _half(read, read.of(cone.included) / 2, (*place, key, "included")), math.nan, math.nan
    return math.nan, math.nan, math.nan


def _cone_long(read: Reading, cone: WrittenCone, has_long: bool, place: Place) -> float:
    angle, standard_large, standard_long = cone_half_angle(read, cone, place)
    angles = [key for key in ("half_angle", "included", "taper") if getattr(cone, key)]
    if len(angles) > 1:
        what = f"The cone has {' and '.join(angles)}; one says how steep it is."
        read.complain((*place, "cone"), what, "Keep one of them.")
    if cone.large and cone.small and angles and not has_long:
        large, small = read.of(cone.large), read.of(cone.small)
        return (large - small) / 2 / math.tan(math.radians(angle))
    if cone.large and cone.small and angles:
        what = "The cone has large, small, an angle and long; three of them say it all."
        read.complain((*place, "cone"), what, "Leave one out.")
    if cone.taper and not has_long and not (cone.large and cone.small):
        return standard_long
    lacking = (
        len([1 for one in (cone.large or not math.isnan(standard_large), cone.small, angles) if one]) < 2
    )
    if lacking:
        what = "The cone has too few figures; it needs two of large, small and an angle beside long."
        read.complain((*place, "cone"), what, "Add one.")
    return math.nan


def cone_ends(read: Reading, cone: WrittenCone, long: float, place: Place) -> tuple[float, float, str]:
    """Large and small diameter of a taper of that length [mm], and which three figures say it."""
    angle, standard_large, _ = cone_half_angle(read, cone, place)
    rise = 2 * long * math.tan(math.radians(angle)) if not math.isnan(angle) else math.nan
    large, small = read.of(cone.large, standard_large), read.of(cone.small, math.nan)
    given = "D d L"
    if cone.small is None:
        small, given = large - rise, "D L a"
    elif (cone.large is None and math.isnan(standard_large)) or cone.large is None:
        large, given = small + rise, "d L a"
    elif not math.isnan(angle):
        given = "D d a"
    if small < -TINY:
        what = (
            f"The cone narrows by {rise:.4g} mm over its {long:.4g} mm of length; "
            f"its large diameter is {large:g} mm."
        )
        read.complain((*place, "cone"), what, "Make it shorter or slimmer.")
    if small >= large - TINY:
        what = f"The cone goes from {large:g} to {small:g} mm; large must be the larger."
        read.complain((*place, "cone"), what, "Exchange or correct them.")
    return large, max(small, 0.0), given


def end_diameters(
    read: Reading, land: WrittenLand, long: float, first: bool, place: Place
) -> tuple[float, float]:
    """Diameters at the A and B end of a land of that form and length [mm]."""
    dia = read.of(land.dia, math.nan)
    if isinstance(land.cone, WrittenCone):
        large, small, _ = cone_ends(read, land.cone, long, place)
        return (large, small) if land.cone.small_at == "b" else (small, large)
    if land.cone:
        return read.of(land.cone[0]), read.of(land.cone[1])
    if land.point:
        flat = read.of(land.point.flat)
        return (flat, dia) if first else (dia, flat)
    if land.dome:
        return (0.0, dia) if first else (dia, 0.0)
    if land.ball:
        return read.of(land.ball.neck_a), read.of(land.ball.neck_b)
    curve = land.cove or land.fillet or land.ogee
    if curve:
        return read.of(curve.a), read.of(curve.b)
    if land.crown:
        low = dia - 2 * _drop(read, land, long, place)
        return low, low
    assert land.eccentric is not None
    swing = dia + 2 * read.of(land.eccentric.throw)
    return swing, swing


def _drop(read: Reading, land: WrittenLand, long: float, place: Place) -> float:
    """How far a crown's edges drop [mm on radius]."""
    assert land.crown is not None
    if (land.crown.radius is None) == (land.crown.drop is None):
        read.complain((*place, "crown"), "The crown must have either radius or drop.", "Keep one of the two.")
        return 0.0
    drop, dia = read.of(land.crown.drop, math.nan), read.of(land.dia)
    if land.crown.radius:
        radius = read.of(land.crown.radius)
        if radius < long / 2:
            what = f"The crown's radius is {radius:g} mm; the land is {long:g} mm long and needs half of it."
            read.complain((*place, "crown", "radius"), what, "Make the radius larger.")
            return 0.0
        drop = radius - math.sqrt(radius**2 - long**2 / 4)
    if 2 * drop >= dia:
        what = f"The crown drops {drop:.4g} mm at its edges; the land is {dia:g} mm in diameter."
        read.complain((*place, "crown"), what, "Make the crown flatter.")
        return 0.0
    return drop


def form_features(
    read: Reading,
    part: str,
    land: WrittenLand,
    ends: tuple[float, float],
    start: float,
    end: float,
    place: Place,
) -> list[Outside]:
    """The features of a land that is no cylinder."""
    name, (a, b), long = land.name, ends, end - start
    if land.eccentric:
        dim = read.dim(read.of(land.dia, math.nan), f"{part}.{name}", place, land.limits)
        throw = read.of(land.eccentric.throw)
        return [Eccentric(name, dim, start, end, throw, read.of(land.eccentric.angle))]
    if isinstance(land.cone, WrittenCone):
        large, _, given = cone_ends(Reading(read.file, read.unit, read.values), land.cone, long, place)
        limits = read.dim(large, f"{part}.{name}", place, land.cone.limits) if land.cone.limits else None
        return [Cone(name, start, end, a, b, given, land.cone.taper, limits)]  # type: ignore[arg-type]
    if land.cone:
        return [Cone(name, start, end, a, b)]
    if land.point:
        return [Cone(name, start, end, a, b, "D d a")]
    if land.ogee:
        return _ogee(name, a, b, start, end)
    radius, bulge, form = _arc(read, land, a, b, long)
    return [Arc(name, start, end, a, b, radius, bulge, form)]


def _arc(
    read: Reading, land: WrittenLand, a: float, b: float, long: float
) -> tuple[float, Literal["out", "in"], Literal["dome", "ball", "crown", "cove", "fillet"]]:
    if land.ball:
        return read.of(land.ball.dia) / 2, "out", "ball"
    if land.dome:
        half = max(a, b) / 2
        return read.of(land.dome.radius, (half**2 + long**2) / (2 * long)), "out", "dome"
    if land.crown:
        drop = (read.of(land.dia) - a) / 2
        return (long**2 / 4 + drop**2) / (2 * drop) if drop > 0 else math.nan, "out", "crown"
    if land.cove:
        return read.of(land.cove.radius), "in", "cove"
    assert land.fillet is not None
    return read.of(land.fillet.radius), "in", "fillet"


def _ogee(name: str, a: float, b: float, start: float, end: float) -> list[Outside]:
    """Two equal arcs that meet in the middle: hollow beside the smaller end, bulging beside the larger."""
    step, long = abs(a - b) / 2, end - start
    radius = (long**2 + step**2) / (4 * step) if step else math.nan
    middle, half = (start + end) / 2, (a + b) / 2
    first: Literal["out", "in"] = "in" if a < b else "out"
    last: Literal["out", "in"] = "out" if a < b else "in"
    return [
        Arc(f"{name}_a", start, middle, a, half, radius, first, "ogee"),
        Arc(f"{name}_b", middle, end, half, b, radius, last, "ogee"),
    ]


def arc_fault(read: Reading, feature: Outside, place: Place) -> None:
    """Tell when an arc cannot join its two ends."""
    from tommybar.shapes.outside import arc_of

    if isinstance(feature, Arc) and not math.isnan(feature.radius + feature.start_dia + feature.end_dia):
        try:
            arc_of(feature)
        except Refusal as refusal:
            read.wrong += read.file.complaints(place, refusal)
