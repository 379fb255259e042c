"""Putting a value into a file's text at its own place, so that comments and order stay as they are."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Any

import yaml

from tommybar.bench.splice import node_at
from tommybar.design.yaml_file import Place
from tommybar.refusals import Refusal

_PLAIN = re.compile(r"-?[A-Za-z0-9_.][A-Za-z0-9_./*+()=<> -]*")
_ODD = re.compile(r"(?i)true|false|null|~|yes|no|on|off")


@dataclass(frozen=True)
class Span:
    """Where a value stands in the text, and how its group is written."""

    start: int
    end: int
    flow: bool = False  # of a mapping or list: in { } or [ ]
    indent: int = 0  # of the entries of a block mapping
    last: int = 0  # end of the last entry
    keys: tuple[str, ...] = ()


def as_written(words: str) -> str:
    """Words as a YAML value, in quotes where they need them.

    Examples
    --------
    >>> as_written("wheel_dia / 2"), as_written("min(a, b)"), as_written("H7")
    ('wheel_dia / 2', "'min(a, b)'", 'H7')
    """
    words = " ".join(words.split())
    if _PLAIN.fullmatch(words) and not _ODD.fullmatch(words) and not words.endswith(" "):
        return words
    return "'" + words.replace("'", "''") + "'"


def value_text(text: str, place: Place) -> str:
    """A value as it stands in the file."""
    span = span_of(text, place)
    return text[span.start : span.end] if span else ""


def span_of(text: str, place: Place) -> Span | None:
    """Where the value at ``place`` stands, or None when the file has no such place."""
    node = _node_at(text, place)
    return None if node is None else _span(text, node)


def _node_at(text: str, place: Place) -> Any:
    """The node at a place, or None when the file does not go so far."""
    try:
        return node_at(text, place)
    except Refusal:
        return None


def _span(text: str, node: Any) -> Span:
    start, end = node.start_mark.index, _end_of(text, node)
    if not isinstance(node, yaml.MappingNode):
        return Span(start, end, bool(getattr(node, "flow_style", False)))
    last = _end_of(text, node.value[-1][1]) if node.value else start + 1
    indent = node.value[0][0].start_mark.column if node.value else 0
    return Span(start, end, bool(node.flow_style), indent, last, tuple(key.value for key, _ in node.value))


def _end_of(text: str, node: Any) -> int:
    """The end of what is written; the reader's own mark of a block lies past the comments after it."""
    if isinstance(node, yaml.CollectionNode) and not node.flow_style and node.value:
        last = node.value[-1]
        return _end_of(text, last[1] if isinstance(last, tuple) else last)
    end: int = node.end_mark.index
    while end > node.start_mark.index and text[end - 1] in " \n\t":
        end -= 1
    return end


def spliced(text: str, place: Place, written: str) -> str:
    """The text with another value at ``place``; ``written`` is put down as it is."""
    span = span_of(text, place)
    if span is None:
        dotted = ".".join(map(str, place))
        raise Refusal(f"The file has no entry {dotted} any more.", "Load the page again.")
    return text[: span.start] + written + text[span.end :]


def put(text: str, place: Place, written: str) -> str:
    """Like :func:`spliced`; a key that is not there yet is added to its group, and the group to the file."""
    if span_of(text, place) is not None:
        return spliced(text, place, written)
    key = place[-1]
    if len(place) == 1:
        return f"{text.rstrip()}\n{key}: {written}\n"
    group = span_of(text, place[:-1])
    if group is None:
        return put(text, place[:-1], f"{{{key}: {written}}}")
    if group.flow:
        comma = ", " if group.keys else ""
        return f"{text[: group.last]}{comma}{key}: {written}{text[group.last :]}"
    comment, after = _rest_of_line(text, group.last)
    return f"{text[: group.last]}{comment}\n{' ' * group.indent}{key}: {written}{after}"


def appended(text: str, place: Place, written: str) -> str:
    """The text with one more entry at the end of a list; the list is made when it is not there."""
    node = _node_at(text, place)
    if node is None:
        return put(text, place, f"[{written}]")
    if not isinstance(node, yaml.SequenceNode):
        raise Refusal(f"{'.'.join(map(str, place))} is no list.", "Edit the text itself.")
    if node.flow_style or not node.value:
        end = _end_of(text, node) - 1
        comma = ", " if node.value else ""
        return f"{text[:end].rstrip()}{comma}{written}{text[end:]}"
    comment, after = _rest_of_line(text, _end_of(text, node))
    return f"{text[: _end_of(text, node)]}{comment}\n{' ' * node.start_mark.column}- {written}{after}"


def _rest_of_line(text: str, at: int) -> tuple[str, str]:
    """What follows in the line (a comment), and what comes after it."""
    end = text.find("\n", at)
    end = len(text) if end < 0 else end
    return text[at:end], text[end:]


def without(text: str, place: Place) -> str:
    """The text without the key at ``place`` of a mapping in braces on one line."""
    group, span = span_of(text, place[:-1]), span_of(text, place)
    if group is None or span is None or not group.flow:
        return text
    start = text.rfind(str(place[-1]), group.start, span.start)
    end = span.end
    if text[:start].rstrip().endswith(","):
        start = len(text[:start].rstrip()) - 1
    else:
        following = re.match(r"\s*,\s*", text[end:])
        end += following.end() if following else 0
    return text[:start] + text[end:]
