"""Every sheet of the demonstrator's pack: nothing overlaps, nothing is clipped, nothing is left out."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from tommybar.design import load_design
from tommybar.pack.cardsheets import Neighbours, card_sheets
from tommybar.pack.imprint import Imprint
from tommybar.pack.lettering import has_glyphs
from tommybar.pack.sheet import Area, Sheet
from tommybar.pack.units import Reader
from tommybar.pack.write import pack_sheets
from tommybar.planning import Plan, plan
from tommybar.shapes.features import PlateShape
from tommybar.shop import load_shop

from .layout import clashes, texts

EXAMPLES = Path(__file__).parents[2] / "examples"
TWELVE_POINT = 12 * 25.4 / 72  # [mm]
TWENTY_POINT = 20 * 25.4 / 72


@pytest.fixture(scope="module")
def sheets(in_shop_r: Plan) -> list[Sheet]:
    """The pack in millimetres."""
    return pack_sheets(in_shop_r, Reader())


def of_card(sheets: list[Sheet], part: str, number: int) -> list[Sheet]:
    """The pages of one card."""
    stem = f"{part}-card-{number}"
    return [one for one in sheets if one.name == stem or one.name.startswith(stem + "-")]


def words_on(sheets: list[Sheet]) -> list[str]:
    """All lines of words on these sheets."""
    return [one.words for sheet in sheets for one in texts(sheet)]


def test_no_sheet_has_words_on_words_or_on_a_line(sheets: list[Sheet]) -> None:
    """The boxes of all texts of all sheets are measured against one another, all strong lines and the edge."""
    assert [clash for sheet in sheets for clash in clashes(sheet)] == []


def test_in_inches_and_in_the_small_shop_nothing_overlaps_either(
    in_shop_r: Plan, in_small_shop: Plan
) -> None:
    """Longer figures and longer findings find their room as well."""
    packs = pack_sheets(in_shop_r, Reader("in")) + pack_sheets(in_small_shop, Reader())

    assert [clash for sheet in packs for clash in clashes(sheet)] == []


def test_every_character_of_the_pack_is_in_the_shipped_font(sheets: list[Sheet]) -> None:
    """Nothing is set in a font that we have not measured."""
    assert [words for words in words_on(sheets) if not has_glyphs(words)] == []


def test_every_step_has_its_rung_and_every_hold_point_its_bar(sheets: list[Sheet], in_shop_r: Plan) -> None:
    """On the pages of a card: as many boxes of 12 mm as steps, as many STOP bars as steps that are measured."""
    for one in in_shop_r.parts:
        for card in one.cards:
            pages = of_card(sheets, card.part, card.number)
            boxes = [
                mark
                for page in pages
                for mark in page.marks
                if isinstance(mark, Area)
                and mark.kind == "thick"
                and mark.fill == "white"
                and {round(p[0] - mark.rings[0][0][0], 3) for p in mark.rings[0]} == {0.0, 12.0}
            ]
            bars = [words for words in words_on(pages) if words.startswith("STOP: measure")]
            assert len(boxes) == len(card.steps), card.title
            assert len(bars) == sum(bool(step.measure) for step in card.steps), card.title


def test_the_ruling_number_is_large_and_the_body_is_never_under_twelve_point(
    sheets: list[Sheet], in_shop_r: Plan
) -> None:
    """Big figures of a card stand in 20 point or more, what is read at the machine in 12 point or more."""
    for one in in_shop_r.parts:
        for card in one.cards:
            pages = of_card(sheets, card.part, card.number)
            placed = [text for page in pages for text in texts(page) if 32.0 < text.at[1] < 191.0]
            assert min(text.size for text in placed) >= TWELVE_POINT - 0.02
            for step in card.steps:
                assert any(t.words == step.big and t.size >= TWENTY_POINT for t in placed), step.big


def test_limits_and_receiver_stand_beside_the_box_to_write_in(sheets: list[Sheet]) -> None:
    """The wheel's bore: its limits, and that the shaft's seat is made to suit it."""
    words = words_on(of_card(sheets, "wheel", 1))

    assert "10.000 to 10.015" in words
    assert "give to: shaft seat" in words


def test_before_starting_stands_on_the_first_page_of_every_card(sheets: list[Sheet], in_shop_r: Plan) -> None:
    """Safety lines come before the first step, not on a later page."""
    for one in in_shop_r.parts:
        for card in one.cards:
            first = words_on(of_card(sheets, card.part, card.number)[:1])
            assert "Before starting" in first
            joined = " ".join(first)
            assert card.before_starting[-1].split(",")[0].split(";")[0][:12] in joined


def test_every_finding_is_printed_with_its_number(sheets: list[Sheet], in_small_shop: Plan) -> None:
    """The findings pages hold a row for each finding, stops first, and the cover says that there are stops."""
    pages = pack_sheets(in_small_shop, Reader())
    words = words_on(pages)
    numbers = [str(one.number) for one in in_small_shop.findings]

    assert all(words.count(number) >= numbers.count(number) for number in numbers)
    cover = words_on(pages[:1])
    assert any(line.startswith("STOP:") for line in cover) == bool(in_small_shop.stops)


def test_saw_marks_are_read_from_one_end(sheets: list[Sheet], in_shop_r: Plan) -> None:
    """The end of every cut stands below its bar."""
    words = words_on(sheets)

    for bar in in_shop_r.stock.bars:
        for cut in bar.cuts:
            assert Reader().length(cut.end, 1) in words


def test_the_list_on_the_cover_counts_the_sheets(sheets: list[Sheet]) -> None:
    """The last drawing's range ends with the last sheet, and each sheet says its number."""
    last = len(sheets)

    assert any(words.endswith(f"to {last}") for words in words_on(sheets[:1]))
    for number, sheet in enumerate(sheets, 1):
        words = words_on([sheet])
        assert f"sheet {number} of {last}" in words or f"{number} of {last}" in words


