"""Bad input at every form: words beside it that say what to do, nothing typed is lost, nothing is written.

Every form of the page stands in one of the two lists by hand; a template with
a form that is in neither fails.
"""

from __future__ import annotations

import html
import re
from pathlib import Path

import pytest

import tommybar.web

TEMPLATES = Path(tommybar.web.__file__).parent / "templates"
LONG = "q" * 5000

# forms that only have buttons, choices and hidden entries of ours: the last says where their misuse is tested
ONLY_BUTTONS = {
    "base.html /look": "test_pages",
    "build.html /builds/X/print": "nothing is sent",
    "build.html /builds/X/settle": "here",
    "build.html /builds/X/revision": "here",
    "build.html /builds/X/tools": "here",
    "archive.html /archive/copies": "test_builds",
    "rescue.html /builds/X/rescue/X": "here",
    "overview.html /designs/X/remove": "nothing is sent",
    "shops.html /shops/X/remove": "nothing is sent",
    "sheets.html /designs/X/sheets": "nothing is sent",
    "sheets.html /look": "here",
    "working.html /work/X/stop": "nothing is sent",
    "pieces.html X/undo": "nothing is sent",
    "pieces.html X/redo": "nothing is sent",
    "pieces.html /designs/X/shop": "here",
    "sizes.html /designs/X/sizes/scale": "here",
}
TYPED_IN = {
    "designs.html /designs",
    "shops.html /shops",
    "walk.html /shops/X/walk/X",
    "calibrate.html /shops/X/calibrate",
    "sizes.html /designs/X/sizes",
    "parts.html /designs/X/parts/X",
    "parts.html /designs/X/parts/X/add",
    "parts.html /designs/X/text",
    "text.html /X/X/text",
    "builds.html /builds",
    "rescue.html /builds/X/rescue",
    "archive.html /archive",
    "lookup.html /look-up/X",
    "pair.html /pair",
}


def forms_of_the_page():
    """Every form of every template, by its file and the address it is sent to."""
    found = set()
    for place in TEMPLATES.glob("*.html"):
        for tag in re.findall(r"<form\b[^>]*?action=\"((?:[^\"{]|\{\{.*?\}\})*)\"", place.read_text("utf-8")):
            address = re.sub(r"\{\{.*?\}\}", "X", tag).partition("#")[0]
            found.add(f"{place.name} {address}")
    return found


def test_every_form_of_the_page_is_tried_here():
    """A new form has to be tried with bad input before it is let in."""
    tags = sum(len(re.findall(r"<form\b", one.read_text("utf-8"))) for one in TEMPLATES.glob("*.html"))
    named = sum(
        len(re.findall(r"<form\b[^>]*?action=", one.read_text("utf-8"))) for one in TEMPLATES.glob("*.html")
    )

    assert tags == named
    assert forms_of_the_page() == TYPED_IN | set(ONLY_BUTTONS)


@pytest.fixture(scope="module")
def settled_in(opened):
    """The demonstrator opened, a shop walked into, a build begun; gives the build's address."""
    opened.post("/shops", {"kind": "small-bench", "name": "shed"})
    begun = opened.settled(opened.post("/builds", {"design": "demo", "title": "Bench wheel"}))
    opened.get("/")
    return str(begun.url).partition("?")[0].replace("http://127.0.0.1:8700", "")


