"""The demonstrator's whole route at the page, from the first grip to the last tick."""

from __future__ import annotations

import pytest

from tommybar.design import load_design
from tommybar.made import load_made
from tommybar.pack.machine.together import assembly_part
from tommybar.pack.units import Reader
from tommybar.planning import plan
from tommybar.shop import example_shops, load_shop

from .moves import saved

pytestmark = pytest.mark.browser

WALK = """() => {
  const press = (id) => document.getElementById(id).click();
  for (let n = 0; n < 5000 && document.getElementById('main'); n += 1) {
    press('main');
    if (document.getElementById('entry-write')) { press('nudge-up'); press('entry-write'); }
    document.querySelectorAll('.tick:not([aria-label$="done"])').forEach((one) => one.isConnected && one.click());
    if (document.querySelector('.at-list')) { if (!document.getElementById('main')) return n; }
  }
  return -1;
}"""


def test_every_step_of_the_demonstrator_can_be_done_and_is_recorded(opened, tmp_path):
    """Each step of each piece is ticked once, each hold point has its size, and the file says so."""
    shop = example_shops()["shop-r"]
    whole = plan(load_design(shop.parents[1] / "demonstrator" / "design.yaml"), load_shop(shop))
    page = opened(whole)

    assert page.evaluate(WALK) > 0
    assert "✓ Every card is done." in page.inner_text("#view")

    made = load_made(saved(page, tmp_path))
    steps = [(step.key, one.part.count) for one in whole.parts for card in one.cards for step in card.steps]
    together = assembly_part(whole, Reader())
    assert together is not None
    steps += [(step["key"], 1) for step in together["cards"][0]["steps"]]
    ticked = [one.key for one in made.ticks if one.done]
    assert {key: ticked.count(key) for key, _ in steps} == dict(steps)
    sizes = {m.size for one in whole.parts for c in one.cards for step in c.steps for m in step.measure}
    assert {one.size for one in made.measured} == sizes


def test_a_record_of_earlier_days_finds_its_steps(opened, tmp_path):
    """Steps named by their places in an old file are done here; the ones written now are named by their deeds."""
    shop = example_shops()["shop-r"]
    whole = plan(load_design(shop.parents[1] / "demonstrator" / "design.yaml"), load_shop(shop))
    old = tmp_path / "old.yaml"
    lines = [
        "{step: wheel/1/gripped, done: true}",
        "{step: wheel/1/1, done: true, on: 2026-05-02}",
        "{step: wheel/1/2, done: true, on: 2026-05-02}",
        "{step: wheel/1/3, skipped: it was drilled already, on: 2026-05-02}",
    ]
    text = "".join(f"  - {one}\n" for one in lines)
    old.write_text(f"tommybar: 1\nof: {whole.title}\nunits: mm\nmade:\n{text}", encoding="utf-8")
    page = opened(whole)
    page.set_input_files("#import", old)
    page.wait_for_selector('#told:has-text("4 entries read, 4 of them new.")')

    steps = whole.part("wheel").cards[0].steps
    assert f"3 of {len(steps)} steps" in page.inner_text('[data-card="wheel/1|1"]')
    page.click('[data-card="wheel/1|1"]')
    assert page.inner_text("h1") == steps[3].do
    page.click("#main")
    made = load_made(saved(page, tmp_path))
    assert {one.key for one in made.ticks} >= {"wheel/1/1", "wheel/1/2", "wheel/1/3", steps[3].key}
    assert steps[3].key.startswith("wheel/1/bore.drill")
