"""The two switches of the bar, mm or inch and day or night; pairing another machine."""

from __future__ import annotations

from dataclasses import dataclass

from starlette.responses import Response

from tommybar.refusals import Complaint, Refusal
from tommybar.web.ask import YEAR, Ask, answer, go_to

SWITCHES = {"unit": ("mm", "in"), "light": ("day", "night")}
DAY = 24 * 3600


@dataclass(frozen=True)
class PairPage:
    """Where the code is typed."""

    complaints: tuple[Complaint, ...]


def switch(ask: Ask) -> Response:
    """Turn a switch and come back."""
    back = ask.typed("back")
    response = go_to(back if back.startswith("/") and not back.startswith(("//", "/\\")) else "/")
    for name, allowed in SWITCHES.items():
        if ask.typed(name) in allowed:
            response.set_cookie(name, ask.typed(name), max_age=YEAR, samesite="strict", httponly=True)
    return response


def pair(ask: Ask) -> Response:
    """Ask for the code."""
    return answer(ask, "pair.html", PairPage(()))


def try_code(ask: Ask) -> Response:
    """Let the machine in when the code is right."""
    try:
        token = ask.desk.pairing.try_code(ask.typed("code"))
    except Refusal as refusal:
        return answer(ask, "pair.html", PairPage(refusal.complaints), status=403)
    response = go_to("/", "paired")
    days = ask.desk.settings.paired_days
    response.set_cookie("paired", token, max_age=days * DAY, samesite="strict", httponly=True)
    return response
