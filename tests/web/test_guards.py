"""What must not get in: each of these passes when its guard is taken away."""

from __future__ import annotations

import pytest

from tommybar.web.app import make_app
from tommybar.web.pairing import Pairing
from tommybar.web.settings import Settings


def test_the_page_answers_to_its_own_names_only(browser):
    """A foreign name that was made to point here gets nothing of the page."""
    assert browser.get("/").status_code == 200
    assert browser.get("/", headers={"host": "localhost:8700"}).status_code == 200

    answer = browser.get("/", headers={"host": "attacker.example"})

    assert answer.status_code == 400
    assert "Designs" not in answer.text


@pytest.mark.parametrize(
    "headers",
    [
        {"sec-fetch-site": "cross-site"},
        {"sec-fetch-site": "same-site"},
        {"origin": "http://attacker.example"},
        {"origin": "http://127.0.0.1:9999"},
        {"origin": "null"},
    ],
    ids=["cross-site", "same-site", "foreign origin", "other port", "no origin"],
)
def test_another_site_cannot_post(browser, headers):
    """Even with a good token, what another site sends is not done."""
    browser.get("/")

    answer = browser.post("/designs", {"kind": "disc", "name": "x", "a": "60", "b": "12"}, headers=headers)

    assert answer.status_code == 403
    assert browser.app.state.desk.files.names("designs") == []


@pytest.mark.parametrize("token", ["", "0" * 40, "ü" * 5], ids=["none", "guessed", "odd"])
def test_a_form_without_our_token_is_not_done(browser, token, words):
    """A form that no page of ours carries is not taken."""
    browser.get("/")

    answer = browser.post("/designs", {"token": token, "kind": "disc", "name": "x", "a": "60", "b": "12"})

    assert answer.status_code == 403
    assert "Load the page again" in words(answer)
    assert browser.app.state.desk.files.names("designs") == []


def test_the_token_of_another_browser_is_no_good(make_browser, browser):
    """A token belongs to the browser that was given it."""
    other = make_browser(app=browser.app)
    browser.get("/")
    other.get("/")

    answer = browser.post(
        "/designs", {"token": other.token, "kind": "disc", "name": "x", "a": "60", "b": "12"}
    )

    assert answer.status_code == 403


@pytest.mark.parametrize(
    "path",
    [
        "/designs/..%2F..%2Fsecret/text",
        "/designs/%2e%2e/text",
        "/designs/..%5csecret/file",
        "/shops/..%2fsecret/file",
        "/static/..%2f..%2f..%2fsecret.yaml",
        "/static/fonts/..%2f..%2fplan.py",
        "/designs/demo%00/text",
        "/designs/demo/pack/..%2f..%2f..%2fsecret.yaml",
        "/designs/demo/pack//etc/hostname",
    ],
)
def test_no_path_leads_out_of_the_folder(make_browser, tmp_path, path):
    """Dots, slashes of both kinds and ends of text in a name give nothing but words."""
    browser = make_browser()
    browser.post("/designs", {"kind": "disc", "name": "demo", "a": "60", "b": "12"})
    browser.settled(browser.post("/designs/demo/sheets"))
    (tmp_path / "secret.yaml").write_text("design: secret")

    answer = browser.get(path)

    assert answer.status_code in (400, 404)
    assert "design: secret" not in answer.text
    assert "def plan" not in answer.text


def test_a_link_out_of_the_folder_is_not_followed(browser, tmp_path, words):
    """A file that is a link to somewhere else is refused."""
    (tmp_path / "secret.yaml").write_text("design: secret")
    (tmp_path / "things" / "designs" / "sly.yaml").symlink_to(tmp_path / "secret.yaml")

    answer = browser.get("/designs/sly/text")

    assert answer.status_code == 400
    assert "lies outside the folder" in words(answer)


def test_too_much_is_not_taken(make_browser):
    """A body over the bound is refused by its told length, and by its real one."""
    browser = make_browser(Settings(largest_body=20_000))
    browser.get("/")

    told = browser.post("/designs", {"kind": "disc", "name": "x" * 30_000})

    async def pieces():
        for _ in range(30):
            yield b"kind=disc&name=" + b"x" * 1000

    headers = {"content-type": "application/x-www-form-urlencoded", "sec-fetch-site": "same-origin"}
    real = browser.runner.run(browser.client.post("/designs", content=pieces(), headers=headers))

    assert told.status_code == 413
    assert real.status_code == 413
    assert "at most 20 kB" in told.text


def test_a_length_that_is_told_too_large_is_not_even_read(browser):
    """The told length alone is enough to say no; one that is no number as well."""
    browser.get("/")
    for told in ("99999999", "many"):
        headers = {"content-length": told, "content-type": "application/x-www-form-urlencoded"}
        assert browser.post("/look", headers=headers).status_code == 413


def hand_in(browser, content, name="file.yaml", path="/designs"):
    """Hand a file in."""
    return browser.post(path, {"kind": "file"}, files={"file": (name, content, "application/yaml")})


@pytest.mark.parametrize(
    ("content", "told"),
    [
        (b"x: 1\n" * 300_000, "larger than 1000 kB"),
        (b"\xff\xfe\x00design", "not UTF-8"),
        (b"design: [", "not YAML"),
        (b"- 1\n- 2\n", "no key design"),
        (b"", "empty"),
        (b"a: &a [*a]\n", "anchor"),
        (b"[" * 5000, "not YAML"),
    ],
    ids=["oversized", "not text", "broken", "a list", "empty", "alias", "deep"],
)
def test_a_bad_upload_is_refused_in_words(browser, content, told, words):
    """Nothing is kept of it, and the page says why."""
    answer = hand_in(browser, content)

    assert answer.status_code in (400, 413)
    assert told in words(answer) or "nested" in words(answer)
    assert browser.app.state.desk.files.names("designs") == []


