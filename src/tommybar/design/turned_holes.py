"""Bores, recesses and holes of a turned part, each checked against the metal that is there."""

from __future__ import annotations

import math

from tommybar.design.grooves import thickness
from tommybar.design.lands import Land
from tommybar.design.reading import TINY, Reading
from tommybar.design.written_across import WrittenCircle, WrittenCross
from tommybar.design.written_inside import WrittenBore, WrittenRecess
from tommybar.design.written_turned import WrittenTurned
from tommybar.design.yaml_file import Place
from tommybar.shapes.features import Bore, CircleHoles, CrossHole, Groove, Recess

DRILL_TIP = 0.5 / math.tan(math.radians(59))  # height of a 118-degree tip, per diameter


def build_bores(
    read: Reading,
    part: str,
    written: WrittenTurned,
    place: Place,
    lands: tuple[Land, ...],
    grooves: tuple[Groove, ...],
) -> tuple[Bore, ...]:
    """Holes on the axis."""
    length = lands[-1].end
    found = []
    for index, bore in enumerate(written.bores):
        here = (*place, "bores", index)
        dia, thread = read.diameter(bore.dia, bore.thread, here)
        depth = _depth(read, bore, here, dia, length)
        edge = read.of(bore.edge.size) if bore.edge else 0.0
        if edge > depth + TINY:
            read.complain((*here, "edge"), f"The chamfer is {edge:g} mm; the bore is {depth:g} mm deep.")
        z = (0.0, depth) if bore.face == "A" else (length - depth, length)
        key = (*here, "thread" if thread else "dia")
        for name, least, start, end in _walls(lands, grooves):
            if start < z[1] - TINY and end > z[0] + TINY and dia >= least - TINY:
                what = f"The bore is {dia:g} mm; {name} outside it is {least:g} mm in diameter."
                read.complain(key, what, "Make the bore smaller.")
        dim = read.dim(dia, f"{part}.{bore.name}", here, bore.limits)
        corner, full = _bottom(read, bore, here, dia, depth)
        plain = (bore.name, dim, bore.face, depth, bore.through, bore.bottom, thread, edge, bore.after)
        found.append(Bore(*plain, corner, full, bore.left))
    return tuple(found)


def _walls(lands: tuple[Land, ...], grooves: tuple[Groove, ...]) -> list[tuple[str, float, float, float]]:
    walls = [(land.written.name, land.least, land.start, land.end) for land in lands]
    return walls + [(groove.name, groove.floor, groove.start, groove.end) for groove in grooves]


def _depth(read: Reading, bore: WrittenBore, here: Place, dia: float, length: float) -> float:
    if bore.through == (bore.deep is not None):
        read.complain(here, "The bore must have either through: true or deep.", "Keep one of the two.")
    if bore.deep is None:
        return length
    depth = read.of(bore.deep)
    tip, ends = 0.0, "drill tip"
    if bore.bottom == "drill" and not bore.thread:
        tip = dia * DRILL_TIP
    elif bore.bottom == "ball":
        tip, ends = dia / 2, "round bottom"
    if depth + tip >= length - TINY:
        whole = f"{depth:g} mm deep" + (f" and its {ends} {tip:.2f} mm more" if tip else "")
        what = f"The bore is {whole}; the part is {length:g} mm long."
        read.complain((*here, "deep"), what, "Make it shallower, or write through: true.")
    return depth


