"""The pages that a build needs, and the machine walk, at three widths, in both looks and both units."""

from __future__ import annotations

import time
import urllib.request

import pytest

from tommybar.bench.builds import start_build
from tommybar.bench.entries import new_entry
from tommybar.bench.folder import open_folder
from tommybar.bench.journal import receive
from tommybar.shop import example_shops

from .the_build import at_the_machine, read

pytestmark = pytest.mark.browser

DESIGN = example_shops()["shop-r"].parents[1] / "demonstrator" / "design.yaml"
# what the page's own test does not open already
PAGES = {
    "walk": "/shops/shed/walk/machine",
    "walk-jaws": "/shops/shed/walk/jaws",
    "walk-drawer": "/shops/shed/walk/drawer",
    "calibrate": "/shops/shed/calibrate",
    "shop-text": "/shops/shed/text",
    "parts-add": "/designs/wheel/parts/shaft",
    "sizes": "/designs/wheel/sizes",
    "route": "/designs/wheel/route/bush",
    "stock": "/designs/wheel/stock",
    "builds": "/builds",
    "build": "{build}",
    "rescue": "{build}/rescue",
    "rescue-form": "{build}/rescue?number=1",
    "archive": "/archive",
    "look-up": "/look-up",
    "look-up-fit": "/look-up/fit?what=8+H7/f7",
    "not-here": "/nowhere",
}
LOOKS = {
    "phone": {"light": "day", "unit": "in"},
    "tablet": {"light": "night", "unit": "mm"},
    "desk": {"light": "day", "unit": "mm"},
}
SIDEWAYS = "document.documentElement.scrollWidth - document.documentElement.clientWidth"
SMALL = """Array.from(document.querySelectorAll("button, .as-button, select, nav a, input:not([type=hidden])"))
  .filter((one) => one.offsetParent && !one.closest("svg"))
  .map((one) => [one, (one.type === "checkbox" ? one.closest("label") : one).getBoundingClientRect()])
  .filter(([one, box]) => box.width && Math.min(box.width, box.height) < 24)
  .map(([one, box]) => `${one.outerHTML.slice(0, 80)} ${Math.round(box.width)} x ${Math.round(box.height)}`)"""


@pytest.fixture(scope="module")
def shed(serve):
    """A served folder with a shop, a design and a build in which two devices disagree; and the build's address."""
    server = serve("widths")
    folder = open_folder(server.folder)
    folder.save_design("wheel", DESIGN.read_text(encoding="utf-8"))
    folder.save_shop("shed", example_shops()["small-bench"].read_text(encoding="utf-8"))
    build = start_build(folder, "wheel", "shed", title="Evening wheel", scale=0.77)
    said = [
        new_entry("size", "wheel.bore", device=device, number=1, by=by, value=value)
        for device, by, value in (("tablet", "AB", 8.02), ("phone", "CD", 8.024))
    ]
    assert receive(folder, build.id, said).stored
    for path in ("/designs/wheel/sizes", f"/builds/{build.id}"):
        while b"Stop it" in urllib.request.urlopen(server.address + path, timeout=60).read():
            time.sleep(0.2)  # it is being planned
    return server, f"/builds/{build.id}"


@pytest.mark.parametrize("width", ["phone", "tablet", "desk"])
def test_every_page_fits_is_accessible_and_has_no_small_targets(shed, devices, shoot, serious, width):
    """Nothing runs off the side, no target is under 24 px, the scan finds nothing serious."""
    server, build = shed
    page = devices(server, width, **LOOKS[width])
    faults = []
    for name, path in PAGES.items():
        page.goto(path.format(build=build))
        page.wait_for_load_state()
        if name == "parts-add":
            page.get_by_text("Add something to this part").click()
        wide = page.evaluate(SIDEWAYS)
        faults += [f"{name}: {wide} px too wide"] if wide > 0 else []
        faults += [f"{name}: {small}" for small in page.evaluate(SMALL)]
        shoot(page, f"{name}-{width}")
        if width == "desk":
            continue  # what the scan looks at is the same at any width
        faults += [f"{name}: {one}" for one in serious(page)]
    assert faults == []
    assert devices.faults == []


@pytest.mark.parametrize("width", ["phone", "tablet", "desk"])
def test_the_machine_walk_fits_and_shows_what_rules(shed, devices, shoot, serious, width):
    """From the list to a hold point and a reading: the number is on the screen and nothing lies over it."""
    server, build = shed
    page = devices(server, width, **LOOKS[width])
    at_the_machine(page, build)
    shoot(page, f"machine-list-{width}")
    assert page.evaluate(SIDEWAYS) <= 0
    assert serious(page) == []
    page.click('[data-card="bush/1|1"]')
    shoot(page, f"machine-grip-{width}")
    for _ in range(30):
        if page.locator("#hold").count():
            break
        page.click("#main")
        assert page.evaluate(SIDEWAYS) <= 0
        bar, digits = page.locator("#view .acts").bounding_box(), page.locator(".big .digits").first
        if digits.count():
            box = digits.bounding_box()
            assert box["y"] >= 0 and box["y"] + box["height"] <= bar["y"]
    shoot(page, f"machine-hold-{width}")
    assert serious(page) == []
    page.click("#hold .write >> nth=0")
    shoot(page, f"machine-read-{width}")
    assert serious(page) == []
    assert page.evaluate(SIDEWAYS) <= 0
    page.keyboard.press("Escape")
    size = page.locator("#hold [data-size]").first.get_attribute("data-size")
    read(page, size, None)
    page.locator("text=Stop for today").first.click()
    shoot(page, f"machine-stop-{width}")
    assert serious(page) == []
    assert devices.faults == []
