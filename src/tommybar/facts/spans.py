"""Rows for a figure that is a range."""

from __future__ import annotations

from tommybar.facts.answer import Row


def span_rows(label: str, low: float, high: float, unit: str, decimals: int) -> tuple[Row, ...]:
    """The rows of a range: lengths as two figures, which the door can turn to inches; the rest in words.

    Parameters
    ----------
    label : str
        What the figure is [-]
    low, high : float
        Ends of the range, in the unit named [-]
    unit : str
        House unit, e.g. "mm" or "MPa" [-]
    decimals : int
        Decimals shown [-]

    Returns
    -------
    tuple[Row, ...]
        One row, or two for a range of lengths [-]

    Examples
    --------
    >>> span_rows("shear strength", 8.0, 15.0, "MPa", 0)[0].text
    '8 to 15 MPa'
    >>> [row.label for row in span_rows("gap", 0.02, 0.08, "mm", 2)]
    ['gap, least', 'gap, most']

    References
    ----------
    source: none needed, it is a way of writing.
    """
    if low == high:
        return (Row(label, low, unit, decimals),)
    if unit == "mm":
        return Row(f"{label}, least", low, unit, decimals), Row(f"{label}, most", high, unit, decimals)
    return (Row(label, text=f"{low:.{decimals}f} to {high:.{decimals}f} {unit}"),)
