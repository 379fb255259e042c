"""A drawing sheet as DXF R2010, the part at full size, with real dimensions and layers.

Paper millimetres are divided by the drawing's scale, so that what is measured
in the file is the part itself and the frame round it grows with it. The
dimensions are DIMENSION entities whose picture is the sheet's own. A sheet in
inches is written in inches.
"""

from __future__ import annotations

import io
import math
from typing import Any

from tommybar.pack.lettering import CAPITAL, printable
from tommybar.pack.marks import dimension_marks
from tommybar.pack.sheet import Angular, Arc, Area, Dimension, Kind, Line, Mark, Point, Radial, Sheet, Text
from tommybar.pack.units import INCH

LAYERS: dict[Kind, str] = {
    "thick": "OUTLINE",
    "cut": "OUTLINE",
    "heavy": "FRAME",
    "rule": "FRAME",
    "thin": "THIN",
    "chain": "CENTRE",
    "dashed": "HIDDEN",
    "hatch": "HATCH",
}
WEIGHTS: dict[str, int] = {  # hundredths of a millimetre, from the values that DXF knows
    "OUTLINE": 50,
    "FRAME": 25,
    "THIN": 18,
    "CENTRE": 18,
    "HIDDEN": 25,
    "HATCH": 13,
    "DIMENSIONS": 18,
    "TEXT": 18,
}
STYLE = "SIZES"


def dxf_text(sheet: Sheet) -> str:
    """The whole DXF file as text, the same for the same sheet."""
    import ezdxf  # heavy, and only wanted when a pack is written
    from ezdxf import options

    options.write_fixed_meta_data_for_testing = True
    doc = ezdxf.new("R2010", setup=False)
    inch = sheet.unit == "in"
    doc.units = ezdxf.units.IN if inch else ezdxf.units.MM
    doc.header["$MEASUREMENT"] = 0 if inch else 1
    _set_up(doc, sheet.scale * (INCH if inch else 1.0))
    writer = _Writer(doc.modelspace(), sheet)
    for mark in sheet.marks:
        writer.put(mark)
    stream = io.StringIO()
    doc.write(stream)
    return stream.getvalue()


def _set_up(doc: Any, scale: float) -> None:
    """Layers, line patterns, the style of words and of dimensions."""
    doc.linetypes.add("CHAIN", [9.2 / scale, 6.0 / scale, -1.2 / scale, 0.8 / scale, -1.2 / scale])
    doc.linetypes.add("DASH", [3.6 / scale, 2.4 / scale, -1.2 / scale])
    for layer, weight in WEIGHTS.items():
        pattern = {"CENTRE": "CHAIN", "HIDDEN": "DASH"}.get(layer, "CONTINUOUS")
        doc.layers.add(layer, color=7, linetype=pattern, lineweight=weight)
    doc.styles.add(STYLE, font="txt")
    style = doc.dimstyles.add(STYLE)
    style.set_arrows(blk="", blk1="", blk2="")
    for name, paper in (
        ("dimtxt", 2.8), ("dimasz", 2.8), ("dimexe", 1.8), ("dimexo", 0.8), ("dimgap", 0.9), ("dimdli", 7.6),
    ):  # fmt: skip
        style.set_dxf_attrib(name, paper / scale)
    for name, value in (
        ("dimtxsty", STYLE), ("dimdec", 3), ("dimzin", 8), ("dimtad", 1), ("dimtih", 0), ("dimtoh", 0),
        ("dimtmove", 2), ("dimlfac", 1.0), ("dimscale", 1.0), ("dimdsep", ord(".")),
    ):  # fmt: skip
        style.set_dxf_attrib(name, value)


