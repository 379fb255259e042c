"""Editing: on the drawing, in the size table, in the text; nothing is lost, everything can be undone."""

from __future__ import annotations

import json
import re

import pytest

from tommybar.design.loaded import design_from_text
from tommybar.web.edits import with_size
from tommybar.web.pages.designs import example_designs

DEMONSTRATOR = example_designs()["demonstrator"].read_text(encoding="utf-8")
PART = "/designs/demo/parts/wheel"


@pytest.fixture
def demo(browser):
    """A browser with the demonstrator as demo."""
    browser.post("/designs", {"kind": "example", "example": "demonstrator", "name": "demo"})
    return browser


def text_of(browser):
    """The design's file as it stands."""
    return browser.app.state.desk.files.text("designs", "demo")


def field(answer, label):
    """The place that the form of a label sends."""
    forms = re.findall(r'(?s)<form class="edit.*?</form>', answer.text)
    return next(form for form in forms if f"<b>{label}</b>" in form)


def place_in(form):
    return json.loads(re.search(r'name="place" value="([^"]+)"', form)[1].replace("&#34;", '"'))


def test_touching_a_dimension_offers_the_size_that_makes_it(demo):
    """Every dimension of the rim's diameter leads to the size wheel_dia and what it follows."""
    page = demo.get(PART)
    links = re.findall(r'href="([^"]+)" aria-label="([^"]+)"', page.text)
    rim = next(link for link, words in links if words.startswith("Ø90"))

    form = field(demo.get(rim.partition("#")[0]), "wheel dia")

    assert place_in(form) == ["sizes", "wheel_dia"]
    assert 'value="90"' in form
    assert "<option selected>scale</option>" in form


def test_every_part_has_dimensions_to_touch_and_each_leads_to_an_entry(demo):
    """Touching works on all drawings of the example, turned and plate."""
    for part in ("wheel", "shaft", "bush", "pillar", "base", "crank", "handle"):
        page = demo.get(f"/designs/demo/parts/{part}")
        links = re.findall(r'href="([^"#]+)#edit"', page.text)
        assert len(links) >= 3, part
        for link in links:
            assert '<form class="edit"' in demo.get(link).text, link


def test_a_figure_is_spliced_in_at_its_place_and_comments_stay(demo):
    """One line of the file changes, and only its figure."""
    answer = demo.post(
        PART, {"place": '["sizes", "wheel_dia"]', "figure": "95", "follows": "scale", "at": "0"}
    )

    assert answer.status_code == 200
    changed = [
        (old, new)
        for old, new in zip(DEMONSTRATOR.splitlines(), text_of(demo).splitlines(), strict=True)
        if old != new
    ]
    assert changed == [
        (
            "  wheel_dia:    {is: 90, follows: scale, drives: true, between: [50, 180]}",
            "  wheel_dia:    {is: 95, follows: scale, drives: true, between: [50, 180]}",
        )
    ]


def test_undo_puts_the_file_back_to_the_letter(demo):
    """After two edits, two undoes give the file that was; a third says there is nothing."""
    demo.post(PART, {"place": '["sizes", "wheel_dia"]', "figure": "95", "follows": "scale"})
    demo.post(PART, {"place": '["parts", "wheel", "turned", "outside", 0, "edges"]', "figure": "2 x 45 deg"})
    assert "edges: 2 x 45 deg" in text_of(demo)

    demo.post("/designs/demo/undo", {"tab": "parts"})
    assert "is: 95" in text_of(demo)
    demo.post("/designs/demo/undo", {"tab": "parts"})
    assert text_of(demo) == DEMONSTRATOR
    assert "There is nothing to undo" in demo.post("/designs/demo/undo", {"tab": "parts"}).text


