"""Resizing and planning know blocks, sheet, wire and every relation, or say that they do not."""

from pathlib import Path

import pytest

from tommybar import plan
from tommybar.design import design_from_text, load_design
from tommybar.resize.leaning import Leaning
from tommybar.shop.loading import load_shop

ROOT = Path(__file__).parents[2]
WHOLE = ROOT / "tests" / "design" / "whole"


@pytest.mark.parametrize("name", ["plates_sheet_wire", "every_relation"])
def test_a_whole_vocabulary_is_planned_or_told_of(name):
    """No traceback: each part that is made has its cards, or a stop that says why not."""
    found = plan(load_design(WHOLE / f"{name}.yaml"), load_shop(ROOT / "examples" / "shops" / "shop-r.yaml"))
    stopped = {one.part for one in found.stops}
    made = [one for one in found.parts if one.part.kind != "bought"]
    assert len(made) > 3
    assert [one.part.name for one in made if not one.cards and one.part.name not in stopped] == []


def test_a_block_leans_on_its_sizes_as_a_plate_does():
    """Its height is found under the material, and a width that is no height is a width."""
    text = (
        "tommybar: 1\ndesign: One\nunits: mm\nsizes:\n  tall: {is: 20, follows: plate}\n"
        "  across: {is: 30, follows: plate}\nparts:\n  base:\n    material: mild steel\n"
        "    block: {length: 50, width: across, height: tall}\n"
    )
    leaning = Leaning(design_from_text(text, "one.yaml"))
    assert leaning.materials_of("tall") == (("base", "plate", "mild steel"),)
    assert leaning.is_width("across") and not leaning.is_width("tall")
