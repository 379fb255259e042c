"""Grooves of a turned part: in its outside, in its faces and inside its bores."""

from __future__ import annotations

import math

from tommybar.design.lands import Land
from tommybar.design.reading import TINY, Reading
from tommybar.design.written_lands import WrittenGroove
from tommybar.design.written_turned import WrittenTurned
from tommybar.design.yaml_file import Place
from tommybar.shapes.features import Bore, BoreGroove, FaceGroove, Groove
from tommybar.shapes.inside import drawn_bore


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
    floor, key = _floor(read, groove, here, land, wide)
    if floor <= 0 or floor >= land.least:
        what = f"The floor of the groove is {floor:g} mm; it must lie between 0 and {land.least:g} mm."
        read.complain((*here, key), what, "Change its depth.")
    corner = read.of(groove.corner)
    if corner and groove.form != "square":
        read.complain(
            (*here, "corner"), f"A {groove.form} groove has no corners in its floor.", "Take it out."
        )
    if corner > min(wide / 2, (land.least - floor) / 2) + TINY:
        deep = (land.least - floor) / 2
        what = f"The corner radius is {corner:g} mm; the groove is {wide:g} mm wide and {deep:g} mm deep."
        read.complain((*here, "corner"), what, "Make the corner smaller.")
    return Groove(groove.name, start, start + wide, floor, corner, groove.form)


def _floor(read: Reading, groove: WrittenGroove, here: Place, land: Land, wide: float) -> tuple[float, str]:
    """The diameter of a groove's floor [mm], and the key that says it."""
    given = [key for key in ("deep", "floor", "included") if getattr(groove, key) is not None]
    if groove.form != "vee":
        if groove.included is not None:
            read.complain((*here, "included"), f"A {groove.form} groove has no angle.", "Take it out.")
        if (groove.deep is None) == (groove.floor is None):
            read.complain(here, "The groove must have either deep or floor.", "Keep one of the two.")
    elif len(given) != 1:
        read.complain(here, "The vee must have one of deep, floor and included.", "Keep one of them.")
    if groove.floor:
        return read.of(groove.floor), "floor"
    if groove.included:
        angle = read.of(groove.included)
        if angle <= 0 or angle >= 180:
            read.complain(
                (*here, "included"), f"The vee is {angle:g} deg; it must lie between 0 and 180 deg."
            )
            return math.nan, "included"
        return land.least - wide / math.tan(math.radians(angle / 2)), "included"
    return land.least - 2 * read.of(groove.deep), "deep"


def build_face_grooves(
    read: Reading, written: WrittenTurned, place: Place, lands: tuple[Land, ...], bores: tuple[Bore, ...]
) -> tuple[FaceGroove, ...]:
    """Ring grooves in the faces."""
    found = []
    for index, one in enumerate(written.face_grooves):
        here = (*place, "face_grooves", index)
        inside, outside, deep = read.of(one.inside), read.of(one.outside), read.of(one.deep)
        land = lands[0] if one.face == "A" else lands[-1]
        if inside >= outside:
            what = f"The groove goes from {inside:g} to {outside:g} mm in diameter."
            read.complain((*here, "outside"), what, "Its outside must be the larger.")
        edge = land.a_dia if one.face == "A" else land.b_dia
        if outside >= edge - TINY:
            what = f"The groove is {outside:g} mm in diameter; {land.written.name} is {edge:g} mm."
            read.complain((*here, "outside"), what, "Make the groove smaller.")
        thick = thickness(lands, one.face, inside)
        if deep >= thick - TINY:
            what = f"The groove is {deep:g} mm deep; the metal it is cut in is {thick:g} mm thick there."
            read.complain((*here, "deep"), what, "Make it shallower.")
        for bore in bores:
            if (bore.through or bore.face == one.face) and inside < bore.dia.value - TINY:
                what = f"The groove begins at {inside:g} mm; {bore.name} is {bore.dia.value:g} mm."
                read.complain((*here, "inside"), what, "Begin it outside the bore.")
        found.append(FaceGroove(one.name, one.face, inside, outside, deep))
    return tuple(found)


def thickness(lands: tuple[Land, ...], face: str, inside: float) -> float:
    """How thick the metal outside the diameter ``inside`` is, from that face [mm]."""
    thick = 0.0
    for land in lands if face == "A" else reversed(lands):
        if land.least <= inside:
            break
        thick += land.long
    return thick


def build_bore_grooves(
    read: Reading, written: WrittenTurned, place: Place, lands: tuple[Land, ...], bores: tuple[Bore, ...]
) -> tuple[BoreGroove, ...]:
    """Grooves inside bores."""
    found = []
    length = lands[-1].end
    for index, one in enumerate(written.bore_grooves):
        here = (*place, "bore_grooves", index)
        bore = next((each for each in bores if each.name == one.on), None)
        if bore is None:
            read.one_of(one.on, (each.name for each in bores), (*here, "on"), "bore")
            continue
        start, wide = read.of(one.from_a), read.of(one.wide)
        low, high = (0.0, length) if bore.through else (0.0, bore.depth)
        if not bore.through and bore.face == "B":
            low, high = length - bore.depth, length
        if start < low - TINY or start + wide > high + TINY:
            what = f"The groove lies from {start:g} to {start + wide:g} mm; {one.on} from {low:g} to {high:g} mm."
            read.complain((*here, "from_a"), what, "Make it narrower, or move it.")
        if (one.deep is None) == (one.floor is None):
            read.complain(here, "The groove must have either deep or floor.", "Keep one of the two.")
        wall = drawn_bore(bore) if bore.thread and not math.isnan(bore.dia.value) else bore.dia.value
        floor = read.of(one.floor) if one.floor else wall + 2 * read.of(one.deep)
        key = "floor" if one.floor else "deep"
        if floor <= wall + TINY:
            what = f"The floor of the groove is {floor:g} mm; {one.on} is {wall:g} mm."
            read.complain((*here, key), what, "The floor must be the larger.")
        for land in lands:
            if land.start < start + wide - TINY and land.end > start + TINY and floor >= land.least - TINY:
                what = f"The floor of the groove is {floor:g} mm; {land.written.name} outside it is {land.least:g} mm."
                read.complain((*here, key), what, "Make the groove shallower.")
        found.append(BoreGroove(one.name, one.on, start, start + wide, floor))
    return tuple(found)
