"""What happens to a build: parts made and measured, a bore too large, the network cut, a second device, an archive."""

from __future__ import annotations

import re

from playwright.sync_api import TimeoutError, expect
from tests.doors.machine.moves import settled

from .first_evening import JOURNAL_HIGH, JOURNAL_LOW


def begin(page, shoot):
    """A build of the design is begun and its cards are printed; gives its address."""
    page.get_by_role("link", name="Builds").click()
    page.get_by_label("What is it called").fill("Evening wheel")
    page.get_by_role("button", name="Begin", exact=True).click()
    page.get_by_text("steps done").wait_for()
    address = re.sub(r"\?.*", "", page.url)
    page.get_by_role("button", name="Write the cards to be printed").click()
    page.get_by_role("link", name="pack.pdf").wait_for()
    shoot(page, "09-begun")
    return address


def at_the_machine(page, address):
    """Open the route; it is kept in the browser."""
    page.goto(f"{address}/machine")
    page.wait_for_selector("[data-kept=yes]")


def to_list(page):
    """Go to the list of cards, if a card is open."""
    if page.locator("#to-list").count():
        page.click("#to-list")


def open_card(page, card, piece):
    """Open a card of the list; where a fresh plan just then draws the page anew, go to the list once more."""
    for _ in range(10):
        to_list(page)
        try:
            page.click(f'[data-card="{card}|{piece}"]', timeout=6000)
            return
        except TimeoutError:
            continue
    raise AssertionError(f"no way to {card}, piece {piece}")


def read(page, size, reading):
    """Write one reading in at the open hold point; with no figure, the target is taken by the nudge."""
    page.click(f'#hold [data-size="{size}"]')
    if reading is None:
        page.click("#nudge-up")
    for sign in reading or "":
        page.click(f'.key:text-is("{sign}")')
    page.click("#entry-write")
    if page.locator("#entry-write").count():
        page.click("#entry-write")  # outside or in doubt: a press of its own


def work(page, card, piece=1, readings=None, steps=99):
    """Work a card to its end, or for so many presses: every hold point is measured, every hole ticked."""
    open_card(page, card, piece)
    while (
        steps
        and page.locator("#to-list").count()
        and re.search(rf"card {card[-1]} of", page.inner_text("#top"))
    ):
        if page.locator("#hold").count():
            for size in page.locator("#hold [data-size]").evaluate_all(
                "all => all.map(one => one.dataset.size)"
            ):
                read(page, size, (readings or {}).get(size))
        here = page.inner_text("#top") + page.inner_text("h1")
        page.click("#main")
        if page.inner_text("#top") + page.inner_text("h1") == here:
            raise AssertionError(f"{card} stands still at {here}")
        steps -= 1


def make_the_bushes(page, shoot):
    """Two bushes, cut, measured and reamed; the first is 0.020 too large, and the journals get other limits.

    H7/f7 at 6 mm leaves 0.010 to 0.034 between bore and journal (ISO 286-2: H7 0 to +0.012,
    f7 -0.022 to -0.010); from 6.020 that is 5.986 to 6.010. Flanges of 2.35 for 2.30 leave
    38.5 - 2 x 2.35 less the float of 0.05 to 0.2 for the seat.
    """
    for card in ("bush/1", "bush/2"):
        for piece in (1, 2):
            work(page, card, piece, {"bush.flange.long": "2.35"})
    work(page, "bush/3", 1, steps=2)
    expect(page.locator("#hold")).to_contain_text("6.000 to 6.012 mm")
    shoot(page, "10-hold-point")
    read(page, "bush.bore", "6.020")
    expect(page.locator("#told")).to_contain_text("0.008 outside the limit")
    page.click("#main")
    settled(page)
    page.click("#to-list")
    expect(page.locator('[data-card="shaft/1|1"]')).to_contain_text("changed since you looked")
    expect(page.locator('[data-card="shaft/1|1"]')).to_contain_text("its print is stale")
    page.click('[data-card="shaft/1|1"]')
    expect(page.locator("#notices")).to_contain_text(f"{JOURNAL_LOW} to {JOURNAL_HIGH} mm")
    expect(page.locator("#notices")).to_contain_text("5.986 to 6.010 mm")
    expect(page.locator("#notices")).to_contain_text("seat.long is now 33.600 to 33.750 mm")
    shoot(page, "11-other-limits")


def choose_a_way_out(page, shoot, serious):
    """What went wrong is told from the machine; the ways out come with their price, and one is taken."""
    page.get_by_role("link", name="Ways out of trouble").click()
    page.get_by_role("link", name="Bore reamed oversize").click()
    page.get_by_label("the size of the bore").fill("bush.bore")
    page.get_by_label("what it measures [mm]").fill("six")
    page.get_by_role("button", name="Show the ways out").click()
    expect(page.get_by_label("what it measures [mm]")).to_have_value("six")
    expect(page.locator(".complaints")).to_contain_text("no figure")
    page.get_by_label("what it measures [mm]").fill("6.020")
    page.get_by_role("button", name="Show the ways out").click()
    page.get_by_role("button", name="Take this way").first.wait_for()
    shoot(page, "12-ways-out")
    assert serious(page) == []
    page.get_by_role("button", name="Take this way").first.click()
    page.get_by_text("That way is taken").wait_for()
    expect(page.get_by_role("row", name=re.compile("^bush bore"))).to_contain_text("6.02")
    expect(page.locator("main")).not_to_contain_text("Settle this")  # the bore as it is leaves room to turn
    shoot(page, "13-build")
    assert serious(page) == []


