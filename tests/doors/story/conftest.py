"""An empty folder that is served, devices that open it, and pictures of what they show."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from .served import Served

AXE = Path(__file__).parents[1] / "axe-core-4.14.1" / "axe.min.js"
WIDTHS = {"phone": (390, 844), "tablet": (800, 1100), "desk": (1440, 1000)}
SHOTS = Path(__file__).parents[3] / "build" / "story"
OFTENER = """{ const every = window.setInterval;
window.setInterval = (deed, ms) => every(deed, ms === 4000 ? 300 : ms); }"""  # the page looks at the server
ASKED_FOR = r"status of 40[04]|ERR_(CONNECTION_\w+|EMPTY_RESPONSE|FAILED|INTERNET_DISCONNECTED)"


@pytest.fixture(scope="session")
def serve(tmp_path_factory):
    """Serve a folder that has nothing in it."""
    servers = []

    def one(name):
        servers.append(Served(tmp_path_factory.mktemp(name)))
        return servers[-1]

    yield one
    for server in servers:
        server.kill()


@pytest.fixture(scope="session")
def devices(chromium):
    """Open a device of its own at one of the three widths; what the browser complains of is kept."""
    faults: list[str] = []
    contexts = []

    def open_device(server, width, **cookies):
        wide, tall = WIDTHS[width]
        context = chromium.new_context(
            viewport={"width": wide, "height": tall},
            base_url=server.address,
            has_touch=width != "desk",
            accept_downloads=True,
        )
        contexts.append(context)
        context.add_cookies([{"name": k, "value": v, "url": server.address} for k, v in cookies.items()])
        context.add_init_script(OFTENER)
        page = context.new_page()
        page.set_default_timeout(60_000)
        page.on("pageerror", lambda fault: faults.append(str(fault)))
        page.on("console", lambda said: faults.append(said.text) if unforeseen(said) else None)
        return page

    open_device.faults = faults
    yield open_device
    for one in contexts:
        one.close()


def unforeseen(said):
    """An error on the console that neither a refusal nor a cut that was asked for explains."""
    return said.type == "error" and not re.search(ASKED_FOR, said.text)


@pytest.fixture(scope="session")
def serious():
    """Find what the accessibility rules call serious or critical on a page."""
    source = AXE.read_text(encoding="utf-8")

    def find(page):
        page.evaluate(source)
        found = page.evaluate("axe.run(document, {resultTypes: ['violations']})")["violations"]
        return [
            f"{one['id']} {one['nodes'][0]['html'][:100]}"
            for one in found
            if one["impact"] in ("serious", "critical")
        ]

    return find


@pytest.fixture(scope="session")
def shoot():
    """Keep a picture of a page under build/story."""
    SHOTS.mkdir(parents=True, exist_ok=True)

    def take(page, name):
        page.screenshot(path=SHOTS / f"{name}.png")

    return take
