"""The command ``pack``: the printed build pack and the files beside it."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from tommybar.cli.inputs import (
    DesignPath,
    MadePath,
    Pins,
    Scale,
    ShopName,
    Stock,
    pins_from,
    read_design_and_shop,
    read_made,
)
from tommybar.cli.progress import progress
from tommybar.refusals import Refusal, nearest

if TYPE_CHECKING:
    from tommybar.planning import Plan


def pack(
    design: DesignPath,
    shop: ShopName,
    out: Annotated[Path, typer.Option("--out", help="Folder to write into.")],
    made: MadePath = None,
    scale: Scale = None,
    pin: Pins = None,
    stock: Stock = "ask",
    units: Annotated[str, typer.Option(help="Lengths on the sheets: mm or in.")] = "mm",
    paper: Annotated[str, typer.Option(help="Paper of the drawings: A4, A3, Letter or Tabloid.")] = "A4",
    angle: Annotated[str, typer.Option(help="Projection of the drawings: first or third angle.")] = "first",
    only: Annotated[
        list[str] | None,
        typer.Option(
            "--only", metavar="FILE", help="Write only this file, or parts/*.step; may be repeated."
        ),
    ] = None,
) -> None:
    """Plan a design and write its pack: PDF, drawings, lists, and the page for the machine.

    Ends with 2 when findings of the kind "stop" stand; the pack is written
    all the same and says so on its cover.
    """
    if units not in ("mm", "in"):
        raise Refusal(f'The units are "{units}"; they are mm or in.', nearest(units, ("mm", "in")))
    for what, word, known in (
        ("paper", paper, ("A4", "A3", "Letter", "Tabloid")),
        ("angle of projection", angle, ("first", "third")),
    ):
        if word not in known:
            raise Refusal(f'The {what} is "{word}"; it must be {", ".join(known)}.', nearest(word, known))
    read, shop_read = read_design_and_shop(design, shop)
    pins, record = pins_from(pin, read), read_made(made)
    folder = _folder(out)
    from tommybar.pack.solid_files import step_lacks
    from tommybar.pack.write import write_pack
    from tommybar.planning import plan as make_plan
    from tommybar.planning import with_assembly

    with progress() as tell:
        found = make_plan(
            read,
            shop_read,
            record,
            scale=scale,
            pins=pins,
            stock=stock,  # type: ignore[arg-type]
            words_in=units,  # type: ignore[arg-type]
            tell=tell,
        )
        found = with_assembly(found, units)  # type: ignore[arg-type]
        if only:
            written = _some(found, folder, units, only, paper, angle, tell)
        else:
            written = write_pack(found, folder, units, tell, paper, angle)  # type: ignore[arg-type]
    for place in written:
        typer.echo(str(place))
    if not only and (lacks := step_lacks()):
        typer.echo(lacks, err=True)
    if found.stops:
        words = "finding forbids" if len(found.stops) == 1 else "findings forbid"
        typer.echo(f"{len(found.stops)} {words} starting; see the cover.", err=True)
        raise typer.Exit(2)


def _some(
    found: Plan,
    folder: Path,
    units: str,
    only: list[str],
    paper: str,
    angle: str,
    tell: Callable[[str], None],
) -> list[Path]:
    """Only the files that are asked for, by name or pattern."""
    from tommybar.pack.one_file import file_names, matching, one_file
    from tommybar.pack.units import Reader

    reader = Reader(units)  # type: ignore[arg-type]
    names = [name for group in file_names(found, reader).values() for name in group]
    written = []
    for name in matching(names, only):
        tell(name)
        place = folder / name
        place.parent.mkdir(parents=True, exist_ok=True)
        place.write_bytes(one_file(found, name, reader, paper, angle))  # type: ignore[arg-type]
        written.append(place)
    return written


def _folder(out: Path) -> Path:
    """The folder to write into, made when it is not there; refused before any work is done."""
    try:
        out.mkdir(parents=True, exist_ok=True)
        probe = out / ".may-write"
        probe.touch()
        probe.unlink()
    except OSError as error:
        raise Refusal(f"{out} cannot be written into: {error.strerror}.", "Name another folder.") from None
    return out
