"""Every page of the demonstrator says what the plan says."""

from __future__ import annotations

import re

import pytest

from tommybar.design.joints import Duty
from tommybar.web.pages.designs import example_designs


@pytest.fixture(scope="module")
def plan(opened):
    """The plan that the pages show."""
    return opened.app.state.desk.plans.of("demo", "/")


def test_the_gallery_shows_the_design_with_its_picture(opened, words):
    """The tile names the design; its picture draws every part that is made."""
    page = opened.get("/")
    picture = opened.get("/designs/demo/picture").text

    assert "Hand-cranked flywheel demonstrator" in words(page)
    for name in ("wheel", "shaft", "bush", "pillar", "base", "crank", "handle"):
        assert f">{name}</text>" in picture
    assert "grub</text>" not in picture


def test_the_overview_tells_parts_purposes_and_findings(opened, plan, words):
    """Each part with its mass, the purpose with its verdict, each finding with its remedy."""
    text = words(opened.get("/designs/demo"))

    for one in plan.parts:
        assert one.part.shape is None or f"{one.mass:.0f} g" in text
    assert "turn at 240 rev/min, balanced to G 6.3, driven by hand" in text
    assert plan.plan_id in text
    for finding in plan.findings:
        assert finding.words in text
        assert finding.remedy in text


def test_the_overview_tells_what_the_assembly_shows(opened, plan, words):
    """The bushes are pressed for good, and the wheel may stand anywhere along its seat: both bite before metal is cut."""
    from tommybar.checks import check_together

    text = words(opened.get("/designs/demo"))
    told = check_together(plan.design)

    assert {651, 658} <= {one.number for one in told}
    for finding in told:
        assert finding.words in text


@pytest.mark.parametrize(
    ("severities", "verdict"),
    [((), "met"), (("note",), "met"), (("caution",), "look"), (("caution", "stop"), "not met")],
)
def test_a_purpose_is_met_when_nothing_speaks_against_it(plan, severities, verdict):
    """A stop about a part that turns means not met, a caution means look; how it goes together is no purpose."""
    from dataclasses import replace

    from tommybar.findings import Finding
    from tommybar.web.pages.overview import _aim

    about = tuple(Finding(number, one, "x", "wheel") for one in severities for number in (620, 654))
    other = tuple(
        Finding(number, "stop", "x", part) for number, part in ((620, "base"), (401, "wheel"), (656, "wheel"))
    )

    aim = _aim(plan.design.purposes[0], replace(plan, findings=(*about, *other)))

    assert aim.verdict == verdict


@pytest.mark.parametrize(
    ("duty", "unit", "said"),
    [
        (Duty("load", ("arm",), 5.0), "mm", "load 5 N on arm"),
        (Duty("stroke", ("rod",), 25.4), "in", "stroke 1 in on rod"),
        (Duty("sound", (), 900.0, 1100.0), "mm", "sound 900 to 1100 Hz"),
        (Duty("look", ("cap", "top_ring"), words="bright"), "mm", "look: bright on cap, top ring"),
    ],
)
def test_what_it_must_do_besides_turning_is_told(duty, unit, said):
    """A design that carries or sounds is not called one without a purpose."""
    from tommybar.pack.units import Reader
    from tommybar.web.pages.overview import _duty

    assert _duty(duty, Reader(unit)) == said


def test_the_size_table_has_old_exact_new_and_why(opened, plan, words):
    """Each size of the plan with its reason; the limit that binds is marked by a word."""
    text = words(opened.get("/designs/demo/sizes"))

    assert f"Sizes at {plan.scale:g} of the drawing" in text
    for row in plan.sizes:
        assert row.name in text
        assert row.why in text
    assert "binds: swing over the cross-slide wheel 72 up to 72" in text
    assert "wheel_dia 90 69.3 69.5 mm scale" in text


def test_the_route_shows_cards_holdings_and_why_not(opened, plan, words):
    """Cards in order; the holding, what was turned down with its figure, the smallest clearance."""
    for part in plan.parts:
        if part.part.shape is None:
            continue
        page = opened.get(f"/designs/demo/route/{part.part.name}")
        text = words(page)
        assert len(re.findall("<article", page.text)) == len(part.cards)
        for card in part.cards:
            assert f"Card {card.number} of {card.of}" in text
            for one in card.hold.rejected:
                assert one.reason.split()[0] in text
            for step in card.steps:
                assert step.do.replace("_", " ") in text
        for run in part.run.cards if part.run else ():
            if run.smallest_gap >= 0:
                assert f"Smallest clearance: {plan_length(run.smallest_gap)} mm, {run.gap_where}" in text


def plan_length(value):
    """A clearance as the page writes it."""
    words = f"{value:.1f}".rstrip("0").rstrip(".")
    return words or "0"


