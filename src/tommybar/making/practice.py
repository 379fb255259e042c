"""The bench's rules of thumb, read from practice.toml."""

from __future__ import annotations

import tomllib
from functools import cache
from importlib.resources import files


@cache
def practice() -> dict[str, dict[str, float]]:
    """Rules of thumb by subject; each is explained beside its figure in practice.toml."""
    text = files("tommybar.making").joinpath("practice.toml").read_text(encoding="utf-8")
    table = tomllib.loads(text)
    return {subject: rules for subject, rules in table.items() if subject != "source"}


def rule(subject: str, name: str) -> float:
    """One rule of thumb by subject and name."""
    return practice()[subject][name]
