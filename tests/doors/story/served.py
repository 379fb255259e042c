"""The program as a new user starts it: on a folder of their own, ended as a power cut ends it, started again."""

from __future__ import annotations

import socket
import subprocess
import sys
import time
import urllib.request
from pathlib import Path


class Served:
    """A server of its own on one folder, always at the same address."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        with socket.socket() as probe:
            probe.bind(("127.0.0.1", 0))
            self.port = probe.getsockname()[1]
        self.address = f"http://127.0.0.1:{self.port}"
        self.start()

    def start(self) -> None:
        """Serve, and come back when the page answers."""
        program = str(Path(sys.executable).parent / "tommybar")
        command = [program, "serve", "--port", str(self.port), "--folder", str(self.folder)]
        self._process = subprocess.Popen(command, stdout=subprocess.DEVNULL)
        began = time.monotonic()
        while True:
            try:
                urllib.request.urlopen(self.address, timeout=5).close()
                return
            except OSError:
                assert self._process.poll() is None and time.monotonic() - began < 60
                time.sleep(0.02)

    def kill(self) -> None:
        """End it as a power cut would."""
        self._process.kill()
        self._process.wait(10)
