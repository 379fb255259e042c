"""Where this machine listens, and the addresses under which the home network finds it."""

from __future__ import annotations

import contextlib
import socket

from tommybar.refusals import Refusal

# An address of the block for documentation: nothing is sent, the system only says which way it would go.
_FAR_AWAY = ("192.0.2.1", 9)


def addresses() -> tuple[str, ...]:
    """This machine's addresses in the network and its name there, the likeliest first."""
    found: list[str] = []
    with contextlib.suppress(OSError), socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as probe:
        probe.connect(_FAR_AWAY)
        found.append(probe.getsockname()[0])
    name = socket.gethostname().lower()
    with contextlib.suppress(OSError):
        found += [str(one[4][0]) for one in socket.getaddrinfo(name, None, socket.AF_INET)]
    found += [name, f"{name}.local"]
    return tuple(one for one in dict.fromkeys(found) if not one.startswith("127."))


def listening(host: str, port: int) -> socket.socket:
    """A socket that listens; a refusal when another program has the port."""
    door = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    door.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        door.bind((host, port))
    except OSError as error:
        door.close()
        raise Refusal(
            f"Port {port} cannot be listened on: {error.strerror}.",
            "Stop the other program, or take another --port.",
        ) from None
    door.listen(128)
    return door
