"""Parts: the drawing itself is what is edited; touch a dimension, type the figure, choose what it follows."""

from __future__ import annotations

import json
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from starlette.responses import Response

from tommybar.design.written_figures import WrittenFigure, written_figures
from tommybar.design.yaml_file import Place, yaml_from_text
from tommybar.pack.drawing import part_drawing
from tommybar.pack.imprint import Imprint
from tommybar.refusals import Complaint, Refusal, nearest
from tommybar.web.additions import feature_named, features, with_feature
from tommybar.web.ask import Ask, answer, go_to
from tommybar.web.edits import FOLLOWS, size_entry, with_figure, with_size
from tommybar.web.pages.opened import Head, head_of, name_of
from tommybar.web.plans import design_of
from tommybar.web.touch import Touch, touchable_svg, touches

if TYPE_CHECKING:
    from tommybar.design import Design
    from tommybar.design.model import Part

EDITED = ("thread", "limits", "material", "count")  # entries without a figure that may be edited all the same
KEYS = {"dia": "diameter", "long": "length", "deep": "depth", "wide": "width", "thick": "thickness"}


@dataclass(frozen=True)
class Field:
    """One entry to be edited: of a part, or a named size when ``size`` is its name."""

    label: str
    place: str  # as JSON, to be sent back
    size: str
    written: str
    value: str
    follows: str
    because: str


@dataclass(frozen=True)
class Asked:
    """A field of something to be added."""

    key: str
    ask: str
    example: str
    choices: tuple[str, ...]
    may_lack: bool
    typed: str


@dataclass(frozen=True)
class Addition:
    """Something that may be added to the part."""

    name: str
    title: str
    fields: tuple[Asked, ...]


@dataclass(frozen=True)
class PartsPage:
    """One part's drawing, what was touched on it, and all its entries."""

    head: Head
    names: tuple[str, ...]
    part: str
    about: str
    svg: str
    touched: str  # words of the dimension
    fields: tuple[Field, ...]
    all: tuple[Field, ...]
    classes: tuple[str, ...]
    at: int
    wrong_place: str
    typed: str
    typed_follows: str
    complaints: tuple[Complaint, ...]
    units: str
    features: tuple[Addition, ...]
    added: str  # name of the feature whose form was refused
    text: str
    wrong_feature: tuple[Complaint, ...]


def parts(ask: Ask) -> Response:
    """The first part, or the one that the address names."""
    return _shown(ask)


def _shown(ask: Ask, wrong: Refusal | None = None) -> Response:
    text = ask.desk.files.text("designs", name_of(ask))
    design = design_of(text)
    sized = design.sized()
    made = [one for one in sized.parts if one.shape is not None]
    name = str(ask.path.get("part", made[0].name))
    part = next((one for one in made if one.name == name), None)
    if part is None:
        known = [one.name for one in made]
        raise Refusal(
            f'No part that is made is named "{name[:60]}".',
            nearest(name, known) or f"There are {', '.join(known)}.",
        )
    figures = written_figures(yaml_from_text(text), name)
    sheet = part_drawing(part, sized, Imprint(design.title, design.revision, "as drawn", 1.0, "", ask.reader))
    found = touches(sheet, figures)
    added = ask.typed("feature") if wrong else ""
    at = _number(ask.typed("at") or ask.query.get("at", ""))
    touched = found[at] if 0 <= at < len(found) else None
    address = f"/designs/{name_of(ask)}/parts/{name}"
    page = PartsPage(
        head_of(ask, "parts"),
        tuple(one.name for one in made),
        name,
        _about(part),
        touchable_svg(sheet, found, address, at),
        touched.words if touched else "",
        _fields(touched, design, text, ask) if touched else (),
        tuple(_field(one, ask) for one in figures if one.value is not None or one.key in EDITED),
        FOLLOWS,
        at,
        ask.typed("place") if wrong else "",
        ask.typed("figure"),
        ask.typed("follows"),
        wrong.complaints if wrong and not added else (),
        design.units,
        tuple(_addition(one, ask, added) for one in features() if one["kind"] == part.kind),
        added,
        text,
        wrong.complaints if wrong and added else (),
    )
    return answer(ask, "parts.html", page, "designs", 400 if wrong else 200)


