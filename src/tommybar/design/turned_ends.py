"""Conical bores, cups, countersinks and centre holes of a turned part, checked against the metal there."""

from __future__ import annotations

import math
import re
from typing import Literal, cast

from tommybar.design.land_forms import cone_half_angle
from tommybar.design.lands import Land
from tommybar.design.reading import TINY, Reading
from tommybar.design.written_inside import WrittenBoreTaper, WrittenCup
from tommybar.design.written_lands import WrittenCone
from tommybar.design.written_turned import WrittenTurned
from tommybar.design.yaml_file import Place
from tommybar.facts.drills import centre_drill
from tommybar.refusals import Refusal
from tommybar.shapes.features import Bore, BoreTaper, CentreHole, Cup


def build_bore_tapers(
    read: Reading, written: WrittenTurned, place: Place, lands: tuple[Land, ...]
) -> tuple[BoreTaper, ...]:
    """Conical bores."""
    return tuple(
        _bore_taper(read, one, (*place, "tapers", index), lands) for index, one in enumerate(written.tapers)
    )


def _bore_taper(read: Reading, one: WrittenBoreTaper, here: Place, lands: tuple[Land, ...]) -> BoreTaper:
    steep = [key for key in ("half_angle", "included", "taper", "end") if getattr(one, key)]
    if len(steep) != 1:
        had = " and ".join(steep) or "none of them"
        what = f"The taper has {had}; it must have one of end, half_angle, included and taper."
        read.complain(here, what, "Keep one.")
    cone = WrittenCone.model_construct(
        large=None, small=None, half_angle=one.half_angle, included=one.included, taper=one.taper
    )
    half, standard_mouth, standard_deep = cone_half_angle(read, cone, here[:-1], str(here[-1]))
    mouth, deep = read.of(one.mouth, standard_mouth), read.of(one.deep, standard_deep)
    for key, figure in (("mouth", mouth), ("deep", deep)):
        if math.isnan(figure) and getattr(one, key) is None:
            read.complain(here, f"The taper has no {key}.", f"Add {key}.")
    start, length = read.of(one.from_face), lands[-1].end
    end = read.of(one.end) if one.end else mouth - 2 * deep * math.tan(math.radians(half))
    if end >= mouth - TINY or end < -TINY:
        what = (
            f"The taper goes from {mouth:g} to {end:.4g} mm; it must get narrower inwards, and not below 0."
        )
        read.complain((*here, steep[0]) if steep else here, what, "Change a diameter, the angle or deep.")
    if start + deep > length + TINY:
        what = f"The taper ends {start + deep:g} mm below its face; the part is {length:g} mm long."
        read.complain((*here, "deep") if one.deep else here, what, "Make it shorter.")
    z = (start, start + deep) if one.face == "A" else (length - start - deep, length - start)
    for land in lands:
        if land.start < z[1] - TINY and land.end > z[0] + TINY and mouth >= land.least - TINY:
            what = f"The taper is {mouth:g} mm at its mouth; {land.written.name} outside it is {land.least:g} mm."
            read.complain((*here, "mouth") if one.mouth else here, what, "Make it smaller.")
            break
    return BoreTaper(one.name, one.face, start, deep, mouth, max(end, 0.0), one.taper)


