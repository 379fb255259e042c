"""On which side of the section through the axis each hole, slot and keyway is cut, so that none is moved across."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

from tommybar.pack.sheet import Line, Mark, Text
from tommybar.shapes.features import CrossHole, CrossSlot, Keyway, TurnedShape

Side = Literal["above", "below", "both", "off"]  # "off": not in the plane, seen in the view along the axis
LETTER = 4.25  # size of the letter of a section [mm]
# how far the middle of the letter stands out and aside of the outline and the thick end [mm]
CHOICES = ((3.4, 3.4), (3.4, -3.4), (8.0, 0.0), (10.0, 4.5), (10.0, -4.5), (14.0, 0.0))
SAME = 0.05  # directions nearer than this are one [deg]


@dataclass(frozen=True)
class _Across:
    """What stands at an angle: the stretch of the axis that it takes, its angle, through how many walls."""

    name: str
    start: float
    end: float
    angle: float
    walls: int


def _across(shape: TurnedShape) -> list[_Across]:
    made: list[_Across] = []
    for one in (*shape.cross_holes, *shape.cross_slots, *shape.keyways):
        if isinstance(one, CrossHole):
            if one.offset:
                continue
            half = max(one.dia.value, one.sink_dia) / 2
            made.append(_Across(one.name, one.z - half, one.z + half, one.angle, one.walls))
        elif isinstance(one, CrossSlot):
            made.append(_Across(one.name, one.start, one.end, one.angle, one.walls))
        else:
            assert isinstance(one, Keyway)
            made.append(_Across(one.name, one.start, one.end, one.angle, 1))
    return made


def plane_angle(shape: TurnedShape) -> float | None:
    """Angle of what stands upwards in the section: the first hole or slot of one wall, else the first [deg]."""
    found = _across(shape)
    sided = [one for one in found if one.walls == 1]
    return (sided or found)[0].angle if found else None


@lru_cache(maxsize=64)
def sides(shape: TurnedShape) -> dict[str, Side]:
    """Where the section shows each cross hole, slot and keyway, by its name.

    The section runs through the first one of a single wall, which stands
    above. What is in that plane is cut on the side on which it is. What
    stands at another angle is turned into the plane by the shorter way where
    nothing else takes the same stretch of the axis, so that nothing is
    confused (ISO 128-3, from memory: features may be revolved into the
    plane); else it is left to the view along the axis.
    """
    plane = plane_angle(shape)
    found = _across(shape)
    made: dict[str, Side] = {}
    for one in found:
        assert plane is not None
        away = abs((one.angle - plane + 180.0) % 360.0 - 180.0)
        in_plane = min(away, 180.0 - away) < SAME
        alone = not any(
            other.start < one.end and one.start < other.end for other in found if other is not one
        )
        if not in_plane and not alone:
            made[one.name] = "off"
        elif one.walls == 2:
            made[one.name] = "both"
        else:
            made[one.name] = "above" if away <= 90.0 + SAME else "below"
    return made


def leans(shape: TurnedShape) -> bool:
    """Whether the section stands at another angle than upright as seen from face A, so that it is marked there."""
    plane = plane_angle(shape)
    return plane is not None and abs((plane - 90.0 + 180.0) % 360.0 - 180.0) > SAME


def plane_marks(shape: TurnedShape, outer: float, letter: str, choice: int = 0) -> list[Mark]:
    """The section through the axis in the view along it (ISO 128-3): thick ends beyond ``outer`` [mm], a letter.

    Both arrows that say from where it is looked at are left out: the side on
    which something stands is that of its end. The letter stands beside the
    thick end, on its other side, or beyond it, as ``choice`` says.
    """
    plane = plane_angle(shape)
    assert plane is not None
    marks: list[Mark] = []
    out, aside = CHOICES[choice]
    for angle in (plane, plane + 180.0):
        c, s = math.cos(math.radians(angle)), math.sin(math.radians(angle))
        near, far = ((c * r, -s * r) for r in (outer + 1.2, outer + 4.2))
        marks.append(Line((near, far), "cut"))
        x, y = c * (outer + out), -s * (outer + out)
        up = aside if c >= 0 else -aside  # the letter stands on the upper side of the thick end first
        x, y = x - up * s, y - up * c
        marks.append(Text((x, y + LETTER * 0.33), letter, LETTER, True, "middle"))
    return marks
