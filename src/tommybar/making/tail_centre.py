"""Slender work carried by the tailstock centre, where the drawing has a centre hole in the free face."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from tommybar.design.model import Part
from tommybar.facts.drills import centre_drill, point_length
from tommybar.findings import Finding
from tommybar.making.bench import Bench
from tommybar.making.cards import Step, Tail
from tommybar.making.grips import Lengths, Option, slenderness
from tommybar.making.jobs import largest, span_in_card
from tommybar.making.lengths import Mm
from tommybar.making.practice import rule
from tommybar.making.steadies import steady_for
from tommybar.making.tail_shape import tail_of, tail_words
from tommybar.shapes.features import Face, TurnedShape
from tommybar.shop.centre_equipment import Steady
from tommybar.shop.model import Shop

COST = 25.0  # of the search, for a centre that is brought up and a carriage that must stop before it
STEADIED = ", travelling steady"  # said of a grip whose work one carries beside the tool
AWAY = frozenset({"parting", "die"})  # steps for which the tailstock is drawn back
CENTRE = "tailstock centre"  # the tool of the step by which it comes to the work
SHORT = 1.5  # stick-out over diameter while the face is cut and centred; common practice, no source


def centre_mouth(shape: TurnedShape, free: Face, shop: Shop) -> float:
    """Mouth of the centre hole that the drawing has in a face and the drawer makes; 0 where there is none [mm]."""
    if any(bore.through or bore.face == free for bore in shape.bores):
        return 0.0
    for hole in shape.centres:
        if (
            hole.face == free
            and hole.form == "A"
            and any(abs(d - hole.pilot) < 1e-6 for d in shop.centre_drills)
        ):
            return centre_drill(f"A {hole.pilot:g}").mouth or 0.0
    return 0.0


@dataclass(frozen=True)
class Carrier:
    """What carries a slender free end: the mouth of its centre hole [mm], 0 for none, and the shop's steadies."""

    mouth: float = 0.0
    shop: Shop | None = None

    def carried(self, out: Lengths) -> tuple[float, Steady | None]:
        """The mouth by which a centre carries what stands out, 0 where it does not, and the steady it wants besides.

        Up to so many diameters no steady is asked for, beyond that one that
        travels with the tool and closes on every diameter that is turned.
        """
        times = slenderness(out)
        if self.mouth <= 0:
            return 0.0, None
        if times <= rule("grip", "overhang_centred") + 1e-6:
            return self.mouth, None
        found = {self._steady(dia) for _, dia, _ in out}
        (one,) = found if len(found) == 1 else (None,)
        if one is None or times > rule("grip", "overhang_steady") + 1e-6:
            return 0.0, None
        return self.mouth, one

    def refused(self, out: Lengths, slim: str) -> str:
        """Why it does not carry what stands out, where there is a centre hole; else what was to be said without one."""
        if self.mouth <= 0:
            return slim
        most = rule("grip", "overhang_centred")
        return slim.rpartition(": ")[0] + (
            f": {slenderness(out):.1f} diameters, {most:g} at most with a centre, "
            f"{rule('grip', 'overhang_steady'):g} with a travelling steady beside the tool"
        )

    def ring(self, dia: float) -> Steady | None:
        """The fixed steady of the shop that closes on that diameter, or None."""
        return steady_for(self.shop, "fixed", dia) if self.shop is not None else None

    def too_thick(self, shape: TurnedShape, free: Face, behind: float) -> bool:
        """Whether what lies behind a place of the card is thicker than the bore of the spindle [mm]."""
        thickest = max(
            (
                largest(land)
                for land in shape.outside
                if span_in_card(land.start, land.end, shape.length.value, free)[1] < behind - 1e-6
            ),
            default=0.0,
        )
        return self.shop is not None and thickest > self.shop.lathe.spindle_bore + 1e-6

    def _steady(self, dia: float) -> Steady | None:
        return steady_for(self.shop, "travelling", dia) if self.shop is not None else None


def held_short(option: Option) -> Option:
    """The same grip with the bar pushed back, for facing and centring."""
    return replace(option, jaw_front=max(option.jaw_front, -SHORT * option.dia))


def bring_up(bench: Bench, *, drawn_out: bool) -> None:
    """Set the centre to the free end; from here on it carries the work."""
    mouth = bench.option.centre
    out = bench.work.top - bench.option.jaw_front
    draw = (
        f"Face and centre it with {Mm(SHORT * bench.option.dia):.0f} sticking out; then draw it out to {Mm(out):.1f} and tighten."
        if drawn_out
        else f"{Mm(out):.1f} stand out of the jaws."
    )
    bench.add(
        Step(
            0,
            "Bring up the tailstock centre",
            bench.option.surface,
            CENTRE,
            "hand",
            0.0,
            0.0,
            0.0,
            f"{out:.1f}",
            "mm stick out",
            (draw,),
            minutes=3.0,
            why="It stands out further than any cut lets it without help; between chuck and centre it springs far less.",
            cautions=("Ease the centre now and then: warm work grows against it.",),
        )
    )
    bench.centred = mouth


def tail_brought_up(bench: Bench) -> Tail | None:
    """The centre that lets by the tools of this card, written into the step that brings it up; None where none is."""
    place = next((n for n, step in enumerate(bench.steps) if step.tool == CENTRE), None)
    if place is None:
        return None
    step = bench.steps[place]
    after = [one for one in bench.steps[place + 1 :] if one.tool_kind not in AWAY]
    at = rule("tailstock", "mandrel_free") if bench.option.mandrel > 0 else 0.0
    tail = tail_of(bench, bench.centred, after, at)
    bench.steps[place] = replace(step, dial=(*step.dial, *tail_words(tail)))
    return tail


def holes_that_stay(part: Part, shape: TurnedShape) -> list[Finding]:
    """A stop for each centre hole that the drawing does not want on the part: no card takes it away."""
    found = []
    for hole in shape.centres:
        if hole.keep == "must not":
            mouth = centre_drill(f"{hole.form} {hole.pilot:g}").mouth or 2.12 * hole.pilot
            deep = (mouth - hole.pilot) / 2 * math.sqrt(3) + hole.pilot + point_length(hole.pilot)
            found.append(
                Finding(
                    482,
                    "stop",
                    f"The centre hole {hole.name} must not stay on {part.name}; every card leaves it there.",
                    part=part.name,
                    feature=hole.name,
                    figure=f"{deep:.1f} mm deep, {mouth:g} mm wide",
                    bound="the drawing: it must not stay",
                    remedy=f"Let it stay; or draw {part.name} {math.ceil(deep + 1)} mm longer there, sawn and faced off last.",
                    source="ISO 6411 for what may stay; depth of form A by geometry",
                )
            )
    return found
