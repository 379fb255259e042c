"""Bounds of what a formula may be asked: refused in words, never clamped."""

from __future__ import annotations

import math

from tommybar.refusals import Refusal


def must_be_above(name: str, figure: float, bound: float, unit: str) -> None:
    """Refuse a figure that is not finite and above a bound.

    Parameters
    ----------
    name : str
        What the figure is, for the words of the refusal
    figure : float
        The figure as it was given [as ``unit`` says]
    bound : float
        What it must be above [as ``unit`` says]
    unit : str
        Its unit; empty for a plain number

    Returns
    -------
    None
        Nothing, when the figure will do

    Raises
    ------
    Refusal
        If it will not.

    Examples
    --------
    >>> must_be_above("diameter", 12.0, 0.0, "mm")

    References
    ----------
    .. [1] Source: each formula's own range.
    """
    if not (math.isfinite(figure) and figure > bound):
        raise Refusal(
            f"The {name} is {_with(figure, unit)}; it must be above {_with(bound, unit)}.",
            "Check the figure and its unit.",
        )


def must_be_within(name: str, figure: float, low: float, high: float, unit: str) -> None:
    """Refuse a figure outside a closed range.

    Parameters
    ----------
    name : str
        What the figure is, for the words of the refusal
    figure : float
        The figure as it was given [as ``unit`` says]
    low, high : float
        Ends of the range, both allowed [as ``unit`` says]
    unit : str
        Its unit; empty for a plain number

    Returns
    -------
    None
        Nothing, when the figure will do

    Raises
    ------
    Refusal
        If it will not.

    Examples
    --------
    >>> must_be_within("efficiency", 0.75, 0.0, 1.0, "")

    References
    ----------
    .. [1] Source: each formula's own range.
    """
    if not low <= figure <= high:
        raise Refusal(
            f"The {name} is {_with(figure, unit)}; it must be from {low:g} to {_with(high, unit)}.",
            "Check the figure and its unit.",
        )


def _with(figure: float, unit: str) -> str:
    return f"{figure:g} {unit}" if unit else f"{figure:g}"
