"""Builds on the page: marks are stored once, sizes change the mates, the door stays shut to others."""

from __future__ import annotations

import json
import re
import uuid

import pytest

from tommybar.web.app import make_app
from tommybar.web.pairing import kept_secret


@pytest.fixture(scope="module")
def build(opened):
    """The address of a build of the demonstrator."""
    opened.get("/builds")
    answer = opened.settled(opened.post("/builds", {"design": "demo", "title": "Bench wheel"}))
    return str(answer.url).partition("?")[0].replace("http://127.0.0.1:8700", "")


def entry(kind, key, **said):
    """An entry as the machine page sends it."""
    return {"id": str(uuid.uuid4()), "device": "tablet", "number": 1, "kind": kind, "key": key,
            "at": "2026-05-02T18:00:00Z", "by": "R", "said": said}  # fmt: skip


def send(browser, build, body, token=None):
    """Send entries as JSON, from our own page."""
    headers = {
        "content-type": "application/json",
        "x-token": browser.token if token is None else token,
        "sec-fetch-site": "same-origin",
    }
    content = body if isinstance(body, bytes) else json.dumps(body).encode()
    return browser.runner.run(browser.client.post(f"{build}/entries", content=content, headers=headers))


def test_the_list_and_the_build_say_what_it_is(opened, build, words):
    """Name, design, shop and how far it is."""
    assert "Bench wheel demo in small-bench" in words(opened.get("/builds"))
    assert re.search(r"Bench wheel demo in small-bench.*0 of \d+ steps done", words(opened.get(build)))


def test_an_entry_sent_twice_is_stored_once(opened, build):
    """The receipt names it as safe both times; the journal has it once."""
    one = entry("tick", "wheel/1/1")
    first = send(opened, build, {"entries": [one]}).json()
    second = send(opened, build, {"entries": [one, one]}).json()

    assert first == second == {"safe": [one["id"]], "refused": {}}
    found = opened.get(f"{build}/entries?after=0").json()["entries"]
    assert [each["id"] for each in found].count(one["id"]) == 1


def test_a_faulty_entry_does_not_hold_up_the_others(opened, build):
    """It is refused with words under its own id."""
    good, bad = entry("tick", "wheel/1/2"), entry("size", "wheel.bore", value=-3)

    receipt = send(opened, build, {"entries": [bad, good]}).json()

    assert receipt["safe"] == [good["id"]]
    assert "above 0" in receipt["refused"][bad["id"]]


def test_a_measured_bore_gives_its_mate_other_limits(opened, build, words):
    """The bore 0.02 over: the page tells what that changed, the as-built table its verdict, the record has it."""
    before = opened.get(f"{build}/changes").json()
    send(opened, build, {"entries": [entry("size", "wheel.bore", value=8.035, instrument="pins")]})

    after = opened.get(f"{build}/changes").json()

    assert after["plan_id"] != before["plan_id"]
    assert "8.035" in after["words"]
    page = words(opened.settled(opened.get(build)))
    assert re.search(r"wheel bore 8 8.035 pins R", page)
    assert "What measured sizes changed" in page
    assert "wheel.bore" in opened.get(f"{build}/made").text


def test_the_machine_page_carries_the_whole_route_and_its_prints(opened, build):
    """Every card of the plan as data, as print, with the entries so far; no script inside runs."""
    page = opened.settled(opened.get(f"{build}/machine")).text
    data = json.loads(re.search(r'(?s)id="contents">(.*?)</script>', page)[1])
    cards = sum(len(one["cards"]) for one in data["parts"])

    assert cards == page.count('class="sheet"') > 10
    assert data["build"]["entries"]
    assert data["plan"]["store"].startswith("build ")
    assert page.count("<script") == page.count('<script src="/static') + 1
    script = opened.get("/static/machine.js").text
    assert "function drawStep" in script
    assert "function takeIn" in script
    assert "data:font" not in opened.get("/static/machine.css").text


@pytest.mark.parametrize(
    "body", [b"", b"{", b"[]", b'{"entries": 3}', b"[" * 100_000, b'{"entries": [1, null]}']
)
def test_a_message_that_is_no_list_of_entries_is_refused(opened, build, body):
    """Words, not a crash; nothing is stored."""
    count = len(opened.get(f"{build}/entries?after=0").json()["entries"])

    answer = send(opened, build, body)

    assert answer.status_code == 400 or set(answer.json()["safe"]) == set()
    assert len(opened.get(f"{build}/entries?after=0").json()["entries"]) == count


def test_entries_need_the_token_of_our_page(opened, build):
    """Another site cannot write into a journal."""
    assert send(opened, build, {"entries": [entry("tick", "wheel/1/3")]}, token="0" * 40).status_code == 403


