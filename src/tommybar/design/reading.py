"""Filling in a part's figures at one set of values, while all that is wrong is gathered."""

from __future__ import annotations

import math
import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from tommybar.design.formula import Formula
from tommybar.design.quantities import MM_PER_INCH
from tommybar.design.yaml_file import Place, YamlFile
from tommybar.facts.fits.iso286 import limits_of_size
from tommybar.facts.fits.limits import Limits
from tommybar.facts.threads import Thread, thread
from tommybar.refusals import Complaint, Refusal, nearest
from tommybar.shapes.features import Dim
from tommybar.sizes.limits_text import limits_from_text

_ZONE = re.compile(r"[A-Za-z]{1,2}\s*[0-9]{1,2}")
TINY = 1e-6  # figures nearer to each other than this are the same [mm]


@dataclass
class Reading:
    """One filling-in: the values, the fits' zones by part.feature, and the complaints so far.

    A figure that cannot be worked out is nan and has its complaint already;
    comparisons with nan are false, so that one fault is not told twice.
    """

    file: YamlFile
    unit: str
    values: Mapping[str, float | str]
    zones: Mapping[str, str] = field(default_factory=dict)
    wrong: list[Complaint] = field(default_factory=list)

    def complain(self, place: Place, what: str, remedy: str = "") -> None:
        """Add a complaint about the entry at ``place``."""
        self.wrong.append(self.file.complaint(place, what, remedy))

    def of(self, formula: Formula | None, otherwise: float = 0.0) -> float:
        """The value of a formula [house unit]; ``otherwise`` when the key was left out."""
        if formula is None:
            return otherwise
        try:
            return formula.at(self.values)
        except Refusal as refusal:
            self.wrong += refusal.complaints
            return math.nan

    def thread(self, text: str | None, place: Place) -> Thread | None:
        """The thread that ``text`` designates, itself or as the name of a size."""
        if text is None:
            return None
        named = self.values.get(text, text)
        if not isinstance(named, str):
            self.complain(
                place, f'"{text}" is a figure; a thread is wanted here.', "Name a size that follows thread."
            )
            return None
        try:
            return thread(named)
        except Refusal as refusal:
            self.wrong += self.file.complaints(place, refusal)
            return None

    def diameter(self, dia: Formula | None, text: str | None, place: Place) -> tuple[float, str]:
        """Diameter [mm] and thread designation of a feature that gives the one or the other."""
        if text is None:
            return self.of(dia, math.nan), ""
        found = self.thread(text, (*place, "thread"))
        return (found.major, found.designation) if found else (math.nan, text)

    def dim(self, value: float, name: str, place: Place, limits: str = "") -> Dim:
        """The figure with its limits: its own, or those of the fit it belongs to."""
        zone = self.zones.get(name, "")
        if zone and limits and zone.replace(" ", "") != limits.replace(" ", ""):
            what = f'The limits are "{limits}"; the fit of {name} says {zone}.'
            self.complain((*place, "limits"), what, "Keep one of the two.")
        text = zone or limits
        if not text or math.isnan(value):
            return Dim(value, name, text)
        try:
            found = self._limits(text, value)
        except Refusal as refusal:
            self.wrong += self.file.complaints((*place, "limits") if limits else place, refusal)
            return Dim(value, name, text)
        return Dim(value, name, text, round(found.smallest, 6), round(found.largest, 6))

    def _limits(self, text: str, value: float) -> Limits:
        if _ZONE.fullmatch(text):
            return limits_of_size(value, text)
        if self.unit == "in":
            text = re.sub(r"[0-9]*\.?[0-9]+", lambda found: f"{float(found[0]) * MM_PER_INCH:.6f}", text)
        return limits_from_text(text, value)

    def unique(self, named: Iterable[tuple[str, Place]]) -> None:
        """Complain about names that are used twice in one part."""
        seen: set[str] = set()
        for name, place in named:
            if name in seen:
                self.complain((*place, "name"), f'Two features are named "{name}".', "Give one another name.")
            seen.add(name)

    def one_of(self, name: str, known: Iterable[str], place: Place, what: str, of: str = "") -> bool:
        """Whether ``name`` is known (among what ``of`` has); when not, the nearest known one is offered."""
        names = list(known)
        if name in names:
            return True
        offer = nearest(name, names) or (f"There are {', '.join(names)}." if names else "There are none.")
        lack = f'{of} has no {what} "{name}".' if of else f'There is no {what} "{name}".'
        self.complain(place, lack, offer)
        return False
