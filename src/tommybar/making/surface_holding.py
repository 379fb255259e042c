"""Ways of gripping what is finished already, with the other face free."""

from __future__ import annotations

from tommybar.making.as_machined import knurl_blank
from tommybar.making.cards import Rejected
from tommybar.making.fixtures import arbors, screwed_stubs, split_sleeve
from tommybar.making.grips import (
    DEVICE_COST,
    MARK_COST,
    Option,
    closest_collet,
    device_words,
    grip_needed,
    gripping,
    nothing_larger_behind,
    overhang_cost,
    ranges_in_words,
    slenderness,
    standing_out,
    too_slender,
)
from tommybar.making.jobs import Job, span_in_card
from tommybar.making.mandrels import expanding_options, mandrel_options
from tommybar.making.steadies import AT_THE_END, BEHIND, RINGED, WIDE
from tommybar.making.tail_centre import COST, STEADIED, Carrier, centre_mouth
from tommybar.shapes.features import Cylinder, Face, TurnedShape
from tommybar.shop.centre_equipment import Steady
from tommybar.shop.model import Jaws, Shop

STRIPS_COST = 30.0  # of the search, for a knurl held through copper strips
STRIPS_RUNOUT = 0.05  # what strips over a knurl add, TIR; common practice, no source [mm]


def surface_options(
    shape: TurnedShape, made: frozenset[str], shop: Shop, jobs: tuple[Job, ...], hollow: float = 0.0
) -> tuple[list[Option], list[Rejected]]:
    """Ways of gripping what has been finished already, with the other face free.

    ``hollow`` is the bore of a tube [mm].
    """
    options: list[Option] = []
    rejected: list[Rejected] = []
    length = shape.length.value
    supplied = {j.feature for j in jobs if j.as_supplied}
    for free in ("A", "B"):
        carrier = Carrier(centre_mouth(shape, free, shop), shop)
        for feature in shape.outside:
            if feature.name not in made or not isinstance(feature, Cylinder):
                continue
            near, far = span_in_card(feature.start, feature.end, length, free)
            long = near - far
            for jaws in shop.jaws:
                if jaws.grips != "outside":
                    continue
                option = _on_cylinder(
                    shape,
                    feature,
                    jaws,
                    free,
                    near,
                    far,
                    long,
                    feature.name in supplied,
                    made,
                    rejected,
                    carrier,
                    hollow,
                )
                options.extend(option)
            options.extend(split_sleeve(shape, feature, shop, free, near, far, made, rejected, hollow))
        options.extend(arbors(shape, made, shop, free, rejected))
        options.extend(screwed_stubs(shape, made, shop, free, rejected))
        options.extend(mandrel_options(shape, made, shop, free, rejected))
        options.extend(expanding_options(shape, made, shop, free, rejected))
    return options, rejected


def _on_cylinder(
    shape: TurnedShape,
    feature: Cylinder,
    jaws: Jaws,
    free: Face,
    near: float,
    far: float,
    long: float,
    supplied: bool,
    made: frozenset[str],
    rejected: list[Rejected],
    carrier: Carrier,
    hollow: float,
) -> list[Option]:
    dia = feature.dia.target
    words = f"{jaws.device}, {jaws.name} on {feature.name}, face {free} free"
    depth = gripping(jaws, dia)
    if depth <= 0 or (jaws.device == "collets" and not _collet_holds(jaws, dia)):
        rejected.append(Rejected(words, f"{dia:.2f} mm is outside {ranges_in_words(jaws)}"))
        return []
    strips = feature.knurl is not None and jaws.device == "three-jaw"
    if feature.thread or (feature.knurl and not strips):
        rejected.append(
            Rejected(words, "bare jaws would spoil the " + ("thread" if feature.thread else "knurl"))
        )
        return []
    if not nothing_larger_behind(shape, free, feature):
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
        seated = depth - shape.length.value  # of the jaws, where its end lies at the chuck's face
        if front > seated and carrier.too_thick(shape, free, front - depth):
            front, grip = seated, min(grip, seated - far)  # it does not go into the spindle
    sticks = -front
    needed = grip_needed(dia, sticks, False)
    if grip + 1e-6 < needed:
        rejected.append(Rejected(words, f"grip {max(grip, 0):.1f} mm long, {needed:.1f} mm needed"))
        return []
    out = standing_out(shape, free, front, made, hollow)
    slim = too_slender(out)
    centred = {one.name for one in shape.centres if one.face == free} <= made
    centre, steady = carrier.carried(out) if slim and centred else (0.0, None)
    ring = _ring(shape, free, front, made, carrier) if slim and not centre else None
    steady = steady or ring
    if slim and not centre and ring is None:
        rejected.append(Rejected(words, carrier.refused(out, slim) if centred else slim))
        return []
    hard = jaws.device in ("three-jaw", "four-jaw") and not supplied
    cost = DEVICE_COST.get(jaws.device, 10.0) + (MARK_COST if hard else 0.0)
    cost += COST if centre else overhang_cost(slenderness(out))
    cost += COST if steady else 0.0
    if strips:
        cost += STRIPS_COST
    if jaws.device == "collets":
        low, high = closest_collet(jaws, dia)
        cost += 6.0 * (high - dia) / max(high - low, 0.01) + (
            MARK_COST if feature.dia.toleranced and not supplied else 0.0
        )
    return [
        Option(
            jaws,
            device_words(jaws, dia)
            + (", copper strips" if strips else "")
            + (RINGED if ring else STEADIED if steady else ""),
            feature.name,
            knurl_blank(feature) if strips else dia,
            grip,
            free,
            front,
            "",
            jaws.runout + (STRIPS_RUNOUT if strips else 0.0),
            cost,
            protects="thin copper or aluminium strips under the jaws" if hard else "",
            centre=centre,
            steady=steady,
            only=AT_THE_END if ring else frozenset(),
        )
    ]


def _ring(
    shape: TurnedShape, free: Face, front: float, made: frozenset[str], carrier: Carrier
) -> Steady | None:
    """A fixed steady behind the free end, on a finished plain land that is there, for work in the face."""
    if front > -BEHIND - WIDE - 1.0:
        return None
    for land in shape.outside:
        near, far = span_in_card(land.start, land.end, shape.length.value, free)
        if near >= -BEHIND and far <= -BEHIND - WIDE and land.name in made and isinstance(land, Cylinder):
            plain = not land.thread and land.knurl is None
            return carrier.ring(land.dia.target) if plain else None
    return None


def _collet_holds(jaws: Jaws, dia: float) -> bool:
    return any(low - 1e-6 <= dia <= high + 1e-6 for low, high, _ in jaws.ranges)
