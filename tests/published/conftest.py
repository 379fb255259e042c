"""Fixtures of the published checks, and the count that closes a session."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from typing import Any

import pytest

from .frame import OUTSIDE, half_unit

_counted: Counter[tuple[str, str, str]] = Counter()


@pytest.fixture
def printed() -> Callable[[str], Any]:
    """Match a printed figure to half a unit of the last place that was written."""

    def matcher(text: str) -> Any:
        return pytest.approx(float(text), rel=0, abs=half_unit(text))

    return matcher


def pytest_runtest_logreport(report: pytest.TestReport) -> None:
    """Count the rows by file, basis and outcome."""
    if report.when == "call":
        for name, told in report.user_properties:
            if name == "published":
                file, basis, outcome = str(told).split("|")
                _counted[file, basis, outcome] += 1


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    """Rows passed, failed and unmapped for each file and basis."""
    if not _counted:
        return
    terminalreporter.section("published rows")
    line = "{:<20} {:<16} {:>7} {:>7} {:>9}".format
    terminalreporter.write_line(line("file", "basis", "passed", "failed", "unmapped"))
    seen = sorted({(file, basis) for file, basis, _ in _counted})
    order = (*OUTSIDE, "computed")
    for file, basis in sorted(seen, key=lambda pair: (pair[0], order.index(pair[1]))):
        terminalreporter.write_line(line(file, basis, *_outcomes(file, basis)))
    for title, kinds in (("all outside figures", OUTSIDE), ("all computed", ("computed",))):
        sums = [sum(count) for count in zip(*(_outcomes(f, b) for f, b in seen if b in kinds), strict=True)]
        if sums:
            terminalreporter.write_line(line(title, "", *sums))


def _outcomes(file: str, basis: str) -> tuple[int, int, int]:
    return (
        _counted[file, basis, "passed"],
        _counted[file, basis, "failed"],
        _counted[file, basis, "unmapped"],
    )
