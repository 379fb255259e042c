"""What the system and the database say when they cannot write, in words for a person."""

from __future__ import annotations

import errno
import sqlite3
from pathlib import Path

from tommybar.refusals import OwnFault, Refusal

FULL = {errno.ENOSPC, errno.EDQUOT, errno.EFBIG}
SHUT = {errno.EACCES, errno.EPERM, errno.EROFS}


def refusal_of(error: OSError | sqlite3.Error, place: Path) -> Refusal | OwnFault:
    """The refusal that an error of the disk or of the database amounts to; a fault when it is ours.

    >>> print(refusal_of(OSError(errno.ENOSPC, ""), Path("builds.sqlite")))
    The disk is full; builds.sqlite could not be written. Make room and try again; what was acknowledged is safe.
    """
    code = error.errno if isinstance(error, OSError) else None
    words = str(error).lower()
    if code in FULL or "disk is full" in words:
        return Refusal(
            f"The disk is full; {place} could not be written.",
            "Make room and try again; what was acknowledged is safe.",
        )
    if code in SHUT or "readonly" in words or "unable to open" in words:
        return Refusal(
            f"{place} may not be written: its folder is read-only for you.",
            "Give yourself the right to write there, or set TOMMYBAR_HOME to another folder.",
        )
    if "locked" in words or "busy" in words:
        return Refusal(
            f"Another program has held {place} for too long.", "Close it and try again; nothing was changed."
        )
    if "malformed" in words or "not a database" in words:
        return Refusal(
            f"{place} is damaged.",
            "Bring the newest copy back: tommybar import FILE, with a file of the folder backups; the damaged one is put aside.",
        )
    if isinstance(error, OSError):
        return Refusal(f"{place} cannot be used: {error.strerror or error}.", "Check the folder.")
    if "disk i/o" in words:
        return Refusal(
            f"The disk fails under {place}.", "Save your folder elsewhere; nothing was acknowledged."
        )
    return OwnFault(f"The database {place.name} was asked for what it cannot do: {error}.")
