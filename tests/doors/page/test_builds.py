"""At the machine in a browser: marks kept while the server is away, two devices on one build."""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import expect

pytestmark = pytest.mark.browser


@pytest.fixture(scope="module")
def begun(chromium, served):
    """A build of a disc, begun on the page; gives its address."""
    page = chromium.new_page(base_url=served[0])
    page.set_default_timeout(60_000)
    page.goto("/")
    page.locator("#disc-name").fill("build disc")
    page.locator("form.start").first.get_by_role("button", name="Begin").click()
    page.get_by_role("heading", name="What was found").wait_for()
    page.goto("/builds")
    page.get_by_label("Design").select_option("build-disc")
    page.get_by_label("What is it called").fill("Evening disc")
    page.get_by_role("button", name="Begin").click()
    page.get_by_text("steps done").wait_for()
    address = re.sub(r"\?.*", "", page.url)
    page.close()
    return address


def at_the_machine(page, address):
    """Open the first card's first step."""
    page.goto(f"{address}/machine")
    page.get_by_role("button", name=re.compile("card 1", re.I)).first.click()
    page.locator("#main").click()
    page.locator(".big").wait_for()


def marks(page):
    """What the bar says of the marks."""
    return page.locator("#sync p")


def test_marks_wait_while_the_server_is_away_and_are_sent_once(page_at, begun, served, shoot, axe):
    """Offline the route goes on; when the network is back, every mark is stored, none twice."""
    page = page_at("tablet")
    at_the_machine(page, begun)
    expect(marks(page)).to_contain_text("All marks are kept on the PC")
    assert axe(page) == []
    shoot(page, "machine-tablet")
    page.context.set_offline(True)
    first = page.locator("#view").inner_text()
    page.locator("#main").click()
    expect(page.locator("#view")).not_to_have_text(first)
    expect(marks(page)).to_contain_text("The server is away", timeout=15_000)
    page.context.set_offline(False)
    expect(marks(page)).to_contain_text("All marks are kept on the PC", timeout=15_000)

    stored = page.evaluate(f"fetch('{begun}/entries?after=0').then((one) => one.json())")["entries"]
    ids = [one["id"] for one in stored]
    assert len(ids) == len(set(ids)) >= 2
    assert {one["kind"] for one in stored} == {"tick"}


def test_a_second_device_sees_the_ticks_and_goes_on(page_at, begun, shoot):
    """What the tablet ticked is done on the phone; a mark of the phone comes back to the tablet."""
    tablet, phone = page_at("tablet"), page_at("phone")
    at_the_machine(tablet, begun)
    here = tablet.locator("#view").inner_text()
    phone.goto(f"{begun}/machine")
    phone.get_by_role("button", name=re.compile("card 1", re.I)).first.click()
    if not phone.locator(".big").count():
        phone.locator("#main").click()
    phone.locator(".big").wait_for()
    shoot(phone, "machine-phone")
    count = (
        "fetch(location.pathname.replace('machine', 'entries') + '?after=0')"
        ".then((one) => one.json()).then((one) => one.entries.length)"
    )
    before = phone.evaluate(count)
    phone.locator("#main").click()
    expect(marks(phone)).to_contain_text("All marks are kept on the PC", timeout=15_000)
    phone.wait_for_timeout(300)
    assert phone.evaluate(count) > before
    tablet.wait_for_timeout(6_000)
    done = "JSON.parse(localStorage.getItem('tommybar:build ' + location.pathname.split('/')[2])).length"
    assert tablet.evaluate(done) == tablet.evaluate(count), here
