"""Preferred fits in trade words: what to ask for when the joint must slide, push or press."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from pathlib import Path

from tommybar.facts.table import Source, Table, read_table
from tommybar.refusals import Refusal, nearest


@dataclass(frozen=True)
class PreferredFit:
    """One preferred fit: its word, its pair on a reamed hole and on bright bar, feel and use."""

    word: str
    hole_based: str  # "H7/g6"
    shaft_based: str  # "G7/h6"
    feel: str
    use: str


def preferred_fits() -> tuple[PreferredFit, ...]:
    """All preferred fits, loosest first.

    Parameters
    ----------
    None

    Returns
    -------
    tuple of PreferredFit
        Word, pairs, feel and use of each [-]

    Examples
    --------
    >>> [fit.word for fit in preferred_fits()][3:6]
    ['running', 'sliding', 'locating']

    References
    ----------
    .. [1] ANSI B4.2-1978 preferred pairs (seen in public reprints); BS 4500
       selected fits and the words (from memory).
    """
    return tuple(PreferredFit(**row) for row in _table().figures["fits"])


def preferred_fit(word: str) -> PreferredFit:
    """Preferred fit of a trade word.

    Parameters
    ----------
    word : str
        Trade word, for example "sliding" or "press" [-]

    Returns
    -------
    PreferredFit
        Word, pairs, feel and use [-]

    Raises
    ------
    Refusal
        If the word is not in the list; the nearest one is offered.

    Examples
    --------
    >>> preferred_fit("Sliding fit").hole_based
    'H7/g6'

    References
    ----------
    .. [1] As for the whole list (source there).
    """
    wanted = " ".join(word.casefold().split()).removesuffix(" fit")
    for fit in preferred_fits():
        if fit.word == wanted:
            return fit
    words = [fit.word for fit in preferred_fits()]
    raise Refusal(
        f'"{word}" is not a preferred fit; the list of BS 4500 and ANSI B4.2 here has {", ".join(words)}.',
        nearest(wanted, words) or 'Choose one of these, or write the pair like "H7/g6".',
    )


def source() -> Source:
    """Where the figures of this module come from.

    Parameters
    ----------
    None

    Returns
    -------
    Source
        Title, year, tables and how they were checked [-]

    Examples
    --------
    >>> source().title
    'BS 4500:1970 data sheet 4500A and ANSI B4.2-1978'

    References
    ----------
    .. [1] The [source] head of preferred.toml.
    """
    return _table().source


@cache
def _table() -> Table:
    return read_table(Path(__file__).with_name("preferred.toml"))
