"""A page that is served by a process of its own, which a test may kill and start again at the same address."""

from __future__ import annotations

import os
import socket
import subprocess
import sys
import time
import urllib.request
from pathlib import Path
from typing import Any

from tommybar.bench.builds import load_build, start_build
from tommybar.bench.entries import new_entry
from tommybar.bench.folder import open_folder
from tommybar.bench.journal import entries_after, receive
from tommybar.bench.replan import plan_of, printed_entry
from tommybar.shop import example_shops

SCALE = 0.77  # given, so that a build begins without planning
DESIGN = example_shops()["shop-r"].parents[1] / "demonstrator" / "design.yaml"


class House:
    """The server, its folder, and builds of the demonstrator in it."""

    def __init__(self, path: Path) -> None:
        self.folder = open_folder(path)
        self.folder.save_design("demo", DESIGN.read_text(encoding="utf-8"))
        with socket.socket() as probe:
            probe.bind(("127.0.0.1", 0))
            self.port = probe.getsockname()[1]
        self.address = f"http://127.0.0.1:{self.port}"
        self.start()

    def start(self) -> None:
        """Serve, and come back when the page answers."""
        program = str(Path(sys.executable).parent / "tommybar")
        command = [program, "serve", "--port", str(self.port), "--folder", str(self.folder.path)]
        self._process = subprocess.Popen(command, stdout=subprocess.DEVNULL, env=os.environ)
        began = time.monotonic()
        while True:
            try:
                urllib.request.urlopen(self.address, timeout=5).close()
                return
            except OSError:
                assert self._process.poll() is None and time.monotonic() - began < 30
                time.sleep(0.02)

    def kill(self) -> None:
        """End it as a power cut would."""
        self._process.kill()
        self._process.wait(10)

    def begin(self, title: str) -> str:
        """A new build; gives its id."""
        return start_build(self.folder, "demo", "small-bench", title=title, scale=SCALE).id

    def journal(self, build: str) -> list[Any]:
        """Its entries, in the order in which they were stored."""
        return list(entries_after(self.folder, build)[0])

    def write(self, build: str, kind: str, key: str = "", **said: Any) -> None:
        """An entry of another device."""
        one = new_entry(kind, key, device="another", number=len(self.journal(build)), by="XY", **said)
        assert receive(self.folder, build, [one]).stored

    def print_cards(self, build: str) -> None:
        """Note that all cards were printed."""
        plan = plan_of(load_build(self.folder, build))
        receive(self.folder, build, [printed_entry(plan, device="the PC", number=0)])
