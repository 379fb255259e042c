"""The command ``import``: an archive brought in."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from tommybar.cli.builds import FolderPath


def import_(
    file: Annotated[Path, typer.Argument(metavar="FILE", help="Archive that export wrote.")],
    folder: FolderPath = None,
) -> None:
    """Bring an archive in: what is new is added, what is there stays, nothing is doubled.

    A damaged archive is refused with the reason, and nothing of it comes in.
    """
    from tommybar.bench.archive import read_archive
    from tommybar.bench.folder import open_folder

    found = read_archive(open_folder(folder), file)
    typer.echo(
        f"New: {len(found.designs)} designs, {len(found.shops)} shops, {found.builds} builds,"
        f" {found.entries} entries. There already: {found.known}."
    )
    for name, here in found.renamed:
        typer.echo(f'"{name}" is another file here; the one of the archive is now "{here}".')