def test_a_form_that_is_no_form_is_refused(browser):
    """Multipart without its bounds is answered, not crashed on."""
    browser.get("/")
    headers = {"content-type": "multipart/form-data; boundary=x", "sec-fetch-site": "same-origin"}

    answer = browser.runner.run(browser.client.post("/designs", content=b"--x\r\nbroken", headers=headers))

    assert answer.status_code in (400, 403)


def test_script_in_names_and_notes_stays_words(browser):
    """What a person or a file says is shown, never run."""
    evil = '<script>alert(1)</script>"><img src=x onerror=alert(2)>'
    text = (
        f"tommybar: 1\ndesign: '{evil}'\nunits: mm\n"
        "sizes:\n  dia: {is: 20, follows: scale, because: '" + evil + "'}\n"
        f"cautions: ['{evil}']\n"
        "parts:\n  piece:\n    material: mild steel\n    note: '" + evil + "'\n"
        "    turned: {length: 20, outside: [{name: body, dia: dia}]}\n"
    )
    hand_in(browser, text.encode())
    name = browser.app.state.desk.files.names("designs")[0]

    for page in ("", "/sizes", "/parts", "/parts/piece", "/stock", "/route", "/checks", "/sheets", "/text"):
        answer = browser.get(f"/designs/{name}{page}?told={evil}&at={evil}")
        assert answer.status_code == 200, page
        assert "<script>alert" not in answer.text, page
        assert "<img src=x" not in answer.text, page
    for n in (1, 2, 3):
        assert "<script>alert" not in browser.get(f"/designs/{name}/sheets/{n}/picture").text
    assert "<script>alert" not in browser.get("/").text
    assert "<script>alert" not in browser.get(f"/look-up/thread?what={evil}").text


def test_every_answer_carries_the_policy(browser):
    """No script or style inside a page is run; nothing is framed; a guard's own answers say so too."""
    answers = [
        browser.get("/"),
        browser.get("/nowhere"),
        browser.get("/", headers={"host": "attacker.example"}),
    ]

    for answer in answers:
        policy = answer.headers["content-security-policy"]
        assert "script-src 'self';" in policy
        assert "unsafe" not in policy
        assert "frame-ancestors 'none'" in policy
        assert answer.headers["x-content-type-options"] == "nosniff"


@pytest.mark.parametrize(
    "page", ["/", "/designs/demo", "/designs/demo/parts/wheel?at=1", "/designs/demo/sizes", "/shops"]
)
def test_pages_need_no_script_or_style_inside(opened, page):
    """No inline script, handler or style stands in a page, so that the policy costs nothing."""
    text = opened.get(page).text

    assert "<style" not in text
    assert " style=" not in text
    assert " onclick=" not in text
    assert text.count("<script") == text.count("<script src=")


def test_the_way_back_of_a_switch_stays_here(browser):
    """Turning a switch never sends the browser to another site."""
    browser.client.follow_redirects = False
    browser.get("/")
    for back in ("//attacker.example", "https://attacker.example", "/\\attacker.example", ""):
        answer = browser.post("/look", {"unit": "in", "back": back})
        assert answer.headers["location"] == "/"
    assert browser.post("/look", {"unit": "in", "back": "/shops"}).headers["location"] == "/shops"


LAN = Settings(hosts=("127.0.0.1", "192.168.1.5"), lan=True)


def test_another_machine_must_be_paired(make_browser, tmp_path, words):
    """Before the code it sees only where the code is typed; after it, everything; posts are not done before."""
    app = make_app(tmp_path / "things", LAN)
    phone = make_browser(app=app, address="192.168.1.9", host="http://192.168.1.5:8700")

    assert str(phone.get("/").url).endswith("/pair")
    assert phone.post("/designs", {"kind": "disc", "name": "x", "a": "60", "b": "12"}).status_code == 403
    code = app.state.desk.pairing.code
    wrong = "000000" if code != "000000" else "111111"
    assert phone.post("/pair", {"code": wrong}).status_code == 403
    assert "Designs" in words(phone.post("/pair", {"code": f" {code[:3]} {code[3:]} "}))
    assert phone.get("/").status_code == 200


def test_without_lan_nobody_else_gets_in(make_browser):
    """A stranger who reaches the port all the same gets nothing, not even the place for the code."""
    phone = make_browser(address="192.168.1.9")

    assert phone.get("/").status_code == 403


def test_a_made_up_pairing_is_none(make_browser, tmp_path):
    """A cookie that we did not give does not open the door."""
    phone = make_browser(LAN, address="192.168.1.9", host="http://192.168.1.5:8700")
    phone.client.cookies.set("paired", "abc." + "0" * 40)

    assert str(phone.get("/").url).endswith("/pair")


def test_the_code_cannot_be_guessed():
    """After five wrong codes nobody may try for a minute, and the code is another one."""
    now = [0.0]
    said = []
    pairing = Pairing(Settings(), said.append, lambda: now[0])
    first = pairing.code
    wrong = "000000" if first != "000000" else "111111"
    for _ in range(5):
        with pytest.raises(ValueError, match="not the code"):
            pairing.try_code(wrong)

    with pytest.raises(ValueError, match="Too many wrong codes; wait 60 s"):
        pairing.try_code(first)
    assert pairing.code in said[0]

    now[0] = 61.0
    assert pairing.paired(pairing.try_code(pairing.code))