def test_redo_takes_the_design_forward_until_a_new_edit(demo):
    """The button stands there after an undo, on every page that has undo; a new edit takes it away."""
    demo.post(PART, {"place": '["sizes", "wheel_dia"]', "figure": "95", "follows": "scale"})
    later = text_of(demo)
    assert 'data-step="redo"' not in demo.get("/designs/demo/text").text

    answer = demo.post("/designs/demo/undo", {"tab": "parts"})
    assert 'action="/designs/demo/redo"' in answer.text
    answer = demo.post("/designs/demo/redo", {"tab": "parts"})
    assert "The later text is back" in answer.text
    assert text_of(demo) == later
    demo.post("/designs/demo/undo", {"tab": "text"})
    assert 'action="/designs/demo/redo"' in demo.get("/designs/demo/text").text
    demo.post(PART, {"place": '["sizes", "wheel_dia"]', "figure": "96", "follows": "scale"})
    answer = demo.post("/designs/demo/redo", {"tab": "text"})
    assert "There is nothing to redo" in answer.text
    assert "is: 96" in text_of(demo)


@pytest.mark.parametrize(
    ("figure", "told"),
    [
        ("95 +", "The expression breaks off here"),
        ("wheel_dai", 'wheel_dai" is no figure'),
        ("", "The field is empty"),
        ("40", "between allows 50 to 180 mm"),
        ("], [", "wheel_dia"),
        ("1e400", "wheel_dia"),
    ],
)
def test_a_bad_figure_is_refused_beside_its_field_and_stays_there(demo, words, figure, told):
    """The file is untouched; the field holds what was typed."""
    answer = demo.post(
        PART, {"place": '["sizes", "wheel_dia"]', "figure": figure, "follows": "scale", "at": "0"}
    )
    form = field(answer, "wheel dia")

    assert answer.status_code == 400
    assert told in words(answer)
    assert 'aria-invalid="true"' in form
    assert 'class="complaints"' in form
    assert text_of(demo) == DEMONSTRATOR


@pytest.mark.parametrize(
    "place", ["", "[]", "[1, 2]", '["relations", 0, "fit"]', "nonsense", '["sizes", {"a": 1}]', "[" * 5000]
)
def test_a_form_that_names_no_entry_changes_nothing(demo, words, place):
    """Only sizes and parts are edited here, and only at a place."""
    answer = demo.post(PART, {"place": place, "figure": "95", "follows": "scale"})

    assert answer.status_code == 400
    assert "does not say which entry" in words(answer)
    assert text_of(demo) == DEMONSTRATOR


@pytest.mark.parametrize(
    ("name", "typed", "follows", "line"),
    [
        (
            "web",
            "5.5",
            "nothing",
            "{is: 5.5, follows: nothing, because: carries the rim and takes the five holes}",
        ),
        ("rim_in", "wheel_dia - 20", "worked out", "{is: wheel_dia - 20}"),
        ("recess", "8", "scale", "{is: 8, follows: scale}"),
        ("recess", "min(8, rim_wide - web)", "worked out", "'min(8, rim_wide - web)'"),
    ],
)
def test_a_size_changes_what_it_follows(name, typed, follows, line):
    """From a class to another, to worked out and back; the file loads each time."""
    text = with_size(DEMONSTRATOR, name, typed, follows)

    assert re.search(rf"(?m)^  {name}:\s+{re.escape(line)}", text)
    design_from_text(text)


def test_faults_of_a_text_are_marked_at_their_line(demo, words):
    """A text with faults is not saved unless that is said twice; then the faults stay marked."""
    bad = DEMONSTRATOR.replace("wheel_dia:    {is: 90", "wheel_dia:    {is: ninety")
    line = next(n for n, one in enumerate(bad.splitlines(), 1) if "ninety" in one)

    answer = demo.post("/designs/demo/text", {"text": bad})

    assert answer.status_code == 400
    assert f'data-line="{line}"' in answer.text
    assert "This text was not saved" in words(answer)
    assert "is: ninety" in answer.text
    assert text_of(demo) == DEMONSTRATOR
    assert demo.post("/designs/demo/text", {"text": bad, "all_the_same": "yes"}).status_code == 200
    assert text_of(demo) == bad
    assert f'data-line="{line}"' in demo.get("/designs/demo/text").text


