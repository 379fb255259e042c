"""The page that shows how far a piece of work is, and lets it be stopped."""

from __future__ import annotations

from starlette.responses import HTMLResponse, RedirectResponse, Response

from tommybar.web.ask import Ask, WorkingPage, answer, go_to


def working(ask: Ask) -> Response:
    """The page, or the one that shows what came of the work."""
    work = ask.desk.works.named(str(ask.path["work"]))
    if work.done.is_set():
        work.outcome()
        return RedirectResponse(work.back, 303)
    return answer(ask, "working.html", WorkingPage(work.what, work.name, work.words))


def state(ask: Ask) -> Response:
    """How far it is: a piece of the page; when it is done, the browser is sent on."""
    work = ask.desk.works.named(str(ask.path["work"]))
    if work.done.is_set():
        again = work.back if work.error is None else f"/work/{work.name}"
        return HTMLResponse("", headers={"HX-Redirect": again})
    return answer(ask, "working_state.html", WorkingPage(work.what, work.name, work.words))


def stop(ask: Ask) -> Response:
    """Stop it at its next stage."""
    ask.desk.works.named(str(ask.path["work"])).stop()
    return go_to("/", "stopped")
