"""A YAML file as data with the place of every entry, or a refusal of all that is wrong with it.

YAML 1.2 core scalars only: ``no`` is a word, ``010`` is ten, ``12:30`` is
text. Keys given twice, anchors and aliases, tags of their own, keys without a
value and nesting deeper than 50 are refused, each with its line and column.
"""

from __future__ import annotations

import re
from collections.abc import Hashable, Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import yaml

from tommybar.refusals import Complaint, Refusal

DEEPEST = 50
LARGEST = 1_000_000  # characters; a file of a thousand parts has a tenth of that

Place = tuple[str | int, ...]


class _CoreLoader(getattr(yaml, "CSafeLoader", yaml.SafeLoader)):  # type: ignore[misc]
    """The safe loader with the scalar rules of YAML 1.2 core, true and false in small letters only."""

    yaml_implicit_resolvers: dict[str, Any] = {}  # noqa: RUF012  (the library's own attribute)


_SCALARS = (
    ("bool", "true|false", "tf"),
    ("null", "null|~|", ["n", "~", ""]),
    ("int", "[-+]?[0-9]+", "-+0123456789"),
    ("float", r"[-+]?(\.[0-9]+|[0-9]+(\.[0-9]*)?)([eE][-+]?[0-9]+)?", "-+.0123456789"),
)
for _tag, _form, _first in _SCALARS:
    _CoreLoader.add_implicit_resolver(f"tag:yaml.org,2002:{_tag}", re.compile(f"^(?:{_form})$"), list(_first))
_CoreLoader.add_constructor("tag:yaml.org,2002:float", lambda _, node: float(node.value))
_CoreLoader.add_constructor(
    "tag:yaml.org,2002:int",
    # so long a number is no figure; as a float it ends as "not finite", in our words
    lambda _, node: int(node.value) if len(node.value) < 300 else float(node.value),
)


@dataclass(frozen=True)
class Mark:
    """Where an entry stands: of its value, and of its key; 1 is the first line and column."""

    line: int
    column: int
    key_line: int
    key_column: int
    quoted: bool = False
    one_line: bool = True


@dataclass(frozen=True)
class YamlFile:
    """The data of a file, and where each of its entries stands."""

    data: Any
    places: dict[Place, Mark]
    path: str
    text: str = field(repr=False)

    def complaint(
        self,
        place: Place,
        what: str,
        remedy: str = "",
        *,
        offset: int = 0,
        at_key: bool = False,
        missing: str = "",
    ) -> Complaint:
        """A complaint about the entry at ``place``, or about the key ``missing`` in it.

        ``offset`` counts characters into the entry's text from 1. Where the
        file does not go so far, the complaint stands at the longest beginning.
        """
        place = self.known(place)
        mark = self.places[place]
        line, column = (mark.key_line, mark.key_column) if at_key else (mark.line, mark.column)
        if offset and mark.one_line and not at_key:
            column += offset - 1 + mark.quoted
        dotted = ".".join(str(step) for step in (*place, missing) if step != "")
        return Complaint(what, remedy, self.path, line, column, dotted)

    def known(self, place: Place) -> Place:
        """The longest beginning of ``place`` that the file has."""
        while place not in self.places:
            place = place[:-1]
        return place

    def complaints(self, place: Place, refusal: Refusal) -> Iterator[Complaint]:
        """The complaints of ``refusal`` about the text at ``place``, given their place in the file."""
        for one in refusal.complaints:
            if one.line:
                yield one
            else:
                yield self.complaint(place, one.what, one.remedy, offset=one.column)


def file_text(path: Path) -> str:
    """The text of a file, or a refusal in one line when it cannot be read."""
    try:
        text = path.read_text(encoding="utf-8")
    except FileNotFoundError:
        raise Refusal(f"There is no file {path}.", "Check the name, or make one with: tommybar new") from None
    except IsADirectoryError:
        raise Refusal(f"{path} is a folder, not a file.", "Name the file in it.") from None
    except UnicodeDecodeError as error:
        raise Refusal(f"{path} is not UTF-8 text (byte {error.start}).", "Save it as UTF-8.") from None
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        raise Refusal(f"{path} cannot be read: {reason}.", "Check the name and its permissions.") from None
    if len(text) > LARGEST:
        raise Refusal(f"{path} has {len(text)} characters; at most {LARGEST} are read.", "Divide the file.")
    return text


def read_yaml(path: str | Path) -> YamlFile:
    """The file as data with places; raises :class:`Refusal` with every fault of its form."""
    return yaml_from_text(file_text(Path(path)), str(path))


