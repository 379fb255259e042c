"""The walk-through of a shop and the short trials: answers come into the file and stay there."""

from __future__ import annotations

import re

import pytest

from tommybar.design.yaml_file import yaml_from_text
from tommybar.shop.examples import example_shops
from tommybar.web.answers import groups, rows_of, with_rows, written
from tommybar.web.plans import shop_of


@pytest.fixture
def shed(browser):
    """A browser with an empty shop my-shed."""
    browser.post("/shops", {"kind": "walk", "name": "My shed", "units": "mm"})
    return browser


def text_of(browser, name="my-shed"):
    """The shop's file as it stands."""
    return browser.app.state.desk.files.text("shops", name)


def test_every_question_has_a_place_in_the_shop_file_and_says_how(browser):
    """All places of the walk-through are read back from an example that answers them; all say how to measure."""
    data = yaml_from_text(example_shops()["small-bench"].read_text()).data
    asked = [one for group in groups() for one in group.get("questions", ())]

    assert len(asked) > 40
    for one in asked:
        assert one["how"].strip(), one["place"]
        assert written(data, one["place"]) or one["place"] == "lathe.leadscrew_pitch", one["place"]


def test_the_walk_through_begins_from_the_nearest_example(shed, words):
    """What is not said yet is shown as taken, with its figure; it becomes nearer as answers come."""
    assert "Until you say it: 110, from the nearest example" in words(shed.get("/shops/my-shed/walk/machine"))

    shed.post("/shops/my-shed/walk/machine", {"answer:lathe.centre_height": "55"})

    page = words(shed.get("/shops/my-shed/walk/machine"))
    assert "Until you say it: 72, from the nearest example" in page
    assert 'value="55"' in shed.get("/shops/my-shed/walk/machine").text


def test_answers_come_into_the_file_and_the_next_page_opens(shed):
    """Figures, lists and words are written so that the shop loads with them."""
    answer = shed.post(
        "/shops/my-shed/walk/spindle", {"next": "cross-slide", "answer:lathe.speeds": "100, 250, 500"}
    )
    shed.post("/shops/my-shed/walk/cross-slide", {"answer:lathe.cross_slide.division": "0.05",
              "answer:lathe.cross_slide.turn": "2", "answer:lathe.cross_slide.reads": "DIA"})  # fmt: skip
    shed.post("/shops/my-shed/walk/drawer", {"answer:drills": "1-3 by 0.5, #7", "answer:taps": "M3, M4"})
    shed.post("/shops/my-shed/walk/ways", {"answer:can": ["arbor", "dividing"], "answer:saw_kerf": "1.2"})

    shop = shop_of(text_of(shed))
    assert "/walk/cross-slide" in str(answer.url)
    assert shop.lathe.speeds == (100, 250, 500)
    assert (shop.lathe.cross_slide.per_division, shop.lathe.cross_slide.reads) == (0.025, "DIA")
    assert shop.drills == (1.0, 1.5, 2.0, 2.5, 3.0, 5.1054)
    assert shop.taps == ("M3", "M4")
    assert shop.can == {"arbor", "dividing"}
    assert shop.saw_kerf == 1.2


@pytest.mark.parametrize(
    ("page", "form", "told"),
    [
        ("machine", {"answer:lathe.centre_height": "high"}, "high"),
        ("machine", {"answer:lathe.swing_over_bed": "100", "answer:lathe.swing_over_cross_slide": "120"}, "below the swing"),
        ("spindle", {"answer:lathe.speeds": "fast, slow"}, "fast"),
        ("drawer", {"answer:taps": "M3, M99x"}, "There is no thread"),
        ("ways", {"answer:can": ["arbor", "welding"]}, '"welding" is no way of working'),
        ("cross-slide", {"answer:lathe.cross_slide.division": "0.03", "answer:lathe.cross_slide.turn": "2"}, "whole number"),
    ],
)  # fmt: skip
def test_a_bad_answer_is_told_and_nothing_is_lost(shed, words, page, form, told):
    """The file stays as it was; what was typed stays in its field."""
    before = text_of(shed)

    answer = shed.post(f"/shops/my-shed/walk/{page}", form)

    assert answer.status_code == 400
    assert told in words(answer)
    assert text_of(shed) == before
    for typed in form.values():
        assert isinstance(typed, list) or f'value="{typed}"' in answer.text


