"""The assembly drawing: one balloon a part, none crossing, and lists that tell what the design says."""

from __future__ import annotations

import math
from itertools import combinations
from pathlib import Path

import pytest

from tommybar.assembly.placing import assembled
from tommybar.design import load_design
from tommybar.pack.assembled.balloons import RADIUS, ROOM, Balloon, balloons_of, crossing
from tommybar.pack.assembled.lists import STEPS, fit_rows, listed, part_rows, sizes_of
from tommybar.pack.assembled.picture import picture_of
from tommybar.pack.assembled.sheet import assembly_sheets, framed
from tommybar.pack.assembled.stack import Listed, stacked
from tommybar.pack.imprint import Imprint
from tommybar.pack.sheet import Arc, Line, Sheet
from tommybar.pack.svg import svg_text
from tommybar.pack.units import Reader
from tommybar.planning import Plan

from ..handmade import DESIGN, IMPRINT, WHEEL
from ..layout import LINES, clashes, texts

EXAMPLES = Path(__file__).resolve().parents[3] / "examples"
INCH = Imprint("demonstrator", "A", "abc123", 1.0, "shop", Reader("in"), "Letter", "third")


def drawn(plan: Plan, imprint: Imprint = IMPRINT) -> list[Sheet]:
    """The sheets of a plan's assembly."""
    return framed(
        assembly_sheets(plan.design, imprint, {"wheel": "round Ø92 × 27"}, {"wheel": 13}), imprint, (3, 9)
    )


@pytest.mark.parametrize("imprint", [IMPRINT, INCH], ids=["A4 mm", "Letter inch"])
def test_no_words_lie_on_words_or_under_a_line(in_shop_r: Plan, imprint: Imprint) -> None:
    """Measured by the boxes of all texts, on the picture and on the lists."""
    assert [clash for sheet in drawn(in_shop_r, imprint) for clash in clashes(sheet, LINES)] == []


def test_every_part_that_stands_has_one_balloon_with_its_number(in_shop_r: Plan) -> None:
    """Balloons and rows of the parts list carry the same numbers."""
    sheet = drawn(in_shop_r)[0]
    balloons = [one for one in sheet.marks if isinstance(one, Arc) and one.radius == RADIUS]
    whole = assembled(in_shop_r.design)
    parts = [part.name for part in listed(in_shop_r.design)]
    standing = {parts.index(one.part) + 1 for one in whole.placements}
    inside = {
        int(text.words)
        for text in texts(sheet)
        for one in balloons
        if text.bold and text.anchor == "middle" and abs(text.at[0] - one.centre[0]) < 1e-6
        and abs(text.at[1] - one.centre[1]) < 2.0
    }  # fmt: skip

    unseen = {parts.index("grub") + 1}  # it sits in the wheel's boss

    assert inside == standing - unseen
    assert len(balloons) == len(inside)
    assert any(f"not seen here: {parts.index('grub') + 1} grub" in one.words for one in texts(sheet))


def test_leaders_cross_neither_one_another_nor_a_balloon(in_shop_r: Plan) -> None:
    """Every pair of leaders of the sheet is asked."""
    sheet = drawn(in_shop_r)[0]
    balloons = [one for one in sheet.marks if isinstance(one, Arc) and one.radius == RADIUS]
    leaders = [
        one.points
        for one in sheet.marks
        if isinstance(one, Line)
        and one.kind == "thin"
        and len(one.points) == 2
        and any(abs(math.dist(one.points[0], ring.centre) - RADIUS) < 1e-6 for ring in balloons)
    ]

    assert len(leaders) == len(balloons)
    assert not any(crossing(*one, *other) for one, other in combinations(leaders, 2))


def test_crossed_leaders_are_swapped_and_balloons_keep_their_room() -> None:
    """Three places of which the lowest lies farthest in: whatever the order, no two leaders cross."""
    wanted = [("1", ((10.0, 10.0),)), ("2", ((40.0, 11.0),)), ("3", ((12.0, 12.0),)), ("4", ((80.0, 10.0),))]
    made: list[Balloon] = balloons_of([(words, spots) for words, spots in wanted], (0.0, 0.0, 90.0, 60.0))

    assert sorted(one.words for one in made) == ["1", "2", "3", "4"]
    assert not any(crossing(a.middle, a.tip, b.middle, b.tip) for a, b in combinations(made, 2))
    for a, b in combinations(made, 2):
        assert a.middle[0] != b.middle[0] or abs(a.middle[1] - b.middle[1]) >= ROOM - 1e-9


