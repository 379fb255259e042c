"""A program that writes entries until it is killed, and says each one that was acknowledged.

Run as: python writer.py FOLDER BUILD DEVICE [COUNT]
"""

import sys
from pathlib import Path

from tommybar.bench.entries import new_entry
from tommybar.bench.folder import Folder
from tommybar.bench.journal import receive


def say(words):
    """One line, out of the house before anything else is done."""
    sys.stdout.write(f"{words}\n")
    sys.stdout.flush()


def main():
    """Write entries, one or three at a time; print an id only after it was acknowledged."""
    path, build, device = sys.argv[1:4]
    count = int(sys.argv[4]) if len(sys.argv) > 4 else 1_000_000
    folder, number = Folder(Path(path)), 0
    say("begun")
    while number < count:
        batch = []
        for _ in range(1 + 2 * (number % 2)):
            number += 1
            batch.append(
                new_entry("size", "wheel.bore", device=device, number=number, value=10 + number / 1e6)
            )
        for name in sorted(receive(folder, build, batch).safe):
            say(name)


if __name__ == "__main__":
    main()
