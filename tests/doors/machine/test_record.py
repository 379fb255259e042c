"""What the page keeps: reloads, marks taken back, pauses, and the made file both ways."""

from __future__ import annotations

import pytest

from tommybar.made import load_made
from tommybar.made.record import Made, Measured, Ticked
from tommybar.pack.machine import write_machine_file

from .handmade_plan import handmade_plan
from .moves import saved, to_journal, write_in

pytestmark = pytest.mark.browser


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

    (left,) = load_made(saved(page, tmp_path)).whereabouts
    assert left.part == "spindle"
    assert left.where == "in the chuck; jaw 2 faces the mark; zeros to be touched again; tool: B"


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


def test_a_browser_that_keeps_nothing_says_so_and_still_saves(context, tmp_path):
    """With storage forbidden the page warns in words, works on, and the made file can be saved."""
    path = write_machine_file(handmade_plan(), tmp_path / "machine.html", "mm")
    page = context.new_page()
    page.add_init_script(
        "Object.defineProperty(window, 'localStorage', {get() { throw new Error('forbidden'); }})"
    )
    page.goto(path.as_uri())
    assert "this browser keeps nothing" in page.inner_text("#view")
    to_journal(page)
    page.click("#main")
    write_in(page, "7.98")

    assert load_made(saved(page, tmp_path)).measured[0].value == 7.98
    page.close(run_before_unload=False)


def test_a_skipped_step_may_be_done_after_all(opened, tmp_path):
    """Looking back at a skipped step offers to do it; then it counts as done, the skip stays in the file."""
    page = opened()
    page.click("#main")
    page.click("#main")
    page.click("text=Something is wrong")
    page.fill("#reason", "tool lent out")
    page.click("#skip")
    page.keyboard.press("PageUp")
    assert page.inner_text("#main") == "Done after all"
    page.click("#main")

    ticks = [one for one in load_made(saved(page, tmp_path)).ticks if one.key == "spindle/1/1"]
    assert [(one.done, one.skipped) for one in ticks] == [(False, "tool lent out"), (True, "")]


def test_a_new_plan_goes_on_where_the_saved_file_left_off(opened, tmp_path):
    """Pieces, holes, grips and sizes of one page's file stand in the page of the next plan made with it."""
    page = opened(handmade_plan(count=2))
    page.click('[data-card="spindle/1|2"]')
    page.click("#main")
    page.click("#main")
    page.click("#main")
    write_in(page, "7.98")
    page.click("#to-list")
    page.click("[data-card^=plate]")
    page.click("#main")
    page.click('[data-hole="2"]')
    first = saved(page, tmp_path)

    page = opened(handmade_plan(count=2, made=load_made(first)))
    assert "not begun" in page.inner_text('[data-card="spindle/1|1"]')
    assert "1 of 4 steps" in page.inner_text('[data-card="spindle/1|2"]')
    page.click('[data-card="spindle/1|2"]')
    assert "7.98" in page.inner_text("#hold")
    page.click("#to-list")
    page.click("[data-card^=plate]")
    assert page.inner_text('[data-hole="2"]') == "✓"
    (tmp_path / "second").mkdir()
    assert load_made(saved(page, tmp_path / "second")) == load_made(first)
