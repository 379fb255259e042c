"""The file for the machine in a real browser, from the disc, with the network off."""

from __future__ import annotations

import itertools
import shutil
from dataclasses import replace
from pathlib import Path

import pytest
from playwright.sync_api import sync_playwright

from tommybar.made import load_made
from tommybar.made.record import Made, Measured, Ticked, Whereabouts
from tommybar.pack.machine import write_machine_file
from tommybar.refusals import Refusal

from .handmade_plan import handmade_plan

pytestmark = pytest.mark.browser

SIZES = {"phone": (390, 844), "tablet": (800, 1200), "desk": (1440, 900)}
NUMBERS = itertools.count(1)
MM = 96 / 25.4  # CSS pixels in a millimetre


@pytest.fixture(scope="module")
def browser():
    """Debian's Chromium."""
    with sync_playwright() as play:
        one = play.chromium.launch(
            executable_path=shutil.which("chromium"), args=["--no-sandbox", "--disable-gpu"]
        )
        yield one
        one.close()


@pytest.fixture(scope="module")
def context(browser):
    """One browser profile without a network; each plan has an id, and so a place, of its own."""
    one = browser.new_context(has_touch=True)
    one.set_offline(True)
    yield one
    one.close()


@pytest.fixture
def opened(context, tmp_path):
    """Open a plan's file from the disc; any fault of the page, or a call outwards, fails the test."""
    faults: list[str] = []
    pages = []

    def open_file(plan=None, size="tablet", units="mm"):
        plan = replace(plan or handmade_plan(), plan_id=f"{next(NUMBERS):08x}")
        path = write_machine_file(plan, tmp_path / "machine.html", units)
        page = context.new_page()
        pages.append(page)
        width, height = SIZES[size]
        page.set_viewport_size({"width": width, "height": height})
        page.on("pageerror", lambda fault: faults.append(str(fault)))
        page.on("console", lambda said: faults.append(said.text) if said.type == "error" else None)
        page.on("request", lambda asked: faults.append(asked.url) if asked.url.startswith("http") else None)
        page.goto(path.as_uri())
        return page

    yield open_file
    for page in pages:
        page.close()
    assert faults == []


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


@pytest.mark.parametrize(
    ("reading", "echo"),
    [
        ("7.98", "0.001 over, still 0.007 inside"),
        ("7.974", "0.005 under, still 0.002 inside"),
        ("8.010", "0.031 over, 0.023 outside the limit"),
        ("7.950", "0.029 under, 0.022 outside the limit"),
    ],
)
def test_the_echo_says_how_far_and_whether_inside(opened, reading, echo):
    """Against the middle of 7.972 to 7.987, and against the nearer limit."""
    page = opened()
    to_journal(page)
    page.click("#main")
    page.keyboard.type(reading)

    said = page.inner_text("#entry-echo").removeprefix("▲ ")
    told, bound = said.split(", ")
    want, want_bound = echo.split(", ")
    assert bound == want_bound
    assert told.split()[1] == want.split()[1]
    assert float(told.split()[0]) == pytest.approx(float(want.split()[0]), abs=0.0011)


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


@pytest.mark.parametrize(
    ("reading", "question"),
    [
        ("0.314", "Did you mean 7.9"),
        ("202.6", "25.4 times"),
        ("15.96", "radius"),
        ("3.99", "half the target"),
    ],
)
def test_slips_are_asked_about(opened, reading, question):
    """Inches for millimetres, the other way round, a double and a half are doubted before they are written."""
    page = opened()
    to_journal(page)
    page.click("#main")
    write_in(page, reading)

    assert question in page.inner_text("#entry-echo")
    assert page.inner_text("#entry-write").startswith("Yes, it really is")


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


def test_a_reload_comes_back_to_the_same_step_with_everything(opened):
    """View, marks and sizes outlive a reload, as after a power cut."""
    page = opened()
    to_journal(page)
    page.click("#main")
    write_in(page, "7.98")
    before = page.inner_text("#view")
    page.reload()

    assert page.inner_text("#view") == before
    assert "7.98" in page.inner_text("#hold")


def test_taking_back_loses_nothing(opened, tmp_path):
    """A mark that is taken back no longer counts, but stays in the record and in the saved file."""
    page = opened()
    to_journal(page)
    page.click("#main")
    write_in(page, "7.98")
    page.click("text=Something is wrong")
    page.click("#undo")

    assert "______" in page.inner_text("#hold")
    path = saved(page, tmp_path)
    assert load_made(path).measured == ()
    assert "# taken back" in path.read_text()
    assert "size: spindle.journal, is: 7.98" in path.read_text()


