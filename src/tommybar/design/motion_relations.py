"""How parts lie and move against one another: true, square, clocked, bearing on each other, turning, alike."""

from __future__ import annotations

import math

from tommybar.design.joints import (
    AlikeRelation,
    BeltRelation,
    ClockingRelation,
    ContactRelation,
    FlushRelation,
    PivotRelation,
    RunoutRelation,
    SeatRelation,
    SquareRelation,
    StandsRelation,
    SweepRelation,
)
from tommybar.design.names_looked_up import HOLES, Names, diameter, included_angle
from tommybar.design.reading import TINY
from tommybar.design.written_relations import (
    WrittenAlike,
    WrittenBelt,
    WrittenClocking,
    WrittenContact,
    WrittenFlush,
    WrittenPivot,
    WrittenRunout,
    WrittenSeat,
    WrittenSquare,
    WrittenStands,
    WrittenSweep,
)
from tommybar.design.yaml_file import Place
from tommybar.shapes.features import Dim, PlateShape
from tommybar.shapes.prisms import PLATE_FACES

CUP_OVER_POINT = (
    15.0  # a cup opens at least this much wider than its point [deg] (common practice, no source)
)


def runout(look: Names, one: WrittenRunout, place: Place) -> RunoutRelation | None:
    """A feature true to a datum."""
    found = look.feature(one.runout, (*place, "runout")), look.feature(one.to, (*place, "to"))
    return None if None in found else RunoutRelation(one.runout, one.to, look.read.of(one.within))


def square(look: Names, one: WrittenSquare, place: Place) -> SquareRelation | None:
    """A feature square or parallel to a datum."""
    if bool(one.square) == bool(one.parallel):
        look.read.complain(place, "The relation must have either square or parallel.", "Keep one of the two.")
        return None
    key = "square" if one.square else "parallel"
    known = [
        _face_or_feature(look, name, (*place, at))
        for name, at in ((one.square or one.parallel, key), (one.to, "to"))
    ]
    if not all(known):
        return None
    return SquareRelation(
        one.square or one.parallel, one.to, "square" if one.square else "parallel", look.read.of(one.within)
    )


def _face_or_feature(look: Names, name: str, place: Place) -> bool:
    part, _, feature = name.partition(".")
    if look.part(part, place) is None:
        return False
    shape = look.parts[part].shape
    faces = PLATE_FACES if isinstance(shape, PlateShape) else ("face_a", "face_b")
    return look.read.one_of(feature, (*look.features[part], *faces), place, "feature or face", part)


def clocking(look: Names, one: WrittenClocking, place: Place) -> ClockingRelation | None:
    """The angle between two features; of one part it must be the one drawn."""
    feature, datum = look.feature(one.clock, (*place, "clock")), look.feature(one.to, (*place, "to"))
    if feature is None or datum is None:
        return None
    angle, within = look.read.of(one.angle), look.read.of(one.within)
    drawn = None
    if one.clock.partition(".")[0] == one.to.partition(".")[0]:
        ends = [_angle(which) for which in (feature, datum)]
        if not any(math.isnan(end) for end in ends):
            drawn = (ends[0] - ends[1]) % 360
            if abs((drawn - angle + 180) % 360 - 180) > within + TINY:
                what = f"{one.clock} is drawn {drawn:g} deg from {one.to}; the relation says {angle:g} deg."
                look.read.complain((*place, "angle"), what, "Give both the same angle.")
    return ClockingRelation(one.clock, one.to, angle, within, drawn)


def _angle(feature: object) -> float:
    """Where a feature stands about its axis [deg]; nan when it stands nowhere in particular."""
    return float(getattr(feature, "angle", getattr(feature, "start_angle", math.nan)))


