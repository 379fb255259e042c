"""The command ``serve``: the page in the browser."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer


def serve(
    port: Annotated[int, typer.Option(min=1, max=65535, help="Port to listen on.")] = 8700,
    lan: Annotated[bool, typer.Option("--lan", help="Let the tablet and the phone in, with a code.")] = False,
    folder: Annotated[Path | None, typer.Option(help="Where your designs, shops and builds lie.")] = None,
) -> None:
    """Serve the page of designs, shops and builds, for this machine only unless --lan is given."""
    from tommybar.bench.folder import home_folder
    from tommybar.web.app import serve as serve_page

    serve_page(folder or home_folder(), port, lan, typer.echo)
