"""Reference temperature of drawings, and how much a kind of metal grows when warm."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from tommybar.facts.table import Table, read_table
from tommybar.refusals import Refusal, nearest


def reference_temperature() -> float:
    """Temperature at which every size on a drawing holds.

    Parameters
    ----------
    None

    Returns
    -------
    float
        Reference temperature [C]

    Examples
    --------
    >>> reference_temperature()
    20.0

    References
    ----------
    .. [1] ISO 1:2022 (from memory).
    """
    return float(_table().figures["reference_c"])


def round_expansion(metal: str) -> float:
    """Round figure of the linear expansion of a kind of metal.

    Parameters
    ----------
    metal : str
        For example "steel" or "brass" [-]

    Returns
    -------
    float
        Linear expansion near room temperature [1e-6/K]

    Raises
    ------
    Refusal
        If the kind is not in the table; the nearest one is offered.

    Notes
    -----
    For the correction of a warm reading. Where the alloy is known, take the
    figure of the materials table.

    Examples
    --------
    >>> round_expansion("brass")
    20.5

    References
    ----------
    .. [1] Common practice, no source.
    """
    known = _table().figures["expansion"]
    if metal not in known:
        raise Refusal(
            f'The kind of metal is "{metal}"; the table of round expansions holds {", ".join(known)}.',
            nearest(metal, known) or "Ask the materials table by the name of the alloy.",
        )
    return float(known[metal])


@cache
def _table() -> Table:
    return read_table(Path(__file__).with_name("reference_temperature.toml"))
