"""Cutting tools as convex polygons about their reference point.

The reference point is the corner that is touched off; z grows away from the
chuck, r away from the axis, and the tool comes from +r. ``cut`` is what takes
metal away, ``body`` what must not touch metal, ``holder`` what stands beyond
the tool's reach: when that touches metal, the tool is too short.
"""

from __future__ import annotations

from dataclasses import dataclass

from tommybar.dryrun.axis_tools import centre_drill, countersink, reamer, slot_drill, twist_drill
from tommybar.dryrun.form_shapes import hollow_form, pointed_form, round_form
from tommybar.dryrun.sweep import Corners, Pieces
from tommybar.dryrun.turning_tools import (
    blade,
    boring_bar,
    chamfer_tool,
    file_edge,
    groove_tool,
    inside_groove_tool,
    knife,
    recess_tool,
)
from tommybar.making.cards import Step
from tommybar.shop.model import Shop, Tool

REMOVES_NOTHING = frozenset(
    {"knurling", "tap", "die", "threading", "cross-drill", "hand", "stamp", "measure", "cutter", ""}
)


@dataclass(frozen=True)
class ToolShape:
    """One tool's convex pieces, relative to its reference point [mm]."""

    kind: str
    cut: tuple[Corners, ...]
    body: tuple[Corners, ...] = ()
    holder: tuple[Corners, ...] = ()
    nose: float = 0.0
    reach: float = 0.0
    enters_bore: bool = False  # the far wall of a bore must be looked at as well


def tool_shape(step: Step, shop: Shop, directions: tuple[float, ...] = ()) -> ToolShape | None:
    """The shape of a step's tool, None for one that takes no metal from the half-section.

    ``directions`` are the ways along which it is fed [rad], so that a nose
    radius has a corner at the normal of each and cuts every wall exactly.

    Raises
    ------
    KeyError
        If the kind of tool is not known here; the caller says so in a finding.
    """
    kind = "saw" if sawn(step) else step.tool_kind
    if kind in REMOVES_NOTHING:
        return None
    tool = next((one for one in shop.tools if one.letter == step.tool_letter and step.tool_letter), None)
    pieces = _PIECES[kind](step, tool, directions, shop)
    cut, body, holder = pieces
    return ToolShape(
        kind,
        cut,
        body,
        holder,
        nose=tool.nose if tool else 0.0,
        reach=tool.reach if tool else 0.0,
        enters_bore=kind in ("boring", "inside groove"),
    )


def sawn(step: Step) -> bool:
    """Whether the piece is sawn off out of the lathe: the saw has no reach and meets no jaws."""
    return step.tool_kind == "saw" or (step.tool_kind == "parting" and step.speed == 0)


def _knife(step: Step, tool: Tool | None, directions: tuple[float, ...], shop: Shop) -> Pieces:
    left = tool is not None and tool.hand == "left"
    return knife(tool.nose if tool else 0.0, tool.shank if tool else 8.0, _out(tool, 20.0), left, directions)


def _boring(step: Step, tool: Tool | None, directions: tuple[float, ...], shop: Shop) -> Pieces:
    shank = tool.shank if tool else 8.0
    needs = tool.smallest_bore if tool and tool.smallest_bore > 0 else 1.25 * shank
    return boring_bar(tool.nose if tool else 0.0, shank, needs, _out(tool, 5 * shank), directions)


def _parting(step: Step, tool: Tool | None, directions: tuple[float, ...], shop: Shop) -> Pieces:
    width = _width(step, tool, 2.0)
    return blade(width, tool.nose if tool else 0.0, _out(tool, 8 * width), directions)


def _groove(step: Step, tool: Tool | None, directions: tuple[float, ...], shop: Shop) -> Pieces:
    width = _width(step, tool, 1.0)
    if tool is not None and tool.kind == "parting":  # a parting blade that plunges
        return _parting(step, tool, directions, shop)
    return groove_tool(
        width, tool.nose if tool else 0.0, _out(tool, 3 * width), tool.shank if tool else 8.0, directions
    )


def _saw(step: Step, tool: Tool | None, directions: tuple[float, ...], shop: Shop) -> Pieces:
    return blade(step.tool_size or shop.saw_kerf, 0.0, 1000.0, directions)


def _recess(step: Step, tool: Tool | None, directions: tuple[float, ...], shop: Shop) -> Pieces:
    width = _width(step, tool, 3.0)
    return recess_tool(width, tool.nose if tool else 0.0, _out(tool, 4 * width), directions)


def _inside_groove(step: Step, tool: Tool | None, directions: tuple[float, ...], shop: Shop) -> Pieces:
    width = _width(step, tool, 1.0)
    if tool is None:
        return inside_groove_tool(width, 0.0, 4.0, 2.0, 20.0, directions)
    return inside_groove_tool(width, tool.nose, tool.shank, tool.cuts_deep, _out(tool, 20.0), directions)


def _chamfer(step: Step, tool: Tool | None, directions: tuple[float, ...], shop: Shop) -> Pieces:
    return chamfer_tool(tool.shank if tool else 8.0, _out(tool, 20.0))


def _form(step: Step, tool: Tool | None, directions: tuple[float, ...], shop: Shop) -> Pieces:
    if tool is None or tool.kind == "threading":
        return pointed_form(tool.angle if tool else 60.0, tool.shank if tool else 8.0, _out(tool, 20.0))
    if tool.kind == "chamfer":
        return chamfer_tool(tool.shank, _out(tool, 20.0))
    if tool.leaves == "round":
        return round_form(tool.radius, tool.shank, "from its back" in step.do)
    return hollow_form(tool.radius, tool.shank, tool.reach or 2 * tool.radius, directions)


def _file(step: Step, tool: Tool | None, directions: tuple[float, ...], shop: Shop) -> Pieces:
    return file_edge()


def _drill(step: Step, tool: Tool | None, directions: tuple[float, ...], shop: Shop) -> Pieces:
    return twist_drill(step.tool_size)


def _reamer(step: Step, tool: Tool | None, directions: tuple[float, ...], shop: Shop) -> Pieces:
    return reamer(step.tool_size)


def _centre(step: Step, tool: Tool | None, directions: tuple[float, ...], shop: Shop) -> Pieces:
    return centre_drill(step.tool_size)


def _countersink(step: Step, tool: Tool | None, directions: tuple[float, ...], shop: Shop) -> Pieces:
    return countersink(step.tool_size)


def _slot_drill(step: Step, tool: Tool | None, directions: tuple[float, ...], shop: Shop) -> Pieces:
    return slot_drill(step.tool_size)


def _out(tool: Tool | None, default: float) -> float:
    return tool.reach if tool and tool.reach > 0 else default


def _width(step: Step, tool: Tool | None, default: float) -> float:
    return (tool.width if tool else 0.0) or step.tool_size or default


_PIECES = {
    "knife": _knife,
    "boring": _boring,
    "parting": _parting,
    "groove": _groove,
    "recess": _recess,
    "inside groove": _inside_groove,
    "chamfer": _chamfer,
    "saw": _saw,
    "file": _file,
    "form": _form,
    "drill": _drill,
    "reamer": _reamer,
    "centre drill": _centre,
    "countersink": _countersink,
    "slot drill": _slot_drill,
}
