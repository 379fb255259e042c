"""A design to start from: one disc, one shaft or one plain piece, commented and ready to edit."""

from __future__ import annotations

import re
from importlib import resources
from string import Template

from tommybar.design.figures import figure
from tommybar.refusals import Refusal

LARGEST_ZONE = 120  # diameter up to which facts/fits has zones [mm]


def start_text(kind: str, title: str, figures: tuple[str, str]) -> str:
    """The text of a design of one disc, shaft or plain piece with its two figures as they were given."""
    dia, long = (figure(one, "mm", "length") for one in figures)
    for value, word in ((dia, "diameter"), (long, "width" if kind == "disc" else "length")):
        if not 0.5 <= value <= 2000:
            raise Refusal(
                f"The {word} is {value:g} mm; it must lie between 0.5 and 2000 mm.", "Give it in mm."
            )
    edge = min(0.5, dia / 8, long / 4)
    bore = next((one for one in (12, 10, 8, 6, 4) if dia >= 3 * one), 0)
    text = (resources.files("tommybar.design") / "starts" / f"{kind}.yaml").read_text(encoding="utf-8")
    if not bore:
        text = re.sub(r"(?m)^.*\bbore\b.*\n", "", text)
    words = re.sub(r"[^A-Za-z0-9 _-]", "", title.replace("_", " ").replace("-", " ")).strip().capitalize()
    return Template(text).substitute(
        title=words or "My design",
        dia=_as_yaml(figures[0]),
        long=_as_yaml(figures[1]),
        edge=f"{edge:.3g}",
        bore=f"{bore:g}",
        limits=" limits: h7," if dia <= LARGEST_ZONE else "",
    )


def _as_yaml(text: str) -> str:
    """A figure as it was typed, in quotes where YAML wants them."""
    plain = text.strip()
    return (
        plain
        if re.fullmatch(r"[A-Za-z0-9][A-Za-z0-9 ./*+()-]*", plain)
        else "'" + plain.replace("'", "''") + "'"
    )
