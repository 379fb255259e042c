"""A turned part built from its printed figures and from what its views show without a figure."""

from __future__ import annotations

import math
from dataclasses import dataclass

from tommybar.facts.threads import thread
from tommybar.pack.audit.reading import NOUGHT, Figure, Reading, worked_out
from tommybar.pack.turned.ends import has_end_view
from tommybar.shapes.features import Arc, Cone, Cylinder, Eccentric, Land, TurnedShape

Value = Figure | str | None
Built = dict[tuple[str, str], Value]  # (feature, field of it): what the sheet says
FLUSH = 1e-6  # lands that meet so nearly show no step [mm]
KNURLS = {"RAA": "straight", "RGE": "diamond"}
KEPT = {"may stay": "may", "must stay": "must", "must not stay": "must not"}
FLOORS = {"flat floor": "flat", "drill tip 118°": "drill", "round bottom": "ball"}
COUNTS = {"flat": 1, "2 flats": 2, "square": 4, "hexagon": 6}


@dataclass(frozen=True)
class SeenLand:
    """A land as the view shows it, no figure: its kind, where it runs out on the axis, where it meets flush."""

    kind: type
    name: str
    starts: str  # "axis", "flush" with the land before it, or "step"
    ends: str
    grows: bool  # towards face B


def seen_lands(shape: TurnedShape) -> list[SeenLand]:
    """The lands in order from face A, and how each meets its neighbours."""
    lands = sorted(shape.outside, key=lambda one: one.start)

    def meets(one: Land, dia: float, other: Land | None, beside: float | None) -> str:
        if dia < FLUSH:
            return "axis"
        plain = not any(
            isinstance(two, Eccentric) or (isinstance(two, Cylinder) and two.thread) for two in (one, other)
        )
        return "flush" if beside is not None and plain and abs(dia - beside) < FLUSH else "step"

    return [
        SeenLand(
            type(one),
            one.name,
            meets(one, one.start_dia, *((lands[n - 1], lands[n - 1].end_dia) if n else (None, None))),
            meets(
                one,
                one.end_dia,
                *((lands[n + 1], lands[n + 1].start_dia) if n + 1 < len(lands) else (None, None)),
            ),
            one.end_dia > one.start_dia,
        )
        for n, one in enumerate(lands)
    ]


def rebuilt_turned(shape: TurnedShape, read: Reading) -> Built:
    """Every size of the part as the sheet gives it.

    Of ``shape`` only names, kinds and order are looked at: what the views
    show without a figure.
    """
    made: Built = {("part", "length"): read.take("part", "length")}
    _lands(shape, read, made)
    _grooves(shape, read, made)
    _inside(shape, read, made)
    _across(shape, read, made)
    _along_circles(shape, read, made)
    return made


def _lands(shape: TurnedShape, read: Reading, made: Built) -> None:
    seen = seen_lands(shape)
    ends: list[dict[str, Figure | None]] = []
    for one in seen:  # what is said of each by itself
        found: dict[str, Figure | None] = {
            "start": NOUGHT if one.starts == "axis" else read.maybe(one.name, "start_dia"),
            "end": NOUGHT if one.ends == "axis" else read.maybe(one.name, "end_dia"),
        }
        if one.kind in (Cylinder, Eccentric):
            found["start"] = found["end"] = _cylinder(one, read, made)
        ends.append(found)
    for n, one in enumerate(seen[1:], 1):
        if one.starts == "flush" and ends[n]["start"] and ends[n - 1]["end"] and _curved(one, seen[n - 1]):
            read.twice(one.name, "start_dia", seen[n - 1].name)
    for n, one in enumerate(seen):  # what neighbours say
        if one.starts == "flush" and ends[n]["start"] is None:
            ends[n]["start"] = ends[n - 1]["end"]
        if one.ends == "flush" and ends[n]["end"] is None:
            ends[n]["end"] = ends[n + 1]["start"]
    z = NOUGHT
    worked: set[str] = set()  # lands whose beginning follows from their own figures
    for n, one in enumerate(seen):
        last = n + 1 == len(seen)
        place = read.maybe(one.name, "end")
        if last:
            place = read.take("part", "length")
        elif place is None and n + 2 == len(seen) and seen[-1].kind is Cone:
            worked.add(seen[-1].name)
            place = _before_the_end(seen[-1], read, ends[-1]["start"], ends[-1]["end"])
        start, end = ends[n]["start"], ends[n]["end"]
        if one.kind is Cone:
            place, start, end = _cone(one, read, z, place, start, end, one.name in worked, made)
            made[one.name, "taper"] = read.word(one.name, "taper")
        if place is None:
            place = read.take(one.name, "end")
        made[one.name, "start"], made[one.name, "end"] = z, place
        if one.kind in (Cone, Arc):
            if start is None:
                start = read.take(one.name, "start_dia")
            if end is None:
                end = read.take(one.name, "end_dia")
            made[one.name, "start_dia"], made[one.name, "end_dia"] = start, end
            ends[n]["start"], ends[n]["end"] = start, end
            if n + 1 < len(seen) and seen[n + 1].starts == "flush" and ends[n + 1]["start"] is None:
                ends[n + 1]["start"] = end
        if one.kind is Arc:
            made[one.name, "radius"] = read.take(one.name, "radius")
            made[one.name, "form"] = read.word(one.name, "form")
        z = place


