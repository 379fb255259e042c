"""Take the pictures of the manual: the page of an evening in Debian's Chromium, into docs/pictures."""

from __future__ import annotations

import re
import shutil
import subprocess
import sys
import time
import urllib.request
from pathlib import Path
from tempfile import TemporaryDirectory

from playwright.sync_api import Page, sync_playwright

FOLDER = Path(__file__).resolve().parents[1] / "docs" / "pictures"
PORT = 8791
ADDRESS = f"http://127.0.0.1:{PORT}"


def main() -> None:
    """Serve an empty folder, work through the evening, and take a picture at each station."""
    FOLDER.mkdir(parents=True, exist_ok=True)
    with TemporaryDirectory() as things:
        command = [
            str(Path(sys.executable).parent / "tommybar"),
            "serve",
            "--port",
            str(PORT),
            "--folder",
            things,
        ]
        server = subprocess.Popen(command, stdout=subprocess.DEVNULL)
        try:
            _wait()
            with sync_playwright() as play:
                browser = play.chromium.launch(
                    executable_path=shutil.which("chromium"), args=["--no-sandbox"]
                )
                page = browser.new_page(base_url=ADDRESS, viewport={"width": 1100, "height": 760})
                page.set_default_timeout(60_000)
                _evening(page)
                browser.close()
        finally:
            server.terminate()
            server.wait(10)


def _wait() -> None:
    for _ in range(400):
        try:
            urllib.request.urlopen(ADDRESS, timeout=5).close()
            return
        except OSError:
            time.sleep(0.05)
    raise SystemExit("The page did not come up.")


def _evening(page: Page) -> None:
    page.goto("/")
    page.wait_for_load_state("networkidle")
    _take(page, "designs")
    page.locator("#example-demonstrator").fill("demo")
    page.get_by_role("button", name="Begin with Hand-cranked").click()
    page.get_by_role("heading", name="What was found").wait_for()
    page.get_by_label("for the shop").select_option("small-bench")
    page.get_by_role("button", name="Plan for it").click()
    page.get_by_text("0.77 of the drawing").wait_for()
    for name, path in (
        ("overview", ""),
        ("sizes", "/sizes"),
        ("parts", "/parts/wheel?at=1"),
        ("stock", "/stock"),
        ("sheets", "/sheets"),
    ):
        page.goto(f"/designs/demo{path}")
        page.wait_for_load_state("networkidle")
        if name == "overview":
            page.locator("figure.solid canvas").wait_for()
        _take(page, name)
    page.goto("/designs/demo/route/wheel")
    fold = page.locator("details", has_text="what else would hold it").nth(1)
    fold.locator("summary").first.click()
    fold.get_by_text(re.compile("instead of .* min more")).first.wait_for()
    fold.scroll_into_view_if_needed()
    _take(page, "instead")
    page.goto("/designs/demo/route/shaft")
    page.get_by_text("section before and after").nth(1).click()
    page.locator(".rung").nth(1).scroll_into_view_if_needed()
    _take(page, "route")
    page.goto("/shops")
    page.get_by_label("What do you call it").fill("My shed")
    page.get_by_role("button", name="Walk through it").click()
    page.get_by_role("heading", name="The lathe").wait_for()
    _take(page, "walk")
    page.goto("/shops/my-shed/calibrate")
    _take(page, "calibrate")
    page.goto("/look-up/fit?what=8+H7/g6")
    _take(page, "look-up")
    page.goto("/builds")
    page.get_by_role("button", name="Begin").click()
    page.get_by_text("steps done").wait_for()
    address = re.sub(r"\?.*", "", page.url)
    page.set_viewport_size({"width": 1180, "height": 900})
    page.goto(f"{address}/machine")
    page.get_by_role("button", name=re.compile("card 1", re.I)).first.click()
    page.locator("#main").click()
    page.locator(".big").wait_for()
    page.wait_for_timeout(800)
    _take(page, "machine")
    page.click("#to-list")
    page.click('[data-card="shaft/1|1"]')
    while not page.locator("#hold").count():
        page.locator("#main").click()
    page.locator("#hold .write").first.click()
    page.click("#nudge-up")
    _take(page, "reading")
    page.keyboard.press("Escape")
    page.set_viewport_size({"width": 1100, "height": 760})
    page.goto(f"{address}/rescue")
    _take(page, "rescue")
    page.get_by_role("link", name="Bore reamed oversize").click()
    page.get_by_label("the size of the bore").fill("wheel.bore")
    page.get_by_label("what it measures [mm]").fill("8.035")
    page.get_by_role("button", name="Show the ways out").click()
    page.get_by_role("button", name="Take this way").first.wait_for()
    _take(page, "ways-out")
    page.goto("/archive")
    page.locator("main code").first.evaluate("one => { one.textContent = '~/.local/share/tommybar'; }")
    _take(page, "archive")


def _take(page: Page, name: str) -> None:
    page.wait_for_timeout(300)
    page.screenshot(path=FOLDER / f"{name}.png")
    print(FOLDER / f"{name}.png")


if __name__ == "__main__":
    main()