def test_the_route_draws_each_rung(opened, plan):
    """A lathe step with a dry run has its section, with what goes in the cut's hatch."""
    page = opened.get("/designs/demo/route/wheel").text
    steps = sum(len(card.steps) for card in plan.part("wheel").cards if card.machine == "lathe")

    assert page.count("section before and after") >= steps - 3
    assert page.count('class="cut-hatch"') > 6


def test_stock_draws_every_bar_with_its_saw_marks(opened, plan, words):
    """Marks are read from the marked end; bars to buy and the slip are told."""
    page = opened.get("/designs/demo/stock")
    text = words(page)

    assert page.text.count('class="sketch bar"') == len(plan.stock.bars)
    for bar in plan.stock.bars:
        assert (
            f"{bar.bar}, saw marks from the marked end: {bar.cuts[0].part} to {plan_length(bar.cuts[0].end)}"
            in page.text
        )
    for line in plan.stock.buy:
        assert line.words in text


def test_checks_give_formula_and_source_of_every_figure(opened, plan, words):
    """No figure stands without how it was worked out and from where."""
    text = words(opened.get("/designs/demo/checks"))

    assert len(plan.figures) > 5
    for one in plan.figures:
        assert " ".join(one.how.split()) in text
        assert f"source: {one.source}" in text


def test_lengths_turn_to_inches_by_one_switch(make_browser, opened, words):
    """The same page in inches; the figure is the same size."""
    other = make_browser(app=opened.app)
    other.get("/")
    other.post("/look", {"unit": "in", "back": "/designs/demo/sizes"})

    text = words(other.get("/designs/demo/sizes"))

    assert "wheel_dia 3.5433 2.7283 2.7362 in scale" in text
    assert re.search(r"scaled from 3\.543 in, on the grid", text)
    findings = words(other.get("/designs/demo"))
    assert "at most 2.834 in" in findings
    assert not re.search(r"\d mm\b(?! \()", re.sub(r"\d+ mm round the|kg mm", "", findings))


def test_the_shed_look_is_kept(make_browser, opened):
    """The other switch sets the page to the shed look, on every page from then on."""
    other = make_browser(app=opened.app)
    assert 'data-light="day"' in other.get("/").text

    other.post("/look", {"light": "night", "back": "/"})

    assert 'data-light="night"' in other.get("/shops").text


def test_the_pack_is_written_and_taken_away(make_browser, opened, words):
    """Progress is shown, then PDF, DXF, SVG, CSV, JSON, the machine file and all in one."""
    answer = opened.settled(opened.post("/designs/demo/sheets"))
    names = re.findall(r'pack/([^"]+)"', answer.text)

    for name, begins in (
        ("pack.pdf", b"%PDF"),
        ("parts/wheel.dxf", b"  0"),
        ("parts/wheel.svg", b"<svg"),
        ("sizes.csv", b""),
        ("plan.json", b"{"),
        ("machine.html", b"<!doctype html>"),
        ("demo.zip", b"PK"),
    ):
        assert name in names
        taken = opened.get(f"/designs/demo/pack/{name}")
        assert taken.status_code == 200
        assert taken.content.startswith(begins)
        assert "attachment" in taken.headers["content-disposition"]


def test_every_sheet_can_be_looked_at(opened):
    """As many sheets as the pack has, each with its drawing and no style of its own."""
    page = opened.get("/designs/demo/sheets").text
    count = len(re.findall(r"/sheets/\d+/picture", page))

    assert count > 20
    for number in (1, count):
        text = opened.get(f"/designs/demo/sheets/{number}/picture").text
        assert text.startswith("<svg")
        assert "<style" not in text
        assert f"Sheet {number} of {count}" in opened.get(f"/designs/demo/sheets/{number}").text
    assert opened.get(f"/designs/demo/sheets/{count + 1}").status_code == 400


@pytest.mark.parametrize(
    "path", ["/nowhere", "/designs/none", "/designs/demo/parts/none", "/designs/demo/route/none"]
)
def test_what_is_not_there_is_said_in_words(opened, words, path):
    """One shape of error for all pages: a title, what is wrong, and a way on."""
    answer = opened.get(path)

    assert answer.status_code in (400, 404)
    assert 'class="complaints"' in answer.text
    assert 'class="as-button"' in answer.text


def test_a_fault_of_ours_says_so(opened, words, monkeypatch, capsys):
    """An unforeseen error gives a page in words, keeps its traceback on the terminal, and loses nothing."""
    monkeypatch.setattr("tommybar.web.pages.checks.checks", lambda ask: 1 / 0)

    answer = opened.get("/designs/demo/checks")

    assert answer.status_code == 500
    assert "not of your files: ZeroDivisionError" in words(answer)
    assert "ZeroDivisionError" in capsys.readouterr().err


