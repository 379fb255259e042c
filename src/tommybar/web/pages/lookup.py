"""Look-up: every topic with an example, its answer and its source."""

from __future__ import annotations

import shlex
from dataclasses import dataclass
from urllib.parse import urlencode

from starlette.responses import Response

from tommybar.facts.answer import Row
from tommybar.pack.units import Reader
from tommybar.refusals import Complaint, Refusal
from tommybar.sizes.topics import TOPICS, Topic, look_up, topic_of
from tommybar.web.ask import Ask, answer


@dataclass(frozen=True)
class Option:
    """A field of a topic that may be left empty."""

    name: str
    typed: str


@dataclass(frozen=True)
class LookUpPage:
    """The topics, and the answer when something was asked."""

    topics: tuple[Topic, ...]
    topic: str
    about: str
    example: str
    example_query: str
    typed: str
    options: tuple[Option, ...]
    title: str
    rows: tuple[tuple[str, str], ...]
    cautions: tuple[str, ...]
    source: str
    complaints: tuple[Complaint, ...]


def lookup(ask: Ask) -> Response:
    """The list of topics, or one of them with its answer."""
    name = str(ask.path.get("topic", ""))
    if not name:
        return _shown(ask, None, "", {})
    topic = topic_of(name)
    options = {one: ask.query.get(one, "").strip() for one in topic.options}
    return _shown(ask, topic, ask.query.get("what", "").strip()[:200], options)


def _shown(ask: Ask, topic: Topic | None, typed: str, options: dict[str, str]) -> Response:
    complaints: tuple[Complaint, ...] = ()
    title, source = "", ""
    rows: tuple[tuple[str, str], ...] = ()
    cautions: tuple[str, ...] = ()
    if topic and (typed or any(options.values())):
        try:
            found = look_up(
                topic.name, _keys(typed), {name: value for name, value in options.items() if value}
            )
            title, source, cautions = found.title, found.source, found.cautions
            rows = tuple((one.label, shown(one, ask.reader)) for one in found.rows)
        except Refusal as refusal:
            complaints = refusal.complaints
    page = LookUpPage(
        TOPICS,
        topic.name if topic else "",
        topic.about if topic else "",
        topic.example.partition(" ")[2] if topic else "",
        _query(topic.example) if topic else "",
        typed,
        tuple(Option(name, value) for name, value in options.items()),
        title,
        rows,
        cautions,
        source,
        complaints,
    )
    return answer(ask, "lookup.html", page, "lookup", 400 if complaints else 200)


def _query(example: str) -> str:
    """The example of a topic as a query of its page."""
    words = shlex.split(example)[1:]
    options = {
        words[n].removeprefix("--"): words[n + 1] for n in range(len(words) - 1) if words[n].startswith("--")
    }
    first = next((n for n, word in enumerate(words) if word.startswith("--")), len(words))
    return urlencode({"what": shlex.join(words[:first]), **options})


def _keys(typed: str) -> tuple[str, ...]:
    try:
        return tuple(shlex.split(typed))
    except ValueError:
        return tuple(typed.split())


def shown(row: Row, reader: Reader) -> str:
    """A row's figure for the reader; lengths in mm are turned to inches when that is wished.

    Examples
    --------
    >>> shown(Row("pitch", 1.0, "mm"), Reader()), shown(Row("pitch", 25.4, "mm"), Reader("in"))
    ('1.000 mm', '1.0000 in')
    """
    if row.value is None:
        return row.text
    if row.unit == "mm" and reader.unit == "in":
        places = reader.decimals(max(row.decimals, 2))
        figure, unit = f"{reader.of(row.value):.{places}f}", "in"
    else:
        figure, unit = f"{row.value:.{row.decimals}f}", row.unit
    return " ".join(piece for piece in (figure, unit, row.text) if piece)
