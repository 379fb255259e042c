"""Overview: what it is, whether its purposes are met, and what was found."""

from __future__ import annotations

from dataclasses import dataclass

from starlette.responses import Response

from tommybar.design.joints import Duty
from tommybar.design.model import Purpose
from tommybar.pack.units import Reader
from tommybar.planning import Plan
from tommybar.refusals import Refusal
from tommybar.web.ask import Ask, answer, go_to
from tommybar.web.files import Choices
from tommybar.web.pages.opened import Head, Told, head_of, name_of, plan_with_assembly, told
from tommybar.web.sizes_in_words import size_words

MOVING = frozenset({654, 655})  # numbers of findings about what strikes or comes too near
FUNCTION = frozenset(range(600, 700)) - frozenset(range(650, 660)) | MOVING  # about what the thing must do


@dataclass(frozen=True)
class Aim:
    """A purpose and whether it is met."""

    words: str
    verdict: str  # met, look, not met
    because: tuple[Told, ...]


@dataclass(frozen=True)
class Listed:
    """A part in the list."""

    name: str
    made_of: str
    size: str
    mass: str
    cards: str
    minutes: str


@dataclass(frozen=True)
class OverviewPage:
    """The first page of a design."""

    head: Head
    picture: str
    aims: tuple[Aim, ...]
    duties: tuple[str, ...]  # what it must do besides turning
    findings: tuple[Told, ...]
    parts: tuple[Listed, ...]
    bought: tuple[str, ...]
    fits: tuple[str, ...]
    cautions: tuple[str, ...]


def overview(ask: Ask) -> Response:
    """The page."""
    from tommybar.web.pictures import parts_picture

    plan = plan_with_assembly(ask)
    page = OverviewPage(
        head_of(ask, "", plan),
        parts_picture(plan.design, f"The parts of {plan.title} at one scale, turned ones in half-section"),
        tuple(_aim(one, plan) for one in plan.design.purposes),
        tuple(_duty(one, ask.reader) for one in plan.design.duties),
        told(plan.findings),
        tuple(
            Listed(
                one.part.name,
                f"{one.part.count} off, {one.part.material}" if one.part.count > 1 else one.part.material,
                size_words(one.part, ask.reader),
                f"{one.mass:.0f} g",
                f"{len(one.cards)} {'card' if len(one.cards) == 1 else 'cards'}",
                f"{sum(card.minutes for card in one.cards):.0f} min",
            )
            for one in plan.parts
            if one.part.shape is not None
        ),
        tuple(f"{one.count} × {one.bought}" for one in plan.design.parts if one.bought),
        tuple(
            f"{one.hole.replace('.', ' ')} on {one.shaft.replace('.', ' ')}: {one.zones}"
            + (f", {one.joint}" if one.joint else "")
            for one in plan.design.fits
        ),
        plan.design.cautions,
    )
    return answer(ask, "overview.html", page, "designs")


def _aim(purpose: Purpose, plan: Plan) -> Aim:
    words = f"{', '.join(purpose.turns)} turn at {purpose.speed:g} rev/min"
    if purpose.balance is not None:
        words += f", balanced to G {purpose.balance:g}"
    if purpose.hand_driven:
        words += ", driven by hand"
    about = [
        one for one in plan.findings if one.number in FUNCTION and (not one.part or one.part in purpose.turns)
    ]
    grave = {one.severity for one in about}
    verdict = "not met" if "stop" in grave else "look" if "caution" in grave else "met"
    return Aim(words, verdict, told(one for one in about if one.severity != "note"))


def _duty(duty: Duty, reader: Reader) -> str:
    units = {"load": "N", "force": "N", "run time": "s", "pressure": "bar", "sound": "Hz"}
    unit = units.get(duty.kind, reader.unit)
    figures = [one for one in (duty.figure, duty.most) if one is not None]
    told = [reader.length(one) if duty.kind == "stroke" else f"{one:g}" for one in figures]
    figure = f" {' to '.join(told)} {unit}" if told else f": {duty.words}"
    on = f" on {', '.join(duty.on)}" if duty.on else ""
    return f"{duty.kind}{figure}{on}".replace("_", " ")


def choose_shop(ask: Ask) -> Response:
    """Plan this design for another shop."""
    name, shop = name_of(ask), ask.typed("shop")
    known = ask.desk.plans.shop_names()
    if shop not in known:
        raise Refusal(f'There is no shop "{shop[:60]}".', f"There are {', '.join(known)}.")
    now = ask.desk.files.choices(name)
    ask.desk.files.choose(name, Choices(shop, now.scale, now.pins, now.stock))
    tab = ask.typed("tab")
    return go_to(f"/designs/{name}/{tab}" if tab.isalpha() else f"/designs/{name}")


def undo(ask: Ask) -> Response:
    """Put the design's earlier text back."""
    name = name_of(ask)
    done = ask.desk.files.undo("designs", name)
    tab = ask.typed("tab")
    return go_to(
        f"/designs/{name}/{tab}" if tab.isalpha() else f"/designs/{name}", "undone" if done else "none"
    )