PARTIAL = """tommybar: 1
shop: My shed
units: mm
lathe: {centre_height: 70, swing_over_cross_slide: 110, spindle_bore: 20, speeds: [120, 250, 500, 900, 1600]}
jaws:
  - {name: outside jaws, device: three-jaw, grips: outside, ranges: [{from: 28, to: 96, depth: 7}], runout: 0.08}
  - {name: inside jaws, device: three-jaw, grips: outside, ranges: [{from: 2, to: 30, depth: 20}], runout: 0.08}
"""


def test_no_caution_is_lost_when_there_are_many(tmp_path) -> None:
    """A shop file that says little makes long cautions; every line of them stands on the sheets of its card."""
    (tmp_path / "shed.yaml").write_text(PARTIAL)
    one = plan(load_design(EXAMPLES / "demonstrator" / "design.yaml"), load_shop(tmp_path / "shed.yaml"))
    sheets = pack_sheets(one, Reader())

    assert [clash for sheet in sheets for clash in clashes(sheet)] == []
    seen = 0
    for part in one.parts:
        for card in part.cards:
            words = (
                "".join(words_on(of_card(sheets, card.part, card.number))).replace(" ", "").replace("–", "")
            )
            for line in card.before_starting:
                seen += 1
                assert line.replace(" ", "").replace("_", "") in words.replace("_", ""), (
                    card.part,
                    card.number,
                    line,
                )
    assert seen > 60


@pytest.mark.parametrize("before", ["card 2, top face", f"card 2, top face: {'a hole with a name, ' * 9}"])
def test_the_foot_of_a_card_says_the_whole_of_what_comes_next(in_shop_r: Plan, before: str) -> None:
    """The title of the card before gives way, and not the work that is left to do."""
    planned = in_shop_r.part("wheel")
    after = "deburr, measure, bag and label it"
    imprint = Imprint("Demonstrator", "A", "0" * 8, 1.0, "Shop R", Reader())
    one = replace(planned.cards[-1], after=after)
    (sheet, *_) = card_sheets(one, planned.part, None, imprint, Neighbours(before, after))

    (foot,) = [words for words in words_on([sheet]) if "then: " in words]
    assert foot.startswith("before: card 2")
    assert foot.endswith(after)
    assert clashes(sheet) == []


def test_only_the_first_card_of_a_plate_shows_it_without_its_holes(in_shop_r: Plan) -> None:
    """After the squaring the plate is bare; after a later card it is not."""
    name = next(p.name for p in in_shop_r.design.parts if isinstance(p.shape, PlateShape))
    part, squaring = in_shop_r.design.part(name), in_shop_r.part(name).cards[0]
    imprint = Imprint("Demonstrator", "A", "0" * 8, 1.0, "Shop R", Reader())

    def shown(number: int) -> bool:
        pages = card_sheets(replace(squaring, number=number), part, None, imprint, Neighbours())
        return "After this card" in words_on(pages)

    assert shown(1)
    assert not shown(3)
