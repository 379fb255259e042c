"""Figures for the reader: millimetres or inches, rounded so that a limit is never widened.

The one door at which the pack turns house units into words.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from tommybar.refusals import Refusal
from tommybar.shapes.features import Dim

INCH = 25.4  # [mm], exact


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
