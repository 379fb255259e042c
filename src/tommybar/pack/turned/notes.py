"""Notes of a turned part: edges and corners that many features share, joints, lengths made to suit."""

from __future__ import annotations

from tommybar.design.model import Part, SizedDesign
from tommybar.pack.printed import PrintedDimension
from tommybar.pack.turned.outside import commonest_corner, commonest_edge, corners_of, edges_of
from tommybar.pack.turned.saying import Saying
from tommybar.pack.units import Reader
from tommybar.pack.words import relation_notes
from tommybar.shapes.features import CircleHoles, Cylinder, TurnedShape


def turned_notes(
    part: Part, design: SizedDesign, reader: Reader, needs: tuple[str, ...], angles: bool
) -> tuple[tuple[str, ...], list[PrintedDimension]]:
    """The notes and the figures in them."""
    shape = part.shape
    assert isinstance(shape, TurnedShape)
    notes: list[str] = []
    printed: list[PrintedDimension] = []
    edge = commonest_edge(shape)
    if edge:
        size, angle = edge
        for name, which, one, own, _, _ in edges_of(shape):
            if (one, own) == edge:
                printed += _chamfer(name, which, size, angle, reader)
        for bore in shape.bores:
            if bore.edge and (bore.edge, 45.0) == edge:
                printed += _chamfer(bore.name, "edge", size, 45.0, reader)
        notes.append(_chamfer_words(size, angle, reader))
    corner = commonest_corner(shape)
    if corner:
        words = f"Radius in corners without a figure: R{reader.free(corner)} at most"
        for name, which, one, _, _ in corners_of(shape):
            if one == corner:
                say = Saying(name, reader)
                say.length("radius", which, corner)
                say.row(words)
                printed += say.printed
        notes.append(words)
    if any(isinstance(one, Cylinder) and one.dia.toleranced for one in shape.outside) or any(
        bore.dia.toleranced and not bore.thread for bore in shape.bores
    ):
        notes.append("Ra in µm, common practice".replace("µ", "u"))
    if angles and _clocked(shape):
        notes.append("Angles are seen from face A, counter-clockwise from the horizontal")
    notes += [
        f"{bore.name}: finish to size after the {bore.after} joint" for bore in shape.bores if bore.after
    ]
    notes += needs
    notes += relation_notes(part, design, reader)
    return tuple(dict.fromkeys(note.replace("_", " ") for note in notes)), printed


def _chamfer_words(size: float, angle: float, reader: Reader) -> str:
    return f"Chamfers without a figure: {reader.free(size)} × {angle:g}°"


def _chamfer(name: str, which: str, size: float, angle: float, reader: Reader) -> list[PrintedDimension]:
    say = Saying(name, reader)
    say.length("chamfer", which, size)
    say.angle(which + "_angle", angle)
    say.row(_chamfer_words(size, angle, reader))
    return say.printed


def _clocked(shape: TurnedShape) -> list[CircleHoles | object]:
    return [
        *shape.circle_holes, *shape.cross_holes, *shape.flats, *shape.keyways, *shape.bore_keyways,
        *shape.head_slots, *shape.slits, *shape.cross_slots,
    ]  # fmt: skip
