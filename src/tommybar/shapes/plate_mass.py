"""What a plate or block weighs: its outline drawn out, less all that is cut in it, nothing taken twice.

Frame of a plate: x along the length, y along the width, both from the lower
left corner of the top face; z is the depth below the top face [mm].
"""

from __future__ import annotations

import math
from functools import lru_cache

from tommybar.refusals import Refusal
from tommybar.shapes.features import PlateHole, PlateShape
from tommybar.shapes.moments import Moments
from tommybar.shapes.oblique_holes import Oblique, cone, in_metal, inside_plain, leaning
from tommybar.shapes.outlines import Loop, area_moments, plate_loop
from tommybar.shapes.plan_regions import encloses
from tommybar.shapes.plate_cuts import Cut, distance
from tommybar.shapes.plate_features import feature_cuts, hole_cuts, profile_of_hole
from tommybar.shapes.plate_frames import Vector, face_frame
from tommybar.shapes.plate_volume import drawn_out, overlap, removed
from tommybar.shapes.plates import face_size
from tommybar.shapes.properties import MassProperties


@lru_cache(maxsize=256)
def plate_moments(shape: PlateShape) -> Moments:
    """Moments of a plate with all that is cut in it taken off.

    Exact for what is drawn: blind holes end in a 118-degree drill tip, tapped
    ones stand at the tapping drill. Cuts that run into one another or over
    the outline are taken together and none twice.

    Parameters
    ----------
    shape : PlateShape
        Toleranced figures count at what is aimed at [mm]

    Returns
    -------
    Moments
        Volume [mm3], first moments [mm4] and second moments [mm5]

    Raises
    ------
    Refusal
        If a feature does not fit the plate.

    Notes
    -----
    Where a slice changes with the depth and cuts meet, quadrature to 1 part
    in 10^10; a leaning hole, or the cone of a hole in a side, that meets
    another cut or leaves through another face: to 1 part in 10^7 of itself.

    Examples
    --------
    A hole of 6 mm through a block 30 x 20 x 10: 6000 - 90 pi.

    >>> from tommybar.shapes.features import Dim
    >>> hole = PlateHole("bore", "top", 15.0, 10.0, Dim(6.0))
    >>> block = PlateShape(Dim(30.0), Dim(20.0), Dim(10.0), holes=(hole,))
    >>> round(plate_moments(block).volume, 6), round(6000 - 90 * math.pi, 6)
    (5717.256661, 5717.256661)

    References
    ----------
    .. [1] First principles; the tests hold it to closed forms and to an
       independent numerical integration.
    """
    length, width, thickness = shape.length.value, shape.width.value, shape.thickness.value
    for name, figure in (("length", length), ("width", width), ("thickness", thickness)):
        if not figure > 0:
            raise Refusal(f"The {name} of the plate is {figure:g} mm; it must be above 0 mm.")
    if shape.corner > min(length, width) / 2 + 1e-9:
        raise Refusal(
            f"The corner radius is {shape.corner:g} mm; "
            f"the plate has room for {min(length, width) / 2:g} mm.",
            "Give a smaller corner radius.",
        )
    outline = plate_loop(shape)
    cuts = feature_cuts(shape, outline)
    level: list[tuple[PlateHole, Oblique]] = []
    for hole in shape.holes:
        _refuse_off_face(hole, shape, outline)
        if hole.face in ("top", "bottom") and not hole.tilt:
            cuts += hole_cuts(hole, shape)
        else:
            level.append((hole, oblique_of(hole, shape)))
    body = drawn_out(area_moments(outline), 0.0, thickness)
    kept = list(cuts)
    meeting: list[Oblique] = []
    for hole, one in level:
        others: list[Cut | Oblique] = [*kept, *(other for _, other in level if other is not one)]
        if _alone(hole, one, others, outline, thickness):
            body -= _whole(hole, one, shape)
        elif hole.tilt:
            meeting.append(one)
        else:
            cuts += hole_cuts(hole, shape)
            cones = tuple(part for part in one.stretches if part[1] != part[3])
            if cones:
                meeting.append(Oblique(one.origin, one.axis, one.across, cones))
    body -= removed(cuts, outline, thickness)
    for number, one in enumerate(meeting):
        body -= in_metal(one, outline, thickness, cuts, meeting[:number])
    return body


