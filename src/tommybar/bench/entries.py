"""What may stand in a journal: entries, each with an id made where it was written.

Because the id comes with the entry, an entry that is sent twice is stored
once. ``number`` counts the entries of one device, so that a queue that was
kept while the network was gone falls into its order again.
"""

from __future__ import annotations

import json
import math
import uuid
from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import UTC, datetime
from typing import Any

from tommybar.refusals import Refusal, nearest

LEAST, MOST = 1e-6, 100_000.0  # of a measured size [mm]; a run-out may be nought
LONGEST = 4000  # characters of a text
LONGEST_FILE = 1_000_000  # of a design or shop inside a change

Texts, Flag, Figure, Ids, Table = "text", "yes or no", "figure", "list of ids", "table"
SAYS: Mapping[str, Mapping[str, str]] = {
    "tick": {"copy": Figure},
    "skip": {"reason": Texts, "copy": Figure},
    "size": {"value": Figure, "instrument": Texts, "uncertainty": Figure, "copy": Figure, "instead_of": Ids},
    "pause": {"where": Texts, "mark": Texts, "zeros": Texts, "hot": Texts, "tool": Texts},
    "resume": {"as_left": Flag, "zeros_valid": Flag, "face_a": Texts},
    "undo": {"reason": Texts},
    "note": {"words": Texts},
    "initials": {"role": Texts, "who": Texts, "copy": Figure},
    "printed": {"plan_id": Texts, "cards": Table},
    "change": {
        "because": Texts,
        "design": Texts,
        "shop": Texts,
        "pins": Table,
        "scale": Figure,
        "stock": Texts,
        "forget": Ids,
    },
}
"""The kinds of entry, and what each may say."""

NEEDS: Mapping[str, tuple[str, ...]] = {
    "skip": ("reason",),
    "size": ("value",),
    "pause": ("where",),
    "note": ("words",),
    "initials": ("role", "who"),
    "printed": ("plan_id", "cards"),
    "change": ("because",),
}
KEYLESS = ("note", "printed", "change")
KEYS = ("id", "device", "number", "kind", "key", "at", "by", "said")


@dataclass(frozen=True)
class Entry:
    """One line of a journal. ``at`` is the device's own clock, in UTC; ``said`` depends on the kind."""

    id: str
    device: str
    number: int
    kind: str
    key: str  # step (part/card/step), card (part/card), size (part.size), part, or the id that is undone
    at: str
    by: str = ""
    said: Mapping[str, Any] = field(default_factory=dict)

    def __hash__(self) -> int:
        """By its id, which no other entry has."""
        return hash(self.id)

    def as_dict(self) -> dict[str, Any]:
        """Plain data for JSON."""
        return {**{key: getattr(self, key) for key in KEYS}, "said": dict(self.said)}


def new_entry(
    kind: str,
    key: str = "",
    *,
    device: str,
    number: int,
    by: str = "",
    at: str = "",
    id: str = "",
    **said: Any,
) -> Entry:
    """An entry made here and now, checked like one from outside.

    >>> new_entry("size", "wheel.bore", device="tablet", number=7, value=10.021).said["value"]
    10.021
    """
    return entry_from(
        {
            "id": id or str(uuid.uuid4()),
            "device": device,
            "number": number,
            "kind": kind,
            "key": key,
            "at": at or datetime.now(UTC).isoformat(timespec="milliseconds"),
            "by": by,
            "said": said,
        }
    )


def entry_from(data: Any) -> Entry:
    """An entry out of data that came from a page, a queue or an archive; refused when it is not one."""
    if not isinstance(data, Mapping):
        raise Refusal("The entry is no group of keys; an object is wanted.", "Send id, device, number, kind.")
    if unknown := sorted(set(map(str, data)) - set(KEYS)):
        raise Refusal(f'An entry has no key "{unknown[0][:40]}".', nearest(unknown[0], KEYS))
    kind = _text(data, "kind", 20)
    if kind not in SAYS:
        raise Refusal(
            f'"{kind}" is no kind of entry.', nearest(kind, SAYS) or f"Known are {', '.join(SAYS)}."
        )
    key = _text(data, "key", 200, empty=kind in KEYLESS)
    if kind == "size" and "." not in key:
        raise Refusal(f'"{key}" is no size; it must be part.size.', "Write for instance wheel.bore.")
    entry = Entry(
        _id(data.get("id")),
        _text(data, "device", 80),
        _number(data.get("number")),
        kind,
        _id(key) if kind == "undo" else key,
        _time(data.get("at")),
        _text(data, "by", 80, empty=True),
        _said(kind, data.get("said", {}), 0.0 if key.endswith(".runout") else LEAST),
    )
    if entry.kind == "undo" and entry.key == entry.id:
        raise Refusal("The entry undoes itself.", "Name the entry that is to be undone.")
    return entry


