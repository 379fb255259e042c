"""Relations between parts resolved: fits, loops and screws, every name looked up."""

from __future__ import annotations

import re
from collections.abc import Iterable

from tommybar.design.model import FitRelation, LoopRelation, LoopTerm, Part, Purpose, ScrewRelation
from tommybar.design.reading import TINY, Reading
from tommybar.design.shapes_of_parts import features_of, lengths_of
from tommybar.design.tokens import wrong
from tommybar.design.written_file import DesignFile, WrittenFit, WrittenLoop, WrittenScrew
from tommybar.design.yaml_file import Place
from tommybar.facts.fits.zones import is_hole
from tommybar.refusals import Refusal
from tommybar.shapes.features import Bore, CircleHoles, CrossHole, Cylinder, PlateHole
from tommybar.sizes.fits import fit_of

_TERM = re.compile(
    r"\s*(?P<sign>[+-]?)\s*(?:(?P<times>[0-9]+(?:\.[0-9]+)?)\s*\*\s*)?(?P<name>[A-Za-z_][\w.]*)\s*"
)
HOLES = (Bore, CircleHoles, CrossHole, PlateHole)


def zones_of_fits(read: Reading, written: DesignFile) -> dict[str, str]:
    """The zone that each part.feature has from the fits; two fits that disagree are a complaint."""
    zones: dict[str, str] = {}
    for index, relation in enumerate(written.relations):
        if not isinstance(relation, WrittenFit):
            continue
        here: Place = ("relations", index, "limits")
        halves = re.split(r"\s*/\s*", relation.limits.strip())
        if len(halves) != 2 or not halves[0][:1].isupper() or not halves[1][:1].islower():
            what = f'The fit is "{relation.limits}"; it must be a hole zone and a shaft zone.'
            read.complain(here, what, "Write H7/g6.")
            continue
        try:
            if not is_hole(halves[0]) or is_hole(halves[1]):
                raise wrong(1, "The zone of the hole comes first.", "Write H7/g6.")
        except Refusal as refusal:
            read.wrong += read.file.complaints(here, refusal)
            continue
        for name, zone in [(relation.fit, halves[0]), *((one, halves[1]) for one in relation.on)]:
            if zones.setdefault(name, zone) != zone:
                what = f"The fit gives {name} the zone {zone}; another fit gives it {zones[name]}."
                read.complain(here, what, "Give both the same, or make them two features.")
    return zones


