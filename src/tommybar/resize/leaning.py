"""Which free sizes a part, a feature, a relation or a must-line leans on, read from the design's own text."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from functools import lru_cache
from typing import Any

from tommybar.design import Design
from tommybar.design.yaml_file import yaml_from_text

_WORD = re.compile(r"[A-Za-z_]\w*")
DIE = ("outside",)  # lists of a part in which a thread is cut with a die
WORDS_ONLY = ("name", "material", "note", "because", "finish")  # entries that never hold an expression


@lru_cache(maxsize=8)
def _read(text: str, path: str) -> Any:
    """What the file says; only looked at, never changed."""
    return yaml_from_text(text, path).data


class Leaning:
    """What leans on what. A superset is harmless: it only makes the search longer."""

    def __init__(self, design: Design) -> None:
        data = _read(design.file_text, str(design.path))
        self.free = frozenset(size.name for size in design.named if not size.expression)
        written = data.get("sizes", {})
        self._texts = {name: _is_text(entry) for name, entry in written.items()}
        self._known: dict[str, frozenset[str]] = {}
        self.parts: Mapping[str, Any] = data.get("parts", {})
        self.relations: list[Any] = data.get("relations", [])

    def of_name(self, name: str) -> frozenset[str]:
        """The free sizes that a size is worked out from; itself when it is free."""
        if name in self.free:
            return frozenset((name,))
        if name not in self._known:
            self._known[name] = frozenset()  # a size never leans on itself
            self._known[name] = self.of_text(self._texts.get(name, ""))
        return self._known[name]

    def of_text(self, text: str) -> frozenset[str]:
        """The free sizes behind the names in an expression."""
        found: set[str] = set()
        for word in _WORD.findall(text):
            if word in self._texts:
                found |= self.of_name(word)
        return frozenset(found)

    def of_entry(self, entry: Any) -> frozenset[str]:
        """The free sizes behind everything written in an entry."""
        return frozenset().union(*(self.of_text(text) for text in _texts_in(entry)))

    def of_part(self, name: str) -> frozenset[str]:
        """The free sizes that a part's figures lean on."""
        return self.of_entry(self.parts.get(name, {}))

    def of_outside(self, name: str) -> frozenset[str]:
        """The free sizes that the outside of a turned part leans on."""
        turned = self.parts.get(name, {}).get("turned", {})
        return self.of_entry([turned.get("outside", []), turned.get("length", "")])

    def of_relation(self, number: int) -> frozenset[str]:
        """The free sizes that a relation leans on: of the features of a fit or screw, of the parts of a loop."""
        entry = self.relations[number]
        found = self.of_entry(entry)
        for text in _texts_in(entry):
            for part, feature in re.findall(r"([A-Za-z]\w*)\.([A-Za-z]\w*)", text):
                written = self.feature(part, feature)
                found |= self.of_part(part) if "loop" in entry or written is None else self.of_entry(written)
        return found

    def of_place(self, place: str) -> frozenset[str]:
        """The free sizes behind a dotted place of the file."""
        steps = place.split(".")
        if steps[0] == "parts" and len(steps) > 1:
            return self.of_part(steps[1])
        if steps[0] == "relations" and len(steps) > 1:
            return self.of_relation(int(steps[1]))
        if steps[0] == "sizes" and len(steps) > 1:
            return self.of_name(steps[1])
        return self.free

    def feature(self, part: str, name: str) -> Any | None:
        """The written entry of part.feature; a hole of several written together is found by its common name."""
        plain = re.sub(r"_\d+$", "", name)
        for wanted in (name, plain):
            for _, entry in self._features(part):
                if entry.get("name") == wanted:
                    return entry
        return None

    def tools_for_thread(self, name: str) -> frozenset[str]:
        """ "tap", "die" or both: how the features cut a thread that bears this size's name."""
        found = set()
        for part in self.parts:
            for group, entry in self._features(part):
                if entry.get("thread") == name:
                    found.add("die" if group in DIE else "tap")
        return frozenset(found)

    def materials_of(self, name: str) -> tuple[tuple[str, str, str], ...]:
        """(part, "turned" or "plate", material) of the parts that lean on a size.

        Parts whose own thickness, width or outside diameter it is come first,
        then those that name it, then those that lean on it through others.
        """
        found = []
        for part, entry in self.parts.items():
            key = next((one for one in ("turned", "plate", "block") if one in entry), "")
            kind = "plate" if key == "block" else key
            if not kind or name not in self.of_part(part):
                continue
            shape = entry[key]
            own = name in (shape.get("thick"), shape.get("height"), shape.get("width"), shape.get("length"))
            own = own or any(land.get("dia") == name for land in shape.get("outside", []))
            named = any(name in _WORD.findall(text) for text in _texts_in(entry))
            found.append((0 if own else 1 if named else 2, part, kind, entry.get("material", "")))
        found.sort(key=lambda one: one[0])
        return tuple((part, kind, material) for _, part, kind, material in found)

    def of_clearance(self, hole: str) -> frozenset[str]:
        """The free sizes behind a screw's clearance in a hole: part.feature, or the size that is its diameter."""
        part, dotted, name = hole.partition(".")
        written = self.feature(part, name) if dotted else None
        if dotted and written is None:
            return self.free_of_screws()
        dia = written.get("dia") if written is not None else hole
        found = self.of_text(dia) if isinstance(dia, str) else frozenset()
        screws = [screw for where, at, screw in self._passed() if (where == part if dotted else at == hole)]
        return found.union(*(self.of_text(screw) for screw in screws)) if screws else self.free_of_screws()

    def _passed(self) -> Iterator[tuple[str, str, str]]:
        """(part, its hole's diameter as written, screw as written) for every hole that a screw goes through."""
        for entry in self.relations:
            given = entry.get("through", entry.get("pattern"))
            if "screw" not in entry or given is None:
                continue
            for text in given if isinstance(given, list) else [given]:
                part, _, name = str(text).partition(".")
                written = self.feature(part, name) or {}
                yield part, str(written.get("dia", "")), str(entry["screw"])

    def free_of_screws(self) -> frozenset[str]:
        """The free sizes that any screw relation leans on."""
        numbers = [number for number, entry in enumerate(self.relations) if "screw" in entry]
        return frozenset().union(*(self.of_relation(number) for number in numbers))

    def through_screws(self, *, with_nut: bool = False) -> Iterator[tuple[str, str]]:
        """(size that is a clearance hole's diameter, screw as written) for every screw relation.

        ``with_nut`` leaves only those in which a nut takes the thread.
        """
        for entry in self.relations:
            given = entry.get("through", entry.get("pattern"))
            if "screw" not in entry or given is None or (with_nut and "nut" not in entry):
                continue
            through = given if isinstance(given, list) else [given]
            for text in through:
                part, _, name = text.partition(".")
                written = self.feature(part, name) or {}
                if written.get("dia") in self.free:
                    yield written["dia"], entry["screw"]

    def is_width(self, name: str) -> bool:
        """Whether a size is the width of a plate, and no plate's thickness."""
        plates = [entry[key] for entry in self.parts.values() for key in ("plate", "block") if key in entry]
        return any(one.get("width") == name for one in plates) and all(
            name not in (one.get("thick"), one.get("height")) for one in plates
        )

    def _features(self, part: str) -> Iterator[tuple[str, Any]]:
        entry = self.parts.get(part, {})
        for kind in ("turned", "plate", "block", "sheet"):
            for group, listed in entry.get(kind, {}).items():
                if isinstance(listed, list):
                    yield from ((group, one) for one in listed if isinstance(one, dict))


def _is_text(entry: Any) -> str:
    return str(entry.get("is", "")) if isinstance(entry, dict) else str(entry)


def _texts_in(entry: Any) -> Iterator[str]:
    if isinstance(entry, str):
        yield entry
    elif isinstance(entry, dict):
        for key, one in entry.items():
            if key not in WORDS_ONLY:
                yield from _texts_in(one)
    elif isinstance(entry, list):
        for one in entry:
            yield from _texts_in(one)
