"""Turning between centres: which work is held so, how it is driven, and how it is made to turn parallel.

Both ends are faced and centred first, each in a short grip of the blank; then a
dog on one end drives the work while the other is turned, and it is turned end
for end on the same centres for what stood under the dog.
"""

from __future__ import annotations

from tommybar.making.cards import Rejected
from tommybar.making.grips import (
    DEVICE_COST,
    Lengths,
    Option,
    device_words,
    grip_needed,
    gripping,
    too_slender,
)
from tommybar.making.jobs import Job, in_card, largest, span_in_card
from tommybar.making.lengths import Mm
from tommybar.making.practice import rule
from tommybar.making.steadies import RINGED, steady_for
from tommybar.making.tail_centre import centre_mouth
from tommybar.mechanics.between_centres import alike_between_centres
from tommybar.shapes.features import Cylinder, Face, TurnedShape
from tommybar.shop.centre_equipment import Dog
from tommybar.shop.model import Shop

SKILL = "between centres"
NO_SKILL = "the shop file does not say that work is turned between centres"
COST = 12.0  # of the search, beside that of its card: two centres, a dog, the taper to be tried
ENDS = frozenset({"face", "centre"})  # what is cut before it goes between centres
SHORT = 5.0  # stick-out of a bar that is faced and centred; common practice, no source [mm]
HEAD = 25.0  # the head's centre stands out of the spindle's nose; common practice, no source [mm]
FACES: tuple[Face, Face] = ("A", "B")


def wants_centres(shape: TurnedShape, shop: Shop) -> bool:
    """Whether the drawing has a centre hole in each face that the drawer makes."""
    return all(centre_mouth(shape, free, shop) > 0 for free in FACES)


def end_jobs(jobs: tuple[Job, ...]) -> frozenset[str]:
    """Names of what must be made before the work goes between centres."""
    return frozenset(job.name for job in jobs if job.kind in ENDS)


def end_options(
    shape: TurnedShape, made: frozenset[str], jobs: tuple[Job, ...], dia: float, faces: float, shop: Shop
) -> tuple[list[Option], list[Rejected]]:
    """Short grips of the blank, in which one end is faced and centred and nothing else is cut."""
    options: list[Option] = []
    rejected: list[Rejected] = []
    cut = {job.name for job in jobs if job.name in made and not job.as_supplied}
    ends = end_jobs(jobs)
    if SKILL not in shop.can or not wants_centres(shape, shop) or not cut <= ends:
        return options, rejected
    length = shape.length.value
    for free in FACES:
        here = {job.name for job in jobs if job.kind in ENDS and job.side == free}
        if here <= cut or (here & cut):
            continue
        behind = 0.0 if cut else faces  # metal behind the finished length
        for jaws in shop.jaws:
            depth = gripping(jaws, dia)
            if jaws.grips != "outside" or depth <= 0:
                continue
            words = f"{jaws.device}, {jaws.name} on the blank, face {free} free, for its centre"
            pushed = dia <= shop.lathe.spindle_bore
            grip = min(depth, length / 2)
            front = -SHORT if pushed else -length - behind + grip
            out: Lengths = ((-front, dia, 0.0),)
            needed = grip_needed(dia, faces - front, False)
            if grip + 1e-6 < needed:
                rejected.append(Rejected(words, f"grip {grip:.1f} mm long, {needed:.1f} mm needed"))
                continue
            slim = too_slender(out)
            steady = steady_for(shop, "fixed", dia) if slim else None
            if slim and steady is None:
                rejected.append(Rejected(words, slim.replace("without a centre", "without a fixed steady")))
                continue
            options.append(
                Option(
                    jaws,
                    device_words(jaws, dia) + (RINGED if steady else ""),
                    "blank",
                    dia,
                    grip,
                    free,
                    front,
                    "",
                    jaws.runout,
                    DEVICE_COST.get(jaws.device, 10.0) + (COST if steady else 0.0),
                    only=ENDS,
                    steady=steady,
                )
            )
    return options, rejected


def between_options(
    shape: TurnedShape, made: frozenset[str], jobs: tuple[Job, ...], dia: float, shop: Shop
) -> tuple[list[Option], list[Rejected]]:
    """Between centres with a dog on the blank, or on what is finished, for each free face."""
    options: list[Option] = []
    rejected: list[Rejected] = []
    if not wants_centres(shape, shop) or not end_jobs(jobs) <= made:
        return options, rejected
    for free in FACES:
        words = f"between centres, face {free} free"
        reason = _lacking(shape, shop)
        if reason:
            rejected.append(Rejected(words, reason))
            continue
        for surface, held, far in _seats(shape, made, jobs, free, dia):
            option = _driven(shape, made, shop, free, surface, held, far, rejected)
            if option is not None:
                options.append(option)
    return options, rejected


def _lacking(shape: TurnedShape, shop: Shop) -> str:
    """Why the shop turns nothing of that length between centres; empty when it does."""
    if SKILL not in shop.can:
        return NO_SKILL
    if not shop.dogs:
        return "the shop file lists no dogs"
    if shop.catch_plate <= 0:
        return "the shop file has no catch plate to drive a dog"
    barrel = max((one.long for one in shop.tail_centres), default=24.0) + rule("tailstock", "least_out")
    room = shop.lathe.between_centres - HEAD - barrel
    if shape.length.value > room:
        return f"{shape.length.value:g} mm long, {room:.0f} mm are left between the points of the centres"
    return ""


