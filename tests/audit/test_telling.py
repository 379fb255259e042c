"""What the audit says to the one who prints: on the command line and on the page of sheets."""

from __future__ import annotations

from dataclasses import replace

from tommybar.design import load_design
from tommybar.pack.audit.comparing import audited
from tommybar.pack.audit.telling import audit_findings, audit_words, drawn_and_audited
from tommybar.pack.units import Reader

from .conftest import DESIGNS, sheets_of

DEMONSTRATOR = next(one for one in DESIGNS if one.parent.name == "demonstrator")


def test_a_good_design_is_told_in_one_line() -> None:
    """As many drawings as parts that are made, and no finding."""
    design = load_design(DEMONSTRATOR)
    words, found = drawn_and_audited(design.sized(), design.title, Reader("in"))

    assert words.startswith("7 drawings can be built from their ")
    assert words.endswith("each size and place is printed, none twice")
    assert found == []


def test_a_figure_that_is_missing_becomes_a_finding_with_part_feature_and_remedy() -> None:
    """The depth of the wheel's recess left out."""
    part, sheet = next(one for one in sheets_of(DEMONSTRATOR, "mm", "A4") if one[0].name == "wheel")
    left = [one for one in sheet.printed if not (one.feature == "dish" and one.size == "depth")]
    audit = audited(part, replace(sheet, printed=left))
    found = audit_findings((audit,))

    assert audit_words((audit,)) == "1 of 1 drawing cannot be built from the printed figures alone"
    assert [(one.number, one.severity, one.part, one.feature) for one in found] == [
        (920, "caution", "wheel", "dish")
    ]
    assert found[0].words == "On the sheet of wheel, dish depth is not printed (missing)."
    assert found[0].remedy.startswith("Write it on the sheet by hand")
