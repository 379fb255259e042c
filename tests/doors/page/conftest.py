"""A server as a person starts it, and a browser that no fault of a page gets past."""

from __future__ import annotations

import re
import socket
import subprocess
import sys
import time
import urllib.request
from pathlib import Path

import pytest

AXE = Path(__file__).parent.parent / "axe-core-4.14.1" / "axe.min.js"
WIDTHS = {"phone": (390, 844), "tablet": (800, 1100), "desk": (1440, 1000)}
SHOTS = Path(__file__).parents[3] / "build" / "page"


@pytest.fixture(scope="session")
def served(tmp_path_factory):
    """The address of a page that runs in a process of its own, and the seconds until it answered."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        port = probe.getsockname()[1]
    folder = tmp_path_factory.mktemp("things")
    command = [
        Path(sys.executable).parent / "tommybar",
        "serve",
        "--port",
        str(port),
        "--folder",
        str(folder),
    ]
    started = time.monotonic()
    process = subprocess.Popen(command, stdout=subprocess.DEVNULL)
    address = f"http://127.0.0.1:{port}"
    while True:
        try:
            urllib.request.urlopen(address, timeout=5).close()
            break
        except OSError:
            assert process.poll() is None and time.monotonic() - started < 30
            time.sleep(0.02)
    yield address, time.monotonic() - started
    process.terminate()
    process.wait(10)


@pytest.fixture
def page_at(chromium, served):
    """Open pages at one of the three widths; what the browser complains of fails the test."""
    faults: list[str] = []
    contexts = []

    def open_page(width="desk", night=False, touch=False):
        wide, tall = WIDTHS[width]
        context = chromium.new_context(
            viewport={"width": wide, "height": tall},
            base_url=served[0],
            has_touch=touch,
            accept_downloads=True,
        )
        contexts.append(context)
        if night:
            context.add_cookies([{"name": "light", "value": "night", "url": served[0]}])
        page = context.new_page()
        page.set_default_timeout(60_000)
        page.on("pageerror", lambda fault: faults.append(str(fault)))
        page.on("console", lambda said: faults.append(said.text) if unforeseen(said) else None)
        page.on(
            "request", lambda asked: faults.append(asked.url) if not asked.url.startswith(served[0]) else None
        )
        return page

    yield open_page
    for one in contexts:
        one.close()
    assert faults == []


def unforeseen(said):
    """An error on the console, other than a refusal or a cut of the network that a test asked for."""
    return said.type == "error" and not re.search(r"status of 400|INTERNET_DISCONNECTED", said.text)


@pytest.fixture(scope="session")
def demo(chromium, served):
    """The demonstrator opened as demo and planned for the small bench; gives its address."""
    page = chromium.new_page(base_url=served[0])
    page.set_default_timeout(60_000)
    page.goto("/")
    page.locator("#example-demonstrator").fill("demo")
    page.get_by_role("button", name="Begin with Hand-cranked").click()
    page.get_by_role("heading", name="What was found").wait_for()
    page.get_by_label("for the shop").select_option("small-bench")
    page.get_by_role("button", name="Plan for it").click()
    page.get_by_text("0.77 of the drawing").wait_for()
    page.close()
    return "/designs/demo"


@pytest.fixture(scope="session")
def axe():
    """Find what the accessibility rules call serious or critical on a page: (rule, element)."""
    source = AXE.read_text(encoding="utf-8")

    def find(page):
        page.evaluate(source)
        found = page.evaluate("axe.run(document, {resultTypes: ['violations']})")
        return [
            (one["id"], node["html"][:120])
            for one in found["violations"]
            if one["impact"] in ("serious", "critical")
            for node in one["nodes"]
        ]

    return find


@pytest.fixture(scope="session")
def shoot():
    """Keep a picture of a page under build/page."""
    SHOTS.mkdir(parents=True, exist_ok=True)

    def take(page, name):
        page.screenshot(path=SHOTS / f"{name}.png")

    return take
