"""A served build at the machine: fresh plans, two devices, initials, the evening's minutes."""

from __future__ import annotations

import pytest
from playwright.sync_api import expect

from .moves import limits, measure, open_card, settled

pytestmark = pytest.mark.browser


def to_ream(page) -> None:
    """Open the wheel's first card and go on to the reamed bore."""
    open_card(page, "wheel/1", "Recess")
    measure(page, "6.5")
    page.click("#main")
    assert page.inner_text("h1").startswith("Ream bore 8")


def test_a_measured_bore_changes_the_shaft_on_every_device_that_is_open(house, device):
    """Each page takes the new cards by itself, marks them, and stays at the step where its person is."""
    build = house.begin("fresh plan")
    tablet, phone = device(build), device(build, "phone")
    open_card(phone, "shaft/1", "Measure the bar")
    before = limits(phone)
    to_ream(tablet)
    assert tablet.locator("#notices").count() == 0
    measure(tablet, "8.021")
    settled(tablet)
    assert "Ream bore 8" in tablet.inner_text("h1")
    tablet.click("#to-list")
    assert "▲ changed since you looked" in tablet.inner_text('[data-card="shaft/1|1"]')
    assert "changed since" not in tablet.inner_text('[data-card="base/1|1"]')

    said = f"before: 1. measure seat: {before}"
    expect(phone.locator("#notices")).to_contain_text(said, timeout=15_000)
    assert "Measure the bar" in phone.inner_text("h1")
    assert "wheel.bore measured 8.021 mm" in phone.inner_text("#notices")
    assert limits(phone) != before
    assert f"now: 1. measure seat: {limits(phone)}" in phone.inner_text("#notices")
    assert "wheel.bore measured 8.021 mm" in phone.locator("#paper").text_content()
    phone.reload()
    assert said in phone.inner_text("#notices")
    phone.click("#seen")
    assert phone.locator("#notices").count() == 0
    phone.reload()
    phone.wait_for_selector("[data-kept]")
    assert phone.locator("#notices").count() == 0


def test_a_reading_that_is_being_typed_is_held_against_the_new_limits(house, device):
    """The panel stays open with what it is for; its limits are those of the fresh plan."""
    build = house.begin("typing")
    page = device(build)
    open_card(page, "shaft/1", "Measure the bar")
    before = limits(page)
    page.click("#hold .write >> nth=0")
    page.click('.key:text-is("8")')
    assert before in page.inner_text("#panel .soft >> nth=0")
    house.write(build, "size", "wheel.bore", value=8.021)
    expect(page.locator("#panel .soft").first).not_to_contain_text(before, timeout=15_000)

    assert page.inner_text("#entry-value") == "8"
    assert "these are the new limits" in page.inner_text("#told")


def test_two_devices_that_measure_differently_are_both_shown(house, device):
    """Neither reading is written over: both stand in the journal and on both pages until one is taken out."""
    build = house.begin("two readings")
    tablet, phone = device(build), device(build, "phone")
    open_card(tablet, "wheel/1", "Recess")
    open_card(phone, "wheel/1", "Recess")
    measure(tablet, "6.48")
    settled(tablet)
    expect(phone.locator("#hold .write")).to_contain_text("6.48", timeout=15_000)
    measure(phone, "6.53")
    settled(phone)

    for page in (tablet, phone):
        words = page.locator("#hold .write")
        expect(words).to_contain_text("told differently", timeout=15_000)
        assert "6.48" in words.inner_text() and "6.53" in words.inner_text()
        expect(page.locator("#sync")).to_contain_text("One size is told differently")
    sizes = [one for one in house.journal(build) if one.kind == "size"]
    assert [one.said["value"] for one in sizes] == [6.48, 6.53]

    house.write(build, "undo", sizes[0].id)
    for page in (tablet, phone):
        expect(page.locator("#hold .write")).not_to_contain_text("differently", timeout=15_000)
        assert "6.53" in page.inner_text("#hold .write")


def test_ticks_of_one_device_are_done_on_the_other(house, device):
    """What the tablet ticked the phone need not do again, and it says who ticked it."""
    build = house.begin("ticks")
    tablet, phone = device(build), device(build, "phone")
    tablet.fill("#by", "AB")
    open_card(tablet, "wheel/1", "Centre drill")
    tablet.click("#main")
    settled(tablet)

    expect(phone.locator('[data-card="wheel/1|1"]')).to_contain_text("2 of 9 steps", timeout=15_000)
    phone.click('[data-card="wheel/1|1"]')
    assert phone.inner_text("h1").startswith("Drill bore 4.5")
    phone.keyboard.press("PageUp")
    assert phone.inner_text(".said").endswith("AB")


