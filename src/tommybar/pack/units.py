"""Figures for the reader: millimetres or inches, rounded so that a limit is never widened.

The one door at which the pack turns house units into words.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from tommybar.facts.drawing.general_tolerances import general_tolerance
from tommybar.refusals import Refusal
from tommybar.shapes.features import Dim

INCH = 25.4  # [mm], exact
GENERAL_CLASS = "m"  # of ISO 2768-1, as the title block says
LEAST_GENERAL = 0.5  # sizes under this have no general tolerance [mm]
SHARE = 20  # rounding takes no more than one part in so many of a tolerance zone


def rounding_bound(mm: float) -> float:
    """By how much a written size without limits may differ from the size.

    A twentieth of the zone that its general tolerance leaves, so that it
    stays far inside; under 0.5 mm, where there is none, a fiftieth of
    the size.

    Parameters
    ----------
    mm : float
        The size, 0 or more [mm]

    Returns
    -------
    float
        Largest change by rounding [mm]

    Notes
    -----
    ISO 370 asks for rounding by the width of the tolerance; a twentieth of
    the zone is finer than its methods (from memory). Sizes over 2000 mm are
    held like one of 2000 mm, which is finer still.

    Examples
    --------
    >>> round(rounding_bound(22.225), 6), round(rounding_bound(0.4), 6)
    (0.02, 0.008)

    References
    ----------
    .. [1] ISO 2768-1:1989, Table 1, class m.
    """
    size = abs(mm)
    if size < LEAST_GENERAL:
        return size / 50
    return 2 * general_tolerance(min(size, 2000.0), GENERAL_CLASS) / SHARE


def _short(value: float, places: int) -> str:
    """A figure without needless noughts, a half rounded up whatever its last bit is."""
    words = f"{value + 1e-9:.{places}f}"
    words = words.rstrip("0").rstrip(".") if "." in words else words
    return "0" if words in ("-0", "") else words


@dataclass(frozen=True)
class Reader:
    """How figures are written for one reader."""

    unit: Literal["mm", "in"] = "mm"

    def __post_init__(self) -> None:
        if self.unit not in ("mm", "in"):
            raise Refusal(
                f'The unit for the pack is "{self.unit}"; it must be mm or in.', "Give --units mm or in."
            )

    def of(self, mm: float) -> float:
        """The figure in the reader's unit."""
        return mm / INCH if self.unit == "in" else mm

    def decimals(self, decimals: int) -> int:
        """Decimals written for what is written with so many in mm: inches go to a tenth of a thou at most."""
        return min(decimals + 2, 4) if self.unit == "in" else decimals

    def length(self, mm: float, decimals: int = 2) -> str:
        """A plain length without needless noughts.

        Examples
        --------
        >>> Reader().length(12.50), Reader().length(90.0), Reader("in").length(25.4)
        ('12.5', '90', '1')
        """
        words = f"{self.of(mm):.{self.decimals(decimals)}f}"
        words = words.rstrip("0").rstrip(".") if "." in words else words
        return "0" if words == "-0" else words

    def plain(self, mm: float) -> str:
        """A size without limits of its own on a drawing: to 0.001 mm, in inches to 0.001 in.

        A fourth decimal of an inch is written when the figure is exactly one
        of these, as 0.3125 is, or when three would change it by over 2 %.
        Half a thou is 0.013 mm, far inside every general tolerance.

        Examples
        --------
        >>> Reader().plain(12.3456), Reader("in").plain(7.5), Reader("in").plain(7.9375)
        ('12.346', '0.295', '0.3125')
        >>> Reader("in").plain(0.11)
        '0.0043'
        """
        if self.unit == "mm":
            return self.length(mm, 3)
        inches = mm / INCH
        exact = abs(round(inches, 4) - inches) < 1e-8
        rough = abs(round(inches, 3) - inches) > 0.02 * abs(inches)
        words = f"{inches:.{4 if exact or rough else 3}f}".rstrip("0").rstrip(".")
        return "0" if words in ("-0", "") else words

    def place(self, mm: float) -> str:
        """A place or size on a plate that the general tolerance holds: to the hundredth that a dial shows.

        Examples
        --------
        >>> Reader().place(37.8128), Reader().place(44.555), Reader("in").place(44.555)
        ('37.81', '44.56', '1.754')
        """
        return _short(mm, 2) if self.unit == "mm" else self.plain(mm)

    def free(self, mm: float) -> str:
        """A size that the general tolerance holds and nothing finer: as many digits as that is worth.

        What two decimals of a millimetre, or three or four of an inch, say
        exactly is written so. Else it is written with the fewest decimals
        that change it by no more than :func:`rounding_bound`.

        Examples
        --------
        >>> Reader().free(22.225), Reader().free(109.5375), Reader().free(0.79375)
        ('22.23', '109.54', '0.8')
        >>> Reader().free(73.92), Reader("in").free(7.9375), Reader("in").free(10.0)
        ('73.92', '0.3125', '0.394')
        """
        value, bound = self.of(mm), self.of(rounding_bound(mm))
        exact, last = (2, 3) if self.unit == "mm" else (4, 4)
        if abs(round(value, exact) - value) < 1e-8:
            return _short(value, exact)
        for places in range(3 if self.unit == "in" else 0, last):
            if abs(round(value, places) - value) <= bound:
                return _short(value, places)
        return _short(value, last)

    def limits(self, smallest: float, largest: float, decimals: int = 3) -> tuple[str, str]:
        """Both limits, the smallest rounded up and the largest rounded down.

        More decimals are written when rounding would close the interval.

        Examples
        --------
        >>> Reader().limits(7.972, 7.987)
        ('7.972', '7.987')
        >>> Reader("in").limits(7.972, 7.987, 2)
        ('0.3139', '0.3144')
        """
        if not smallest <= largest:
            raise Refusal(f"The limits are {smallest:g} and {largest:g} mm; the smaller one must come first.")
        low, high = self.of(smallest), self.of(largest)
        least = self.decimals(decimals)
        for places in range(least, least + 4):
            step = 10.0**places
            up = math.ceil(low * step - 1e-6) / step
            down = math.floor(high * step + 1e-6) / step
            if up < down or (up == down and smallest == largest):
                return f"{up:.{places}f}", f"{down:.{places}f}"
        return f"{low:.{places}f}", f"{high:.{places}f}"

    def within(self, dim: Dim, decimals: int = 2) -> str:
        """The target of a size, with as many decimals as keep it inside its limits.

        Examples
        --------
        >>> Reader().within(Dim(8.0, "", "f7", 7.972, 7.987))
        '7.98'
        >>> Reader().within(Dim(8.0, "", "p6", 8.0221, 8.0239))
        '8.023'
        """
        if dim.smallest is None or dim.largest is None:
            return self.length(dim.value, decimals)
        low, high = self.of(dim.smallest), self.of(dim.largest)
        for places in range(self.decimals(decimals), self.decimals(decimals) + 5):
            words = f"{self.of(dim.target):.{places}f}"
            if low <= float(words) <= high:
                return words
        return words
