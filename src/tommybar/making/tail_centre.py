"""Slender work carried by the tailstock centre, where the drawing has a centre hole in the free face."""

from __future__ import annotations

from dataclasses import replace

from tommybar.facts.drills import centre_drill
from tommybar.making.bench import Bench
from tommybar.making.cards import Step, Tail
from tommybar.making.grips import Lengths, Option, slenderness
from tommybar.making.lengths import Mm
from tommybar.making.practice import rule
from tommybar.making.tail_shape import tail_of, tail_words
from tommybar.shapes.features import Face, TurnedShape
from tommybar.shop.model import Shop

COST = 25.0  # of the search, for a centre that is brought up and a carriage that must stop before it
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


def carried(mouth: float, out: Lengths) -> bool:
    """Whether a centre carries what stands out: up to so many diameters no steady is asked for."""
    return mouth > 0 and slenderness(out) <= rule("grip", "overhang_centred") + 1e-6


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
