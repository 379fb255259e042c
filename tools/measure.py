"""Measure what the program promises: a table, and build/measure.json with the same rows.

    .venv/bin/python tools/measure.py

Each row has what was measured, its figure and unit, the goal, and whether it
is met. Times are wall-clock medians on this machine while nothing else runs.
"""

from __future__ import annotations

import json
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from dataclasses import asdict, dataclass
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from tommybar.design.model import Part

ROOT = Path(__file__).resolve().parents[1]
DESIGN = ROOT / "examples" / "demonstrator" / "design.yaml"
SHOP = ROOT / "examples" / "shops" / "shop-r.yaml"
BIN = Path(sys.executable).parent


@dataclass(frozen=True)
class Row:
    """One line of the table; the goal is a most, unless it says otherwise."""

    what: str
    figure: float
    unit: str
    goal: float
    met: bool


def at_most(what: str, figure: float, unit: str, goal: float) -> Row:
    """A row whose figure must not be above the goal."""
    return Row(what, round(figure, 4), unit, goal, figure <= goal)


def seconds(deed: Callable[[], object], times: int = 3) -> float:
    """The median time that a deed takes [s]."""
    taken = []
    for _ in range(times):
        start = time.perf_counter()
        deed()
        taken.append(time.perf_counter() - start)
    return statistics.median(taken)


def command(*arguments: str) -> Callable[[], object]:
    """A run of the program in a process of its own; its exit status must be 0 or 2."""

    def run() -> None:
        whole = [str(BIN / "tommybar"), *arguments]
        done = subprocess.run(whole, check=False, capture_output=True, text=True, cwd=ROOT)
        if done.returncode not in (0, 2):
            raise SystemExit(f"tommybar {' '.join(arguments)} ended with {done.returncode}:\n{done.stderr}")

    return run


def python(text: str) -> str:
    """What a Python process of its own prints."""
    done = subprocess.run([sys.executable, "-c", text], capture_output=True, text=True, check=True, cwd=ROOT)
    return done.stdout


def starts() -> list[Row]:
    """How long it takes until something can be done, and how much memory a plan takes."""
    bare = seconds(lambda: python("pass"), 5)
    whole = seconds(lambda: python("import tommybar"), 5)
    every = seconds(lambda: python("import tommybar.cli.main"), 5)
    peak = python(
        "import resource\nfrom tommybar.cli.main import status_of\n"
        "import contextlib, io\n"
        f"with contextlib.redirect_stdout(io.StringIO()):\n    status_of(['plan', {str(DESIGN)!r}, '--shop', {str(SHOP)!r}])\n"
        "print(resource.getrusage(resource.RUSAGE_SELF).ru_maxrss)"
    )
    return [
        at_most("import of tommybar, above a bare Python", whole - bare, "s", 0.3),
        at_most("import of the command line, above a bare Python", every - bare, "s", 0.3),
        at_most("facts, cold", seconds(command("facts", "limits", "8 H7", "--json"), 5), "s", 0.4),
        at_most(
            "plan of the demonstrator, cold",
            seconds(command("plan", str(DESIGN), "--shop", str(SHOP))),
            "s",
            2.0,
        ),
        at_most("peak memory of a plan", int(peak) / 1024, "MB", 400),
    ]


def replans() -> list[Row]:
    """How long a changed size takes once the program is warm, and how long the pack."""
    from tommybar.design import design_from_text
    from tommybar.pack.write import write_pack
    from tommybar.planning import plan
    from tommybar.shop import load_shop

    text, shop = DESIGN.read_text(), load_shop(SHOP)
    first = plan(design_from_text(text, str(DESIGN)), shop)
    places = {
        "throw": ("{is: 16, follows: scale, because: radius", "{is: %g, follows: scale, because: radius")
    }
    places["wheel_dia"] = ("wheel_dia:    {is: 90", "wheel_dia:    {is: %g")
    warm = {}
    for name, figures in (("throw", (15.5, 15.0, 14.5)), ("wheel_dia", (89.5, 89.0, 88.5))):
        old, new = places[name]
        if text.count(old) != 1:
            raise SystemExit(f"The demonstrator no longer has the line {old!r}; measure.py must be told.")
        left = list(figures)

        def again(old: str = old, new: str = new, left: list[float] = left) -> None:
            plan(design_from_text(text.replace(old, new % left.pop()), str(DESIGN)), shop)

        warm[name] = seconds(again)
    with tempfile.TemporaryDirectory() as folder:
        packed = seconds(lambda: write_pack(first, Path(folder), "mm"), 2)
    from tommybar.pack.turned.sheet import turned_drawing
    from tommybar.pack.units import Reader
    from tommybar.pack.write import imprint_of

    wheel, imprint = first.design.part("wheel"), imprint_of(first, Reader())
    sheet = seconds(lambda: turned_drawing(wheel, first.design, imprint))
    return [
        at_most("one sheet without hidden-line views, the wheel", 1000 * sheet, "ms", 50),
        at_most("re-plan, warm, one part touched (throw)", 1000 * warm["throw"], "ms", 100),
        at_most("re-plan, warm, every part touched (wheel_dia)", 1000 * warm["wheel_dia"], "ms", 500),
        at_most("pack of the demonstrator, seven parts", packed, "s", 5.0),
    ]