class Relations:
    """Looks names up in the parts and resolves what is written between them."""

    def __init__(self, read: Reading, parts: Iterable[Part]) -> None:
        self.read = read
        self.parts = {part.name: part for part in parts}
        self.features = {name: features_of(part.shape) for name, part in self.parts.items()}
        self.lengths: dict[str, float] = {}
        for part in self.parts.values():
            self.lengths |= lengths_of(part)

    def feature(self, name: str, place: Place, kinds: tuple[type, ...], what: str) -> object | None:
        """The feature that part.feature names, or a complaint and None."""
        part, _, feature = name.partition(".")
        if not self.read.one_of(part, self.parts, place, "part"):
            return None
        if not self.read.one_of(feature, self.features[part], place, "feature", part):
            return None
        found = self.features[part][feature]
        if isinstance(found, kinds):
            return found
        self.read.complain(place, f"{name} is no {what}.", f"Name a {what}.")
        return None

    def several(self, name: str, place: Place) -> list[str]:
        """The names of all holes that were written together as part.feature."""
        part, _, feature = name.partition(".")
        known = self.features.get(part, {})
        many = [f"{part}.{one}" for one in known if re.fullmatch(rf"{re.escape(feature)}_[0-9]+", one)]
        return [name] if feature in known or not many else many

    def fits(self, relation: WrittenFit, place: Place) -> list[FitRelation]:
        """One hole with each of its shafts."""
        hole = self.feature(relation.fit, (*place, "fit"), HOLES, "hole")
        found = []
        for name in relation.on:
            shaft = self.feature(name, (*place, "on"), (Cylinder,), "outside cylinder")
            if hole is None or shaft is None:
                continue
            bore, body = hole.dia.value, shaft.dia.value  # type: ignore[attr-defined]
            if abs(bore - body) > TINY:
                what = f"{relation.fit} is {bore:g} mm and {name} is {body:g} mm; a fit has one nominal size."
                self.read.complain((*place, "on"), what, "Give both the same figure.")
                continue
            try:
                fit_of(bore, relation.limits)
            except Refusal as refusal:
                self.read.wrong += self.read.file.complaints((*place, "limits"), refusal)
            found.append(FitRelation(relation.fit, name, relation.limits.replace(" ", ""), relation.joint))
        return found

    def loop(self, relation: WrittenLoop, place: Place) -> LoopRelation | None:
        """A chain of lengths with their signs."""
        terms = []
        for index, text in enumerate(relation.loop):
            here = (*place, "loop", index)
            found = _TERM.fullmatch(text)
            if not found:
                self.read.complain(here, f'"{text}" is no term of a loop.', "Write -2 * bush.flange.long.")
            elif self.read.one_of(found["name"], self.lengths, here, "length"):
                factor = float(found["times"] or 1) * (-1 if found["sign"] == "-" else 1)
                terms.append(LoopTerm(found["name"], factor, self.lengths[found["name"]]))
        least, most = (self.read.of(one) for one in relation.float_)
        if least > most:
            what = f"The float goes from {least:g} to {most:g} mm."
            self.read.complain((*place, "float"), what, "Give the least first.")
        within = {text.name.split(".")[0] for text in terms}
        if not self.read.one_of(relation.made_last, within, (*place, "made_last"), "part of the loop"):
            return None
        name = relation.name or f"loop at {relation.made_last}"
        return LoopRelation(name, tuple(terms), least, most, relation.made_last)

    def screws(self, relation: WrittenScrew, place: Place) -> list[ScrewRelation]:
        """Each tapped hole with the clearance hole that stands before it, in order."""
        screw = self.read.thread(relation.screw, (*place, "screw"))
        through = [one for name in relation.through for one in self.several(name, (*place, "through"))]
        into = [one for name in relation.into for one in self.several(name, (*place, "into"))]
        for name in through:
            hole = self.feature(name, (*place, "through"), HOLES, "hole")
            if hole and screw and hole.dia.value <= screw.major:  # type: ignore[attr-defined]
                dia = hole.dia.value  # type: ignore[attr-defined]
                what = f"{name} is {dia:g} mm; the screw {screw.designation} is {screw.major:g} mm."
                self.read.complain((*place, "through"), what, "Make it a clearance hole.")
        for name in into:
            hole = self.feature(name, (*place, "into"), HOLES, "hole")
            if hole and screw and hole.thread != screw.designation:  # type: ignore[attr-defined]
                had = hole.thread or "not tapped"  # type: ignore[attr-defined]
                self.read.complain((*place, "into"), f"{name} is {had}; the screw is {screw.designation}.")
        if not screw or not through:
            return []
        return [
            ScrewRelation((through[index % len(through)],), name, screw.designation)
            for index, name in enumerate(into)
        ]

    def purposes(self, written: DesignFile) -> tuple[Purpose, ...]:
        """What the thing must do."""
        found = []
        for index, one in enumerate(written.purposes):
            for name in one.turns:
                self.read.one_of(name, self.parts, ("purposes", index, "turns"), "part")
            found.append(Purpose(tuple(one.turns), self.read.of(one.at), one.balance, one.hand_driven))
        return tuple(found)


def resolve(
    read: Reading, written: DesignFile, parts: Iterable[Part]
) -> tuple[tuple[FitRelation, ...], tuple[LoopRelation, ...], tuple[ScrewRelation, ...], tuple[Purpose, ...]]:
    """Fits, loops, screws and purposes of a design; faults are gathered in ``read``."""
    look = Relations(read, parts)
    fits: list[FitRelation] = []
    loops: list[LoopRelation] = []
    screws: list[ScrewRelation] = []
    for index, relation in enumerate(written.relations):
        place: Place = ("relations", index)
        if isinstance(relation, WrittenFit):
            fits += look.fits(relation, place)
        elif isinstance(relation, WrittenLoop):
            loops += [one for one in [look.loop(relation, place)] if one]
        elif isinstance(relation, WrittenScrew):
            screws += look.screws(relation, place)
    return tuple(fits), tuple(loops), tuple(screws), look.purposes(written)
