"""Hidden lines: simple bodies by hand, and whole parts against the hidden lines of the solid kernel."""

from __future__ import annotations

import math
from itertools import pairwise
from typing import Any

import numpy as np
import pytest

from tommybar.pack.projected.directions import body, lies, looked_at, mesh_in
from tommybar.pack.projected.hidden import Seen, seen
from tommybar.pack.projected.lines import view_marks
from tommybar.pack.sheet import Arc, Line
from tommybar.shapes.features import Dim, PlateHole, PlateShape, Shape
from tommybar.shapes.solids.frames import frame

from ..handmade import CRANK, WHEEL
from ..plates.handmade import BED, LINK, SLIDE

BLOCK = PlateShape(Dim(30.0), Dim(20.0), Dim(10.0))
DRILLED = PlateShape(Dim(30.0), Dim(20.0), Dim(10.0), holes=(PlateHole("hole", "top", 10.0, 8.0, Dim(6.0)),))


def view(shape: Shape, looked: Any = "top") -> Seen:
    """What is seen of a shape."""
    return seen(mesh_in(body(shape), looked_at(looked, lies(shape))))


def covered(ends: np.ndarray[Any, Any]) -> float:
    """Length of the lines that some stretches cover, those over one another counted once [mm]."""
    import shapely

    return float(shapely.union_all(shapely.linestrings(np.round(ends, 6)), grid_size=1e-5).length)


def test_a_block_from_above_is_a_rectangle() -> None:
    """30 by 20: 100 mm of line, nothing hidden that is not under it, and nothing curved."""
    marks = view_marks(view(BLOCK), 1.0)

    assert covered(view(BLOCK).visible) == pytest.approx(100.0, abs=1e-3)
    assert {one.kind for one in marks if isinstance(one, Line)} == {"thick"}


def test_an_isometric_of_a_block_has_nine_edges_seen_and_three_hidden() -> None:
    """Edges along the axes are seen at sqrt(2/3) of their length in an isometric (first principles)."""
    found = view(BLOCK, "isometric")
    shortened = math.sqrt(2 / 3)

    assert covered(found.visible) == pytest.approx(3 * (30 + 20 + 10) * shortened, rel=1e-4)
    assert covered(found.hidden) == pytest.approx((30 + 20 + 10) * shortened, rel=1e-3)


def test_a_drilled_hole_is_a_whole_circle_from_above_and_two_dashed_lines_from_the_front() -> None:
    """Radius 3 about (10, 8); from the front its sides stand at 7 and 13."""
    above = view_marks(view(DRILLED), 2.0, [(10.0, 8.0, 3.0)])
    arcs = [one for one in above if isinstance(one, Arc)]
    front = view_marks(view(DRILLED, "front"), 1.0)
    dashed = sorted(one.points[0][0] for one in front if isinstance(one, Line) and one.kind == "dashed")

    assert [(one.centre, one.radius, one.start, one.end) for one in arcs] == [
        ((20.0, -16.0), 6.0, 0.0, 360.0)
    ]
    assert dashed == pytest.approx([7.0, 13.0], abs=0.01)


def test_a_nearer_body_hides_what_is_behind_it() -> None:
    """A post in front of a wall takes its own width out of the wall's edges."""
    from tommybar.shapes.mesh import Mesh

    wall, post = body(BLOCK), body(PlateShape(Dim(4.0), Dim(40.0), Dim(2.0)))
    near = mesh_in(post, frame((1, 0, 0), (0, 1, 0), (0, 0, 1), (13.0, -10.0, 20.0)))
    far = mesh_in(wall, looked_at("top"))
    both = Mesh(
        np.concatenate([far.points, near.points]),
        np.concatenate([far.triangles, near.triangles + len(far.points)]),
    )

    assert covered(seen(both).visible) == pytest.approx(100.0 - 2 * 4.0 + 2 * (4.0 + 40.0), abs=0.05)


@pytest.mark.parametrize("part", [SLIDE, LINK, BED, WHEEL, CRANK], ids=lambda part: part.name)
def test_an_isometric_agrees_with_the_hidden_lines_of_the_solid_kernel(part: Any) -> None:
    """An outside route: the kernel works on exact faces. Every place it sees lies on a line of ours."""
    pytest.importorskip("OCP")
    import shapely

    found = view(part.shape, "isometric")
    theirs = kernel_lines(part.shape)
    ours = shapely.union_all(shapely.linestrings(found.visible)).buffer(0.08, quad_segs=2)
    kernel = shapely.MultiLineString(theirs)
    there = kernel.buffer(0.08, quad_segs=2)

    assert kernel.difference(ours).length < 0.01 * kernel.length
    lines = shapely.union_all(shapely.linestrings(found.visible))
    assert lines.difference(there).length < 0.01 * lines.length


def kernel_lines(shape: Shape) -> list[list[tuple[float, float]]]:
    """Sharp edges and outlines that the solid kernel sees in an isometric."""
    from OCP.BRepAdaptor import BRepAdaptor_Curve
    from OCP.BRepLib import BRepLib
    from OCP.GCPnts import GCPnts_QuasiUniformDeflection
    from OCP.gp import gp_Ax2, gp_Dir, gp_Pnt
    from OCP.HLRAlgo import HLRAlgo_Projector
    from OCP.HLRBRep import HLRBRep_Algo, HLRBRep_HLRToShape
    from OCP.TopAbs import TopAbs_EDGE
    from OCP.TopExp import TopExp_Explorer
    from OCP.TopoDS import TopoDS

    from tommybar.shapes.solids.kernel import carried, solid_of

    solid = carried(solid_of(shape), looked_at("isometric", lies(shape)))
    BRepLib.EncodeRegularity_s(solid, 1e-6)  # where faces run into one another smoothly there is no edge
    work = HLRBRep_Algo()
    work.Add(solid)
    work.Projector(HLRAlgo_Projector(gp_Ax2(gp_Pnt(0, 0, 0), gp_Dir(0, 0, 1), gp_Dir(1, 0, 0))))
    work.Update()
    work.Hide()
    drawn = HLRBRep_HLRToShape(work)
    runs = []
    for compound in (drawn.VCompound(), drawn.OutLineVCompound()):
        if compound is None or compound.IsNull():
            continue
        BRepLib.BuildCurves3d_s(compound)
        edges = TopExp_Explorer(compound, TopAbs_EDGE)
        while edges.More():
            curve = GCPnts_QuasiUniformDeflection(BRepAdaptor_Curve(TopoDS.Edge(edges.Current())), 0.01)
            points = [(curve.Value(n + 1).X(), curve.Value(n + 1).Y()) for n in range(curve.NbPoints())]
            if sum(math.dist(a, b) for a, b in pairwise(points)) > 1e-6:
                runs.append(points)
            edges.Next()
    return runs
