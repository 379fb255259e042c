"""Parts of sheet and wire with their figures filled in, and what cannot be bent or wound."""

from __future__ import annotations

import math
from typing import Literal

from tommybar.design.plate_holes import build_holes
from tommybar.design.plates import loop_of, overall
from tommybar.design.reading import TINY, Reading
from tommybar.design.written_bent import WrittenRing, WrittenSheet, WrittenSpring, WrittenWire
from tommybar.design.yaml_file import Place
from tommybar.shapes.developed import bend_allowance, flats, setback, solid_length
from tommybar.shapes.features import (
    Bend,
    Dim,
    PlateHole,
    PlateShape,
    RolledRing,
    SheetShape,
    SpringShape,
    WireShape,
)

Ends = Literal["open", "closed", "ground", "hooks", "legs"]
OWN_ENDS: dict[str, Ends] = {"compression": "closed", "extension": "hooks", "torsion": "legs"}
LEAST_INDEX = (
    3.0  # mean diameter over wire below which a spring cannot well be wound (common practice, no source)
)


def build_sheet(read: Reading, part: str, written: WrittenSheet, place: Place) -> SheetShape:
    """Sheet or strip: its developed length follows from the legs and the bends."""
    width, thick = read.of(written.width), read.of(written.thick)
    neutral = read.of(written.neutral, 0.44)
    if not (math.isnan(neutral) or 0.2 <= neutral <= 0.55):
        what = f"The neutral fibre lies at {neutral:g} of the thickness; it lies between 0.2 and 0.55."
        read.complain((*place, "neutral"), what, "Write 0.44, or what a trial strip gives.")
    legs = tuple(read.of(one) for one in written.legs)
    bends: list[Bend] = []
    length = read.of(written.length)
    if legs:
        length, bends = _developed(read, written, legs, thick, neutral, place)
    elif written.bends:
        read.complain((*place, "bends"), "The sheet has bends and no legs.", "Give legs in place of length.")
    if written.outline is not None:
        across, up, outline = overall(read, written.outline, written.length, written.width, place)
        if legs and outline and abs(across - length) > 0.01:
            what = (
                f"The outline of the blank is {across:.4g} mm long; legs and bends come to {length:.4g} mm."
            )
            read.complain((*place, "outline"), what, "Draw the outline of the developed blank.")
        length, width = (across, up) if outline else (length, width)
    else:
        outline = None
    dims = (
        read.dim(length, f"{part}.length", place),
        read.dim(width, f"{part}.width", (*place, "width")),
        read.dim(thick, f"{part}.thick", (*place, "thick")),
    )
    plain = PlateShape(*dims, 0.0, outline=outline)
    named = [(one.name, (*place, "holes", n)) for n, one in enumerate(written.holes)]
    read.unique([*named, *((one.name, (*place, "bends", n)) for n, one in enumerate(written.bends))])
    holes = build_holes(read, part, written.holes, place, plain, loop_of(plain))
    for n, one in enumerate(written.holes):
        if not one.through or one.face not in ("top", "bottom") or one.tilt or one.slope:
            read.complain(
                (*place, "holes", n),
                "A hole in sheet goes straight through from its top or bottom.",
                "Say through: true.",
            )
    _refuse_in_bends(read, holes, bends, thick, neutral, place, length)
    return SheetShape(*dims, outline, holes, tuple(bends), legs, neutral)