def _curved(*both: SeenLand) -> bool:
    """Whether one of two lands has its diameters said at its ends."""
    return any(one.kind in (Cone, Arc) for one in both)


def _half_angle(name: str, read: Reading) -> Figure | None:
    half, included = read.maybe(name, "half_angle"), read.maybe(name, "included")
    return half if included is None else worked_out(lambda a: a / 2, included)


def _before_the_end(one: SeenLand, read: Reading, start: Figure | None, end: Figure | None) -> Figure | None:
    """Where the cone at the end of the part begins, when its angle and both its diameters are printed."""
    half = _half_angle(one.name, read)
    if half is None or start is None or end is None:
        return None
    return worked_out(
        lambda b, d, e, h: b - abs(e - d) / 2 / math.tan(math.radians(h)),
        read.take("part", "length"),
        start,
        end,
        half,
    )


def _cone(
    one: SeenLand,
    read: Reading,
    z: Figure,
    place: Figure | None,
    start: Figure | None,
    end: Figure | None,
    worked: bool,
    made: Built,
) -> tuple[Figure | None, Figure | None, Figure | None]:
    half = _half_angle(one.name, read)
    if half is None:
        return place, start, end
    made[one.name, "half angle"] = half
    way = 1.0 if one.grows else -1.0
    if None not in (place, start, end) and not worked and not read.bracketed(one.name):
        read.close(one.name, "both diameters, length and angle")
    if place is None and start is not None and end is not None:
        place = worked_out(
            lambda a, d, e, h: a + abs(e - d) / 2 / math.tan(math.radians(h)), z, start, end, half
        )
    elif place is not None and start is not None and end is None:
        end = worked_out(
            lambda a, b, d, h: d + way * 2 * (b - a) * math.tan(math.radians(h)), z, place, start, half
        )
    elif place is not None and end is not None and start is None:
        start = worked_out(
            lambda a, b, e, h: e - way * 2 * (b - a) * math.tan(math.radians(h)), z, place, end, half
        )
    return place, start, end


def _cylinder(one: SeenLand, read: Reading, made: Built) -> Figure:
    """A land of one diameter; gives the diameter at its ends, for an eccentric that of the circle it swings in."""
    name = one.name
    screw = read.word(name, "thread")
    dia = Figure(thread(screw).major) if screw else read.take(name, "dia")
    made[name, "dia"] = dia
    if one.kind is Eccentric:
        throw = read.take(name, "throw")
        made[name, "throw"], made[name, "angle"] = throw, read.take(name, "angle")
        return worked_out(lambda d, t: d + 2 * t, dia, throw)
    made[name, "thread"] = screw
    made[name, "full"] = read.maybe(name, "full")
    made[name, "left"] = "left" if read.word(name, "left") else ""
    made[name, "finish"] = read.word(name, "finish")
    knurl = read.word(name, "knurl")
    made[name, "knurl.pattern"] = KNURLS.get(knurl, knurl)
    made[name, "knurl.pitch"] = read.take(name, "pitch") if knurl else None
    for size in ("edge_start", "edge_end"):
        made[name, size] = read.maybe(name, size)
        made[name, size + "_angle"] = read.take(name, size + "_angle") if made[name, size] else None
    for size in ("round_start", "round_end", "corner_start", "corner_end"):
        made[name, size] = read.maybe(name, size)
    return dia