def test_a_pin_is_kept_and_shown_and_undone(demo, words):
    """A pinned size stands in the plan as it was typed; undo lets it go."""
    answer = demo.settled(demo.post("/designs/demo/sizes", {"scale": "", "stock": "ask", "pin:web": "4.5"}))

    assert re.search(r"web 6 [\d.]+ 4.5 mm", words(answer))
    assert 'name="pin:web" value="4.5"' in answer.text
    answer = demo.settled(demo.post("/designs/demo/sizes/undo"))
    assert 'name="pin:web" value=""' in answer.text
    answer = demo.settled(demo.post("/designs/demo/sizes/redo"))
    assert 'name="pin:web" value="4.5"' in answer.text


@pytest.mark.parametrize(
    ("form", "told"),
    [
        ({"pin:web": "thin"}, '"thin" is no figure'),
        ({"pin:web": "-2"}, "web"),
        ({"scale": "half"}, "a plain number is wanted"),
        ({"scale": "99"}, "must lie between 0.05 and 20"),
    ],
)
def test_a_bad_pin_or_scale_is_told_beside_its_field(demo, words, form, told):
    """What was typed stays in the field, and the choices stay as they were."""
    demo.settled(demo.get("/designs/demo/sizes"))

    answer = demo.post("/designs/demo/sizes", {"scale": "", "stock": "ask", **form})

    assert answer.status_code == 400
    assert told in words(answer)
    assert 'aria-invalid="true"' in answer.text
    assert f'value="{next(iter(form.values()))}"' in answer.text
    assert demo.app.state.desk.files.choices("demo").pins == {}


def test_a_design_taken_off_the_list_keeps_its_text(demo):
    """Removed by mistake, it comes back whole."""
    demo.post("/designs/demo/remove")
    files = demo.app.state.desk.files
    assert files.names("designs") == []

    assert files.undo("designs", "demo")
    assert text_of(demo) == DEMONSTRATOR


@pytest.mark.parametrize(
    ("part", "feature", "answers", "found"),
    [
        ("crank", "circle", {"name": "ease", "dia": "5", "count": "3", "circle": "24"}, "circle_holes"),
        ("crank", "recess", {"name": "dish", "face": "B", "inside": "14", "outside": "24", "deep": "2"}, "recesses"),
        ("shaft", "groove", {"name": "ring", "on": "journal_a", "at": "middle", "wide": "1", "deep": "0.4"}, "grooves"),
        ("shaft", "cross hole", {"name": "pin", "dia": "2", "on": "journal_a"}, "cross_holes"),
        ("base", "plate hole", {"name": "more", "face": "top", "dia": "6.6", "x": "30", "y": "25"}, "holes"),
        ("base", "tapped plate hole",
         {"name": "m", "face": "top", "thread": "M5", "deep": "8", "x": "base_long / 3", "y": "25"}, "holes"),
    ],
)  # fmt: skip
def test_a_feature_is_added_by_its_questions(demo, part, feature, answers, found):
    """It stands at the end of its list, the design loads with it, and no other line has changed."""
    form = {"feature": feature, **{f"field:{key}": value for key, value in answers.items()}}

    answer = demo.post(f"/designs/demo/parts/{part}/add", form)

    assert answer.status_code == 200
    shape = design_from_text(text_of(demo)).sized().part(part).shape
    assert answers["name"] in {one.name for one in getattr(shape, found)}
    assert len(text_of(demo).splitlines()) == len(DEMONSTRATOR.splitlines()) + 1
    assert answers["name"] in answer.text


