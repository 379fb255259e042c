"""Joints between parts: screws with washers and nuts, threads, patterns, press, bond, solder, pins."""

from __future__ import annotations

import math

from tommybar.design.joints import (
    AdhesiveRelation,
    PatternRelation,
    PinRelation,
    PressRelation,
    ScrewJoint,
    SolderRelation,
    ThreadRelation,
)
from tommybar.design.names_looked_up import HOLES, Names, diameter
from tommybar.design.reading import TINY
from tommybar.design.written_relations import (
    WrittenBond,
    WrittenPattern,
    WrittenPin,
    WrittenPress,
    WrittenScrew,
    WrittenSolder,
    WrittenThread,
)
from tommybar.design.yaml_file import Place
from tommybar.facts.adhesives.bonding import adhesive
from tommybar.facts.adhesives.solders import solder
from tommybar.facts.fasteners import SCREWS, clearance_hole, nut, screw_length_at_least, washer
from tommybar.facts.threads import Thread
from tommybar.refusals import Refusal


def screw_joints(look: Names, one: WrittenScrew, place: Place) -> list[ScrewJoint]:
    """What length each screw must have, and the nearest that is made."""
    read = look.read
    screw = read.thread(one.screw, (*place, "screw"))
    through = [name for given in one.through for name in look.several(given)]
    into = [name for given in one.into for name in look.several(given)]
    head = "" if one.stud else one.head or _head_of_bought(look, screw)
    if screw is None or not (head or one.stud):
        return []
    if head and not read.one_of(head, SCREWS, (*place, "head"), "screw"):
        return []
    if one.stud and not _stud(look, one.stud, screw, (*place, "stud")):
        return []
    for name in through:
        look.feature(name, (*place, "through"), HOLES, "hole")
    if any(name.partition(".")[2] not in look.features.get(name.partition(".")[0], {}) for name in through):
        return []
    try:
        washers = sum(washer(screw.designation, standard).thickness for standard in one.washer)
        high = nut(screw.designation, one.nut).height if one.nut else 0.0
    except Refusal as refusal:
        read.wrong += read.file.complaints(place, refusal)
        return []
    beyond = read.of(one.protrusion, 2 * screw.pitch) if one.nut else read.of(one.engaged, screw.major)
    if one.nut and beyond < 2 * screw.pitch - TINY:
        what = f"The screw stands {beyond:g} mm out of its nut; two pitches are {2 * screw.pitch:g} mm."
        read.complain((*place, "protrusion"), what, "Let at least two threads show.")
    _refuse_class(look, one, through, screw, place)
    if one.stud:
        return _on_stud(look, one, place, tuple(through), screw, washers + high, beyond)
    stacks = [tuple(through)] if one.nut else [(through[n % len(through)],) for n in range(len(into))]
    return [
        _joint(look, one, place, stack, "" if one.nut else into[n], screw, head, washers + high, beyond)
        for n, stack in enumerate(stacks)
    ]


def _stud(look: Names, name: str, screw: Thread, place: Place) -> bool:
    """Whether that feature is an outside thread of the screw's size."""
    land = look.feature(name, place)
    if land is None:
        return False
    has = getattr(land, "thread", "")
    if has != screw.designation or isinstance(land, HOLES):
        look.read.complain(
            place,
            f"{name} is {has or 'not threaded'}; the nut is {screw.designation}.",
            "Name an outside thread.",
        )
        return False
    return True


def _on_stud(
    look: Names,
    one: WrittenScrew,
    place: Place,
    through: tuple[str, ...],
    screw: Thread,
    beside: float,
    beyond: float,
) -> list[ScrewJoint]:
    """A nut on the thread of a made part, which must reach through what it holds."""
    grip = sum(look.grip(name) for name in through)
    needed, land = round(grip + beside + beyond, 6), _of(look, one.stud)
    long = round(getattr(land, "end", math.nan) - getattr(land, "start", math.nan), 6)
    if long < needed - TINY:
        what = f"{one.stud} is {long:g} mm long; what it holds, the nut and two threads are {needed:.4g} mm."
        look.read.complain((*place, "stud"), what, "Make the thread longer.")
    return [
        ScrewJoint(
            through,
            "",
            screw.designation,
            "",
            one.clearance,
            0.0,
            grip,
            tuple(one.washer),
            one.nut,
            beyond,
            needed,
            length=None if math.isnan(long) else long,
            spare=0.0 if math.isnan(long) else round(long - needed, 6),
            stud=one.stud,
        )
    ]


