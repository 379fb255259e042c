"""What the machine page says, as plain data: every word of a plan that is needed at the machine."""

from __future__ import annotations

from typing import Any

from tommybar.dryrun.runs import CardRun
from tommybar.making.cards import Card, Measure, Pass, Step
from tommybar.making.lengths import spoken
from tommybar.pack.machine.marks import made_marks
from tommybar.pack.machine.sketch import grip_sketch
from tommybar.pack.machine.together import assembly_part, stops_together
from tommybar.pack.units import Reader
from tommybar.planning import PartPlan, Plan
from tommybar.shop.model import Shop


def page_contents(plan: Plan, reader: Reader) -> dict[str, Any]:
    """Everything the page shows, in the order in which the parts should be made and put together."""
    together = assembly_part(plan, reader)
    return {
        "plan": {
            "id": plan.plan_id,
            "title": plan.title,
            "revision": plan.revision,
            "scale": f"{plan.scale:g}",
            "shop": plan.shop.name,
            "version": plan.version,
            "of": plan.made.design or plan.title,
            "unit": reader.unit,
            "cautions": list(plan.design.cautions),
            "stops": [
                _finding_words(one.words, one.remedy) for one in (*plan.stops, *stops_together(plan, reader))
            ],
        },
        "parts": [
            *(_part(one, plan.shop, reader) for one in plan.parts if one.cards),
            *([together] if together else []),
        ],
        "instruments": [one.name for one in plan.shop.instruments],
        "made": made_marks(plan.made),
    }


def _finding_words(words: str, remedy: str) -> str:
    return f"{words} {remedy}".strip()


def _part(one: PartPlan, shop: Shop, reader: Reader) -> dict[str, Any]:
    runs = {run.card: run for run in one.run.cards} if one.run else {}
    return {
        "name": one.part.name,
        "count": one.part.count,
        "material": one.part.material,
        "changed": spoken(one.changed, reader.unit),
        "cards": [_card(card, runs.get(card.number), shop, reader) for card in one.cards],
    }


def _card(card: Card, run: CardRun | None, shop: Shop, reader: Reader) -> dict[str, Any]:
    hold = card.hold
    gripped = f"on {reader.length(hold.length, 1)} of {_spoken(hold.surface)}" if hold.length else ""
    return {
        "key": f"{card.part}/{card.number}",
        "number": card.number,
        "of": card.of,
        "machine": card.machine,
        "title": _spoken_line(card.title),
        "hold": f"{hold.device} {gripped}".strip(),
        "stop": hold.stop,
        "out": reader.length(hold.sticks_out, 1) if hold.sticks_out > 0 else "",
        "why": hold.why or card.why,
        "before": list(card.before_starting),
        "drawer": list(card.drawer),
        "after": card.after,
        "wrong": list(card.goes_wrong),
        "minutes": round(card.minutes),
        "gap": _gap(run, reader),
        "places": [
            {
                "n": place.n,
                "x": reader.length(place.x),
                "y": reader.length(place.y),
                "dial_x": place.dial_x,
                "dial_y": place.dial_y,
                "what": _spoken_line(place.what),
                "from": place.overshoot,
            }
            for place in card.places
        ],
        "chords": [_spoken_line(line) for line in card.chord_checks],
        "sketch": grip_sketch(card, run, shop, reader) if run and run.before else "",
        "steps": [_step(card, step, run, shop, reader) for step in card.steps],
    }


def _gap(run: CardRun | None, reader: Reader) -> str:
    if run is None or run.smallest_gap < 0:
        return ""
    return f"smallest gap {reader.length(run.smallest_gap, 1)}: {run.gap_where}"


def _step(card: Card, step: Step, run: CardRun | None, shop: Shop, reader: Reader) -> dict[str, Any]:
    big, kind = big_number(step.big, step.big_kind, reader)
    return {
        "key": step.key or f"{card.part}/{card.number}/{step.number}",
        "n": step.number,
        "do": _spoken_line(step.do),
        "tool": step.tool,
        "speed": f"{step.speed:g}" if step.speed else "",
        "cutting": f"{step.cutting_speed:.0f} m/min" if step.cutting_speed else "",
        "feed": _feed(step, reader),
        "big": big,
        "kind": kind,
        "dial": list(step.dial),
        "passes": [_pass(one, kind, reader) for one in step.passes],
        "minutes": round(step.minutes, 1),
        "why": step.why,
        "cautions": list(step.cautions),
        "measure": [_measure(one) for one in step.measure],
        "sketch": grip_sketch(card, run, shop, reader, step) if run and run.before else "",
    }


def big_number(big: str, kind: str, reader: Reader) -> tuple[str, str]:
    """The ruling number and its word in the reader's unit; text such as M6 stays.

    Examples
    --------
    >>> big_number("5.02", "DIA mm", Reader("in"))
    ('0.1976', 'DIA in')
    >>> big_number("M6", "", Reader("in"))
    ('M6', '')
    >>> big_number("0.5", "x 45 deg", Reader("in"))
    ('0.0197', 'in x 45 deg')
    """
    chamfer = kind.startswith("x ")
    if reader.unit == "mm" or not ("mm" in kind or chamfer):
        return big, kind
    try:
        value = float(big)
    except ValueError:
        return big, kind
    return f"{reader.of(value):.4f}", f"in {kind}" if chamfer else kind.replace("mm", "in")


def _feed(step: Step, reader: Reader) -> str:
    if not step.feed:
        return "by hand"
    unit = f"{reader.unit} a turn"
    return (
        f"{reader.of(step.feed):.4f} {unit}"
        if reader.unit == "in"
        else f"{reader.length(step.feed, 3)} {unit}"
    )


def _pass(one: Pass, kind: str, reader: Reader) -> dict[str, Any]:
    decimals = 4 if reader.unit == "in" else 2
    return {"to": f"{reader.of(one.to):.{decimals}f}", "dial": one.dial, "last": one.last}


def _measure(one: Measure) -> dict[str, Any]:
    """A hold point's size [mm]; the page turns it to the unit shown."""
    dim = one.dim
    return {
        "size": one.size,
        "label": _spoken(one.size.partition(".")[2] or one.size),
        "target": dim.target,
        "low": dim.smallest,
        "high": dim.largest,
        "zone": dim.zone if dim.zone[:1].isalpha() else "",
        "because": dim.because,
        "with": one.instrument,
        "gives": [_spoken(name.replace(".", " ")) for name in one.gives_to],
    }


def _spoken(name: str) -> str:
    return name.replace("_", " ").replace(".", " ")


def _spoken_line(line: str) -> str:
    """A line with the names of features as one says them."""
    return line.replace("_", " ")
