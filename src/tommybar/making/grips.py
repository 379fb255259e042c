"""Ways of gripping: what jaws hold, how long a grip must be, what a holding costs."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from tommybar.making.jobs import largest, span_in_card
from tommybar.making.lengths import Mm
from tommybar.making.practice import rule
from tommybar.shapes.features import Cylinder, Face, TurnedShape
from tommybar.shop.model import Jaws

Ending = Literal["", "part", "saw"]


@dataclass(frozen=True)
class Option:
    """One way of holding: jaws on a surface with one face free."""

    jaws: Jaws | None  # None: an arbor or sleeve made for the job
    device: str  # words for the card
    surface: str  # "blank" or the feature gripped
    dia: float  # in-process diameter gripped [mm]
    grip: float  # length gripped [mm]
    free: Face
    jaw_front: float  # card frame [mm], negative
    ending: Ending  # how the piece leaves the stub, when it starts as one
    runout: float  # TIR [mm]
    cost: float
    note: str = ""
    protects: str = ""  # what keeps a finished surface from harm
    spigot: float = 0.0  # diameter of an arbor's washer; nothing inside it can be cut [mm]
    seat: float = 0.0  # diameter of the shoulder of a screwed stub [mm]


def grip_needed(dia: float, sticks_out: float, heavy: bool) -> float:
    """Least length to grip for that diameter and stick-out [mm].

    A disc on a jaw step: its depth is enough while the stick-out is small
    beside diameter and grip. Longer work: half a diameter (a whole one for
    heavy cuts), or a third of the stick-out and 10 mm at least.
    """
    least = rule("grip", "least")
    if sticks_out <= rule("grip", "disc") * dia:
        return max(least, sticks_out / rule("grip", "leverage"))
    by_dia = max(least, dia * rule("grip", "heavy" if heavy else "light"))
    if heavy:
        return by_dia
    return min(by_dia, max(rule("grip", "long_least"), sticks_out / rule("grip", "long_leverage")))


def gripping(jaws: Jaws, dia: float) -> float:
    """How long a grip these jaws give at that diameter, 0 when they cannot hold it [mm]."""
    depths = [depth for low, high, depth in jaws.ranges if low - 1e-6 <= dia <= high + 1e-6]
    return max(depths, default=0.0)


def ranges_in_words(jaws: Jaws) -> str:
    """The diameters a jaw set holds, for a person: "3-36 mm"; runs that meet are joined."""
    joined: list[list[float]] = []
    for low, high, _ in sorted(jaws.ranges):
        if joined and low <= joined[-1][1] + 0.01:
            joined[-1][1] = max(joined[-1][1], high)
        else:
            joined.append([low, high])
    if len(joined) > 6:
        joined = [[joined[0][0], joined[-1][1]]]
    return ", ".join(f"{low:g}-{high:g}" for low, high in joined) + " mm"


def device_words(jaws: Jaws, dia: float) -> str:
    if jaws.device == "collets":
        return f"collet {Mm(closest_collet(jaws, dia)[1]):tool}"
    if jaws.name.startswith(jaws.device):
        return jaws.name
    return f"{jaws.device}, {jaws.name}"


def closest_collet(jaws: Jaws, dia: float) -> tuple[float, float]:
    """(smallest, largest) of the collet that closes least on that diameter [mm]."""
    fitting = [(high, low) for low, high, _ in jaws.ranges if low - 1e-6 <= dia <= high + 1e-6]
    high, low = min(fitting)
    return low, high


def overhang_cost(sticks: float, dia: float) -> float:
    """What a stick-out over three diameters costs: light cuts, more passes."""
    over = sticks / dia - rule("grip", "overhang")
    return 15.0 + 20.0 * over if over > 1e-6 else 0.0


DEVICE_COST = {"collets": 0.0, "three-jaw": 2.0, "soft jaws": 8.0, "four-jaw": 12.0}
MARK_COST = 8.0
STUB_COST = {"": 0.0, "part": 1.0, "saw": 6.0}


def nothing_larger_behind(shape: TurnedShape, free: Face, feature: Cylinder) -> bool:
    """Whether nothing larger stands between the feature and the chuck."""
    length = shape.length.value
    _, far = span_in_card(feature.start, feature.end, length, free)
    for other in shape.outside:
        near, _ = span_in_card(other.start, other.end, length, free)
        if other.name != feature.name and near <= far + 1e-6 and largest(other) > feature.dia.value + 0.02:
            return False
    return True


def jaw_force(option: Option) -> float:
    """Sum of the jaw forces of a hand-tightened holding [N]. Common practice, no source."""
    device = option.jaws.device if option.jaws is not None else "three-jaw"
    return rule("holding", device.replace("-", "_").replace(" ", "_"))
