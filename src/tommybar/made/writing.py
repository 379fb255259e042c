"""Entries added to a made file: nothing that stands in it is changed or lost.

The new entry is spliced in after the last one, so comments stay. The file is
written beside the old one and put in its place in one move; a lock keeps two
writers apart.
"""

from __future__ import annotations

import json
import os
import re
import tempfile
import time
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import yaml

from tommybar.design.yaml_file import file_text, yaml_from_text
from tommybar.made.loading import made_of
from tommybar.made.record import Made
from tommybar.refusals import OwnFault, Refusal

_PLAIN = re.compile(r"[A-Za-z][A-Za-z0-9 ./_-]*[A-Za-z0-9]|[A-Za-z]")
_WORDS_OF_YAML = {"true", "false", "null"}
PATIENCE = 5.0  # [s] to wait for another writer
STALE = 30.0  # [s] after which a lock was left by a writer that died


def write_measured(
    path: str | Path,
    design_id: str,
    size: str,
    value: float,
    *,
    instrument: str = "",
    on: str = "",
    by: str = "",
) -> Made:
    """Add a measured size [mm] to a made file, which is begun when it is not there yet.

    Gives the whole record as it now stands. Raises :class:`Refusal` when the
    file is of another design, is itself faulty, or cannot be written.
    """
    return append_entry(path, design_id, {"size": size, "is": value, "with": instrument, "on": on, "by": by})


def append_entry(path: str | Path, design_id: str, entry: Mapping[str, Any]) -> Made:
    """Add one entry; keys with an empty text are left out. Bare lengths are in mm."""
    place = Path(path)
    with _alone(place):
        text = file_text(place) if place.exists() else _begun(design_id)
        before = made_of(yaml_from_text(text, str(place)))
        if before.design and design_id and before.design != design_id:
            raise Refusal(
                f'{place} records a making of "{before.design}", not of "{design_id}".',
                "Give each making a file of its own.",
            )
        unit = "in" if re.search(r"^units:\s*in\b", text, re.MULTILINE) else "mm"
        longer = with_entry(text, entry_line(entry, unit))
        after = made_of(yaml_from_text(longer, str(place)))
        _nothing_lost(before, after)
        _put(place, longer)
        return after


def entry_line(entry: Mapping[str, Any], unit: str = "mm") -> str:
    """An entry as one line of YAML.

    >>> entry_line({"size": "wheel.bore", "is": 10.021, "with": "plug 0.01", "by": ""})
    '{size: wheel.bore, is: 10.021, with: plug 0.01}'
    """
    kept = {key: value for key, value in entry.items() if value != ""}
    return "{" + ", ".join(f"{key}: {_scalar(key, value, unit)}" for key, value in kept.items()) + "}"


def _scalar(key: str, value: Any, unit: str) -> str:
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, int | float):
        bare = repr(round(float(value), 6))
        return f"{bare} mm" if key == "is" and unit == "in" else bare
    words = str(value)
    if _PLAIN.fullmatch(words) and words not in _WORDS_OF_YAML:
        return words
    return json.dumps(words, ensure_ascii=True)


def with_entry(text: str, line: str) -> str:
    """The text of a made file with one more entry after its last one."""
    root = yaml.compose(text, Loader=yaml.SafeLoader)
    pairs = {key.value: value for key, value in root.value} if isinstance(root, yaml.MappingNode) else {}
    lines = text.split("\n")
    if "made" not in pairs:
        return text.rstrip("\n") + f"\nmade:\n  - {line}\n"
    entries = pairs["made"]
    if entries.flow_style or not entries.value:
        at = entries.end_mark.index - 1  # the closing bracket
        return text[:at].rstrip() + (", " if entries.value else "") + line + text[at:]
    indent = " " * (entries.start_mark.column)
    after = _last_line(entries) + 1
    return "\n".join([*lines[:after], f"{indent}- {line}", *lines[after:]])


def _last_line(node: yaml.Node) -> int:
    """The line in which the last word or bracket of a node stands; 0 is the first line."""
    if not isinstance(node, yaml.CollectionNode) or node.flow_style or not node.value:
        return int(node.end_mark.line) - (node.end_mark.column == 0)  # a block of text ends a line later
    last = node.value[-1]
    return _last_line(last[1] if isinstance(last, tuple) else last)


def _begun(design_id: str) -> str:
    of = f"of: {_scalar('of', design_id, 'mm')}\n" if design_id else ""
    return f"tommybar: 1\n{of}units: mm\n"


def _nothing_lost(before: Made, after: Made) -> None:
    for kept, now in (
        (before.measured, after.measured),
        (before.ticks, after.ticks),
        (before.whereabouts, after.whereabouts),
    ):
        if now[: len(kept)] != kept:
            raise OwnFault("An entry of the made file would have been changed; nothing was written.")
    counts = [len(one.measured) + len(one.ticks) + len(one.whereabouts) for one in (before, after)]
    if counts[1] != counts[0] + 1:
        raise OwnFault("The new entry did not go into the made file; nothing was written.")


def _put(place: Path, text: str) -> None:
    """Write beside the file, then take its place in one move."""
    try:
        mode = place.stat().st_mode & 0o777 if place.exists() else 0o644
        number, name = tempfile.mkstemp(dir=place.parent, prefix=f".{place.name}.", suffix=".new")
        try:
            with os.fdopen(number, "w", encoding="utf-8", newline="") as file:
                file.write(text)
                file.flush()
                os.fsync(file.fileno())
            os.chmod(name, mode)
            os.replace(name, place)
        except BaseException:
            Path(name).unlink(missing_ok=True)
            raise
    except OSError as error:
        raise Refusal(f"{place} cannot be written: {error.strerror}.", "Check the folder.") from None


@contextmanager
def _alone(place: Path) -> Iterator[None]:
    """Keep other writers of the same file away."""
    lock = place.parent / f".{place.name}.lock"
    end = time.monotonic() + PATIENCE
    while True:
        try:
            os.close(os.open(lock, os.O_CREAT | os.O_EXCL | os.O_WRONLY))
            break
        except FileExistsError:
            _clear_stale(lock)
            if time.monotonic() > end:
                raise Refusal(
                    f"Another writer holds {place}.", f"If there is none, take {lock} away."
                ) from None
            time.sleep(0.02)
        except OSError as error:
            raise Refusal(f"{place} cannot be written: {error.strerror}.", "Check the folder.") from None
    try:
        yield
    finally:
        lock.unlink(missing_ok=True)


def _clear_stale(lock: Path) -> None:
    try:
        if time.time() - lock.stat().st_mtime > STALE:
            lock.unlink(missing_ok=True)
    except FileNotFoundError:
        pass
