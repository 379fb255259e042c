"""Blind tapped holes on the axis: the drill goes deeper than the thread, and the dry run knows it."""

from pathlib import Path

import pytest

from tommybar import load_shop, plan
from tommybar.design import design_from_text

SHOP = Path(__file__).parents[2] / "examples" / "shops" / "shop-r.yaml"
TEXT = """tommybar: 1
design: Stud
units: mm
parts:
  stud:
    material: mild steel
    turned:
      outside: [{{name: body, dia: 16, long: 40}}]
      bores: [{{name: end, thread: M5, face: A, {depths}}}]
"""


@pytest.mark.parametrize(
    ("depths", "drilled", "thread"),
    [
        # 8 of full thread and three pitches of 0.8 for the tap's lead (the shared rule of the trade, ISO 529 second taps)
        ("deep: 8", 10.4, "8.0 deep of full thread"),
        ("deep: 12, full: 9", 12.0, "9.0 deep of full thread"),
    ],
)
def test_the_drill_goes_past_the_thread_and_the_dry_run_agrees(depths, drilled, thread):
    """No gouge, no missing metal: what the drill takes below the thread is meant."""
    found = plan(design_from_text(TEXT.format(depths=depths), "stud.yaml"), load_shop(SHOP))
    steps = [step for card in found.part("stud").cards for step in card.steps if step.feature == "end"]
    drill = next(step for step in steps if "4.2" in step.tool)

    assert any(f"Full diameter to {drilled:.1f} deep" in words for words in drill.dial)
    assert any(thread in f"{step.big} {step.big_kind}" for step in steps)
    assert [one for one in found.findings if one.number in (500, 507, 509)] == []
