"""Holdings made for the job: split sleeves, stub arbors, screwed stubs."""

from __future__ import annotations

from tommybar.making.cards import Rejected
from tommybar.making.grips import (
    Option,
    grip_needed,
    gripping,
    nothing_larger_behind,
    overhang_cost,
    slenderness,
    standing_out,
    too_slender,
)
from tommybar.making.jobs import in_card, largest_outside
from tommybar.making.lengths import Mm
from tommybar.making.practice import rule
from tommybar.making.tail_centre import Carrier
from tommybar.shapes.features import Cylinder, Face, TurnedShape
from tommybar.shop.model import Shop


def split_sleeve(
    shape: TurnedShape,
    feature: Cylinder,
    shop: Shop,
    free: Face,
    near: float,
    far: float,
    made: frozenset[str],
    rejected: list[Rejected],
    hollow: float = 0.0,
) -> list[Option]:
    """A split sleeve bored in place, or tapped for a screw, with the shoulder seated on it."""
    if "split sleeve" not in shop.can or not nothing_larger_behind(shape, free, feature):
        return []
    long = near - far
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
    front = (
        near if near < -1e-6 else near - 2.0
    )  # a shoulder seats on the sleeve; a plain end stands out of it
    if Carrier(0.0, shop).too_thick(shape, free, front - gripping(holder, outside)):
        seated = gripping(holder, outside) - shape.length.value
        if front > seated + 1e-6 and seated - far < grip_needed(dia, -seated, False) - 1e-6:
            rejected.append(
                Rejected(
                    f"split sleeve bored {Mm(dia):.2f} on {feature.name}, face {free} free",
                    f"too thick for the spindle of {shop.lathe.spindle_bore:g} mm, and {max(0.0, seated - far):.1f} mm would "
                    "be held",
                )
            )
            return []
        front = min(front, seated)
    if front - far < 3.0:
        return []
    how = f"drill and tap {feature.thread}" if feature.thread else f"bore {Mm(dia):.2f}"
    words = f"split sleeve tapped {feature.thread}" if feature.thread else f"split sleeve bored {Mm(dia):.2f}"
    most = rule("grip", "overhang_most")
    out = standing_out(shape, free, front, made, hollow)
    slim = too_slender(out)
    if -front > most * dia:
        slim = f"{-front:.1f} mm stand out of it, more than {most:g} x the {dia:.2f} mm held"
    if slim:
        rejected.append(Rejected(f"{words} on {feature.name}, face {free} free", slim))
        return []
    return [
        Option(
            holder,
            words,
            feature.name,
            dia,
            round(front - far, 2),
            free,
            front,
            "",
            0.05 if feature.thread else 0.04,
            10.0 + overhang_cost(slenderness(out)),
            note=f"make the sleeve first, of any round {Mm(dia + 8):.0f} x {Mm(min(long, front - far) + 6):.0f}: "
            f"{how} in place, slit it once, mark it at jaw 1",
            protects="the sleeve",
        )
    ]


def arbors(
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
                f"stub arbor {Mm(bore.dia.value):g}, draw screw",
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


def screwed_stubs(
    shape: TurnedShape, made: frozenset[str], shop: Shop, free: Face, rejected: list[Rejected]
) -> list[Option]:
    """A stub turned and screwed in place, shorter than the part, which seats on its shoulder."""
    options = []
    for bore in shape.bores:
        if not bore.through or not bore.thread or bore.name not in made:
            continue
        words = f"stub screwed {bore.thread} in {bore.name}, face {free} free"
        if "arbor" not in shop.can:
            rejected.append(Rejected(words, "the shop file does not say that arbors are made"))
            continue
        if bore.thread not in shop.dies:
            rejected.append(Rejected(words, f"no {bore.thread} die for the stub"))
            continue
        leverage = largest_outside(shape) / bore.dia.value
        if leverage > 10.0:
            rejected.append(
                Rejected(
                    words,
                    f"the part is {leverage:.1f} x as large as the screw of {bore.dia.value:g} mm; 10 x at most",
                )
            )
            continue
        options.append(
            Option(
                None,
                f"stub screwed {bore.thread}",
                bore.name,
                bore.dia.value,
                shape.length.value,
                free,
                -shape.length.value,
                "",
                0.03,
                16.0,
                note="turn, screw and face the stub in place; its screw ends 1 mm short of the face to be cut; light cuts",
                seat=min(3 * bore.dia.value, largest_outside(shape) - 4.0),
            )
        )
    return options
