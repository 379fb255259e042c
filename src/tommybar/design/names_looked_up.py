"""Names in relations looked up: parts, features, their diameters and lengths."""

from __future__ import annotations

import math
import re
from collections.abc import Iterable

from tommybar.design.model import Part
from tommybar.design.reading import Reading
from tommybar.design.shapes_of_parts import features_of, lengths_of
from tommybar.design.yaml_file import Place
from tommybar.shapes.faces import faces_of
from tommybar.shapes.features import (
    Bore,
    CircleHoles,
    Cone,
    CrossHole,
    Cup,
    Dim,
    PlateHole,
)
from tommybar.shapes.screwed_holes import hole_for_screw

HOLES = (Bore, CircleHoles, CrossHole, PlateHole)


class Names:
    """Looks names up in the parts; what is not there is complained of with the nearest name."""

    def __init__(self, read: Reading, parts: Iterable[Part]) -> None:
        self.read = read
        self.parts = {part.name: part for part in parts}
        self.features = {name: features_of(part.shape) for name, part in self.parts.items()}
        self.lengths: dict[str, float] = {}
        for part in self.parts.values():
            self.lengths |= lengths_of(part)

    def feature(self, name: str, place: Place, kinds: tuple[type, ...] = (), what: str = "") -> object | None:
        """The feature that part.feature names, or a complaint and None."""
        part, _, feature = name.partition(".")
        if not self.read.one_of(part, self.parts, place, "part"):
            return None
        if not self.read.one_of(feature, self.features[part], place, "feature", part):
            return None
        found = self.features[part][feature]
        if not kinds or isinstance(found, kinds):
            return found
        article = "an" if what[0] in "aeiou" else "a"
        self.read.complain(place, f"{name} is no {what}.", f"Name {article} {what}.")
        return None

    def face(self, name: str, place: Place) -> bool:
        """Whether part.face names a flat face; a complaint when not."""
        part, _, face = name.partition(".")
        if not self.read.one_of(part, self.parts, place, "part"):
            return False
        known = faces_of(self.parts[part].standing)
        return not known or self.read.one_of(face, known, place, "face", part)

    def part(self, name: str, place: Place) -> Part | None:
        """The part of that name, or a complaint and None."""
        return self.parts[name] if self.read.one_of(name, self.parts, place, "part") else None

    def several(self, name: str) -> list[str]:
        """The names of all holes that were written together as part.feature."""
        part, _, feature = name.partition(".")
        known = self.features.get(part, {})
        many = [f"{part}.{one}" for one in known if re.fullmatch(rf"{re.escape(feature)}_[0-9]+", one)]
        return [name] if feature in known or not many else many

    def figure(self, name: str, place: Place) -> float:
        """A length or the diameter of a feature by its name [mm]; nan after a complaint."""
        if name in self.lengths:
            return self.lengths[name]
        part, _, feature = name.partition(".")
        known = self.features.get(part, {})
        if feature in known and not math.isnan(size := diameter(known[feature])):
            return size
        names = [*self.lengths, *(f"{part}.{one}" for part, all_ in self.features.items() for one in all_)]
        self.read.one_of(name, [one for one in names if one != name], place, "length or diameter")
        return math.nan

    def grip(self, name: str) -> float:
        """How deep a clearance hole is from its head's seat to its far end [mm]; nan where that is not known."""
        part, _, feature = name.partition(".")
        hole = hole_for_screw(self.parts[part].shape, feature)
        return math.nan if hole is None else hole.metal


def diameter(feature: object) -> float:
    """The diameter that a feature goes by [mm]; nan when it has none."""
    if isinstance(feature, Dim):
        return feature.value
    dia = getattr(feature, "dia", None)
    return dia.value if isinstance(dia, Dim) else math.nan


def included_angle(feature: object) -> float:
    """The included angle of a point, a cone or a cup [deg]; nan when it has none."""
    if isinstance(feature, Cup):
        return feature.included
    if isinstance(feature, Cone):
        rise = abs(feature.start_dia - feature.end_dia) / 2
        return 2 * math.degrees(math.atan2(rise, abs(feature.end - feature.start)))
    return math.nan
