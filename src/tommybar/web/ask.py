"""One request as a page sees it, and the way a page answers: a record and a template, one shape of error."""

from __future__ import annotations

import secrets
import traceback
from collections.abc import Callable, Mapping
from contextlib import suppress
from dataclasses import dataclass, field
from importlib import import_module
from typing import TYPE_CHECKING, Any

from jinja2 import Environment, PackageLoader, StrictUndefined
from starlette.concurrency import run_in_threadpool
from starlette.datastructures import FormData, UploadFile
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import HTMLResponse, RedirectResponse, Response
from starlette.routing import Route

from tommybar.refusals import Complaint, Refusal
from tommybar.version import __version__
from tommybar.web.files import Files
from tommybar.web.pairing import Pairing
from tommybar.web.plans import Plans
from tommybar.web.settings import Settings
from tommybar.web.ways import Way
from tommybar.web.work import StillAtWorkError, Works

if TYPE_CHECKING:
    from tommybar.pack.units import Reader

TOLD = {
    "saved": "Saved. Undo puts the earlier text back.",
    "undone": "The earlier text is back. Redo takes it forward again.",
    "none": "There is nothing to undo.",
    "redone": "The later text is back.",
    "none_ahead": "There is nothing to redo.",
    "stopped": "It was stopped.",
    "begun": "It is begun.",
    "taken": "That way is taken; the cards say what is different.",
    "revised": "The design has its next revision. Undo puts the earlier text back.",
    "paired": "This machine is paired.",
    "removed": "It is taken off the list; its text is kept.",
}
YEAR = 365 * 24 * 3600


@dataclass(frozen=True)
class Desk:
    """What all pages work with."""

    files: Files
    plans: Plans
    works: Works
    pairing: Pairing
    settings: Settings
    extra: dict[str, Any] = field(default_factory=dict)  # what a page keeps for this run, by its own name


@dataclass(frozen=True)
class Frame:
    """What stands round every page."""

    unit: str
    light: str
    token: str
    here: str  # path and query, to come back to
    nav: str  # which word of the bar is underlined
    told: str
    version: str
    builds: bool = True  # whether builds have their page
    lan: bool = False  # whether other machines are let in


@dataclass
class Ask:
    """One request."""

    request: Request
    desk: Desk
    seat: str
    form: FormData = field(default_factory=FormData)
    body: bytes = b""  # of a message that is no form

    @property
    def path(self) -> Mapping[str, Any]:
        """The named pieces of the address."""
        return self.request.path_params

    @property
    def query(self) -> Mapping[str, str]:
        """What stands after the question mark."""
        return self.request.query_params

    @property
    def here(self) -> str:
        """The address without host."""
        url = self.request.url
        return url.path + (f"?{url.query}" if url.query else "")

    @property
    def unit(self) -> str:
        """The unit of the reader's lengths."""
        return "in" if self.request.cookies.get("unit") == "in" else "mm"

    @property
    def reader(self) -> Reader:
        """How lengths are written for this reader."""
        from tommybar.pack.units import Reader

        return Reader("in" if self.unit == "in" else "mm")

    @property
    def token(self) -> str:
        """What a form of ours carries."""
        return self.desk.pairing.seal("form", self.seat)

    def typed(self, name: str) -> str:
        """A field as typed."""
        value = self.form.get(name, "")
        return value.replace("\r\n", "\n") if isinstance(value, str) else ""

    def file_text(self, name: str) -> str:
        """The text of a file that was handed in."""
        file = self.form.get(name)
        if not isinstance(file, UploadFile) or not file.filename:
            raise Refusal("No file was handed in.", "Choose a file first.")
        most = self.desk.settings.largest_file
        data = file.file.read(most + 1)
        if len(data) > most:
            raise Refusal(
                f"The file is larger than {most // 1000} kB; no design or shop is.", "Choose another one."
            )
        try:
            return data.decode("utf-8").replace("\r\n", "\n")
        except UnicodeDecodeError as error:
            raise Refusal(
                f"The file is not UTF-8 text (byte {error.start}).", "Hand in the .yaml file itself."
            ) from None

    def frame(self, nav: str) -> Frame:
        """What stands round the page."""
        light = self.request.cookies.get("light", "")
        return Frame(
            self.unit,
            light if light in ("day", "night") else "day",
            self.token,
            self.here,
            nav,
            TOLD.get(self.query.get("told", ""), ""),
            __version__,
            lan=self.desk.settings.lan,
        )


