"""A build at the machine: the whole route in one page, what its marks become, and what keeps it when we are away."""

from __future__ import annotations

import json
from dataclasses import dataclass
from functools import cache
from hashlib import sha256
from pathlib import Path
from typing import Any

from starlette.responses import HTMLResponse, JSONResponse, Response

from tommybar.bench.journal import entries_after, receive
from tommybar.bench.replan import stale_cards
from tommybar.bench.standing import standing
from tommybar.making.lengths import spoken
from tommybar.pack.machine.contents import page_contents
from tommybar.pack.machine.on_paper import paper_cards
from tommybar.pack.machine.write import SCRIPTS, machine_page, script_data
from tommybar.refusals import Refusal
from tommybar.web.ask import Ask, answer
from tommybar.web.pages.builds import NAV, build_of, folder_of, plan_as_printed, plan_now
from tommybar.web.style import MACHINE_PAGE, machine_style

MOST_SENT = 2000  # entries in one message
_WEB = Path(__file__).parents[1]
_SERVED = ("fresh", "sync")  # scripts that only a served build has
_KEPT = ("/static/fonts/400.woff2", "/static/fonts/700.woff2", "/static/icon.svg")


@dataclass(frozen=True)
class MachinePage:
    """The whole route, to be worked from."""

    title: str
    build: str
    contents: str
    paper: str  # the cards as they print
    mark: str  # of the scripts and the style, by their content


def at_the_machine(ask: Ask) -> Response:
    """The whole route in one page; it keeps working when the server is gone."""
    build = build_of(ask)
    plan = plan_now(ask, build)
    entries, position = entries_after(folder_of(ask), build.id)
    contents = page_contents(plan, ask.reader)
    contents["plan"]["store"] = f"build {build.id}"
    contents["made"] = []
    contents["build"] = {
        "id": build.id,
        "token": ask.token,
        "light": ask.request.cookies.get("light", ""),
        "entries": [one.as_dict() for one in entries],
        "position": position,
        "stale": {
            one.key: one.printed_on[:10]
            for one in stale_cards(plan_as_printed(ask, build), standing(build.entries))
        },
    }
    title = f"{build.title}: at the machine"
    page = MachinePage(title, build.id, script_data(contents), paper_cards(contents), content_mark())
    response = answer(ask, "machine.html", page, NAV)
    response.headers["x-plan"] = plan.plan_id
    return response


@cache
def _script() -> str:
    texts = [(MACHINE_PAGE / f"{name}.js").read_text(encoding="utf-8") for name in SCRIPTS]
    texts += [(_WEB / "static" / f"{name}.js").read_text(encoding="utf-8") for name in _SERVED]
    body = "\n".join(texts)
    return f'(function () {{\n"use strict";\n{body}\n}})();\n'


@cache
def _worker() -> str:
    return (_WEB / "static" / "machine-worker.js").read_text(encoding="utf-8")


@cache
def content_mark() -> str:
    """A mark that is another one as soon as a script, the style or the frame of the page is."""
    frame = (_WEB / "templates" / "machine.html").read_text(encoding="utf-8")
    whole = "\0".join((_script(), machine_style(), _worker(), frame))
    return sha256(whole.encode()).hexdigest()[:12]


def machine_script(ask: Ask) -> Response:
    """The scripts of the machine file, with those that keep them in step with the journal."""
    return Response(_script(), media_type="text/javascript")


def machine_worker(ask: Ask) -> Response:
    """What keeps the page in the browser: named by its content, allowed to stand over builds and nothing else."""
    mark = content_mark()
    files = [f"/static/machine.{end}?v={mark}" for end in ("css", "js")]
    given = json.dumps({"mark": mark, "files": [*files, *_KEPT]})
    headers = {"service-worker-allowed": "/builds/", "cache-control": "no-cache"}
    return Response(f"const KEPT = {given};\n{_worker()}", media_type="text/javascript", headers=headers)


def machine_file(ask: Ask) -> Response:
    """The build as one file that needs neither us nor a network, to take along."""
    build = build_of(ask)
    text = machine_page(page_contents(plan_now(ask, build), ask.reader))
    return HTMLResponse(text, headers={"content-disposition": 'attachment; filename="machine.html"'})


def entries(ask: Ask) -> Response:
    """What came in after a position."""
    build = build_of(ask)
    after = ask.query.get("after", "0")
    if not after.isdigit() or len(after) > 15:
        raise Refusal(f'"{after[:40]}" is no position in a journal.', "Load the page again.")
    found, position = entries_after(folder_of(ask), build.id, int(after))
    return JSONResponse(
        {"entries": [one.as_dict() for one in found], "position": position, "token": ask.token}
    )


def take_entries(ask: Ask) -> Response:
    """Store entries; what the answer calls safe is on the disk."""
    build = build_of(ask)
    receipt = receive(folder_of(ask), build.id, _sent(ask.body))
    return JSONResponse({"safe": sorted(receipt.safe), "refused": dict(receipt.refused)})


def _sent(body: bytes) -> list[Any]:
    try:
        data = json.loads(body)
    except (ValueError, RecursionError):
        data = None
    sent = data.get("entries") if isinstance(data, dict) else None
    if not isinstance(sent, list) or len(sent) > MOST_SENT:
        raise Refusal(f"The message is no list of up to {MOST_SENT} entries.", "Load the page again.")
    return sent


def changes(ask: Ask) -> Response:
    """The plan as it is now, and in words what measured sizes changed in it."""
    plan = plan_now(ask, build_of(ask))
    return JSONResponse(
        {
            "plan_id": plan.plan_id,
            "words": spoken(" ".join(one.changed for one in plan.parts if one.changed), ask.reader.unit),
        }
    )
