"""The part of the machine page's style that pages here share with it: its colours and its pictures."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path

MACHINE_PAGE = Path(__file__).parent.parent / "pack" / "machine" / "page"
SYNC_BAR = (
    "#sync { display: flex; flex-wrap: wrap; gap: 4px 20px; padding: 3px 20px; border-bottom: 1px solid var(--line);"
    " font-size: 17px; color: var(--soft); } #sync p { flex: 1 1 300px; } #sync a { color: inherit; }"
    " @media (max-width: 600px) { body:has(.at-step) #sync a { display: none; } }"
    " @media print { #sync { display: none; } }"
)


@cache
def sketch_style() -> str:
    """Colours by day and night, and the rules of grip pictures, out of the machine page's own file."""
    text = (MACHINE_PAGE / "page.css").read_text(encoding="utf-8")
    roots = re.findall(r"(?m)^:root[^{]*\{[^}]*\}", text)
    rules = re.findall(r"(?m)^\.(?:sketch|hatch)[^{]*\{[^}]*\}", text)
    return "\n".join([*roots[:2], *rules])


@cache
def machine_style() -> str:
    """The machine page's whole style, its fonts fetched instead of carried."""
    text = (MACHINE_PAGE / "page.css").read_text(encoding="utf-8")
    fonts = re.sub(r"url\(data:font/woff2;base64,\{\{font-(\d+)\}\}\)", r"url(/static/fonts/\1.woff2)", text)
    return f"{fonts}\n{SYNC_BAR}\n"
