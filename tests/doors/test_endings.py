"""How commands end: exit status, one line for what went wrong, and no traceback but for our own fault."""

import subprocess
import sys
from pathlib import Path

import pytest

from tommybar.cli import main
from tommybar.cli.main import app, status_of

ROOT = Path(__file__).parents[2]
DESIGN = str(ROOT / "examples" / "demonstrator" / "design.yaml")


@pytest.fixture
def said(capsys):
    """Exit status, output and complaint of a command line."""

    def run(*arguments):
        code = status_of([str(one) for one in arguments])
        out, err = capsys.readouterr()
        return code, out, err

    return run


COMMANDS = sorted(one.name or one.callback.__name__ for one in app.registered_commands)


def test_the_doors_are_all_there():
    """The fixed names of the commands."""
    assert [
        *("builds", "check", "export", "facts", "import", "new"),
        *("pack", "plan", "record", "resize", "serve"),
    ] == COMMANDS


@pytest.mark.parametrize("command", COMMANDS)
def test_every_command_has_help_with_an_example(said, command):
    """--help says what it does and shows one way of calling it."""
    code, out, err = said(command, "--help")

    assert (code, err) == (0, "")
    assert f"Example:  tommybar {command} " in out


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (["plam"], "No such command 'plam'."),
        (["plan"], "See: tommybar plan --help"),
        (["plan", "d.yaml", "--shopp", "x"], "No such option: --shopp"),
        (["plan", "no.yaml", "--shop", "shop-r"], "There is no file no.yaml."),
        (["plan", DESIGN, "--shop", "shop-x"], 'There is no shop file shop-x. Did you mean "shop-r"?'),
        (["plan", DESIGN, "--shop", "shop-r", "--pin", "hub"], '"hub" pins no size.'),
        (
            ["plan", DESIGN, "--shop", "shop-r", "--pin", "bos=3"],
            'No size is named "bos". Did you mean "boss"?',
        ),
        (["plan", DESIGN, "--shop", "shop-r", "--pin", "recess=3"], 'The size "recess" is worked out'),
        (["plan", DESIGN, "--shop", "shop-r", "--scale", "-1"], "-1"),
        (["plan", DESIGN, "--shop", "shop-r", "--stock", "shed"], "shed"),
        (["pack", DESIGN, "--shop", "shop-r", "--out", "/proc/none"], "/proc/none cannot be written into"),
        (
            ["pack", DESIGN, "--shop", "shop-r", "--out", "x", "--units", "cm"],
            'The units are "cm"; they are mm or in.',
        ),
        (["resize", "no.yaml", "--shop", "shop-r"], "There is no file no.yaml."),
        (["check", "no.yaml"], "There is no file no.yaml."),
        (["new", "a"], "0 of --from, --disc and --shaft are given; one is wanted."),
        (["new", "a", "--from", "demonstratr"], 'Did you mean "demonstrator"?'),
        (["new", "a", "--disc", "80", "big"], '"big" is no figure'),
        (["new", "a", "--disc", "80", "0"], "The width is 0 mm; it must lie between 0.5 and 2000 mm."),
        (["new", "/proc/a", "--disc", "80", "10"], "/proc/a.yaml cannot be written"),
        (["record", "m.yaml", "wheel.bore", "10,02"], "Write decimals with a point"),
        (["record", "m.yaml", "wheel.bore", "0"], "a measured size is above 0"),
        (["record", "m.yaml", "wheel.bore", "10", "--on", "yesterday"], '"yesterday" is no day.'),
        (["record", "m.yaml", "wheel.boer", "10", "--design", DESIGN], 'Did you mean "wheel.bore"?'),
        (["facts", "limits", "8 H77"], "The grade is 77"),
        (["serve", "--folder", "/proc/no-folder"], "cannot be used"),
    ],
)
def test_refusals_end_with_1_and_one_line(said, tmp_path, monkeypatch, arguments, words):
    """Wrong usage and files that are not there are told in a line on stderr; nothing is written."""
    monkeypatch.chdir(tmp_path)

    code, out, err = said(*arguments)

    assert code == 1
    assert words in err
    assert err.count("\n") == 1
    assert "Traceback" not in err
    assert out == ""


def test_no_command_shows_the_help_and_is_wrong_usage(said):
    """The bare program says what it can do."""
    code, out, _ = said()

    assert code == 1
    assert "Commands:" in out


def test_faults_of_both_files_are_told_at_once(said, tmp_path):
    """A wrong design does not hide a wrong shop."""
    (tmp_path / "d.yaml").write_text("tommybar: 1\nunits: mm\n")
    (tmp_path / "s.yaml").write_text("tommybar: 1\nshop: x\nlahte: 1\n")

    code, _, err = said("plan", tmp_path / "d.yaml", "--shop", tmp_path / "s.yaml")

    assert code == 1
    assert 'd.yaml:1:1: design: The key "design" is missing.' in err
    assert 's.yaml:3:1: lahte: The key "lahte" is not known here. Did you mean "lathe"?' in err


def test_our_own_fault_keeps_its_traceback_and_says_so(said, monkeypatch):
    """Planted: a command that breaks ends with 70, with what a report needs."""

    def broken(arguments, **_):
        raise ZeroDivisionError("planted")

    monkeypatch.setattr(main, "app", broken)

    code, _, err = said("check", "x")

    assert code == 70
    assert "ZeroDivisionError: planted" in err
    assert "This is a fault of tommybar" in err


def test_a_file_that_goes_wrong_under_way_is_no_fault_of_ours(said, monkeypatch):
    """Planted: a full disk is told in one line; a data file of ours that is missing is our fault."""
    names = iter(["/media/stick/pack.pdf", str(Path(main.__file__).parent / "starts" / "disc.yaml")])

    def broken(arguments, **_):
        raise OSError(28, "No space left on device", next(names))

    monkeypatch.setattr(main, "app", broken)

    code, _, err = said("check", "x")
    assert (code, err.count("\n")) == (1, 1)
    assert "/media/stick/pack.pdf cannot be used: No space left on device." in err
    assert said("check", "x")[0] == 70


def test_a_closed_pipe_ends_in_one_line():
    """The reader goes away while the program still writes: no traceback."""
    whole = f"from tommybar.cli.main import run; run(['plan', {DESIGN!r}, '--shop', 'shop-r', '--json'])"
    done = subprocess.Popen(
        [sys.executable, "-c", whole], stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True
    )
    done.stdout.close()
    err = done.stderr.read()
    done.stderr.close()

    assert done.wait() == 1
    assert err == "The output was closed before all of it was written.\n"


def test_the_program_is_installed():
    """The command of that name runs and knows its version."""
    done = subprocess.run(
        [str(Path(sys.executable).parent / "tommybar"), "--version"],
        capture_output=True,
        text=True,
        check=True,
    )

    assert done.stdout == "tommybar 0.1.0\n"
