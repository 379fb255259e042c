"""Walking cards at the page, and hold points that cannot be passed by accident."""

from __future__ import annotations

import pytest

from tommybar.made import load_made

from .handmade_plan import handmade_plan
from .moves import saved, to_journal, write_in

pytestmark = pytest.mark.browser


def test_a_card_is_walked_to_its_end(opened, tmp_path):
    """Every step in turn, sizes written in at the hold points, and the next card offered."""
    page = opened()
    to_journal(page)
    page.click("#main")
    write_in(page, "7.98")
    assert page.inner_text("#main") == "Measured and done"
    page.click("#main")
    for reading in ("9.99", "24.02"):
        page.click("#main")
        write_in(page, reading)
    page.click("#main")
    assert page.inner_text("h1") == "Drill for M4"
    page.click("#main")
    assert "two holes in the foot" in page.inner_text("#top")

    made = load_made(saved(page, tmp_path))
    assert [(one.size, one.value) for one in made.measured] == [
        ("spindle.journal", 7.98),
        ("spindle.seat", 9.99),
        ("spindle.length", 24.02),
    ]
    assert [one.key for one in made.ticks if one.key.count("/") == 2 and one.key[-1].isdigit()] == [
        "spindle/1/1",
        "spindle/1/2",
        "spindle/1/3",
        "spindle/1/4",
    ]
    assert "spindle/1" in [one.key for one in made.ticks]


def test_the_pedal_alone_cannot_pass_a_hold_point(opened):
    """Twenty presses of one key end in the panel that asks for the size, with nothing written."""
    page = opened()
    for key in [" ", "Enter", "PageDown", " ", "Enter"] * 4:
        page.keyboard.press(key)

    assert page.is_visible("#entry-write")
    assert page.inner_text("#entry-value") == "—"
    page.keyboard.press("Escape")
    assert "______" in page.inner_text("#hold")


def test_an_empty_reading_is_refused(opened):
    """Write it in without a reading says so, and the hold point stays open."""
    page = opened()
    to_journal(page)
    page.click("#main")
    page.click("#entry-write")

    assert "Nothing is written yet" in page.inner_text("#entry-echo")
    page.keyboard.press("Escape")
    assert "______" in page.inner_text("#hold")


ECHOES = {
    "7.98": (0.001, "over", "still 0.007 inside"),
    "7.974": (0.005, "under", "still 0.002 inside"),
    "8.010": (0.031, "over", "0.023 outside the limit"),
    "7.950": (0.029, "under", "0.022 outside the limit"),
}


def test_the_echo_says_how_far_and_whether_inside(opened):
    """Against the middle of 7.972 to 7.987, and against the nearer limit."""
    page = opened()
    to_journal(page)
    page.click("#main")
    for reading, (off, way, bound) in ECHOES.items():
        page.keyboard.type(reading)
        told, said = page.inner_text("#entry-echo").removeprefix("▲ ").split(", ")
        for _ in reading:
            page.keyboard.press("Backspace")

        assert said == bound
        assert told.split()[1] == way
        assert float(told.split()[0]) == pytest.approx(off, abs=0.0011)


def test_a_size_outside_asks_twice_and_names_the_mate(opened):
    """The first press only asks; the second writes it, and the mate to be given it is named."""
    page = opened()
    to_journal(page)
    page.click("#main")
    write_in(page, "8.01")
    assert page.inner_text("#entry-write") == "Write it in, outside"
    page.keyboard.press("Enter")
    assert page.is_visible("#entry-write")
    page.click("#entry-write")

    assert "Give it to: bush bore" in page.inner_text("#told")
    assert "▲" in page.inner_text("#hold")


UNDER = """() => {
  const told = document.getElementById('told').getBoundingClientRect();
  const at = (one) => one.getBoundingClientRect();
  const covers = (one) => at(one).width && at(one).top < told.bottom && at(one).bottom > told.top;
  const all = [...document.querySelectorAll('#top *, #view h1, #view button, .big')];
  return [told.height, all.filter(covers).map((one) => one.textContent)];
}"""


@pytest.mark.parametrize("size", ["phone", "tablet", "desk"])
def test_a_message_covers_neither_the_card_nor_a_button(opened, size):
    """While it stands, the card's name, the way to all cards, the step, its number and its buttons stay clear."""
    page = opened(size=size)
    to_journal(page)
    page.click("#main")
    write_in(page, "8.01")
    page.click("#entry-write")
    height, covered = page.evaluate(UNDER)

    assert height > 30
    assert covered == []
    page.click("#to-list")
    assert page.locator("#view.at-list").count() == 1


SLIPS = {
    "0.314": "Did you mean 7.9",
    "202.6": "25.4 times",
    "15.96": "radius",
    "3.99": "half the target",
    "12.0": "far from the target",
}


def test_slips_are_asked_about(opened):
    """Inches for millimetres and the other way round, a double, a half: doubted before they are written."""
    page = opened()
    to_journal(page)
    page.click("#main")
    for reading, question in SLIPS.items():
        page.keyboard.type(reading)
        page.click("#entry-write")
        asked = page.inner_text("#entry-write")

        assert question in page.inner_text("#entry-echo")
        assert asked.startswith("Yes, it really is")
        for _ in reading:
            page.click('[aria-label="rub out"]')


def test_the_nudge_starts_from_the_target(opened):
    """Nothing is filled in beforehand; the first nudge gives the target, the next one a hundredth more."""
    page = opened()
    to_journal(page)
    page.click("#main")
    seen = [page.inner_text("#entry-value")]
    for _ in range(2):
        page.click("#nudge-up")
        seen.append(page.inner_text("#entry-value"))

    assert seen[0] == "—"
    assert float(seen[1]) == pytest.approx(7.9795, abs=0.0006)
    assert float(seen[2]) - float(seen[1]) == pytest.approx(0.01)


def test_each_piece_has_its_own_run(opened):
    """Two off: the card comes twice, and a size of the first piece does not fill the second."""
    page = opened(handmade_plan(count=2))
    assert page.locator("[data-card^=spindle]").count() == 2
    to_journal(page)
    page.click("#main")
    write_in(page, "7.98")
    page.click("#to-list")
    page.click('[data-card="spindle/1|2"]')
    page.click("#main")
    page.click("#main")

    assert "piece 2 of 2" in page.inner_text("#top")
    assert "______" in page.inner_text("#hold")


def test_holes_are_ticked_one_by_one(opened):
    """A mill card shows its coordinate list, and its last step waits for every hole."""
    page = opened()
    page.click("[data-card^=plate]")
    page.click("#main")
    assert "3 turns + 50 div" in page.inner_text(".holes")
    page.click("#main")
    assert "tick each hole" in page.inner_text("#told")
    for n in (1, 2):
        page.click(f'[data-hole="{n}"]')
    page.click("#main")

    assert "✓ done" in page.inner_text("[data-card^=plate]")