@pytest.mark.parametrize("kind", ["disc", "shaft", "blank"])
def test_a_plain_start_opens_and_is_planned(browser, words, kind):
    """Each start gives a design without a fault and without a stop."""
    answer = browser.settled(
        browser.post("/designs", {"kind": kind, "name": f"My {kind}", "a": "20", "b": "30"})
    )

    assert f"My {kind}".capitalize() in words(answer)
    assert "nothing stands against starting" in words(answer)


@pytest.mark.parametrize(
    ("form", "told"),
    [
        ({"kind": "disc", "name": "x", "a": "big", "b": "12"}, '"big" is no figure'),
        ({"kind": "disc", "name": "x", "a": "60", "b": "-3"}, "must lie between"),
        ({"kind": "disc", "name": "///", "a": "60", "b": "12"}, "makes no name"),
        ({"kind": "example", "example": "demonstratr", "name": "x"}, 'Did you mean "demonstrator"?'),
        ({"kind": "disk", "name": "x"}, 'Did you mean "disc"?'),
    ],
)
def test_a_bad_start_is_told_beside_its_form(browser, words, form, told):
    """What was typed stays in its field."""
    answer = browser.post("/designs", form)

    assert answer.status_code == 400
    assert told in words(answer)
    if form["kind"] == "disc":
        assert f'value="{form["a"]}"' in answer.text


def test_a_name_is_not_taken_twice(browser, words):
    """A design is never written over by a new one."""
    form = {"kind": "disc", "name": "wheel", "a": "60", "b": "12"}
    browser.post("/designs", form)
    before = browser.app.state.desk.files.text("designs", "wheel")

    answer = browser.post("/designs", {**form, "a": "70"})

    assert "There is a design wheel already" in words(answer)
    assert browser.app.state.desk.files.text("designs", "wheel") == before


def test_a_design_with_a_fault_comes_in_and_points_to_its_text(browser, words):
    """A file that cannot be planned is kept, so that it can be mended; its page leads to the text."""
    text = example_designs()["demonstrator"].read_text().replace("is: 90", "is: ninety")
    answer = browser.post("/designs", {"kind": "file"}, files={"file": ("a.yaml", text.encode())})

    assert answer.status_code == 400
    assert "line 10, sizes.wheel_dia" in words(answer)
    assert re.search(r'href="/designs/[\w-]+/text"', answer.text)


@pytest.mark.parametrize(
    ("path", "told"),
    [
        ("/look-up/limits?what=8+H7", "8.015"),
        ("/look-up/thread?what=M6", "5.0"),
        ("/look-up/divide?what=7&ratio=40", "5 turns"),
        ("/look-up/material?what=CW614N", "8.47"),
    ],
)
def test_the_look_up_answers_with_its_source(opened, words, path, told):
    """A figure from outside, with where it is from."""
    answer = opened.get(path)

    assert answer.status_code == 200
    assert told in words(answer)
    assert "Source: " in words(answer)


def test_every_topic_answers_its_own_example(opened, words):
    """The link under each field leads to an answer."""
    paths = set(re.findall(r'href="(/look-up/\w+)"', opened.get("/look-up").text))

    assert len(paths) >= 15
    for path in paths:
        example = re.search(r'For example: <a href="([^"]+)"', opened.get(path).text)[1].replace("&amp;", "&")
        answer = opened.get(example)
        assert answer.status_code == 200, example
        assert 'id="answer-h"' in answer.text, example


def test_a_look_up_outside_its_table_is_refused_beside_the_field(opened, words):
    """The bound is told, and what was typed stays."""
    answer = opened.get("/look-up/limits?what=8+H77")

    assert answer.status_code == 400
    assert "The grade is 77" in words(answer)
    assert 'value="8 H77"' in answer.text


def test_every_file_can_be_taken_by_itself(opened):
    """The page links each, also once the whole pack is written; what is no file of it is refused in words."""
    text = opened.settled(opened.get("/designs/demo/sheets")).text
    links = re.findall(r'href="/designs/demo/(?:one|pack)/([^"]+)"', text)

    assert {one.rpartition(".")[2] for one in links} >= {
        "pdf",
        "html",
        "json",
        "csv",
        "svg",
        "dxf",
        "step",
        "glb",
        "txt",
    }
    for one in ("parts/shaft.dxf", "parts/shaft.step", "assembly.glb", "sizes.csv"):
        assert one in links
        answer = opened.settled(opened.get(f"/designs/demo/one/{one}"))
        assert answer.status_code == 200 and len(answer.content) > 100
        assert f'filename="{one.rpartition("/")[2]}"' in answer.headers["content-disposition"]
    assert opened.get("/designs/demo/one/parts/shaft.dxf").text.startswith("  0\nSECTION")
    assert opened.get("/designs/demo/one/plan.json/../../x").status_code in (400, 404)
    refused = opened.get("/designs/demo/one/parts/shaft.stl")
    assert refused.status_code == 400 and "No file of the pack is called" in refused.text