def plate_properties(shape: PlateShape, density_g_cm3: float) -> MassProperties:
    """Mass, centre and moments of inertia of a plate; see :func:`tommybar.shapes.mass.mass_properties`."""
    return properties_of(plate_moments(shape), density_g_cm3)


def properties_of(body: Moments, density_g_cm3: float) -> MassProperties:
    """Mass, centre and moments of inertia of a body that is no body of revolution, about its own centre."""
    grams = density_g_cm3 / 1000
    x, y, z = body.x / body.volume, body.y / body.volume, body.z / body.volume
    xx, yy = body.xx - body.volume * x * x, body.yy - body.volume * y * y
    zz = body.zz - body.volume * z * z
    return MassProperties(
        volume=body.volume,
        mass=body.volume * grams,
        centre=z,
        inertia_axis=(xx + yy) * grams,
        inertia_across=((xx + yy) / 2 + zz) * grams,
        off_axis=(x, y),
    )


def oblique_of(hole: PlateHole, shape: PlateShape) -> Oblique:
    """A hole as a body about its axis, whichever face it is in and however it leans."""
    at, lean = face_frame(shape, hole.face), math.radians(hole.tilt)
    way = math.radians(hole.towards)
    c, s, u, v = math.cos(lean), math.sin(lean), math.cos(way), math.sin(way)
    axis: Vector = at.direction(s * u, s * v, c)
    across: Vector = at.direction(c * u, c * v, -s)
    return Oblique(at.point(hole.x, hole.y), axis, across, profile_of_hole(hole, shape))


def _alone(
    hole: PlateHole, one: Oblique, others: list[Cut | Oblique], outline: Loop, thickness: float
) -> bool:
    """Whether a hole lies clear of every other cut and, but for its mouths, wholly in metal."""
    if any(overlap(one.box, other.box) for other in others):
        return False
    x1, y1, z1, x2, y2, z2 = one.box
    if not hole.tilt:
        return inside_plain(one.box, outline, thickness)
    plain = hole.face in ("top", "bottom") and not hole.sink_dia
    if hole.depth is not None and (
        (hole.face == "top" and z2 > thickness) or (hole.face == "bottom" and z1 < 0)
    ):
        return False
    return plain and inside_plain((x1, y1, 0.0, x2, y2, thickness), outline, thickness)


def _whole(hole: PlateHole, one: Oblique, shape: PlateShape) -> Moments:
    """A hole that lies alone in the metal, in closed form."""
    main, *rest = one.stretches
    if hole.tilt:
        lean = math.radians(hole.tilt)
        through = hole.depth is None
        deep = face_size(shape, hole.face).depth / math.cos(lean) if through else main[2]
        body = leaning(one, main[1], deep, lean, through)
        for stretch in rest:
            body += cone(one, stretch)
        return body
    body = cone(one, main)
    for start, r1, end, r2 in rest:
        body += cone(one, (start, r1, end, r2))
        if start < main[2]:  # a sink: the hole itself runs through it
            body -= cone(one, (start, main[1], end, main[1]))
    return body


def _refuse_off_face(hole: PlateHole, shape: PlateShape, outline: Loop) -> None:
    face = face_size(shape, hole.face)
    reach = max(hole.dia.target, hole.sink_dia) / 2 / math.cos(math.radians(hole.tilt))
    at = f"{hole.name} is {2 * reach:.4g} mm across at {hole.x:g}, {hole.y:g} mm"
    if not (
        reach <= hole.x + 1e-9
        and hole.x <= face.width - reach + 1e-9
        and reach <= hole.y + 1e-9
        and hole.y <= face.height - reach + 1e-9
    ):
        raise Refusal(
            f"{at}; it must lie inside the {hole.face} face, {face.width:g} x {face.height:g} mm.",
            "Move it inwards, or make the plate larger.",
        )
    if hole.face not in ("top", "bottom"):
        return
    x, y, _ = face_frame(shape, hole.face).point(hole.x, hole.y)
    room = min(distance(piece, x, y) for piece in outline) if encloses(outline, x, y) else 0.0
    if room < reach - 1e-9:
        raise Refusal(
            f"{at}; the outline is {room:.4g} mm from its middle.",
            "Move it inwards, or cut a slot that is open at its end.",
        )
