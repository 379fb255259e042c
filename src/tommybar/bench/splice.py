"""A value changed in the text of a file at its own place, so that comments and layout stay."""

from __future__ import annotations

import json
import re
from typing import Any

import yaml

from tommybar.design.yaml_file import Place, yaml_from_text
from tommybar.refusals import Refusal

_PLAIN = re.compile(r"[A-Za-z0-9+.(-][A-Za-z0-9 ./*+()_-]*")
_WORDS_OF_YAML = {"true", "false", "null"}


def node_at(text: str, place: Place) -> Any:
    """The node of the file that stands at a place; a refusal when the file does not go so far."""
    node: Any = yaml.compose(text, Loader=yaml.SafeLoader)
    for step in place:
        below = None
        if isinstance(node, yaml.MappingNode):
            below = next((value for key, value in node.value if key.value == step), None)
        elif isinstance(node, yaml.SequenceNode) and isinstance(step, int) and step < len(node.value):
            below = node.value[step]
        if below is None:
            dotted = ".".join(str(one) for one in place)
            raise Refusal(f"The file has nothing at {dotted}.", "Check the place against the file.")
        node = below
    return node


def value_at(text: str, place: Place) -> str:
    """The value that stands at a place, as text without its quotes."""
    node = node_at(text, place)
    if not isinstance(node, yaml.ScalarNode):
        raise Refusal(f"At {'.'.join(map(str, place))} stands no single value.", "Name a value inside it.")
    return str(node.value)


def scalar(value: str | float | bool, quoted: bool = False) -> str:
    """A value as it is written into a file; ``quoted``: text that must not be read as a figure.

    >>> scalar(12.0), scalar("mild steel"), scalar("yes: no"), scalar("1, 2"), scalar(True)
    ('12', 'mild steel', '"yes: no"', '"1, 2"', 'true')
    """
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, int | float):
        return f"{value:.6f}".rstrip("0").rstrip(".")
    if quoted:
        return json.dumps(value, ensure_ascii=False)
    plain = _PLAIN.fullmatch(value) and value not in _WORDS_OF_YAML and not value.endswith(" ")
    return value if plain and "- " not in value[:2] else json.dumps(value, ensure_ascii=False)


def with_value(text: str, place: Place, value: str | float | bool, quoted: bool = False) -> str:
    """The text with the single value at a place changed; everything else stays to the letter.

    >>> with_value("a: {b: 3.5}  # why", ("a", "b"), 4.0)
    'a: {b: 4}  # why'
    """
    node = node_at(text, place)
    if not isinstance(node, yaml.ScalarNode):
        raise Refusal(
            f"At {'.'.join(map(str, place))} stands no single value that could be changed.",
            "Name a value inside it.",
        )
    if node.style in ("|", ">"):
        raise Refusal(
            f"The text at {'.'.join(map(str, place))} runs over several lines.", "Change it in the file."
        )
    changed = text[: node.start_mark.index] + scalar(value, quoted) + text[node.end_mark.index :]
    yaml_from_text(changed)
    return changed


def with_key(text: str, place: Place, key: str, value: str | float | bool, quoted: bool = False) -> str:
    """The text with a key set in the group of keys at a place: changed where it stands, else added at its end.

    >>> with_key("a: [{b: 1}, 3]", ("a", 0), "c", 2)
    'a: [{b: 1, c: 2}, 3]'
    >>> print(with_key("a:" + chr(10) + "  b: 1  # one" + chr(10) + "d: 4", ("a",), "c", 2))
    a:
      b: 1  # one
      c: 2
    d: 4
    """
    node = node_at(text, place)
    if not isinstance(node, yaml.MappingNode):
        raise Refusal(f"At {'.'.join(map(str, place))} stands no group of keys.", "Name one.")
    if any(name.value == key for name, _ in node.value):
        return with_value(text, (*place, key), value, quoted)
    return with_lines(text, place, f"{key}: {scalar(value, quoted)}")


def with_lines(text: str, place: Place, entry: str) -> str:
    """The text with one more entry at the end of the group or list at a place; ``entry`` is YAML of one line.

    In a group ``entry`` is "key: value", in a list the item without its dash.
    """
    node = node_at(text, place)
    if not isinstance(node, yaml.CollectionNode) or not node.value:
        raise Refusal(
            f"At {'.'.join(map(str, place))} stands no list or group to add to.", "Write it in the file."
        )
    if node.flow_style:
        at = node.end_mark.index - 1
        changed = f"{text[:at].rstrip()}, {entry}{text[at:]}"
    else:
        dash = "- " if isinstance(node, yaml.SequenceNode) else ""
        last = node.value[-1]
        end = _end(last[1] if isinstance(last, tuple) else last)
        line_end = text.find("\n", end)
        line_end = len(text) if line_end < 0 else line_end
        new = f"\n{' ' * node.start_mark.column}{dash}{entry}"
        changed = text[:line_end] + new + text[line_end:]
    yaml_from_text(changed)
    return changed


def _end(node: Any) -> int:
    """The place in the text where the last letter of a node stands."""
    if isinstance(node, yaml.CollectionNode) and not node.flow_style and node.value:
        last = node.value[-1]
        return _end(last[1] if isinstance(last, tuple) else last)
    end = int(node.end_mark.index)
    return end - 1 if getattr(node, "style", None) in ("|", ">") else end


def without_item(text: str, place: Place) -> str:
    """The text without one item of a list; the last one cannot be taken, since an empty list says nothing.

    >>> without_item("a: [1, 2, 3]  # why", ("a", 1))
    'a: [1, 3]  # why'
    >>> without_item("a:" + chr(10) + "  - {b: 1}" + chr(10) + "  - {b: 2}  # two" + chr(10) + "c: 3", ("a", 1))
    'a:\\n  - {b: 1}\\nc: 3'
    """
    above, index = place[:-1], place[-1]
    node = node_at(text, above)
    if not isinstance(node, yaml.SequenceNode) or not isinstance(index, int) or len(node.value) < 2:
        raise Refusal(
            f"From {'.'.join(map(str, above))} nothing can be taken: it is no list of several.",
            "Change it in the file.",
        )
    node_at(text, place)
    starts = [int(one.start_mark.index) for one in node.value]
    if node.flow_style:
        if index + 1 < len(starts):
            changed = text[: starts[index]] + text[starts[index + 1] :]
        else:
            changed = text[: node.value[index - 1].end_mark.index] + text[node.value[index].end_mark.index :]
    else:
        begin = text.rfind("\n", 0, starts[index]) + 1
        after = text.find("\n", _end(node.value[index]))
        changed = text[:begin] + (text[after + 1 :] if after >= 0 else "")
    yaml_from_text(changed)
    return changed
