"""At the machine while the server is gone: the page loads anew, marks wait, and arrive once and in order."""

from __future__ import annotations

import pytest
from playwright.sync_api import expect

from .moves import measure, open_card, settled

pytestmark = pytest.mark.browser
KEPT = """async () => (await Promise.all((await caches.keys()).map(async (name) =>
  (await (await caches.open(name)).keys()).map((one) => new URL(one.url).pathname)))).flat().sort()"""


def test_the_page_is_loaded_anew_without_the_server_and_every_mark_arrives_once(house, device):
    """Server killed, page reloaded, steps and a size done, reloaded again; started again, all comes in order."""
    build = house.begin("power cut")
    page = device(build)
    assert page.get_attribute("html", "data-kept") == "yes"
    open_card(page, "wheel/1", "Drill bore 4.5")
    settled(page)
    before = [one.key for one in house.journal(build)]
    house.kill()
    try:
        page.reload()
        assert page.inner_text("h1").startswith("Drill bore 4.5")
        page.click("#main")
        page.click("#main")
        measure(page, "6.5")
        page.reload()
        expect(page.locator("#sync")).to_contain_text("3 marks wait", timeout=15_000)
        assert page.inner_text("#hold .write").startswith("dish deep 6.5")
        page.click("#main")
    finally:
        house.start()
    settled(page)

    stored = house.journal(build)
    assert [one.key for one in stored] == [
        *before, "wheel/1/bore.drill-4.5", "wheel/1/bore.drill-7.8", "wheel.dish.deep", "wheel/1/dish.recess",
    ]  # fmt: skip
    assert before == ["wheel/1/gripped", "wheel/1/face-A.face", "wheel/1/bore.centre-1.6"]
    numbers = [one.number for one in stored]
    assert numbers == sorted(set(numbers))


def test_a_mark_whose_answer_is_lost_is_stored_once(house, device):
    """The server stores it, the answer never comes, the page is loaded anew: the journal has it once."""
    build = house.begin("lost answer")
    page = device(build)

    def lose(route):
        if route.request.method == "POST":
            route.fetch()
            route.abort()
        else:
            route.continue_()

    page.route("**/entries*", lose)
    open_card(page, "wheel/1", "Centre drill")
    page.wait_for_timeout(1500)
    assert [one.key for one in house.journal(build)] == ["wheel/1/gripped", "wheel/1/face-A.face"]
    page.unroute("**/entries*")
    page.reload()
    page.click("#main")
    settled(page)

    assert [one.key for one in house.journal(build)] == [
        "wheel/1/gripped",
        "wheel/1/face-A.face",
        "wheel/1/bore.centre-1.6",
    ]


def test_only_the_page_and_its_own_files_are_kept(house, device):
    """Entries, other pages and other builds are not in the browser's store; another build keeps its own page."""
    build, other = house.begin("one"), house.begin("other")
    page = device(build)
    open_card(page, "wheel/1", "Centre drill")
    settled(page)
    page.goto(f"/builds/{other}")
    page.goto(f"/builds/{build}/machine")
    page.evaluate(
        f"Promise.all(['entries?after=0', 'changes', 'made'].map((one) => fetch('/builds/{build}/' + one)))"
    )

    files = ["/static/fonts/400.woff2", "/static/fonts/700.woff2", "/static/icon.svg"]
    assert page.evaluate(KEPT) == sorted(
        [f"/builds/{build}/machine", "/static/machine.css", "/static/machine.js", *files]
    )


def test_a_browser_that_is_no_longer_let_in_keeps_nothing(house, device):
    """When the server sends the page away, what was kept of it goes."""
    page = device(house.begin("shut out"))
    here = page.url
    assert any(path.endswith("/machine") for path in page.evaluate(KEPT))
    page.context.route("**/machine", lambda route: route.fulfill(status=403, body="no"))
    page.goto(here)
    page.wait_for_timeout(300)

    assert not any(path.endswith("/machine") for path in page.evaluate(KEPT))


def test_where_pages_cannot_be_kept_the_page_says_so_and_offers_its_file(house, device, chromium, tmp_path):
    """Over plain http from another machine: leave it open, or take the file along, which needs no server."""
    build = house.begin("shed")
    house.write(build, "tick", "wheel/1/1")
    page = device(build, before="delete Navigator.prototype.serviceWorker")
    assert page.get_attribute("html", "data-kept") == "no"
    assert "cannot be loaded anew without the PC" in page.inner_text("#sync")
    open_card(page, "wheel/1", "Drill bore 4.5")
    house.kill()
    try:
        page.click("#main")
        assert page.inner_text("h1").startswith("Drill bore 7.8")
    finally:
        house.start()
    settled(page)
    assert "wheel/1/bore.drill-4.5" in [one.key for one in house.journal(build)]
    page.click("#to-list")
    with page.expect_download() as wait:
        page.get_by_role("link", name="File to take along").click()
    wait.value.save_as(tmp_path / "machine.html")

    context = chromium.new_context()
    context.set_offline(True)
    shed = context.new_page()
    shed.goto((tmp_path / "machine.html").as_uri())
    assert "3 of 9 steps" in shed.inner_text('[data-card="wheel/1|1"]')
    shed.click('[data-card="wheel/1|1"]')
    shed.click("#main")
    shed.click("#to-list")
    with shed.expect_download() as wait:
        shed.click("#save")
    wait.value.save_as(tmp_path / "made.yaml")
    context.close()
    page.set_input_files("#import", tmp_path / "made.yaml")
    page.wait_for_selector('#told:has-text("1 of them new")')
    settled(page)
    assert [one.key for one in house.journal(build)].count("wheel/1/bore.drill-7.8") == 1