def _joint(
    look: Names,
    one: WrittenScrew,
    place: Place,
    through: tuple[str, ...],
    into: str,
    screw: Thread,
    head: str,
    beside: float,
    beyond: float,
) -> ScrewJoint:
    grip = sum(look.grip(name) for name in through)
    needed = grip + beside + beyond
    most = None
    if into:
        part, _, feature = into.partition(".")
        deep = getattr(look.features.get(part, {}).get(feature), "depth", None)
        most = None if deep is None else grip + beside + float(deep)
    length: float | None = None
    bought = ""
    if not math.isnan(needed):
        try:
            length = screw_length_at_least(head, screw.designation, needed)
        except Refusal as refusal:
            look.read.wrong += look.read.file.complaints((*place, "screw"), refusal)
        if length is not None and most is not None and length > most + TINY:
            what = (
                f"The screw must be {needed:.4g} mm long at least and {most:.4g} mm at most in {into}; "
                f"the nearest made is {length:g} mm."
            )
            if one.head:
                look.read.complain((*place, "screw"), what, "Tap deeper, or add a washer.")
            length = None
        bought = _bought(look, head, screw.designation, length)
    seat = max((getattr(_of(look, name), "sink_depth", 0.0) for name in through[:1]), default=0.0)
    spare = 0.0 if length is None else round(length - needed, 6)
    return ScrewJoint(
        through,
        into,
        screw.designation,
        head,
        one.clearance,
        seat,
        grip,
        tuple(one.washer),
        one.nut,
        beyond,
        round(needed, 6),
        None if most is None else round(most, 6),
        length,
        spare,
        bought,
    )


def _of(look: Names, name: str) -> object:
    part, _, feature = name.partition(".")
    return look.features[part][feature]


def _head_of_bought(look: Names, screw: Thread | None) -> str:
    """The standard of a bought screw of that size in the design."""
    for part in look.parts.values():
        words = part.bought.replace("×", "x").split()
        if screw and len(words) > 3 and words[2] == screw.designation and words[1] != "4026":
            return " ".join(words[:2]) if " ".join(words[:2]) in SCREWS else ""
    return ""


def _bought(look: Names, head: str, size: str, length: float | None) -> str:
    """The bought screw of that head and size: the one of the length wanted, or the only one there is."""
    alike = [
        part
        for part in look.parts.values()
        if part.bought.startswith(f"{head} {size} ") and part.envelope is not None
    ]
    for part in alike:
        long = dict(part.envelope.sizes).get("length", 0.0) if part.envelope else 0.0
        if length is None or abs(long - length) < TINY:
            return part.name
    return alike[0].name if len(alike) == 1 else ""


def _refuse_class(look: Names, one: WrittenScrew, through: list[str], screw: Thread, place: Place) -> None:
    if not one.clearance:
        return
    try:
        least = clearance_hole(screw.designation, one.clearance)
    except Refusal as refusal:
        look.read.wrong += look.read.file.complaints((*place, "clearance"), refusal)
        return
    for name in through:
        dia = diameter(_of(look, name))
        if dia < least - 0.05:
            what = f"{name} is {dia:g} mm; a {one.clearance} clearance hole for {screw.designation} is {least:g} mm."
            look.read.complain((*place, "clearance"), what, "Make the hole larger, or take a finer class.")


def thread_pair(look: Names, one: WrittenThread, place: Place) -> ThreadRelation | None:
    """A thread in a thread; both must be the same."""
    outside = look.feature(one.thread, (*place, "thread"))
    inside = look.feature(one.in_, (*place, "in"), HOLES, "hole")
    if outside is None or inside is None:
        return None
    names = [getattr(feature, "thread", "") for feature in (outside, inside)]
    for name, has, key in ((one.thread, names[0], "thread"), (one.in_, names[1], "in")):
        if not has:
            look.read.complain((*place, key), f"{name} has no thread.", "Name a threaded feature.")
            return None
    if names[0] != names[1]:
        what = f"{one.thread} is {names[0]} and {one.in_} is {names[1]}."
        look.read.complain((*place, "in"), what, "Give both the same thread.")
        return None
    engaged, travel = look.read.of(one.engaged), look.read.of(one.travel)
    long = getattr(outside, "end", math.nan) - getattr(outside, "start", math.nan)
    if engaged + travel > long + TINY:
        what = f"The thread is to go {engaged + travel:g} mm in; {one.thread} is {long:g} mm long."
        look.read.complain((*place, "engaged"), what, "Make the thread longer, or engage less.")
    return ThreadRelation(one.thread, one.in_, names[0], engaged, travel, one.locked)


