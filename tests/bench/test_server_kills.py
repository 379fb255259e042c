"""The server of the page, killed while entries come in over the wire.

TOMMYBAR_KILLS sets how many kills are tried; 200 is the measure asked of the
house, the suite itself tries fewer.
"""

import os
import random
import re
import signal
import socket
import subprocess
import sys
import threading
import time
import uuid
from pathlib import Path

import httpx

from tommybar.bench.builds import load_build

KILLS = int(os.environ.get("TOMMYBAR_KILLS", "6"))
TOMMYBAR = Path(sys.executable).parent / "tommybar"
SENDERS = 3


def free_port():
    """A port that nobody listens on just now."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return probe.getsockname()[1]


def serve(folder, port):
    """The page as a person starts it, once it answers, and the token of its forms with the cookie of it."""
    process = subprocess.Popen(
        [TOMMYBAR, "serve", "--port", str(port), "--folder", str(folder.path)],
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
    )
    end = time.monotonic() + 60
    while True:
        try:
            with socket.create_connection(("127.0.0.1", port), timeout=1):
                return process
        except OSError:
            assert process.poll() is None and time.monotonic() < end
            time.sleep(0.02)


class Sender(threading.Thread):
    """A device that sends ticks, one or three at a time, and remembers which of them were acknowledged."""

    def __init__(self, port, build, device):
        super().__init__(daemon=True)
        self.port, self.build, self.device = port, build, device
        self.safe = []

    def run(self):
        """Send until the server is gone; an answer that did not come whole acknowledges nothing."""
        address = f"http://127.0.0.1:{self.port}"
        number = 0
        try:
            with httpx.Client(base_url=address, timeout=10) as client:
                page = client.get("/archive")
                token = re.search(r'name="token" value="(\w+)"', page.text)[1]
                head = {"x-token": token, "sec-fetch-site": "same-origin", "origin": address}
                while True:
                    batch = []
                    for _ in range(1 + 2 * (number % 2)):
                        number += 1
                        batch.append(self.entry(number))
                    answer = client.post(
                        f"/builds/{self.build}/entries", json={"entries": batch}, headers=head
                    )
                    assert answer.status_code == 200
                    self.safe += answer.json()["safe"]
        except httpx.TransportError:
            return

    def entry(self, number):
        """A size as the machine page sends it."""
        return {
            "id": str(uuid.uuid4()),
            "device": self.device,
            "number": number,
            "kind": "tick",
            "key": f"wheel/1/{1 + number % 9}",
            "at": "2026-05-02T18:00:00Z",
            "by": "R",
            "said": {},
        }


def test_a_killed_server_loses_nothing_that_it_acknowledged(folder, build):
    """Killed at random moments under three senders: each entry that it called safe is in the journal."""
    moments = random.Random(11)
    port = free_port()
    safe = []
    for turn in range(KILLS):
        process = serve(folder, port)
        senders = [Sender(port, build.id, f"device {turn} {one}") for one in range(SENDERS)]
        for one in senders:
            one.start()
        end = time.monotonic() + 20
        while not any(one.safe for one in senders) and time.monotonic() < end:
            time.sleep(0.002)
        time.sleep(moments.uniform(0.0, 0.15))
        os.kill(process.pid, signal.SIGKILL)
        assert process.wait() == -signal.SIGKILL
        for one in senders:
            one.join(20)
            assert not one.is_alive()
            safe += one.safe

    there = {one.id for one in load_build(folder, build.id).entries}
    assert len(safe) >= KILLS
    assert set(safe) - there == set()
    assert len(there) == len(load_build(folder, build.id).entries)
