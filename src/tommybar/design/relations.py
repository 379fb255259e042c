"""Relations between parts resolved: fits, loops and screws, every name looked up."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from typing import Any

from tommybar.design import joint_relations, motion_relations
from tommybar.design.joints import Duty
from tommybar.design.model import FitRelation, LoopRelation, LoopTerm, Part, Purpose, ScrewRelation
from tommybar.design.names_looked_up import HOLES, Names, diameter
from tommybar.design.reading import TINY, Reading
from tommybar.design.tokens import wrong
from tommybar.design.written_file import DUTIES, DesignFile
from tommybar.design.written_relations import (
    KEYS,
    WrittenFit,
    WrittenLoop,
    WrittenScrew,
)
from tommybar.design.yaml_file import Place
from tommybar.facts.fits.zones import is_hole
from tommybar.refusals import Refusal
from tommybar.shapes.features import Cylinder
from tommybar.sizes.fits import fit_of

_TERM = re.compile(
    r"\s*(?P<sign>[+-]?)\s*(?:(?P<times>[0-9]+(?:\.[0-9]+)?)\s*\*\s*)?(?P<name>[A-Za-z_][\w.]*)\s*"
)
PLAY_PAIRS = tuple(
    f"{hole}/{shaft}"
    for hole in ("H6", "H7", "H8", "H9", "H11")
    for shaft in ("h5", "h6", "h7", "h9", "g5", "g6", "f6", "f7", "f8", "e8", "e9", "d9", "c11")
)
"""Zone pairs with clearance that a wish in figures is fulfilled with."""
RESOLVERS: dict[str, tuple[str, Callable[[Names, Any, Place], object | None]]] = {
    "runout": ("runouts", motion_relations.runout),
    "square": ("squares", motion_relations.square),
    "clock": ("clockings", motion_relations.clocking),
    "thread": ("threads", joint_relations.thread_pair),
    "pattern": ("patterns", joint_relations.pattern),
    "press": ("presses", joint_relations.press),
    "bond": ("adhesives", joint_relations.bond),
    "solder": ("solders", joint_relations.solder_joint),
    "pin": ("pins", joint_relations.pinned),
    "contact": ("contacts", motion_relations.contact),
    "belt": ("belts", motion_relations.belt),
    "pivot": ("pivots", motion_relations.pivot),
    "sweep": ("sweeps", motion_relations.sweep),
    "alike": ("alike", motion_relations.alike),
    "seat": ("seats", motion_relations.seat),
    "stands": ("stands", motion_relations.stands),
    "flush": ("flush", motion_relations.flush),
}
"""Where the records of a relation go, and what resolves it, by its key."""
DUTY_WORDS: dict[str, str] = {
    "carries": "load",
    "runs_for": "run time",
    "stroke": "stroke",
    "force": "force",
    "pressure": "pressure",
    "sounds": "sound",
    "looks": "look",
}
PRESSURE_LIMIT = 0.5  # [bar] above which this program judges no vessel: local rules for pressure apply


def zones_of_fits(read: Reading, written: DesignFile) -> dict[str, str]:
    """The zone that each part.feature has from the fits; two fits that disagree are a complaint."""
    zones: dict[str, str] = {}
    for index, relation in enumerate(written.relations):
        if not isinstance(relation, WrittenFit) or relation.clearance is not None:
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


class Relations(Names):
    """Resolves what is written between parts."""

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
            pair, wished = relation.limits, None
            if relation.clearance is not None:
                wished = self.read.of(relation.clearance[0]), self.read.of(relation.clearance[1])
                pair = pair_for(bore, wished)
                if not pair:
                    what = (
                        f"No zone pair of {bore:g} mm leaves {wished[0]:g} to {wished[1]:g} mm of clearance."
                    )
                    self.read.complain(
                        (*place, "clearance"), what, "Allow more room between the two figures."
                    )
                    continue
            try:
                fit_of(bore, pair)
            except Refusal as refusal:
                self.read.wrong += self.read.file.complaints((*place, "limits"), refusal)
            engaged = self.read.of(relation.engaged) if relation.engaged is not None else None
            found.append(
                FitRelation(relation.fit, name, pair.replace(" ", ""), relation.joint, wished, engaged)
            )
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
        through = [one for name in relation.through for one in self.several(name)]
        into = [one for name in relation.into for one in self.several(name)]
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

    def purposes(self, written: DesignFile) -> tuple[tuple[Purpose, ...], tuple[Duty, ...]]:
        """What the thing must do: what turns, and the other duties."""
        found: list[Purpose] = []
        duties: list[Duty] = []
        for index, one in enumerate(written.purposes):
            place: Place = ("purposes", index)
            for name in one.turns:
                self.read.one_of(name, self.parts, (*place, "turns"), "part")
            if one.turns:
                found.append(Purpose(tuple(one.turns), self.read.of(one.at), one.balance, one.hand_driven))
                continue
            for name in one.on:
                if "." in name:
                    self.feature(name, (*place, "on"))
                else:
                    self.part(name, (*place, "on"))
            key = next(key for key in DUTIES if getattr(one, key))
            figure = None if key == "looks" else self.read.of(getattr(one, key))
            if key == "pressure" and figure is not None and figure > PRESSURE_LIMIT:
                what = (
                    f"The pressure is {figure:g} bar; above {PRESSURE_LIMIT:g} bar no vessel is judged here."
                )
                self.read.complain(
                    (*place, "pressure"), what, "Have it designed and tested under the rules for pressure."
                )
            most = self.read.of(one.most) if one.most is not None else None
            kind: Any = DUTY_WORDS[key]
            duties.append(Duty(kind, tuple(one.on), figure, most, one.looks))
        return tuple(found), tuple(duties)


def pair_for(nominal: float, wished: tuple[float, float]) -> str:
    """The zone pair with the widest limits whose clearance lies within what is wished [mm]; empty when none does.

    Examples
    --------
    A running fit of 8 mm with 13 to 43 um of clearance: H7/f7 gives 13 to 43.

    >>> pair_for(8.0, (0.013, 0.043))
    'H7/f7'
    """
    best, room = "", 0.0
    for pair in PLAY_PAIRS:
        try:
            fit = fit_of(nominal, pair)
        except Refusal:
            continue
        least, most = fit.min_clearance_um / 1000, fit.max_clearance_um / 1000
        if least >= wished[0] - TINY and most <= wished[1] + TINY and most - least > room + TINY:
            best, room = pair, most - least
    return best


def zones_of_clearances(
    read: Reading, written: DesignFile, parts: Iterable[Part], zones: dict[str, str]
) -> dict[str, str]:
    """The zones with those that wishes for a clearance come to, once the nominal sizes are known."""
    look, found = Names(read, parts), dict(zones)
    for relation in written.relations:
        if isinstance(relation, WrittenFit) and relation.clearance is not None:
            part, _, feature = relation.fit.partition(".")
            nominal = diameter(look.features.get(part, {}).get(feature))
            wished = read.of(relation.clearance[0]), read.of(relation.clearance[1])
            hole, _, shaft = (pair_for(nominal, wished) if nominal > 0 else "").partition("/")
            for name, zone in [(relation.fit, hole), *((one, shaft) for one in relation.on)]:
                if zone:
                    found.setdefault(name, zone)
    return found


def resolve(read: Reading, written: DesignFile, parts: Iterable[Part]) -> dict[str, tuple[Any, ...]]:
    """Every relation and purpose as its records, by the field of the sized design; faults go to ``read``."""
    look = Relations(read, parts)
    found: dict[str, list[Any]] = {"fits": [], "loops": [], "screws": [], "screw_joints": []}
    for index, relation in enumerate(written.relations):
        place: Place = ("relations", index)
        if isinstance(relation, WrittenFit):
            found["fits"] += look.fits(relation, place)
        elif isinstance(relation, WrittenLoop):
            found["loops"] += [one for one in [look.loop(relation, place)] if one]
        elif isinstance(relation, WrittenScrew):
            if relation.into:
                found["screws"] += look.screws(relation, place)
            found["screw_joints"] += joint_relations.screw_joints(look, relation, place)
        else:
            key = next(key for key, kind in KEYS.items() if isinstance(relation, kind))
            field, resolver = RESOLVERS[key]
            record = resolver(look, relation, place)
            found.setdefault(field, []).extend([record] if record is not None else [])
    purposes, duties = look.purposes(written)
    if written.foot:
        if "." in written.foot:
            look.face(written.foot, ("foot",))
        else:
            look.part(written.foot, ("foot",))
    return {field: tuple(records) for field, records in found.items()} | {
        "purposes": purposes,
        "duties": duties,
    }
