"""A build as a made file, and a made file as the beginning of a build."""

from __future__ import annotations

import uuid
from datetime import date
from pathlib import Path
from typing import Any

from tommybar.bench.entries import Entry, new_entry
from tommybar.bench.standing import Standing, standing
from tommybar.bench.stored import Build
from tommybar.design import design_from_text
from tommybar.made.loading import load_made
from tommybar.made.record import Made, Measured, Ticked, Whereabouts, piece_of
from tommybar.made.writing import entry_line
from tommybar.refusals import Refusal

FROM_FILE = "made file"  # the device of entries that came with a made file


def made_of(build: Build) -> Made:
    """What has really been made, as the plan wants it: the entries that stand, in order."""
    return made_from(standing(build.entries), _title(build))


def _title(build: Build) -> str:
    return design_from_text(build.design_text).title


def made_from(stand: Standing, title: str = "") -> Made:
    """The same from what stands. What a rescue told to forget (parts made again) is left out."""
    measured, ticks, places = [], [], []
    for one in counting(stand):
        day = one.at[:10]
        if one.kind == "size" and "/" not in one.key:  # a card's run-out tells of the chuck, not of the part
            with_what = one.said.get("instrument", "")
            measured.append(Measured(one.key, one.said["value"], with_what, day, one.by, _note(one)))
        elif one.kind in ("tick", "skip"):
            ticks.append(
                Ticked(
                    one.key,
                    one.kind == "tick",
                    day,
                    one.by,
                    one.said.get("reason", ""),
                    _note(one),
                    after=len(measured),
                )
            )
        elif one.kind == "pause":
            places.append(Whereabouts(one.key, _where(one)))
    return Made(title, tuple(measured), tuple(ticks), tuple(places))


def counting(stand: Standing) -> tuple[Entry, ...]:
    """Entries that stand and count: those of a part or size before it was told to be made again do not."""
    kept: list[Entry] = []
    for one in stand.ordered:
        if one.kind == "change" and (gone := set(one.said.get("forget", ()))):
            kept = [old for old in kept if not _is_of(old, gone)]
        kept.append(one)
    return tuple(kept)


def _is_of(entry: Entry, gone: set[str]) -> bool:
    if entry.kind not in ("size", "tick", "skip", "pause", "resume", "initials"):
        return False
    return bool({entry.key, entry.key.replace("/", ".").split(".")[0]} & gone)


def _where(entry: Entry) -> str:
    said = entry.said
    more = [
        f"{label} {said[name]}"
        for name, label in (
            ("mark", "mark at"),
            ("zeros", "zeros"),
            ("hot", "hot or curing:"),
            ("tool", "tool"),
        )
        if said.get(name)
    ]
    return ", ".join([said["where"], *more])


def made_text(build: Build) -> str:
    """The build as the text of a made file, which ``plan --made`` and a further build can go on from."""
    made = made_of(build)
    lines = [f"tommybar: 1\nof: {entry_line({'of': made.design})[5:-1]}\nunits: mm\nmade:"]
    for one in made.in_order():
        if isinstance(one, Measured):
            told: dict[str, Any] = {"size": one.size, "is": one.value, "with": one.instrument}
        else:
            kind = "step" if one.key.count("/") > 1 else "card"
            told = {kind: one.key, **({"done": True} if one.done else {"skipped": one.skipped})}
        lines.append(_line({**told, "note": one.note}, one.on, one.by))
    lines += [_line({"part": one.part, "where": one.where}) for one in made.whereabouts]
    return "\n".join(lines if len(lines) > 1 else [lines[0].replace("\nmade:", "")]) + "\n"


def _note(entry: Entry) -> str:
    """Which of several alike an entry is of, as a made file says it."""
    copy = entry.said.get("copy", 1)
    return f"piece {copy:g}" if copy > 1 else ""


def _line(entry: dict[str, Any], on: str = "", by: str = "") -> str:
    return f"  - {entry_line({**entry, 'on': on, 'by': by})}"


def entries_from_made(path: str | Path, title: str = "", build_id: str = "") -> tuple[Entry, ...]:
    """The entries of a made file. Their ids come from the build and what they say: the same twice."""
    made = load_made(path)
    if title and made.design and made.design != title:
        raise Refusal(
            f'{path} records a making of "{made.design}", not of "{title}".',
            "Name the record of this design.",
        )
    found: list[Entry] = []

    def add(kind: str, key: str, on: str, by: str, **said: Any) -> None:
        number = len(found) + 1
        told = f"{build_id}|{title}|{number}|{kind}|{key}|{on}|{by}|{sorted(said.items())}"
        name = str(uuid.uuid5(uuid.NAMESPACE_OID, told))
        found.append(
            new_entry(kind, key, device=FROM_FILE, number=number, by=by, at=_time_of(on), id=name, **said)
        )

    for one in made.in_order():
        if isinstance(one, Measured):
            more = {"value": one.value, "instrument": one.instrument, **_copy(one)}
            add("size", one.size, one.on, one.by, **more)
        elif one.done:
            add("tick", one.key, one.on, one.by, **_copy(one))
        else:
            add("skip", one.key, one.on, one.by, reason=one.skipped or "no reason given", **_copy(one))
    for place in made.whereabouts:
        add("pause", place.part, "", "", where=place.where)
    return tuple(found)


def _copy(one: Measured | Ticked) -> dict[str, float]:
    """Which of several alike a line of a made file is of, as an entry says it."""
    piece = piece_of(one.note)
    return {"copy": float(piece)} if piece > 1 else {}


def _time_of(on: str) -> str:
    """The beginning of a day; long ago when the file names none."""
    try:
        day = date.fromisoformat(on)
    except ValueError:
        day = date(1970, 1, 1)
    return f"{day.isoformat()}T00:00:00+00:00"
