"""Holes at several angles round a part in one card: the part stays in the dividing device, the device turns.

A part that is turned about in a vee for every hole is set up anew each time,
and each setting adds its own error to the angle.
"""

from __future__ import annotations

from dataclasses import dataclass

from tommybar.making.jobs import largest_outside
from tommybar.making.lengths import Mm
from tommybar.making.milling.clocking import divides, sideways
from tommybar.making.milling.round_holding import RoundHold
from tommybar.making.milling.rules import mill_rule
from tommybar.shapes.features import CrossHole, Cylinder, Face, TurnedShape
from tommybar.shop.model import Mill, Shop

AXIS_OVER_RIM = 10.0  # a rotary table set upright carries its axis so much over its radius; common practice, no source [mm]


@dataclass(frozen=True)
class Divided:
    """How a part is held in the device: by which surface, with which face towards the left."""

    hold: RoundHold
    surface: str
    dia: float  # of that surface [mm]
    free: Face
    stop: str


def device_axis(mill: Mill) -> float:
    """Height of the device's axis over the table [mm]."""
    return mill.rotary_table / 2 + AXIS_OVER_RIM if mill.rotary_table > 0 else mill.vice_height


def in_device(shape: TurnedShape, holes: tuple[CrossHole, ...], dia: float, shop: Shop) -> Divided | None:
    """The part by a land beside its holes, by an arbor in its bore, or on the upright table; None: it finds no hold.

    ``dia``: of the round that is drilled [mm].
    """
    mill = shop.mill
    if mill is None or not divides(shop):
        return None
    base = device_axis(mill) - dia / 2
    if base < 0:
        return None
    return _by_land(shape, holes, base) or _by_bore(shape, holes, base, dia, mill)


def _by_land(shape: TurnedShape, holes: tuple[CrossHole, ...], base: float) -> Divided | None:
    """An end of the part that no hole comes near, long enough for jaws or a collet."""
    length = shape.length.value
    found: list[tuple[float, str, Divided]] = []
    near = min(hole.z - hole.dia.value / 2 for hole in holes) - mill_rule("device_clear")
    far = max(hole.z + hole.dia.value / 2 for hole in holes) + mill_rule("device_clear")
    for land in shape.outside:
        if not isinstance(land, Cylinder) or land.thread or land.knurl is not None:
            continue
        for free, grip in (
            ("A", land.end - max(land.start, far)),
            ("B", min(land.end, near) - land.start),
        ):
            at_end = land.end > length - 1e-6 if free == "A" else land.start < 1e-6
            if not at_end or grip < max(mill_rule("device_grip"), land.dia.value / 2):
                continue
            hold = RoundHold(
                "dividing device, axis level",
                f"In its chuck or collet by {land.name}, so that the part is set once and the device turns it.",
                base,
                False,
            )
            side: Face = "A" if free == "A" else "B"
            found.append(
                (
                    -grip,
                    land.name,
                    Divided(
                        hold, land.name, land.dia.value, side, f"face {free} to the left, clear of the device"
                    ),
                )
            )
    return min(found, key=lambda one: one[:2])[2] if found else None


def _by_bore(
    shape: TurnedShape, holes: tuple[CrossHole, ...], base: float, dia: float, mill: Mill
) -> Divided | None:
    """A bore right through: on a stub arbor in the device's chuck, or, wide enough, on the face of the upright table."""
    through = [bore for bore in shape.bores if bore.through]
    if not through:
        return None
    bore = max(through, key=lambda one: (one.dia.toleranced, one.dia.value, one.name))
    size = bore.dia.value
    if mill_rule("arbor_least") <= size <= mill_rule("arbor_most"):
        words = (
            f"On a stub arbor turned to {bore.name} in the device's chuck, drawn up by a screw and washer: the part is set once "
            "and the device turns it."
        )
        hold = RoundHold(
            "dividing device, axis level, a stub arbor in its chuck", words, base, True, runout=0.02
        )
        return Divided(hold, bore.name, size, "A", "its back on the arbor's shoulder, face A to the left")
    rim = mill.rotary_table / 2 - largest_outside(shape) / 2
    if size > mill_rule("arbor_most") and mill.rotary_table > 0 and rim <= mill_rule("table_rim"):
        words = (
            f"Strapped through {bore.name} to the face of the table on a packing ring, {bore.name} swept with the indicator "
            "until it stands still as the table turns."
        )
        hold = RoundHold("rotary table, upright", words, base, False, runout=0.02)
        return Divided(
            hold, bore.name, size, "A", "its back on packing that the drill clears, face A to the left"
        )
    return None


def turned_words(first: CrossHole, dia: float) -> str:
    """How the angles of the list are set."""
    error = mill_rule("dividing_error")
    return (
        f"The device reads 0 with {first.name} on top; it turns the part by the angles of the list, clockwise as seen from face "
        f"A, always from the same side, locked before drilling; {error:g} deg puts a hole {Mm(sideways(dia, error)):.2f} beside "
        "its place on the round."
    )


def place_in_device(hole: CrossHole, held: Divided, length: float, second: bool) -> tuple[float, float]:
    """Where a hole lies: along X from the free face at the left, and beside the axis along Y [mm].

    ``second``: seen from its far side, where what lay beside the axis lies on the other side.
    """
    beside = hole.offset if second != (held.free == "B") else -hole.offset
    return (hole.z if held.free == "A" else length - hole.z), beside + 0.0
