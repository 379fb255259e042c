"""What a person does at the page."""

from __future__ import annotations

import re
from pathlib import Path

# a ten-inch tablet shows 800 x 1280 pixels of its own at 149 to the inch; enlarged by half in the browser
# they are 533 x 853 of about 1/99 inch, near the 1/96 inch that a pixel of a style sheet stands for
SIZES = {"phone": (390, 844), "tablet": (800, 1280), "enlarged": (533, 853), "desk": (1440, 900)}


def to_journal(page) -> None:
    """Open the first card, hold the part, face it: the step with the hold point is next."""
    for _ in range(3):
        page.click("#main")
    assert page.inner_text("h1") == "Turn journal, last two cuts"


def write_in(page, reading: str) -> None:
    """Type a reading with the keys of the panel and write it in."""
    for sign in reading:
        page.click(f'.key:text-is("{sign}")')
    page.click("#entry-write")


def saved(page, folder: Path) -> Path:
    """The made file that the button saves."""
    if page.locator("#to-list").count():
        page.click("#to-list")
    with page.expect_download() as wait:
        page.click("#save")
    path = folder / wait.value.suggested_filename
    wait.value.save_as(path)
    return path


def open_card(page, card: str, step: str = "") -> None:
    """Open a card of a served build and go on, ticking and measuring on the target, to the step named."""
    if page.locator("#to-list").count():
        page.click("#to-list")
    page.click(f'[data-card="{card}|1"]')
    for _ in range(40):
        if step and page.inner_text("h1").startswith(step):
            return
        if page.locator("#hold").count() or not step:
            return
        page.click("#main")
    raise AssertionError(f"{step} of {card} was not reached")


def measure(page, reading: str) -> None:
    """Write a reading in at the hold point that is open, whatever it is."""
    page.click("#hold .write >> nth=0")
    for sign in reading:
        page.click(f'.key:text-is("{sign}")')
    page.click("#entry-write")
    if page.locator("#entry-write").count():
        page.click("#entry-write")


def settled(page) -> None:
    """Wait until every mark is with the server and nothing is being planned."""
    page.wait_for_function(
        """() => { const words = document.querySelector('#sync p').textContent;
        return words.includes('All marks are kept') && !words.includes('planned again'); }"""
    )


def limits(page) -> str:
    """The limits of the first size at the open hold point, as written: "7.985 to 8.000 mm"."""
    return re.search(r"[0-9.]+ to [0-9.]+ (mm|in)", page.inner_text("#hold"))[0]
