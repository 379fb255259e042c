"""The solids of a design or of one part, as figures for the view in three dimensions."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import asdict, dataclass
from functools import lru_cache

from starlette.responses import JSONResponse, Response

from tommybar.design.model import Part
from tommybar.facts.materials import material
from tommybar.refusals import Refusal, nearest
from tommybar.shapes.bought import BoughtShape
from tommybar.shapes.features import Shape, TurnedShape
from tommybar.shapes.mass import mass_properties
from tommybar.web.ask import Ask
from tommybar.web.pages.moves import Move, moves_of
from tommybar.web.pages.opened import name_of, plan_of
from tommybar.web.plans import design_of
from tommybar.web.sizes_in_words import size_words

Frame = tuple[float, ...]  # three rows of a rotation and a shift, in mm
HERE: Frame = (1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0)
LYING: Frame = (0, 0, 1, 0, 0, -1, 0, 0, 1, 0, 0, 0)  # a turned part with its axis across, face A at the left
DECIMALS = 3  # of the figures sent [mm]


@dataclass(frozen=True)
class Stand:
    """A direction from which to look, and its name on the button."""

    name: str
    from_: tuple[float, float, float]


CORNER = Stand("From the corner", (-0.75, -1.0, 0.62))
TURNED = (
    CORNER,
    Stand("From face A", (-1, 0, 0)),
    Stand("From face B", (1, 0, 0)),
    Stand("From the side", (0, -1, 0)),
)
FLAT = (CORNER, Stand("From above", (0, -1e-4, 1)), Stand("From the front", (0, -1, 0)))
WHOLE = (
    CORNER,
    Stand("From the front", (0, -1, 0)),
    Stand("From the side", (1, 0, 0)),
    Stand("From above", (0, -1e-4, 1)),
)


@dataclass(frozen=True)
class SolidPart:
    """One part: what is said of it, its triangles, and where each piece of it stands."""

    name: str
    words: str
    material: str
    family: str
    size: str
    mass: str
    page: str
    points: tuple[float, ...]  # x, y, z one after another, in the part's own frame [mm]
    triangles: tuple[int, ...]  # three points each
    frames: tuple[Frame, ...]
    apart: tuple[tuple[float, float, float], ...]  # how far each piece goes when it is pulled apart [mm]


@dataclass(frozen=True)
class Solids:
    """What the view shows."""

    title: str
    parts: tuple[SolidPart, ...]
    views: tuple[Stand, ...]
    apart: bool  # whether there is something to pull apart
    lacks: tuple[str, ...]  # what cannot be shown, in words
    moves: tuple[Move, ...] = ()


def whole(ask: Ask) -> Response:
    """The design as planned, put together."""
    from tommybar.assembly.placing import assembled

    plan = plan_of(ask)
    together = assembled(plan.design)
    parts: list[SolidPart] = []
    lacks = [f"{one.part.replace('_', ' ')} is not shown: {one.reason}." for one in together.unplaced]
    for part in plan.design.parts:
        mine = [one for one in together.placements if one.part == part.name]
        if not mine:
            continue
        found = _solid(part, ask, [one.frame for one in mine], [one.apart for one in mine])
        if isinstance(found, SolidPart):
            parts.append(found)
        else:
            lacks.append(found)
    lacks += [one[0].upper() + one[1:] for one in together.said]
    pieces = sum(len(one.frames) for one in parts)
    moves = moves_of(plan.design, [one.name for one in parts], ask.reader)
    return _sent(Solids(plan.title, tuple(parts), WHOLE, pieces > 1, tuple(dict.fromkeys(lacks)), moves))


def one_part(ask: Ask) -> Response:
    """One part as drawn."""
    design = design_of(ask.desk.files.text("designs", name_of(ask))).sized()
    name = str(ask.path["part"])
    part = next((one for one in design.parts if one.name == name and one.shape is not None), None)
    if part is None:
        known = [one.name for one in design.parts if one.shape is not None]
        raise Refusal(f'No part that is made is named "{name[:60]}".', nearest(name, known))
    turned = isinstance(part.shape, TurnedShape)
    found = _solid(part, ask, [LYING if turned else HERE], [(0.0, 0.0, 0.0)], fitted=False)
    return _sent(
        Solids(
            part.name.replace("_", " "),
            (found,) if isinstance(found, SolidPart) else (),
            TURNED if turned else FLAT,
            False,
            (found,) if isinstance(found, str) else (),
        )
    )


def _solid(
    part: Part, ask: Ask, frames: Sequence[Frame], apart: Sequence[Iterable[float]], fitted: bool = True
) -> SolidPart | str:
    """A part with its triangles; words when its solid cannot be made."""
    words = part.name.replace("_", " ")
    shape = part.standing if fitted else part.shape
    try:
        if shape is None:
            raise Refusal("it is bought, and no table gives its size")
        points, triangles = _surface(shape)
    except Refusal as refusal:
        return f"{words} is not shown: {' '.join(one.what for one in refusal.complaints)}"
    made = part.shape is not None
    return SolidPart(
        part.name,
        words,
        part.material if made else part.bought,
        material(part.material).family if made else "steel",
        size_words(part, ask.reader),
        _mass(part, len(frames)),
        f"/designs/{name_of(ask)}/parts/{part.name}" if made else "",
        points,
        triangles,
        tuple(tuple(float(one) for one in frame) for frame in frames),
        tuple((float(x), float(y), float(z)) for x, y, z in apart),
    )


@lru_cache(maxsize=96)
def _surface(shape: Shape | BoughtShape) -> tuple[tuple[float, ...], tuple[int, ...]]:
    """Points and triangles of a solid, one figure after another; kept, since only changed parts are new."""
    from tommybar.shapes.mesh import mesh_of

    mesh = mesh_of(shape)
    return (
        tuple(round(float(one), DECIMALS) for one in mesh.points.ravel()),
        tuple(int(one) for one in mesh.triangles.ravel()),
    )


def _mass(part: Part, pieces: int) -> str:
    """Mass of a piece that is made; empty where it is not told."""
    if part.shape is None:
        return ""
    try:
        mass = mass_properties(part.shape, material(part.material).density).mass
    except Refusal:
        return ""
    return f"{mass:.0f} g{' each' if pieces > 1 else ''}"


def _sent(solids: Solids) -> Response:
    record = asdict(solids)
    record["views"] = [{"name": one.name, "from": one.from_} for one in solids.views]
    return JSONResponse(record)
