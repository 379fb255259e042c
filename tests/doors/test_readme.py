"""The README's first evening works as it is written, from its samples alone."""

import re
import shlex
from pathlib import Path

import pytest

from tommybar.cli.main import app, status_of
from tommybar.made import load_made
from tommybar.shop import load_shop

README = (Path(__file__).parents[2] / "README.md").read_text()
COMMANDS = [line.strip() for line in re.findall(r"(?m)^ {4,}(tommybar .+)$", README)]
INLINE = re.findall(r"`(tommybar [a-z]+ [^`]+)`", README)


@pytest.fixture(scope="module")
def evening(tmp_path_factory):
    """A folder with the shop of the README in it."""
    folder = tmp_path_factory.mktemp("evening")
    (block,) = re.findall(r"(?s)```yaml\n(.*?)```", README)
    indent = re.match(r" *", block)[0]
    (folder / "my-shed.yaml").write_text(re.sub(rf"(?m)^{indent}", "", block))
    return folder


def test_the_shop_of_the_readme_is_read(evening):
    """What it leaves out is taken from an example shop, and listed."""
    shop = load_shop(evening / "my-shed.yaml")

    assert shop.name == "My shed"
    assert shop.lathe.speeds == (120, 250, 500, 900, 1600)
    assert shop.assumed


def test_the_commands_of_the_readme_run_in_their_order(evening, monkeypatch, capsys):
    """Every line is done one after the other; none is refused."""
    monkeypatch.chdir(evening)
    assert [shlex.split(line)[1] for line in COMMANDS] == ["new", "check", "plan", "pack", "record", "plan"]

    for line in COMMANDS:
        status = status_of(shlex.split(line)[1:])
        said = capsys.readouterr()
        assert status in (0, 2), f"{line}: {said.err}"

    assert (evening / "my-disc-pack" / "pack.pdf").read_bytes().startswith(b"%PDF")
    assert load_made(evening / "my-disc.made.yaml").measured[0].size == "disc.bore"


def test_the_disc_of_the_readme_is_made_as_drawn_in_its_shed(evening, tmp_path, monkeypatch, capsys):
    """A new user's first plan stops nowhere and shrinks nothing, so that the size recorded is the drawing's own."""
    monkeypatch.chdir(tmp_path)
    assert status_of(shlex.split(COMMANDS[0])[1:]) == 0
    made_plan = f"plan my-disc.yaml --shop {evening / 'my-shed.yaml'}"

    assert status_of(shlex.split(made_plan)) == 0
    assert "bound by nothing: made as drawn" in capsys.readouterr().out


@pytest.mark.parametrize("line", INLINE)
def test_what_the_readme_says_in_passing_answers(line, tmp_path, monkeypatch, capsys):
    """A look-up names its source, a copy of an example is written."""
    monkeypatch.chdir(tmp_path)
    assert status_of(shlex.split(line)[1:]) == 0
    said = capsys.readouterr().out
    assert ("Source: " if " facts " in line else "is written") in said


def test_every_command_stands_in_the_readme_or_the_manual():
    """A door that nobody is told of is no door."""
    manual = [path.read_text() for path in (Path(__file__).parents[2] / "docs").rglob("*.md")]
    told = README + "".join(manual)

    names = [one.name or one.callback.__name__ for one in app.registered_commands]
    silent = [name for name in names if f"tommybar {name} " not in told]
    assert silent == []
