"""How a round part lies at the mill: in a vee block in the vice, or between the jaws on a parallel."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from tommybar.making.jobs import largest
from tommybar.making.lengths import Mm
from tommybar.making.milling.rules import mill_rule
from tommybar.shapes.features import Cylinder, TurnedShape
from tommybar.shop.model import Mill


@dataclass(frozen=True)
class RoundHold:
    """A way of holding a round with its axis level."""

    device: str
    words: str
    base: float  # from the table to the lowest line of the round [mm]
    blind_under: bool  # a drill that comes through meets the device
    runout: float = 0.04
    owned: bool = True  # vice or vee block of the shop file take it
    tall: float = 0.0  # from there to the top of the round that is drilled [mm]; 0: its diameter
    by_faces: bool = False  # it stands on its rim, face A at the fixed jaw, the axis along Y
    hangs: float = 0.0  # how far a larger land reaches below the round that is held [mm]
    jaw: float = 0.0  # then: where the face at the fixed jaw lies, from face A [mm]


def vee_rise(dia: float) -> float:
    """Height of the axis of a round over the root of a 90-degree vee [mm].

    r / sin 45: the round touches both flanks.

    Examples
    --------
    >>> round(vee_rise(20.0), 3)
    14.142
    """
    return dia / 2 / math.sin(math.radians(45.0))


def held_for_cross(mill: Mill, shape: TurnedShape, dia: float) -> RoundHold:
    """How a part is held for a hole across it: a disc by its faces, standing on its rim; else in vee or vice [mm]."""
    widest = max(
        (f for f in shape.outside if isinstance(f, Cylinder)),
        key=lambda f: (f.dia.value, f.end - f.start, -f.start),
        default=None,
    )
    if widest is None:
        return held_round(mill, dia)
    big, wide = widest.dia.value, widest.end - widest.start
    beside = [largest(land) for land in shape.outside if land.name != widest.name]
    free = all(
        (big - other) / 2 >= mill.vice_depth for other in beside
    )  # what stands out meets the jaws else
    if (
        free
        and wide <= mill_rule("disc_share") * big
        and wide <= mill.vice_opening
        and big > 2 * mill_rule("parallel_least")
    ):
        return RoundHold(
            "vice, by its faces, standing on its rim",
            f"{widest.name}, {Mm(wide):g} wide, between the jaws with card or brass on its faces, face A to the fixed jaw; its "
            f"rim of {Mm(big):g} on the vice's bed, a parallel with a gap or scrap below a hole right through.",
            mill.vice_height,
            True,
            tall=big / 2 + dia / 2,
            by_faces=True,
            jaw=widest.start,
        )
    hold = held_round(mill, dia)
    return replace(hold, hangs=max(0.0, big / 2 - dia / 2)) if big > dia + 1e-6 else hold


def held_round(mill: Mill, dia: float) -> RoundHold:
    """The vee block when it is owned and takes the round, else the vice, else clamps [mm]."""
    if mill.vee_to >= dia - 1e-9 and mill.vee_to > 0:
        lowest = mill.vee_bottom + vee_rise(dia) - dia / 2
        return RoundHold(
            "vee block in the vice" if dia <= mill.vice_opening else "vee block, clamped to the table",
            f"The axis lies {Mm(mill.vee_bottom + vee_rise(dia)):.2f} over the block's foot; drill towards the vee.",
            (mill.vice_height if dia <= mill.vice_opening else 0.0) + lowest,
            True,
        )
    if dia <= mill.vice_opening and dia / 2 < mill.vice_depth:
        return RoundHold(
            "vice, the round between the jaws on a parallel",
            "Two jaws and one parallel touch it: seat it down while tightening. The parallel lies under the round, so a "
            "hole right through wants two thin ones with a gap, or scrap.",
            mill.vice_height + mill_rule("parallel_least"),
            True,
        )
    return RoundHold(
        "vee blocks, clamped to the table",
        "A pair of vee blocks is not in the shop file for this diameter: it must be at hand.",
        vee_rise(dia) - dia / 2,
        True,
        owned=False,
    )
