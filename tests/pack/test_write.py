"""The folder of a pack: its files, their bytes, and what happens when it cannot be written."""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from tommybar.pack.lists import list_texts
from tommybar.pack.pdf import pdf_bytes
from tommybar.pack.sheet import Sheet
from tommybar.pack.units import Reader
from tommybar.pack.write import write_pack
from tommybar.planning import Plan
from tommybar.refusals import Refusal


def test_the_pack_holds_everything_and_repeats_byte_for_byte(in_shop_r: Plan, tmp_path: Path) -> None:
    """PDF, a drawing as SVG and DXF for each part that is made, lists, plan; twice written, the same bytes."""
    paths = write_pack(in_shop_r, tmp_path / "one")
    write_pack(in_shop_r, tmp_path / "two")
    names = {path.relative_to(tmp_path / "one").as_posix() for path in paths}
    made = [one.part.name for one in in_shop_r.parts if one.part.shape is not None]

    assert {
        "pack.pdf",
        "plan.json",
        "sizes.csv",
        "stock.csv",
        "buy.csv",
        "findings.csv",
        "tools.csv",
        "cards.csv",
        "assembly.glb",
        "assembly.step",
        "assembly.txt",
    } <= names
    assert {f"parts/{name}.{kind}" for name in made for kind in ("svg", "dxf", "glb", "step")} <= names
    for name in names:
        assert (tmp_path / "one" / name).read_bytes() == (tmp_path / "two" / name).read_bytes(), name
    assert (tmp_path / "one" / "pack.pdf").read_bytes().startswith(b"%PDF")


def test_lists_can_be_read_back(in_shop_r: Plan) -> None:
    """The CSV lists give back what went in: sizes, cuts, steps, findings."""
    lists = {
        name: list(csv.DictReader(text.splitlines()))
        for name, text in list_texts(in_shop_r, Reader()).items()
    }

    assert [row["size"] for row in lists["sizes.csv"]] == [row.name for row in in_shop_r.sizes]
    assert len(lists["stock.csv"]) == sum(len(bar.cuts) for bar in in_shop_r.stock.bars)
    assert len(lists["cards.csv"]) == sum(len(c.steps) for p in in_shop_r.parts for c in p.cards)
    assert [row["words"] for row in lists["findings.csv"]] == [f.words for f in in_shop_r.findings]
    wheel = next(row for row in lists["sizes.csv"] if row["size"] == "wheel_dia")
    assert float(wheel["new_mm"]) == next(r.new for r in in_shop_r.sizes if r.name == "wheel_dia")


def test_inches_are_the_same_length(in_shop_r: Plan) -> None:
    """A size in the inch list is the size in the mm list over 25.4."""
    inch = list(csv.DictReader(list_texts(in_shop_r, Reader("in"))["sizes.csv"].splitlines()))
    wheel = next(row for row in inch if row["size"] == "wheel_dia")
    drawn = next(row.new for row in in_shop_r.sizes if row.name == "wheel_dia")

    assert isinstance(drawn, float)
    assert float(wheel["new_in"]) == pytest.approx(drawn / 25.4, abs=0.00005)


def test_the_pdf_carries_real_text_in_the_shipped_font() -> None:
    """The font is embedded, so that the words can be searched and print alike everywhere."""
    sheet = Sheet("one")
    sheet.text(20.0, 20.0, "wheel")
    made = pdf_bytes([sheet, sheet], "two pages")

    assert b"AtkinsonHyperlegible" in made
    assert b"/Count 2" in made
    assert made == pdf_bytes([sheet, sheet], "two pages")


def test_a_folder_that_cannot_be_written_is_refused_in_one_line(in_shop_r: Plan, tmp_path: Path) -> None:
    """A file that stands where the folder should be: the refusal names it and says what to do."""
    (tmp_path / "taken").write_text("a file")

    with pytest.raises(Refusal, match=r"taken cannot be written: .*Give --out a folder"):
        write_pack(in_shop_r, tmp_path / "taken")


def test_an_unknown_unit_is_refused(in_shop_r: Plan, tmp_path: Path) -> None:
    """Centimetres are not offered; the refusal names the two that are."""
    with pytest.raises(Refusal, match=r'"cm"; it must be mm or in'):
        write_pack(in_shop_r, tmp_path, "cm")  # type: ignore[arg-type]
