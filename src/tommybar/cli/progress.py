"""One line on a terminal's stderr that says what is being worked on."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Protocol


class Tell(Protocol):
    """Something that hears a line per stage."""

    def __call__(self, words: str) -> None:
        """Hear it."""


def _silent(words: str) -> None:
    """Hear a stage and say nothing."""


def _show(words: str) -> None:
    sys.stderr.write(f"\r\x1b[K{words} ...")
    sys.stderr.flush()


@contextmanager
def progress() -> Iterator[Tell]:
    """A teller that shows the stage while the work goes on; silent where no one looks on."""
    if not sys.stderr.isatty():
        yield _silent
        return
    try:
        yield _show
    finally:
        sys.stderr.write("\r\x1b[K")
        sys.stderr.flush()
