"""The outside of a turned part: lands from face A to face B, their edges and grooves."""

from __future__ import annotations

import math
from dataclasses import dataclass

from tommybar.design.reading import TINY, Reading
from tommybar.design.written_parts import WrittenGroove, WrittenLand, WrittenTurned
from tommybar.design.yaml_file import Place
from tommybar.shapes.features import Cone, Cylinder, Dim, Groove, Knurl
from tommybar.shapes.features import Land as Outside

LEFT_OF_STEP = 0.05  # a chamfer may not eat a whole step: diameters are made within their limits [mm]


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

    @property
    def long(self) -> float:
        """Its length [mm]."""
        return self.end - self.start

    @property
    def least(self) -> float:
        """Its smaller diameter [mm]."""
        return min(self.a_dia, self.b_dia)


def build_lands(read: Reading, written: WrittenTurned, place: Place) -> tuple[Land, ...]:
    """Lands in order from face A, the lengths added up and checked."""
    longs = _lengths(read, written, place)
    lands: list[Land] = []
    at = 0.0
    for index, (land, long) in enumerate(zip(written.outside, longs, strict=True)):
        here = (*place, "outside", index)
        if land.cone:
            (a_dia, b_dia), thread = (read.of(one) for one in land.cone), ""
        else:
            a_dia, thread = read.diameter(land.dia, land.thread, here)
            b_dia = a_dia
        lands.append(Land(land, here, a_dia, b_dia, thread, at, at + long))
        at += long
    return tuple(lands)


def _lengths(read: Reading, written: WrittenTurned, place: Place) -> list[float]:
    longs = [read.of(land.long, math.nan) for land in written.outside]
    left_out = [index for index, land in enumerate(written.outside) if land.long is None]
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
    """The lands as cylinders and cones with their chamfers."""
    found: list[Outside] = []
    for index, land in enumerate(lands):
        one = land.written
        if one.cone:
            if one.edges or one.edge_a or one.edge_b or one.limits or one.knurl:
                read.complain(land.place, "A cone takes no edges, limits or knurl.", "Take them out.")
            found.append(Cone(one.name, land.start, land.end, land.a_dia, land.b_dia))
            continue
        before = lands[index - 1].b_dia if index else 0.0
        after = lands[index + 1].a_dia if index + 1 < len(lands) else 0.0
        edge_a = _edge(read, land, "edge_a", before, index == 0)
        edge_b = _edge(read, land, "edge_b", after, index + 1 == len(lands))
        if edge_a + edge_b > land.long + TINY:
            what = f"The chamfers take {edge_a + edge_b:g} mm; the land is {land.long:g} mm long."
            read.complain(land.place, what, "Make the chamfers smaller.")
        dim = read.dim(land.a_dia, f"{part}.{one.name}", land.place, one.limits)
        knurl = Knurl(one.knurl.pattern, read.of(one.knurl.pitch)) if one.knurl else None
        found.append(
            Cylinder(one.name, dim, land.start, land.end, edge_a, edge_b, land.thread, knurl, one.finish)
        )
    return tuple(found)


def _edge(read: Reading, land: Land, key: str, beside: float, face: bool) -> float:
    """The chamfer at one end [mm]; 0 where the end is no free edge."""
    own = getattr(land.written, key)
    formula = own or land.written.edges
    if formula is None:
        return 0.0
    step = (land.a_dia - beside) / 2
    if not face and step <= TINY:
        if own:
            beside_it = f"beside its {land.a_dia:g} mm stand {beside:g} mm"
            what = f"This end of {land.written.name} is no edge: {beside_it}."
            read.complain((*land.place, key), what, "Take the chamfer out.")
        return 0.0
    size = read.of(formula)
    left = 0.0 if face else LEFT_OF_STEP
    if size > step - left + TINY:
        what = f"The chamfer is {size:g} mm; the step it breaks is {step:g} mm high"
        what += f", of which {left:g} mm must stay." if left else "."
        read.complain((*land.place, key if own else "edges"), what, "Make the chamfer smaller.")
    if size > land.long + TINY:
        what = f"The chamfer is {size:g} mm; its land is {land.long:g} mm long."
        read.complain((*land.place, key if own else "edges"), what, "Make the chamfer smaller.")
    return size


def build_grooves(
    read: Reading, written: tuple[WrittenGroove, ...], place: Place, lands: tuple[Land, ...]
) -> tuple[Groove, ...]:
    """Grooves and undercuts with their place along the part."""
    found = []
    for index, groove in enumerate(written):
        here = (*place, "grooves", index)
        land = next((one for one in lands if one.written.name == groove.on), None)
        if land is None:
            read.one_of(groove.on, (one.written.name for one in lands), (*here, "on"), "land")
            continue
        found.append(_groove(read, groove, here, land))
    return tuple(found)


def _groove(read: Reading, groove: WrittenGroove, here: Place, land: Land) -> Groove:
    wide = read.of(groove.wide)
    if (groove.at is None) == (groove.from_a is None):
        read.complain(here, "The groove must have either at or from_a.", "Keep one of the two.")
    if groove.from_a is not None:
        start = read.of(groove.from_a)
    elif groove.at == "middle":
        start = (land.start + land.end - wide) / 2
    else:
        start = land.start if groove.at == "a" else land.end - wide
    if start < land.start - TINY or start + wide > land.end + TINY:
        what = (
            f"The groove lies from {start:g} to {start + wide:g} mm; "
            f"{groove.on} lies from {land.start:g} to {land.end:g} mm."
        )
        read.complain((*here, "wide"), what, "Make it narrower, or move it.")
    if (groove.deep is None) == (groove.floor is None):
        read.complain(here, "The groove must have either deep or floor.", "Keep one of the two.")
    floor = read.of(groove.floor) if groove.floor else land.least - 2 * read.of(groove.deep)
    if floor <= 0 or floor >= land.least:
        what = f"The floor of the groove is {floor:g} mm; it must lie between 0 and {land.least:g} mm."
        read.complain((*here, "floor" if groove.floor else "deep"), what, "Change its depth.")
    return Groove(groove.name, start, start + wide, floor)


def overall(read: Reading, part: str, lands: tuple[Land, ...], place: Place) -> Dim:
    """The length over all."""
    return read.dim(lands[-1].end, f"{part}.length", place)
