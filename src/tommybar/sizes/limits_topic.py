"""Look-up "limits": a size with its tolerance class, deviations or two limits."""

from __future__ import annotations

from collections.abc import Mapping

from tommybar.facts.answer import Answer, Row
from tommybar.facts.fits import iso286
from tommybar.facts.fits.limits import Limits
from tommybar.refusals import Refusal
from tommybar.sizes.limits_text import limits_from_text


def answer(keys: tuple[str, ...], options: Mapping[str, str]) -> Answer:
    """Limits of one size: ``limits "8 H7"``, ``limits 12 +0.02/-0.01``.

    Parameters
    ----------
    keys : tuple of str
        Nominal size [mm] and class or deviations, together or apart
    options : Mapping
        None is used

    Returns
    -------
    Answer
        Deviations [um], smallest, largest and middle size [mm]

    Raises
    ------
    Refusal
        If the text cannot be read or lies outside the table.

    Examples
    --------
    >>> answer(("8 H7",), {}).data["upper_um"]
    15.0

    References
    ----------
    source: ISO 286-1:2010, as in facts/fits/iso286.toml.
    """
    text = " ".join(keys).strip()
    if not text:
        raise Refusal("No size is given.", 'For example: limits "8 H7".')
    limits = limits_from_text(text)
    named = limits.zone[:1].isalpha()
    return Answer(
        topic="limits",
        key=text,
        title=f"{limits.nominal:g} {limits.zone}" if named else text,
        rows=limit_rows("", limits),
        source=str(iso286.source()) if named else "as written",
        data={
            "nominal_mm": limits.nominal,
            "zone": limits.zone,
            **limit_data(limits),
        },
    )


def limit_rows(member: str, limits: Limits) -> tuple[Row, ...]:
    """Rows of one member's limits for the small table.

    Parameters
    ----------
    member : str
        "hole", "shaft" or nothing [-]
    limits : Limits
        Its limits [mm, um]

    Returns
    -------
    tuple of Row
        Deviations [um] and sizes [mm]

    Examples
    --------
    >>> limit_rows("hole", limits_from_text("8 H7"))[0].label
    'hole lower deviation'

    References
    ----------
    source: none needed, it is a layout.
    """
    head = f"{member} " if member else ""
    return (
        Row(f"{head}lower deviation", limits.lower_um, "um", 1),
        Row(f"{head}upper deviation", limits.upper_um, "um", 1),
        Row(f"{head}smallest", limits.smallest, "mm", 4),
        Row(f"{head}largest", limits.largest, "mm", 4),
        Row(f"{head}middle, to aim at", limits.middle, "mm", 4),
    )


def limit_data(limits: Limits) -> dict[str, float]:
    """Figures of one member's limits by their keys.

    Parameters
    ----------
    limits : Limits
        Its limits [mm, um]

    Returns
    -------
    dict
        lower_um, upper_um [um]; smallest_mm, largest_mm, middle_mm [mm]

    Examples
    --------
    >>> limit_data(limits_from_text("8 H7"))["largest_mm"]
    8.015

    References
    ----------
    source: none needed, it is a layout.
    """
    return {
        "lower_um": limits.lower_um,
        "upper_um": limits.upper_um,
        "smallest_mm": round(limits.smallest, 6),
        "largest_mm": round(limits.largest, 6),
        "middle_mm": round(limits.middle, 6),
    }
