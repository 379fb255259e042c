"""The main story in a browser: a first evening from an empty folder to a pack, at three widths."""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import expect

pytestmark = pytest.mark.browser

PAGES = {
    "designs": "/",
    "overview": "/designs/demo",
    "sizes": "/designs/demo/sizes",
    "part": "/designs/demo/parts/wheel",
    "touched": "/designs/demo/parts/wheel?at=1#edit",
    "stock": "/designs/demo/stock",
    "route": "/designs/demo/route/shaft",
    "checks": "/designs/demo/checks",
    "sheets": "/designs/demo/sheets",
    "sheet": "/designs/demo/sheets/1",
    "text": "/designs/demo/text",
    "shops": "/shops",
    "look-up": "/look-up/thread?what=M6",
    "pair": "/pair",
}


def test_the_first_page_comes_within_a_second_of_work(served):
    """From the command to the first page; the bound leaves room for a machine that is busy with tests."""
    assert served[1] < 4.0


@pytest.mark.parametrize("width", ["phone", "tablet", "desk"])
def test_every_page_fits_its_width_and_is_accessible(page_at, demo, axe, shoot, width):
    """No page is wider than the screen; the scan finds nothing serious, by day and by night."""
    for night in (False, True):
        page = page_at(width, night)
        for name, path in PAGES.items():
            page.goto(path)
            page.wait_for_load_state("networkidle")
            wide = page.evaluate(
                "document.documentElement.scrollWidth - document.documentElement.clientWidth"
            )
            assert wide <= 0, (name, wide)
            if width == "desk" or not night:
                assert axe(page) == [], name
            shoot(page, f"{name}-{width}{'-night' if night else ''}")


def test_a_first_evening(page_at, demo, shoot):
    """Size held, dimension touched and changed, fault told, undone, pack written and taken away."""
    page = page_at("desk")
    page.goto("/")
    page.get_by_role("link", name="Hand-cranked flywheel demonstrator").click()
    page.get_by_role("navigation", name="Pages of this design").get_by_role("link", name="Parts").click()
    page.get_by_label(re.compile("^Ø26, change it")).first.click()
    field = page.locator("#edit input[name=figure]").first
    expect(field).to_be_focused()
    field.fill("2 +")
    page.get_by_role("button", name="Keep it").first.click()
    assert page.locator("#edit .complaints").first.inner_text().count("breaks off") == 1
    assert page.locator("#edit input[name=figure]").first.input_value() == "2 +"
    page.locator("#edit input[name=figure]").first.fill("28")
    page.keyboard.press("Enter")
    page.get_by_text("Saved. Undo puts the earlier text back.").wait_for()
    assert page.get_by_label(re.compile("^Ø28, change it")).count() >= 1
    page.get_by_role("button", name="Undo the last edit").click()
    page.get_by_text("The earlier text is back.").wait_for()
    assert page.get_by_label(re.compile("^Ø26, change it")).count() >= 1

    page.get_by_role("link", name="Sheets").click()
    page.get_by_role("button", name="Write the files").click()
    page.get_by_role("link", name="pack.pdf").wait_for()
    shoot(page, "files-desk")
    with page.expect_download() as download:
        page.get_by_role("link", name="pack.pdf").click()
    assert download.value.path().read_bytes().startswith(b"%PDF")


def test_a_shop_is_walked_through_with_the_keyboard_alone(page_at, shoot):
    """Typed, tabbed and entered; what was said stands in the file, the rest is marked as taken."""
    page = page_at("tablet")
    page.goto("/shops")
    page.get_by_label("What do you call it").fill("Back shed")
    page.keyboard.press("Enter")
    page.get_by_role("heading", name="The lathe").wait_for()
    expect(page.get_by_label("What lathe is it")).to_be_focused()
    for words in ("little lathe", "55", "110", "72"):
        page.keyboard.type(words)
        page.keyboard.press("Tab")
    shoot(page, "walk-tablet")
    page.keyboard.press("Enter")
    page.get_by_role("heading", name="Spindle and drive").wait_for()
    page.goto("/shops/back-shed/text")
    text = page.get_by_label("The file, comments and all").input_value()
    assert "name: little lathe, centre_height: 55, swing_over_bed: 110, swing_over_cross_slide: 72" in text


def test_a_dimension_is_changed_by_touch_on_the_phone(page_at, demo):
    """A finger on the dimension opens its field; the place to touch is large enough on a tablet."""
    page = page_at("tablet", touch=True)
    page.goto(f"{demo}/parts/shaft")
    place = page.get_by_label(re.compile("change it")).first
    box = place.locator("rect").bounding_box()
    assert min(box["width"], box["height"]) >= 20
    place.tap()
    page.locator("#edit input[name=figure]").first.wait_for()


def test_pages_work_without_scripts(chromium, served, demo):
    """Everything but pictures that load by themselves is there with scripts forbidden."""
    context = chromium.new_context(base_url=served[0], java_script_enabled=False)
    page = context.new_page()
    page.goto(f"{demo}/parts/wheel?at=1#edit")
    assert page.locator("#edit input[name=figure]").count() >= 1
    page.goto(f"{demo}/sizes")
    assert page.get_by_role("button", name="Work out again").count() == 1
    context.close()


def test_a_page_prints_without_what_is_only_for_the_screen(page_at, demo):
    """On paper there are no bars, fields and places to touch; ink is black."""
    page = page_at("desk", night=True)
    page.goto(f"{demo}/parts/wheel?at=1")
    page.emulate_media(media="print")
    for hidden in ("header.bar", ".tabs", "#edit", ".touch >> nth=0"):
        assert not page.locator(hidden).is_visible(), hidden
    assert page.evaluate("getComputedStyle(document.body).color") == "rgb(0, 0, 0)"
    page.goto(f"{demo}/stock")
    assert page.locator("svg.bar").first.is_visible()
    page.goto(f"{demo}/sheets/1")
    assert page.locator("svg.sheet-drawing").is_visible()
    assert not page.get_by_role("button", name="Print").is_visible()


def test_a_rung_is_read_across_the_whole_phone(page_at, demo):
    """A long figure such as a tap's stands above the words and does not squeeze them to a word a line."""
    page = page_at("phone")
    page.goto("/designs/demo/route/shaft")

    rungs = page.locator(".rung-words").all()
    assert rungs
    for rung in rungs:
        whole, do = rung.bounding_box()["width"], rung.locator(".rung-do").bounding_box()["width"]
        assert do > 0.95 * whole
