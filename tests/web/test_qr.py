"""The QR code holds the address, all of it and nothing else, and is shown to those alone who are let in."""

from __future__ import annotations

import re

import pytest

from tommybar.web.app import make_app
from tommybar.web.qr import QUIET, lines_of, modules_of, picture_of
from tommybar.web.settings import LOOPBACK, Settings

ADDRESSES = ["http://10.0.0.7:8700/", "http://192.168.1.20:8700/", "http://192.168.101.204:18700/"]
# Masks of ISO/IEC 18004, table of data mask patterns (from memory): a module is turned where this is 0.
MASKS = (
    lambda i, j: (i + j) % 2,
    lambda i, j: i % 2,
    lambda i, j: j % 3,
    lambda i, j: (i + j) % 3,
    lambda i, j: (i // 2 + j // 3) % 2,
    lambda i, j: i * j % 2 + i * j % 3,
    lambda i, j: (i * j % 2 + i * j % 3) % 2,
    lambda i, j: ((i + j) % 2 + i * j % 3) % 2,
)


def read(rows):
    """The text of a code of version 1 to 3 in bytes, read as ISO/IEC 18004 lays it out (from memory)."""
    side = len(rows)
    fixed = [[False] * side for _ in rows]
    for top, left, tall, wide in ((0, 0, 9, 9), (0, side - 8, 9, 8), (side - 8, 0, 8, 9)):
        for i in range(tall):
            fixed[top + i][left : left + wide] = [True] * wide
    for n in range(side):
        fixed[6][n] = fixed[n][6] = True
    if side > 21:  # one alignment pattern
        for i in range(side - 9, side - 4):
            fixed[i][side - 9 : side - 4] = [True] * 5
    # format: bits 14 to 10 stand in row 8 from the left; the mask is the last three of them
    written = [rows[8][n] for n in range(5)]
    number = int("".join(map(str, written[2:])), 2) ^ 0b101
    mask = MASKS[number]
    bits, column, up = [], side - 1, True
    while column > 0:
        column -= column == 6
        for i in range(side - 1, -1, -1) if up else range(side):
            for j in (column, column - 1):
                if not fixed[i][j]:
                    bits.append(rows[i][j] ^ (mask(i, j) == 0))
        column, up = column - 2, not up
    whole = "".join(map(str, map(int, bits)))
    assert whole[:4] == "0100"  # bytes
    count = int(whole[4:12], 2)
    return bytes(int(whole[12 + 8 * n : 20 + 8 * n], 2) for n in range(count)).decode()


@pytest.mark.parametrize("address", ADDRESSES)
def test_the_code_reads_back_as_the_address(address):
    """A reader of the test's own, made from the standard's layout, finds the address to the letter."""
    assert read(modules_of(address)) == address


def test_the_picture_has_the_modules_and_the_quiet_zone():
    """Each dark module is one square of the picture, four light ones stand round the code."""
    rows = modules_of(ADDRESSES[1])
    picture = picture_of(ADDRESSES[1])
    squares = {(int(y), int(x)) for x, y in re.findall(r"M(\d+) (\d+)h1v1h-1z", picture)}

    assert f'viewBox="0 0 {len(rows) + 8} {len(rows) + 8}"' in picture
    assert squares == {
        (i + QUIET, j + QUIET) for i, row in enumerate(rows) for j, dark in enumerate(row) if dark
    }


def test_the_terminal_shows_the_same_modules():
    """Two rows in a line, told by half blocks, black on white."""
    lines = lines_of(ADDRESSES[0])
    shown = []
    for line in lines:
        letters = re.sub(r"\x1b\[[\d;]+m", "", line)
        shown.append([letter in "▀█" for letter in letters])
        shown.append([letter in "▄█" for letter in letters])
    rows = modules_of(ADDRESSES[0])
    inner = [row[QUIET:-QUIET] for row in shown[QUIET : QUIET + len(rows)]]

    assert [[int(one) for one in row] for row in inner] == [list(row) for row in rows]
    assert all(line.startswith("\x1b[30;107m") and line.endswith("\x1b[0m") for line in lines)


@pytest.fixture
def for_all(tmp_path):
    """An application for the home network."""
    return make_app(tmp_path / "things", Settings(hosts=(*LOOPBACK, "192.168.1.20", "shed.local"), lan=True))


def test_who_is_not_let_in_sees_neither_address_nor_code(make_browser, for_all, words):
    """Another machine gets the form alone, whatever it asks."""
    stranger = make_browser(address="192.168.1.9", host="http://192.168.1.20:8700", app=for_all)
    page = stranger.get("/pair")

    assert '<svg class="qr"' not in page.text
    assert for_all.state.desk.pairing.code not in page.text
    assert "shed.local" not in page.text
    assert "Pair this machine" in words(page)


def test_the_pc_shows_code_and_picture_and_the_picture_holds_no_digits(make_browser, for_all, words):
    """On the PC itself: the likeliest address as a picture, the other in words, the code beside it."""
    pc = make_browser(app=for_all)
    page = pc.get("/pair")
    code = for_all.state.desk.pairing.code

    assert picture_of("http://192.168.1.20:8700/") in page.text
    assert "http://shed.local:8700/" in words(page)
    assert f"{code[:3]} {code[3:]}" in words(page)
    assert code not in read(modules_of("http://192.168.1.20:8700/"))
    assert 'href="/pair"' in pc.get("/").text


def test_a_paired_machine_shows_the_picture_without_the_code(make_browser, for_all):
    """The tablet may hand the address on; the code stays on the PC."""
    tablet = make_browser(address="192.168.1.9", host="http://192.168.1.20:8700", app=for_all)
    tablet.get("/pair")
    code = for_all.state.desk.pairing.code
    tablet.post("/pair", {"code": code})
    page = tablet.get("/pair")

    assert '<svg class="qr"' in page.text
    assert code not in page.text
    assert f"{code[:3]} {code[3:]}" not in page.text


def test_without_lan_the_page_says_how_to_let_others_in(browser, words):
    """No address is shown where nothing listens."""
    page = browser.get("/pair")

    assert "tommybar serve --lan" in words(page)
    assert '<svg class="qr"' not in page.text
    assert 'href="/pair"' not in browser.get("/").text