def _bottom(read: Reading, bore: WrittenBore, here: Place, dia: float, depth: float) -> tuple[float, float]:
    """The radius round a bore's flat bottom and its depth of full thread [mm]."""
    corner, full = read.of(bore.corner), read.of(bore.full)
    if corner and (bore.bottom != "flat" or bore.through):
        bottom = "no bottom" if bore.through else f"a {bore.bottom} bottom"
        read.complain((*here, "corner"), f"The bore has {bottom}; a corner needs a flat one.", "Take it out.")
    if corner > min(dia / 2, depth) + TINY:
        what = (
            f"The corner radius is {corner:g} mm; the bore is {dia:g} mm in diameter and {depth:g} mm deep."
        )
        read.complain((*here, "corner"), what, "Make the corner smaller.")
    for key in ("full", "left"):
        if getattr(bore, key) and bore.thread is None:
            read.complain((*here, key), f"{bore.name} has no thread.", f"Take {key} out.")
    if full > depth + TINY:
        what = f"The thread is to be full for {full:g} mm; the hole is {depth:g} mm deep."
        read.complain((*here, "full"), what, "Drill deeper, or make the thread shorter.")
    return corner, full


def build_recesses(
    read: Reading, written: WrittenTurned, place: Place, lands: tuple[Land, ...], bores: tuple[Bore, ...]
) -> tuple[Recess, ...]:
    """Ring-shaped recesses in the two faces."""
    found: list[Recess] = []
    for index, recess in enumerate(written.recesses):
        here = (*place, "recesses", index)
        inside, outside, deep = read.of(recess.inside), read.of(recess.outside), read.of(recess.deep)
        corner = read.of(recess.corner)
        if inside >= outside:
            what = f"The recess goes from {inside:g} to {outside:g} mm in diameter."
            read.complain((*here, "outside"), what, "Its outside must be the larger.")
        land = lands[0] if recess.face == "A" else lands[-1]
        if outside >= land.least - TINY:
            what = f"The recess is {outside:g} mm in diameter; {land.written.name} is {land.least:g} mm."
            read.complain((*here, "outside"), what, "Make the recess smaller.")
        thick = thickness(lands, recess.face, inside)
        if deep >= thick - TINY:
            what = f"The recess is {deep:g} mm deep; the land it is cut in is {thick:g} mm thick there."
            read.complain((*here, "deep"), what, "Leave a web: make it shallower.")
        for bore in bores:
            if (bore.through or bore.face == recess.face) and inside < bore.dia.value - TINY:
                what = f"The recess begins at {inside:g} mm; {bore.name} is {bore.dia.value:g} mm."
                read.complain((*here, "inside"), what, "Begin it outside the bore.")
        if corner > min(deep, (outside - inside) / 4) + TINY:
            wide = (outside - inside) / 2
            what = f"The corner radius is {corner:g} mm; the recess is {deep:g} deep and {wide:g} mm wide."
            read.complain((*here, "corner"), what, "Make the corner smaller.")
        drafts = _drafts(read, recess, here, (inside, outside), deep)
        found.append(Recess(recess.name, recess.face, inside, outside, deep, corner, *drafts))
    _refuse_meeting(read, found, place, lands[-1].end)
    return tuple(found)


def _drafts(
    read: Reading, recess: WrittenRecess, here: Place, mouth: tuple[float, float], deep: float
) -> tuple[float, float]:
    """How far the walls lean [deg]; they may not meet at the floor."""
    drafts = read.of(recess.inside_draft), read.of(recess.outside_draft)
    for key, draft in zip(("inside_draft", "outside_draft"), drafts, strict=True):
        if draft < 0 or draft >= 60:
            what = f"The draft is {draft:g} deg from the axis; it must lie between 0 and 60 deg."
            read.complain((*here, key), what, "Give a smaller draft.")
            return 0.0, 0.0
    floor = [deep * math.tan(math.radians(draft)) for draft in drafts]
    if mouth[0] + 2 * floor[0] >= mouth[1] - 2 * floor[1]:
        inner, outer = mouth[0] + 2 * floor[0], mouth[1] - 2 * floor[1]
        what = f"The walls lean in to {inner:.4g} and {outer:.4g} mm at the floor; they meet."
        read.complain((*here, "deep"), what, "Give less draft, or make it shallower.")
        return 0.0, 0.0
    return drafts


