"""What is written of the inside and the faces: bores, tapers, cups, centres, recesses, slots across a face."""

from __future__ import annotations

import math

from tommybar.facts.drills.centre_drills import centre_drill
from tommybar.facts.threads import tap_depths, thread
from tommybar.pack.profile import nominal
from tommybar.pack.turned.angles import before_face, whole_angle
from tommybar.pack.turned.outside import commonest_edge, finish_row
from tommybar.pack.turned.saying import Angles, Callout, Measured, Saying, detailed
from tommybar.pack.units import Reader
from tommybar.shapes.curves import Line
from tommybar.shapes.features import Bore, CentreHole, Face, TurnedShape
from tommybar.shapes.inside import cup_level, drawn_bore
from tommybar.shapes.profile import profile

BEFORE = 3.5  # from the mouth of a cup to the arc of its angle in front of the face [mm on paper]
STAYS = {"may": "may stay", "must": "must stay", "must not": "must not stay"}


def inside_callouts(shape: TurnedShape, reader: Reader, angles: Angles) -> list[Callout]:
    """Callouts beside face A and face B; through bores go where fewer stand."""
    made = [_bore(shape, one, reader, "A") for one in shape.bores if not one.through and one.face == "A"]
    made += [_bore(shape, one, reader, "B") for one in shape.bores if not one.through and one.face == "B"]
    made += _faces(shape, reader)
    made += _slots(shape, reader, angles)
    for bore in shape.bores:
        if bore.through:
            left, right = (sum(one.side == side for one in made) for side in ("A", "B"))
            side = bore.face if left == right else "A" if left < right else "B"
            made.append(_bore(shape, bore, reader, side))
    return made


def _wall_end(shape: TurnedShape, radius: float, side: str, fallback: float) -> float:
    """Where a wall of that radius ends that is nearest to a face [mm from face A]."""
    ends = [
        z
        for piece in profile(nominal(shape))
        if isinstance(piece, Line)
        for z, r in (piece.start, piece.end)
        if abs(piece.start[1] - radius) < 0.02
        and abs(piece.end[1] - radius) < 0.02
        and abs(r - radius) < 0.02
    ]
    if not ends:
        return fallback
    return min(ends) if side == "A" else max(ends)


def _lead(shape: TurnedShape, one: Bore, reader: Reader) -> str:
    """How deep a blind hole is drilled so that the tap's lead has room below the full thread, where the part has it."""
    deep = tap_depths(thread(one.thread), one.depth).full_diameter_depth
    return f" × {reader.place(deep)} deep" if deep < shape.length.value else ""


def _bore(shape: TurnedShape, one: Bore, reader: Reader, side: str) -> Callout:
    say = Saying(one.name, reader, "face " + one.face)

    def deep() -> str:
        return "" if one.through else f"× {say.length('depth', 'depth', one.depth, 'face ' + one.face)} deep"

    if one.thread:
        words = say.word("thread", "thread", one.thread, one.dia.value)
        if one.left:
            words += " " + say.word("form", "left", "LH")
        if one.full:
            words += f" × {say.length('depth', 'full', one.full, 'face ' + one.face)} full"
        if not one.full:
            words += " through" if one.through else f" {deep()}"
        say.row(words)
        if one.full or not one.through:
            drill = f"drill Ø{reader.plain(drawn_bore(one))}"
            say.row(
                f"{drill} {'through' if one.through else deep()}"
                if one.full
                else drill + _lead(shape, one, reader),
                True,
            )
    else:
        say.sized("dia", one.dia, after=deep())
        if one.dia.toleranced:
            say.rows.append(finish_row(one.dia.zone))
    met = any(other.dia.value < one.dia.value and other is not one for other in shape.bores)
    if not one.through and (one.corner or one.bottom != "flat" or not met):
        floor = {"flat": "flat floor", "drill": "drill tip 118°", "ball": "round bottom"}[one.bottom]
        if one.corner:
            floor += f", corner R{say.length('radius', 'corner', one.corner)}"
        say.word("form", "bottom", floor.split(",")[0])
        if one.bottom == "ball":  # it follows from the diameter
            floor += f" (R{reader.free(one.dia.value / 2)})"
        say.row(floor, True)
    if one.edge and (one.edge, 45.0) != commonest_edge(shape):
        say.row(f"{say.length('chamfer', 'edge', one.edge)} × {say.angle('edge_angle', 45.0)}", True)
    radius = (drawn_bore(one) if one.thread else one.dia.value) / 2
    fallback = 0.0 if side == "A" else shape.length.value
    z = _wall_end(shape, radius, side, fallback)
    rows, printed = tuple(say.rows), tuple(say.printed)
    return Callout(z, radius, rows, printed, Measured("diameter", 2 * radius), side, one.name)


