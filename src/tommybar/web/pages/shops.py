"""Shop: the list, a new one beginning from the nearest example, one handed in as a file."""

from __future__ import annotations

from dataclasses import dataclass

from starlette.responses import Response

from tommybar.refusals import Complaint, Refusal
from tommybar.web.ask import Ask, answer, go_to
from tommybar.web.files import file_name
from tommybar.web.pages.designs import title_of
from tommybar.web.plans import shop_of

NAV = "shop"


@dataclass(frozen=True)
class ShopTile:
    """A shop in the list."""

    name: str
    title: str
    about: str
    undoable: int
    redoable: int


@dataclass(frozen=True)
class ShopsPage:
    """The list of shops."""

    own: tuple[ShopTile, ...]
    examples: tuple[ShopTile, ...]
    complaints: tuple[Complaint, ...]
    typed_name: str
    typed_units: str


def shops(ask: Ask, wrong: Refusal | None = None) -> Response:
    """The page."""
    from tommybar.shop.examples import example_shops

    files = ask.desk.files
    page = ShopsPage(
        tuple(
            _tile(
                name, files.text("shops", name), files.undoable("shops", name), files.redoable("shops", name)
            )
            for name in files.names("shops")
        ),
        tuple(_tile(name, place.read_text("utf-8")) for name, place in example_shops().items()),
        wrong.complaints if wrong else (),
        ask.typed("name"),
        ask.typed("units"),
    )
    return answer(ask, "shops.html", page, NAV, 400 if wrong else 200)


def _tile(name: str, text: str, undoable: int = 0, redoable: int = 0) -> ShopTile:
    try:
        shop = shop_of(text)
    except Refusal as refusal:
        many = len(refusal.complaints)
        return ShopTile(
            name,
            title_of(text, name),
            f"{many} {'fault' if many == 1 else 'faults'} in its file",
            undoable,
            redoable,
        )
    assumed = f"; {len(shop.assumed)} things not said yet" if shop.assumed else ""
    return ShopTile(name, shop.name, f"{shop.lathe.name}{assumed}", undoable, redoable)


def new(ask: Ask) -> Response:
    """Begin a shop: an empty file to be filled by the walk-through, a copy of an example, or a file."""
    from tommybar.shop.examples import example_shops

    try:
        kind, title = ask.typed("kind"), " ".join(ask.typed("name").split())[:80]
        if kind == "file":
            text = ask.file_text("file")
            shop_of(text)
            title = title_of(text, "shop")
        elif kind in example_shops():
            text = example_shops()[kind].read_text(encoding="utf-8")
        else:
            unit = "in" if ask.typed("units") == "in" else "mm"
            text = f"tommybar: 1\nshop: {_quoted(title or 'My shop')}\nunits: {unit}\n"
        name = file_name(title or "my shop")
        ask.desk.files.add("shops", name, text)
    except Refusal as refusal:
        return shops(ask, refusal)
    return go_to(
        f"/shops/{name}/walk/machine" if kind == "walk" else "/shops", "" if kind == "walk" else "saved"
    )


def _quoted(words: str) -> str:
    return "'" + words.replace("'", "''") + "'"


def undo(ask: Ask) -> Response:
    """Put the shop's earlier text back."""
    name = str(ask.path["name"])
    done = ask.desk.files.undo("shops", name)
    return go_to(
        f"/shops/{name}/text" if ask.typed("tab") == "text" else "/shops", "undone" if done else "none"
    )


def remove(ask: Ask) -> Response:
    """Take a shop off the list; its text is kept."""
    ask.desk.files.remove("shops", str(ask.path["name"]))
    return go_to("/shops", "removed")
