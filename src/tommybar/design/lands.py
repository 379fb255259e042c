"""The outside of a turned part: lands from face A to face B, their edges and corners."""

from __future__ import annotations

import math
from dataclasses import dataclass

from tommybar.design.land_forms import arc_fault, end_diameters, form_features, own_long
from tommybar.design.reading import TINY, Reading
from tommybar.design.written_lands import WrittenLand
from tommybar.design.written_turned import WrittenTurned
from tommybar.design.yaml_file import Place
from tommybar.shapes.features import Cylinder, Dim, Knurl
from tommybar.shapes.features import Land as Outside

LEFT_OF_STEP = 0.05  # a chamfer may not eat a whole step: diameters are made within their limits [mm]
PLAIN_ONLY = ("limits", "knurl", "edges", "edge_a", "edge_b", "corner", "corner_a", "corner_b")


@dataclass(frozen=True)
class Land:
    """One land with its figures [mm]: diameters at its A and B end, where it lies."""

    written: WrittenLand
    place: Place
    a_dia: float
    b_dia: float
    thread: str
    start: float
    end: float
    throw: float = 0.0  # of an eccentric land, which swings in a_dia

    @property
    def long(self) -> float:
        """Its length [mm]."""
        return self.end - self.start

    @property
    def least(self) -> float:
        """Its smaller diameter [mm]; of an eccentric land the circle about the axis that it holds."""
        return min(self.a_dia, self.b_dia) - 4 * self.throw


@dataclass(frozen=True)
class Broken:
    """One end of a cylinder: a chamfer or a round, 0 where there is none [mm, deg]."""

    size: float = 0.0
    angle: float = 45.0
    round: bool = False

    @property
    def drop(self) -> float:
        """How far it goes down from the land's surface [mm on radius]."""
        if self.round or self.angle == 45:
            return self.size
        return self.size * math.tan(math.radians(self.angle))


def build_lands(read: Reading, written: WrittenTurned, place: Place) -> tuple[Land, ...]:
    """Lands in order from face A, the lengths added up and checked."""
    longs = _lengths(read, written, place)
    lands: list[Land] = []
    at = 0.0
    for index, (land, long) in enumerate(zip(written.outside, longs, strict=True)):
        here = (*place, "outside", index)
        thread, throw = "", 0.0
        if land.form:
            a_dia, b_dia = end_diameters(read, land, long, index == 0 and len(longs) > 1, here)
            throw = read.of(land.eccentric.throw) if land.eccentric else 0.0
        else:
            a_dia, thread = read.diameter(land.dia, land.thread, here)
            b_dia = a_dia
        lands.append(Land(land, here, a_dia, b_dia, thread, at, at + long, throw))
        at += long
    return tuple(lands)


def _lengths(read: Reading, written: WrittenTurned, place: Place) -> list[float]:
    before = len(read.wrong)
    longs = [own_long(read, land, (*place, "outside", n)) for n, land in enumerate(written.outside)]
    if len(read.wrong) > before:  # a length that is wrong has been told; the sum would tell it twice
        return longs
    left_out = [index for index, long in enumerate(longs) if math.isnan(long)]
    given = read.of(written.length, math.nan)
    total = math.fsum(long for long in longs if not math.isnan(long))
    if len(left_out) > 1 or (left_out and written.length is None):
        names = " and ".join(written.outside[index].name for index in left_out)
        what = f"The length of {names} is left out; only one may be, and then length is needed."
        read.complain((*place, "outside", left_out[-1]), what, "Add long.")
    elif left_out:
        rest = given - total
        if rest <= TINY:
            what = (
                f"The other lands take {total:g} mm of the length {given:g} mm; nothing is left for this one."
            )
            read.complain((*place, "outside", left_out[0]), what, "Make length longer, or the lands shorter.")
        longs[left_out[0]] = rest
    elif abs(total - given) > TINY:
        what = f"The lands add up to {total:g} mm; the length is {given:g} mm."
        read.complain((*place, "length"), what, "Leave out the long of the land that takes the rest.")
    return longs


def outside_features(read: Reading, part: str, lands: tuple[Land, ...]) -> tuple[Outside, ...]:
    """The lands as features, cylinders with their edges and corners."""
    found: list[Outside] = []
    for index, land in enumerate(lands):
        one = land.written
        if one.form:
            _refuse_extras(read, land)
            if one.form in ("point", "dome") and 0 < index < len(lands) - 1:
                what = f"The {one.form} is land {index + 1} of {len(lands)}; it can only be the first or the last."
                read.complain((*land.place, one.form), what, "Move it to an end of the part.")
            ends = (land.a_dia, land.b_dia)
            made = form_features(read, part, one, ends, land.start, land.end, land.place)
            for feature in made:
                arc_fault(read, feature, (*land.place, one.form))
            found += made
            continue
        found.append(_cylinder(read, part, lands, index))
    return tuple(found)


def _refuse_extras(read: Reading, land: Land) -> None:
    one = land.written
    extra = [key for key in (*PLAIN_ONLY, "full", "left", "thread") if getattr(one, key)]
    if one.eccentric and extra == ["limits"]:
        return
    if extra:
        article = "An" if one.form[0] in "aeiou" else "A"
        known = "edges, limits or knurl" if one.form == "cone" else ", ".join(extra)
        read.complain(land.place, f"{article} {one.form} takes no {known}.", "Take them out.")


