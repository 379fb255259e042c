"""Short ways to route a turned shape, cut it on its half-section and look at its steps."""

from __future__ import annotations

from dataclasses import replace

from tommybar.design.model import Part
from tommybar.dryrun import PartRun, run_part
from tommybar.making.as_machined import as_drilled
from tommybar.making.cards import Step
from tommybar.making.lengths import spoken
from tommybar.making.parts import route_part
from tommybar.making.route_check import route_faults
from tommybar.making.turned import Making
from tommybar.shapes.features import Dim, Land, TurnedShape
from tommybar.shop.model import Shop


def shape(*lands: Land, **features: tuple[object, ...]) -> TurnedShape:
    """A part of those lands, as long as they are together."""
    return TurnedShape(Dim(lands[-1].end, "p.length"), lands, **features)


def routed(
    turned: TurnedShape, shop: Shop, material: str = "free-cutting brass", needs: tuple[object, ...] = ()
) -> tuple[Making, PartRun | None]:
    """The making of a shape with its words in mm, and its dry run where there are cards."""
    part = Part("p", "turned", material, 1, turned, needs)
    making = route_part(part, {}, shop)
    run = run_part(as_drilled(part, shop), making.blank, making.cards, shop) if making.cards else None
    return (
        replace(
            making, cards=spoken(making.cards, "mm"), findings=tuple(spoken(f, "mm") for f in making.findings)
        ),
        run,
    )


def clean(turned: TurnedShape, shop: Shop, material: str = "free-cutting brass") -> tuple[Making, PartRun]:
    """The same, held to: no stop, a route that replays, a dry run without a stop, and metal kept."""
    making, run = routed(turned, shop, material)
    assert [f for f in making.findings if f.severity == "stop"] == []
    assert run is not None
    assert [f.words for f in run.findings if f.severity == "stop"] == []
    assert route_faults(Part("p", "turned", material, 1, turned), making.cards, shop) == ()
    away = sum(card.separated_volume for card in run.cards)
    assert abs(run.removed_volume + away + run.left_volume - run.blank_volume) < 1e-6 * run.blank_volume
    return making, run


def steps(making: Making, feature: str) -> list[Step]:
    """Steps of all cards on a feature, in order."""
    return [step for card in making.cards for step in card.steps if step.feature == feature]


def travel(shop: Shop, top_slide: float) -> Shop:
    """The same shop with another travel of its top slide [mm]."""
    lathe = replace(shop.lathe, top_slide=replace(shop.lathe.top_slide, travel=top_slide))
    return replace(shop, lathe=lathe)
