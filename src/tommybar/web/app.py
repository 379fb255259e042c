"""The page as one application: routes of all pages, behind the guards."""

from __future__ import annotations

import contextlib
from collections.abc import Callable
from pathlib import Path

from starlette.applications import Starlette
from starlette.middleware import Middleware
from starlette.requests import Request
from starlette.responses import FileResponse, Response
from starlette.routing import Mount, Route
from starlette.staticfiles import StaticFiles

from tommybar.web.ask import Desk, not_found, routes
from tommybar.web.files import Files
from tommybar.web.guards import Guards
from tommybar.web.pairing import Pairing, kept_secret
from tommybar.web.plans import Plans
from tommybar.web.settings import SETTINGS, Settings
from tommybar.web.ways import WAYS
from tommybar.web.work import Works

_HERE = Path(__file__).parent
FONTS = _HERE.parent / "pack" / "fonts"
FONT_FILES = {
    f"{weight}.woff2": f"AtkinsonHyperlegibleNext-latin-{weight}.woff2" for weight in ("400", "700")
}


def make_app(
    folder: Path | str, settings: Settings = SETTINGS, say: Callable[[str], None] = lambda words: None
) -> Starlette:
    """The application over a folder of the person's own, which is made when it is not there."""
    from tommybar.bench.folder import open_folder

    files, works = Files(open_folder(folder).path), Works()
    pairing = Pairing(settings, say, secret=kept_secret(files.path / "page.key"))
    app = Starlette(
        routes=[
            *routes(WAYS),
            Route("/static/sketch.css", _sketch_css),
            Route("/static/machine.css", _machine_css),
            Route("/static/fonts/{name}", _font),
            Mount("/static", StaticFiles(directory=_HERE / "static")),
        ],
        middleware=[Middleware(Guards, settings=settings, pairing=pairing)],
        exception_handlers={404: not_found, 405: not_found},
    )
    app.state.desk = Desk(files, Plans(files, works, settings), works, pairing, settings)
    return app


def _sketch_css(request: Request) -> Response:
    from tommybar.web.style import sketch_style

    return Response(sketch_style(), media_type="text/css")


def _machine_css(request: Request) -> Response:
    from tommybar.web.style import machine_style

    return Response(machine_style(), media_type="text/css")


def _font(request: Request) -> Response:
    file = FONT_FILES.get(request.path_params["name"])
    if file is None:
        return Response("There is no such font.", 404)
    return FileResponse(FONTS / file, media_type="font/woff2")


def _say_code(found: tuple[str, ...], port: int, say: Callable[[str], None]) -> None:
    """The likeliest address as a QR code; left out where the terminal cannot write its blocks."""
    from tommybar.web.qr import lines_of

    with contextlib.suppress(UnicodeEncodeError):
        for line in lines_of(f"http://{found[0]}:{port}/") if found else ():
            say(line)


def serve(folder: Path, port: int, lan: bool, say: Callable[[str], None] = print) -> None:
    """Serve the page until it is stopped: on this machine, or for the network with ``lan``."""
    import uvicorn

    from tommybar.web.address import addresses, listening

    found = addresses() if lan else ()
    settings = Settings(hosts=(*SETTINGS.hosts, *found), lan=lan)
    app = make_app(folder, settings, say)
    door = listening("0.0.0.0" if lan else "127.0.0.1", port)
    say(f"The page is at http://127.0.0.1:{port}/  (stop it with Ctrl-C)")
    if lan:
        for one in found:
            say(f"For the tablet and the phone: http://{one}:{port}/")
        _say_code(found, port, say)
        say(f"They are asked for this code once: {app.state.desk.pairing.code}")
    server = uvicorn.Server(uvicorn.Config(app, log_level="warning", server_header=False))
    with contextlib.suppress(KeyboardInterrupt):
        server.run(sockets=[door])
