"""Redo: the text that an undo took away comes back, of a design, of its sizes, of a shop."""

from __future__ import annotations

from starlette.responses import Response

from tommybar.web.ask import Ask, go_to
from tommybar.web.files import Kind


def _redone(ask: Ask, kind: Kind, to: str) -> Response:
    return go_to(to, "redone" if ask.desk.files.redo(kind, str(ask.path["name"])) else "none_ahead")


def design(ask: Ask) -> Response:
    """Put the design's later text back."""
    home, tab = f"/designs/{ask.path['name']}", ask.typed("tab")
    return _redone(ask, "designs", f"{home}/{tab}" if tab.isalpha() else home)


def sizes(ask: Ask) -> Response:
    """Put the later choices back."""
    return _redone(ask, "choices", f"/designs/{ask.path['name']}/sizes")


def shop(ask: Ask) -> Response:
    """Put the shop's later text back."""
    return _redone(
        ask, "shops", f"/shops/{ask.path['name']}/text" if ask.typed("tab") == "text" else "/shops"
    )
