"""The half-section of a turned part: one closed polygon in (z, r), r at or above 0."""

from __future__ import annotations

from shapely import Polygon
from shapely.geometry.polygon import orient

from tommybar.refusals import Refusal
from tommybar.shapes.features import TurnedShape
from tommybar.shapes.inside import bores_section, recess_section
from tommybar.shapes.metal import Metal
from tommybar.shapes.outside import outside_section

SPECK = 1e-6  # what float leaves between shapes that touch [mm2]
ROUNDING = 1e-10  # corners nearer to a straight side than this are not corners [mm]


def half_section(shape: TurnedShape, metal: Metal = "target") -> Polygon:
    """Half-section of a turned part in (z from face A, r).

    Threads stand at their major diameter outside and at the tapping drill
    inside; knurls at the plain diameter. Holes on a circle and cross holes
    are not cut out.

    Parameters
    ----------
    shape : TurnedShape
        The part's features with their figures [mm]
    metal : {"target", "most", "least"}, optional
        Toleranced diameters at the figure that is aimed at, or so that most
        or least metal stands within their limits. "least" leaves corner
        radii of recesses sharp, since a stated corner is the largest allowed;
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
    section = outside_section(shape, metal)
    for recess in shape.recesses:
        section = section.difference(recess_section(recess, shape.length.value, sharp=metal == "least"))
    bored = bores_section(shape, metal)
    if bored is not None:
        section = section.difference(bored)
    pieces = [piece for piece in getattr(section, "geoms", [section]) if piece.area > SPECK]
    if len(pieces) == 1 and pieces[0].is_valid and not pieces[0].interiors:
        return orient(pieces[0].simplify(ROUNDING))
    raise Refusal(
        _why_not(section), "Look at the bores, recesses and grooves: somewhere the wall is cut through."
    )


def _why_not(section: Polygon) -> str:
    """What is wrong with a section that is not one piece of metal."""
    if section.area <= SPECK:
        return "Nothing is left of the part's half-section; it must be one piece of metal."
    parts = [part for part in getattr(section, "geoms", [section]) if part.area > SPECK]
    if len(parts) > 1:
        areas = " and ".join(f"{part.area:.1f} mm2" for part in sorted(parts, key=lambda p: -p.area)[:3])
        return f"The half-section falls into {len(parts)} pieces ({areas}); it must be one."
    return "The half-section encloses a cavity that no tool can reach; it must be one closed outline."
