"""What new writes loads and plans; what record writes is read back."""

from pathlib import Path

import pytest

from tommybar.cli.main import status_of
from tommybar.cli.new import examples
from tommybar.design import load_design
from tommybar.made import load_made

ROOT = Path(__file__).parents[2]
DESIGN = ROOT / "examples" / "demonstrator" / "design.yaml"


@pytest.fixture(autouse=True)
def elsewhere(tmp_path, monkeypatch):
    """Every test writes into a folder of its own."""
    monkeypatch.chdir(tmp_path)


@pytest.mark.parametrize(
    ("figures", "dia", "long", "bore"),
    [
        (["80", "16"], 80, 16, 12),
        (["3 1/2 in", '5/8"'], 88.9, 15.875, 12),
        (["10", "30"], 10, 30, None),
        (["1", "1"], 1, 1, None),
    ],
)
def test_a_disc_to_start_from(figures, dia, long, bore):
    """The figures are those given; a bore is there when there is room for one."""
    assert status_of(["new", "--disc", *figures, "my-wheel"]) == 0
    part = load_design("my-wheel.yaml").sized().parts[0]

    assert (part.shape.outside[0].dia.value, part.shape.length.value) == (dia, long)
    assert [one.dia.value for one in part.shape.bores] == ([bore] if bore else [])
    assert Path("my-wheel.yaml").read_text().count("#") >= 6


@pytest.mark.parametrize("figures", [["10", "120"], ['3/8"', "4 in"], ["200", "30"]])
def test_a_shaft_to_start_from(figures):
    """A shaft of any size loads as it was written."""
    assert status_of(["new", "--shaft", *figures, "axle"]) == 0

    assert load_design("axle.yaml").title == "Axle"


@pytest.mark.parametrize("name", sorted(examples()))
def test_an_example_is_copied_as_it_stands(name, capsys):
    """Comments and all; the copy passes the check."""
    assert status_of(["new", "--from", name, "mine"]) == 0

    assert Path("mine.yaml").read_text() == examples()[name].read_text()
    assert status_of(["check", "mine.yaml"]) == 0
    assert "no fault" in capsys.readouterr().out


def test_nothing_is_written_over(capsys):
    """A file that is there stays as it is."""
    Path("mine.yaml").write_text("keep me")

    assert status_of(["new", "--disc", "80", "16", "mine"]) == 1
    assert Path("mine.yaml").read_text() == "keep me"
    assert "is there already" in capsys.readouterr().err


def test_a_measured_size_is_read_back(capsys):
    """Each measurement is a further entry, with instrument, day and person."""
    line = [
        "record",
        "m.yaml",
        "wheel.bore",
        "10.021",
        "--with",
        "plug 0.01",
        "--by",
        "R",
        "--on",
        "2026-05-02",
    ]
    assert status_of([*line, "--design", str(DESIGN)]) == 0
    assert "wheel.bore 10.021 mm is written in m.yaml. As drawn 10 H7, 10.000 to 10.015 mm: 0.006 over." in (
        capsys.readouterr().out
    )
    assert status_of(["record", "m.yaml", "shaft.seat", "0.393 in"]) == 0

    made = load_made("m.yaml")
    assert [(one.size, one.value) for one in made.measured] == [
        ("wheel.bore", 10.021),
        ("shaft.seat", 9.9822),
    ]
    assert (made.measured[0].instrument, made.measured[0].on, made.measured[0].by) == (
        "plug 0.01",
        "2026-05-02",
        "R",
    )


def test_check_tells_faults_of_all_files(capsys):
    """Good files are named on stdout, faults of all others come together on stderr."""
    Path("bad.yaml").write_text("a: 1\na: 2\n")
    Path("other.yaml").write_text("colour: red\n")

    assert status_of(["check", str(DESIGN), "bad.yaml", "other.yaml"]) == 1
    out, err = capsys.readouterr()
    assert "10 parts" in out
    assert 'bad.yaml:2:1: a: The key "a" is given twice' in err
    assert "other.yaml:1:1: It is no design, shop or made file" in err