def solids() -> list[Row]:
    """How long one part takes as STEP and as GLB once the kernel is loaded, and what is told of the assembly."""
    from tommybar.assembly import order
    from tommybar.assembly.interference import overlaps
    from tommybar.assembly.placing import assembled
    from tommybar.assembly.sweep import clearances
    from tommybar.checks import check_all, check_together
    from tommybar.checks.together import look_together
    from tommybar.design import load_design
    from tommybar.pack.glb import part_glb
    from tommybar.pack.step import part_step
    from tommybar.shapes.mesh import mesh_of
    from tommybar.shapes.solids.kernel import solid_of
    from tommybar.shop import load_shop

    design = load_design(DESIGN).sized()
    made = [part for part in design.parts if part.shape is not None]
    part_step(made[0])

    def slowest(write: Callable[[Part], bytes]) -> float:
        taken = []
        for part in made:

            def afresh(part: Part = part) -> None:
                solid_of.cache_clear()
                mesh_of.cache_clear()
                write(part)

            taken.append(seconds(afresh))
        return max(taken)

    whole = assembled(design)
    shop = load_shop(SHOP)
    check_all(design, shop)

    def afresh() -> None:
        order._order_of.cache_clear()  # the checks have asked already, and their answer is kept
        order.order_of(design, whole)

    def together() -> None:
        look_together.cache_clear()  # the pack has asked already, and its answer is kept
        order._order_of.cache_clear()
        check_together(design)

    return [
        at_most("all checks of the demonstrator", 1000 * seconds(lambda: check_all(design, shop)), "ms", 60),
        at_most("the checks of its assembly", seconds(together), "s", 2.0),
        at_most("STEP of one part, the slowest of the demonstrator's", slowest(part_step), "s", 0.6),
        at_most("GLB of one part, the slowest of the demonstrator's", 1000 * slowest(part_glb), "ms", 200),
        at_most("placing the demonstrator", 1000 * seconds(lambda: assembled(design)), "ms", 200),
        at_most("its overlaps", seconds(lambda: overlaps(design, whole)), "s", 1.5),
        at_most("its gaps over a whole turn", seconds(lambda: clearances(design, whole)), "s", 1.5),
        at_most("its order of assembly", seconds(afresh), "s", 2.0),
    ]


def free_port() -> int:
    """A port that nothing listens at."""
    import socket

    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        port: int = probe.getsockname()[1]
        return port


def first_page() -> list[Row]:
    """From starting the page's server to its first page, and that page again."""
    import urllib.request

    port = free_port()
    with tempfile.TemporaryDirectory() as folder:
        started = time.perf_counter()
        server = subprocess.Popen(
            [BIN / "tommybar", "serve", "--port", str(port), "--folder", folder], stdout=subprocess.DEVNULL
        )
        address = f"http://127.0.0.1:{port}/"

        def ask() -> None:
            urllib.request.urlopen(address, timeout=5).read()

        try:
            while True:
                try:
                    ask()
                    break
                except OSError:
                    if server.poll() is not None or time.perf_counter() - started > 30:
                        raise SystemExit("The page's server did not answer.") from None
                    time.sleep(0.01)
            first = time.perf_counter() - started
            again = seconds(ask)
        finally:
            server.terminate()
            server.wait(10)
    return [
        at_most("first page, from start", first, "s", 1.0),
        at_most("that page again", 1000 * again, "ms", 300),
    ]


