"""Long work in a thread of its own: it says what it is at, and can be stopped between two stages."""

from __future__ import annotations

import secrets
import threading
from collections import OrderedDict
from collections.abc import Callable
from typing import Any

from tommybar.refusals import Refusal

Tell = Callable[[str], None]
MOST_KEPT = 60  # pieces of work remembered after they ended


class StoppedError(Exception):
    """The person stopped the work."""


class Work:
    """One piece of work. ``back`` is the page that shows what comes of it."""

    def __init__(self, what: str, back: str, deed: Callable[[Tell], Any]) -> None:
        self.name = secrets.token_urlsafe(9)
        self.what, self.back = what, back
        self.words = "begins"
        self.result: Any = None
        self.error: BaseException | None = None
        self.done = threading.Event()
        self._stop = threading.Event()
        self._deed = deed
        threading.Thread(target=self._do, name=f"work {what}", daemon=True).start()

    def stop(self) -> None:
        """Ask it to end at its next stage."""
        self._stop.set()

    @property
    def stopped(self) -> bool:
        """Whether it was stopped."""
        return isinstance(self.error, StoppedError)

    def outcome(self) -> Any:
        """What came of it; raises what it raised. To be asked when it is done."""
        if isinstance(self.error, StoppedError):
            raise Refusal(f"{self.what} was stopped.", "Open the page again to begin anew.")
        if self.error is not None:
            raise self.error
        return self.result

    def _tell(self, words: str) -> None:
        self.words = words
        if self._stop.is_set():
            raise StoppedError

    def _do(self) -> None:
        try:
            self.result = self._deed(self._tell)
        except BaseException as error:
            self.error = error
        finally:
            self.done.set()


class StillAtWorkError(Exception):
    """A page needs work that takes longer; its progress is shown in the meantime."""

    def __init__(self, work: Work) -> None:
        super().__init__(work.what)
        self.work = work


class Works:
    """All work of this server by name, the oldest forgotten."""

    def __init__(self) -> None:
        self._by_name: OrderedDict[str, Work] = OrderedDict()
        self._lock = threading.Lock()

    def begin(self, what: str, back: str, deed: Callable[[Tell], Any]) -> Work:
        """Begin a piece of work."""
        work = Work(what, back, deed)
        with self._lock:
            self._by_name[work.name] = work
            while len(self._by_name) > MOST_KEPT:
                self._by_name.popitem(last=False)
        return work

    def named(self, name: str) -> Work:
        """The work of that name."""
        work = self._by_name.get(name)
        if work is None:
            raise Refusal("That work is not known here any more.", "Open the page again.")
        return work
