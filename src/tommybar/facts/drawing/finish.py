"""Surface finish: what each process usually leaves, and which process reaches a wanted roughness."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from tommybar.facts.table import Source, Table, read_table
from tommybar.refusals import Refusal, nearest


def usual_roughness(process: str) -> tuple[float, float]:
    """Roughness Ra that a process usually leaves.

    Parameters
    ----------
    process : str
        For example "turning" or "reaming" [-]

    Returns
    -------
    tuple of float
        Finest and coarsest usual Ra [um]

    Raises
    ------
    Refusal
        If the process is unknown; the nearest one is offered.

    Notes
    -----
    Better and worse are both possible; it is a range for choosing a process,
    not a promise.

    Examples
    --------
    >>> usual_roughness("reaming")
    (0.8, 3.2)

    References
    ----------
    .. [1] ASME B46.1, appendix (from memory); hand processes: common
       practice, no source.
    """
    processes = _table().figures["processes"]
    if process not in processes:
        raise Refusal(
            f'"{process}" is not a process of the finish table; it holds {", ".join(sorted(processes))}.',
            nearest(process, processes),
        )
    fine, coarse = processes[process]
    return float(fine), float(coarse)


def processes_reaching(roughness_um: float) -> tuple[str, ...]:
    """Processes whose usual range holds a wanted roughness.

    Parameters
    ----------
    roughness_um : float
        Wanted Ra, above 0 [um]

    Returns
    -------
    tuple of str
        Processes, roughest first; empty if none usually reaches it [-]

    Raises
    ------
    Refusal
        If the roughness is not above nought.

    Examples
    --------
    >>> "turning" in processes_reaching(0.8), "drilling" in processes_reaching(0.8)
    (True, False)

    References
    ----------
    .. [1] ASME B46.1, appendix (from memory).
    """
    if not roughness_um > 0:
        raise Refusal(f"The roughness Ra is {roughness_um:g} um; it must be above 0.", "Give 1.6 as a rule.")
    return tuple(
        name
        for name, (fine, coarse) in _table().figures["processes"].items()
        if fine <= roughness_um <= coarse
    )


def roughness_of_grade(grade: str) -> float:
    """Roughness Ra of a grade number.

    Parameters
    ----------
    grade : str
        N1 to N12 [-]

    Returns
    -------
    float
        Ra [um]

    Raises
    ------
    Refusal
        If the grade is unknown.

    Examples
    --------
    >>> roughness_of_grade("N7")
    1.6

    References
    ----------
    .. [1] ISO 1302:2002, annex (from memory).
    """
    grades = _table().figures["grades"]
    if grade not in grades:
        raise Refusal(f'The grade is "{grade}"; ISO 1302 has N1 to N12.', nearest(grade, grades))
    return float(grades[grade])


def source() -> Source:
    """Where the figures of this module come from.

    Parameters
    ----------
    None

    Returns
    -------
    Source
        Titles, years and how they were checked [-]

    Examples
    --------
    >>> source().title
    'ASME B46.1-1978 and ISO 1302:2002'

    References
    ----------
    .. [1] The [source] head of finish.toml.
    """
    return _table().source


@cache
def _table() -> Table:
    return read_table(Path(__file__).with_name("finish.toml"))
