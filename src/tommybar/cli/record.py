"""The command ``record``: a measured size goes into the made file."""

from __future__ import annotations

import datetime
from pathlib import Path
from typing import Annotated

import typer

from tommybar.refusals import Refusal, nearest


def record(
    made: Annotated[Path, typer.Argument(metavar="MADE", help="Record to add to; begun when not there.")],
    size: Annotated[str, typer.Argument(metavar="PART.SIZE", help="Size that was measured.")],
    value: Annotated[str, typer.Argument(metavar="VALUE", help="What it measures, in mm or with its unit.")],
    instrument: Annotated[str, typer.Option("--with", help="Instrument it was measured with.")] = "",
    by: Annotated[str, typer.Option(help="Who measured it.")] = "",
    on: Annotated[str, typer.Option(help="Day, like 2026-05-02; today when left out.")] = "",
    design: Annotated[Path | None, typer.Option("--design", help="Design to check the size against.")] = None,
) -> None:
    """Write down a measured size; mates that are not made yet get new limits from it.

    Nothing that stands in the record is changed: a size that is measured
    again gets a further line, and the last one counts.
    """
    from tommybar.design.figures import figure
    from tommybar.made.writing import write_measured

    measured = figure(value, "mm", "length")
    if measured <= 0:
        raise Refusal(f"{size} is {measured:g} mm; a measured size is above 0.", "Measure it again.")
    day = _day(on)
    title, limits = _looked_up(design, size, measured)
    write_measured(made, title, size, measured, instrument=instrument, on=day, by=by)
    typer.echo(f"{size} {measured:g} mm is written in {made}.{limits}")


def _day(text: str) -> str:
    if not text:
        return datetime.date.today().isoformat()
    try:
        return datetime.date.fromisoformat(text).isoformat()
    except ValueError:
        raise Refusal(f'"{text}" is no day.', "Write it like 2026-05-02.") from None


def _looked_up(path: Path | None, size: str, measured: float) -> tuple[str, str]:
    """Title of the design and words about the limits of the size; empty without a design."""
    if path is None:
        return "", ""
    from tommybar.design.loaded import load_design
    from tommybar.made.dims import dims_of

    sized = load_design(path).sized()
    dims = dims_of(sized)
    if size not in dims:
        raise Refusal(f'{path} has no size "{size}".', nearest(size, dims) or f"There are {', '.join(dims)}.")
    dim = dims[size]
    if dim.smallest is None or dim.largest is None:
        return sized.title, f" As drawn {dim.value:g} mm."
    words = f" As drawn {dim.value:g} {dim.zone}, {dim.smallest:.3f} to {dim.largest:.3f} mm"
    if measured > dim.largest:
        return sized.title, f"{words}: {measured - dim.largest:.3f} over."
    if measured < dim.smallest:
        return sized.title, f"{words}: {dim.smallest - measured:.3f} under."
    return sized.title, f"{words}: within."
