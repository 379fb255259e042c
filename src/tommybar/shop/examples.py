"""The example shops that come with the program."""

from __future__ import annotations

from functools import cache
from pathlib import Path

_PACKAGE = Path(__file__).resolve().parent.parent


@cache
def example_folder() -> Path | None:
    """Where the examples lie: inside an installed package, or at the root of a source checkout."""
    for folder in (_PACKAGE / "examples", _PACKAGE.parent.parent / "examples"):
        if (folder / "shops").is_dir():
            return folder
    return None


def example_shops() -> dict[str, Path]:
    """Example shops by name ("shop-r", "small-bench", ...), each with its file."""
    folder = example_folder()
    if folder is None:
        return {}
    return {file.stem: file for file in sorted((folder / "shops").glob("*.yaml"))}
