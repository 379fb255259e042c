"""The command ``serve``: the page in the browser, which is not built yet."""

from __future__ import annotations

from typing import Annotated

import typer

from tommybar.refusals import Refusal


def serve(
    port: Annotated[int, typer.Option(min=1, max=65535, help="Port to listen on.")] = 8700,
    lan: Annotated[bool, typer.Option("--lan", help="Let other machines of the network in.")] = False,
) -> None:
    """Serve the page of designs and builds. It is not built yet, and says so."""
    where = f"on port {port}{' for the network' if lan else ''}"
    raise Refusal(
        f"The page {where} is not built yet.",
        "Use tommybar pack: its machine.html works in any browser without a server.",
    )
