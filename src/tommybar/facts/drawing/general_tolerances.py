"""General tolerances of ISO 2768: what holds where a drawing says nothing else."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from tommybar.facts.table import Source, Table, read_table
from tommybar.refusals import Refusal, nearest

SIZE_CLASSES = ("f", "m", "c", "v")  # fine, medium, coarse, very coarse
FORM_CLASSES = ("H", "K", "L")
FORMS = ("flatness", "perpendicularity", "symmetry", "run-out")

_PART = {"linear": "ISO 2768-1", "radii": "ISO 2768-1", "angles": "ISO 2768-1"}


def general_tolerance(size_mm: float, tolerance_class: str) -> float:
    """General tolerance of a length or diameter, plus and minus.

    Parameters
    ----------
    size_mm : float
        Nominal size, from 0.5 up to and including 4000 [mm]
    tolerance_class : {"f", "m", "c", "v"}
        Fine, medium, coarse or very coarse [-]

    Returns
    -------
    float
        Tolerance, to be taken both ways [mm]

    Raises
    ------
    Refusal
        If class or size lies outside the table, or the table prints a dash.

    Notes
    -----
    Under 0.5 mm the deviation must be written at the size itself.

    Examples
    --------
    >>> general_tolerance(25.0, "m"), general_tolerance(30.5, "m")
    (0.2, 0.3)

    References
    ----------
    .. [1] ISO 2768-1:1989, Table 1 (seen in public reprints).
    """
    return _looked_up("linear", size_mm, tolerance_class)


def general_radius_tolerance(size_mm: float, tolerance_class: str) -> float:
    """General tolerance of an external radius or a chamfer height, plus and minus.

    Parameters
    ----------
    size_mm : float
        Radius or chamfer height, 0.5 or more [mm]
    tolerance_class : {"f", "m", "c", "v"}
        Fine, medium, coarse or very coarse [-]

    Returns
    -------
    float
        Tolerance, to be taken both ways [mm]

    Raises
    ------
    Refusal
        If class or size lies outside the table.

    Examples
    --------
    >>> general_radius_tolerance(1.0, "m"), general_radius_tolerance(8.0, "c")
    (0.2, 2.0)

    References
    ----------
    .. [1] ISO 2768-1:1989, Table 2 (from memory).
    """
    return _looked_up("radii", size_mm, tolerance_class)


def general_angle_tolerance(shorter_side_mm: float, tolerance_class: str) -> float:
    """General tolerance of an angle, plus and minus.

    Parameters
    ----------
    shorter_side_mm : float
        Length of the shorter side of the angle, above 0 [mm]
    tolerance_class : {"f", "m", "c", "v"}
        Fine, medium, coarse or very coarse [-]

    Returns
    -------
    float
        Tolerance, to be taken both ways [deg]

    Raises
    ------
    Refusal
        If class or length lies outside the table.

    Examples
    --------
    >>> general_angle_tolerance(25.0, "m"), general_angle_tolerance(8.0, "c")
    (0.5, 1.5)

    References
    ----------
    .. [1] ISO 2768-1:1989, Table 3 (from memory).
    """
    return _looked_up("angles", shorter_side_mm, tolerance_class) / 60


def general_form_tolerance(form: str, length_mm: float, tolerance_class: str) -> float:
    """General tolerance of form and position: the width of the zone.

    Parameters
    ----------
    form : str
        "flatness" (and straightness), "perpendicularity", "symmetry" or
        "run-out" [-]
    length_mm : float
        Length that decides, above 0 up to and including 3000; for
        perpendicularity the shorter side [mm]
    tolerance_class : {"H", "K", "L"}
        Class of ISO 2768-2 [-]

    Returns
    -------
    float
        Width of the zone [mm]

    Raises
    ------
    Refusal
        If form, class or length lies outside the tables.

    Notes
    -----
    Run-out does not depend on the length. Class K is 0.2; a figure of 0.1 for
    it, which is often copied, belongs to class H.

    Examples
    --------
    >>> general_form_tolerance("flatness", 25.0, "K"), general_form_tolerance("run-out", 25.0, "K")
    (0.1, 0.2)

    References
    ----------
    .. [1] ISO 2768-2:1989, Tables 1 to 4 (from memory).
    """
    if form not in FORMS:
        raise Refusal(f'"{form}" is not in ISO 2768-2; it holds {", ".join(FORMS)}.', nearest(form, FORMS))
    return _looked_up(form, length_mm, tolerance_class)


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
    >>> source().year
    '1989'

    References
    ----------
    .. [1] The [source] head of general_tolerances.toml.
    """
    return _table().source


@cache
def _table() -> Table:
    return read_table(Path(__file__).with_name("general_tolerances.toml"))


def _looked_up(table: str, size_mm: float, tolerance_class: str) -> float:
    figures = _table().figures[table]
    part = _PART.get(table, "ISO 2768-2")
    classes = [name for name in figures if name not in ("over", "steps")]
    if tolerance_class not in classes:
        raise Refusal(
            f'The class is "{tolerance_class}"; {part} has {", ".join(classes)} for {table}.',
            f"Choose one of {', '.join(classes)}.",
        )
    smallest, bounds = figures["over"], figures["steps"]
    within = size_mm >= smallest if smallest else size_mm > 0
    if not within or not size_mm <= bounds[-1]:
        raise Refusal(
            f"The size is {size_mm:g} mm; {part} gives {table} from {smallest:g} to {bounds[-1]:g} mm.",
            "Write the tolerance at the size itself.",
        )
    value = figures[tolerance_class][next(i for i, bound in enumerate(bounds) if size_mm <= bound)]
    if value is False:
        raise Refusal(
            f"Class {tolerance_class} has no figure for {size_mm:g} mm; {part} prints a dash there.",
            "Take class m, or write the tolerance at the size itself.",
        )
    return float(value)
