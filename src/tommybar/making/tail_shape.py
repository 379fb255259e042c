"""Which tail centre lets the tools by, and how far the barrel stands out so that the carriage clears it."""

from __future__ import annotations

import math

from tommybar.making.bench import Bench
from tommybar.making.cards import Step, Tail
from tommybar.making.lengths import Mm
from tommybar.making.practice import rule
from tommybar.shop.centre_equipment import POINT, TailCentre
from tommybar.shop.model import Shop, Tool

TRAILING = math.radians(
    7.0
)  # a knife's trailing edge rises from its corner by this; common practice, no source [rad]
ROOM = 0.3  # between tool and centre; common practice, no source [mm]
BESIDE = 1.0  # between a chamfering edge and centre or mandrel; common practice, no source [mm]
# What is taken where a shop file lists no tail centre: the end of a Morse 2 taper, about 18 mm
# (ISO 296, from memory), 24 mm out; common practice, no source.
USUAL = (TailCentre("dead", 18.0, 24.0, 18.0), TailCentre("half", 18.0, 24.0, 18.0))
RANK = {"running": 0, "dead": 1, "half": 2}


def point_in(mouth: float) -> float:
    """How far a 60-degree point stands in a hole of that mouth [mm]."""
    return mouth / 2 / math.tan(POINT)


def radius_at(centre: TailCentre, mouth: float, z: float) -> float:
    """Radius of a centre, on the tool's side, so far from the mouth of its hole [mm]."""
    if z < 0:
        return 0.0
    if z >= centre.long - point_in(mouth):
        return centre.body / 2
    if centre.kind == "half":
        return mouth / 2
    return min(centre.nose / 2, mouth / 2 + z * math.tan(POINT))


def beside_point(mouth: float, radius: float, mandrel: float = 0.0) -> float:
    """How far beyond the end a 45-degree edge may stand whose flank meets that radius at the end [mm].

    Its tip lies as much deeper as it lies beyond, and the point of a centre rises towards it; a mandrel runs straight.
    """
    if mandrel > 0:
        return max(0.0, radius - mandrel / 2 - BESIDE)
    return max(0.0, (radius - mouth / 2 - BESIDE) / (1 + math.tan(POINT)))


def lets_by(centre: TailCentre, mouth: float, steps: list[Step], shop: Shop, at: float = 0.0) -> bool:
    """Whether every move of these steps passes the centre, ``at`` being the mouth of its hole.

    A first look for the choice of a centre: the dry run is the judge.
    """
    tools = {tool.letter: tool for tool in shop.tools}
    for step in steps:
        tool = tools.get(step.tool_letter)
        for move in step.moves:
            for z, r in _lower_edge(tool, step, move.z, move.r):
                if z >= at and r < radius_at(centre, mouth, z - at) + ROOM:
                    return False
    return True


def _lower_edge(tool: Tool | None, step: Step, z: float, r: float) -> list[tuple[float, float]]:
    """Places along the edge of a tool that look at the axis."""
    if step.tool_kind == "knife" and tool is not None:
        return [(z + s, r + s * math.tan(TRAILING)) for s in (0.0, tool.shank / 2, tool.shank)]
    return [(z, r)]


def tail_of(bench: Bench, mouth: float, steps: list[Step], at: float = 0.0) -> Tail:
    """The tail centre for the steps of a card, with a finding where none that is owned lets the tools by."""
    owned = tuple(sorted(bench.shop.tail_centres or USUAL, key=lambda one: RANK[one.kind]))
    seats = [one for one in owned if one.nose > mouth + 0.2] or list(owned)
    found = next((one for one in seats if lets_by(one, mouth, steps, bench.shop, at)), seats[-1])
    if not bench.shop.tail_centres and found.kind == "half":
        bench.find(
            480,
            "caution",
            "The tool only gets to the free end past a half centre; the shop file lists no tail centre.",
            feature=bench.option.surface,
            figure=f"mouth {mouth:g} mm, point up to {found.nose:g} mm",
            bound="no tail_centres in the shop file",
            remedy="Grind a half centre from a dead one, or write the centres that there are into the shop file.",
        )
    high = bench.shop.lathe.centre_height
    beyond = found.long - point_in(mouth) + at  # from the finished face to the barrel or the body
    out = max(rule("tailstock", "least_out"), rule("tailstock", "carriage") * high - beyond)
    travel = bench.shop.lathe.tailstock.travel
    if travel > 0 and out > travel + 1e-6:
        bench.find(
            481,
            "caution",
            f"The barrel must stand out {out:.0f} mm so that the carriage gets to the free end beside the tailstock.",
            feature=bench.option.surface,
            figure=f"{out:.1f} mm",
            bound=f"{travel:g} mm, travel of the barrel",
            remedy="Set the top slide over to the right of the carriage, or take a longer centre; try it by hand first.",
        )
    return Tail(
        found.kind,
        mouth,
        found.nose,
        found.long,
        found.body,
        round(rule("tailstock", "barrel") * high, 2),
        round(out, 1),
        round(rule("tailstock", "casting") * high, 2),
        at,
    )


def tail_words(tail: Tail) -> tuple[str, ...]:
    """What the card says of the centre and of the barrel."""
    kinds = {
        "running": "Running centre",
        "dead": "Dead centre, greased",
        "half": "Half centre, greased, its flat towards the tool",
    }
    return (
        f"{kinds[tail.kind]}, in the mouth of {Mm(tail.mouth):.2f}; no play, no push.",
        f"Barrel {Mm(tail.out):.0f} out and clamped, so that the carriage stays clear of the tailstock; carriage stop set there.",
    )