def _cylinder(read: Reading, part: str, lands: tuple[Land, ...], index: int) -> Cylinder:
    land = lands[index]
    one = land.written
    before = lands[index - 1].b_dia if index else 0.0
    after = lands[index + 1].a_dia if index + 1 < len(lands) else 0.0
    edge_a = _edge(read, land, "edge_a", before, index == 0)
    edge_b = _edge(read, land, "edge_b", after, index + 1 == len(lands))
    corner_a = _corner(read, land, "corner_a", before) if index else 0.0
    corner_b = _corner(read, land, "corner_b", after) if index + 1 < len(lands) else 0.0
    if edge_a.size + edge_b.size > land.long + TINY:
        what = f"The chamfers take {edge_a.size + edge_b.size:g} mm; the land is {land.long:g} mm long."
        read.complain(land.place, what, "Make the chamfers smaller.")
    ends = edge_a.size + edge_b.size + corner_a + corner_b
    if corner_a + corner_b > 0 and ends > land.long + TINY:
        what = f"Edges and corners take {ends:g} mm; the land is {land.long:g} mm long."
        read.complain(land.place, what, "Make them smaller.")
    full = read.of(one.full)
    if full > land.long + TINY:
        what = f"The thread is to be full for {full:g} mm; {one.name} is {land.long:g} mm long."
        read.complain((*land.place, "full"), what, "Make the thread shorter, or the land longer.")
    for key in ("full", "left"):
        if getattr(one, key) and one.thread is None:
            read.complain((*land.place, key), f"{one.name} has no thread.", f"Take {key} out.")
    own = one.edges or one.edge_a or one.edge_b or one.corner
    dim = read.dim(land.a_dia, f"{part}.{one.name}", land.place, one.limits)
    knurl = Knurl(one.knurl.pattern, read.of(one.knurl.pitch)) if one.knurl else None
    plain = Cylinder(one.name, dim, land.start, land.end, 0.0, 0.0, land.thread, knurl, one.finish)
    if not (own or corner_a or corner_b or full or one.left):
        return plain
    angle, angle_b = (edge_a.angle, edge_b.angle) if edge_a.size else (edge_b.angle, edge_b.angle)
    return Cylinder(
        one.name,
        dim,
        land.start,
        land.end,
        0.0 if edge_a.round else edge_a.size,
        0.0 if edge_b.round else edge_b.size,
        land.thread,
        knurl,
        one.finish,
        edge_angle=angle,
        round_start=edge_a.size if edge_a.round else 0.0,
        round_end=edge_b.size if edge_b.round else 0.0,
        corner_start=corner_a,
        corner_end=corner_b,
        full=full,
        left=one.left,
        edge_end_angle=angle_b if edge_b.size and angle_b != angle else None,
    )


def _edge(read: Reading, land: Land, key: str, beside: float, face: bool) -> Broken:
    """The chamfer or round at one end; none where the end is no free edge."""
    own = getattr(land.written, key)
    edge = own or land.written.edges
    if edge is None:
        return Broken()
    step = (land.a_dia - beside) / 2
    if not face and step <= TINY:
        if own:
            beside_it = f"beside its {land.a_dia:g} mm stand {beside:g} mm"
            what = f"This end of {land.written.name} is no edge: {beside_it}."
            read.complain((*land.place, key), what, "Take the chamfer out.")
        return Broken()
    place = (*land.place, key if own else "edges")
    angle = read.of(edge.angle, 45.0)
    if angle <= 0 or angle >= 90:
        read.complain(place, f"The chamfer is {angle:g} deg to the axis; it must lie between 0 and 90 deg.")
        return Broken()
    broken = Broken(read.of(edge.size), angle, edge.round)
    left = 0.0 if face else LEFT_OF_STEP
    word = "round" if edge.round else "chamfer"
    if broken.drop > step - left + TINY:
        size = f"{broken.size:g} mm" if broken.drop == broken.size else f"{broken.drop:.4g} mm deep"
        what = f"The {word} is {size}; the step it breaks is {step:g} mm high"
        what += f", of which {left:g} mm must stay." if left else "."
        read.complain(place, what, f"Make the {word} smaller.")
    if broken.size > land.long + TINY:
        what = f"The {word} is {broken.size:g} mm; its land is {land.long:g} mm long."
        read.complain(place, what, f"Make the {word} smaller.")
    return broken


def _corner(read: Reading, land: Land, key: str, beside: float) -> float:
    """The radius in the corner with a larger neighbour [mm]; 0 where there is none."""
    own = getattr(land.written, key)
    formula = own or land.written.corner
    if formula is None:
        return 0.0
    step = (beside - land.a_dia) / 2
    if step <= TINY:
        if own:
            what = f"This end of {land.written.name} is no corner: beside its {land.a_dia:g} mm stand {beside:g} mm."
            read.complain((*land.place, key), what, "Take the corner out.")
        return 0.0
    size = read.of(formula)
    if size > step + TINY:
        what = f"The corner radius is {size:g} mm; the shoulder there is {step:g} mm high."
        read.complain((*land.place, key if own else "corner"), what, "Make the corner smaller.")
    return size


def overall(read: Reading, part: str, lands: tuple[Land, ...], place: Place) -> Dim:
    """The length over all."""
    return read.dim(lands[-1].end, f"{part}.length", place)
