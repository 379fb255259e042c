"""The bench's rules of thumb, read from handwork.toml."""

from __future__ import annotations

import tomllib
from functools import cache
from importlib.resources import files


@cache
def _rules() -> dict[str, float]:
    text = files("tommybar.making.handwork").joinpath("handwork.toml").read_text(encoding="utf-8")
    rules: dict[str, float] = tomllib.loads(text)["rules"]
    return rules


def hand_rule(name: str) -> float:
    """One rule of thumb by name; each is explained beside its figure in handwork.toml."""
    return _rules()[name]