def _span(name: str, read: Reading, made: Built, width: str, at_a: bool, at_b: bool) -> None:
    """Both ends of what lies along the axis: one place and the width between them, or both places."""
    start = NOUGHT if at_a else read.maybe(name, "start")
    end = read.maybe(name, "end")
    wide = read.maybe(name, width)
    if at_b and end is None:
        end = read.take("part", "length")
    if start is None and end is None:
        start = read.take(name, "start")
    if wide is None and (start is None or end is None):
        wide = read.take(name, width)
    if start is not None and end is not None and wide is not None:
        read.close(name, "both ends and " + width)
    if start is None and end is not None and wide is not None:
        start = end - wide
    elif end is None and start is not None and wide is not None:
        end = start + wide
    made[name, "start"], made[name, "end"], made[name, width] = start, end, wide


def _grooves(shape: TurnedShape, read: Reading, made: Built) -> None:
    long = shape.length.value
    for one in shape.grooves:
        _span(one.name, read, made, "width", one.start < FLUSH, one.end > long - FLUSH)
        made[one.name, "floor"] = read.take(one.name, "floor")
        made[one.name, "corner"] = read.maybe(one.name, "corner")
        made[one.name, "form"] = read.word(one.name, "form")
    for inner in shape.bore_grooves:
        _span(inner.name, read, made, "width", inner.start < FLUSH, inner.end > long - FLUSH)
        made[inner.name, "floor"] = read.take(inner.name, "floor")


def _inside(shape: TurnedShape, read: Reading, made: Built) -> None:
    for bore in shape.bores:
        name = bore.name
        screw = read.word(name, "thread")
        made[name, "thread"] = screw
        made[name, "dia"] = Figure(thread(screw).major) if screw else read.take(name, "dia")
        made[name, "left"] = "left" if read.word(name, "left") else ""
        made[name, "full"] = read.maybe(name, "full")
        made[name, "depth"] = read.take("part", "length") if bore.through else read.take(name, "depth")
        opens = any(other.dia.value < bore.dia.value for other in shape.bores)  # its floor is seen to be flat
        floor = read.word(name, "bottom") if bore.through or opens else read.told(name, "bottom")
        made[name, "bottom"] = "" if bore.through else FLOORS.get(floor, "flat")
        made[name, "corner"], made[name, "edge"] = read.maybe(name, "corner"), read.maybe(name, "edge")
        made[name, "edge_angle"] = read.maybe(name, "edge_angle")
    for recess in shape.recesses:
        name = recess.name
        for size in ("outside", "depth"):
            made[name, size] = read.take(name, size)
        for size in ("inside", "corner", "inside_draft", "outside_draft"):
            made[name, size] = read.maybe(name, size)
    for ring in shape.face_grooves:
        for size in ("inside", "outside", "depth"):
            made[ring.name, size] = read.take(ring.name, size)
    for taper in shape.bore_tapers:
        for size in ("mouth", "end_dia", "depth"):
            made[taper.name, size] = read.take(taper.name, size)
        made[taper.name, "start"] = read.maybe(taper.name, "start")
        made[taper.name, "taper"] = read.word(taper.name, "taper")
    for cup in shape.cups:
        made[cup.name, "mouth"] = read.take(cup.name, "mouth")
        made[cup.name, "included"] = read.take(cup.name, "included")
        made[cup.name, "relief"] = read.maybe(cup.name, "relief")
        made[cup.name, "relief_depth"] = read.maybe(cup.name, "relief_depth")
    for centre in shape.centres:
        made[centre.name, "form"] = read.word(centre.name, "form")
        made[centre.name, "pilot"] = read.take(centre.name, "pilot")
        kept = read.word(centre.name, "keep")
        made[centre.name, "keep"] = KEPT.get(kept, kept)
    clock = read.take if has_end_view(shape) else read.maybe
    for slot in shape.head_slots:
        made[slot.name, "width"] = read.take(slot.name, "width")
        made[slot.name, "depth"] = read.take(slot.name, "depth")
        made[slot.name, "angle"] = clock(slot.name, "angle")
    for slit in shape.slits:
        made[slit.name, "width"] = read.take(slit.name, "width")
        made[slit.name, "depth"] = read.maybe(slit.name, "depth")
        made[slit.name, "angle"] = clock(slit.name, "angle")
        made[slit.name, "walls"] = _walls(read.told(slit.name, "walls"))


