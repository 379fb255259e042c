"""The assembly drawing: one balloon a part, none crossing, and lists that tell what the design says."""

from __future__ import annotations

import math
from itertools import combinations

import pytest

from tommybar.assembly.placing import assembled
from tommybar.pack.assembled.balloons import RADIUS, ROOM, Balloon, balloons_of, crossing
from tommybar.pack.assembled.lists import fit_rows, listed, part_rows, sizes_of
from tommybar.pack.assembled.picture import picture_of
from tommybar.pack.assembled.sheet import assembly_sheets, framed
from tommybar.pack.imprint import Imprint
from tommybar.pack.sheet import Arc, Line, Sheet
from tommybar.pack.svg import svg_text
from tommybar.pack.units import Reader
from tommybar.planning import Plan

from ..handmade import DESIGN, IMPRINT, WHEEL
from ..layout import LINES, clashes, texts

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
