"""The edition of the tables: a short name that changes when any figure does."""

from __future__ import annotations

import hashlib
from functools import cache
from importlib.resources import files
from importlib.resources.abc import Traversable


def _tables(folder: Traversable) -> list[Traversable]:
    found: list[Traversable] = []
    for entry in sorted(folder.iterdir(), key=lambda one: one.name):
        if entry.is_dir():
            found += _tables(entry)
        elif entry.name.endswith((".toml", ".csv")):
            found.append(entry)
    return found


@cache
def edition() -> str:
    """Hash of every table under facts/, eight characters long [-].

    Parameters
    ----------
    None : the tables that are installed [-]

    Returns
    -------
    str
        The same for the same figures, on every machine [-]

    Examples
    --------
    >>> len(edition())
    8

    References
    ----------
    SHA-256 of the files' bytes in the order of their names; no outside figure.
    """
    whole = hashlib.sha256()
    for table in _tables(files("tommybar.facts")):
        whole.update(table.name.encode())
        whole.update(table.read_bytes())
    return whole.hexdigest()[:8]
