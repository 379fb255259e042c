"""Long work: shown, waited for, stopped."""

from __future__ import annotations

import threading

import pytest

from tommybar.web.settings import Settings
from tommybar.web.work import Works


def test_work_tells_its_stage_and_gives_its_result():
    """The words are the last stage; the result is there when it is done."""
    go = threading.Event()
    work = Works().begin("The sum", "/", lambda tell: (tell("adding"), go.wait(5), 42)[2])
    go.set()

    assert work.done.wait(5)
    assert work.words == "adding"
    assert work.outcome() == 42


def test_work_is_stopped_at_its_next_stage():
    """Nothing is done after the stage at which it was stopped."""
    begun, go, seen = threading.Event(), threading.Event(), []

    def deed(tell):
        tell("one")
        begun.set()
        go.wait(5)
        tell("two")
        seen.append("two")

    work = Works().begin("The plan", "/", deed)
    begun.wait(5)
    work.stop()
    go.set()

    assert work.done.wait(5)
    assert work.stopped
    assert seen == []
    with pytest.raises(ValueError, match="The plan was stopped"):
        work.outcome()


def test_a_plan_that_takes_longer_shows_its_progress(make_browser, words):
    """Without patience the page of a fresh design shows how far it is, then the design."""
    browser = make_browser(Settings(plan_patience=0.0))
    answer = browser.post("/designs", {"kind": "disc", "name": "disc", "a": "60", "b": "12"})

    assert "The plan is being worked out" in words(answer)
    assert "Stop it" in words(answer)
    state = answer.text.split('hx-get="')[1].split('"')[0]
    work = browser.app.state.desk.works.named(state.split("/")[2])
    assert work.done.wait(60)
    assert browser.get(state).headers["hx-redirect"] == "/designs/disc"
    assert "What was found" in words(browser.get("/designs/disc"))


def test_work_that_is_not_known_is_told(browser, words):
    """After a restart the page says to begin again."""
    assert "not known here any more" in words(browser.get("/work/ABCDEF"))


def test_the_same_plan_is_worked_out_once(opened, monkeypatch):
    """Pages of one design share their plan; another pin makes another."""
    made = []
    monkeypatch.setattr("tommybar.web.plans.planned", lambda inputs, tell: made.append(inputs))
    plans = opened.app.state.desk.plans

    first = plans.of("demo", "/")
    assert plans.of("demo", "/other") is first
    assert made == []