def test_a_skipped_step_needs_its_reason(opened, tmp_path):
    """Without words nothing is skipped; with them the reason is in the file."""
    page = opened()
    page.click("#main")
    page.click("#main")
    page.click("text=Something is wrong")
    page.click("#skip")
    assert page.is_visible("#skip")
    page.fill("#reason", 'no "sharp" tool: #1')
    page.click("#skip")

    assert page.inner_text("h1") == "Turn journal, last two cuts"
    made = load_made(saved(page, tmp_path))
    assert [(one.key, one.done, one.skipped) for one in made.ticks][-1] == (
        "spindle/1/1",
        False,
        'no "sharp" tool: #1',
    )


def test_stopping_and_coming_back(opened, tmp_path):
    """The pause is written, outlives a reload, asks three questions, and tells what to do first."""
    page = opened()
    to_journal(page)
    page.click("text=Stop for today")
    page.click('label:has-text("jaw 2")')
    page.fill("#tool-left", "B")
    page.click("#pause")
    page.reload()
    assert "in the chuck; jaw 2 faces the mark; zeros to be touched again; tool: B" in page.inner_text(
        "#panel"
    )
    page.click("#resume")
    assert "answer the three questions" in page.inner_text("#told")
    page.click('label:has-text("no, it moved")')
    page.click('label:has-text("no, touch again")')
    page.click('label:has-text("not sure")')
    page.click("#resume")
    assert "Find face A" in page.inner_text("#panel")
    page.click("#moves-done")
    assert page.inner_text("h1") == "Turn journal, last two cuts"

    places = load_made(saved(page, tmp_path)).whereabouts
    assert places == (
        Whereabouts("spindle", "in the chuck; jaw 2 faces the mark; zeros to be touched again; tool: B"),
    )


def test_a_made_file_is_read_back_into_a_fresh_page(opened, tmp_path):
    """What one page saved another reads; reading it twice adds nothing."""
    page = opened()
    to_journal(page)
    page.click("#main")
    write_in(page, "7.98")
    path = saved(page, tmp_path)
    page.evaluate("localStorage.clear()")
    page.reload()
    page.set_input_files("#import", path)
    page.wait_for_selector("#told.shown")
    assert page.inner_text("#told") == "3 entries read, 3 of them new."
    (tmp_path / "again").mkdir()
    assert load_made(saved(page, tmp_path / "again")) == load_made(path)
    page.set_input_files("#import", path)
    page.wait_for_selector('#told:has-text("3 entries read, 0 of them new.")')


def test_the_record_of_another_design_is_not_taken_over(opened, tmp_path):
    """A file of another making is refused in words and changes nothing."""
    other = tmp_path / "other.yaml"
    other.write_text("tommybar: 1\nof: clock\nmade:\n  - {size: spindle.journal, is: 7.9}\n")
    page = opened()
    page.set_input_files("#import", other)
    page.wait_for_selector('#told:has-text("Nothing was taken over")')

    assert 'records a making of "clock", not of "trial"' in page.inner_text("#told")
    assert load_made(saved(page, tmp_path)).measured == ()


def test_what_was_made_before_the_plan_is_there(opened, tmp_path):
    """Sizes and ticks of the made file that the plan was made with stand in the page and are saved again."""
    made = Made(
        "trial", (Measured("spindle.journal", 7.981, "mic", "2026-05-02", "R"),), (Ticked("spindle/1/1"),)
    )
    page = opened(handmade_plan(made=made))
    page.click("#main")

    assert page.inner_text("h1") == "Turn journal, last two cuts"
    assert "7.981" in page.inner_text("#hold")
    assert load_made(saved(page, tmp_path)).measured == made.measured


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


def test_words_of_a_design_are_never_markup(opened):
    """Names that look like markup are shown as they are written and run nothing."""
    nasty = '</script><script>window.ran=1</script><img src=x onerror="window.ran=1">{{style}}'
    plan = handmade_plan(title=nasty, part="a<b>\"'&")
    plan = replace(plan, shop=replace(plan.shop, name=nasty))
    page = opened(plan)
    assert nasty in page.inner_text("#top")
    page.click("#main")
    page.click("#main")

    assert page.evaluate("window.ran") is None
    assert page.locator("#view img, #paper img").count() == 0
    assert "a<b>" in page.inner_text("#top")


@pytest.mark.parametrize("size", SIZES)
def test_the_number_rules_the_page_and_targets_are_large(opened, size):
    """Digits 12 mm high or more with DIA and unit beside them; targets 18 mm; nothing runs off the side."""
    page = opened(size=size)
    to_journal(page)
    high = page.evaluate(
        """() => { const size = getComputedStyle(document.querySelector('.big .digits')).fontSize;
        const pen = document.createElement('canvas').getContext('2d');
        pen.font = `700 ${size} Legible`;
        const m = pen.measureText('5');
        return m.actualBoundingBoxAscent + m.actualBoundingBoxDescent; }"""
    )
    small = page.evaluate(
        """() => [...document.querySelectorAll('button')].filter((b) => b.offsetParent)
        .map((b) => b.getBoundingClientRect()).filter((r) => Math.min(r.width, r.height) < 68).length"""
    )
    digits, kind = page.locator(".big .digits").bounding_box(), page.locator(".big .kind").bounding_box()

    assert high / MM >= 12
    assert page.inner_text(".big .kind").split() == ["DIA", "mm"]
    assert kind["x"] >= digits["x"] + digits["width"] - 1
    assert kind["x"] + kind["width"] <= SIZES[size][0]
    assert small == 0
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    page.click("#main")
    assert page.evaluate("document.getElementById('panel').scrollWidth <= innerWidth")


