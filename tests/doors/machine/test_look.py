"""What the page looks like: sizes, colours, fonts, hands, paper, and words that stay words."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tommybar.made import load_made
from tommybar.pack.machine import write_machine_file
from tommybar.refusals import Refusal

from .handmade_plan import handmade_plan
from .moves import SIZES, saved, to_journal, write_in

pytestmark = pytest.mark.browser
# CSS pixels in a millimetre, by the definition of CSS Values and Units, section 6.2: one inch is 96 of them. A
# ten-inch tablet draws them smaller (about 149 to its inch); enlarged by half in its browser it is near this again.
MM = 96 / 25.4
LEAST_TEXT = 3.0  # capitals [mm]: 17 arcmin at an arm's 600 mm
WRITTEN = """() => { const pen = document.createElement('canvas').getContext('2d');
  pen.font = '400 1000px Legible';
  const capital = pen.measureText('H').actualBoundingBoxAscent / 1000, found = [];
  const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (walk.nextNode()) { const one = walk.currentNode.parentElement;
    if (!walk.currentNode.data.trim() || !one.checkVisibility({ visibilityProperty: true })) continue;
    if (one.closest('#told, script, style, option')) continue;
    const turn = one.ownerSVGElement ? one.getScreenCTM() : { a: 1, b: 0 };
    const high = parseFloat(getComputedStyle(one).fontSize) * Math.hypot(turn.a, turn.b) * capital;
    found.push([high, walk.currentNode.data.trim()]); }
  return found; }"""


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


NEAR = """() => { const panel = document.getElementById('panel'), inside = panel.hidden ? document.getElementById('view') : panel;
  const all = [...inside.querySelectorAll('button, select, .choice, .as-button, input:not([type])')]
    .filter((one) => one.checkVisibility() && !one.closest('.as-button:not(:scope) input'))
    .map((one) => [one.textContent.trim().slice(0, 30) || one.id, one.getBoundingClientRect(),
      Boolean(one.closest('.acts, .hold'))]);
  const found = [];
  for (const [i, [name, a, stays]] of all.entries()) for (const [other, b, too] of all.slice(i + 1)) {
    if (stays !== too) continue; // what stays in sight while the rest is scrolled beneath it
    const across = Math.max(a.left - b.right, b.left - a.right, 0), down = Math.max(a.top - b.bottom, b.top - a.bottom, 0);
    if (Math.max(across, down) < 22.5) found.push([name, other, Math.round(Math.max(across, down))]); }
  return found; }"""  # pairs of targets nearer than 6 mm, in pixels


@pytest.mark.parametrize("size", SIZES)
def test_targets_stand_apart(opened, size):
    """A knuckle or a stylus in a wet hand hits one of them: 6 mm between any two, in every view."""
    page = opened(size=size)
    page.click("#signed")
    near = [page.evaluate(NEAR)]
    for _ in range(3):
        page.click("#main")
        near.append(page.evaluate(NEAR))
    page.click("#main")
    near.append(page.evaluate(NEAR))
    page.keyboard.press("Escape")
    for words in ("Something is wrong", "Stop for today", "Initials"):
        page.click(f"#view button:has-text('{words}')")
        near.append(page.evaluate(NEAR))
        page.keyboard.press("Escape")

    assert [pair for one in near for pair in one] == []


@pytest.mark.parametrize("size", SIZES)
def test_every_word_is_large_enough_to_be_read_at_arm_s_length(opened, size):
    """Capitals of every word that is seen, in the sketch too, are 3 mm high or more, in every view."""
    page = opened(size=size)
    page.evaluate("document.fonts.ready")
    views = [page.evaluate(WRITTEN)]
    for _ in range(3):
        page.click("#main")
        views.append(page.evaluate(WRITTEN))
    page.click("#main")
    views.append(page.evaluate(WRITTEN))
    page.keyboard.press("Escape")
    for words in ("Something is wrong", "Stop for today"):
        page.click(f"#view .acts button:has-text('{words}')")
        views.append(page.evaluate(WRITTEN))
        page.keyboard.press("Escape")

    assert min(len(one) for one in views) > 8
    assert [
        (round(high / MM, 2), words) for one in views for high, words in one if high / MM < LEAST_TEXT
    ] == []


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
    across = [
        page.locator(f"#view .acts button:has-text('{words}')").bounding_box()["x"]
        for words in ("Stop for today", "Held and looked at", "Something is wrong")
    ]
    assert across == sorted(across)
    assert page.locator("#main").bounding_box()["width"] > 300


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


def test_a_browser_without_script_shows_the_cards(chromium, tmp_path):
    """With scripts off the paper form is what is seen."""
    path = write_machine_file(handmade_plan(), tmp_path / "machine.html", "mm")
    context = chromium.new_context(java_script_enabled=False)
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