def _seats(
    shape: TurnedShape, made: frozenset[str], jobs: tuple[Job, ...], free: Face, dia: float
) -> list[tuple[str, float, float]]:
    """Where a dog may sit: (surface, diameter, the end of it towards the driven centre in the card)."""
    length = shape.length.value
    lands = sorted(shape.outside, key=lambda f: span_in_card(f.start, f.end, length, free)[1])
    if lands[0].name not in made:
        return [("blank", dia, -length)]
    found = []
    for land in lands:  # from the driven end on
        if land.name not in made:
            break
        if isinstance(land, Cylinder) and not land.thread and land.knurl is None:
            edge = land.edge_end if free == "A" else land.edge_start
            found.append(
                (land.name, land.dia.target, span_in_card(land.start, land.end, length, free)[1] + edge)
            )
    return found


def _dog(shop: Shop, dia: float, over: float) -> Dog | None:
    """The smallest dog that takes that diameter and slips over what stands between it and the end."""
    return next((d for d in shop.dogs if d.smallest <= dia <= d.largest and over <= d.largest), None)


def _driven(
    shape: TurnedShape,
    made: frozenset[str],
    shop: Shop,
    free: Face,
    surface: str,
    dia: float,
    far: float,
    rejected: list[Rejected],
) -> Option | None:
    length = shape.length.value
    words = f"between centres, dog on {surface}, face {free} free"
    behind = [
        largest(f) for f in shape.outside if span_in_card(f.start, f.end, length, free)[0] <= far + 1e-6
    ]
    over = max(behind, default=0.0)
    dog = _dog(shop, dia, over)
    if dog is None:
        have = ", ".join(f"{d.smallest:g}-{d.largest:g}" for d in shop.dogs)
        past = f" past {over:.2f} mm" if over > dia else ""
        rejected.append(Rejected(words, f"no dog takes {dia:.2f} mm{past}: {have} mm owned"))
        return None
    front = far + dog.wide
    land = next((f for f in shape.outside if f.name == surface), None)
    if land is not None:
        near, _ = span_in_card(land.start, land.end, length, free)
        edge = getattr(land, "edge_start" if free == "A" else "edge_end", 0.0)
        if front > near - edge + 1e-6:
            rejected.append(
                Rejected(words, f"{near - far:.1f} mm long, the dog covers {dog.wide:g} mm of it")
            )
            return None
    else:
        low = [f.name for f in shape.outside if span_in_card(f.start, f.end, length, free)[1] < front - 1e-6]
        if any(name in made for name in low):
            rejected.append(Rejected(words, "the dog would cover what is finished beside the blank"))
            return None
    pieces = _sizes(shape, free)
    times = length / alike_between_centres(pieces)
    most = rule("grip", "overhang_between")
    steady = steady_for(shop, "travelling", dia) if times > most + 1e-6 else None
    if times > most + 1e-6 and (steady is None or times > rule("grip", "overhang_steady")):
        bound = rule("grip", "overhang_steady") if steady is not None else most
        rejected.append(
            Rejected(
                words,
                f"{times:.1f} diameters between the centres, {bound:g} at most "
                + ("with a travelling steady" if steady else "without a travelling steady"),
            )
        )
        return None
    return Option(
        None,
        f"between centres, dog {Mm(dog.smallest):g}-{Mm(dog.largest):g}"
        + (", travelling steady" if steady else ""),
        surface,
        dia,
        dog.wide,
        free,
        front + rule("tailstock", "clear") - 1.0,
        "",
        rule("tailstock", "runout"),
        COST + (COST if steady else 0.0),
        protects="a strip of brass or copper" if land is not None else "",
        centre=centre_mouth(shape, free, shop),
        dog=dog,
        steady=steady,
        leaves=_threads(shape, shop),
        hangs_on=tuple(one.name for one in shape.centres),
    )


def _sizes(shape: TurnedShape, free: Face) -> Lengths:
    """Length and finished diameter of each land, from the driven end outwards [mm]."""
    length = shape.length.value
    lands = sorted(shape.outside, key=lambda f: in_card((f.start + f.end) / 2, length, free))
    return tuple((f.end - f.start, largest(f), 0.0) for f in lands)


def _threads(shape: TurnedShape, shop: Shop) -> frozenset[str]:
    """Screwed lands that only a die cuts: its holder takes the tailstock's place, and the work would drop."""
    single = (
        "screw cutting" in shop.can
        and shop.lathe.leadscrew_pitch > 0
        and any(tool.kind == "threading" for tool in shop.tools)
    )
    if single:
        return frozenset()
    return frozenset(f.name for f in shape.outside if isinstance(f, Cylinder) and f.thread)


def why_not_between(shape: TurnedShape, shop: Shop, rejected: tuple[Rejected, ...]) -> str:
    """What would have to be there for solid work to run true between centres; empty where there is nothing to say."""
    if shape.bores:
        return ""
    if not wants_centres(shape, shop):
        pilots = ", ".join(f"{size:g}" for size in shop.centre_drills) or "none"
        return (
            f"Draw a centre hole in each face, form A, pilot {pilots} mm, as owned: it is then turned between centres. "
            if SKILL in shop.can
            else ""
        )
    reasons = [_lacking(shape, shop)] + [
        one.reason for one in rejected if one.holding.startswith("between centres")
    ]
    told = "; ".join(dict.fromkeys(reason for reason in reasons if reason))
    return f"Not between centres: {told}. " if told else ""
