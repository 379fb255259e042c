"""An independent check of finished cards: it knows nothing of the search.

It reads the cards as a machinist would, against the shop file and the part,
and says in words what could not be done as written.
"""

from __future__ import annotations

from tommybar.design.model import Part
from tommybar.making.cards import Card, Step
from tommybar.making.jobs import keeps_bore
from tommybar.shapes.features import Cylinder, TurnedShape
from tommybar.shop.model import Shop

BY_HAND = frozenset({"hand", "tap", "die", "saw"})


def route_faults(part: Part, cards: tuple[Card, ...], shop: Shop) -> tuple[str, ...]:
    """Everything that is wrong with the cards of a turned part; empty for a good route."""
    assert isinstance(part.shape, TurnedShape)
    lathe = [card for card in cards if card.machine == "lathe"]
    faults: list[str] = []
    for card in lathe:
        faults += _grip_faults(part, card, lathe, shop)
        faults += [words for step in card.steps for words in _step_faults(card, step, shop)]
        faults += _parting_faults(card)
    stock = (*shop.rack, *shop.obtainable) if part.blank_from == "tube" else ()
    tubes = tuple(bar.width for bar in stock if bar.section == "tube")
    faults += _missing(part.shape, cards, tubes)
    faults += _untrue(part, lathe)
    return tuple(faults)


def _made_before(card: Card, lathe: list[Card]) -> set[str]:
    return {step.feature for other in lathe if other.number < card.number for step in other.steps}


def _grip_faults(part: Part, card: Card, lathe: list[Card], shop: Shop) -> list[str]:
    assert isinstance(part.shape, TurnedShape)
    hold, where = card.hold, f"{part.name} card {card.number}"
    found = []
    jaws = shop.jaw_set(hold.jaws)
    special = any(
        word in hold.device for word in ("sleeve", "arbor", "stub", "between centres", "expanding mandrel")
    )
    if not special and jaws is None:
        found.append(f"{where}: no jaws called {hold.jaws!r} in the shop")
    elif not special and jaws is not None:
        depths = [depth for low, high, depth in jaws.ranges if low - 1e-6 <= hold.dia <= high + 1e-6]
        if not depths:
            found.append(f"{where}: {hold.dia:g} mm is outside the ranges of {jaws.name}")
        elif hold.length > max(depths) + 1e-6:
            found.append(f"{where}: grips {hold.length:g} mm, {jaws.name} are {max(depths):g} deep there")
    if hold.surface == "blank":
        if _turned_before(part.shape, card, lathe):
            found.append(f"{where}: grips the blank after it has been cut")
        return found
    gripped = next((f for f in part.shape.outside if f.name == hold.surface), None)
    bores = {bore.name for bore in part.shape.bores}
    before = _made_before(card, lathe)
    if gripped is None and hold.surface not in bores:
        found.append(f"{where}: grips {hold.surface!r}, which is no surface of the part")
    if isinstance(gripped, Cylinder):
        strips = gripped.knurl is not None and "copper strips" in hold.device
        if (gripped.thread or gripped.knurl) and not special and not strips:
            found.append(
                f"{where}: bare jaws on the {'thread' if gripped.thread else 'knurl'} {gripped.name}"
            )
        if abs(hold.dia - gripped.dia.target) > 0.05 and not gripped.thread and not strips:
            found.append(f"{where}: grips {gripped.name} at {hold.dia:g}, it is {gripped.dia.target:g}")
        turned_at_all = any(step.feature == gripped.name for other in lathe for step in other.steps)
        if (
            turned_at_all
            and gripped.name not in before
            and any(s.tool_kind == "knife" and s.big_kind == "DIA mm" for s in _steps_on(lathe, gripped.name))
        ):
            found.append(f"{where}: grips {gripped.name} before it is turned")
    return found


