"""The page on resizing shows what the program says."""

from __future__ import annotations

from pathlib import Path

from tommybar.design import load_design
from tommybar.resize import resize
from tommybar.shop import example_shops, load_shop

ROOT = Path(__file__).parents[2]


def test_the_worked_example_of_the_page_is_what_comes_out():
    """Every line of the table: old, scaled and new as in the answer for the small bench."""
    text = (ROOT / "docs" / "resizing.md").read_text(encoding="utf-8")
    table = text.split("| size | old | scaled | new | why |")[1].split("\n\n")[0]
    shown = [[cell.strip() for cell in line.split("|")[1:5]] for line in table.splitlines()[2:]]
    design = load_design(ROOT / "examples" / "demonstrator" / "design.yaml")
    found = resize(design, load_shop(example_shops()["small-bench"]))
    rows = {row.name: row for row in found.rows}

    def as_shown(value: float | str) -> str:
        return value if isinstance(value, str) else f"{round(value, 3):g}"

    assert len(shown) == 9
    assert f"The scale is\n{found.scale:.2f}" in text
    for name, old, exact, new in shown:
        row = rows[name]
        assert [old, exact, new] == [as_shown(row.old), as_shown(row.exact), as_shown(row.new)]
