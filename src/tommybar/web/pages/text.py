"""The text of a design or a shop: to read, to edit, to take away; faults are marked at their line."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from starlette.responses import PlainTextResponse, Response

from tommybar.refusals import Complaint, Refusal
from tommybar.web.ask import Ask, answer, go_to
from tommybar.web.pages.designs import title_of
from tommybar.web.plans import design_of, shop_of

FileKind = Literal["designs", "shops"]


@dataclass(frozen=True)
class Marked:
    """A line that has a fault."""

    number: int
    text: str
    complaints: tuple[Complaint, ...]


@dataclass(frozen=True)
class TextPage:
    """The text and what is wrong with it."""

    kind: str
    name: str
    title: str
    text: str
    marked: tuple[Marked, ...]
    others: tuple[Complaint, ...]  # faults without a line
    saved: bool  # whether this text is what the file holds
    undoable: int
    redoable: int


def faults_of(kind: FileKind, text: str) -> tuple[Complaint, ...]:
    """Everything that is wrong with a text."""
    try:
        design_of(text) if kind == "designs" else shop_of(text)
    except Refusal as refusal:
        return refusal.complaints
    return ()


def _page(ask: Ask, kind: FileKind, text: str, saved: bool) -> Response:
    name = str(ask.path["name"])
    faults = faults_of(kind, text)
    lines = text.splitlines()
    numbers = sorted({one.line for one in faults if one.line})
    marked = tuple(
        Marked(
            number,
            lines[number - 1] if number <= len(lines) else "",
            tuple(one for one in faults if one.line == number),
        )
        for number in numbers
    )
    page = TextPage(
        kind,
        name,
        title_of(text, name),
        text,
        marked,
        tuple(one for one in faults if not one.line),
        saved,
        ask.desk.files.undoable(kind, name),
        ask.desk.files.redoable(kind, name),
    )
    return answer(ask, "text.html", page, "designs" if kind == "designs" else "shop", 200 if saved else 400)


def design_text(ask: Ask) -> Response:
    """A design's text."""
    return _page(ask, "designs", ask.desk.files.text("designs", str(ask.path["name"])), True)


def shop_text(ask: Ask) -> Response:
    """A shop's text."""
    return _page(ask, "shops", ask.desk.files.text("shops", str(ask.path["name"])), True)


def _save(ask: Ask, kind: FileKind) -> Response:
    name, text = str(ask.path["name"]), ask.typed("text")
    text = text if text.endswith("\n") else text + "\n"
    if faults_of(kind, text) and ask.typed("all_the_same") != "yes":
        return _page(ask, kind, text, False)
    ask.desk.files.save(kind, name, text)
    return go_to(f"/{kind}/{name}/text", "saved")


def save_design(ask: Ask) -> Response:
    """Keep a design's text; one with faults only when it is said twice."""
    return _save(ask, "designs")


def save_shop(ask: Ask) -> Response:
    """Keep a shop's text; one with faults only when it is said twice."""
    return _save(ask, "shops")


def _file(ask: Ask, kind: FileKind) -> Response:
    name = str(ask.path["name"])
    return PlainTextResponse(
        ask.desk.files.text(kind, name),
        media_type="application/yaml",
        headers={"content-disposition": f'attachment; filename="{name}.yaml"'},
    )


def design_file(ask: Ask) -> Response:
    """A design's file, to take away."""
    return _file(ask, "designs")


def shop_file(ask: Ask) -> Response:
    """A shop's file, to take away."""
    return _file(ask, "shops")
