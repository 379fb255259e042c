"""The command ``import``: an archive brought in."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from tommybar.cli.builds import FolderPath

if TYPE_CHECKING:
    from tommybar.bench.folder import Folder


def import_(
    file: Annotated[
        Path,
        typer.Argument(
            metavar="FILE", help="Archive that export wrote, or a day's copy from the folder backups."
        ),
    ],
    folder: FolderPath = None,
) -> None:
    """Bring an archive in: what is new is added, what is there stays, nothing is doubled.

    A damaged archive is refused with the reason, and nothing of it comes in.
    A day's copy (.sqlite) brings back the builds and entries that are missing
    now; a database that is damaged is put aside and the copy takes its place.
    """
    from tommybar.bench.archive import read_archive
    from tommybar.bench.folder import Folder as Mine
    from tommybar.bench.folder import home_folder, open_folder

    if file.suffix == ".sqlite":
        _copy(Mine(folder or home_folder()), file)
        return

    found = read_archive(open_folder(folder), file)
    typer.echo(
        f"New: {len(found.designs)} designs, {len(found.shops)} shops, {found.builds} builds,"
        f" {found.entries} entries. There already: {found.known}."
    )
    for name, here in found.renamed:
        typer.echo(f'"{name}" is another file here; the one of the archive is now "{here}".')


def _copy(folder: Folder, file: Path) -> None:
    from tommybar.bench.restore import bring_back

    found = bring_back(folder, file)
    typer.echo(f"Brought back: {found.builds} builds, {found.entries} entries. There already: {found.known}.")
    if found.put_aside:
        typer.echo(f"The damaged database lies in backups as {found.put_aside}.")
