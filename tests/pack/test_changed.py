"""A measured bore gives its mate new limits: the card and the drawing say so, with the reason."""

from __future__ import annotations

import pytest

from tommybar.design import load_design
from tommybar.made.record import Made, Measured
from tommybar.pack.sheet import Sheet
from tommybar.pack.units import Reader
from tommybar.pack.write import pack_sheets
from tommybar.planning import plan
from tommybar.shop import load_shop

from .conftest import EXAMPLES
from .layout import clashes, texts


@pytest.fixture(scope="module")
def sheets() -> list[Sheet]:
    """The pack after the bush's bore came out 0.02 over its largest limit."""
    made = Made("demonstrator", (Measured("bush.bore", 8.035, "plug gauges", "2026-01-10", "a builder"),))
    return pack_sheets(
        plan(
            load_design(EXAMPLES / "demonstrator" / "design.yaml"),
            load_shop(EXAMPLES / "shops" / "shop-r.yaml"),
            made,
        ),
        Reader(),
    )


def words_of(sheets: list[Sheet], start: str) -> str:
    """All words on the sheets whose name starts so."""
    return " ".join(one.words for sheet in sheets if sheet.name.startswith(start) for one in texts(sheet))


def test_drawing_and_card_of_the_shaft_say_why(sheets: list[Sheet]) -> None:
    """The reading stands on the shaft's drawing and beside the box on its cards; the old limits are gone."""
    drawing = next(sheet for sheet in sheets if sheet.name == "shaft")
    words = " ".join(one.words for one in texts(drawing))

    assert "8.035" in words
    assert "8.035" in words_of(sheets, "shaft-card")
    assert "7.972–7.987" not in words


def test_the_measured_size_is_listed(sheets: list[Sheet]) -> None:
    """The fits page lists what has been made so far."""
    assert "Made so far" in words_of(sheets, "front")
    assert [clash for sheet in sheets for clash in clashes(sheet)] == []