@pytest.mark.parametrize("table", ["jaws", "tools", "instruments", "rack"])
@pytest.mark.parametrize("shop", ["small-bench", "shop-r", "inch-bench"])
def test_a_table_shown_and_kept_unchanged_is_the_same_shop(shop, table):
    """Rows read from the file and written back give the very same records."""
    text = example_shops()[shop].read_text(encoding="utf-8")
    group = next(one for one in groups() if one.get("table") == table)

    after = with_rows(text, group, rows_of(yaml_from_text(text).data, table))

    assert getattr(shop_of(after), table) == getattr(shop_of(text), table)


def test_a_changed_row_leaves_the_other_rows_and_the_comments():
    """One bar of the rack gets another long, one is added: every other line stays to the letter."""
    text = (
        "tommybar: 1\nshop: s\nrack:   # behind the door\n"
        "  # the good bar\n  - {material: brass, round: 12, long: 300}   # from the club\n"
        "  - {material: mild steel, round: 20, long: 200}\n  # end of the rack\nskills: []\n"
    )
    group = next(one for one in groups() if one.get("table") == "rack")
    rows = rows_of(yaml_from_text(text).data, "rack")
    rows[1]["long"] = "180"
    more = {"material": "silver steel", "section": "round", "size": "8", "long": "330"}

    after = with_rows(text, group, [*rows, more])

    lines = after.splitlines()
    assert lines[:5] == text.splitlines()[:5]
    assert lines[5] == "  - {material: mild steel, round: 20, long: 180}"
    assert lines[6] == "  - {material: silver steel, round: 8, long: 330}"
    assert lines[7:] == ["  # end of the rack", "skills: []"]


def test_one_cut_settles_how_the_dial_reads(shed, words):
    """Twice the division off the diameter is RAD; it is written into the file with its words."""
    form = {"kind": "dial", "marked": "0.02", "divisions": "50", "before": "25", "after": "23.01"}
    answer = shed.post("/shops/my-shed/calibrate", form)

    assert "it reads RAD" in words(answer)
    assert written(yaml_from_text(text_of(shed)).data, "lathe.cross_slide.reads") == "RAD"

    answer = shed.post("/shops/my-shed/calibrate", {**form, "after": "24.4"})
    assert answer.status_code == 400
    assert "0.02 would be DIA, 0.04 RAD" in words(answer)


def test_trials_of_a_copied_shop_change_only_what_was_tried(browser):
    """Slack, run-out and reamer come in at their place; every other figure and all comments stay."""
    browser.post("/shops", {"kind": "small-bench", "name": "mine"})
    before = text_of(browser, "mine")
    for form in (
        {"kind": "slack", "slide": "cross_slide", "readings": "5, 6, 5.5"},
        {"kind": "runout", "jaws": "outside jaws", "readings": "0.04, 0.07, 0.05"},
        {"kind": "reamer", "reamer": "8", "readings": "8.011, 8.013"},
    ):
        assert browser.post("/shops/mine/calibrate", form).status_code == 200
    after = text_of(browser, "mine")
    shop = shop_of(after)

    assert shop.lathe.cross_slide.slack == 6
    assert shop.jaw_set("outside jaws").runout == 0.07
    assert next(one for one in shop.reamers if one.size == 8).cuts_over == pytest.approx(0.012)
    assert len(before.splitlines()) == len(after.splitlines())
    assert re.findall(r"#.*", before) == re.findall(r"#.*", after)
    assert sum(a != b for a, b in zip(before.splitlines(), after.splitlines(), strict=True)) == 3


def test_a_trial_of_what_is_not_in_the_file_says_what_to_do(shed, words):
    """Jaws that are only assumed cannot be calibrated."""
    answer = shed.post(
        "/shops/my-shed/calibrate", {"kind": "runout", "jaws": "outside jaws", "readings": "0.05"}
    )

    assert answer.status_code == 400
    assert "Say them in the walk-through first" in words(answer)


def test_an_own_shop_is_planned_for(shed, words):
    """The new shop stands in the list of every design, and the plan is made with it."""
    shed.post("/designs", {"kind": "disc", "name": "disc", "a": "40", "b": "10"})

    answer = shed.settled(shed.post("/designs/disc/shop", {"shop": "my-shed"}))

    assert re.search(r"<option selected>my-shed</option>", answer.text)
    assert shed.post("/designs/disc/shop", {"shop": "no-shop"}).status_code == 400


def test_undo_puts_a_shop_back(shed):
    """Each answered page is one edit."""
    before = text_of(shed)
    shed.post("/shops/my-shed/walk/machine", {"answer:lathe.centre_height": "55"})

    later = text_of(shed)
    answer = shed.post("/shops/my-shed/undo")

    assert text_of(shed) == before
    assert 'action="/shops/my-shed/redo"' in answer.text
    shed.post("/shops/my-shed/redo")
    assert text_of(shed) == later
