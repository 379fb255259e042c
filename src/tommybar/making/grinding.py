"""What to grind where the drawer has no tool: the angles of hand-ground tools, read from grinding.toml."""

from __future__ import annotations

import tomllib
from functools import cache
from importlib.resources import files
from typing import Any

from tommybar.facts.materials import material

NO_RAKE = ("threading", "form")  # their form is only true on a flat top


@cache
def _angles() -> dict[str, dict[str, Any]]:
    text = files("tommybar.making").joinpath("grinding.toml").read_text(encoding="utf-8")
    return tomllib.loads(text)


def top_rake(name: str) -> float:
    """Top rake of a high speed steel tool for a material [deg]."""
    rakes = _angles()["rake"]
    family = material(name).family
    return float(rakes.get(family, rakes["other"]))


def grind_words(kind: str, name: str, size: str = "") -> str:
    """A tool of that kind for a material as a sentence: "Grind one: ... deg"; empty for what is not ground.

    ``size`` is how wide, deep or long it has to be, in words.
    """
    angles = _angles().get(kind)
    if angles is None or "front" not in angles:
        return ""
    rake = 0.0 if kind in NO_RAKE else top_rake(name)
    wanted = f"{size}, " if size else ""
    return (
        f"Grind one: {wanted}front clearance {angles['front']:g} deg, {angles['side']:g} deg at each side, top rake "
        f"{rake:g} deg for {name}; {angles['edge']}."
    )
