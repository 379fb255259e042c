"""Ways of gripping: what jaws hold, how long a grip must be, what a holding costs."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from tommybar.making.jobs import largest, span_in_card
from tommybar.making.lengths import Mm
from tommybar.making.practice import rule
from tommybar.mechanics.stepped_bar import alike_diameter
from tommybar.shapes.features import Cylinder, Face, TurnedShape
from tommybar.shop.centre_equipment import Dog, Steady
from tommybar.shop.model import Jaws

Lengths = tuple[tuple[float, float, float], ...]  # length, diameter and bore of each piece [mm]
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
    centre: float = 0.0  # mouth of the centre hole by which the tailstock carries the free end [mm]
    dog: Dog | None = None  # between centres: what drives the work, or the mandrel that carries it
    mandrel: float = 0.0  # diameter of a mandrel between centres; 0: none [mm]
    plug: bool = False  # an expanding mandrel: nothing stands out of the bore, so that its face can be cut
    steady: Steady | None = None
    only: frozenset[str] = frozenset()  # kinds of job that are done in it; empty: whatever it reaches
    leaves: frozenset[str] = frozenset()  # lands that it does not make though it reaches them
    hangs_on: tuple[str, ...] = ()  # jobs whose holes its axis goes through, where it has no grip


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
    """Jaws as a card names them, a collet with its size; ``dia`` is what they hold [mm]."""
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


def standing_out(
    shape: TurnedShape,
    free: Face,
    front: float,
    made: frozenset[str] = frozenset(),
    hollow: float = 0.0,
) -> tuple[tuple[float, float, float], ...]:
    """Length, diameter and bore of what stands out of the jaws once it is cut, from the jaws outwards [mm].

    What is cut in this grip is cut from the free end, so a land stays at least
    as thick as the thickest one before it; what is ``made`` has its own size.
    ``hollow`` is the bore of a tube.
    """
    length = shape.length.value
    lands = sorted(
        ((*span_in_card(f.start, f.end, length, free), f) for f in shape.outside), key=lambda land: -land[0]
    )
    found, thickest = [], 0.0
    for near, far, feature in lands:
        thickest = max(thickest, largest(feature))
        low = max(far, front)
        if near - low > 1e-6:
            found.append((near - low, largest(feature) if feature.name in made else thickest, hollow))
    if front < -length - 1e-6 and found:
        found.append((-length - front, thickest, hollow))  # the stub behind the part
    return tuple(reversed(found))


def slenderness(out: tuple[tuple[float, float, float], ...]) -> float:
    """How many of its diameters the work stands out, as the plain bar that gives as much [-]."""
    if not out:
        return 0.0
    return sum(long for long, _, _ in out) / alike_diameter(out)


def too_slender(out: tuple[tuple[float, float, float], ...]) -> str:
    """Why work that stands out so far is not cut without a centre; empty when it may be."""
    times, most = slenderness(out), rule("grip", "overhang_most")
    if times <= most + 1e-6:
        return ""
    long = sum(one for one, _, _ in out)
    return (
        f"{long:.1f} mm stand out, thinned to what gives like {alike_diameter(out):.1f} mm: "
        f"{times:.1f} diameters, {most:g} at most without a centre"
    )


def overhang_cost(times: float) -> float:
    """What a stick-out of so many diameters costs the search [-]: nothing up to three, then light cuts, more passes."""
    over = times - rule("grip", "overhang")
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
