"""The command ``new``: a design or a shop to start from, commented and ready to edit."""

from __future__ import annotations

import re
from importlib import resources
from pathlib import Path
from string import Template
from typing import Annotated

import typer

from tommybar.refusals import Refusal, nearest

LARGEST_ZONE = 120  # diameter up to which facts/fits has zones [mm]


def new(
    name: Annotated[str, typer.Argument(metavar="NAME", help="File to write; .yaml is added.")],
    example: Annotated[str | None, typer.Option("--from", help="Copy an example design or shop.")] = None,
    disc: Annotated[
        tuple[str, str] | None, typer.Option(metavar="D W", help="Begin with one disc: diameter and width.")
    ] = None,
    shaft: Annotated[
        tuple[str, str] | None, typer.Option(metavar="D L", help="Begin with one shaft: diameter and length.")
    ] = None,
) -> None:
    """Write a file to start from: a disc, a shaft, or a copy of an example (a design or a shop).

    Figures are in mm unless they carry their unit: --disc "3 1/2 in" "5/8 in".
    A file that is there already is never written over.
    """
    given = [one for one in (example, disc, shaft) if one]
    if len(given) != 1:
        raise Refusal(
            f"{len(given)} of --from, --disc and --shaft are given; one is wanted.",
            f"Examples to copy: {', '.join(examples())}.",
        )
    place = Path(name if name.endswith((".yaml", ".yml")) else f"{name}.yaml")
    if example:
        text = _example_text(example)
    elif disc:
        text = start_text("disc", place.stem, disc)
    else:
        text = start_text("shaft", place.stem, shaft or ("", ""))
    _write(place, text)
    typer.echo(f"{place} is written. Edit it, then: tommybar check {place}")


def examples() -> dict[str, Path]:
    """Examples by name: designs by their folder, shops by their file."""
    from tommybar.shop.examples import example_folder, example_shops

    folder = example_folder()
    designs = {one.parent.name: one for one in sorted(folder.glob("*/design.yaml"))} if folder else {}
    return {**designs, **example_shops()}


def _example_text(example: str) -> str:
    known = examples()
    if example not in known:
        offer = nearest(example, known) or f"There are {', '.join(known)}."
        raise Refusal(f'There is no example "{example}".', offer)
    return known[example].read_text(encoding="utf-8")


def start_text(kind: str, title: str, figures: tuple[str, str]) -> str:
    """The text of a design of one disc or one shaft with its two figures as they were given."""
    from tommybar.design.figures import figure

    dia, long = (figure(one, "mm", "length") for one in figures)
    for value, word in ((dia, "diameter"), (long, "width" if kind == "disc" else "length")):
        if not 0.5 <= value <= 2000:
            raise Refusal(
                f"The {word} is {value:g} mm; it must lie between 0.5 and 2000 mm.", "Give it in mm."
            )
    edge = min(0.5, dia / 8, long / 4)
    bore = next((one for one in (12, 10, 8, 6, 4) if dia >= 3 * one), 0)
    text = (resources.files("tommybar.cli") / "starts" / f"{kind}.yaml").read_text(encoding="utf-8")
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


def _write(place: Path, text: str) -> None:
    try:
        with place.open("x", encoding="utf-8") as file:
            file.write(text)
    except FileExistsError:
        raise Refusal(f"{place} is there already.", "Choose another name; it is not written over.") from None
    except OSError as error:
        raise Refusal(f"{place} cannot be written: {error.strerror}.", "Check the folder.") from None