def _faces(shape: TurnedShape, reader: Reader) -> list[Callout]:
    made: list[Callout] = []
    length = shape.length.value

    def at(face: Face, deep: float) -> float:
        return deep if face == "A" else length - deep

    for one in shape.recesses:
        say = Saying(one.name, reader, "face " + one.face)
        inner = "recess " + (say.dia("inside", one.inside) + " to " if one.inside else "")
        say.row(f"{inner}{say.dia('outside', one.outside)} × "
                f"{say.length('depth', 'depth', one.depth, 'face ' + one.face)} deep")  # fmt: skip
        if one.inside_draft or one.outside_draft:
            say.row(f"walls lean {say.angle('inside_draft', one.inside_draft)} inside, "
                    f"{say.angle('outside_draft', one.outside_draft)} outside", True)  # fmt: skip
        if one.corner:
            say.row(f"corners R{say.length('radius', 'corner', one.corner)} max", True)
        made.append(
            Callout(at(one.face, 0.0), one.outside / 2, tuple(say.rows), tuple(say.printed),
                    Measured("diameter", one.outside), one.face, one.name)
        )  # fmt: skip
    for narrow in shape.face_grooves:
        say = Saying(narrow.name, reader, "face " + narrow.face)
        say.row(f"groove {say.dia('inside', narrow.inside)} to {say.dia('outside', narrow.outside)}")
        say.row(f"{say.length('depth', 'depth', narrow.depth, 'face ' + narrow.face)} deep", True)
        made.append(
            Callout(at(narrow.face, 0.0), narrow.outside / 2, tuple(say.rows), tuple(say.printed),
                    Measured("diameter", narrow.outside), narrow.face, narrow.name)
        )  # fmt: skip
    for taper in shape.bore_tapers:
        say = Saying(taper.name, reader, "face " + taper.face)
        if taper.taper:
            way = 1 if taper.face == "A" else -1
            say.row(f"{say.word('form', 'taper', taper.taper)} taper", taper=way)
        say.row(f"{say.dia('mouth', taper.mouth)} to {say.dia('end_dia', taper.end_dia)}")
        where = f"{say.length('depth', 'depth', taper.depth, 'face ' + taper.face)} deep"
        if taper.start:
            where = f"from {say.length('depth', 'start', taper.start, 'face ' + taper.face)} to " + where
        say.row(where, True)
        made.append(
            Callout(at(taper.face, taper.start), taper.mouth / 2, tuple(say.rows), tuple(say.printed),
                    Measured("diameter", taper.mouth), taper.face, taper.name)
        )  # fmt: skip
    for cup in shape.cups:
        say = Saying(cup.name, reader, "face " + cup.face)
        say.row(f"{say.dia('mouth', cup.mouth)} × {say.angle('included', cup.included)}")
        if cup.relief:
            say.row(f"relief {say.dia('relief', cup.relief)} × "
                    f"{say.length('depth', 'relief_depth', cup.relief_depth, 'face ' + cup.face)} deep", True)  # fmt: skip
        deep = cup.mouth / 2 / math.tan(math.radians(cup.included / 2))
        level = cup_level(cup, shape)
        place = at(cup.face, level)
        measured = whole_angle(at(cup.face, level + deep), place, cup.mouth / 2, cup.included, BEFORE)
        made.append(
            Callout(
                place,
                before_face(measured),
                tuple(say.rows),
                tuple(say.printed),
                measured,
                cup.face,
                cup.name,
            )
        )
    made += [_centre(one, reader, at(one.face, 0.0)) for one in shape.centres]
    for inner_groove in shape.bore_grooves:
        say = Saying(inner_groove.name, reader)
        width = say.length("width", "width", inner_groove.end - inner_groove.start)
        say.row(f"inside {width} × {say.dia('floor', inner_groove.floor)}")
        ends = ((inner_groove.start, inner_groove.floor / 2), (inner_groove.end, inner_groove.floor / 2))
        alone = detailed(say, width, f"inside {width} × ", "inside ", *ends)
        z = (inner_groove.start + inner_groove.end) / 2
        made.append(
            Callout(z, inner_groove.floor / 2, tuple(say.rows), tuple(say.printed),
                    Measured("diameter", inner_groove.floor), "above", inner_groove.name,
                    inner_groove.end - inner_groove.start, alone)
        )  # fmt: skip
    return made


def _centre(one: CentreHole, reader: Reader, z: float) -> Callout:
    say = Saying(one.name, reader, "face " + one.face)
    drill = centre_drill(f"{one.form} {one.pilot:g}")
    form = say.word("form", "form", one.form)
    mouth = f" / {drill.mouth:g}" if drill.mouth else ""
    say.row(f"ISO 6411 – {form} {say.word('form', 'pilot', f'{one.pilot:g}', one.pilot)}{mouth}")
    say.row(f"centre hole {say.word('form', 'keep', STAYS[one.keep])}", True)
    return Callout(
        z, (drill.mouth or 2 * one.pilot) / 2, tuple(say.rows), tuple(say.printed), None, one.face, one.name
    )


def _slots(shape: TurnedShape, reader: Reader, angles: Angles) -> list[Callout]:
    made: list[Callout] = []
    length = shape.length.value
    for slot in shape.head_slots:
        say = Saying(slot.name, reader, "face " + slot.face)
        say.sized("width", slot.width, "slot ", "wide", "width")
        say.row(f"{say.length('depth', 'depth', slot.depth, 'face ' + slot.face)} deep", True)
        if angles.said(slot.name):
            say.row(f"at {say.angle('angle', slot.angle)}", True)
        z = slot.depth if slot.face == "A" else length - slot.depth
        made.append(
            Callout(z, slot.width.value / 2, tuple(say.rows), tuple(say.printed), None, slot.face, slot.name)
        )
    for slit in shape.slits:
        say = Saying(slit.name, reader, "face " + slit.face)
        say.row(f"slit {say.length('width', 'width', slit.width)} wide")
        deep = "whole length" if slit.depth is None else (
            f"{say.length('depth', 'depth', slit.depth, 'face ' + slit.face)} deep")  # fmt: skip
        walls = say.word("form", "walls", "right across" if slit.walls == 2 else "one wall", slit.walls)
        say.row(f"{deep}, {walls}", True)
        if angles.said(slit.name):
            say.row(f"at {say.angle('angle', slit.angle)}", True)
        made.append(
            Callout(0.0 if slit.face == "A" else length, -slit.width / 2, tuple(say.rows), tuple(say.printed),
                    None, slit.face, slit.name)
        )  # fmt: skip
    return made