def test_the_font_comes_from_the_file(opened):
    """The page's own font is loaded from within the file, with figures of one width."""
    page = opened()

    assert page.evaluate("document.fonts.ready.then(() => document.fonts.check('700 20px Legible'))")
    wide = page.evaluate(
        """() => ['1', '8'].map((t) => { const s = document.createElement('b'); s.textContent = t.repeat(9);
        document.body.append(s); const w = s.getBoundingClientRect().width; s.remove(); return w; })"""
    )
    assert wide[0] == pytest.approx(wide[1])


def test_inches_are_shown_and_millimetres_are_kept(opened, tmp_path):
    """In an inch file the number, limits and nudge are in inches; the made file stays in mm."""
    page = opened(units="in")
    to_journal(page)
    assert page.inner_text(".big .digits") == "0.3142"
    assert page.inner_text(".big .kind") == "DIA in"
    assert "0.3139 to 0.3144 in" in page.inner_text("#hold")
    page.click("#main")
    assert page.inner_text("#nudge-up") == "+ 0.0005"
    write_in(page, "0.3142")

    assert load_made(saved(page, tmp_path)).measured[0].value == pytest.approx(7.98068)


def test_day_night_and_the_other_hand_are_kept(opened):
    """Night darkens the ground, the left hand mirrors the targets, and both outlive a reload."""
    page = opened()
    ground = "getComputedStyle(document.body).backgroundColor"
    day = page.evaluate(ground)
    page.click("#light")
    page.click("#hand")
    page.reload()
    page.click("#main")

    assert page.evaluate(ground) != day
    wrong, stop = (
        page.locator(f"text={words}").bounding_box() for words in ("Something is wrong", "Stop for today")
    )
    assert wrong["x"] > stop["x"]


def test_paper_says_the_same(opened):
    """Printed, every card with its number, its boxes and its hold point is on paper, without the buttons."""
    page = opened()
    page.emulate_media(media="print")
    words = page.inner_text("#paper")

    assert page.is_visible("#paper")
    assert not page.is_visible("#view")
    for said in (
        "7.98 DIA mm",
        "STOP. Do not let go until measured",
        "7.972 to 7.987 mm",
        "11 turns + 50 div",
    ):
        assert said in words
    assert page.locator("#paper .sheet").count() == 2


def test_a_browser_without_script_shows_the_cards(browser, tmp_path):
    """With scripts off the paper form is what is seen."""
    path = write_machine_file(handmade_plan(), tmp_path / "machine.html", "mm")
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(path.as_uri())

    assert page.is_visible("#paper")
    context.close()


def test_only_blue_is_cut_and_only_brass_is_dialled(opened):
    """The blue of the sketch stands on the cut alone; brass on the one number alone."""
    page = opened()
    to_journal(page)
    used = page.evaluate(
        """() => { const of = (v) => { const p = document.createElement('p'); p.style.color = `var(--${v})`;
          document.body.append(p); const c = getComputedStyle(p).color; p.remove(); return c; };
        const blue = of('blue'), brass = of('brass'), found = { blue: new Set(), brass: new Set() };
        for (const e of document.querySelectorAll('#top *, #view *')) { const s = getComputedStyle(e);
          for (const c of [s.color, s.fill, s.stroke, s.backgroundColor, s.borderTopColor]) {
            if (c === blue) found.blue.add(e.getAttribute('class') || e.tagName);
            if (c === brass) found.brass.add(e.getAttribute('class') || e.tagName); } }
        return [[...found.blue], [...found.brass]]; }"""
    )

    assert used[0] == ["cut"]
    assert set(used[1]) <= {"big", "digits", "kind"}


def test_an_unwritable_folder_is_one_line(tmp_path):
    """A folder that is not there is refused in words; so is a unit that is neither."""
    with pytest.raises(Refusal, match="cannot be written: No such file"):
        write_machine_file(handmade_plan(), tmp_path / "no" / "machine.html", "mm")
    with pytest.raises(Refusal, match="must be mm or in"):
        write_machine_file(handmade_plan(), tmp_path / "machine.html", "cm")


def test_the_same_plan_gives_the_same_file(tmp_path):
    """Two writings of one plan are equal to the byte."""
    one = write_machine_file(handmade_plan(), tmp_path / "a.html", "mm").read_bytes()
    two = write_machine_file(handmade_plan(), tmp_path / "b.html", "mm").read_bytes()

    assert one == two
