"""The command ``new``: a design or a shop to start from, commented and ready to edit."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from tommybar.refusals import Refusal, nearest


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
    from tommybar.design.starting import start_text

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


def _write(place: Path, text: str) -> None:
    try:
        with place.open("x", encoding="utf-8") as file:
            file.write(text)
    except FileExistsError:
        raise Refusal(f"{place} is there already.", "Choose another name; it is not written over.") from None
    except OSError as error:
        raise Refusal(f"{place} cannot be written: {error.strerror}.", "Check the folder.") from None
