"""Sheets bound into one PDF: each page an SVG sheet set by typst with the shipped font."""

from __future__ import annotations

import tempfile
from pathlib import Path

from tommybar.pack.lettering import FONTS
from tommybar.pack.sheet import Sheet
from tommybar.pack.svg import svg_text

STAMP = 1_577_836_800  # 2020-01-01, on every pack alike, so that the same plan gives the same bytes


def pdf_bytes(sheets: list[Sheet], title: str = "") -> bytes:
    """One PDF of all sheets in their order, text real and searchable."""
    import typst  # heavy, and only wanted when a pack is written

    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        pages = []
        for n, sheet in enumerate(sheets):
            (folder / f"{n}.svg").write_text(svg_text(sheet), encoding="utf-8")
            pages.append(
                f"#page(width: {sheet.width:g}mm, height: {sheet.height:g}mm, margin: 0mm)"
                f'[#image("{n}.svg", width: {sheet.width:g}mm, height: {sheet.height:g}mm)]'
            )
        words = title.replace("\\", "").replace('"', "'")
        source = folder / "pack.typ"
        source.write_text(
            f'#set document(title: "{words}", date: none)\n' + "\n".join(pages), encoding="utf-8"
        )
        made: bytes = typst.compile(
            source, root=folder, font_paths=[FONTS], ignore_system_fonts=True, timestamp=STAMP
        )
    return made
