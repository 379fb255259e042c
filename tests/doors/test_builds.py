"""The commands of builds in progress: begun, shown, carried to another machine."""

import json
from pathlib import Path

import pytest

from tommybar.bench.entries import new_entry
from tommybar.bench.folder import Folder
from tommybar.bench.journal import receive
from tommybar.cli.main import status_of

EXAMPLES = Path(__file__).parents[2] / "examples"
DESIGN = EXAMPLES / "demonstrator" / "design.yaml"


@pytest.fixture
def said(capsys, monkeypatch, tmp_path):
    """Exit status, output and complaint of a command line, in a folder of its own."""
    monkeypatch.setenv("TOMMYBAR_HOME", str(tmp_path / "home"))

    def run(*arguments):
        code = status_of([str(one) for one in arguments])
        return code, *capsys.readouterr()

    return run


def test_a_build_is_begun_listed_and_shown(said, tmp_path):
    """The design is copied into the folder; what was measured is shown with the new limits of its mate."""
    assert "No build is in progress" in said("builds")[1]
    code, out, _ = said("builds", "start", DESIGN, "--shop", "shop-r", "--scale", "1", "--json")
    begun = json.loads(out)
    receive(
        Folder(tmp_path / "home"),
        begun["id"],
        [
            new_entry("tick", "wheel/1/1", device="tablet", number=1, at="2026-05-02T17:00"),
            new_entry(
                "size", "wheel.bore", device="tablet", number=2, by="R", at="2026-05-02T18:00", value=10.021
            ),
            new_entry(
                "size", "wheel.bore", device="phone", number=1, by="S", at="2026-05-02T19:00", value=10.031
            ),
        ],
    )

    assert (code, begun["scale"]) == (0, 1.0)
    assert (tmp_path / "home" / "designs" / "design.yaml").read_text() == DESIGN.read_text()
    assert "3 entries" in said("builds", "list")[1]
    shown = said("builds", "show", begun["id"][:8])[1]
    assert "wheel.bore is told differently: tablet (R): 10.021 mm; phone (S): 10.031 mm." in shown
    assert "wheel.bore is 10.031 mm, drawn 10.000 mm (10.000 to 10.015 mm): over." in shown
    assert "wheel/1 first end, face A outwards: rim, bore, dish: 1 of " in shown
    assert "seat is now 9.994 to 10.031 mm" in shown


def test_everything_goes_to_another_machine(said, tmp_path, monkeypatch):
    """Exported here, imported there, twice: the second time nothing is new."""
    said("builds", "start", DESIGN, "--shop", "shop-r", "--scale", "1")
    archive = tmp_path / "all.zip"
    assert said("export", archive)[:2] == (0, f"1 designs, 0 shops and 1 builds are in {archive}.\n")

    monkeypatch.setenv("TOMMYBAR_HOME", str(tmp_path / "there"))
    assert said("import", archive)[1].startswith("New: 1 designs, 0 shops, 1 builds, 0 entries.")
    assert said("import", archive)[1].startswith("New: 0 designs, 0 shops, 0 builds, 0 entries.")
    assert "Hand-cranked flywheel demonstrator" in said("builds")[1]


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (["builds", "strat"], 'Did you mean "start"?'),
        (["builds", "start"], "What to start is missing."),
        (["builds", "start", DESIGN], "The shop is missing. Add --shop; example shops: "),
        (["builds", "start", "no.yaml", "--shop", "shop-r"], "cannot be a name|There is no design"),
        (["builds", "start", DESIGN, "--shop", "shop-q"], 'There is no shop "shop-q".'),
        (["builds", "start", DESIGN, "--shop", "shop-r", "--stock", "shed"], 'Metal comes from "shed"'),
        (["builds", "show", "zzz"], 'No build has the id "zzz".'),
        (["import", "no.zip"], "There is no file no.zip."),
        (["import", DESIGN], "is no sound zip archive"),
        (["export", DESIGN], "is there already. Give another name"),
    ],
)
def test_what_cannot_be_done_is_said_in_a_line(said, arguments, words):
    """Refusals of these commands end with 1 and say what to do."""
    code, out, err = said(*arguments)

    assert (code, out) == (1, "")
    assert any(one in err for one in words.split("|"))
    assert err.count("\n") == 1


def test_a_file_of_the_same_name_is_not_written_over(said, tmp_path):
    """Another design of the same name is refused; the one in the folder stays."""
    said("builds", "start", DESIGN, "--shop", "shop-r", "--scale", "1")
    other = tmp_path / "design.yaml"
    other.write_text(DESIGN.read_text() + "# mine\n")

    code, _, err = said("builds", "start", other, "--shop", "shop-r", "--scale", "1")

    assert code == 1
    assert 'Your folder has another design "design".' in err
