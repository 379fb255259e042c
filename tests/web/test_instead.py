"""The fold-out of the route that tells what another holding would cost."""

from __future__ import annotations

import re


def test_the_route_offers_the_other_ways_of_each_card_and_searches_none(opened):
    """A link for each card of lathe and mill; nothing is searched before it is asked for."""
    page = opened.get("/designs/demo/route/wheel")

    assert re.findall(r'hx-get="/designs/demo/route/wheel/instead/(\d)"', page.text) == ["1", "2", "3", "4"]
    assert not opened.app.state.desk.extra.get("instead")


def test_a_way_is_shown_with_its_price_and_what_changes(opened, words):
    """Card 2 of the wheel may be held by its boss in a sleeve: so many minutes, and the sleeve is made first."""
    page = words(opened.get("/designs/demo/route/wheel/instead/2"))

    assert re.search(
        r"split sleeve .* on boss instead of three-jaw, outside jaws on rim: \d+\.\d min more", page
    )
    assert "as many grips" in page
    assert "which has to be made first" in page


def test_where_nothing_else_holds_the_figure_is_shown(opened, words):
    """Card 1 of the wheel: the blank is outside what the other jaws hold."""
    page = words(opened.get("/designs/demo/route/wheel/instead/1"))

    assert "No other way of card 1 of wheel" in page
    assert re.search(r"\d+ mm is outside 2-28 mm", page)


def test_a_script_gets_the_piece_alone_and_sees_how_far_the_search_is(opened, monkeypatch):
    """The fold-out: while the search goes on it asks again, then it holds the answer."""
    from tommybar.web.pages import instead

    monkeypatch.setattr(instead, "PATIENCE", 0.0)
    path, piece = "/designs/demo/route/shaft/instead/2", {"hx-request": "true"}
    seen = opened.get(path, headers=piece)

    assert "<html" not in seen.text
    assert "searching:" in seen.text
    assert f'hx-get="{path}"' in seen.text
    monkeypatch.setattr(instead, "PATIENCE", 30.0)
    done = opened.get(path, headers=piece)
    assert "hx-get" not in done.text
    assert "1 grip more" in done.text


def test_a_card_that_is_not_there_is_refused(opened, words):
    """Neither a card of the bench nor one that the part has not."""
    for part, card in (("wheel", 9), ("bush", 3)):
        answer = opened.get(f"/designs/demo/route/{part}/instead/{card}")
        assert answer.status_code == 400
        assert "on a machine" in words(answer)


def test_a_mill_card_shows_how_else_it_lies(opened, words):
    """Without the vice the base is clamped; no weight of a search is told, since none was made."""
    page = words(opened.get("/designs/demo/route/base/instead/2"))

    assert "clamped flat on a sacrificial plate on top face up instead of vice, on parallels" in page
    assert "in the search, where a grip is 100" not in page