def _developed(
    read: Reading, written: WrittenSheet, legs: tuple[float, ...], thick: float, neutral: float, place: Place
) -> tuple[float, list[Bend]]:
    if len(written.bends) != len(legs) - 1:
        what = f"There are {len(legs)} legs and {len(written.bends)} bends; {len(legs)} legs have {len(legs) - 1}."
        read.complain((*place, "bends") if written.bends else place, what, "Give one bend between two legs.")
        return math.nan, []
    figures = [(read.of(one.angle), read.of(one.radius)) for one in written.bends]
    for n, (angle, radius) in enumerate(figures):
        here = (*place, "bends", n)
        if abs(angle) >= 165 or angle == 0:
            what = f"The bend is {angle:g} deg; the corner of its legs is drawn for up to 165 deg, and not for 0."
            read.complain((*here, "angle"), what, "Make it two bends.")
            return math.nan, []
        if radius < 0.4 * thick - TINY:
            what = f"The inside radius is {radius:g} mm; {thick:g} mm sheet wants {0.4 * thick:g} mm or more."
            read.complain((*here, "radius"), what, "Bend it round a larger radius, or it cracks.")
    flat = flats(legs, figures, thick)
    for n, (leg, left) in enumerate(zip(legs, flat, strict=True)):
        if left < thick - TINY:
            taken = sum(setback(*figures[k], thick) for k in (n - 1, n) if 0 <= k < len(figures))
            what = f"Leg {n + 1} is {leg:g} mm; its bends take {taken:.4g} mm of it, and {thick:g} mm must stay flat."
            read.complain((*place, "legs", n), what, "Make it longer, or the radius smaller.")
    at, bends = 0.0, []
    for n, (angle, radius) in enumerate(figures):
        at += flat[n]
        bends.append(Bend(written.bends[n].name, round(at, 9), angle, radius))
        at += bend_allowance(angle, radius, thick, neutral)
    return round(at + flat[-1], 9), bends


def _refuse_in_bends(
    read: Reading,
    holes: tuple[PlateHole, ...],
    bends: list[Bend],
    thick: float,
    neutral: float,
    place: Place,
    length: float,
) -> None:
    for hole in holes:
        reach = max(hole.dia.value, hole.sink_dia) / 2
        middle = hole.x if hole.face == "top" else length - hole.x
        for bend in bends:
            end = bend.at + bend_allowance(bend.angle, bend.radius, thick, neutral)
            if middle + reach > bend.at - TINY and middle - reach < end + TINY:
                what = (
                    f"{hole.name} takes {middle - reach:.4g} to {middle + reach:.4g} mm of the blank; "
                    f"{bend.name} takes {bend.at:.4g} to {end:.4g} mm."
                )
                read.complain(
                    (*place, "holes"), what, "Keep holes clear of bends, or they are drawn out of round."
                )


def build_ring(read: Reading, part: str, written: WrittenRing, place: Place) -> RolledRing:
    """A ring rolled from strip or wire."""
    inside = read.of(written.inside)
    wire = read.of(written.wire) if written.wire else None
    wide = wire if wire is not None else read.of(written.wide)
    thick = wire if wire is not None else read.of(written.thick)
    gap, round_way = read.of(written.gap), math.pi * (inside + thick)
    if gap >= round_way / 2:
        what = f"The gap is {gap:g} mm; the ring is {round_way:.4g} mm round its middle."
        read.complain((*place, "gap"), what, "Make it smaller than half the way round, or bend wire.")
    if gap > 0 and written.joint != "open":
        read.complain(
            (*place, "gap"),
            f"The ring has a gap of {gap:g} mm; its joint is {written.joint}.",
            "Keep one of the two.",
        )
    if inside < 2 * thick:
        what = f"The ring is {inside:g} mm inside; {thick:g} mm stock is rolled to {2 * thick:g} mm or more."
        read.complain((*place, "inside"), what, "Turn it from tube or bar.")
    dim = read.dim(inside, f"{part}.inside", (*place, "inside"), written.limits)
    return RolledRing(dim, wide, thick, wire is not None, gap, written.joint)


