"""Balance quality grades: how smooth which kind of machine should run."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path

from tommybar.facts.table import Source, Table, read_table
from tommybar.refusals import Refusal

_WORD = re.compile(r"[a-z0-9-]+")
_EMPTY = {"and", "of", "for", "the", "with", "a", "in"}


def balance_grades() -> tuple[float, ...]:
    """Balance quality grades G, roughest first.

    Parameters
    ----------
    None

    Returns
    -------
    tuple of float
        Grades; each is e_per times omega [mm/s]

    Examples
    --------
    >>> balance_grades()[-4:]
    (6.3, 2.5, 1.0, 0.4)

    References
    ----------
    .. [1] ISO 21940-11:2016, Table 1 (1, 2.5, 16 seen, others from memory).
    """
    return tuple(float(row["grade"]) for row in _table().figures["grades"])


def grade_magnitude(name: str) -> float:
    """Magnitude of a balance quality grade by its name.

    Parameters
    ----------
    name : str
        For example "G 6.3" [-]

    Returns
    -------
    float
        e_per times omega [mm/s]

    Raises
    ------
    Refusal
        If it is no grade of the standard.

    Examples
    --------
    >>> grade_magnitude("G2.5")
    2.5

    References
    ----------
    .. [1] ISO 21940-11:2016, Table 1 (1, 2.5, 16 seen, others from memory).
    """
    match = re.fullmatch(r"\s*G?\s*(\d+(?:\.\d+)?)\s*", name, re.IGNORECASE)
    if not match or float(match[1]) not in balance_grades():
        listed = ", ".join(f"G {grade:g}" for grade in balance_grades())
        raise Refusal(
            f'"{name}" is not a balance quality grade; ISO 21940-11 has {listed}.',
            "Take G 6.3 for wheels and general machinery.",
        )
    return float(match[1])


def grade_for_machine(machine: str) -> float:
    """Usual balance quality grade of a kind of machine, by its words.

    Parameters
    ----------
    machine : str
        Kind of machine, for example "flywheel" or "grinding spindle" [-]

    Returns
    -------
    float
        Grade G of the entry that shares most words with the question [mm/s]

    Raises
    ------
    Refusal
        If no entry shares a word.

    Examples
    --------
    >>> grade_for_machine("pumps and fans"), grade_for_machine("agricultural machinery")
    (6.3, 16.0)

    References
    ----------
    .. [1] ISO 21940-11:2016, Table 1 (1, 2.5, 16 seen, others from memory).
    """
    asked = _words(machine)
    best, grade = (0, 0.0), 0.0
    for row in _table().figures["grades"]:
        for words in row["machines"]:
            held = _words(words)
            shared = len(asked & held)
            score = (shared, shared / len(held))
            if shared and score > best:
                best, grade = score, float(row["grade"])
    if not grade:
        raise Refusal(
            f'"{machine}" shares no word with the machines of ISO 21940-11.',
            "Take G 6.3 for wheels and general machinery.",
        )
    return grade


def source() -> Source:
    """Where the figures of this module come from.

    Parameters
    ----------
    None

    Returns
    -------
    Source
        Title, year, table and how it was checked [-]

    Examples
    --------
    >>> source().year
    '2016'

    References
    ----------
    .. [1] The [source] head of grades.toml.
    """
    return _table().source


@cache
def _table() -> Table:
    return read_table(Path(__file__).with_name("grades.toml"))


def _words(text: str) -> set[str]:
    return {word.removesuffix("s") for word in _WORD.findall(text.lower())} - _EMPTY
