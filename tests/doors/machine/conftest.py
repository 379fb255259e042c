"""A browser without a network, plans opened from the disc, and builds opened from a server."""

from __future__ import annotations

import itertools
import re
from dataclasses import replace

import pytest

from tommybar.pack.machine import write_machine_file

from .handmade_plan import handmade_plan
from .house import House
from .moves import SIZES

NUMBERS = itertools.count(1)
OFTENER = """{ const every = window.setInterval;
window.setInterval = (deed, ms) => every(deed, ms === 4000 ? 300 : ms); }"""  # the page looks at the server


@pytest.fixture(scope="session")
def context(chromium):
    """One browser profile without a network; each plan has an id, and so a place, of its own."""
    one = chromium.new_context(has_touch=True)
    one.set_offline(True)
    yield one
    one.close()


@pytest.fixture
def opened(context, tmp_path):
    """Open a plan's file from the disc; any fault of the page, or a call outwards, fails the test."""
    faults: list[str] = []
    pages = []

    def open_file(plan=None, size="tablet", units="mm"):
        plan = replace(plan or handmade_plan(), plan_id=f"{next(NUMBERS):08x}")
        path = write_machine_file(plan, tmp_path / "machine.html", units)
        page = context.new_page()
        pages.append(page)
        width, height = SIZES[size]
        page.set_viewport_size({"width": width, "height": height})
        page.on("pageerror", lambda fault: faults.append(str(fault)))
        page.on("console", lambda said: faults.append(said.text) if said.type == "error" else None)
        page.on("request", lambda asked: faults.append(asked.url) if asked.url.startswith("http") else None)
        page.goto(path.as_uri())
        return page

    yield open_file
    for page in pages:
        page.close()
    assert faults == []


@pytest.fixture(scope="session")
def house(tmp_path_factory):
    """A server that may be killed; a test that kills it starts it again."""
    one = House(tmp_path_factory.mktemp("house"))
    yield one
    one.kill()


@pytest.fixture
def device(chromium, house):
    """Open a build on a device of its own; a fault of the page fails the test, a server that is gone does not."""
    faults: list[str] = []
    contexts = []

    def open_build(build, size="tablet", clock=False, before="", **cookies):
        width, height = SIZES[size]
        context = chromium.new_context(viewport={"width": width, "height": height}, base_url=house.address)
        contexts.append(context)
        context.add_cookies([{"name": k, "value": v, "url": house.address} for k, v in cookies.items()])
        context.add_init_script(OFTENER)
        page = context.new_page()
        page.on("pageerror", lambda fault: faults.append(str(fault)))
        page.on("console", lambda said: faults.append(said.text) if unforeseen(said) else None)
        if clock:
            page.clock.install()
        if before:
            page.add_init_script(before)
        page.goto(f"/builds/{build}/machine")
        page.wait_for_selector("[data-kept]")
        return page

    yield open_build
    for one in contexts:
        one.close()
    assert faults == []


def unforeseen(said):
    """An error on the console that a test did not bring about by taking the server away, be it in mid-answer."""
    return said.type == "error" and not re.search(
        r"ERR_(CONNECTION_\w+|EMPTY_RESPONSE|CONTENT_LENGTH_MISMATCH|FAILED)|status of 403", said.text
    )