def contact(look: Names, one: WrittenContact, place: Place) -> ContactRelation | None:
    """Two surfaces that bear; a cup must open wider than its point."""
    features = [look.feature(name, (*place, "of", n)) for n, name in enumerate(one.of)]
    if None in features:
        return None
    figures: dict[str, float] = {}
    if one.contact == "point in cup":
        angles = (
            [look.read.of(angle) for angle in one.angles]
            if one.angles
            else [included_angle(feature) for feature in features]
        )
        for name, angle in zip(one.of, angles, strict=True):
            if math.isnan(angle) and not one.angles:
                look.read.complain(
                    (*place, "of"), f"{name} has no included angle.", "Name a cone and a cup, or give angles."
                )
                return None
        if angles[1] < angles[0] + CUP_OVER_POINT - TINY:
            what = f"The point is {angles[0]:g} deg and the cup {angles[1]:g} deg; the cup must be {CUP_OVER_POINT:g} deg more."
            look.read.complain((*place, "of"), what, "Open the cup or sharpen the point.")
        figures = {"point": round(angles[0], 6), "cup": round(angles[1], 6)}
    for key in ("radius", "lift"):
        if (formula := getattr(one, key)) is not None:
            figures[key] = look.read.of(formula)
    return ContactRelation(one.of[0], one.of[1], one.contact, tuple(figures.items()))


def open_belt_length(driver: float, driven: float, centres: float) -> float:
    """Length of an open belt: 2 C + pi (D + d) / 2 + (D - d)^2 / (4 C) [mm].

    Good to 0.1 % while the centres are at least the larger diameter apart.

    Examples
    --------
    >>> round(open_belt_length(40.0, 20.0, 100.0), 2)
    295.25

    References
    ----------
    .. [1] Any handbook of belts (the first two terms of the series).
    """
    return 2 * centres + math.pi * (driver + driven) / 2 + (driver - driven) ** 2 / (4 * centres)


def belt(look: Names, one: WrittenBelt, place: Place) -> BeltRelation | None:
    """A belt; its length and ratio follow from the diameters it runs on."""
    driver, driven = look.figure(one.belt, (*place, "belt")), look.figure(one.drives, (*place, "drives"))
    centres, thick = look.read.of(one.centres), look.read.of(one.thick)
    if math.isnan(driver + driven + centres):
        return None
    if centres < (driver + driven) / 2 - TINY:
        what = f"The centres are {centres:g} mm apart; the pulleys meet at {(driver + driven) / 2:g} mm."
        look.read.complain((*place, "centres"), what, "Move them apart.")
        return None
    large, small = driver + thick, driven + thick  # the middle of the belt
    length = open_belt_length(large, small, centres)
    if one.crossed:
        length = 2 * centres + math.pi * (large + small) / 2 + (large + small) ** 2 / (4 * centres)
    return BeltRelation(
        one.belt,
        one.drives,
        driver,
        driven,
        centres,
        round(large / small, 9),
        round(length, 6),
        one.crossed,
        thick,
        None if one.towards is None else look.read.of(one.towards),
    )


def pivot(look: Names, one: WrittenPivot, place: Place) -> PivotRelation | None:
    """A joint that is adjusted and then locked."""
    found = look.feature(one.pivot, (*place, "pivot")), look.feature(one.in_, (*place, "in"))
    if one.locked_by:
        if "." in one.locked_by:
            look.feature(one.locked_by, (*place, "locked_by"))
        else:
            look.part(one.locked_by, (*place, "locked_by"))
    if None in found:
        return None
    swing = (look.read.of(one.swing[0]), look.read.of(one.swing[1])) if one.swing else (-180.0, 180.0)
    if swing[0] > swing[1]:
        look.read.complain(
            (*place, "swing"), f"It swings from {swing[0]:g} to {swing[1]:g} deg.", "Give the least first."
        )
    return PivotRelation(one.pivot, one.in_, one.locked_by, swing)


