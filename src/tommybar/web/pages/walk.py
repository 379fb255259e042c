"""The walk-through of a shop: a handful of questions a page, each with how it is measured."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from starlette.responses import Response

from tommybar.design.yaml_file import yaml_from_text
from tommybar.pack.units import Reader
from tommybar.refusals import Complaint, Refusal
from tommybar.shop.model import Dial, Shop
from tommybar.web.answers import group_named, groups, rows_of, with_answer, with_rows, written
from tommybar.web.ask import Ask, answer, go_to
from tommybar.web.pages.designs import title_of
from tommybar.web.plans import shop_of

EMPTY_ROWS = 2
RECORD_KEYS = {"swing_over_bed": "swing_bed", "swing_over_cross_slide": "swing_cross_slide"}


@dataclass(frozen=True)
class Question:
    """One question with its answer so far."""

    place: str
    ask: str
    kind: str
    choices: tuple[str, ...]
    how: str
    trap: str
    typed: str
    taken: str  # from the nearest example, while it is not answered
    wrong: str


@dataclass(frozen=True)
class Column:
    """A column of a table."""

    key: str
    ask: str
    kind: str
    choices: tuple[str, ...]


@dataclass(frozen=True)
class WalkPage:
    """One page of the walk-through."""

    name: str
    title: str
    group: str
    group_title: str
    note: str
    groups: tuple[tuple[str, str], ...]
    questions: tuple[Question, ...]
    columns: tuple[Column, ...]
    rows: tuple[dict[str, str], ...]
    complaints: tuple[Complaint, ...]
    next: str
    units: str
    open: int  # things that are still taken from an example
    first: int  # number of the question whose field waits for the keys: the first that is wrong, or the first


def walk(ask: Ask) -> Response:
    """A page of it."""
    return _shown(ask, ask.desk.files.text("shops", str(ask.path["name"])))


def _shown(ask: Ask, text: str, wrong: Refusal | None = None) -> Response:
    name, group = str(ask.path["name"]), group_named(str(ask.path["group"]))
    data = yaml_from_text(text).data
    try:
        shop = shop_of(text)
    except Refusal as refusal:
        shop, wrong = None, wrong or refusal
    complaints = wrong.complaints if wrong else ()
    order = [one["name"] for one in groups()]
    at = order.index(group["name"])
    questions = tuple(_question(one, data, shop, complaints, ask) for one in group.get("questions", ()))
    told = {words for one in questions for words in one.wrong.split("\n")}
    page = WalkPage(
        name,
        title_of(text, name),
        group["name"],
        group["title"],
        group["note"],
        tuple((one["name"], one["title"]) for one in groups()),
        questions,
        tuple(
            Column(one["key"], one["ask"], one["kind"], tuple(one.get("choices", ())))
            for one in group.get("columns", ())
        ),
        tuple(_rows(ask, data, group)) if "table" in group else (),
        tuple(one for one in complaints if f"{one.what} {one.remedy}".strip() not in told),
        order[at + 1] if at + 1 < len(order) else "",
        str(data.get("units", "mm")),
        len(shop.assumed) if shop else 0,
        next((n for n, one in enumerate(questions, 1) if one.wrong), 1),
    )
    return answer(ask, "walk.html", page, "shop", 400 if wrong else 200)


def _question(
    one: dict[str, Any], data: Any, shop: Shop | None, complaints: tuple[Complaint, ...], ask: Ask
) -> Question:
    place = one["place"]
    sent = ask.typed(f"answer:{place}") if ask.form and one["kind"] != "several" else ""
    about = [
        f"{each.what} {each.remedy}".strip()
        for each in complaints
        if each.place == place or each.place.startswith(f"{place}.")
    ]
    return Question(
        place,
        one["ask"],
        one["kind"],
        tuple(one.get("choices", ())),
        one["how"],
        one.get("trap", ""),
        sent or written(data, place),
        _taken(shop, place) if shop else "",
        "\n".join(about),
    )


def _taken(shop: Shop, dotted: str) -> str:
    """What an example shop lends for a place that is not answered."""
    if not any(dotted == one or dotted.startswith(f"{one}.") for one in shop.assumed):
        return ""
    value: Any = shop
    for step in dotted.split("."):
        if isinstance(value, Dial):
            return ""
        value = getattr(value, RECORD_KEYS.get(step, step), None)
    reader = Reader(shop.unit)
    if isinstance(value, float):
        return f"{value:g}" if dotted.endswith("power") else reader.length(value, 3)
    if isinstance(value, tuple):
        plain = [one for one in value if isinstance(one, float | int | str)]
        return ", ".join(f"{one:g}" if isinstance(one, float) else str(one) for one in plain[:8]) + (
            " ..." if len(plain) > 8 else ""
        )
    return value if isinstance(value, str) else ""


def _rows(ask: Ask, data: Any, group: dict[str, Any]) -> list[dict[str, str]]:
    rows = _sent_rows(ask, group) if ask.form else rows_of(data, group["table"])
    empty = {one["key"]: "" for one in group["columns"]}
    return [{**empty, **row} for row in rows] + [dict(empty) for _ in range(EMPTY_ROWS)]


def _sent_rows(ask: Ask, group: dict[str, Any]) -> list[dict[str, str]]:
    columns = {
        one["key"]: [str(value) for value in ask.form.getlist(f"cell:{one['key']}")]
        for one in group["columns"]
    }
    count = max((len(values) for values in columns.values()), default=0)
    return [
        {key: values[n] if n < len(values) else "" for key, values in columns.items()} for n in range(count)
    ]


def keep(ask: Ask) -> Response:
    """Write the answers of a page into the shop's file; what is wrong is said beside its field."""
    name, group = str(ask.path["name"]), group_named(str(ask.path["group"]))
    text = before = ask.desk.files.text("shops", name)
    try:
        for question in group.get("questions", ()):
            field = f"answer:{question['place']}"
            typed = (
                ", ".join(map(str, ask.form.getlist(field)))
                if question["kind"] == "several"
                else ask.typed(field)
            )
            text = with_answer(text, question, typed)
        if "table" in group:
            rows = _sent_rows(ask, group)
            text = with_rows(text, group, rows) if any(any(row.values()) for row in rows) else text
        shop_of(text)
    except Refusal as refusal:
        return _shown(ask, before, refusal)
    ask.desk.files.save("shops", name, text)
    after = ask.typed("next")
    known = [one["name"] for one in groups()]
    return go_to(f"/shops/{name}/walk/{after}" if after in known else "/shops", "saved")
