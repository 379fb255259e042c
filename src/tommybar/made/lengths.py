"""A turned part with one of its cylinders made longer or shorter; what stands beyond it moves along."""

from __future__ import annotations

from dataclasses import replace

from tommybar.shapes.features import Cylinder, TurnedShape


def lengthened(shape: TurnedShape, feature: str, by: float) -> TurnedShape:
    """The shape with the outside cylinder ``feature`` longer by ``by`` [mm].

    Everything from its end on towards face B moves with it, the overall
    length too. Bores keep their depth from the face they are entered from;
    a through bore goes through as before.
    """
    grown = next(one for one in shape.outside if one.name == feature and isinstance(one, Cylinder))
    edge = grown.end - 1e-9

    def moved(z: float) -> float:
        return z + by if z >= edge else z

    length = shape.length
    return replace(
        shape,
        length=replace(
            length,
            value=length.value + by,
            smallest=None if length.smallest is None else length.smallest + by,
            largest=None if length.largest is None else length.largest + by,
        ),
        outside=tuple(replace(one, start=moved(one.start), end=moved(one.end)) for one in shape.outside),
        grooves=tuple(replace(one, start=moved(one.start), end=moved(one.end)) for one in shape.grooves),
        bores=tuple(replace(one, depth=one.depth + by) if one.through else one for one in shape.bores),
        circle_holes=tuple(
            replace(one, start=moved(one.start), end=moved(one.end)) for one in shape.circle_holes
        ),
        cross_holes=tuple(replace(one, z=moved(one.z)) for one in shape.cross_holes),
        bore_grooves=tuple(
            replace(one, start=moved(one.start), end=moved(one.end)) for one in shape.bore_grooves
        ),
        flats=tuple(replace(one, start=moved(one.start), end=moved(one.end)) for one in shape.flats),
        cross_slots=tuple(
            replace(one, start=moved(one.start), end=moved(one.end)) for one in shape.cross_slots
        ),
        keyways=tuple(replace(one, start=moved(one.start), end=moved(one.end)) for one in shape.keyways),
    )
