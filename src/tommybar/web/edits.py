"""Edits of a design's text: a figure, a named size and what it follows; the text as it would stand."""

from __future__ import annotations

from tommybar.design.written_sizes import CLASSES
from tommybar.design.yaml_file import Place, yaml_from_text
from tommybar.refusals import Refusal, nearest
from tommybar.web.splice import as_written, put, span_of, spliced, without

WORKED_OUT = "worked out"
FOLLOWS = (WORKED_OUT, *CLASSES)


def with_figure(text: str, place: Place, typed: str) -> str:
    """The text with a figure or expression at ``place``."""
    if not typed.strip():
        raise Refusal(
            "The field is empty; a figure or an expression is wanted.", "Write 12.5, or wheel_dia / 2."
        )
    return spliced(text, place, as_written(typed))


def with_size(text: str, name: str, typed: str, follows: str) -> str:
    """The text with another figure of a named size, and what it follows."""
    if not typed.strip():
        raise Refusal(
            "The field is empty; a figure or an expression is wanted.", "Write 12.5, or wheel_dia / 2."
        )
    if follows not in FOLLOWS:
        raise Refusal(f'A size does not follow "{follows[:40]}".', nearest(follows, FOLLOWS))
    written, place = as_written(typed), ("sizes", name)
    whole = yaml_from_text(text).data["sizes"]
    if name not in whole:
        raise Refusal(f'No size is named "{name[:60]}".', nearest(name, whole))
    entry = whole[name]
    if not isinstance(entry, dict):
        words = written if follows == WORKED_OUT else f"{{is: {written}, follows: {follows}}}"
        return spliced(text, place, words)
    text = spliced(text, (*place, "is"), written)
    if follows == WORKED_OUT:
        for key in ("follows", "drives", "between", "prefers"):
            text = without(text, (*place, key)) if span_of(text, (*place, key)) else text
        return text
    return put(text, (*place, "follows"), follows)


def size_entry(text: str, name: str) -> tuple[str, str, str]:
    """A named size as written: its figure, what it follows, and why."""
    entry = yaml_from_text(text).data["sizes"][name]
    if isinstance(entry, dict):
        return str(entry.get("is", "")), str(entry.get("follows", WORKED_OUT)), str(entry.get("because", ""))
    return str(entry), WORKED_OUT, ""
