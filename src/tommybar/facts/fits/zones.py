"""Tolerance classes as ISO 286 writes them: a letter for where, a grade for how wide."""

from __future__ import annotations

import re

from tommybar.refusals import Refusal, nearest

GRADES = tuple(range(5, 13))
SHAFT_LETTERS = ("c", "d", "e", "f", "g", "h", "js", "k", "m", "n", "p", "r", "s", "u")
HOLE_LETTERS = tuple(letter.upper() for letter in SHAFT_LETTERS)

_ZONE = re.compile(r"([A-Za-z]{1,2}?)\s*(\d{1,2})")


def is_hole(zone: str) -> bool:
    """Whether a tolerance class is one of a hole (its letter is a capital).

    Parameters
    ----------
    zone : str
        Tolerance class, for example "H7" [-]

    Returns
    -------
    bool
        True for a hole, False for a shaft [-]

    Examples
    --------
    >>> is_hole("H7"), is_hole("g6")
    (True, False)

    References
    ----------
    .. [1] ISO 286-1:2010 (from memory).
    """
    return zone.strip()[:1].isupper()


def split_zone(zone: str) -> tuple[str, int]:
    """Letter and grade of a tolerance class.

    Parameters
    ----------
    zone : str
        Tolerance class, for example "JS7" or "js 7" [-]

    Returns
    -------
    tuple of str and int
        Letter and grade number [-]

    Raises
    ------
    Refusal
        If it is no class, or not one that the table holds.

    Examples
    --------
    >>> split_zone("JS7"), split_zone("g 6")
    (('JS', 7), ('g', 6))

    References
    ----------
    .. [1] ISO 286-1:2010, clause on the designation of a tolerance class
       (from memory).
    """
    match = _ZONE.fullmatch(zone.strip())
    if not match:
        raise Refusal(
            f'"{zone}" is not a tolerance class; ISO 286 writes a letter and a grade.',
            'Write it like "H7" for a hole or "g6" for a shaft.',
        )
    letter, grade = match[1], grade_number(int(match[2]))
    if letter not in SHAFT_LETTERS and letter not in HOLE_LETTERS:
        raise Refusal(
            f'The letter "{letter}" of "{zone}" is not in the table; it holds holes '
            f"{' '.join(HOLE_LETTERS)} and shafts {' '.join(SHAFT_LETTERS)} of ISO 286-1.",
            nearest(letter, SHAFT_LETTERS + HOLE_LETTERS) or "Choose one of these letters.",
        )
    return letter, grade


def grade_number(grade: int | str) -> int:
    """Number of a standard tolerance grade.

    Parameters
    ----------
    grade : int or str
        Grade as a number or as "IT7" [-]

    Returns
    -------
    int
        Grade, 5 to 12 [-]

    Raises
    ------
    Refusal
        If the table does not hold the grade.

    Examples
    --------
    >>> grade_number("IT7")
    7

    References
    ----------
    .. [1] ISO 286-1:2010, Table 1 (seen in public reprints).
    """
    text = str(grade).strip().upper().removeprefix("IT")
    number = int(text) if text.isdigit() else -1
    if number not in GRADES:
        raise Refusal(
            f"The grade is {grade}; the table holds IT{GRADES[0]} to IT{GRADES[-1]} of ISO 286-1.",
            f"Choose a grade from {GRADES[0]} to {GRADES[-1]}.",
        )
    return number