def _turned_before(shape: TurnedShape, card: Card, lathe: list[Card]) -> bool:
    """Whether the blank's outside was cut where it is gripped: both ends may be faced and centred first."""
    if card.number == 1:
        return False
    before = _made_before(card, lathe)
    if card.hold.drive is None:
        return any(land.name in before for land in shape.outside)
    low, high = card.hold.drive.end, card.hold.drive.front
    length = shape.length.value
    for land in shape.outside:
        near, far = (
            (-land.start, -land.end) if card.free_end == "A" else (land.end - length, land.start - length)
        )
        if land.name in before and far < high - 1e-6 and near > low + 1e-6:
            return True
    return False


def _steps_on(lathe: list[Card], feature: str) -> list[Step]:
    return [step for card in lathe for step in card.steps if step.feature == feature]


def _step_faults(card: Card, step: Step, shop: Shop) -> list[str]:
    where = f"{card.part} card {card.number} step {step.number}"
    found = []
    if step.tool_kind not in BY_HAND and step.speed > 0 and step.speed not in shop.lathe.speeds:
        found.append(f"{where}: {step.speed:g} rev/min is not on the machine's plate")
    if step.tool_letter and step.tool_letter not in {tool.letter for tool in shop.tools}:
        found.append(f"{where}: no tool {step.tool_letter} in the drawer")
    owned = {
        "drill": shop.drills,
        "reamer": tuple(one.size for one in shop.reamers),
        "centre drill": shop.centre_drills,
        "countersink": shop.countersinks,
    }.get(step.tool_kind)
    if owned is not None and not any(abs(step.tool_size - size) < 1e-6 for size in owned):
        found.append(f"{where}: no {step.tool_kind} {step.tool_size:g} in the drawer")
    if step.tool_kind == "tap" and step.tool.removeprefix("tap ") not in shop.taps:
        found.append(f"{where}: no {step.tool} in the drawer")
    if step.tool_kind == "die" and step.tool.removeprefix("die ") not in shop.dies:
        found.append(f"{where}: no {step.tool} in the drawer")
    return found


def _parting_faults(card: Card) -> list[str]:
    parted = [step.number for step in card.steps if step.tool_kind == "parting"]
    if parted and parted[0] != card.steps[-1].number:
        return [f"{card.part} card {card.number}: step {parted[0]} parts it off and steps follow"]
    return []


def _missing(shape: TurnedShape, cards: tuple[Card, ...], tubes: tuple[float, ...]) -> list[str]:
    steps = {step.feature for card in cards for step in card.steps}
    steps |= {  # holes alike, drilled one after the other by one step that names them all
        name
        for card in cards
        if card.machine == "mill"
        for step in card.steps
        for name in step.do.split(", ")
    }
    wanted = {"face A", "face B"}
    wanted |= {groove.name for groove in shape.grooves} | {bore.name for bore in shape.bores}
    wanted |= {recess.name for recess in shape.recesses} | {one.name for one in shape.face_grooves}
    wanted |= {one.name for one in shape.bore_grooves}
    wanted |= {hole.name for hole in shape.circle_holes} | {hole.name for hole in shape.cross_holes}
    held = {card.hold.surface for card in cards}
    wanted |= {f.name for f in shape.outside if f.name not in held}
    bought = {one.name for one in shape.bores if any(keeps_bore(one, tube) for tube in tubes)}
    return [
        f"nothing makes {name}" for name in sorted(wanted - steps - bought) if not _as_supplied(shape, name)
    ]


def _as_supplied(shape: TurnedShape, name: str) -> bool:
    feature = next((f for f in shape.outside if f.name == name), None)
    return isinstance(feature, Cylinder) and not feature.thread


def _untrue(part: Part, lathe: list[Card]) -> list[str]:
    found = []
    said = {(f.of, f.to): f for card in lathe for f in card.runout}
    cut_in = {step.feature: card.number for card in lathe for step in card.steps}
    for need in part.needs:
        if need.of in cut_in and cut_in.get(need.to) == cut_in[need.of]:
            continue
        forecast = said.get((need.of, need.to))
        if forecast is None:
            found.append(f"{need.of} to {need.to}: cut in different grips and nothing is said of its run-out")
        elif forecast.expected > need.within:
            found.append(f"{need.of} to {need.to}: {forecast.expected:g} expected, {need.within:g} allowed")
    return found
