"""The small mill's rules of thumb, read from milling.toml."""

from __future__ import annotations

import tomllib
from functools import cache
from importlib.resources import files


@cache
def _rules() -> dict[str, float]:
    text = files("tommybar.making.milling").joinpath("milling.toml").read_text(encoding="utf-8")
    rules: dict[str, float] = tomllib.loads(text)["rules"]
    return rules


def mill_rule(name: str) -> float:
    """One rule of thumb by name; each is explained beside its figure in milling.toml."""
    return _rules()[name]
