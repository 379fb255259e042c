"""What a person does at the page."""

from __future__ import annotations

from pathlib import Path

SIZES = {"phone": (390, 844), "tablet": (800, 1200), "desk": (1440, 900)}


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
