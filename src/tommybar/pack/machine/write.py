"""One self-contained HTML file for the machine: no server, no network, no other file beside it."""

from __future__ import annotations

import base64
import json
import re
from html import escape
from pathlib import Path
from typing import Any, Literal

from tommybar.pack.machine.contents import page_contents
from tommybar.pack.machine.on_paper import paper_cards
from tommybar.pack.units import Reader
from tommybar.planning import Plan
from tommybar.refusals import Refusal

_PAGE = Path(__file__).parent / "page"
_FONTS = Path(__file__).parent.parent / "fonts"
SCRIPTS = ("log", "record", "sizes", "bits", "entry", "step", "cards", "panels", "start")


def write_machine_file(plan: Plan, path: Path, units: Literal["mm", "in"] = "mm") -> Path:
    """Write the plan as one HTML file that works from a memory stick; gives the path back.

    Raises :class:`Refusal` when the unit is neither mm nor in, or the file
    cannot be written.
    """
    contents = page_contents(plan, Reader(units))
    try:
        path.write_text(machine_page(contents), encoding="utf-8", newline="\n")
    except OSError as error:
        raise Refusal(f"{path} cannot be written: {error.strerror}.", "Check the folder.") from None
    return path


def machine_page(contents: dict[str, Any]) -> str:
    """The page with its style, its script, its fonts and its words in it."""
    filled = {
        "title": escape(f"{contents['plan']['title']}: at the machine"),
        "style": re.sub(r"\{\{font-(\d+)\}\}", lambda found: _font(found[1]), _read("page.css")),
        "paper": paper_cards(contents),
        "contents": script_data(contents),
        "script": "\n".join(_read(f"{name}.js") for name in SCRIPTS),
    }
    return re.sub(r"\{\{([a-z]+)\}\}", lambda found: filled[found[1]], _read("page.html"))


def script_data(contents: dict[str, Any]) -> str:
    """Data as JSON that can stand inside a script: no end tag and no odd line end can be in it.

    Examples
    --------
    >>> script_data({"name": "</script>"})
    '{"name":"\\\\u003c/script\\\\u003e"}'
    """
    text = json.dumps(contents, ensure_ascii=True, separators=(",", ":"))
    return text.replace("<", "\\u003c").replace(">", "\\u003e").replace("&", "\\u0026")


def _read(name: str) -> str:
    return (_PAGE / name).read_text(encoding="utf-8")


def _font(weight: str) -> str:
    data = (_FONTS / f"AtkinsonHyperlegibleNext-latin-{weight}.woff2").read_bytes()
    return base64.b64encode(data).decode("ascii")