class _Writer:
    """Puts marks into a model space."""

    def __init__(self, space: Any, sheet: Sheet) -> None:
        self.space = space
        self.sheet = sheet
        self.scale = sheet.scale * (INCH if sheet.unit == "in" else 1.0)
        self.height = sheet.height

    def at(self, point: Point) -> Point:
        """Paper place to model place: y up, full size."""
        return (point[0] / self.scale, (self.height - point[1]) / self.scale)

    def put(self, mark: Mark) -> None:
        """Write one mark."""
        if isinstance(mark, Line):
            self._polyline(mark.points, mark.kind, mark.closed)
        elif isinstance(mark, Arc):
            self._arc(mark)
        elif isinstance(mark, Area):
            self._area(mark)
        elif isinstance(mark, Text):
            self._text(mark)
        else:
            self._dimension(mark)

    def _polyline(self, points: tuple[Point, ...], kind: Kind, closed: bool) -> None:
        layer = LAYERS[kind]
        places = [self.at(p) for p in points]
        if len(places) == 2 and not closed:
            self.space.add_line(*places, dxfattribs={"layer": layer})
        else:
            self.space.add_lwpolyline(places, close=closed, dxfattribs={"layer": layer})

    def _arc(self, one: Arc) -> None:
        attribs = {"layer": LAYERS[one.kind]}
        centre, radius = self.at(one.centre), one.radius / self.scale
        if abs(one.end - one.start) >= 360.0:
            self.space.add_circle(centre, radius, dxfattribs=attribs)
        else:
            self.space.add_arc(centre, radius, one.start, one.end, dxfattribs=attribs)

    def _area(self, one: Area) -> None:
        if one.fill not in ("none", "white"):
            hatch = self.space.add_hatch(color=7, dxfattribs={"layer": "HATCH"})
            if one.fill in ("hatch", "hatch2"):
                angle = 45.0 if one.fill == "hatch" else 135.0
                gap = one.spacing / self.scale
                step = (-gap * math.sin(math.radians(angle)), gap * math.cos(math.radians(angle)))
                hatch.set_pattern_fill("LINES", color=7, definition=[[angle, (0.0, 0.0), step, []]])
            for ring in one.rings:
                hatch.paths.add_polyline_path([self.at(p) for p in ring], is_closed=True)
        if one.kind:
            for ring in one.rings:
                self._polyline(ring, one.kind, True)

    def _text(self, one: Text) -> None:
        attribs = {
            "layer": "TEXT",
            "style": STYLE,
            "height": CAPITAL * one.size / self.scale,
            "rotation": 90.0 if one.turned else 0.0,
        }
        if one.anchor == "start":
            attribs["insert"] = self.at(one.at)
        else:
            attribs["halign"] = 1 if one.anchor == "middle" else 2
            attribs["insert"] = attribs["align_point"] = self.at(one.at)
        self.space.add_text(printable(one.words), dxfattribs=attribs)

    def _dimension(self, one: Dimension | Radial | Angular) -> None:
        """A true dimension that measures the part; its picture is the sheet's own."""
        common: dict[str, Any] = {
            "text": "\\P".join(_dimension_words(text.words) for text in one.words),
            "dimstyle": STYLE,
            "dxfattribs": {"layer": "DIMENSIONS"},
        }
        if not isinstance(one, Angular) and one.view and one.view != self.sheet.scale:
            common["override"] = {
                "dimlfac": self.sheet.scale / one.view
            }  # a detail is drawn larger than it is
        if isinstance(one, Radial):
            made = self.space.add_radius_dim(center=self.at(one.centre), mpoint=self.at(one.point), **common)
        elif isinstance(one, Angular):
            vertex = self.at(one.vertex)
            a, b = (self._beyond(vertex, self.at(p), one.radius / self.scale) for p in (one.a, one.b))
            made = self.space.add_angular_dim_3p(
                base=self._between(vertex, a, b), center=vertex, p1=a, p2=b, **common
            )
        else:
            made = self._linear(one, common)
        made.render()
        picture = made.dimension.get_geometry_block()
        for entity in list(picture):
            picture.delete_entity(entity)
        writer = _Writer(picture, self.sheet)
        for mark in dimension_marks(one):
            writer.put(mark)

    def _linear(self, one: Dimension, common: dict[str, Any]) -> Any:
        a, b = self.at(one.a), self.at(one.b)
        upright = one.along == "y"
        if upright and a[1] > b[1]:
            a, b = b, a
        base = (one.at / self.scale, a[1]) if upright else self.at((one.a[0], one.at))
        return self.space.add_linear_dim(
            base=base, p1=a, p2=b, angle=90 if upright else 0, location=self._middle(one), **common
        )

    def _beyond(self, vertex: Point, point: Point, radius: float) -> Point:
        """The point of the same direction at a radius."""
        away = math.dist(vertex, point) or 1.0
        return (
            vertex[0] + (point[0] - vertex[0]) * radius / away,
            vertex[1] + (point[1] - vertex[1]) * radius / away,
        )

    def _between(self, vertex: Point, a: Point, b: Point) -> Point:
        """The middle of the arc from a counter-clockwise to b."""
        first, last = (math.atan2(p[1] - vertex[1], p[0] - vertex[0]) for p in (a, b))
        half = first + (last - first) % (2 * math.pi) / 2
        radius = math.dist(vertex, a)
        return (vertex[0] + radius * math.cos(half), vertex[1] + radius * math.sin(half))

    def _middle(self, one: Dimension | Radial | Angular) -> Point:
        """The middle of the dimension's words."""
        boxes = [text.box for text in one.words]
        left, top = min(b[0] for b in boxes), min(b[1] for b in boxes)
        right, bottom = max(b[2] for b in boxes), max(b[3] for b in boxes)
        return self.at(((left + right) / 2, (top + bottom) / 2))


def _dimension_words(words: str) -> str:
    return printable(words).replace("Ø", "%%c").replace("±", "%%p").replace("°", "%%d").replace("–", "-")