def _text(data: Mapping[str, Any], name: str, longest: int, empty: bool = False) -> str:
    given = data.get(name, "")
    if not isinstance(given, str):
        raise Refusal(f"The {name} of the entry is {given!r}; text is wanted.", "Send it as text.")
    if not given.strip() and not empty:
        raise Refusal(f"The {name} of the entry is missing.", "Send it along.")
    if len(given) > longest:
        raise Refusal(f"The {name} has {len(given)} characters; up to {longest} are kept.", "Shorten it.")
    _refuse_unkeepable(name, given)
    return given


def _refuse_unkeepable(name: str, given: str) -> None:
    """A NUL or half a character pair cannot be written to a file again."""
    if "\0" in given or any(0xD800 <= ord(letter) <= 0xDFFF for letter in given):
        raise Refusal(f"The {name} has a character that cannot be kept.", "Take the odd character out.")


def _id(given: Any) -> str:
    try:
        return str(uuid.UUID(given))
    except (ValueError, AttributeError, TypeError):
        shown = str(given)[:60]
        raise Refusal(
            f'"{shown}" is no id of an entry; a uuid is wanted.', "Make one for each entry."
        ) from None


def _number(given: Any) -> int:
    if isinstance(given, bool) or not isinstance(given, int) or not 0 <= given < 2**53:
        raise Refusal(
            f"The entry's number is {given!r}; it must be a whole number from 0.",
            "Count the entries of a device.",
        )
    return given


def _time(given: Any) -> str:
    try:
        time = datetime.fromisoformat(given)
        time = time.replace(tzinfo=UTC) if time.tzinfo is None else time.astimezone(UTC)
    except (TypeError, ValueError, OverflowError):
        shown = str(given)[:60]
        raise Refusal(
            f'"{shown}" is no time; 2026-05-02T18:03:11Z is one.', "Send the device's clock."
        ) from None
    return time.isoformat(timespec="milliseconds")


def _said(kind: str, given: Any, least: float) -> dict[str, Any]:
    if not isinstance(given, Mapping):
        raise Refusal(f"What the {kind} says is no group of keys.", "Send an object.")
    known = SAYS[kind]
    for name in given:
        if name not in known:
            offer = nearest(str(name), known) or f"It may say {', '.join(known) or 'nothing'}."
            raise Refusal(f'A {kind} does not say "{str(name)[:40]}".', offer)
    missing = [name for name in NEEDS.get(kind, ()) if given.get(name) in (None, "")]
    if missing:
        raise Refusal(f"The {kind} does not say its {missing[0]}.", f"Give the {missing[0]}.")
    found = {
        name: _checked(kind, name, known[name], value) for name, value in given.items() if value is not None
    }
    if kind == "size":
        for name, low in (("value", least), ("uncertainty", 0.0)):
            if not low <= found.get(name, 1.0) <= MOST:
                figure = f"{found[name]:g} mm"
                raise Refusal(
                    f"The {name} is {figure}; a measured size is above 0 and up to 100 m.", "Measure again."
                )
    return found


def _checked(kind: str, name: str, form: str, value: Any) -> Any:
    if form == Figure:
        return _figure(kind, name, value)
    if form == Flag and isinstance(value, bool):
        return value
    if form == Texts and isinstance(value, str):
        longest = LONGEST_FILE if kind == "change" and name in ("design", "shop") else LONGEST
        return _text({name: value}, name, longest, empty=True)
    if form == Ids and isinstance(value, list | tuple) and len(value) <= 1000:
        return [_text({name: one}, name, 200) for one in value]
    if form == Table and isinstance(value, Mapping) and len(value) <= 5000:
        return {str(one): _in_table(name, value[one]) for one in value}
    raise Refusal(f"The {name} of the {kind} is {str(value)[:60]!r}; it must be a {form}.", "Send it so.")


def _in_table(name: str, value: Any) -> Any:
    if isinstance(value, str):
        return _text({name: value}, name, LONGEST, empty=True)
    return _figure("change", name, value)


def _figure(kind: str, name: str, value: Any) -> float:
    if isinstance(value, bool) or not isinstance(value, int | float) or not math.isfinite(value):
        raise Refusal(
            f"The {name} of the {kind} is {str(value)[:40]}; a finite figure is wanted.", "Send it in mm."
        )
    return float(value)


def said_text(said: Mapping[str, Any]) -> str:
    """What an entry says as one line of JSON, keys in order, so that equal entries are equal texts."""
    return json.dumps(said, sort_keys=True, ensure_ascii=False, allow_nan=False)
