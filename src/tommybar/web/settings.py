"""What the page is set to, as one table."""

from __future__ import annotations

from dataclasses import dataclass

LOOPBACK = ("127.0.0.1", "localhost", "[::1]")


@dataclass(frozen=True)
class Settings:
    """Every figure that the page is run by; tests hand in a table of their own."""

    hosts: tuple[str, ...] = LOOPBACK  # names by which the page may be called, without port
    lan: bool = False  # whether other machines are let in, once paired
    largest_body: int = 2_000_000  # of what is sent to us [bytes]
    largest_file: int = 1_000_000  # of one file handed in [bytes]
    most_fields: int = 600  # in one form
    pairing_tries: int = 5  # wrong codes until the code is changed
    pairing_rest: float = 60.0  # after that nobody may try [s]
    paired_days: int = 30  # how long a paired machine stays so
    plan_patience: float = 4.0  # a page waits so long for a plan before it shows progress [s]
    plans_kept: int = 24  # in memory


SETTINGS = Settings()
