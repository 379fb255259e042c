"""What the shop's tools really do, from what was measured; offered as a change to the shop file."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from statistics import median
from typing import Any, Literal

from tommybar.bench.inputs import shop_of
from tommybar.bench.made_file import counting
from tommybar.bench.replan import plan_of
from tommybar.bench.splice import scalar, with_key, with_value
from tommybar.bench.standing import standing
from tommybar.bench.stored import Build
from tommybar.design.figures import figure
from tommybar.design.validation import unit_of
from tommybar.design.yaml_file import Place, YamlFile, yaml_from_text
from tommybar.making.cards import Card, Step
from tommybar.planning import Plan
from tommybar.refusals import Refusal

WORTH = 0.002  # a change smaller than this is not offered [mm]
FARTHEST = 0.1  # a reading farther from the tool's size than this was a slip, not the tool [mm]
RUNOUT = ".runout"  # a reading named part/card.runout is the TIR after gripping [mm]
DIAMETERS = ("reamer", "drill")

Kind = Literal["reamer", "drill", "chuck"]


@dataclass(frozen=True)
class Observation:
    """One reading that tells of a tool: what it cut over its size, or how far a chuck ran out [mm]."""

    kind: Kind
    tool: str  # "reamer 10", "drill 6.6", "outside jaws"
    size: float  # of the tool; of what was gripped for a chuck [mm]
    over: float  # measured less the tool's size; TIR for a chuck [mm]
    material: str
    of: str  # the size that was measured
    on: str
    build: str


@dataclass(frozen=True)
class Proposal:
    """A change to the shop file."""

    kind: Kind
    tool: str
    place: Place
    key: str  # "cuts" or "runout"
    before: float | None  # what the file says [mm]; None: nothing
    after: float  # [mm]
    count: int  # readings
    spread: float  # between the smallest and the largest of them [mm]
    words: str


def observed(build: Build, plan: Plan | None = None) -> tuple[Observation, ...]:
    """What the readings of a build tell of the tools, each reading of the journal that stands."""
    stand = standing(build.entries)
    plan = plan or plan_of(build)
    cards = {f"{card.part}/{card.number}": card for part in plan.parts for card in part.cards}
    made_by = {
        measure.size: (card, step)
        for card in cards.values()
        for step in card.steps
        for measure in step.measure
        if step.tool_kind in DIAMETERS
    }
    found = []
    for entry in counting(stand):
        if entry.kind != "size":
            continue
        value = entry.said["value"]
        if entry.key.endswith(RUNOUT):
            card = cards.get(entry.key[: -len(RUNOUT)])
            if card and card.hold.jaws:
                found.append(_of_chuck(card, value, entry.key, entry.at, build, plan))
        elif entry.key in made_by:
            step = made_by[entry.key][1]
            if step.tool_size and abs(value - step.tool_size) <= FARTHEST:
                found.append(_of_tool(step, value, entry.key, entry.at, build, plan))
    return tuple(found)


def _material(plan: Plan, size: str) -> str:
    return plan.part(size.replace("/", ".").split(".")[0]).part.material


def _of_chuck(card: Card, value: float, key: str, at: str, build: Build, plan: Plan) -> Observation:
    return Observation(
        "chuck", card.hold.jaws, card.hold.dia, value, _material(plan, key), key, at[:10], build.title
    )


def _of_tool(step: Step, value: float, key: str, at: str, build: Build, plan: Plan) -> Observation:
    kind: Kind = "reamer" if step.tool_kind == "reamer" else "drill"
    over = round(value - step.tool_size, 6)
    tool = f"{kind} {step.tool_size:g}"
    return Observation(kind, tool, step.tool_size, over, _material(plan, key), key, at[:10], build.title)


def proposals(seen: Iterable[Observation], shop_text: str) -> tuple[Proposal, ...]:
    """Changes to a shop file that the readings speak for: the middle reading of each reamer and chuck.

    Drills are logged but not proposed: a shop file says which there are, not
    what each cuts.
    """
    groups: dict[tuple[Kind, str], list[Observation]] = {}
    for one in seen:
        groups.setdefault((one.kind, one.tool), []).append(one)
    file = yaml_from_text(shop_text)
    found = []
    for (kind, _), group in groups.items():
        made = _reamer(file, group) if kind == "reamer" else _chuck(file, group) if kind == "chuck" else None
        if made is not None and (made.before is None or abs(made.before - made.after) >= WORTH):
            found.append(made)
    return tuple(found)


def _reamer(file: YamlFile, group: list[Observation]) -> Proposal | None:
    for index, given in enumerate(file.data.get("reamers", ())):
        deep = isinstance(given, dict)
        if abs(figure(given["size"] if deep else given, unit_of(file)) - group[0].size) > 1e-6:
            continue
        before = figure(given["cuts"], unit_of(file)) if deep and "cuts" in given else None
        after = round(group[0].size + median(one.over for one in group), 4)
        return _proposal(group, ("reamers", index), "cuts", before, after)
    return None


def _chuck(file: YamlFile, group: list[Observation]) -> Proposal | None:
    for index, given in enumerate(file.data.get("jaws", ())):
        if given.get("name") == group[0].tool:
            before = figure(given["runout"], unit_of(file)) if "runout" in given else None
            after = round(median(one.over for one in group), 4)
            return _proposal(group, ("jaws", index), "runout", before, after)
    return None


def _proposal(
    group: list[Observation], place: Place, key: str, before: float | None, after: float
) -> Proposal:
    spread = round(max(one.over for one in group) - min(one.over for one in group), 4)
    was = "nothing" if before is None else f"{before:.3f} mm"
    many = f"{len(group)} reading{'s' if len(group) > 1 else ''}"
    does = "cuts" if key == "cuts" else "runs out by"
    stuff = " and ".join(sorted({one.material for one in group}))
    words = f"{group[0].tool} {does} {after:.3f} mm in {stuff} ({many}, spread {spread:.3f}); the file says {was}."
    return Proposal(group[0].kind, group[0].tool, place, key, before, after, len(group), spread, words)


def apply_proposal(shop_text: str, proposal: Proposal) -> str:
    """The shop file with the change spliced in; comments stay. Raises :class:`Refusal` when it does not load."""
    file = yaml_from_text(shop_text)
    given: Any = file.data
    try:
        for step in proposal.place:
            given = given[step]
    except (KeyError, IndexError, TypeError):
        raise Refusal(
            f"The shop file has no {proposal.tool} any more.", "Work the proposals out again."
        ) from None
    figure_there = proposal.after / 25.4 if unit_of(file) == "in" else proposal.after
    if isinstance(given, dict):
        text = with_key(shop_text, proposal.place, proposal.key, round(figure_there, 5))
    else:
        line = f"{{size: {given}, {proposal.key}: {scalar(round(figure_there, 5))}}}"
        text = _in_place_of(shop_text, proposal.place, line)
    shop_of(text)
    return text


def _in_place_of(text: str, place: Place, line: str) -> str:
    """A bare value turned into a group of keys: spliced by way of a mark that no file has."""
    mark = "zzmarkzz"
    return with_value(text, place, mark).replace(mark, line, 1)
