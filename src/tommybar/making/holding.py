"""Every way of holding a turned part in this shop, with what it reaches.

One table of options serves the search, the cards and the explanations. Each
option that is looked at and cannot serve is kept with its figure.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from tommybar.making.cards import Rejected
from tommybar.making.jobs import Job, in_card, largest, largest_outside, span_in_card
from tommybar.making.practice import rule
from tommybar.shapes.features import Cylinder, Face, TurnedShape
from tommybar.shop.model import Jaws, Shop

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
    spigot: float = 0.0  # diameter of an arbor; nothing inside it can be cut [mm]


def grip_needed(dia: float, sticks_out: float, heavy: bool) -> float:
    """Least length to grip for that diameter and stick-out [mm]."""
    if sticks_out <= rule("grip", "disc") * dia:
        return rule("grip", "least")
    return max(rule("grip", "least"), dia * rule("grip", "heavy" if heavy else "light"))


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


def _device(jaws: Jaws, dia: float) -> str:
    if jaws.device == "collets":
        return f"collet {_collet(jaws, dia)[1]:g}"
    if jaws.name.startswith(jaws.device):
        return jaws.name
    return f"{jaws.device}, {jaws.name}"


def _collet(jaws: Jaws, dia: float) -> tuple[float, float]:
    """(smallest, largest) of the collet that closes least on that diameter [mm]."""
    fitting = [(high, low) for low, high, _ in jaws.ranges if low - 1e-6 <= dia <= high + 1e-6]
    high, low = min(fitting)
    return low, high


def _overhang_cost(sticks: float, dia: float) -> float:
    """What a stick-out over three diameters costs: light cuts, more passes."""
    over = sticks / dia - rule("grip", "overhang")
    return 15.0 + 20.0 * over if over > 1e-6 else 0.0


DEVICE_COST = {"collets": 0.0, "three-jaw": 2.0, "soft jaws": 8.0, "four-jaw": 12.0}
MARK_COST = 8.0
STUB_COST = {"": 0.0, "part": 1.0, "saw": 6.0}


def _stub_fronts(shape: TurnedShape, free: Face, shop: Shop, ending: Ending) -> float:
    blade = min((t.width for t in shop.tools if t.kind == "parting"), default=0.0)
    cut = (
        blade + rule("blank", "part_rest") if ending == "part" else shop.saw_kerf + rule("blank", "saw_rest")
    )
    return -(shape.length.value + cut + rule("grip", "clear_part"))


def _cut_fronts(shape: TurnedShape, jobs: tuple[Job, ...], free: Face) -> list[float]:
    """Jaw fronts that expose the outside up to the end of each feature, for long blanks."""
    length = shape.length.value
    ends = [
        span_in_card(j.start, j.end, length, free)[1]
        for j in jobs
        if j.kind in ("outside", "groove") and not j.as_supplied
    ]
    ends += [
        span_in_card(j.start, j.end, length, free)[0] - 2.0
        for j in jobs
        if j.kind == "edge" and j.side == free
    ]
    return sorted(
        {round(end - rule("grip", "clear"), 3) for end in ends if end > -length + 1e-6}, reverse=True
    )


def blank_options(
    shape: TurnedShape, jobs: tuple[Job, ...], dia: float, faces: float, shop: Shop
) -> tuple[list[Option], list[Rejected]]:
    """Ways of gripping the blank itself: slug, long bar, or bar with a stub.

    ``faces`` is the metal for facing one end [mm].
    """
    options: list[Option] = []
    rejected: list[Rejected] = []
    length = shape.length.value
    blade = max((t.reach for t in shop.tools if t.kind == "parting"), default=0.0)
    for free in ("A", "B"):
        for jaws in shop.jaws:
            if jaws.grips != "outside":
                continue
            depth = gripping(jaws, dia)
            if depth <= 0:
                rejected.append(
                    Rejected(
                        f"{jaws.device}, {jaws.name} on the blank",
                        f"{dia:g} mm is outside {ranges_in_words(jaws)}",
                    )
                )
                continue
            fronts: list[tuple[float, Ending, float]] = []
            slug_grip = min(depth, length / 2)
            fronts.append((-length - faces + slug_grip, "", slug_grip))
            if dia <= shop.lathe.spindle_bore:
                fronts += [
                    (front, "", depth)
                    for front in _cut_fronts(shape, jobs, free)
                    if -front + depth <= length + faces
                ]
            for ending in ("part", "saw"):
                if ending == "part" and blade < _parting_depth(shape, free, dia):
                    rejected.append(
                        Rejected(
                            "parting off",
                            f"the blade reaches {blade:g} mm, the cut is {_parting_depth(shape, free, dia):g} mm deep",
                        )
                    )
                    continue
                fronts.append((_stub_fronts(shape, free, shop, ending), ending, depth))
            for front, ending, grip in fronts:
                sticks = faces - front
                option = _checked(jaws, dia, grip, free, front, ending, sticks, rejected)
                if option is not None:
                    options.append(option)
    return options, rejected


def _parting_depth(shape: TurnedShape, free: Face, dia: float) -> float:
    far = "B" if free == "A" else "A"
    inside = max((b.dia.value for b in shape.bores if b.through or b.face == far), default=0.0)
    return round((dia - inside) / 2 + 1.0, 2)


def _checked(
    jaws: Jaws,
    dia: float,
    grip: float,
    free: Face,
    front: float,
    ending: Ending,
    sticks: float,
    rejected: list[Rejected],
) -> Option | None:
    heavy = ending == "part"
    needed = grip_needed(dia, sticks, heavy)
    words = f"{jaws.device}, {jaws.name} on the blank, face {free} free"
    if grip + 1e-6 < needed:
        rejected.append(Rejected(words, f"grip {grip:.1f} mm long, {needed:.1f} mm needed"))
        return None
    if sticks > rule("grip", "overhang_light") * dia + 1e-6:
        rejected.append(
            Rejected(
                words,
                f"sticks out {sticks:.1f} mm, more than {rule('grip', 'overhang_light'):g} x {dia:g} mm",
            )
        )
        return None
    grip = min(grip, max(needed, 2 * dia)) if ending else grip
    cost = DEVICE_COST.get(jaws.device, 10.0) + STUB_COST[ending] + _overhang_cost(sticks, dia)
    return Option(jaws, _device(jaws, dia), "blank", dia, grip, free, front, ending, jaws.runout, cost)


def surface_options(
    shape: TurnedShape, made: frozenset[str], shop: Shop, jobs: tuple[Job, ...]
) -> tuple[list[Option], list[Rejected]]:
    """Ways of gripping what has been finished already, with the other face free."""
    options: list[Option] = []
    rejected: list[Rejected] = []
    length = shape.length.value
    supplied = {j.feature for j in jobs if j.as_supplied}
    for free in ("A", "B"):
        for feature in shape.outside:
            if feature.name not in made or not isinstance(feature, Cylinder):
                continue
            near, far = span_in_card(feature.start, feature.end, length, free)
            long = near - far
            for jaws in shop.jaws:
                if jaws.grips != "outside":
                    continue
                option = _on_cylinder(
                    shape, feature, jaws, free, near, far, long, feature.name in supplied, rejected
                )
                options.extend(option)
            options.extend(_sleeve(shape, feature, shop, free, near, far, long))
        options.extend(_arbor(shape, made, shop, free, rejected))
    return options, rejected


def _deepest(shape: TurnedShape, free: Face, feature: Cylinder) -> bool:
    """Whether nothing larger stands between the feature and the chuck."""
    length = shape.length.value
    _, far = span_in_card(feature.start, feature.end, length, free)
    for other in shape.outside:
        near, _ = span_in_card(other.start, other.end, length, free)
        if other.name != feature.name and near <= far + 1e-6 and largest(other) > feature.dia.value + 0.02:
            return False
    return True


def _on_cylinder(
    shape: TurnedShape,
    feature: Cylinder,
    jaws: Jaws,
    free: Face,
    near: float,
    far: float,
    long: float,
    supplied: bool,
    rejected: list[Rejected],
) -> list[Option]:
    dia = feature.dia.target
    words = f"{jaws.device}, {jaws.name} on {feature.name}, face {free} free"
    depth = gripping(jaws, dia)
    if depth <= 0 or (jaws.device == "collets" and not _collet_holds(jaws, dia)):
        rejected.append(Rejected(words, f"{dia:.2f} mm is outside {ranges_in_words(jaws)}"))
        return []
    if feature.thread or feature.knurl:
        rejected.append(
            Rejected(words, "bare jaws would spoil the " + ("thread" if feature.thread else "knurl"))
        )
        return []
    if not _deepest(shape, free, feature):
        rejected.append(Rejected(words, "a larger diameter stands between it and the chuck"))
        return []
    edge = feature.edge_end if free == "A" else feature.edge_start
    usable = long - edge
    beyond = far + shape.length.value  # what stands behind the surface, inside the jaws [mm]
    front_step = 2.0 if long > 6 else 1.0
    grip = min(
        depth - (beyond if jaws.device != "collets" else 0.0),
        usable - (front_step if long > 6 else long * 0.3),
    )
    front = far + grip
    if supplied:
        front = near - (5.0 if (feature.edge_start if free == "A" else feature.edge_end) > 0 else 2.0)
        grip = min(depth, usable - (near - front))
    sticks = -front
    needed = grip_needed(dia, sticks, False)
    if grip + 1e-6 < needed:
        rejected.append(Rejected(words, f"grip {max(grip, 0):.1f} mm long, {needed:.1f} mm needed"))
        return []
    if sticks > rule("grip", "overhang_light") * dia:
        rejected.append(
            Rejected(
                words,
                f"sticks out {sticks:.1f} mm, more than {rule('grip', 'overhang_light'):g} x {dia:.1f} mm",
            )
        )
        return []
    hard = jaws.device in ("three-jaw", "four-jaw") and not supplied
    cost = DEVICE_COST.get(jaws.device, 10.0) + (MARK_COST if hard else 0.0) + _overhang_cost(sticks, dia)
    if jaws.device == "collets":
        low, high = _collet(jaws, dia)
        cost += 6.0 * (high - dia) / max(high - low, 0.01) + (
            MARK_COST if feature.dia.toleranced and not supplied else 0.0
        )
    return [
        Option(
            jaws,
            _device(jaws, dia),
            feature.name,
            dia,
            grip,
            free,
            front,
            "",
            jaws.runout,
            cost,
            protects="thin copper or aluminium strips under the jaws" if hard else "",
        )
    ]


def _collet_holds(jaws: Jaws, dia: float) -> bool:
    return any(low - 1e-6 <= dia <= high + 1e-6 for low, high, _ in jaws.ranges)


def _sleeve(
    shape: TurnedShape, feature: Cylinder, shop: Shop, free: Face, near: float, far: float, long: float
) -> list[Option]:
    """A split sleeve bored in place, or tapped for a screw, with the shoulder seated on it."""
    if "split sleeve" not in shop.can or not _deepest(shape, free, feature):
        return []
    dia = feature.dia.target
    outside = dia + 8.0
    holder = next(
        (j for j in shop.jaws if j.device in ("three-jaw", "collets") and gripping(j, outside) >= 8.0), None
    )
    if holder is None or long < 4.0:
        return []
    if feature.thread and feature.thread not in shop.taps:
        return []
    if feature.knurl is not None:
        return []
    words = f"split sleeve tapped {feature.thread}" if feature.thread else f"split sleeve bored {dia:.2f}"
    return [
        Option(
            holder,
            words,
            feature.name,
            dia,
            long - 0.5,
            free,
            near,
            "",
            0.05 if feature.thread else 0.04,
            10.0,
            note="bore the sleeve in place and mark it at jaw 1, so that it goes back as it was",
            protects="the sleeve",
        )
    ]


def _arbor(
    shape: TurnedShape, made: frozenset[str], shop: Shop, free: Face, rejected: list[Rejected]
) -> list[Option]:
    """A stub arbor turned in place with a draw screw, for a finished through bore."""
    options = []
    for bore in shape.bores:
        if not bore.through or bore.name not in made or bore.after or bore.thread:
            continue
        words = f"stub arbor in {bore.name}, face {free} free"
        if "arbor" not in shop.can:
            rejected.append(Rejected(words, "the shop file does not say that arbors are made"))
            continue
        leverage = largest_outside(shape) / bore.dia.value
        if bore.dia.value < 5.0 or leverage > 5.0:
            rejected.append(
                Rejected(
                    words,
                    f"the part is {leverage:.1f} x as large as its arbor of {bore.dia.value:g} mm; 5 x at most",
                )
            )
            continue
        if in_card(0.0, shape.length.value, free) < -6 * bore.dia.value:
            rejected.append(Rejected(words, "too long for the arbor"))
            continue
        options.append(
            Option(
                None,
                f"stub arbor {bore.dia.value:g}, draw screw",
                bore.name,
                bore.dia.target,
                shape.length.value,
                free,
                -shape.length.value,
                "",
                0.012,
                14.0,
                note="turn the arbor in place and leave it in the chuck until the part is done",
                spigot=bore.dia.value + 6.0,
            )
        )
    return options
