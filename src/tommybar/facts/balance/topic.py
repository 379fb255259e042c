"""Look-up "balance": the usual balance grade of a kind of machine."""

from __future__ import annotations

from collections.abc import Mapping

from tommybar.facts.answer import Answer, Row
from tommybar.facts.balance import grades
from tommybar.refusals import Refusal


def answer(keys: tuple[str, ...], options: Mapping[str, str]) -> Answer:
    """Balance grade of a kind of machine: ``balance flywheel``.

    Parameters
    ----------
    keys : tuple of str
        Words for the machine [-]
    options : Mapping
        None is used

    Returns
    -------
    Answer
        Grade G, e_per times omega [mm/s]

    Raises
    ------
    Refusal
        If no entry shares a word with the question.

    Examples
    --------
    >>> answer(("flywheel",), {}).data["grade_mm_s"]
    6.3

    References
    ----------
    source: ISO 21940-11:2016, as in facts/balance/grades.toml.
    """
    text = " ".join(keys).strip()
    if not text:
        raise Refusal("No machine is named.", "For example: balance flywheel.")
    grade = grades.grade_for_machine(text)
    return Answer(
        topic="balance",
        key=text,
        title=f"Usual balance grade: {text}",
        rows=(Row("grade G, e x omega", grade, "mm/s", 1),),
        source=str(grades.source()),
        data={"grade_mm_s": grade},
    )
