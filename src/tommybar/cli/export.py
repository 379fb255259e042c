"""The command ``export``: everything of yours as one archive."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from tommybar.cli.builds import FolderPath
from tommybar.refusals import Refusal


def export(
    file: Annotated[Path, typer.Argument(metavar="FILE", help="Archive to write, like all.zip.")],
    folder: FolderPath = None,
    force: Annotated[bool, typer.Option("--force", help="Write over a file that is there.")] = False,
) -> None:
    """Write designs, shops and builds into one archive, with a checksum of each file in it."""
    from tommybar.bench.archive import write_archive
    from tommybar.bench.builds import builds
    from tommybar.bench.folder import open_folder

    if file.exists() and not force:
        raise Refusal(f"{file} is there already.", "Give another name, or add --force.")
    mine = open_folder(folder)
    write_archive(mine, file)
    typer.echo(
        f"{len(mine.designs())} designs, {len(mine.shops())} shops and {len(builds(mine))} builds are in {file}."
    )
