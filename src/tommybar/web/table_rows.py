"""A table of a shop file rewritten row by row, so that comments and rows that stay are not touched."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from difflib import SequenceMatcher

import yaml

from tommybar.bench.splice import node_at
from tommybar.refusals import Refusal


def with_entries(text: str, table: str, old: Sequence[str], new: Sequence[str]) -> str | None:
    """The text with the entries of a table changed from ``old`` to ``new``, each as the inside of braces.

    Entries that are the same keep their lines to the letter, with what stands
    above and behind them; one that takes the place of another keeps its
    comments. None when the table is not written as one entry under another.

    Examples
    --------
    >>> text = "drills:  # drawer\\n  - {size: 3}  # sharp\\n  - {size: 4}\\nend: 1\\n"
    >>> print(with_entries(text, "drills", ["size: 3", "size: 4"], ["size: 3.1", "size: 4"]))
    drills:  # drawer
      - {size: 3.1}  # sharp
      - {size: 4}
    end: 1
    <BLANKLINE>
    """
    try:
        node = node_at(text, (table,))
    except Refusal:
        return None
    if not isinstance(node, yaml.SequenceNode) or node.flow_style or len(node.value) != len(old):
        return None
    chunks, start, end = _chunks(text, node)
    lead = " " * node.start_mark.column + "- "
    out: list[str] = []
    for what, a, b, c, d in SequenceMatcher(None, old, new, autojunk=False).get_opcodes():
        if what == "equal":
            out += chunks[a:b]
        else:
            both = min(b - a, d - c)
            out += [_in_place(chunks[a + n], node.value[a + n], text, new[c + n]) for n in range(both)]
            out += [f"{lead}{{{one}}}\n" for one in new[c + both : d]]
    return text[:start] + "".join(out) + text[end:]


def _chunks(text: str, node: yaml.SequenceNode) -> tuple[list[str], int, int]:
    """The lines of each entry, with the comment lines above it; where they begin and end in the text."""
    after = _line_end(text)
    ends = [after(_end(text, one)) for one in node.value]
    first = text.rfind("\n", 0, node.start_mark.index) + 1
    starts = [first, *ends[:-1]]
    chunks = [text[a:b] for a, b in zip(starts, ends, strict=True)]
    chunks[-1] += "" if chunks[-1].endswith("\n") else "\n"
    return chunks, first, ends[-1]


def _line_end(text: str) -> Callable[[int], int]:
    def after(at: int) -> int:
        found = text.find("\n", at)
        return len(text) if found < 0 else found + 1

    return after


def _end(text: str, node: yaml.Node) -> int:
    """Where an entry ends; the reader's own mark of a block lies past the comments after it."""
    if isinstance(node, yaml.MappingNode | yaml.SequenceNode) and not node.flow_style and node.value:
        last = node.value[-1]
        return _end(text, last[1] if isinstance(last, tuple) else last)
    at: int = node.end_mark.index
    while at > node.start_mark.index and text[at - 1] in " \n\t":
        at -= 1
    return at


def _in_place(chunk: str, node: yaml.Node, text: str, entry: str) -> str:
    """Another entry in the lines of an old one: what stands above it and behind its last line stays."""
    old = text[node.start_mark.index : _end(text, node)]
    at = chunk.index(old)
    return f"{chunk[:at]}{{{entry}}}{chunk[at + len(old) :]}"