def build_cups(
    read: Reading, written: WrittenTurned, place: Place, lands: tuple[Land, ...], bores: tuple[Bore, ...]
) -> tuple[Cup, ...]:
    """Cups and countersinks."""
    found = []
    for index, one in enumerate(written.cups):
        here = (*place, "cups", index)
        mouth, included = read.of(one.mouth), read.of(one.included)
        if included <= 0 or included >= 180:
            what = f"The cup is {included:g} deg; it must lie between 0 and 180 deg."
            read.complain((*here, "included"), what, "Check the angle.")
            included = 90.0
        land = lands[0] if one.face == "A" else lands[-1]
        face = land.a_dia if one.face == "A" else land.b_dia
        if mouth >= face - TINY:
            what = f"The cup is {mouth:g} mm at its mouth; its face, of {land.written.name}, is {face:g} mm."
            read.complain((*here, "mouth"), what, "Make the cup smaller.")
        deep = mouth / 2 / math.tan(math.radians(included / 2))
        relief, below = _relief(read, one, here, mouth)
        narrow = relief / 2 / math.tan(math.radians(included / 2))
        if relief and below < narrow - TINY:
            what = f"The relief goes {below:g} mm below the cone; the cone's own point goes {narrow:.4g} mm."
            read.complain(
                (*here, "relief_deep"), what, "Make it deeper than the point, so that nothing touches."
            )
        if one.on:
            _countersink(read, one, here, mouth, bores)
        elif max(deep, deep - narrow + below) >= lands[-1].end - TINY:
            what = f"The cup is {deep:.4g} mm deep to its point; the part is {lands[-1].end:g} mm long."
            read.complain((*here, "included"), what, "Make it blunter or smaller.")
        found.append(Cup(one.name, one.face, mouth, included, relief, below, one.on))
    return tuple(found)


def _relief(read: Reading, one: WrittenCup, here: Place, mouth: float) -> tuple[float, float]:
    """The small hole at a cup's bottom: its diameter and how far below the cone's end it goes [mm]."""
    relief, below = read.of(one.relief), read.of(one.relief_deep)
    if relief >= mouth:
        what = f"The relief is {relief:g} mm; the cup is {mouth:g} mm at its mouth."
        read.complain((*here, "relief"), what, "Make the relief smaller.")
    if (one.relief is None) != (one.relief_deep is None):
        read.complain(here, "A relief needs both relief and relief_deep.", "Add the other.")
    return relief, below


def _countersink(read: Reading, one: WrittenCup, here: Place, mouth: float, bores: tuple[Bore, ...]) -> None:
    bore = next((each for each in bores if each.name == one.on), None)
    if bore is None:
        read.one_of(one.on, (each.name for each in bores), (*here, "on"), "bore")
    elif mouth <= bore.dia.value + TINY:
        what = f"The countersink is {mouth:g} mm at its mouth; {one.on} is {bore.dia.value:g} mm."
        read.complain((*here, "mouth"), what, "The countersink must be the larger.")
    elif not bore.through and bore.face != one.face:
        read.complain((*here, "face"), f"{one.on} is entered from face {bore.face}; it does not open there.")


def build_centres(
    read: Reading, written: WrittenTurned, place: Place, lands: tuple[Land, ...]
) -> tuple[CentreHole, ...]:
    """Centre holes by their ISO 6411 sizes."""
    found = []
    for index, one in enumerate(written.centres):
        here = (*place, "centres", index)
        size = re.fullmatch(r"\s*([ABR])\s*([0-9.]+)\s*", one.size)
        if size is None:
            what = f'The centre hole is "{one.size}"; a form and a pilot are wanted, such as A 2.5.'
            read.complain((*here, "size"), what, "The forms are A, B and R.")
            continue
        try:
            drill = centre_drill(f"{size[1]} {float(size[2]):g}")
        except (Refusal, ValueError) as fault:
            if isinstance(fault, Refusal):
                read.wrong += read.file.complaints((*here, "size"), fault)
            continue
        land = lands[0] if one.face == "A" else lands[-1]
        face = land.a_dia if one.face == "A" else land.b_dia
        mouth = drill.mouth or drill.pilot
        if mouth >= face - TINY:
            what = f"The centre hole is {mouth:g} mm at its mouth; its face, of {land.written.name}, is {face:g} mm."
            read.complain((*here, "size"), what, "Take a smaller one.")
        form = cast(Literal["A", "B", "R"], size[1])
        found.append(CentreHole(one.name, one.face, form, drill.pilot, one.keep))
    return tuple(found)
