"""The house stands: imports run downwards, nothing goes in a circle, the map is true."""

import importlib.util
import re
import sys
from graphlib import TopologicalSorter
from pathlib import Path

_SPEC = importlib.util.spec_from_file_location("house_floors", Path(__file__).parent / "floors.py")
floors = importlib.util.module_from_spec(_SPEC)
sys.modules["house_floors"] = floors
_SPEC.loader.exec_module(floors)


def test_imports_run_downwards():
    """No module imports one of a later floor, not for types and not inside a function."""
    upward = [
        f"{name} imports {other}"
        for name, others in floors.graph().items()
        for other in others
        if floors.floor_of(other) > floors.floor_of(name)
    ]

    assert upward == []


def test_there_is_no_circle_of_imports():
    """Every module can be laid after those it imports."""
    order = list(TopologicalSorter(floors.graph()).static_order())

    assert len(order) >= len(floors.modules())


def test_every_folder_is_a_floor():
    """Nothing stands outside the list."""
    named = {path.stem for path in floors.SRC.iterdir() if path.suffix == ".py" or path.is_dir()}

    assert named - {"__pycache__", "__init__", "py", "version"} == set(floors.FLOORS)


def test_the_map_is_true():
    """ARCHITECTURE.md lists the floors that are enforced, in their order."""
    text = (floors.ROOT / "ARCHITECTURE.md").read_text()
    listed = text.split("<!-- floors:")[1].split("<!-- end of floors -->")[0]

    assert tuple(re.findall(r"(?m)^\d+\. `(\w+)`", listed)) == floors.FLOORS


def test_the_reader_of_imports_sees_every_kind():
    """Planted: imports for types, in functions, of modules by name; all are seen."""
    known = {"tommybar.planning", "tommybar.cli", "tommybar.cli.main", "tommybar.facts"}
    text = (
        "from typing import TYPE_CHECKING\nimport json\nimport tommybar.facts\n"
        "if TYPE_CHECKING:\n    from tommybar.planning import Plan\n"
        "def later():\n    from tommybar.cli import main\n"
    )

    assert floors.imports_of(text, known) == {"tommybar.facts", "tommybar.planning", "tommybar.cli.main"}
    assert floors.floor_of("tommybar.planning") < floors.floor_of("tommybar.cli.main")
