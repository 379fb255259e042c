"""The switches, mm or inch, day or night, paper and projection of drawings; pairing another machine."""

from __future__ import annotations

from dataclasses import dataclass

from starlette.responses import Response

from tommybar.refusals import Complaint, Refusal
from tommybar.web.ask import YEAR, Ask, answer, go_to
from tommybar.web.guards import same_machine
from tommybar.web.settings import LOOPBACK

SWITCHES = {
    "unit": ("mm", "in"),
    "light": ("day", "night"),
    "paper": ("A4", "A3", "Letter", "Tabloid"),
    "angle": ("first", "third"),
}
DAY = 24 * 3600


@dataclass(frozen=True)
class PairPage:
    """Where the code is typed, and on the PC where the others find the page."""

    complaints: tuple[Complaint, ...]
    here: bool  # whether this is the PC itself, or a machine that is paired already
    addresses: tuple[str, ...] = ()  # the likeliest first
    picture: str = ""  # QR code of the first address
    code: str = ""  # on the PC only


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
    return answer(ask, "pair.html", _pair_page(ask, ()), "pair")


def _pair_page(ask: Ask, complaints: tuple[Complaint, ...]) -> PairPage:
    """What this visitor may see: who is not let in yet sees neither addresses nor the code."""
    on_pc = same_machine(ask.request.scope)
    let_in = ask.desk.settings.lan and ask.desk.pairing.paired(ask.request.cookies.get("paired", ""))
    if not (on_pc or let_in):
        return PairPage(complaints, False)
    if not ask.desk.settings.lan:
        return PairPage(complaints, True)
    from tommybar.web.qr import picture_of

    port = ask.request.url.port
    hosts = [one for one in ask.desk.settings.hosts if one not in LOOPBACK]
    found = tuple(f"http://{one}{f':{port}' if port else ''}/" for one in hosts)
    picture = picture_of(found[0]) if found else ""
    return PairPage(complaints, True, found, picture, ask.desk.pairing.code if on_pc else "")


def try_code(ask: Ask) -> Response:
    """Let the machine in when the code is right."""
    try:
        token = ask.desk.pairing.try_code(ask.typed("code"))
    except Refusal as refusal:
        return answer(ask, "pair.html", _pair_page(ask, refusal.complaints), status=403)
    response = go_to("/", "paired")
    days = ask.desk.settings.paired_days
    response.set_cookie("paired", token, max_age=days * DAY, samesite="strict", httponly=True)
    return response
