"""Flats, slots, keyways, slits and scales of a turned part, checked against the metal that is there."""

from __future__ import annotations

import math

from tommybar.design.lands import Land
from tommybar.design.reading import TINY, Reading
from tommybar.design.written_across import (
    WrittenBoreKeyway,
    WrittenCrossSlot,
    WrittenEngraving,
    WrittenFlats,
    WrittenHeadSlot,
    WrittenKeyway,
    WrittenSlit,
)
from tommybar.design.written_turned import WrittenTurned
from tommybar.design.yaml_file import Place
from tommybar.shapes.features import (
    Bore,
    BoreKeyway,
    CrossSlot,
    Dim,
    Engraving,
    Flats,
    HeadSlot,
    Keyway,
    Slit,
)


class Milled:
    """The lands and bores that milled features of one part are checked against."""

    def __init__(
        self, read: Reading, part: str, place: Place, lands: tuple[Land, ...], bores: tuple[Bore, ...]
    ) -> None:
        self.read, self.part, self.place, self.lands, self.bores = read, part, place, lands, bores
        self.length = lands[-1].end

    def flats(self, written: WrittenTurned) -> tuple[Flats, ...]:
        """Flats, squares and hexagons."""
        found = [self._flats(one, (*self.place, "flats", n)) for n, one in enumerate(written.flats)]
        return tuple(one for one in found if one)

    def _land(self, name: str, here: Place) -> Land | None:
        land = next((one for one in self.lands if one.written.name == name), None)
        if land is None:
            self.read.one_of(name, (one.written.name for one in self.lands), (*here, "on"), "land")
        return land

    def _bore(self, name: str, here: Place) -> Bore | None:
        bore = next((one for one in self.bores if one.name == name), None)
        if bore is None:
            self.read.one_of(name, (one.name for one in self.bores), (*here, "on"), "bore")
        return bore

    def _inside(self, start: float, end: float) -> tuple[float, str]:
        """The widest bore between two places along the part: its radius [mm] and name."""
        widest = (0.0, "")
        for bore in self.bores:
            low, high = (0.0, self.length if bore.through else bore.depth)
            if not bore.through and bore.face == "B":
                low, high = self.length - bore.depth, self.length
            if low < end - TINY and high > start + TINY:
                widest = max(widest, (bore.dia.value / 2, bore.name))
        return widest

    def _flats(self, one: WrittenFlats, here: Place) -> Flats | None:
        land = self._land(one.on, here)
        if land is None:
            return None
        read, round_dia = self.read, max(land.a_dia, land.b_dia)
        given = [key for key in ("across", "deep", "level") if getattr(one, key) is not None]
        if len(given) != 1:
            had = " and ".join(given) or "none of them"
            what = f"The flats have {had}; they must have one of across, deep and level."
            read.complain(here, what, "Keep one.")
            return None
        count = read.of(one.count, 1.0)
        if one.across is not None and count % 2 > 0:
            what = (
                f"There {'is 1 flat' if count == 1 else f'are {count:g} flats'}; across needs an even number."
            )
            read.complain((*here, "across"), what, "Write deep or level.")
        level = read.of(one.across) / 2 if one.across else read.of(one.level)
        if one.deep:
            level = round_dia / 2 - read.of(one.deep)
        across = None
        if one.across is not None:
            across = read.dim(2 * level, f"{self.part}.{one.name}", here, one.limits)
        if level >= round_dia / 2 - TINY:
            size = f"{2 * level:g} mm across" if one.across else f"{level:g} mm from the axis"
            what = f"The flats stand {size}; {one.on} is {round_dia:g} mm in diameter."
            read.complain((*here, given[0]), what, "Make them smaller than the round.")
        start, end = self._along(one.at, read.of(one.long) if one.long else None, land, here)
        wall, bore = self._inside(start, end)
        if level <= wall + TINY:
            less = f"{bore} is {2 * wall:g} mm in diameter" if bore else "it must be above 0 mm"
            what = f"The flats come to {level:g} mm from the axis; {less}."
            read.complain((*here, given[0]), what, "Leave a wall.")
        whole = 0 if math.isnan(count) else round(count)
        return Flats(one.name, whole, level, start, end, read.of(one.angle), across)

    def _along(self, at: str | None, long: float | None, land: Land, here: Place) -> tuple[float, float]:
        """Where on its land a feature lies: all along it, or ``long`` from one end."""
        if at is None and long is None:
            return land.start, land.end
        if at is None or long is None:
            lacks = "at" if at is None else "long"
            self.read.complain(
                here, f"It has {'long' if at is None else 'at'} but no {lacks}.", f"Add {lacks}."
            )
            return land.start, land.end
        if long > land.long + TINY:
            what = f"It is {long:g} mm long; {land.written.name} is {land.long:g} mm long."
            self.read.complain((*here, "long"), what, "Make it shorter.")
        return (land.start, land.start + long) if at == "a" else (land.end - long, land.end)

    def _wide(
        self, one: WrittenHeadSlot | WrittenCrossSlot | WrittenKeyway | WrittenBoreKeyway, here: Place
    ) -> Dim:
        return self.read.dim(self.read.of(one.wide), f"{self.part}.{one.name}", here, one.limits)

    def _narrower(self, wide: float, than: float, what: str, here: Place) -> None:
        if wide >= than - TINY:
            self.read.complain(
                (*here, "wide"), f"It is {wide:g} mm wide; {what} is {than:g} mm.", "Make it narrower."
            )

    def _at_face(self, face: str) -> tuple[str, float]:
        land = self.lands[0] if face == "A" else self.lands[-1]
        return land.written.name, max(land.a_dia, land.b_dia)

    def head_slots(self, written: WrittenTurned) -> tuple[HeadSlot, ...]:
        """Screwdriver slots."""
        found = []
        for n, one in enumerate(written.head_slots):
            here = (*self.place, "head_slots", n)
            wide, deep = self._wide(one, here), self.read.of(one.deep)
            self._narrower(wide.value, self._at_face(one.face)[1], self._at_face(one.face)[0], here)
            if deep >= self.length - TINY:
                what = f"The slot is {deep:g} mm deep; the part is {self.length:g} mm long."
                self.read.complain((*here, "deep"), what, "Make it shallower.")
            found.append(HeadSlot(one.name, one.face, wide, deep, self.read.of(one.angle)))
        return tuple(found)

    def _on_land(self, start: float, end: float, land: Land, here: Place, key: str) -> None:
        if start < land.start - TINY or end > land.end + TINY:
            what = (
                f"It lies from {start:g} to {end:g} mm; "
                f"{land.written.name} lies from {land.start:g} to {land.end:g} mm."
            )
            self.read.complain((*here, key), what, "Move it, or make it shorter.")

    def cross_slots(self, written: WrittenTurned) -> tuple[CrossSlot, ...]:
        """Slots with half-round ends through one or both walls."""
        found = []
        for n, one in enumerate(written.cross_slots):
            here = (*self.place, "cross_slots", n)
            land = self._land(one.on, here)
            if land is None:
                continue
            wide, start, long = self._wide(one, here), self.read.of(one.from_a), self.read.of(one.long)
            self._narrower(wide.value, land.least, one.on, here)
            self._on_land(start, start + long, land, here, "from_a")
            self._ends(wide.value, long, here)
            found.append(CrossSlot(one.name, start, start + long, wide, self.read.of(one.angle), one.walls))
        return tuple(found)

    def _ends(self, wide: float, long: float, here: Place) -> None:
        if long < wide - TINY:
            what = f"It is {long:g} mm long over its half-round ends; it is {wide:g} mm wide."
            self.read.complain((*here, "long"), what, "Make it longer than wide.")

    def keyways(self, written: WrittenTurned) -> tuple[Keyway, ...]:
        """Keyways in lands."""
        found = [self._keyway(one, (*self.place, "keyways", n)) for n, one in enumerate(written.keyways)]
        return tuple(one for one in found if one)

    def _keyway(self, one: WrittenKeyway, here: Place) -> Keyway | None:
        land = self._land(one.on, here)
        if land is None:
            return None
        read, wide = self.read, self._wide(one, here)
        start, long, deep, cutter = (read.of(f) for f in (one.from_a, one.long, one.deep, one.cutter))
        if (one.form == "sunk") == (one.cutter is not None):
            needs = (
                "has round ends and no disc cutter" if one.form == "sunk" else "needs the cutter's diameter"
            )
            read.complain(here, f"A {one.form} keyway {needs}.", "Add cutter, or take it out.")
        if (one.form == "woodruff") == (one.long is not None):
            needs = "is as long as its cutter makes it" if one.form == "woodruff" else "needs long"
            read.complain(here, f"A {one.form} keyway {needs}.", "Add long, or take it out.")
        self._narrower(wide.value, land.least, one.on, here)
        self._on_land(start, start + long, land, here, "from_a")
        if one.form == "sunk":
            self._ends(wide.value, long, here)
        wall, bore = self._inside(start, start + long)
        left = land.least / 2 - deep
        if left <= wall + TINY:
            less = f"{bore} inside it is {2 * wall:g} mm in diameter" if bore else "its axis would be reached"
            what = f"The keyway is {deep:g} mm deep in {land.least:g} mm; {less}."
            read.complain((*here, "deep"), what, "Make it shallower.")
        if one.form == "woodruff" and cutter and deep >= cutter / 2:
            what = f"The keyway is {deep:g} mm deep; its cutter of {cutter:g} mm goes in less than {cutter / 2:g} mm."
            read.complain((*here, "cutter"), what, "Take a larger cutter.")
        return Keyway(one.name, start, start + long, wide, deep, read.of(one.angle), one.form, cutter)

    def bore_keyways(self, written: WrittenTurned) -> tuple[BoreKeyway, ...]:
        """Keyways along bores."""
        found = []
        for n, one in enumerate(written.bore_keyways):
            here = (*self.place, "bore_keyways", n)
            bore = self._bore(one.on, here)
            if bore is None:
                continue
            wide, deep = self._wide(one, here), self.read.of(one.deep)
            self._narrower(wide.value, bore.dia.value, one.on, here)
            out = bore.dia.value + 2 * deep
            for land in self.lands if bore.through else ():
                if out >= land.least - TINY:
                    name = land.written.name
                    what = f"The keyway reaches to {out:g} mm in diameter; {name} outside it is {land.least:g} mm."
                    self.read.complain((*here, "deep"), what, "Leave a wall.")
                    break
            found.append(BoreKeyway(one.name, one.on, wide, deep, self.read.of(one.angle)))
        return tuple(found)

    def slits(self, written: WrittenTurned) -> tuple[Slit, ...]:
        """Saw cuts from a face."""
        found = []
        for n, one in enumerate(written.slits):
            here = (*self.place, "slits", n)
            found.append(self._slit(one, here))
        return tuple(found)

    def _slit(self, one: WrittenSlit, here: Place) -> Slit:
        wide, deep = self.read.of(one.wide), self.read.of(one.deep) if one.deep else None
        self._narrower(
            wide, min(land.least or math.inf for land in self.lands), "the part at its thinnest", here
        )
        if deep is not None and deep >= self.length - TINY:
            what = f"The slit is {deep:g} mm deep; the part is {self.length:g} mm long."
            self.read.complain((*here, "deep"), what, "Make it shallower, or leave deep out.")
        if deep is None and one.walls == 2:
            what = "A slit of the whole length through both walls cuts the part in two."
            self.read.complain((*here, "walls"), what, "Give deep, or write walls: 1.")
        if deep is None and self._inside(0.0, self.length)[0] == 0:
            what = "A slit of the whole length to the axis needs a bore to end in; there is none."
            self.read.complain((*here, "wide"), what, "Add the bore, or give deep.")
        return Slit(one.name, one.face, wide, deep, self.read.of(one.angle), one.walls)

    def engravings(self, written: WrittenTurned) -> tuple[Engraving, ...]:
        """Scale lines."""
        found = []
        for n, one in enumerate(written.engravings):
            here = (*self.place, "engravings", n)
            if one.on not in ("A", "B"):
                land = self._land(one.on, here)
                longest = max(self.read.of(one.short), self.read.of(one.long))
                if land is not None and longest > land.long + TINY:
                    what = f"The lines are {longest:g} mm long; {one.on} is {land.long:g} mm long."
                    self.read.complain((*here, "long"), what, "Make the lines shorter.")
            found.append(self._engraving(one, here))
        return tuple(found)

    def _engraving(self, one: WrittenEngraving, here: Place) -> Engraving:
        read = self.read
        divisions, every, over = (
            read.of(one.divisions, 1.0),
            read.of(one.long_every),
            read.of(one.over, 360.0),
        )
        if over <= 0 or over > 360:
            read.complain(
                (*here, "over"), f"The scale fills {over:g} deg; it must lie between 0 and 360 deg."
            )
        if every > divisions:
            what = f"Every {every:g}th line is to be long; there are {divisions:g} divisions."
            read.complain((*here, "long_every"), what, "Make it smaller.")
        counts = [0 if math.isnan(one) else round(one) for one in (divisions, every)]
        lines = (read.of(one.short), read.of(one.long))
        return Engraving(one.name, one.on, counts[0], *lines, counts[1], one.words, over)
