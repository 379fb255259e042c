"""ANSI B4.1: fits of inch work by class, in thousandths of an inch.

RC running and sliding, LC locational clearance, LT locational transition, LN
locational interference, FN force and shrink. All are on the basic hole: the
smallest hole is the nominal size.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from pathlib import Path

from tommybar.facts.fits.limits import Limits
from tommybar.facts.table import Source, Table, read_table
from tommybar.refusals import Refusal, nearest

MM_PER_INCH = 25.4


@dataclass(frozen=True)
class InchFit:
    """One fit of ANSI B4.1: deviations in thousandths of an inch about the nominal size in inches."""

    nominal_in: float  # in
    name: str  # class, "RC4"
    words: str  # "close running"
    hole_upper_thou: float  # 0.001 in; the lower deviation of the hole is 0
    shaft_lower_thou: float  # 0.001 in
    shaft_upper_thou: float  # 0.001 in

    @property
    def min_clearance_thou(self) -> float:
        """Least clearance; below nought is interference [0.001 in]."""
        return round(-self.shaft_upper_thou, 6) + 0.0

    @property
    def max_clearance_thou(self) -> float:
        """Greatest clearance; below nought is interference [0.001 in]."""
        return round(self.hole_upper_thou - self.shaft_lower_thou, 6) + 0.0

    @property
    def hole(self) -> Limits:
        """Limits of the hole [mm, um]."""
        return self._limits("hole", 0.0, self.hole_upper_thou)

    @property
    def shaft(self) -> Limits:
        """Limits of the shaft [mm, um]."""
        return self._limits("shaft", self.shaft_lower_thou, self.shaft_upper_thou)

    def _limits(self, member: str, lower: float, upper: float) -> Limits:
        return Limits(
            self.nominal_in * MM_PER_INCH, f"{self.name} {member}", lower * MM_PER_INCH, upper * MM_PER_INCH
        )


def inch_fit(nominal_in: float, name: str) -> InchFit:
    """Fit of a nominal size in a class of ANSI B4.1.

    Parameters
    ----------
    nominal_in : float
        Nominal size, over 0 up to and including 3.15 [in]
    name : str
        Class RC1 to RC9, LC1 to LC11, LT1 to LT6, LN1 to LN3, FN1 to FN5 [-]

    Returns
    -------
    InchFit
        Deviations of hole and shaft, least and greatest clearance [0.001 in]

    Raises
    ------
    Refusal
        If the class is unknown, or the size outside what its table holds.

    Notes
    -----
    A bound belongs to the step below it: 0.40 in stands in "0.24 to 0.40".

    Examples
    --------
    >>> fit = inch_fit(0.5, "RC4")
    >>> fit.hole_upper_thou, fit.shaft_lower_thou, fit.shaft_upper_thou
    (1.0, -1.3, -0.6)
    >>> fit.min_clearance_thou, fit.max_clearance_thou
    (0.6, 2.3)

    References
    ----------
    .. [1] ANSI/ASME B4.1-1967, as reprinted in Machinery's Handbook (seen;
       LC4, LC5 and the largest sizes of LC6 to LC11 from memory).
    """
    figures = _table().figures
    wanted = name.strip().upper().replace(" ", "")
    if wanted not in figures["classes"]:
        raise Refusal(
            f'"{name}" is not a fit of ANSI B4.1; its classes are RC1 to RC9, LC1 to LC11, LT1 to LT6, '
            "LN1 to LN3 and FN1 to FN5.",
            nearest(wanted, figures["classes"]),
        )
    row = figures["classes"][wanted]
    bounds, first = figures["steps"][row["steps"]], row["from"]
    smallest = bounds[first - 1] if first else 0.0
    if not smallest < nominal_in <= bounds[-1]:
        raise Refusal(
            f"The nominal size is {nominal_in:g} in; class {wanted} of ANSI B4.1 is carried here over "
            f"{smallest:g} in and up to {bounds[-1]:g} in.",
            "Give a size in this range, or write the two limits out in figures.",
        )
    step = next(index for index, bound in enumerate(bounds) if nominal_in <= bound) - first
    return InchFit(
        nominal_in=float(nominal_in),
        name=wanted,
        words=row["name"],
        hole_upper_thou=row["hole_upper"][step],
        shaft_lower_thou=row["shaft_lower"][step],
        shaft_upper_thou=row["shaft_upper"][step],
    )


def inch_fit_classes() -> tuple[str, ...]:
    """Names of all classes, loosest families first.

    Parameters
    ----------
    None

    Returns
    -------
    tuple of str
        RC1 ... FN5 [-]

    Examples
    --------
    >>> inch_fit_classes()[0], inch_fit_classes()[-1]
    ('RC1', 'FN5')

    References
    ----------
    .. [1] ANSI/ASME B4.1-1967 (seen in public reprints).
    """
    return tuple(_table().figures["classes"])


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
    'ANSI/ASME B4.1'

    References
    ----------
    .. [1] The [source] head of ansi_b4_1.toml.
    """
    return _table().source


@cache
def _table() -> Table:
    return read_table(Path(__file__).with_name("ansi_b4_1.toml"))
