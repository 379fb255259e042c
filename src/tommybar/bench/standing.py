"""What the entries of a journal come to: ticks, sizes, pauses, and where two devices disagree.

The answer does not depend on the order in which entries came in: each
device's entries are put in the order of its own count, and the devices are
merged by their clocks. A device's clock that was set back does not turn its
own order round.
"""

from __future__ import annotations

import heapq
import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from tommybar.bench.entries import Entry, new_entry

SAME = 1e-6  # readings nearer to each other than this are the same [mm]


@dataclass(frozen=True)
class Conflict:
    """Two devices that say different things of the same matter; shown until a person settles it."""

    kind: str  # "size" or "step"
    key: str
    entries: tuple[Entry, ...]  # the last word of each device, in order
    words: str


@dataclass(frozen=True)
class Standing:
    """The state of a build after all of its entries; the last word on each matter."""

    ordered: tuple[Entry, ...]  # that stand, in order
    ticks: Mapping[str, Entry]  # tick or skip, by step or card
    sizes: Mapping[str, Entry]  # the last reading, by size
    readings: tuple[Entry, ...]  # every reading that stands
    pauses: Mapping[str, Entry]  # pause or resume, by part
    notes: tuple[Entry, ...]
    initials: tuple[Entry, ...]
    printed: Mapping[str, Entry]  # the last printing, by card
    changes: tuple[Entry, ...]
    undone: Mapping[str, Entry]  # the undo that took an entry out, by the id of that entry
    conflicts: tuple[Conflict, ...]


def in_order(entries: Iterable[Entry]) -> tuple[Entry, ...]:
    """Entries in one order, whatever order they came in; doubles once."""
    queues: dict[str, list[Entry]] = {}
    for entry in {one.id: one for one in entries}.values():
        queues.setdefault(entry.device, []).append(entry)
    merged = []
    for device, queue in queues.items():
        clock = ""
        marked: list[tuple[str, str, int, Entry]] = []
        for entry in sorted(queue, key=lambda one: (one.number, one.at, one.id)):
            clock = max(clock, entry.at)
            marked.append((clock, device, len(marked), entry))
        merged.append(marked)
    return tuple(one[3] for one in heapq.merge(*merged, key=lambda one: one[:3]))


def undone_by(entries: Iterable[Entry]) -> dict[str, Entry]:
    """The entries that are taken out, by their ids, with the undo that did it. An undo can be undone."""
    known = {one.id: one for one in entries}
    undos: dict[str, list[Entry]] = {}
    for one in sorted(known.values(), key=lambda one: one.id):
        if one.kind == "undo" and one.key in known:
            undos.setdefault(one.key, []).append(one)
    stands: dict[str, bool] = {}
    found: dict[str, Entry] = {}
    for start in sorted(known):
        todo = [start]
        while todo:
            name = todo[-1]
            if name in stands:
                todo.pop()
                continue
            waiting = [one.id for one in undos.get(name, ()) if one.id not in stands and one.id not in todo]
            if waiting:
                todo += waiting
                continue
            by = [one for one in undos.get(name, ()) if stands.get(one.id, False)]
            stands[name] = not by
            if by:
                found[name] = by[0]
            todo.pop()
    return found


def standing(entries: Iterable[Entry]) -> Standing:
    """What the entries come to."""
    every = in_order(entries)
    undone = undone_by(every)
    stand = tuple(one for one in every if one.id not in undone and one.kind != "undo")
    readings = tuple(one for one in stand if one.kind == "size")
    return Standing(
        stand,
        _last(stand, ("tick", "skip")),
        {one.key: one for one in readings},
        readings,
        _last(stand, ("pause", "resume")),
        tuple(one for one in stand if one.kind == "note"),
        tuple(one for one in stand if one.kind == "initials"),
        {card: one for one in stand if one.kind == "printed" for card in one.said["cards"]},
        tuple(one for one in stand if one.kind == "change"),
        undone,
        _conflicts(stand),
    )


def _last(entries: Iterable[Entry], kinds: tuple[str, ...]) -> dict[str, Entry]:
    return {one.key: one for one in entries if one.kind in kinds}


def conflicts_of(entries: Iterable[Entry]) -> tuple[Conflict, ...]:
    """Where two devices disagree and nobody has settled it."""
    return standing(entries).conflicts


def _conflicts(stand: tuple[Entry, ...]) -> tuple[Conflict, ...]:
    found = []
    for kinds, what in ((("size",), "size"), (("tick", "skip"), "step")):
        matters: dict[tuple[str, float], list[Entry]] = {}
        for one in stand:
            if one.kind in kinds:
                matters.setdefault((one.key, one.said.get("copy", 0.0)), []).append(one)
        for (key, copy), entries in matters.items():
            last = _last_words(entries)
            if len(last) > 1 and _differ(last):
                found.append(Conflict(what, key, last, _words(key, copy, last)))
    return tuple(found)


def _last_words(entries: list[Entry]) -> tuple[Entry, ...]:
    """The last word of each device, without those that a later reading replaced knowingly."""
    replaced = {name for one in entries for name in one.said.get("instead_of", ())}
    return tuple({one.device: one for one in entries if one.id not in replaced}.values())


def _differ(last: tuple[Entry, ...]) -> bool:
    if last[0].kind == "size":
        values = [one.said["value"] for one in last]
        return bool(max(values) - min(values) > SAME)
    return len({one.kind for one in last}) > 1


def _words(key: str, copy: float, last: tuple[Entry, ...]) -> str:
    which = f" (piece {copy:g})" if copy else ""
    said = "; ".join(f"{device_words(one)}{f' ({one.by})' if one.by else ''}: {_one(one)}" for one in last)
    return f"{key}{which} is told differently: {said}."


def device_words(entry: Entry) -> str:
    """A device as people tell it from others: the name it has, or the beginning of its number."""
    is_numbered = re.fullmatch(r"[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}", entry.device)
    return f"device {entry.device[:4]}" if is_numbered else entry.device


def _one(entry: Entry) -> str:
    if entry.kind == "size":
        instrument = entry.said.get("instrument", "")
        return f"{entry.said['value']:.3f} mm" + (f", {instrument}" if instrument else "")
    return "done" if entry.kind == "tick" else f"skipped, {entry.said['reason']}"


def settled(
    conflict: Conflict, keep: str, *, device: str, number: int, by: str = "", at: str = ""
) -> tuple[Entry, ...]:
    """The undo entries that settle a conflict: the entry ``keep`` stands, the others are taken out."""
    others = [one for one in conflict.entries if one.id != keep]
    return tuple(
        new_entry(
            "undo",
            one.id,
            device=device,
            number=number + index,
            by=by,
            at=at,
            reason=f"{conflict.key}: the other one counts",
        )
        for index, one in enumerate(others)
    )
