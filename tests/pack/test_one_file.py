"""Files of a pack one by one: the same as in the whole pack, and nothing else."""

from __future__ import annotations

from pathlib import Path

import pytest

from tommybar.cli.main import status_of
from tommybar.design import load_design
from tommybar.pack.one_file import file_names, one_file
from tommybar.pack.units import Reader
from tommybar.pack.write import write_pack
from tommybar.planning import Plan, plan, with_assembly
from tommybar.refusals import Refusal
from tommybar.shop import example_shops, load_shop

SHOP = example_shops()["shop-r"]
DESIGN = SHOP.parents[1] / "demonstrator" / "design.yaml"


@pytest.fixture(scope="module")
def whole() -> Plan:
    return with_assembly(plan(load_design(DESIGN), load_shop(SHOP)))


def test_each_file_is_byte_for_byte_that_of_the_pack(whole: Plan, tmp_path: Path) -> None:
    """Every name of the pack and no other, on Letter in third angle."""
    written = write_pack(whole, tmp_path, "mm", paper="Letter", angle="third")
    in_pack = {one.relative_to(tmp_path).as_posix(): one.read_bytes() for one in written}
    names = [name for group in file_names(whole, Reader()).values() for name in group]

    assert sorted(names) == sorted(name for name in in_pack if not name.startswith("assembly-lists"))
    for name in names:
        if name != "pack.pdf":  # its sheets are those of the list; writing it twice takes too long here
            assert one_file(whole, name, Reader(), "Letter", "third") == in_pack[name], name


@pytest.mark.parametrize(
    "name", ["parts/wheel.stl", "../plan.json", "parts/nobody.svg", "templates/base-9.svg"]
)
def test_a_name_that_is_not_in_the_pack_is_refused(whole: Plan, name: str) -> None:
    """Only what is listed can be named."""
    with pytest.raises(Refusal, match="No file of the pack is called"):
        one_file(whole, name, Reader())


def test_the_command_writes_only_what_is_asked_for(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Patterns and names; one that means nothing is refused before anything is written."""
    base = ["pack", str(DESIGN), "--shop", "shop-r", "--out", str(tmp_path)]

    assert status_of([*base, "--only", "parts/w*.svg", "--only", "stock.csv"]) == 0
    there = sorted(one.relative_to(tmp_path).as_posix() for one in tmp_path.rglob("*") if one.is_file())
    assert there == ["parts/wheel.svg", "stock.csv"]
    assert status_of([*base, "--only", "parts/wheel.stp"]) == 1
    assert 'No file of the pack is called "parts/wheel.stp"' in capsys.readouterr().err
