"""The half-section of a turned part as exact lines and arcs: sheets, solids and mass sums all use it."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

from tommybar.refusals import Refusal
from tommybar.shapes.curves import Piece, Ring
from tommybar.shapes.cutting import area, difference
from tommybar.shapes.features import TurnedShape
from tommybar.shapes.inside import bore_groove_ring, bore_rings, bore_taper_ring, centre_rings, cup_rings
from tommybar.shapes.metal import Metal
from tommybar.shapes.outside import outside_ring
from tommybar.shapes.ring_cuts import face_groove_ring, groove_ring, recess_ring

SPECK = 1e-6  # what float leaves between shapes that touch [mm2]
OPEN = 1e-4  # a ring whose end lies further from its start than this is not closed [mm]


@lru_cache(maxsize=512)
def profile(shape: TurnedShape, metal: Metal = "target") -> Ring:
    """Outline of the half-section in (z from face A, r), exact: an arc is an arc.

    What is turned is in it: lands with their edges and corners, grooves,
    recesses, bores, tapers, cups, centre holes. What is drilled, milled or
    sawn is not; an eccentric land stands as the circle that it swings in.
    Threads stand at their major diameter outside and at the tapping drill
    inside; knurls at the plain diameter.

    Parameters
    ----------
    shape : TurnedShape
        The part's features with their figures [mm]
    metal : {"target", "most", "least"}, optional
        Toleranced diameters at the figure that is aimed at, or so that most
        or least metal stands within their limits. "least" leaves inner corner
        radii sharp, since a stated corner is the largest allowed; "most" lets
        a bore that is finished after a joint stand undersize.

    Returns
    -------
    tuple of Line and ArcPiece
        One closed ring, counter-clockwise, from its corner nearest face A and
        the axis on; it runs along the axis where the part is solid [mm]

    Raises
    ------
    Refusal
        If the features do not make one closed, valid section.

    Examples
    --------
    >>> from tommybar.shapes.features import Arc, Dim
    >>> ball = TurnedShape(Dim(20.0), (Arc("ball", 0.0, 20.0, 0.0, 0.0, 10.0, "out", "ball"),))
    >>> [(type(one).__name__, one.start, one.end) for one in profile(ball)]
    [('Line', (0.0, 0.0), (20.0, 0.0)), ('ArcPiece', (20.0, 0.0), (0.0, 0.0))]
    """
    rings: tuple[Ring, ...] = (outside_ring(shape, metal),)
    for cut in _cuts(shape, metal):
        rings = difference(rings, cut)
    solid = [ring for ring in rings if abs(area([ring])) > SPECK]
    if len(solid) == 1 and area(solid) > 0 and _closed(solid[0]):
        return _from_face_a(solid[0])
    raise Refusal(
        _why_not(solid), "Look at the bores, recesses and grooves: somewhere the wall is cut through."
    )


def _cuts(shape: TurnedShape, metal: Metal) -> Iterator[Ring]:
    """All that is turned out of the outside form, one ring at a time."""
    length = shape.length.value
    for groove in shape.grooves:
        yield groove_ring(groove, shape, metal)
    for recess in shape.recesses:
        yield recess_ring(recess, length, sharp=metal == "least")
    for narrow in shape.face_grooves:
        yield face_groove_ring(narrow, length)
    for bore in shape.bores:
        yield from bore_rings(bore, shape, metal)
    for taper in shape.bore_tapers:
        yield bore_taper_ring(taper, length)
    for cup in shape.cups:
        yield from cup_rings(cup, shape)
    for centre in shape.centres:
        yield from centre_rings(centre, length)
    for inner in shape.bore_grooves:
        yield bore_groove_ring(inner, shape)


def _closed(ring: Ring) -> bool:
    ends = [*ring[1:], ring[0]]
    return all(
        abs(one.end[0] - other.start[0]) + abs(one.end[1] - other.start[1]) < OPEN
        for one, other in zip(ring, ends, strict=True)
    )


def _from_face_a(ring: Ring) -> Ring:
    """The ring begun at its corner with the least z, and of these the one with the least r."""

    def place(piece: Piece) -> tuple[float, float]:
        return round(piece.start[0], 6), round(piece.start[1], 6)

    first = min(range(len(ring)), key=lambda n: place(ring[n]))
    return (*ring[first:], *ring[:first])


def _why_not(rings: list[Ring]) -> str:
    """What is wrong with a section that is not one piece of metal."""
    pieces = sorted((area([ring]) for ring in rings if area([ring]) > 0), reverse=True)
    if not pieces:
        return "Nothing is left of the part's half-section; it must be one piece of metal."
    if len(pieces) > 1:
        areas = " and ".join(f"{one:.1f} mm2" for one in pieces[:3])
        return f"The half-section falls into {len(pieces)} pieces ({areas}); it must be one."
    return "The half-section encloses a cavity that no tool can reach; it must be one closed outline."
