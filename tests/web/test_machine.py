"""A build at the machine, as the server gives it: the worker, what is named by content, the file to take along."""

from __future__ import annotations

import json
import re

import pytest

from tommybar.web.pages import machine


@pytest.fixture(scope="module")
def build(opened):
    """The address of a build of the demonstrator."""
    answer = opened.settled(opened.post("/builds", {"design": "demo", "title": "At the machine"}))
    return str(answer.url).partition("?")[0].replace("http://127.0.0.1:8700", "")


def test_the_worker_may_stand_over_builds_alone(opened):
    """Its header names builds; the browser asks for it anew each time; no data of anyone is in it."""
    answer = opened.get("/static/machine-worker.js")

    assert answer.headers["service-worker-allowed"] == "/builds/"
    assert answer.headers["cache-control"] == "no-cache"
    assert answer.headers["content-type"].startswith("text/javascript")


def test_page_and_worker_name_the_same_scripts_by_their_content(opened, build, monkeypatch):
    """One mark in the page and in the worker; another script, another mark."""
    kept = json.loads(re.match(r"const KEPT = (.*);", opened.get("/static/machine-worker.js").text)[1])
    page = opened.settled(opened.get(f"{build}/machine"))
    named = re.findall(r'(?:href|src)="(/static/machine[^"]*)"', page.text)

    assert named and set(named) < set(kept["files"])
    assert all(one.endswith(kept["mark"]) for one in named)
    for one in kept["files"]:
        assert opened.get(one).status_code == 200, one
    machine.content_mark.cache_clear()
    monkeypatch.setattr(machine, "_script", lambda: "another")
    other = machine.content_mark()
    machine.content_mark.cache_clear()
    assert other != kept["mark"]


def test_only_the_page_itself_is_marked_to_be_kept(opened, build):
    """The worker lays aside what carries a plan's id; a page that tells of progress or refuses does not."""
    page = opened.settled(opened.get(f"{build}/machine"))
    data = json.loads(re.search(r'(?s)id="contents">(.*?)</script>', page.text)[1])

    assert page.headers["x-plan"] == data["plan"]["id"]
    for path in (build, f"{build}/entries", f"{build}/made", "/builds/00000000-none/machine", "/builds"):
        assert "x-plan" not in opened.get(path).headers, path


def test_the_file_to_take_along_needs_nothing_else(opened, build):
    """Handed out as a file; style, script and fonts are in it."""
    answer = opened.settled(opened.get(f"{build}/machine-file"))

    assert answer.headers["content-disposition"] == 'attachment; filename="machine.html"'
    assert "function drawStep" in answer.text
    assert not re.search(r'(?:src|href)="(?!data:)', answer.text)
    assert "/static/" not in answer.text
