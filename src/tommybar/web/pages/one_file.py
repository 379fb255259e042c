"""One file of a design to take away, made when it is asked for."""

from __future__ import annotations

import mimetypes
from pathlib import PurePosixPath

from starlette.responses import Response

from tommybar.web.ask import Ask
from tommybar.web.pages.opened import plan_of, plan_with_assembly
from tommybar.web.pages.sheets import setting_of

WITH_ASSEMBLY = (".pdf", ".html", ".json", ".csv")  # they tell what the assembly shows


def one_file(ask: Ask) -> Response:
    """A drawing, a solid or a list; what cannot be made is refused with its reason."""
    from tommybar.pack import one_file as made

    name = str(ask.path["file"])
    suffix = PurePosixPath(name).suffix
    plan = plan_with_assembly(ask) if suffix in WITH_ASSEMBLY else plan_of(ask)
    data = made.one_file(plan, name, ask.reader, *setting_of(ask))
    kind = mimetypes.guess_type(name)[0] or "application/octet-stream"
    plain = PurePosixPath(name).name
    return Response(data, media_type=kind, headers={"content-disposition": f'attachment; filename="{plain}"'})