@pytest.mark.parametrize(
    ("feature", "answers", "told"),
    [
        ("circle", {"name": "ease", "dia": "5"}, "Not said: how many, pitch-circle diameter"),
        ("circle", {"name": "pin", "dia": "5", "count": "3", "circle": "24"}, 'Two features are named "pin"'),
        (
            "circle",
            {"name": "far", "dia": "5", "count": "3", "circle": "80"},
            "Make the circle or the holes smaller",
        ),
        ("circel", {}, 'Did you mean "circle"?'),
    ],
)
def test_a_feature_that_cannot_be_is_told_beside_its_questions(demo, words, feature, answers, told):
    """The file stays; what was typed stays in its fields."""
    form = {"feature": feature, **{f"field:{key}": value for key, value in answers.items()}}

    answer = demo.post("/designs/demo/parts/crank/add", form)

    assert answer.status_code == 400
    assert told in words(answer)
    for value in answers.values():
        assert f'value="{value}"' in answer.text
    assert text_of(demo) == DEMONSTRATOR


def test_every_addition_offers_keys_that_the_file_knows(demo):
    """Each field of the list is a key of the design file's entry; x and y make up its place."""
    from tommybar.design.loaded import design_schema
    from tommybar.web.additions import features

    definitions = design_schema()["$defs"]
    for one in features():
        part = definitions["WrittenTurned" if one["kind"] == "turned" else "WrittenPlate"]
        known = entry_of(definitions, part["properties"][one["place"][-1]]["items"])
        if one["kind"] == "plate":
            known = known | {"x": {}, "y": {}}
        for key in [field["key"] for field in one["fields"]] + list(one.get("with", {})):
            outer, _, inner = key.partition(".")
            assert outer in known, (one["name"], key)
            if inner:
                assert inner in entry_of(definitions, known[outer]), (one["name"], key)


def entry_of(definitions: dict, schema: dict) -> dict:
    """The keys of an entry of the file by its reference, the last of several that it may be."""
    options = [*schema.get("anyOf", []), schema]
    name = next(one["$ref"] for one in options if "$ref" in one)
    return definitions[name.rpartition("/")[2]]["properties"]


BORED = "      bores: [{name: bore, dia: 12, through: true}]\n"
EXAMPLES = """tommybar: 1
design: A part for every addition
units: mm
parts:
  part:
    material: mild steel
    turned:
      outside: [{name: body, dia: 60, long: 60}, {name: head, dia: 60, long: 20}]
      bores: [{name: bore, dia: 12, through: true}]
"""


def test_every_turned_addition_makes_a_part_with_its_own_examples():
    """What stands as an example in each question can be written into one part and loads."""
    from tommybar.web.additions import features, with_feature

    for one in features():
        if one["kind"] != "turned":
            continue
        bored = "bore" in [field.get("example") for field in one["fields"] if field["key"] in ("on", "into")]
        text = EXAMPLES if bored else EXAMPLES.replace(BORED, "")
        typed = {field["key"]: field.get("example", "") or field["choices"][0] for field in one["fields"]}
        new = with_feature(text, "part", one["name"], typed | {"face": "B"} if "face" in typed else typed)
        design_from_text(new)


FLAT = """tommybar: 1
design: A plate for every addition
units: mm
parts:
  part:
    material: mild steel
    KIND: {length: 60, width: 40, THICK: 20}
"""


@pytest.mark.parametrize(("kind", "thick"), [("plate", "thick"), ("block", "height")])
def test_every_plate_addition_makes_a_part_with_its_own_examples(kind, thick):
    """What stands as an example can be written into a plate, and into a block under its own key."""
    from tommybar.design.shapes_of_parts import features_of
    from tommybar.web.additions import features, with_feature

    text = FLAT.replace("KIND", kind).replace("THICK", thick)
    flat = [one for one in features() if one["kind"] == "plate"]
    assert len(flat) > 10
    for one in flat:
        typed = {field["key"]: field.get("example", "") or field["choices"][0] for field in one["fields"]}
        shape = design_from_text(with_feature(text, "part", one["name"], typed)).sized().part("part").shape
        assert list(features_of(shape)) == [typed["name"]], one["name"]