def redrawn() -> list[Row]:
    """From sending a changed size until its table is there, over the page's own server, by what it touches."""
    import re
    import threading
    import urllib.parse
    import urllib.request
    from http.cookiejar import CookieJar

    import uvicorn

    from tommybar.web.app import make_app

    port = free_port()
    address = f"http://127.0.0.1:{port}"
    opener = urllib.request.build_opener(urllib.request.HTTPCookieProcessor(CookieJar()))

    def page(path: str, form: dict[str, str] | None = None) -> str:
        data = urllib.parse.urlencode(form).encode() if form else None
        headers = {"Origin": address, "Sec-Fetch-Site": "same-origin"}
        answer = opener.open(urllib.request.Request(address + path, data, headers), timeout=60)
        text: str = answer.read().decode()
        return text

    with tempfile.TemporaryDirectory() as folder:
        server = uvicorn.Server(uvicorn.Config(make_app(folder), port=port, log_level="error"))
        thread = threading.Thread(target=server.run, daemon=True)
        thread.start()
        while not server.started:
            time.sleep(0.01)
        found = re.search(r'name="token" value="(\w+)"', page("/"))
        if found is None:
            raise SystemExit("The first page has no form any more; measure.py must be told.")
        token = {"token": found[1]}
        page("/designs", {**token, "kind": "example", "example": "demonstrator", "name": "demo"})
        page("/designs/demo/sizes")
        taken = {}
        for name, figures in (("throw", (15.6, 15.5, 15, 14.5)), ("wheel_dia", (90.5, 89.5, 89, 88.5))):
            left = list(figures)

            def hold(name: str = name, left: list[float] = left) -> None:
                asked = f"{left.pop():g}"
                text = page(
                    "/designs/demo/sizes", {**token, "scale": "", "stock": "ask", f"pin:{name}": asked}
                )
                if f'name="pin:{name}" value="{asked}"' not in text:
                    raise SystemExit("The table of sizes did not come back; measure.py must be told.")

            hold()
            taken[name] = 1000 * seconds(hold)
        server.should_exit = True
        thread.join(10)
    return [
        at_most("changed size to redrawn table, one part touched (throw)", taken["throw"], "ms", 300),
        at_most(
            "changed size to redrawn table, every part touched (wheel_dia)", taken["wheel_dia"], "ms", 300
        ),
    ]


NEXT_STEP = """async () => {
  const painted = () => new Promise((done) => requestAnimationFrame(() => setTimeout(done)));
  const taken = [];
  while (taken.length < 25) {
    await painted();
    const start = performance.now(), before = document.querySelector('#view').textContent;
    document.getElementById('main').click();
    await painted();
    if (!document.getElementById('panel').hidden) { document.querySelector('#nudge-up').click();
      document.querySelector('#entry-write').click(); continue; }
    document.querySelectorAll('.tick:not([aria-label$="done"])').forEach((one) => one.isConnected && one.click());
    if (document.querySelector('#view').textContent !== before) taken.push(performance.now() - start);
  }
  return taken;
}"""  # presses the large button and waits until the frame with the next step is drawn


def step_change() -> list[Row]:
    """From the press to the drawn frame of the next step, in a browser, on a served build of the demonstrator."""
    import shutil
    import socket
    import urllib.request

    from playwright.sync_api import sync_playwright

    from tommybar.bench.builds import start_build
    from tommybar.bench.folder import open_folder

    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        port = probe.getsockname()[1]
    with tempfile.TemporaryDirectory() as path, sync_playwright() as play:
        folder = open_folder(path)
        folder.save_design("demonstrator", DESIGN.read_text())
        build = start_build(folder, "demonstrator", "shop-r")
        server = subprocess.Popen(
            [BIN / "tommybar", "serve", "--port", str(port), "--folder", path], stdout=subprocess.DEVNULL
        )
        try:
            address = f"http://127.0.0.1:{port}"
            for _ in range(300):
                try:
                    urllib.request.urlopen(address, timeout=5).close()
                    break
                except OSError:
                    time.sleep(0.1)
            browser = play.chromium.launch(executable_path=shutil.which("chromium"), args=["--no-sandbox"])
            page = browser.new_page(base_url=address, viewport={"width": 800, "height": 1280})
            page.goto(f"/builds/{build.id}/machine")
            page.wait_for_selector("[data-kept]")
            taken = statistics.median(page.evaluate(NEXT_STEP))
            browser.close()
        finally:
            server.terminate()
            server.wait(10)
    return [at_most("step change at the machine, to the drawn frame", taken, "ms", 50)]


def tables() -> list[Row]:
    """How long many look-ups take."""
    import numpy as np

    from tommybar.facts.fits.iso286 import limits_of_sizes

    sizes = np.linspace(1.0, 120.0, 100_000)
    limits_of_sizes(sizes[:10], "H7")
    return [at_most("100,000 limits of ISO 286", seconds(lambda: limits_of_sizes(sizes, "H7")), "s", 0.2)]


def main() -> None:
    """Measure, print, write."""
    rows = [*starts(), *first_page(), *redrawn(), *step_change(), *tables(), *replans(), *solids()]
    wide = max(len(row.what) for row in rows)
    for row in rows:
        verdict = "met" if row.met else "NOT met"
        print(
            f"{row.what:<{wide}}  {row.figure:>9.3f} {row.unit:<3}  goal {row.goal:g} {row.unit:<3}  {verdict}"
        )
    out = ROOT / "build" / "measure.json"
    out.parent.mkdir(exist_ok=True)
    out.write_text(json.dumps([asdict(row) for row in rows], indent=2) + "\n")
    print(out)


if __name__ == "__main__":
    main()
