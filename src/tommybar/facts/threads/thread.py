"""One thread: its designation and the diameters that follow from its form."""

from __future__ import annotations

from dataclasses import dataclass
from math import floor, pi

from tommybar.facts.table import Source
from tommybar.facts.threads.profile import Profile

INCH = 25.4  # [mm]


@dataclass(frozen=True)
class Thread:
    """One size of one thread series, with the diameters as its standard prints them."""

    designation: str  # "M6", "1/4-20 UNC", "2 BA"
    series: str  # "ISO metric coarse", "UNC", "BA" ...
    major: float  # nominal diameter [mm]
    pitch: float  # [mm]
    pitch_diameter: float  # basic pitch (effective) diameter [mm]
    minor: float  # basic minor diameter of the internal thread, D1 [mm]
    core: float  # root diameter of the external thread, d3 [mm]
    stress_area: float  # area that a pull is reckoned on [mm2]
    tapping_drill: float  # drill that the series' own table gives [mm]
    tapping_drill_name: str  # "5 mm", "#7", "F"
    tapping_drill_rule: str  # whose table or which rule
    flank_angle: float  # included [deg]
    threads_per_inch: float | None  # None for series that are defined by pitch
    profile: Profile
    source: Source


def printed(value: float, decimals: int) -> float:
    """A figure rounded as tables print it: half of the last place goes up.

    Parameters
    ----------
    value : float
        Figure, 0 or above [any unit]
    decimals : int
        Places to keep

    Returns
    -------
    float
        The rounded figure [same unit]

    Examples
    --------
    >>> printed(0.00485, 4), printed(0.00484, 4)
    (0.0049, 0.0048)

    References
    ----------
    .. [1] ASME B1.1, rule for rounding (from memory).
    """
    scale: int = 10**decimals
    return floor(value * scale + 0.5 + 1e-6) / scale


def worked_thread(
    *,
    designation: str,
    series: str,
    major: float,
    pitch: float,
    inch: bool,
    drill: float,
    drill_name: str,
    drill_rule: str,
    threads_per_inch: float | None,
    profile: Profile,
    source: Source,
) -> Thread:
    """A thread worked out from its form, diameters rounded as its standard prints them.

    Metric series print 0.001 mm, inch series 0.0001 in. The stress area is
    taken from the form, not from rounded diameters.
    """

    def diameter(depth: float) -> float:
        exact = major - depth * pitch
        return round(printed(exact / INCH, 4) * INCH, 6) if inch else printed(exact, 3)

    return Thread(
        designation=designation,
        series=series,
        major=major,
        pitch=pitch,
        pitch_diameter=diameter(profile.pitch_diameter),
        minor=diameter(profile.minor),
        core=diameter(profile.core),
        stress_area=pi / 4 * (major - profile.stress * pitch) ** 2,
        tapping_drill=drill,
        tapping_drill_name=drill_name,
        tapping_drill_rule=drill_rule,
        flank_angle=profile.flank_angle,
        threads_per_inch=threads_per_inch,
        profile=profile,
        source=source,
    )
