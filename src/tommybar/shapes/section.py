"""The half-section of a turned part as a polygon in (z, r), r at or above 0: arcs are chords."""

from __future__ import annotations

from shapely import Polygon

from tommybar.refusals import Refusal
from tommybar.shapes.features import TurnedShape
from tommybar.shapes.metal import Metal
from tommybar.shapes.profile import profile


def half_section(shape: TurnedShape, metal: Metal = "target") -> Polygon:
    """Half-section of a turned part in (z from face A, r), as a polygon.

    The polygon of :func:`tommybar.shapes.profile.profile`, which is exact;
    here an arc is chords, 16 a quarter turn or more and 2 um off it at most.

    Parameters
    ----------
    shape : TurnedShape
        The part's features with their figures [mm]
    metal : {"target", "most", "least"}, optional
        Toleranced diameters at the figure that is aimed at, or so that most
        or least metal stands within their limits. "least" leaves corner
        radii sharp, since a stated corner is the largest allowed;
        "most" lets a bore that is finished after a joint stand undersize.

    Returns
    -------
    shapely.Polygon
        One closed ring without holes, counter-clockwise [mm]

    Raises
    ------
    Refusal
        If the features do not make one closed, valid section.

    Examples
    --------
    >>> from tommybar.shapes.features import Cylinder, Dim
    >>> disc = TurnedShape(Dim(10.0), (Cylinder("rim", Dim(50.0), 0.0, 10.0),))
    >>> half_section(disc).area
    250.0
    """
    section = Polygon([point for piece in profile(shape, metal) for point in piece.chords()])
    if not section.is_valid:
        raise Refusal(
            "The outline of the half-section crosses itself; it must be one closed outline.",
            "Look at the edges, grooves and bores: somewhere two of them meet.",
        )
    return section