@pytest.mark.parametrize("path", ["", "/machine", "/entries", "/changes", "/made"])
def test_a_build_that_is_not_there_is_told(opened, words, path):
    """The id in the address is only looked up."""
    answer = opened.get(f"/builds/00000000-none{path}")

    assert answer.status_code == 400
    assert "No build has the id" in words(answer)


def test_a_position_that_is_no_number_is_refused(opened, build):
    """Of digits only."""
    assert opened.get(f"{build}/entries?after=-1").status_code == 400
    assert opened.get(f"{build}/entries?after=x").status_code == 400


def test_a_page_that_was_open_goes_on_after_a_restart(make_browser, tmp_path):
    """The token that a page holds is good after the server was stopped and started again on its folder."""
    first = make_browser(app=make_app(tmp_path / "things"))
    first.get("/")
    again = make_browser(app=make_app(tmp_path / "things"))
    again.client.cookies = first.client.cookies
    again.token = first.token

    answer = again.post("/designs", {"kind": "disc", "name": "x", "a": "60", "b": "12"})

    assert answer.status_code == 200


def test_the_secret_of_a_folder_is_for_its_owner_only(tmp_path):
    """Made once, kept, and readable by nobody else."""
    place = tmp_path / "page.key"

    assert kept_secret(place) == kept_secret(place)
    assert place.stat().st_mode & 0o077 == 0
    assert len(place.read_bytes()) == 32


def test_a_bore_reamed_oversize_is_rescued(opened, build, words):
    """What went wrong is told; the ways out come planned with their price; the one taken is in the journal."""
    page = opened.get(f"{build}/rescue")
    assert "Bore reamed oversize" in words(page)
    form = {"number": "1", "about": "wheel.bore", "value": "8.035"}

    answer = opened.settled(opened.post(f"{build}/rescue", form))

    assert re.search(r"1\. .* price: [+-]\d+ min", words(answer))
    work = str(answer.url).rpartition("/")[2]
    before = len(opened.get(f"{build}/entries?after=0").json()["entries"])
    taken = opened.settled(opened.post(f"{build}/rescue/{work}", {"way": "0"}))
    assert taken.status_code == 200
    assert len(opened.get(f"{build}/entries?after=0").json()["entries"]) > before


@pytest.mark.parametrize(
    ("form", "told"),
    [
        ({}, "Nothing is chosen"),
        ({"number": "1", "about": "bush.bore", "value": "big"}, "big"),
        ({"number": "1", "about": "no.bore", "value": "8.1"}, "no.bore"),
    ],
)
def test_a_mishap_that_does_not_fit_is_told(opened, build, words, form, told):
    """Words beside the form, and what was typed stays."""
    answer = opened.settled(opened.post(f"{build}/rescue", form))

    assert answer.status_code == 400
    assert told in words(answer)


def test_a_way_that_was_not_offered_is_not_taken(opened, build):
    """Neither an unknown telling nor a number past the last way."""
    assert opened.post(f"{build}/rescue/UNKNOWN", {"way": "0"}).status_code == 400


def test_two_devices_that_disagree_are_shown_and_settled(opened, words):
    """Both readings stand until a person says which counts; then one of them does."""
    started = opened.settled(opened.post("/builds", {"design": "demo", "title": "Two devices"}))
    build = str(started.url).partition("?")[0].replace("http://127.0.0.1:8700", "")
    one, two = entry("size", "wheel.bore", value=8.005), entry("size", "wheel.bore", value=8.012)
    two["device"] = "phone"
    send(opened, build, {"entries": [one, two]})
    page = opened.settled(opened.get(build))
    assert "Two devices disagree" in words(page)

    opened.post(f"{build}/settle", {"keep": two["id"]})

    page = words(opened.settled(opened.get(build)))
    assert "Two devices disagree" not in page
    assert re.search(r"wheel bore 8 8.012", page)


def test_everything_goes_out_and_comes_in_as_one_archive(opened, build, make_browser, words):
    """Brought into an empty folder it is all there; brought in again nothing is doubled."""
    archive = opened.get("/archive/tommybar.zip").content
    other = make_browser()
    other.get("/archive")

    first = other.post("/archive", files={"file": ("a.zip", archive, "application/zip")})
    again = other.post("/archive", files={"file": ("a.zip", archive, "application/zip")})
    broken = other.post("/archive", files={"file": ("a.zip", archive[:500], "application/zip")})

    assert "1 designs, 0 shops, 2 builds" in words(first)
    assert "0 designs, 0 shops, 0 builds and 0 entries" in words(again)
    assert broken.status_code == 400
    assert "Bench wheel" in words(other.get("/builds"))


