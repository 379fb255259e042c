"""Where in a design file the sizes of the parts stand, as they are called when they are measured."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from tommybar.design.yaml_file import Place, yaml_from_text

PLAIN_FIGURE = re.compile(r"\s*(\d+(\.\d*)?|\.\d+|\d+\s+\d+/\d+|\d+/\d+)\s*(mm|in)?\s*")


@dataclass(frozen=True)
class Standing:
    """Where a size stands in the file, and what stands there."""

    place: Place
    text: str
    named: str = ""  # the named size that stands there, when it is one

    @property
    def plain(self) -> bool:
        """Whether a plain figure stands there, which can be changed for another."""
        return PLAIN_FIGURE.fullmatch(self.text) is not None


def size_places(text: str) -> dict[str, Standing]:
    """Every size of every part, by part.size, with the place of its figure.

    Where the name of a named size stands, the place is that of the named
    size: changing it changes everything that leans on it.
    """
    data = yaml_from_text(text).data
    sizes = data.get("sizes", {})
    found = {}
    for name, place, value in _written(data):
        named = str(value).strip()
        if named in sizes:
            given = sizes[named]
            deep = isinstance(given, dict)
            place = ("sizes", named, "is") if deep else ("sizes", named)
            found[name] = Standing(place, _text(given.get("is") if deep else given), named)
        else:
            found[name] = Standing(place, _text(value))
    return found


def _text(value: Any) -> str:
    return f"{value:.10g}" if isinstance(value, int | float) else str(value)


def _written(data: Any) -> Iterator[tuple[str, Place, Any]]:
    for part, given in data.get("parts", {}).items():
        for kind in ("turned", "plate"):
            if kind in given:
                yield from _of_shape(part, given[kind], ("parts", part, kind))


def _of_shape(part: str, shape: Any, place: Place) -> Iterator[tuple[str, Place, Any]]:
    for key in ("length", "width", "thick"):
        if key in shape:
            yield f"{part}.{key}", (*place, key), shape[key]
    for group in ("outside", "bores", "recesses", "grooves", "holes", "cross_holes"):
        for index, one in enumerate(shape.get(group, ())):
            here = (*place, group, index)
            if "dia" in one:
                yield f"{part}.{one['name']}", (*here, "dia"), one["dia"]
            for key in ("long", "deep", "wide", "circle"):
                if key in one:
                    yield f"{part}.{one['name']}.{key}", (*here, key), one[key]


def place_of(text: str, size: str) -> Standing | None:
    """Where the figure of a size stands, or None. One of several alike holes (foot_2) stands where all do."""
    known = size_places(text)
    return known.get(size) or known.get(re.sub(r"_\d+$", "", size))