def go_on_without_the_server(page, address, server, shoot):
    """The network goes, then the PC; the shaft is begun all the same, the page loaded anew, and nothing is lost."""
    at_the_machine(page, address)
    to_list(page)
    page.click('[data-card="shaft/1|1"]')
    page.click("#seen")
    page.context.set_offline(True)
    work(page, "shaft/1", steps=3)
    expect(page.locator("#sync")).to_contain_text("The server is away")
    server.kill()
    page.reload()
    expect(page.locator("#sync")).to_contain_text("marks wait")
    work(page, "shaft/1", readings={"shaft.journal_a": "5.996"})
    shoot(page, "14-server-away")
    page.context.set_offline(False)
    server.start()
    settled(page)


def go_on_with_another_device(tablet, phone, address, shoot):
    """The phone finds the tablet's card done and makes the other; 5.996 in 6.020 is within the fit."""
    at_the_machine(phone, address)
    expect(phone.locator('[data-card="shaft/1|1"]')).to_contain_text("✓ done")
    work(phone, "shaft/2", readings={"shaft.journal_b": "5.998"})
    settled(phone)
    shoot(phone, "15-phone")
    to_list(tablet)
    expect(tablet.locator('[data-card="shaft/2|1"]')).to_contain_text("✓ done", timeout=15_000)


def disagree_and_settle(tablet, phone, desk, address, shoot):
    """Two devices read one bore differently at the same time; both stand until a person says which counts."""
    for device, reading in ((tablet, "8.004"), (phone, "8.011")):
        device.context.set_offline(True)
        work(device, "wheel/1", steps=6)
        read(device, "wheel.bore", reading)
    for device in (tablet, phone):
        device.context.set_offline(False)
        settled(device)
    for device in (tablet, phone):
        expect(device.locator("#hold .write")).to_contain_text("told differently", timeout=15_000)
    shoot(phone, "16-told-differently")
    desk.goto(address)
    desk.get_by_role("heading", name="Two devices disagree").wait_for()
    shoot(desk, "17-disagree")
    desk.get_by_role("button", name="8.004 mm counts").click()
    expect(desk.locator("main")).not_to_contain_text("Two devices disagree")
    row = desk.get_by_role("row", name=re.compile("^wheel bore"))
    expect(row).to_contain_text("8.004")


def take_over_what_was_built(page, address, shoot):
    """A flange of a build at 0.77 is no size of the drawing; a disc made 12.1 thick becomes revision B."""
    page.goto(address)
    page.get_by_text("built otherwise, and not to be taken over").click()
    expect(page.locator("main")).to_contain_text("the file says 3 mm where 2.3 mm was made")
    page.goto("/")
    page.locator("#disc-name").fill("disc")
    page.locator("form.start").first.get_by_role("button", name="Begin").click()
    page.get_by_role("heading", name="What was found").wait_for()
    page.goto("/builds")
    page.get_by_label("Design").select_option("disc")
    page.get_by_role("button", name="Begin", exact=True).click()
    page.get_by_text("steps done").wait_for()
    disc = re.sub(r"\?.*", "", page.url)
    at_the_machine(page, disc)
    cards = page.locator("[data-card]").evaluate_all("all => all.map(one => one.dataset.card)")
    for card in cards:
        work(page, card.split("|")[0], readings={"disc.length": "12.1"})
    settled(page)
    page.goto(disc)
    page.get_by_label(re.compile("disc.length is 12.100 mm")).check()
    shoot(page, "18-as-built")
    page.get_by_role("button", name="Make the next revision").click()
    page.get_by_text("The design has its next revision").wait_for()
    page.get_by_role("link", name="The text of the design").click()
    text = page.get_by_label("The file, comments and all").input_value()
    assert re.search(r"(?m)^revision: B", text)
    assert re.search(r"(?m)^ +\w+: .*\b12\.1\b", text)


def take_it_all_elsewhere(desk, other, shoot, tmp_path):
    """Everything goes out as one archive and comes in where there was nothing."""
    desk.goto("/builds")
    desk.get_by_role("link", name="Everything in one archive").click()
    with desk.expect_download() as download:
        desk.get_by_role("link", name="Take everything away").click()
    download.value.save_as(tmp_path / "tommybar.zip")
    other.goto("/archive")
    other.set_input_files("#file", tmp_path / "tommybar.zip")
    other.get_by_role("button", name="Bring it in").click()
    expect(other.get_by_role("status").last).to_contain_text("2 designs, 1 shops, 2 builds")
    other.get_by_role("link", name="Builds").click()
    other.get_by_role("link", name="Evening wheel").click()
    expect(other.get_by_role("row", name=re.compile("^shaft journal a"))).to_contain_text("5.996")
    shoot(other, "19-elsewhere")