FILE = {"file": ("a.yaml", b"\xff\xfe not text", "application/yaml")}
RIM = '["parts", "wheel", "turned", "outside", 0, "dia"]'
FEATURE = {"feature": "land", "field:name": "<b>", "field:dia": "thick"}
# address, what is sent, what is said, what of the typed must stand in the answer
CASES = [
    ("/designs", {"kind": "example", "example": "demonstrator", "name": "***"}, "makes no name", ["***"]),
    ("/designs", {"kind": "example", "example": "no such", "name": "kept name"}, "no example", ["kept name"]),
    ("/designs", {"kind": "disc", "name": "kept", "a": "", "b": "12"}, "empty", ["kept", "12"]),
    ("/designs", {"kind": "disc", "name": "kept", "a": "wide", "b": "17.5"}, "no figure", ["wide", "17.5"]),
    (
        "/designs",
        {"kind": "disc", "name": "kept", "a": "-5", "b": "12"},
        "must lie between 0.5 and 2000",
        ["-5", "12"],
    ),
    ("/designs", {"kind": "disc", "name": "kept", "a": LONG, "b": "12"}, "", ["12"]),
    ("/designs", {"kind": "file"}, "No file was handed in", []),
    ("/shops", {"kind": "walk", "name": "...", "units": "in"}, "makes no name", ["...", '"in" selected']),
    ("/shops", {"kind": "file"}, "No file was handed in", []),
    ("/shops/shed/walk/machine", {"answer:lathe.centre_height": "tall"}, "no figure", ["tall"]),
    ("/shops/shed/walk/machine", {"answer:lathe.centre_height": "-55"}, "above 0", ["-55"]),
    ("/shops/shed/walk/spindle", {"answer:lathe.speeds": "100, quick"}, "no figure", ["100, quick"]),
    ("/shops/shed/walk/machine", {"answer:lathe.swing_over_bed": LONG}, "", [LONG[:2000]]),
    ("/shops/shed/calibrate", {"kind": "dial", "marked": "", "before": "25.25"}, "", ["25.25"]),
    (
        "/shops/shed/calibrate",
        {"kind": "slack", "slide": "carriage", "readings": "5, x"},
        "no figure",
        ["5, x"],
    ),
    ("/shops/shed/calibrate", {"kind": "runout", "jaws": "inside jaws", "readings": "-1"}, "-1", ['"-1"']),
    ("/shops/shed/calibrate", {"kind": "reamer", "reamer": "8", "readings": "80"}, "80", ['"80"']),
    ("/designs/demo/sizes", {"pin:web": "thin", "scale": "0.7"}, "no figure", ["thin", '"0.7"']),
    ("/designs/demo/sizes", {"scale": "large", "pin:web": "5.25"}, "", ["large", "5.25"]),
    ("/designs/demo/sizes", {"scale": "0", "pin:web": "5.25"}, "", ['"0"', "5.25"]),
    ("/designs/demo/parts/wheel", {"place": RIM, "figure": "2 +"}, "breaks off", ["2 +"]),
    ("/designs/demo/parts/wheel", {"place": RIM, "figure": ""}, "", []),
    ("/designs/demo/parts/wheel", {"place": "{", "figure": "7.125"}, "Load the page again", []),
    ("/designs/demo/parts/shaft/add", FEATURE, "", ["&lt;b&gt;", "thick"]),
    ("/designs/demo/text", {"text": "tommybar: 1\ndesign: kept\nparts: [\n"}, "line", ["design: kept"]),
    ("/shops/shed/text", {"text": "tommybar: 1\nshop: kept\nlathe: 7\n"}, "line", ["shop: kept"]),
    ("/builds", {"design": "gone", "title": "kept title"}, "gone", ["kept title"]),
    (
        "BUILD/rescue",
        {"number": "1", "about": "wheel.boar", "value": "8.03"},
        "wheel.bore",
        ["wheel.boar", "8.03"],
    ),
    (
        "BUILD/rescue",
        {"number": "1", "about": "wheel.bore", "value": "big"},
        "no figure",
        ["wheel.bore", "big"],
    ),
    ("BUILD/rescue", {"number": "1", "about": "", "value": ""}, "", []),
    ("/archive", {}, "No file was handed in", []),
    ("/designs/demo/shop", {"shop": "nowhere"}, "nowhere", []),
    ("/designs/demo/sizes/scale", {"scale": "half"}, "half", []),
    ("BUILD/settle", {"keep": "x"}, "no such disagreement", []),
    ("BUILD/revision", {"size": "wheel.bore"}, "", []),
    ("BUILD/tools", {}, "", []),
    ("BUILD/rescue/X", {"way": "9"}, "Tell it again", []),
]


@pytest.mark.parametrize(("path", "data", "said", "kept"), CASES)
def test_bad_input_is_told_and_what_was_typed_stays(opened, settled_in, words, path, data, said, kept):
    """400 and words with a remedy; the fields hold what was typed; the files are as they were."""
    files = ("/designs/demo/file", "/shops/shed/file", f"{settled_in}/made")
    before = [opened.get(one).text for one in files]

    answer = opened.settled(opened.post(path.replace("BUILD", settled_in), data))

    assert answer.status_code == 400, words(answer)[:600]
    assert re.search(r'class="(complaints|wrong)"', answer.text)
    assert said in words(answer), words(answer)[:900]
    text = html.unescape(answer.text).replace("<b>", "&lt;b&gt;") if kept else ""
    for one in kept:
        assert one in text, one
    assert [opened.get(one).text for one in files] == before


@pytest.mark.parametrize("path", ["/designs", "/shops", "/archive"])
def test_a_file_that_is_no_such_file_is_told(opened, settled_in, words, path):
    """Neither text nor archive: words, and nothing is there that was not before."""
    answer = opened.post(path, {"kind": "file"}, files=FILE)

    assert answer.status_code == 400
    assert re.search("not UTF-8|no archive|not a zip|zip", words(answer))


@pytest.mark.parametrize(
    ("path", "said"),
    [
        ("/look-up/fit?what=8+Q9/z", "Q"),
        ("/look-up/limits?what=H7", ""),
        (f"/look-up/thread?what={'M' * 3000}", ""),
        ("/look-up/circle?what=0+0", ""),
    ],
)
def test_a_look_up_that_finds_nothing_says_what_it_wants(opened, words, path, said):
    """The page with its field, the words beside it, and what was asked still in it."""
    answer = opened.get(path)

    assert answer.status_code == 400
    assert said in words(answer)
    assert 'class="complaints"' in answer.text
    assert path.partition("what=")[2].replace("+", " ")[:100] in html.unescape(answer.text)


@pytest.mark.parametrize("code", ["", "12", "abcdef", "0" * 4000])
def test_a_code_that_is_none_is_told(make_browser, words, code):
    """From another machine: the page asks again."""
    from tommybar.web.app import make_app
    from tommybar.web.settings import Settings

    app = make_app(Path(make_browser().app.state.desk.files.path), Settings(lan=True, hosts=("192.168.0.2",)))
    other = make_browser(app=app, address="192.168.0.9", host="http://192.168.0.2:8700")
    other.get("/pair")

    answer = other.post("/pair", {"code": code})

    assert answer.status_code in (400, 403)
    assert "code" in words(answer)


def test_a_look_that_is_none_changes_nothing(opened):
    """A unit, a light or a paper that there is not leaves the page as it was."""
    before = dict(opened.client.cookies)

    answer = opened.post("/look", {"unit": "furlong", "light": "purple", "paper": "A17", "back": "/shops"})

    assert answer.status_code < 500
    assert {name: opened.client.cookies.get(name) for name in before} == before
    assert not {"unit", "light", "paper"} & (set(opened.client.cookies) - set(before))