def _refuse_meeting(read: Reading, recesses: list[Recess], place: Place, length: float) -> None:
    for a in (one for one in recesses if one.face == "A"):
        for index, b in enumerate(recesses):
            apart = a.outside <= b.inside or b.outside <= a.inside
            if b.face == "B" and not apart and a.depth + b.depth >= length - TINY:
                what = (
                    f"The recesses are {a.depth:g} and {b.depth:g} mm deep; the part is {length:g} mm thick."
                )
                read.complain((*place, "recesses", index, "deep"), what, "Leave a web between them.")


def build_circles(
    read: Reading,
    part: str,
    written: WrittenTurned,
    place: Place,
    lands: tuple[Land, ...],
    bores: tuple[Bore, ...],
    recesses: tuple[Recess, ...],
) -> tuple[CircleHoles, ...]:
    """Holes on a pitch circle; they run through what metal stands there."""
    found = []
    for index, one in enumerate(written.holes):
        here = (*place, "holes", index)
        dia, thread = read.diameter(one.dia, one.thread, here)
        count = read.of(one.count, 1.0)
        circle = read.of(one.circle)
        z = _metal(lands, recesses, circle - dia, circle + dia)
        if z is None and not math.isnan(circle + dia):
            largest = max(land.least for land in lands)
            what = f"The holes reach to {circle + dia:g} mm in diameter; the part is {largest:g} mm."
            read.complain((*here, "circle"), what, "Make the circle or the holes smaller.")
        for bore in bores:
            if circle - dia <= bore.dia.value:
                inner = f"{circle - dia:g} mm in diameter"
                what = f"The holes reach in to {inner}; {bore.name} is {bore.dia.value:g} mm."
                read.complain((*here, "circle"), what, "Make the circle larger or the holes smaller.")
        chord = circle * math.sin(math.pi / count) if count >= 1 else math.nan
        if count > 1 and chord <= dia:
            what = f"{count:g} holes of {dia:g} mm lie {chord:.2f} mm apart on their circle; they meet."
            read.complain((*here, "count"), what, "Take fewer or smaller holes.")
        dim = read.dim(dia, f"{part}.{one.name}", here, one.limits)
        start, end = z or (0.0, 0.0)
        whole = 0 if math.isnan(count) else round(count)
        thick = end - start if z else math.inf  # that there is no metal has been told
        blind, sink = _blind(read, one, here, dia, thick), _sink(read, one, here, dia, thick)
        face = lands[0] if one.face == "A" else lands[-1]
        if sink[0] and z is not None and circle + sink[0] > max(face.a_dia, face.b_dia) + TINY:
            reach, wide = circle + sink[0], max(face.a_dia, face.b_dia)
            what = f"The counterbores reach to {reach:g} mm in diameter; {face.written.name} is {wide:g} mm."
            read.complain((*here, "sink_dia"), what, "Make the circle or the counterbores smaller.")
        if blind:
            start, end = (start, start + blind) if one.face == "A" else (end - blind, end)
        plain = (one.name, dim, whole, circle, read.of(one.first), start, end, thread)
        found.append(CircleHoles(*plain, *sink, one.face, blind > 0))
    return tuple(found)


def _blind(read: Reading, one: WrittenCircle, here: Place, dia: float, thick: float) -> float:
    """Depth of blind holes [mm], 0 when they go through."""
    if one.deep is None:
        return 0.0
    deep, tip = read.of(one.deep), dia * DRILL_TIP
    if deep + tip >= thick - TINY:
        what = (
            f"The holes are {deep:g} mm deep and their drill tips {tip:.2f} mm more; there are {thick:g} mm."
        )
        read.complain((*here, "deep"), what, "Make them shallower, or leave deep out.")
    return deep


