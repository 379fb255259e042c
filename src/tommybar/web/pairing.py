"""Letting other machines of the network in: a six-digit code, few tries, a token kept by the browser."""

from __future__ import annotations

import hashlib
import hmac
import os
import secrets
import time
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path

from tommybar.refusals import Refusal
from tommybar.web.settings import Settings

SECRET = 32  # bytes


class Pairing:
    """The code of this run of the server, and who has given it.

    After a few wrong codes nobody may try for a while, and the code is
    another one then: guessing a six-digit code so takes years.
    """

    def __init__(
        self,
        settings: Settings,
        say: Callable[[str], None] = lambda words: None,
        clock: Callable[[], float] = time.monotonic,
        secret: bytes = b"",
    ) -> None:
        self._settings, self._say, self._clock = settings, say, clock
        self._secret = secret or secrets.token_bytes(32)
        self._wrong = 0
        self._rests_until = float("-inf")
        self.code = _new_code()

    def seal(self, purpose: str, words: str) -> str:
        """A proof that we made these words, for this purpose, over this folder."""
        return hmac.new(self._secret, f"{purpose}:{words}".encode(), hashlib.sha256).hexdigest()[:40]

    def sealed(self, purpose: str, words: str, seal: str) -> bool:
        """Whether the proof is ours."""
        return hmac.compare_digest(self.seal(purpose, words).encode(), seal.encode())

    def try_code(self, given: str) -> str:
        """The token for the right code; a refusal for a wrong one or while nobody may try."""
        now = self._clock()
        if now < self._rests_until:
            raise Refusal(
                f"Too many wrong codes; wait {self._rests_until - now:.0f} s.",
                "Then read the new code off the PC.",
            )
        if hmac.compare_digest(given.strip().replace(" ", "").encode(), self.code.encode()):
            self._wrong = 0
            name = secrets.token_hex(16)
            return f"{name}.{self.seal('paired', name)}"
        self._wrong += 1
        if self._wrong >= self._settings.pairing_tries:
            self._wrong, self.code = 0, _new_code()
            self._rests_until = now + self._settings.pairing_rest
            self._say(f"{self._settings.pairing_tries} wrong codes were given. The new code is {self.code}.")
        raise Refusal("That is not the code.", "Read it off the window in which the page was started.")

    def paired(self, token: str) -> bool:
        """Whether a browser's token was given over this folder."""
        name, _, seal = token.partition(".")
        return bool(name) and self.sealed("paired", name, seal)


def _new_code() -> str:
    return f"{secrets.randbelow(1_000_000):06d}"


def kept_secret(place: Path) -> bytes:
    """The secret of a folder, made the first time: paired machines stay so when the page is started again."""
    with suppress(OSError):
        found = place.read_bytes()
        if len(found) == SECRET:
            return found
    made = secrets.token_bytes(SECRET)
    with suppress(OSError):  # a folder that cannot be written still has its page, until it is stopped
        place.unlink(missing_ok=True)
        handle = os.open(place, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600)
        with os.fdopen(handle, "wb") as file:
            file.write(made)
    return made
