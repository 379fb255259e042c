"""The one file that knows the solid kernel: constructions as exact boundary solids.

The kernel is an extra of the package (``solid``) and is imported when it is
first used. Cylinders are cylinders and arcs are arcs; only a coil's surface is
approximated, within the kernel's own tolerance.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from tommybar.refusals import OwnFault, Refusal
from tommybar.shapes.bought import BoughtShape
from tommybar.shapes.features import Shape
from tommybar.shapes.solids.construction import construction
from tommybar.shapes.solids.frames import HERE, Frame, Vector
from tommybar.shapes.solids.nodes import Coil, Common, Join, Less, Node, Placed, Prism, Turn
from tommybar.shapes.solids.rings import Ring, arc_of

CLOSE = 1e-10  # relative error up to which the kernel refines its integrals; at 1e-6 inertias are true to 1e-8 only
STEPS = 24  # points to a turn of a coil whose pitch changes
SHORT = 1e-7  # sides shorter than this are no sides [mm]


@dataclass(frozen=True)
class SolidProperties:
    """What the kernel finds of a solid, in the part's own frame.

    ``second`` are the integrals over the volume of x^2, y^2, z^2, xy, xz, yz
    about the centre of volume [mm5].
    """

    volume: float  # [mm3]
    centre: tuple[float, float, float]  # [mm]
    second: tuple[float, float, float, float, float, float]


def needs_the_kernel() -> None:
    """Refuse, with what to install, when the solid kernel is not there."""
    try:
        import OCP.gp  # noqa: F401
    except ImportError:
        raise Refusal(
            "STEP files are made by the solid kernel, which is not installed.",
            'Install the extra "solid" of the package: pip install "tommybar[solid]".',
        ) from None


@lru_cache(maxsize=64)
def solid_of(shape: Shape | BoughtShape) -> Any:
    """A part as a solid of the kernel, all its features cut; its frame is that of the mesh."""
    needs_the_kernel()
    return one_solid(made(construction(shape)))


def solid_properties(solid: Any) -> SolidProperties:
    """Volume, centre and second moments of a solid, integrated to a relative 1e-9 or better."""
    from OCP.BRepGProp import BRepGProp
    from OCP.GProp import GProp_GProps

    found = GProp_GProps()
    BRepGProp.VolumeProperties_s(solid, found, CLOSE, False, False)
    centre, inertia = found.CentreOfMass(), found.MatrixOfInertia()
    # the kernel's matrix is about the centre: Ixx = yy + zz, and minus the products off the diagonal
    ixx, iyy, izz = (inertia.Value(n, n) for n in (1, 2, 3))
    half = (ixx + iyy + izz) / 2
    products = tuple(-inertia.Value(a, b) for a, b in ((1, 2), (1, 3), (2, 3)))
    return SolidProperties(
        found.Mass(),
        (centre.X(), centre.Y(), centre.Z()),
        (half - ixx, half - iyy, half - izz, *products),
    )


def made(node: Node) -> Any:
    """A construction as a shape of the kernel."""
    if isinstance(node, Less):
        from OCP.BRepAlgoAPI import BRepAlgoAPI_Cut

        return _joined(BRepAlgoAPI_Cut(), [made(node.body)], [made(one) for one in node.cuts])
    if isinstance(node, Join):
        from OCP.BRepAlgoAPI import BRepAlgoAPI_Fuse

        members = [made(one) for one in node.members]
        return _joined(BRepAlgoAPI_Fuse(), members[:1], members[1:])
    if isinstance(node, Common):
        from OCP.BRepAlgoAPI import BRepAlgoAPI_Common

        return _joined(BRepAlgoAPI_Common(), [made(node.first)], [made(node.second)])
    if isinstance(node, Placed):
        return carried(made(node.body), node.at)
    if isinstance(node, Turn):
        return carried(_turned(node), node.at)
    if isinstance(node, Prism):
        return carried(_drawn_out(node), node.at)
    return carried(_coiled(node), node.at)


def _joined(operation: Any, arguments: list[Any], tools: list[Any]) -> Any:
    """One boolean of the kernel over all its bodies at once."""
    from OCP.collections import List_TopoDS_Shape

    first, second = List_TopoDS_Shape(), List_TopoDS_Shape()
    for one in arguments:
        first.Append(one)
    for one in tools:
        second.Append(one)
    operation.SetArguments(first)
    operation.SetTools(second)
    operation.SetRunParallel(False)
    operation.Build()
    if not operation.IsDone():
        raise OwnFault("The solid kernel could not join or cut the bodies of a part.")
    operation.SimplifyResult()
    return operation.Shape()


def carried(shape: Any, at: Frame) -> Any:
    """A shape of the kernel in another place; the body itself is shared."""
    from OCP.gp import gp_Trsf
    from OCP.TopLoc import TopLoc_Location

    if at == HERE:
        return shape
    place = gp_Trsf()
    place.SetValues(*at)
    return shape.Moved(TopLoc_Location(place))


def one_solid(shape: Any) -> Any:
    """The only solid of a shape."""
    from OCP.TopAbs import TopAbs_SOLID
    from OCP.TopExp import TopExp_Explorer

    found = []
    look = TopExp_Explorer(shape, TopAbs_SOLID)
    while look.More():
        found.append(look.Current())
        look.Next()
    if len(found) == 1:
        return _settled(found[0])
    if not found:
        raise Refusal("Nothing is left of the part; it must be a body of metal.")
    raise Refusal(
        f"The part falls into {len(found)} pieces; it must be one.", "Look where a cut goes through."
    )


def _settled(solid: Any) -> Any:
    """The solid with its place worked into its surfaces, as files of parts want it."""
    from OCP.BRepBuilderAPI import BRepBuilderAPI_Transform
    from OCP.TopLoc import TopLoc_Location

    where = solid.Location()
    if where.IsIdentity():
        return solid
    bare = solid.Located(TopLoc_Location())
    return BRepBuilderAPI_Transform(bare, where.Transformation(), True).Shape()


def _face(ring: Ring, upright: bool) -> Any:
    """A plane face within a ring: in x and z when it is ``upright``, else in x and y."""
    from OCP.BRepBuilderAPI import BRepBuilderAPI_MakeEdge, BRepBuilderAPI_MakeFace, BRepBuilderAPI_MakeWire
    from OCP.gp import gp_Ax2, gp_Circ, gp_Dir, gp_Pnt

    def spot(u: float, v: float) -> Any:
        return gp_Pnt(u, 0.0, v) if upright else gp_Pnt(u, v, 0.0)

    wire = BRepBuilderAPI_MakeWire()
    corners = [
        one
        for n, one in enumerate(ring)
        if math.dist(one[:2], ring[(n + 1) % len(ring)][:2]) > SHORT or len(ring) == 1
    ]
    for n, corner in enumerate(corners):
        after = corners[(n + 1) % len(corners)]
        start, end = spot(corner[0], corner[1]), spot(after[0], after[1])
        if not corner[2]:
            wire.Add(BRepBuilderAPI_MakeEdge(start, end).Edge())
            continue
        u, v, radius, _, swept = arc_of(corner, after)
        left = swept > 0
        if upright:  # x and z have y pointing away: the normal that turns left is minus y
            normal = gp_Dir(0, -1, 0) if left else gp_Dir(0, 1, 0)
        else:
            normal = gp_Dir(0, 0, 1) if left else gp_Dir(0, 0, -1)
        circle = gp_Circ(gp_Ax2(spot(u, v), normal), radius)
        wire.Add(BRepBuilderAPI_MakeEdge(circle, start, end).Edge())
    if not wire.IsDone():
        raise OwnFault("The solid kernel could not close an outline.")
    return BRepBuilderAPI_MakeFace(wire.Wire(), True).Face()


def _turned(node: Turn) -> Any:
    from OCP.BRepPrimAPI import BRepPrimAPI_MakeRevol
    from OCP.gp import gp_Ax1, gp_Dir, gp_Pnt

    axis = gp_Ax1(gp_Pnt(0, 0, 0), gp_Dir(0, 0, 1))
    face = _face(node.ring, upright=True)
    if node.angle >= 360:
        return BRepPrimAPI_MakeRevol(face, axis).Shape()
    return BRepPrimAPI_MakeRevol(face, axis, math.radians(node.angle)).Shape()


def _drawn_out(node: Prism) -> Any:
    from OCP.BRepPrimAPI import BRepPrimAPI_MakePrism
    from OCP.gp import gp_Vec

    return BRepPrimAPI_MakePrism(_face(node.ring, upright=False), gp_Vec(0, 0, node.height)).Shape()


def _coiled(node: Coil) -> Any:
    """A round wire along a helix: one pipe, smooth where the pitch changes and where a leg begins."""
    from OCP.BRepBuilderAPI import BRepBuilderAPI_MakeEdge, BRepBuilderAPI_MakeWire
    from OCP.BRepOffsetAPI import BRepOffsetAPI_MakePipeShell
    from OCP.gp import gp_Ax2, gp_Circ, gp_Dir, gp_Pnt

    path = node.path(STEPS)
    even = len(node.runs) == 1 and not node.leg
    spine = _one_pitch(node) if even else _through(path)
    start = gp_Ax2(gp_Pnt(*path[0][0]), gp_Dir(*path[0][1]))
    circle = BRepBuilderAPI_MakeWire(BRepBuilderAPI_MakeEdge(gp_Circ(start, node.wire / 2)).Edge()).Wire()
    pipe = BRepOffsetAPI_MakePipeShell(spine)
    if even:
        pipe.SetMode(gp_Dir(0, 0, 1))
    else:
        pipe.SetDiscreteMode()  # keeps the section square to the wire where its pitch changes
    pipe.Add(circle)
    pipe.Build()
    if not pipe.IsDone() or not pipe.MakeSolid():
        raise OwnFault("The solid kernel could not wind a spring.")
    return pipe.Shape()


def _one_pitch(node: Coil) -> Any:
    """An exact helix: a straight line drawn on a cylinder."""
    from OCP.BRepBuilderAPI import BRepBuilderAPI_MakeEdge, BRepBuilderAPI_MakeWire
    from OCP.BRepLib import BRepLib
    from OCP.Geom import Geom_CylindricalSurface
    from OCP.Geom2d import Geom2d_Line
    from OCP.gp import gp_Ax3, gp_Dir, gp_Dir2d, gp_Pnt, gp_Pnt2d

    turns, pitch = node.runs[0]
    surface = Geom_CylindricalSurface(gp_Ax3(gp_Pnt(0, 0, 0), gp_Dir(0, 0, 1), gp_Dir(1, 0, 0)), node.radius)
    hand = -1.0 if node.left else 1.0
    line = Geom2d_Line(gp_Pnt2d(0.0, 0.0), gp_Dir2d(hand * math.tau, pitch))
    edge = BRepBuilderAPI_MakeEdge(line, surface, 0.0, turns * math.hypot(math.tau, pitch)).Edge()
    wire = BRepBuilderAPI_MakeWire(edge).Wire()
    BRepLib.BuildCurves3d_s(wire)
    return wire


def _through(path: list[tuple[Vector, Vector, Vector]]) -> Any:
    """A smooth curve through points, with their directions at both ends."""
    from OCP.BRepBuilderAPI import BRepBuilderAPI_MakeEdge, BRepBuilderAPI_MakeWire
    from OCP.collections import HArray1_gp_Pnt
    from OCP.GeomAPI import GeomAPI_Interpolate
    from OCP.gp import gp_Pnt, gp_Vec

    points = HArray1_gp_Pnt(1, len(path))
    for n, (spot, _, _) in enumerate(path, start=1):
        points.SetValue(n, gp_Pnt(*spot))
    curve = GeomAPI_Interpolate(points, False, SHORT)
    curve.Load(gp_Vec(*path[0][1]), gp_Vec(*path[-1][1]), False)
    curve.Perform()
    return BRepBuilderAPI_MakeWire(BRepBuilderAPI_MakeEdge(curve.Curve()).Edge()).Wire()