def _about(part: Part) -> str:
    many = f"{part.count} off, " if part.count > 1 else ""
    return f"{many}{part.material}{', ' + part.note if part.note else ''}"


def _number(words: str) -> int:
    return int(words) if words.isdigit() and len(words) < 4 else -1


def _fields(touched: Touch, design: Design, text: str, ask: Ask) -> tuple[Field, ...]:
    """What makes a dimension: named sizes first, then the entries themselves."""
    sizes = dict.fromkeys(name for one in touched.figures for name in one.names)
    return (
        *(_size_field(name, design, text, ask) for name in sizes),
        *(_field(one, ask) for one in touched.figures if one.words not in sizes),
    )


def _size_field(name: str, design: Design, text: str, ask: Ask) -> Field:
    written, follows, because = size_entry(text, name)
    one = next(one for one in design.named if one.name == name)
    value = (
        ask.reader.length(one.value, 3)
        if isinstance(one.value, float) and one.unit == "mm"
        else f"{one.value}"
    )
    return Field(name, json.dumps(["sizes", name]), name, written, value, follows, because)


def _field(one: WrittenFigure, ask: Ask) -> Field:
    label = " ".join(word for word in (one.feature.replace("_", " "), KEYS.get(one.key, one.key)) if word)
    value = (
        ""
        if one.value is None or one.key == "thread"
        else (ask.reader.length(one.value, 3) if one.unit == "mm" else f"{one.value:g}")
    )
    return Field(label, json.dumps(list(one.place)), "", one.words, value, "", "")


def _addition(one: dict[str, Any], ask: Ask, added: str) -> Addition:
    mine = one["name"] == added
    return Addition(
        one["name"],
        one["title"],
        tuple(
            Asked(
                field["key"],
                field["ask"],
                field.get("example", ""),
                tuple(field.get("choices", ())),
                bool(field.get("may_lack")),
                ask.typed(f"field:{field['key']}") if mine else "",
            )
            for field in one["fields"]
        ),
    )


def add(ask: Ask) -> Response:
    """Add a feature to the part; what is wrong with it is said beside its questions."""
    name, part = name_of(ask), str(ask.path["part"])
    text = ask.desk.files.text("designs", name)
    try:
        feature = feature_named(ask.typed("feature"))
        typed = {field["key"]: ask.typed(f"field:{field['key']}") for field in feature["fields"]}
        new = with_feature(text, part, feature["name"], typed)
        design_of(new)
    except Refusal as refusal:
        return _shown(ask, refusal)
    ask.desk.files.save("designs", name, new)
    return go_to(f"/designs/{name}/parts/{part}#drawing", "saved")


def change(ask: Ask) -> Response:
    """Put another figure into the file at its place; what is wrong with it is said beside the field."""
    name, part = name_of(ask), str(ask.path["part"])
    text = ask.desk.files.text("designs", name)
    try:
        place = place_from(ask.typed("place"))
        if place[0] == "sizes":
            new = with_size(text, str(place[1]), ask.typed("figure"), ask.typed("follows"))
        else:
            new = with_figure(text, place, ask.typed("figure"))
        design_of(new)
    except Refusal as refusal:
        return _shown(ask, refusal)
    ask.desk.files.save("designs", name, new)
    at = _number(ask.typed("at"))
    return go_to(f"/designs/{name}/parts/{part}" + (f"?at={at}" if at >= 0 else "") + "#drawing", "saved")


def place_from(words: str) -> Place:
    """A place as our own form sends it back: of a size, or inside a part."""
    try:
        place = json.loads(words)
    except (ValueError, RecursionError):
        place = None
    good = (
        isinstance(place, list)
        and 2 <= len(place) <= 12
        and place[0] in ("sizes", "parts")
        and all(
            isinstance(step, str) or (isinstance(step, int) and not isinstance(step, bool)) for step in place
        )
    )
    if not good:
        raise Refusal("The form does not say which entry it changes.", "Load the page again.")
    return tuple(place)