def test_initials_are_asked_for_at_a_hold_point_and_two_people_sign(house, device):
    """Where they are wanted, no key passes without them; the checker is not the learner; others see both."""
    build = house.begin("class")
    page, other = device(build), device(build, "phone")
    page.click("#signed")
    open_card(page, "wheel/1", "Recess")
    measure(page, "6.5")
    assert page.inner_text("#main") == "Initials"
    for key in [" ", "Enter", "PageDown"] * 4:
        page.keyboard.press(key)
        page.keyboard.press("Escape")
    assert page.inner_text("h1").startswith("Recess")
    page.click("#main")
    page.fill("#learner", "AB")
    page.fill("#checker", "ab")
    page.click("#sign-it")
    assert "someone else than the learner" in page.inner_text("#told")
    page.fill("#checker", "CD")
    page.click("#sign-it")
    assert page.inner_text("#signed-by") == "learner AB · checker CD"
    page.click("#main")
    assert page.inner_text("h1").startswith("Ream bore 8")
    settled(page)

    signs = [(one.key, one.said) for one in house.journal(build) if one.kind == "initials"]
    assert signs == [
        ("wheel/1/dish.recess", {"role": "learner", "who": "AB"}),
        ("wheel/1/dish.recess", {"role": "checker", "who": "CD"}),
    ]
    expect(other.locator('[data-card="wheel/1|1"]')).to_contain_text("5 of 9 steps", timeout=15_000)
    assert "signed" in other.inner_text('[data-card="wheel/1|1"]')
    other.click('[data-card="wheel/1|1"]')
    other.keyboard.press("PageUp")
    assert other.inner_text("#signed-by") == "learner AB · checker CD"


def test_the_minutes_of_the_evening_run_down(house, device):
    """45 minutes, ten later 35; a card that does not fit says so, in the list and above its steps."""
    page = device(house.begin("evening"), clock=True)
    page.fill("#minutes", "45")
    page.keyboard.press("Tab")
    assert "fits 45 min" in page.inner_text(
        '[data-card="wheel/2|1"]'
    ) or "too long for 45" in page.inner_text('[data-card="wheel/2|1"]')
    open_card(page, "pillar/1", "Mill one end")
    page.click("#main")
    assert page.inner_text("#evening").startswith("45 min left this evening")
    page.clock.fast_forward(10 * 60_000)
    assert page.inner_text("#evening").startswith("35 min left this evening")
    page.clock.fast_forward(34 * 60_000)
    assert page.inner_text("#evening") == "1 min left this evening: ▲ too short for this card"
    page.clock.fast_forward(12 * 3600_000)
    page.click("#to-list")
    assert page.input_value("#minutes") == ""


def test_a_printed_card_that_went_stale_is_named_where_it_is_worked(house, device):
    """The list and the card itself say that the print says something else."""
    build = house.begin("printed")
    house.print_cards(build)
    page = device(build)
    open_card(page, "shaft/1", "Measure the bar")
    assert page.locator("#notices").count() == 0
    house.write(build, "size", "wheel.bore", value=8.021)

    expect(page.locator("#notices")).to_contain_text("The printed card is stale", timeout=15_000)
    page.click("#to-list")
    assert "its print is stale" in page.inner_text('[data-card="shaft/1|1"]')
    assert "its print is stale" not in page.inner_text('[data-card="base/1|1"]')


def test_a_part_that_is_made_again_starts_from_its_first_card(house, device):
    """What was ticked and measured before no longer counts; the marks of other parts do."""
    build = house.begin("again")
    house.write(build, "tick", "wheel/1/1")
    house.write(build, "tick", "base/1/1")
    page = device(build)
    assert "1 of 9 steps" in page.inner_text('[data-card="wheel/1|1"]')
    house.write(build, "change", because="the rim is scrap", forget=["wheel"])

    expect(page.locator('[data-card="wheel/1|1"]')).to_contain_text("not begun", timeout=15_000)
    assert "1 of 4 steps" in page.inner_text('[data-card="base/1|1"]')


@pytest.mark.parametrize("size", ["phone", "tablet", "desk"])
@pytest.mark.parametrize(("light", "unit"), [("day", "mm"), ("night", "in")])
def test_every_view_fits_its_width_by_day_and_by_night(house, device, size, light, unit):
    """Nothing runs off the side; the number stands clear of the bar of buttons when a hold point is open."""
    page = device(house.begin("walk"), size, light=light, unit=unit)
    dark = page.evaluate("document.documentElement.dataset.light")
    assert dark == light
    fits = "Math.max(document.documentElement.scrollWidth, document.getElementById('panel').scrollWidth) <= innerWidth"
    assert page.evaluate(fits)
    page.click("#signed")
    page.fill("#minutes", "30")
    page.keyboard.press("Tab")
    page.click('[data-card="wheel/1|1"]')
    assert page.evaluate(fits)
    page.click("#main")
    open_card(page, "wheel/1", "Recess")
    assert page.inner_text(".big .kind").endswith(unit)
    bar = page.locator("#view .acts").bounding_box()
    for piece in (".big .digits", ".big .kind"):
        box = page.locator(piece).bounding_box()
        assert box["y"] + box["height"] <= bar["y"], piece
    for opens in ("#main", "#sign", "text=Stop for today", "text=Something is wrong"):
        page.locator(opens).first.evaluate("(one) => one.click()")
        assert page.is_visible("#panel"), opens
        assert page.evaluate(fits), opens
        page.keyboard.press("Escape")
