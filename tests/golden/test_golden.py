"""Small sheets kept whole: an unwanted change of layout shows as a diff. Never the proof of a figure."""

from __future__ import annotations

import importlib.util
from pathlib import Path
from types import ModuleType

ROOT = Path(__file__).resolve().parents[2]


def maker() -> ModuleType:
    """The command that remakes the golden files."""
    spec = importlib.util.spec_from_file_location("remake_golden", ROOT / "tools" / "remake_golden.py")
    assert spec is not None and spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def test_sheets_are_as_they_were() -> None:
    """The drawing of the bush is the one that was looked at (tools/remake_golden.py makes it anew)."""
    for name, text in maker().golden_texts().items():
        assert text == (ROOT / "tests" / "golden" / name).read_text(encoding="utf-8"), name
