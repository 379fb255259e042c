"""Back and forward by keyboard, and the fold-out that is loaded when it is opened, in a browser."""

from __future__ import annotations

import re

import pytest

pytestmark = pytest.mark.browser


def test_undo_and_redo_by_keyboard_but_never_out_of_a_field(page_at, demo):
    """Control and Z takes the last edit back, control and Y brings it again; in a field they are the field's own."""
    page = page_at("desk")
    page.goto(f"{demo}/parts/wheel")
    page.get_by_label(re.compile("^Ø26, change it")).first.click()
    page.locator("#edit input[name=figure]").first.fill("28")
    page.keyboard.press("Enter")
    page.get_by_text("Saved. Undo puts the earlier text back.").wait_for()

    page.locator("#edit input[name=figure]").first.focus()
    page.keyboard.press("Control+z")
    page.wait_for_timeout(300)
    assert page.get_by_label(re.compile("^Ø28, change it")).count() >= 1
    page.locator("h1").click()
    page.keyboard.press("Control+z")
    page.get_by_text("The earlier text is back.").wait_for()
    assert page.get_by_label(re.compile("^Ø26, change it")).count() >= 1
    page.keyboard.press("Control+y")
    page.get_by_text("The later text is back.").wait_for()
    assert page.get_by_label(re.compile("^Ø28, change it")).count() >= 1
    page.get_by_role("button", name="Undo the last edit").click()
    page.get_by_text("The earlier text is back.").wait_for()


@pytest.mark.parametrize("width", ["phone", "desk"])
def test_the_price_of_another_holding_is_searched_when_its_fold_is_opened(page_at, demo, axe, shoot, width):
    """Nothing before; then the way, its minutes and what changes, without leaving the route."""
    page = page_at(width)
    page.goto(f"{demo}/route/wheel")
    fold = page.locator("details", has_text="what else would hold it").nth(1)
    assert page.locator(".instead").count() == 0
    fold.locator("summary").first.click()
    fold.get_by_text(re.compile("instead of .* min more")).first.wait_for()
    assert page.url.endswith("/route/wheel")
    assert axe(page) == []
    shoot(page, f"instead-{width}")