Handler = Callable[[Ask], Response]


@dataclass(frozen=True)
class ErrorPage:
    """What every page shows when it says no."""

    status: int
    title: str
    complaints: tuple[Complaint, ...]
    back: str


@dataclass(frozen=True)
class WorkingPage:
    """What is shown while work goes on."""

    what: str
    name: str
    words: str


_TEMPLATES = Environment(
    loader=PackageLoader("tommybar.web", "templates"),
    autoescape=True,
    undefined=StrictUndefined,
    trim_blocks=True,
    lstrip_blocks=True,
)


def answer(ask: Ask, template: str, page: Any, nav: str = "", status: int = 200) -> Response:
    """The page: its record put into its template."""
    text = _TEMPLATES.get_template(template).render(page=page, frame=ask.frame(nav))
    return HTMLResponse(text, status)


def go_to(path: str, told: str = "") -> Response:
    """Send the browser on after something was changed."""
    if told:
        head, sign, mark = path.partition("#")
        path = f"{head}{'&' if '?' in head else '?'}told={told}{sign}{mark}"
    return RedirectResponse(path, 303)


def routes(ways: tuple[Way, ...]) -> list[Route]:
    """The addresses as routes; what is posted is not done without the token of a form of ours."""
    return [
        Route(way.path, _endpoint(way), methods=["POST" if way.does == "post" else "GET"]) for way in ways
    ]


def _handler(way: Way) -> Handler:
    handler: Handler = getattr(import_module(f"tommybar.web.pages.{way.page}"), way.handler)
    return handler


def _endpoint(way: Way) -> Callable[[Request], Any]:
    async def endpoint(request: Request) -> Response:
        desk: Desk = request.app.state.desk
        seat = request.cookies.get("seat", "")
        new = not (len(seat) == 32 and seat.isalnum())
        ask = Ask(request, desk, secrets.token_hex(16) if new else seat)
        try:
            if way.does == "post":
                if request.headers.get("content-type", "").startswith("application/json"):
                    ask.body = await request.body()
                ask.form = await request.form(
                    max_files=1,
                    max_fields=desk.settings.most_fields,
                    max_part_size=desk.settings.largest_file,
                )
                given = ask.typed("token") or request.headers.get("x-token", "")
                if new or not desk.pairing.sealed("form", ask.seat, given):
                    raise HTTPException(403, "This form is not of this page, or it is from before a restart.")
            response = await run_in_threadpool(lambda: _handler(way)(ask))
        except Exception as error:
            response = _answer_to(ask, error)
        finally:
            await ask.form.close()
        if new:
            response.set_cookie("seat", ask.seat, httponly=True, samesite="strict", max_age=YEAR)
        return response

    return endpoint


def _answer_to(ask: Ask, error: Exception) -> Response:
    """The one shape in which every page says no."""
    if isinstance(error, StillAtWorkError):
        work = error.work
        return answer(ask, "working.html", WorkingPage(work.what, work.name, work.words))
    back = ask.request.url.path if ask.request.method == "GET" else ""
    if isinstance(error, Refusal):
        page = ErrorPage(400, "This cannot be done so", error.complaints, _way_back(ask))
    elif isinstance(error, HTTPException):
        words = Complaint(str(error.detail), "Load the page again and repeat it.")
        page = ErrorPage(error.status_code, "This is not taken", (words,), back or "/")
    else:
        traceback.print_exception(error)
        words = Complaint(
            f"A fault of tommybar {__version__} itself, not of your files: {type(error).__name__}.",
            "Nothing of yours is lost. The window in which the page was started tells more; please report it.",
        )
        page = ErrorPage(500, "Our fault", (words,), "/")
    return answer(ask, "error.html", page, status=page.status)


def _way_back(ask: Ask) -> str:
    """Where a refusal is mended: the text of the design that the address names, if it is there."""
    name = str(ask.path.get("name", ""))
    if ask.request.url.path.startswith("/designs/"):
        with suppress(Refusal):
            if ask.desk.files.has("designs", name):
                return f"/designs/{name}/text"
    return "/"


def not_found(request: Request, error: Exception) -> Response:
    """The answer to an address that is none."""
    desk: Desk = request.app.state.desk
    ask = Ask(request, desk, request.cookies.get("seat", ""))
    status = error.status_code if isinstance(error, HTTPException) else 404
    words = Complaint("There is no such page.", "Begin at Designs.")
    return answer(ask, "error.html", ErrorPage(status, "Not here", (words,), "/"), status=status)
