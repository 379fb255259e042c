"""One bad file for each kind of fault, with the exact refusal beside it."""

from pathlib import Path

import pytest

from tommybar.design import load_design
from tommybar.refusals import Refusal

BAD = Path(__file__).parent / "bad"
FILES = sorted(one.name for one in BAD.glob("*.yaml"))


def test_there_are_ten_kinds_of_fault():
    """Each bad file has its refusal written beside it, and there are at least ten."""
    assert len(FILES) >= 10
    assert {Path(name).stem for name in FILES} == {one.stem for one in BAD.glob("*.refusal")}


@pytest.mark.parametrize("name", FILES)
def test_refusal_is_exact(name, monkeypatch):
    """Every fault is told in one answer: file, line, column, place, figure, bound and remedy."""
    monkeypatch.chdir(BAD)

    with pytest.raises(Refusal) as refused:
        load_design(name)

    assert str(refused.value).splitlines() == (BAD / name).with_suffix(".refusal").read_text().splitlines()