def sweep(look: Names, one: WrittenSweep, place: Place) -> SweepRelation | None:
    """Parts that move together past others."""
    moving = [look.part(name, (*place, "sweep")) for name in one.sweep]
    fixed = [look.part(name, (*place, "clear_of")) for name in one.clear_of]
    axis = look.feature(one.about, (*place, "about"))
    both = sorted(set(one.sweep) & set(one.clear_of))
    if both:
        look.read.complain((*place, "clear_of"), f"{both[0]} moves and is to stand still.", "Name it once.")
    if one.turns and one.slides:
        look.read.complain(place, "The parts turn and slide.", "Keep one of the two.")
    if axis is None or None in moving or None in fixed:
        return None
    ends = one.slides or one.turns
    travel = (look.read.of(ends[0]), look.read.of(ends[1])) if ends else (0.0, 360.0)
    return SweepRelation(
        tuple(one.sweep),
        one.about,
        tuple(one.clear_of),
        look.read.of(one.gap),
        "slides" if one.slides else "turns",
        travel,
    )


def alike(look: Names, one: WrittenAlike, place: Place) -> AlikeRelation | None:
    """Parts or features made in one setting."""
    fine = True
    for n, name in enumerate(one.alike):
        here = (*place, "alike", n)
        fine = (look.feature(name, here) if "." in name else look.part(name, here)) is not None and fine
    return AlikeRelation(tuple(one.alike), look.read.of(one.within)) if fine else None


def seat(look: Names, one: WrittenSeat, place: Place) -> SeatRelation | None:
    """A bought part in its seat: the seat copies the figure of the table."""
    part = look.part(one.of, (*place, "of"))
    feature = look.feature(one.seat, (*place, "seat"))
    if part is None or feature is None:
        return None
    if part.envelope is None:
        if not part.bought:
            look.read.complain((*place, "of"), f"{one.of} is not bought.", "Name a bought part.")
        return None
    sizes = dict(part.envelope.sizes)
    if not look.read.one_of(one.figure, sizes, (*place, "figure"), "figure", part.bought):
        return None
    value, has = sizes[one.figure], diameter(feature)
    if not math.isnan(has) and abs(has - value) > TINY:
        what = f"{one.seat} is {has:g} mm; the {one.figure} of {part.bought} is {value:g} mm."
        look.read.complain((*place, "seat"), what, "Give the seat the figure of the table.")
    return SeatRelation(one.of, one.seat, one.figure, value)


def stands(look: Names, one: WrittenStands, place: Place) -> StandsRelation | None:
    """Two faces, or a hole and what goes through it; both of parts that are not one."""
    ends = ((one.stands, (*place, "stands")), (one.on, (*place, "on")))
    if one.stands.partition(".")[0] == one.on.partition(".")[0]:
        look.read.complain(
            (*place, "on"), f"{one.stands} and {one.on} are of one part.", "Name another part."
        )
        return None
    if one.way in ("against", "level"):
        if not all(look.face(name, here) for name, here in ends):
            return None
    else:
        features = [look.feature(name, here) for name, here in ends]
        if None in features:
            return None
        if one.apart is not None:
            look.read.complain(
                (*place, "apart"), f"Faces stand apart; the way is {one.way}.", "Leave it out."
            )
        land, hole = diameter(features[0]), diameter(features[1])
        if one.way == "through" and not isinstance(features[1], HOLES) and not isinstance(features[1], Dim):
            look.read.complain(
                (*place, "on"), f"{one.on} is no hole.", "Name the land first and then its hole."
            )
        elif one.way == "through" and not math.isnan(land + hole) and land > hole + TINY:
            what = f"{one.stands} is {land:g} mm; {one.on} is {hole:g} mm, and it must go through loosely."
            look.read.complain((*place, "on"), what, "Make the hole larger.")
    return StandsRelation(one.stands, one.on, one.way, look.read.of(one.apart))


def flush(look: Names, one: WrittenFlush, place: Place) -> FlushRelation | None:
    """Two sizes kept equal for the look of it."""
    first, second = look.figure(one.flush, (*place, "flush")), look.figure(one.with_, (*place, "with"))
    within = look.read.of(one.within)
    if math.isnan(first + second):
        return None
    if abs(first - second) > within + TINY:
        what = f"{one.flush} is {first:g} mm and {one.with_} {second:g} mm; they are to be alike within {within:g} mm."
        look.read.complain((*place, "flush"), what, "Give both the same figure.")
    return FlushRelation(one.flush, one.with_, within)
