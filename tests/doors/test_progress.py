"""Progress is shown to a person at a terminal, and to nobody else."""

import pytest

from tommybar.cli.progress import progress


@pytest.mark.parametrize(("terminal", "shown"), [(True, "route of wheel ..."), (False, "")])
def test_only_a_terminal_is_told_of_stages(monkeypatch, capsys, terminal, shown):
    """A pipe or a file on stderr stays empty, so that its lines are the complaints alone."""
    monkeypatch.setattr("sys.stderr.isatty", lambda: terminal, raising=False)

    with progress() as tell:
        tell("route of wheel")

    out, err = capsys.readouterr()
    assert out == ""
    assert shown in err
    assert bool(err) == terminal
    assert not err or err.endswith("\r\x1b[K")
