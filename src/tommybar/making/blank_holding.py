"""Ways of gripping the blank itself: as a slug, as a long bar, or by a stub it is later parted from."""

from __future__ import annotations

from tommybar.making.cards import Rejected
from tommybar.making.grips import (
    DEVICE_COST,
    STUB_COST,
    Ending,
    Option,
    device_words,
    grip_needed,
    gripping,
    overhang_cost,
    ranges_in_words,
    slenderness,
    standing_out,
    too_slender,
)
from tommybar.making.jobs import Job, largest_outside, span_in_card
from tommybar.making.practice import rule
from tommybar.making.steadies import AT_THE_END, RINGED
from tommybar.making.tail_centre import COST, STEADIED, Carrier, centre_mouth
from tommybar.shapes.features import Face, TurnedShape
from tommybar.shop.model import Jaws, Shop


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
    if length > rule("grip", "overhang_most") * largest_outside(shape) and any(j.as_supplied for j in jobs):
        ends.append(-2.0)  # a long bar that keeps its surface: held just behind the face that is cut
    return sorted(
        {round(end - rule("grip", "clear"), 3) for end in ends if end > -length + 1e-6}, reverse=True
    )


def blank_options(
    shape: TurnedShape, jobs: tuple[Job, ...], dia: float, faces: float, shop: Shop, hollow: float = 0.0
) -> tuple[list[Option], list[Rejected]]:
    """Ways of gripping the blank itself: slug, long bar, or bar with a stub.

    ``faces`` is the metal for facing one end, ``hollow`` the bore of a tube [mm].
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
                out = standing_out(shape, free, front, hollow=hollow)
                # faced and centred short, back in the spindle, or where the bar is stout before it is turned
                pushed = dia <= shop.lathe.spindle_bore or sticks <= rule("grip", "overhang_most") * dia
                carrier = Carrier(centre_mouth(shape, free, shop) if pushed else 0.0, shop)
                option = _checked(jaws, dia, grip, free, front, ending, sticks, out, rejected, carrier)
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
    out: tuple[tuple[float, float, float], ...],
    rejected: list[Rejected],
    carrier: Carrier,
) -> Option | None:
    heavy = ending == "part"
    needed = grip_needed(dia, sticks, heavy)
    words = f"{jaws.device}, {jaws.name} on the blank, face {free} free"
    if grip + 1e-6 < needed:
        rejected.append(Rejected(words, f"grip {grip:.1f} mm long, {needed:.1f} mm needed"))
        return None
    slim = too_slender(out)
    centre, steady = carrier.carried(out) if slim else (0.0, None)
    if steady is not None and ending == "part":
        rejected.append(Rejected(words, "so slender, the piece would whip when it is parted; it is sawn off"))
        return None
    ring = carrier.ring(dia) if slim and not centre and not ending else None
    steady = steady or ring
    if slim and not centre and ring is None:
        rejected.append(Rejected(words, carrier.refused(out, slim)))
        return None
    grip = min(grip, max(needed, 2 * dia)) if ending else grip
    cost = DEVICE_COST.get(jaws.device, 10.0) + STUB_COST[ending]
    cost += COST if centre else overhang_cost(slenderness(out))
    cost += COST if steady else 0.0
    words = device_words(jaws, dia) + (RINGED if ring else STEADIED if steady else "")
    return Option(
        jaws,
        words,
        "blank",
        dia,
        grip,
        free,
        front,
        ending,
        jaws.runout,
        cost,
        centre=centre,
        steady=steady,
        only=AT_THE_END if ring else frozenset(),
    )