def test_balloons_point_at_metal_that_is_seen(in_shop_r: Plan) -> None:
    """Each part offers places, all within the picture."""
    from tommybar.pack.boxes import box_of

    picture = picture_of(in_shop_r.design, assembled(in_shop_r.design))
    left, top, right, bottom = box_of(picture.marks)

    assert all(spots for spots in picture.spots.values())
    assert all(
        left <= x <= right and top <= y <= bottom for spots in picture.spots.values() for x, y in spots
    )


def test_the_parts_list_tells_made_and_bought() -> None:
    """Made parts with material, stock and sheet; the bought one by its designation."""
    rows = part_rows(listed(DESIGN), {"wheel": "round Ø92 × 27"}, {"wheel": 13})

    assert ("3", "wheel", "1", WHEEL.material, "round Ø92 × 27", "13") in rows
    assert ("8", "grub", "1", "", "ISO 4026 M4 x 6", "bought") in rows


def test_play_follows_from_the_limits() -> None:
    """8.000-8.015 on 7.972-7.987: 8.000 - 7.987 = 0.013 to 8.015 - 7.972 = 0.043; the pressed bush below 0."""
    rows = {(row[0], row[2]): row for row in fit_rows(DESIGN, sizes_of(DESIGN), Reader())}

    assert rows["bush bore", "shaft journal a"][5] == "+0.013 to +0.043"
    assert rows["pillar bore", "bush body"][5] == "-0.029 to +0.000"
    assert rows["pillar bore", "bush body"][4] == "H7/p6 press"


def test_the_order_of_assembly_says_what_stays_for_good(in_shop_r: Plan) -> None:
    """The bushes are pressed first and stay."""
    words = [one.words for sheet in drawn(in_shop_r)[1:] for one in texts(sheet)]

    assert "Order of assembly" in words
    assert words.count("pressed") == 2


def test_the_sheets_repeat_byte_for_byte(in_shop_r: Plan) -> None:
    """The same design gives the same SVG."""
    assert [svg_text(one) for one in drawn(in_shop_r)] == [svg_text(one) for one in drawn(in_shop_r)]


def test_lists_stand_beside_the_picture_where_they_have_room() -> None:
    """Three parts and two steps need no sheet of their own; the demonstrator's fourteen steps do."""
    design = load_design(EXAMPLES / "plumb-bob" / "design.yaml").sized()
    sheets = assembly_sheets(design, IMPRINT)

    assert len(sheets) == 1
    words = [one.words for one in texts(sheets[0])]
    assert {"Parts", "Order of assembly"} <= set(words)
    assert [one.words for one in texts(framed(sheets, IMPRINT, (1, 1))[0])].count("none") == 1


def test_a_sheet_of_lists_says_no_scale(in_shop_r: Plan) -> None:
    """Only the picture's sheet says that it is to no scale; on lists the field has a dash."""
    lists = drawn(in_shop_r)[1:]

    assert lists
    for sheet in lists:
        words = [one.words for one in texts(sheet)]
        assert words[words.index("scale") + 1] == "–"


@pytest.mark.parametrize("many", range(1, 60))
def test_no_row_is_left_alone_on_a_page_or_in_a_column(many: int) -> None:
    """A list of any length is broken with at least three rows on each side, and no row is lost."""
    rows = tuple((str(n), "Slide the shaft into the bush.", "") for n in range(many))
    lists, seen = [Listed("Order of assembly", STEPS, rows)], 0
    while lists:
        page = stacked(lists, [], (0.0, 0.0, 120.0, 90.0), 3.7)
        taken = len(lists[0].rows) - sum(len(one.rows) for one in page.left)
        assert taken >= min(3, many)
        seen += taken
        lists = page.left
    assert seen == many


def test_a_leader_goes_to_the_place_with_the_fewest_lines_before_it() -> None:
    """Of two places of a part, the nearer one lies behind two upright lines."""
    fence = [Line(((x, 0.0), (x, 9.0)), "rule") for x in (4.0, 5.0)]
    made = balloons_of([("1", ((6.0, 5.0), (20.0, 30.0)))], (0.0, 0.0, 100.0, 60.0), fence)

    assert made[0].tip == (20.0, 30.0)
