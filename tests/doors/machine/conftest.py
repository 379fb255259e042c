"""A browser without a network, and plans opened from the disc."""

from __future__ import annotations

import itertools
from dataclasses import replace

import pytest

from tommybar.pack.machine import write_machine_file

from .handmade_plan import handmade_plan
from .moves import SIZES

NUMBERS = itertools.count(1)


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