def yaml_from_text(text: str, path: str = "") -> YamlFile:
    """Like :func:`read_yaml`, from text that is already in hand.

    >>> yaml_from_text("lathe: {speeds: [150, no]}").data
    {'lathe': {'speeds': [150, 'no']}}
    """
    try:
        _refuse_form(text, path)
        loader = _CoreLoader(text)
        root = loader.get_single_node()
        reader = _Reader(loader, path)
        reader.walk(root, (), root)
        if reader.wrong:
            raise Refusal(reader.wrong)
        return YamlFile(loader.construct_document(root), reader.places, path, text)
    except yaml.MarkedYAMLError as error:
        mark = error.problem_mark or error.context_mark
        line, column = (mark.line + 1, mark.column + 1) if mark else (1, 1)
        what = f"This is not YAML: {error.problem or error.context}."
        raise Refusal([Complaint(what, "Check indents, colons and brackets.", path, line, column)]) from None
    except yaml.YAMLError as error:
        what = f"This is not YAML: {' '.join(str(error).split())}."
        raise Refusal([Complaint(what, "Take out the odd character.", path, 1, 1)]) from None


def _refuse_form(text: str, path: str) -> None:
    """Refuse, from the stream of events, what must not even be built: depth, aliases, tags."""
    depth = documents = 0
    wrong: list[Complaint] = []

    def add(event: Any, what: str, remedy: str) -> None:
        mark = event.start_mark
        wrong.append(Complaint(what, remedy, path, mark.line + 1, mark.column + 1))

    events: Iterator[Any] = iter(yaml.parse(text, Loader=_CoreLoader))
    for event in events:
        if isinstance(event, yaml.DocumentStartEvent):
            documents += 1
            if documents == 2:
                add(event, "A second document begins here; a file holds one.", 'Take out the line "---".')
        elif isinstance(event, yaml.AliasEvent):
            add(event, f"The alias *{event.anchor} is not read.", "Write the entry out, or name a size.")
        elif isinstance(event, yaml.CollectionEndEvent):
            depth -= 1
        elif isinstance(event, yaml.NodeEvent):
            if event.anchor:
                add(event, f"The anchor &{event.anchor} is not read.", "Write the entry out, or name a size.")
            tag = getattr(event, "tag", None)
            if tag not in (None, "!"):
                add(event, f"The tag {tag} is not read.", "Take it out.")
            if isinstance(event, yaml.CollectionStartEvent):
                depth += 1
                if depth > DEEPEST:
                    add(event, f"Entries are nested {depth} deep; at most {DEEPEST}.", "Nest less deeply.")
                    break
    if not wrong and not documents:
        wrong.append(Complaint("The file is empty.", "Make one with: tommybar new", path, 1, 1))
    if wrong:
        raise Refusal(wrong)


class _Reader:
    """Walks the node tree once: places, and every fault of form."""

    def __init__(self, loader: Any, path: str) -> None:
        self.loader, self.path = loader, path
        self.places: dict[Place, Mark] = {}
        self.wrong: list[Complaint] = []

    def complain(self, node: Any, place: Place, what: str, remedy: str) -> None:
        mark = node.start_mark
        dotted = ".".join(str(step) for step in place)
        self.wrong.append(Complaint(what, remedy, self.path, mark.line + 1, mark.column + 1, dotted))

    def walk(self, node: Any, place: Place, key: Any) -> None:
        start, end = node.start_mark, node.end_mark
        quoted = getattr(node, "style", None) in ("'", '"')
        self.places[place] = Mark(
            start.line + 1,
            start.column + 1,
            key.start_mark.line + 1,
            key.start_mark.column + 1,
            quoted,
            start.line == end.line,
        )
        if isinstance(node, yaml.MappingNode):
            self._walk_mapping(node, place)
        elif isinstance(node, yaml.SequenceNode):
            for index, item in enumerate(node.value):
                self.walk(item, (*place, index), item)
        elif node.tag == "tag:yaml.org,2002:null":
            what = "The key has no value." if place else "The file is empty."
            self.complain(key, place, what, "Give one, or take the key out.")

    def _walk_mapping(self, node: Any, place: Place) -> None:
        seen: dict[Hashable, int] = {}
        for key, value in node.value:
            if not isinstance(key, yaml.ScalarNode) or key.tag != "tag:yaml.org,2002:str":
                self.complain(key, place, "A key must be a word.", "Put it in quotes if it is meant so.")
                continue
            name = key.value
            if name in seen:
                what = f'The key "{name}" is given twice, first in line {seen[name]}.'
                self.complain(key, (*place, name), what, "Keep one of the two.")
                continue
            seen[name] = key.start_mark.line + 1
            self.walk(value, (*place, name), key)
