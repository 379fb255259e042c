"""The part of the machine page's style that pages here share with it: its colours and its pictures."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path

_STYLE = Path(__file__).parent.parent / "pack" / "machine" / "page" / "page.css"


@cache
def sketch_style() -> str:
    """Colours by day and night, and the rules of grip pictures, out of the machine page's own file."""
    text = _STYLE.read_text(encoding="utf-8")
    roots = re.findall(r"(?m)^:root[^{]*\{[^}]*\}", text)
    rules = re.findall(r"(?m)^\.(?:sketch|hatch)[^{]*\{[^}]*\}", text)
    return "\n".join([*roots[:2], *rules])
