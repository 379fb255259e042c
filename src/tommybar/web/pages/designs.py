"""Designs: the gallery, a new one from an example or a plain start, one handed in as a file."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

from starlette.responses import HTMLResponse, Response

from tommybar.refusals import Complaint, Refusal, nearest
from tommybar.web.ask import Ask, answer, go_to
from tommybar.web.files import file_name

NAV = "designs"
STARTS = (  # kind, words, what its two figures are, figures to begin with
    ("disc", "a disc", ("diameter", "width"), ("60", "12")),
    ("shaft", "a shaft", ("diameter", "length"), ("10", "80")),
    ("blank", "a plain piece", ("diameter", "length"), ("20", "30")),
)


@dataclass(frozen=True)
class Start:
    """One way to begin, with what was typed."""

    kind: str
    words: str
    asks: tuple[str, str]
    figures: tuple[str, str]


@dataclass(frozen=True)
class Tile:
    """One design of the gallery."""

    name: str
    title: str


@dataclass(frozen=True)
class DesignsPage:
    """The gallery."""

    tiles: tuple[Tile, ...]
    examples: tuple[Tile, ...]
    starts: tuple[Start, ...]
    complaints: tuple[Complaint, ...]
    typed_name: str
    typed_kind: str  # which form the complaints are about


def title_of(text: str, name: str) -> str:
    """The title that a file gives, without loading it."""
    found = re.search(r"(?m)^(?:design|shop):\s*(.+?)\s*(?:#.*)?$", text)
    return found[1].strip("'\"") if found else name


def example_designs() -> dict[str, Path]:
    """The designs that come with the program."""
    from tommybar.shop.examples import example_folder

    folder = example_folder()
    return {one.parent.name: one for one in sorted(folder.glob("*/design.yaml"))} if folder else {}


def gallery(ask: Ask, wrong: Refusal | None = None) -> Response:
    """The gallery; with complaints beside what was typed when a new design was refused."""
    files = ask.desk.files
    kind = ask.typed("kind")
    starts = tuple(
        Start(one, words, asks, (ask.typed("a"), ask.typed("b")) if wrong and one == kind else figures)
        for one, words, asks, figures in STARTS
    )
    page = DesignsPage(
        tuple(Tile(name, title_of(files.text("designs", name), name)) for name in files.names("designs")),
        tuple(
            Tile(name, title_of(place.read_text("utf-8"), name)) for name, place in example_designs().items()
        ),
        starts,
        wrong.complaints if wrong else (),
        ask.typed("name"),
        kind if wrong else "",
    )
    return answer(ask, "designs.html", page, NAV, 400 if wrong else 200)


def new(ask: Ask) -> Response:
    """Write a new design and open it."""
    try:
        kind = ask.typed("kind")
        if kind == "file":
            text = ask.file_text("file")
        elif kind == "example":
            text = _example_text(ask.typed("example"))
        else:
            text = _start_text(kind, ask.typed("name"), (ask.typed("a"), ask.typed("b")))
        if kind == "file":
            _refuse_no_design(text)
        name = file_name(ask.typed("name") or title_of(text, "my design"))
        ask.desk.files.add("designs", name, text)
    except Refusal as refusal:
        return gallery(ask, refusal)
    return go_to(f"/designs/{name}")


def _start_text(kind: str, title: str, figures: tuple[str, str]) -> str:
    from tommybar.design.starting import start_text

    kinds = [one[0] for one in STARTS]
    if kind not in kinds:
        raise Refusal(f'"{kind[:40]}" is nothing to begin with.', nearest(kind, kinds))
    return start_text(kind, title or f"My {kind}", figures)


def _example_text(name: str) -> str:
    known = example_designs()
    if name not in known:
        raise Refusal(f'There is no example "{name[:60]}".', nearest(name, known))
    return known[name].read_text(encoding="utf-8")


def _refuse_no_design(text: str) -> None:
    """Refuse what is no design at all; a design with faults comes in, so that it can be mended here."""
    from tommybar.design.yaml_file import yaml_from_text

    data = yaml_from_text(text).data
    if not isinstance(data, dict) or "design" not in data:
        raise Refusal("The file is no design: it has no key design.", "Hand shops in on the page Shop.")


def picture(ask: Ask) -> Response:
    """The picture of a design for its tile: a piece of a page."""
    text = ask.desk.files.text("designs", str(ask.path["name"]))
    return HTMLResponse(design_picture(text))


def example_picture(ask: Ask) -> Response:
    """The picture of an example for its tile."""
    return HTMLResponse(design_picture(_example_text(str(ask.path["name"]))))


@lru_cache(maxsize=64)
def design_picture(text: str) -> str:
    """The parts of a design as drawn, or the words of what is wrong with it."""
    from tommybar.web.pictures import parts_picture
    from tommybar.web.plans import design_of

    try:
        design = design_of(text)
        return parts_picture(design.sized(), f"The parts of {design.title} at one scale")
    except Refusal as refusal:
        many = len(refusal.complaints)
        return f'<p class="faulty">{many} {"fault" if many == 1 else "faults"} in its file; open it to mend them.</p>'


def remove(ask: Ask) -> Response:
    """Take a design off the list; its text is kept."""
    ask.desk.files.remove("designs", str(ask.path["name"]))
    return go_to("/", "removed")