def _sink(
    read: Reading, one: WrittenCircle | WrittenCross, here: Place, dia: float, thick: float
) -> tuple[float, float]:
    """Diameter and depth of a counterbore [mm]."""
    if (one.sink_dia is None) != (one.sink_deep is None):
        read.complain(here, "A counterbore needs both sink_dia and sink_deep.", "Add the other.")
    wide, deep = read.of(one.sink_dia), read.of(one.sink_deep)
    if one.sink_dia and wide <= dia + TINY:
        what = f"The counterbore is {wide:g} mm in diameter; its hole is {dia:g} mm."
        read.complain((*here, "sink_dia"), what, "The counterbore must be the larger.")
    if one.sink_deep and deep >= thick - TINY:
        what = f"The counterbore is {deep:g} mm deep; there are {thick:g} mm of metal."
        read.complain((*here, "sink_deep"), what, "Make it shallower.")
    return wide, deep


def _metal(
    lands: tuple[Land, ...], recesses: tuple[Recess, ...], inner: float, outer: float
) -> tuple[float, float] | None:
    """Where metal stands along the axis between two diameters [mm], or None."""
    solid = [land for land in lands if land.least >= outer]
    if not solid:
        return None
    start, end = solid[0].start, solid[-1].end
    for recess in recesses:
        if recess.inside <= inner + TINY and recess.outside >= outer - TINY:
            if recess.face == "A":
                start = max(start, recess.depth)
            else:
                end = min(end, lands[-1].end - recess.depth)
    return start, end


def build_cross(
    read: Reading,
    part: str,
    written: WrittenTurned,
    place: Place,
    lands: tuple[Land, ...],
    bores: tuple[Bore, ...],
) -> tuple[CrossHole, ...]:
    """Holes across the axis."""
    found = []
    for index, one in enumerate(written.cross_holes):
        here = (*place, "cross_holes", index)
        dia, thread = read.diameter(one.dia, one.thread, here)
        land = next((each for each in lands if each.written.name == one.on), None)
        if land is None:
            read.one_of(one.on, (each.written.name for each in lands), (*here, "on"), "land")
            continue
        z = read.of(one.from_a, (land.start + land.end) / 2)
        if z - dia / 2 < land.start - TINY or z + dia / 2 > land.end + TINY:
            what = (
                f"The hole lies from {z - dia / 2:g} to {z + dia / 2:g} mm; "
                f"{one.on} lies from {land.start:g} to {land.end:g} mm."
            )
            read.complain((*here, "from_a" if one.from_a else "on"), what, "Move it, or make it smaller.")
        offset = read.of(one.offset)
        if dia + 2 * abs(offset) >= land.least:
            what = f"The hole is {dia:g} mm; {one.on} is {land.least:g} mm in diameter."
            if offset:
                reach, radius = abs(offset) + dia / 2, land.least / 2
                what = f"The hole reaches {reach:g} mm from the axis; {one.on} is {radius:g} mm in radius."
            key = "offset" if offset else "thread" if thread else "dia"
            read.complain((*here, key), what, "Make the hole smaller.")
        if one.into:
            others = [each.name for each in written.cross_holes if each is not one]
            read.one_of(
                one.into, (*(bore.name for bore in bores), *others), (*here, "into"), "bore or cross hole"
            )
        dim = read.dim(dia, f"{part}.{one.name}", here, one.limits)
        deep = read.of(one.deep) if one.deep else None
        if deep is not None and one.walls == 2:
            read.complain(
                (*here, "deep"), "A hole through both walls has no depth.", "Take deep or walls out."
            )
        if deep is not None and deep + dia * DRILL_TIP >= land.least - TINY:
            tip = f"{deep:g} mm deep and its drill tip {dia * DRILL_TIP:.2f} mm more"
            what = f"The hole is {tip}; {one.on} is {land.least:g} mm in diameter."
            read.complain((*here, "deep"), what, "Make it shallower, or write walls: 2.")
        sink = _sink(read, one, here, dia, land.least / 2 if deep is None else deep)
        plain = (one.name, dim, z, read.of(one.angle), one.walls, thread, one.into)
        found.append(CrossHole(*plain, offset, deep, *sink))
    return tuple(found)
