"""What the example designs show: every relation between parts, most features, and the table that tells of it.

A relation or feature that no example shows is not tried as a whole, from the
file to the printed sheet.
"""

from __future__ import annotations

import importlib.util
from pathlib import Path
from types import ModuleType

import pytest

from tommybar.design import load_design
from tommybar.design.model import SizedDesign
from tommybar.design.written_relations import KEYS

ROOT = Path(__file__).resolve().parents[2]
# Relations as records of a design at its sizes, beside the key that writes them; squares say their own way.
RECORDS = {
    "fits": "fit",
    "loops": "loop",
    "screw_joints": "screw",
    "patterns": "pattern",
    "runouts": "runout",
    "clockings": "clock",
    "threads": "thread",
    "presses": "press",
    "adhesives": "bond",
    "solders": "solder",
    "pins": "pin",
    "contacts": "contact",
    "belts": "belt",
    "pivots": "pivot",
    "sweeps": "sweep",
    "alike": "alike",
    "seats": "seat",
    "stands": "stands",
    "flush": "flush",
}
NO_RELATIONS = {
    "title", "revision", "units", "values", "parts", "purposes", "cautions", "duties", "foot", "screws", "squares",
}  # fmt: skip


def tool() -> ModuleType:
    """tools/write_examples_table.py"""
    spec = importlib.util.spec_from_file_location("table", ROOT / "tools" / "write_examples_table.py")
    assert spec is not None and spec.loader is not None
    made = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(made)
    return made


TABLE = tool()
EXAMPLES = TABLE.examples()


def test_there_are_ten_examples_and_each_tells_what_it_is_for():
    assert len(EXAMPLES) == 10
    for folder in EXAMPLES:
        text = (folder / "README.md").read_text(encoding="utf-8")
        assert f"tommybar plan examples/{folder.name}/design.yaml --shop examples/shops/" in text
        assert len(text.split()) > 60


@pytest.mark.parametrize("key", sorted(KEYS))
def test_every_relation_is_shown_by_an_example(key):
    assert [one.name for one in EXAMPLES if key in TABLE.relations_of(one)], f"no example shows {key}"


def test_a_kind_of_relation_that_a_design_may_hold_is_asked_for_here():
    assert set(SizedDesign.__dataclass_fields__) == set(RECORDS) | NO_RELATIONS
    assert set(RECORDS.values()) | {"square", "parallel"} == set(KEYS)


@pytest.mark.parametrize("folder", EXAMPLES, ids=lambda folder: folder.name)
def test_what_is_written_is_what_the_design_holds(folder):
    design = load_design(folder / "design.yaml").sized()
    held = {key for name, key in RECORDS.items() if getattr(design, name)}
    assert held | {one.way for one in design.squares} == TABLE.relations_of(folder)


def test_most_of_the_vocabulary_is_shown():
    shown, known = set(TABLE.rows(TABLE.features_of)), TABLE.vocabulary()
    assert shown <= known
    assert len(shown) > len(known) / 2, sorted(known - shown)


def test_the_manual_s_tables_are_those_of_the_examples():
    """python tools/write_examples_table.py would write what is there."""
    text = (ROOT / "docs" / "examples.md").read_text(encoding="utf-8")
    assert text.partition(TABLE.HEADING)[1:] == (TABLE.HEADING, TABLE.tables().removeprefix(TABLE.HEADING))