def test_printed_cards_go_stale_by_name(opened, words):
    """Cards are written to be printed; a size that changes one of them afterwards names it as stale."""
    started = opened.settled(opened.post("/builds", {"design": "demo", "title": "On paper"}))
    build = str(started.url).partition("?")[0].replace("http://127.0.0.1:8700", "")
    assert opened.get(f"{build}/pack.pdf").status_code == 400

    page = opened.settled(opened.post(f"{build}/print"))

    assert opened.get(f"{build}/pack.pdf").content.startswith(b"%PDF")
    assert "stale" not in words(page)
    send(opened, build, {"entries": [entry("size", "wheel.bore", value=8.035)]})
    assert re.search(
        r"Printed cards that are stale .*shaft/\d, printed", words(opened.settled(opened.get(build)))
    )


def test_a_trouble_that_asks_a_further_figure_has_a_field_for_it(opened, build):
    """Warmth and bow are asked where they matter, and nowhere else."""
    assert 'name="more"' in opened.get(f"{build}/rescue?number=29").text
    assert 'name="more"' not in opened.get(f"{build}/rescue?number=1").text
    form = {"number": "29", "about": "wheel.rim", "value": "69.52", "more": "warm"}

    assert opened.post(f"{build}/rescue", form).status_code == 400


def test_a_days_copy_is_brought_back_from_the_page(opened, build, words):
    """The page lists the day's copies; bringing one back says how much was here already."""
    send(opened, build, {"entries": [entry("tick", "wheel/1/1")]})
    page = opened.get("/archive")
    copy = re.search(r'name="copy" value="(builds-[\d-]+\.sqlite)"', page.text)[1]

    back = opened.post("/archive/copies", {"copy": copy})
    wrong = opened.post("/archive/copies", {"copy": "../builds.sqlite"})

    assert re.search(r"0 builds and 0 entries are back; [1-9]\d* were here already", words(back))
    assert wrong.status_code == 400
    assert "There is no copy" in words(wrong)


def test_a_trouble_asks_its_figures_by_name_and_offers_the_bores(opened, build, words):
    """Fields are named by what they want, and only those that matter are there."""
    page = opened.get(f"{build}/rescue?number=1")
    assert "the size of the bore what it measures [mm]" in words(page)
    assert '<option value="wheel.bore">' in page.text
    assert '<option value="wheel.rim">' not in page.text
    assert 'name="said"' not in page.text
    assert '<option value="wheel">' in opened.get(f"{build}/rescue?number=31").text


def test_a_speed_is_no_length_when_lengths_are_read_in_inches(opened, build, words):
    """520 rev/min that cannot be had stay 520, whatever the unit of lengths is."""
    opened.client.cookies.set("unit", "in")
    try:
        form = {"number": "24", "about": "lathe", "value": "520"}
        answer = opened.settled(opened.post(f"{build}/rescue", form))
    finally:
        opened.client.cookies.delete("unit")

    assert 'name="value" value="520"' in answer.text


def test_a_device_with_a_number_is_called_by_its_beginning(opened, words):
    """Nobody reads thirty-six signs from a page."""
    started = opened.settled(opened.post("/builds", {"design": "demo", "title": "Numbers"}))
    build = str(started.url).partition("?")[0].replace("http://127.0.0.1:8700", "")
    one, two = entry("size", "wheel.bore", value=8.005), entry("size", "wheel.bore", value=8.012)
    two["device"] = "0fa1b2c3-0000-4000-8000-000000000000"
    send(opened, build, {"entries": [one, two]})

    page = words(opened.settled(opened.get(build)))

    assert "device 0fa1: 8.012 mm counts" in page
    assert "0fa1b2c3" not in page


def test_a_build_speaks_inches_to_who_reads_inches(opened, build, words):
    """What a measured bore changed is told in inches on the build and at the machine; prints are compared as before.

    The bore is 8.035 mm: 0.3163 in.
    """
    send(opened, build, {"entries": [entry("size", "wheel.bore", value=8.035, instrument="pins")]})
    in_mm = opened.get(f"{build}/changes").json()
    opened.client.cookies.set("unit", "in")
    try:
        page = words(opened.settled(opened.get(build)))
        told = opened.settled(opened.get(f"{build}/changes")).json()
        machine = opened.settled(opened.get(f"{build}/machine")).text
    finally:
        opened.client.cookies.delete("unit")

    assert told["plan_id"] == in_mm["plan_id"]
    assert "0.3163" in told["words"] and " mm" in in_mm["words"]
    assert not re.search(r"\d mm(?! \()", told["words"])
    changed = page.partition("What measured sizes changed")[2].partition("As built")[0]
    assert "0.3163" in changed and not re.search(r"\d mm(?! \()", changed)
    assert "Printed cards that are stale" not in page
    assert "sentences are in mm" not in machine
    data = json.loads(re.search(r'(?s)id="contents">(.*?)</script>', machine)[1])
    dials = [
        line
        for part in data["parts"]
        for card in part["cards"]
        for step in card["steps"]
        for line in step["dial"]
    ]
    assert sum(" in " in line for line in dials) > 20
    assert not [line for line in dials if re.search(r"\d mm(?! \()", line)]