def pattern(look: Names, one: WrittenPattern, place: Place) -> PatternRelation | None:
    """Holes that must coincide: the room that each pattern has follows from the clearances.

    With clearance holes in both parts each may be off by half of both plays;
    with a thread or a tight hole in the second, by half the play of the first.
    """
    read = look.read
    first = [name for given in one.pattern for name in look.several(given)]
    second = [name for given in one.on for name in look.several(given)]
    holes = [look.feature(name, (*place, "pattern"), HOLES, "hole") for name in first]
    others = [look.feature(name, (*place, "on"), HOLES, "hole") for name in second]
    if None in holes or None in others:
        return None
    count, facing = (sum(getattr(hole, "count", 1) for hole in each) for each in (holes, others))
    if count != facing:
        what = f"The pattern has {count} holes and the other {facing}; they pair in order."
        read.complain((*place, "on"), what, "Name as many holes in both parts.")
        return None
    screw = read.thread(one.screw, (*place, "screw")) if one.screw else None
    body = read.of(one.pin) if one.pin is not None else screw.major if screw else math.nan
    fast = any(getattr(hole, "thread", "") or diameter(hole) <= body for hole in others)
    play = min(diameter(hole) for hole in holes) - body
    if not fast:
        play += min(diameter(hole) for hole in others) - body
    if play <= TINY and not one.spot_through:
        what = f"The holes leave {play:.3g} mm of play round {body:g} mm; two patterns cannot then be made to meet."
        read.complain((*place, "pattern"), what, "Make clearance holes, or write spot_through: true.")
    # fixed fastener: both zones share the play of one hole; floating: each has that of its own hole
    return PatternRelation(tuple(first), tuple(second), round(play, 6), round(play / 2, 6), one.spot_through)


def press(look: Names, one: WrittenPress, place: Place) -> PressRelation | None:
    """A press joint by its interference."""
    hole = look.feature(one.press, (*place, "press"), HOLES, "hole")
    shaft = look.feature(one.on, (*place, "on"))
    least, most = (look.read.of(figure) for figure in one.interference)
    if least <= 0 or most < least:
        what = f"The interference is {least:g} to {most:g} mm."
        look.read.complain((*place, "interference"), what, "Give the least first; both above 0.")
    if hole is None or shaft is None:
        return None
    return PressRelation(one.press, one.on, least, most, look.read.of(one.length))


def bond(look: Names, one: WrittenBond, place: Place) -> AdhesiveRelation | None:
    """A bonded joint; the gap must be one that its adhesive fills."""
    read, gap = look.read, _gap(look, one.gap, place)
    if one.adhesive:
        try:
            found = adhesive(one.adhesive)
            if gap[1] > found.largest[1] + TINY:
                what = f"The gap is up to {gap[1]:g} mm; {one.adhesive} holds up to {found.largest[1]:g} mm."
                read.complain((*place, "gap"), what, "Close the gap, or take one that fills it.")
            hot = read.of(one.hottest, 20.0)
            if hot > found.service[1]:
                what = (
                    f"It is {hot:g} deg C in service; {one.adhesive} holds up to {found.service[1]:g} deg C."
                )
                read.complain((*place, "hottest"), what, "Take a grade for heat, or solder it.")
        except Refusal as refusal:
            read.wrong += read.file.complaints((*place, "adhesive"), refusal)
    if one.load == "peel" and not one.spigot:
        read.complain(
            (*place, "load"), "The joint is loaded in peel and has no spigot.", "Add a spigot or a screw."
        )
    first, second = look.feature(one.bond, (*place, "bond")), look.feature(one.on, (*place, "on"))
    if first is None or second is None:
        return None
    return AdhesiveRelation(
        one.bond,
        one.on,
        gap,
        read.of(one.area),
        one.load,
        one.adhesive,
        read.of(one.hottest, 20.0),
        one.spigot,
    )


def solder_joint(look: Names, one: WrittenSolder, place: Place) -> SolderRelation | None:
    """A soldered joint."""
    read, gap = look.read, _gap(look, one.gap, place)
    if one.alloy:
        try:
            solder(one.alloy)
        except Refusal as refusal:
            read.wrong += read.file.complaints((*place, "alloy"), refusal)
    if one.vent:
        look.feature(one.vent, (*place, "vent"), HOLES, "hole")
    first, second = look.feature(one.solder, (*place, "solder")), look.feature(one.on, (*place, "on"))
    order = read.of(one.order, 1.0)
    if first is None or second is None or math.isnan(order):
        return None
    return SolderRelation(one.solder, one.on, gap, read.of(one.length), one.alloy, round(order), one.vent)


def _gap(look: Names, written: tuple[object, object], place: Place) -> tuple[float, float]:
    least, most = (look.read.of(figure) for figure in written)  # type: ignore[arg-type]
    if least < 0 or most < least:
        look.read.complain((*place, "gap"), f"The gap is {least:g} to {most:g} mm.", "Give the least first.")
    return least, most


def pinned(look: Names, one: WrittenPin, place: Place) -> PinRelation | None:
    """Two features kept by a pin or key."""
    outer, inner = look.feature(one.pin, (*place, "pin")), look.feature(one.on, (*place, "on"))
    dia = look.read.of(one.dia)
    if outer is None or inner is None:
        return None
    if one.way != "key" and dia > diameter(inner) / 2 + TINY:
        what = f"The pin is {dia:g} mm; {one.on} is {diameter(inner):g} mm, and half of it must be left."
        look.read.complain((*place, "dia"), what, "Take a thinner pin: a quarter to a third of the shaft.")
    return PinRelation(one.pin, one.on, one.way, dia, look.read.of(one.length), one.together)
