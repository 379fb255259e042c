"""How the program says no.

Three kinds of trouble, kept apart: a *refusal* is bad input and stops the
work; a *finding* (see :mod:`tommybar.checks`) is a result; a *fault* is a
mistake of ours. All complaints about one file are gathered into one refusal.
"""

from __future__ import annotations

import difflib
from collections.abc import Iterable
from dataclasses import dataclass, replace


@dataclass(frozen=True)
class Complaint:
    """One thing that is wrong with what we were given.

    ``what`` is the whole sentence: the thing, the figure it had, the bound and
    who sets it. ``remedy`` says what to do. The place is where it stands.
    """

    what: str
    remedy: str = ""
    file: str = ""
    line: int = 0  # 1 is the first line; 0: not from a file
    column: int = 0
    place: str = ""  # dotted path inside the file, e.g. lathe.speeds.3

    def __str__(self) -> str:
        where = ":".join(str(part) for part in (self.file, self.line, self.column) if part)
        head = ": ".join(part for part in (where, self.place) if part)
        body = f"{self.what} {self.remedy}".strip()
        return f"{head}: {body}" if head else body


class Refusal(ValueError):  # noqa: N818  (the trade's word: it stops the work, it is no error of ours)
    """Input that cannot be worked with; carries every complaint at once.

    Examples
    --------
    >>> str(Refusal("The diameter is -3 mm; it must be above 0.", "Give the finished diameter."))
    'The diameter is -3 mm; it must be above 0. Give the finished diameter.'
    """

    def __init__(self, what: str | Iterable[Complaint], remedy: str = "") -> None:
        if isinstance(what, str):
            self.complaints: tuple[Complaint, ...] = (Complaint(what, remedy),)
        else:
            self.complaints = tuple(what)
        super().__init__("\n".join(str(complaint) for complaint in self.complaints))

    def placed(self, *, file: str = "", line: int = 0, column: int = 0, place: str = "") -> Refusal:
        """The same refusal, with a place for those complaints that have none yet."""
        return Refusal(
            replace(
                one,
                file=one.file or file,
                line=one.line or line,
                column=one.column or column,
                place=one.place or place,
            )
            for one in self.complaints
        )


class OwnFault(RuntimeError):  # noqa: N818  (a fault is ours; the word is used everywhere)
    """A mistake of the program's; keeps its traceback and asks for a report."""


def nearest(word: str, known: Iterable[str]) -> str:
    """Words that offer the nearest known name, or an empty string.

    Examples
    --------
    >>> nearest("bores", ["bore", "rim"])
    'Did you mean "bore"?'
    >>> nearest("zzz", ["bore"])
    ''
    """
    near = difflib.get_close_matches(word, list(known), n=1, cutoff=0.6)
    return f'Did you mean "{near[0]}"?' if near else ""