def build_spring(read: Reading, part: str, written: WrittenSpring, place: Place) -> SpringShape:
    """A spring; its free length, ends and coils must be of one kind."""
    wire, outside, active = read.of(written.wire), read.of(written.outside), read.of(written.active)
    ends: Ends = written.ends or OWN_ENDS[written.kind]
    allowed = {"compression": ("open", "closed", "ground"), "extension": ("hooks",), "torsion": ("legs",)}
    if ends not in allowed[written.kind]:
        what = f"The ends are {ends}; those of a spring for {written.kind} are {' or '.join(allowed[written.kind])}."
        read.complain((*place, "ends"), what, "Change ends or kind.")
    dead = 2.0 if ends in ("closed", "ground") else 0.0
    total = read.of(written.total, active + dead)
    if total < active - TINY:
        what = f"The spring has {total:g} coils in all; {active:g} of them are to work."
        read.complain((*place, "total"), what, "Give total at least what is active.")
    index = (outside - wire) / wire
    if index < LEAST_INDEX - TINY:
        what = f"The mean diameter is {index:.3g} times the wire; it must be at least {LEAST_INDEX:g} times."
        read.complain((*place, "outside"), what, "Take thinner wire, or a larger diameter.")
    free = read.of(written.free, wire * (total + 1))
    leg = read.of(written.leg)
    shape = SpringShape(
        written.kind,
        wire,
        read.dim(outside, f"{part}.outside", (*place, "outside")),
        active,
        total,
        free,
        ends,
        leg,
        written.left,
        read.of(written.fitted),
    )
    if (
        shape.fitted
        and written.kind == "compression"
        and not (solid_length(shape) - TINY <= shape.fitted <= free + TINY)
    ):
        ends_of = f"{solid_length(shape):g} mm when solid and {free:g} mm when free"
        what = f"The spring is {shape.fitted:g} mm long when fitted; it is {ends_of}."
        read.complain((*place, "fitted"), what, "Give a length between the two.")
    if written.kind == "compression":
        if written.free is None:
            read.complain(place, "A compression spring must have its free length.", "Add free.")
        elif solid_length(shape) >= free - TINY:
            what = (
                f"The spring is {solid_length(shape):g} mm long when solid; its free length is {free:g} mm."
            )
            read.complain((*place, "free"), what, "Fewer coils, thinner wire, or longer.")
    elif written.kind == "torsion" and written.leg is None:
        read.complain(place, "A torsion spring must have the length of its legs.", "Add leg.")
    return shape


def build_wire(read: Reading, part: str, written: WrittenWire, place: Place) -> WireShape:
    """Bent wire or rod."""
    dia = read.of(written.dia)
    legs = tuple(read.of(one) for one in written.legs)
    bends = tuple((read.of(one.radius), read.of(one.angle)) for one in written.bends)
    if len(bends) != len(legs) - 1:
        what = f"There are {len(legs)} legs and {len(bends)} bends; {len(legs)} legs have {len(legs) - 1}."
        read.complain((*place, "bends") if bends else place, what, "Give one bend between two legs.")
        bends = ()
        legs = legs[:1]
    for n, (radius, angle) in enumerate(bends):
        if radius < 0.5 * dia - TINY:
            what = f"The inside radius is {radius:g} mm; {dia:g} mm wire wants {0.5 * dia:g} mm or more."
            read.complain((*place, "bends", n, "radius"), what, "Bend it round a larger radius.")
        if not (math.isnan(angle) or 0 < abs(angle) <= 360):
            what = f"The bend is {angle:g} deg; it must be up to 360 deg either way, and not 0."
            read.complain((*place, "bends", n, "angle"), what, "Leave it out, or make it a spring.")
    return WireShape(read.dim(dia, f"{part}.dia", (*place, "dia"), written.limits), legs, bends)


def bent_features(shape: object) -> dict[str, object]:
    """What of a part of sheet or wire may be named."""
    if isinstance(shape, SheetShape):
        return {one.name: one for group in (shape.holes, shape.bends) for one in group}
    if isinstance(shape, RolledRing):
        return {"inside": shape.inside}
    if isinstance(shape, SpringShape):
        inside = Dim(shape.outside.value - 2 * shape.wire, name=shape.outside.name)
        return {"outside": shape.outside, "inside": inside}
    if isinstance(shape, WireShape):
        return dict.fromkeys(("dia", *(f"leg_{n}" for n in range(1, len(shape.legs) + 1))), shape.dia)
    return {}


def bent_lengths(name: str, shape: object) -> dict[str, float]:
    """Lengths of a part of sheet or wire that a loop may name [mm]."""
    figures: dict[str, float] = {}
    if isinstance(shape, SheetShape):
        figures = {"length": shape.length.value, "width": shape.width.value, "thick": shape.thickness.value}
        figures |= {f"leg_{n}": leg for n, leg in enumerate(shape.legs, start=1)}
    elif isinstance(shape, RolledRing):
        figures = {"inside": shape.inside.value, "wide": shape.width, "thick": shape.thickness}
    elif isinstance(shape, SpringShape):
        figures = {"free": shape.free, "solid": solid_length(shape)}
    elif isinstance(shape, WireShape):
        figures = {f"leg_{n}": leg for n, leg in enumerate(shape.legs, start=1)} | {"dia": shape.dia.value}
    return {f"{name}.{key}": value for key, value in figures.items()}