def _walls(words: str) -> Figure:
    return Figure(2.0 if words in ("through", "right across") else 1.0)


def _across(shape: TurnedShape, read: Reading, made: Built) -> None:
    long = shape.length.value
    clock = read.take if has_end_view(shape) else read.maybe  # the plane of the paper needs no figure
    for hole in shape.cross_holes:
        name = hole.name
        screw = read.word(name, "thread")
        made[name, "thread"] = screw
        made[name, "dia"] = Figure(thread(screw).major) if screw else read.take(name, "dia")
        made[name, "z"] = read.take(name, "z")
        made[name, "depth"] = read.maybe(name, "depth")
        made[name, "walls"] = _walls(
            read.word(name, "walls") if made[name, "depth"] else read.told(name, "walls")
        )
        for size in ("sink_dia", "sink_depth", "offset"):
            made[name, size] = read.maybe(name, size)
        made[name, "angle"] = clock(name, "angle")
    for slot in shape.cross_slots:
        _span(slot.name, read, made, "long", slot.start < FLUSH, slot.end > long - FLUSH)
        made[slot.name, "width"] = read.take(slot.name, "width")
        made[slot.name, "walls"] = _walls(read.told(slot.name, "walls"))
        made[slot.name, "angle"] = clock(slot.name, "angle")
    for key in shape.keyways:
        made[key.name, "form"] = read.word(key.name, "form")
        if made[key.name, "form"] == "woodruff":
            made[key.name, "start"] = made[key.name, "end"] = read.take(key.name, "start")
        else:
            _span(key.name, read, made, "long", key.start < FLUSH, key.end > long - FLUSH)
        made[key.name, "width"] = read.take(key.name, "width")
        made[key.name, "depth"] = read.take(key.name, "depth")
        made[key.name, "cutter"] = read.maybe(key.name, "cutter")
        made[key.name, "angle"] = clock(key.name, "angle")
    for way in shape.bore_keyways:
        for size in ("width", "depth", "angle"):
            made[way.name, size] = read.take(way.name, size)
    for flats in shape.flats:
        _span(flats.name, read, made, "long", flats.start < FLUSH, flats.end > long - FLUSH)
        words = read.word(flats.name, "count")
        made[flats.name, "count"] = Figure(
            COUNTS.get(words, int(words.split()[0]) if words[:1].isdigit() else 0)
        )
        across = read.maybe(flats.name, "across")
        made[flats.name, "across"] = across
        level = worked_out(lambda a: a / 2, across) if across else read.take(flats.name, "level")
        made[flats.name, "level"] = level
        made[flats.name, "angle"] = read.take(flats.name, "angle")
    for mark in shape.engravings:
        made[mark.name, "divisions"] = read.take(mark.name, "divisions")
        for size in ("short", "long", "long_every"):
            made[mark.name, size] = read.maybe(mark.name, size)
        made[mark.name, "over"] = read.maybe(mark.name, "over") or Figure(360.0)


def _along_circles(shape: TurnedShape, read: Reading, made: Built) -> None:
    for holes in shape.circle_holes:
        name = holes.name
        screw = read.word(name, "thread")
        made[name, "thread"] = screw
        made[name, "dia"] = Figure(thread(screw).major) if screw else read.take(name, "dia")
        for size in ("count", "circle", "start_angle"):
            made[name, size] = read.take(name, size)
        for size in ("sink_dia", "sink_depth"):
            made[name, size] = read.maybe(name, size)
        if holes.blind:
            made[name, "deep"] = read.take(name, "depth")
