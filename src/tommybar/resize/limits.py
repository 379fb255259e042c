"""What the machines and the stock allow, part by part, before any route is planned.

A part that breaks one of these has no route at all at that scale; a part that
keeps them may still fail at a grip or a tool, which the plan then hands back.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

from tommybar.design.model import Part, SizedDesign
from tommybar.facts.fits.iso286 import limits_of_size
from tommybar.facts.materials import material
from tommybar.facts.stock import bright_bar_zones, ground_bar_zone
from tommybar.refusals import Refusal
from tommybar.resize.allowances import daylight, facing, recess_side_room, skin_allowance
from tommybar.resize.asked import Asked
from tommybar.shapes.features import Cylinder, PlateShape, TurnedShape
from tommybar.shop.model import Bar, Shop
from tommybar.shop.vice import between_jaws, must_be_gripped

LONG = 3.0  # a part longer than this many diameters is held at both ends, or through the spindle
FLAT = ("flat", "plate", "sheet")


def machine_limits(sized: SizedDesign, shop: Shop, stock: str) -> Iterator[Asked]:
    """Every limit of machines and stock for every part, in the order of the design."""
    for part in sized.parts:
        yield from limits_of_part(part, shop, stock)


def limits_of_part(part: Part, shop: Shop, stock: str) -> Iterator[Asked]:
    """Every limit of machines and stock for one part."""
    if isinstance(part.shape, TurnedShape):
        yield from _turned(part, part.shape, shop, stock)
    elif isinstance(part.shape, PlateShape):
        yield from _plate(part, part.shape, shop, stock)


@lru_cache(maxsize=1024)
def same_material(one: str, other: str) -> bool:
    """Whether two names stand for the same material."""
    if one.strip().casefold() == other.strip().casefold():
        return True
    try:
        return material(one).name == material(other).name
    except Refusal:
        return False


def pieces_of(shop: Shop, name: str, sections: tuple[str, ...], stock: str) -> list[Bar]:
    """Pieces of a material that may be used: the rack's, and unless ``stock`` is "rack" those sold."""
    bars = shop.rack if stock == "rack" else (*shop.rack, *shop.obtainable)
    return [bar for bar in bars if bar.section in sections and same_material(bar.material, name)]


def largest_outside(shape: TurnedShape) -> float:
    """Largest outside diameter of a turned part [mm]."""
    return max(
        one.dia.value if isinstance(one, Cylinder) else max(one.start_dia, one.end_dia)
        for one in shape.outside
    )


def own_limits(bar: Bar) -> tuple[float, float]:
    """Between which diameters a round bar is sold [mm]: ground h8, drawn h11 (the coarsest of bright bar)."""
    zone = ground_bar_zone() if bar.skin == "ground" else bright_bar_zones()[1]
    found = limits_of_size(bar.size, zone)
    return found.smallest, found.largest


def keeps_surface(bar: Bar, land: Cylinder) -> bool:
    """Whether a land may keep the bar's own surface: of its size, no thread or knurl, the bar's zone in its limits.

    Where no limits are asked the general tolerance holds, which is wider than any drawn or ground bar.
    """
    if (
        abs(bar.size - land.dia.value) > 1e-6
        or bar.skin not in ("drawn", "ground")
        or land.thread
        or land.knurl
    ):
        return False
    if land.dia.smallest is None or land.dia.largest is None:
        return True
    smallest, largest = own_limits(bar)
    return smallest >= land.dia.smallest - 1e-6 and largest <= land.dia.largest + 1e-6


def may_be_picked(bar: Bar, land: Cylinder) -> bool:
    """Whether some bars of that size lie within the land's limits and others not: one has to be measured out."""
    if (
        abs(bar.size - land.dia.value) > 1e-6
        or bar.skin not in ("drawn", "ground")
        or land.thread
        or land.knurl
    ):
        return False
    if land.dia.smallest is None or land.dia.largest is None:
        return True
    smallest, largest = own_limits(bar)
    return smallest <= land.dia.largest and largest >= land.dia.smallest


def skin_on(bar: Bar, shape: TurnedShape) -> float:
    """Metal that the bar must have over the part's largest diameter [mm].

    None when the bar is just that size and every land of it is knurled or may
    keep the bar's own surface; a screw beside such a land is turned down for
    its die from the same bar.
    """
    dia = largest_outside(shape)
    full = [one for one in shape.outside if isinstance(one, Cylinder) and abs(one.dia.value - dia) < 1e-6]
    exact = abs(bar.size - dia) < 1e-6 and bar.skin in ("drawn", "ground")
    plain = [one for one in full if not one.thread]
    if exact and plain and all(one.knurl or keeps_surface(bar, one) for one in plain):
        return 0.0
    return skin_allowance(bar.skin)


def blank_skin(part: Part, shape: TurnedShape, shop: Shop, stock: str) -> float:
    """What the blank is larger than the part's largest diameter [mm].

    Taken from the smallest piece that gives the part; where none is large
    enough, from the largest one there is; a sawn slice where there is none.
    """
    dia = largest_outside(shape)
    if part.blank_from == "tube":
        return min(
            (skin_on(bar, shape) for bar in serving_tubes(part.material, shape, shop, stock)), default=0.0
        )
    rounds = pieces_of(shop, part.material, ("round",), stock)
    able = [bar for bar in rounds if bar.size >= dia + skin_on(bar, shape) - 1e-9]
    if able:
        return skin_on(min(able, key=lambda bar: bar.size), shape)
    largest = max(rounds, key=lambda bar: bar.size, default=None)
    return skin_allowance(largest.skin if largest else "sawn")


def serving_tubes(name: str, shape: TurnedShape, shop: Shop, stock: str) -> list[Bar]:
    """Tubes of a material whose outside cleans up or stays, and whose bore is the smallest through bore drawn."""
    through = [
        one.dia.value for one in shape.bores if one.through and not one.thread and not one.dia.toleranced
    ]
    dia, inside = largest_outside(shape), min(through, default=0.0)
    smaller = [one.name for one in shape.bores if one.dia.value < inside - 1e-6]
    if not inside or smaller or shape.centres or shape.cups:
        return []
    return [
        bar
        for bar in pieces_of(shop, name, ("tube",), stock)
        if abs(bar.width - inside) < 1e-6 and bar.size >= dia + skin_on(bar, shape) - 1e-9
    ]


def _turned(part: Part, shape: TurnedShape, shop: Shop, stock: str) -> Iterator[Asked]:
    dia = largest_outside(shape)
    blank = dia + blank_skin(part, shape, shop, stock)
    name = part.name
    outside = [
        (most, jaws.name) for jaws in shop.jaws if jaws.grips == "outside" for _, most, _ in jaws.ranges
    ]
    if outside:
        most, jaws = max(outside)
        yield Asked(
            "limit", "largest jaws", name, blank, most, who=jaws, remedy="Larger jaws or a faceplate."
        )
    turning = blank + 2 * daylight()
    yield Asked(
        "limit",
        "swing over the cross-slide",
        name,
        turning,
        shop.lathe.swing_cross_slide,
        who=f"{shop.lathe.name}, with {2 * daylight():g} mm of daylight",
        remedy="Cut it with the tool reaching left of the cross-slide, or on a larger lathe.",
    )
    yield Asked("limit", "swing over the bed", name, turning, shop.lathe.swing_bed, who=shop.lathe.name)
    yield from _long(shape, name, dia, blank, shop)
    yield from _round_stock(part, shape, shop, stock)
    hollow = 0.0
    if part.blank_from == "tube":
        hollow = max((one.width for one in serving_tubes(part.material, shape, shop, stock)), default=0.0)
    yield from _bores(shape, name, shop, hollow)
    yield from _recesses(shape, name, shop)


def _long(shape: TurnedShape, name: str, dia: float, blank: float, shop: Shop) -> Iterator[Asked]:
    long = shape.length.value
    if long > LONG * dia and blank > shop.lathe.spindle_bore:
        yield Asked(
            "limit",
            "distance between centres",
            name,
            long + facing(),
            shop.lathe.between_centres,
            who=f"{shop.lathe.name}; {dia:g} mm does not pass the spindle bore of {shop.lathe.spindle_bore:g} mm",
        )


def _round_stock(part: Part, shape: TurnedShape, shop: Shop, stock: str) -> Iterator[Asked]:
    """The largest round there is; asked only when nothing may be had beyond the lists."""
    rounds = pieces_of(shop, part.material, ("round",), stock)
    if stock == "ask" or (stock == "buy" and not rounds) or part.blank_from not in ("", "round"):
        return
    dia, where = largest_outside(shape), "rack" if stock == "rack" else "rack and list of what is sold"
    needed = shape.length.value + facing()
    long_enough = [bar for bar in rounds if bar.length >= needed - 1e-9]
    what = f"largest round {part.material}"
    if not rounds:
        yield Asked("limit", what, part.name, dia, 0.0, who=f"none on the {where}")
        return
    if not long_enough:
        longest = max(bar.length for bar in rounds)
        yield Asked("limit", "length of the bar", part.name, needed, longest, who=where)
    best = max(long_enough or rounds, key=lambda bar: (bar.size - skin_on(bar, shape), bar.length, bar.name))
    yield Asked(
        "limit",
        what,
        part.name,
        dia + skin_on(best, shape),
        best.size,
        who=best.name,
        remedy="Ask around for a larger piece.",
    )


def _bores(shape: TurnedShape, name: str, shop: Shop, hollow: float = 0.0) -> Iterator[Asked]:
    """Bores that neither a drill nor the tube gives need a boring bar that enters and reaches."""
    largest_drill = max(shop.drills, default=0.0)
    reamed = [reamer.size for reamer in shop.reamers]
    bars = [tool for tool in shop.tools if tool.kind == "boring"]
    for bore in shape.bores:
        dia = bore.dia.value
        if bore.thread or dia <= largest_drill + 1e-9 or any(abs(dia - one) < 1e-6 for one in reamed):
            continue
        if bore.through and abs(dia - hollow) < 1e-6:
            continue
        depth = shape.length.value if bore.through else bore.depth
        enters = [tool for tool in bars if tool.smallest_bore <= dia + 1e-9]
        if not enters:
            needed = min((tool.smallest_bore for tool in bars), default=0.0)
            if needed:
                yield Asked("limit", f"smallest bore for a boring bar, {bore.name}", name, dia, needed, True)
            continue
        best = max(enters, key=lambda tool: tool.reach)
        yield Asked(
            "limit",
            f"reach of the boring bar, {bore.name}",
            name,
            depth,
            best.reach,
            who=f"tool {best.letter}",
        )


def _recesses(shape: TurnedShape, name: str, shop: Shop) -> Iterator[Asked]:
    tools = [tool for tool in shop.tools if tool.kind == "recess"]
    for recess in shape.recesses if tools else ():
        floor = (recess.outside - recess.inside) / 2
        best = max(
            tools,
            key=lambda tool: (
                min(floor - tool.width - recess_side_room(), 0.0) + min(tool.reach - recess.depth, 0.0),
                tool.width,
            ),
        )
        yield Asked(
            "limit",
            f"floor of {recess.name} for its tool",
            name,
            floor,
            best.width + recess_side_room(),
            True,
            who=f"tool {best.letter}, {best.width:g} mm wide",
        )
        yield Asked(
            "limit",
            f"reach of the recess tool, {recess.name}",
            name,
            recess.depth,
            best.reach,
            who=f"tool {best.letter}",
        )


def _plate(part: Part, shape: PlateShape, shop: Shop, stock: str) -> Iterator[Asked]:
    long, wide = max(shape.length.value, shape.width.value), min(shape.length.value, shape.width.value)
    if shop.mill is not None and shape.holes:
        standing = sorted({hole.face for hole in shape.holes if must_be_gripped(hole.face)})
        if standing:
            yield Asked(
                "limit",
                "opening of the mill vice",
                part.name,
                max(between_jaws(face, shape.width.value, shape.thickness.value) for face in standing),
                shop.mill.vice_opening,
                who=shop.mill.name,
                remedy="Bolt it to an angle plate.",
            )
        for face in sorted({hole.face for hole in shape.holes}):
            places = [(hole.x, hole.y) for hole in shape.holes if hole.face == face]
            spans = sorted(max(each) - min(each) for each in zip(*places, strict=True))
            yield Asked("limit", f"mill travel, {face} face", part.name, spans[1], shop.mill.travel_x)
            yield Asked("limit", f"mill cross travel, {face} face", part.name, spans[0], shop.mill.travel_y)
    pieces = pieces_of(shop, part.material, FLAT, stock)
    if stock == "ask" or (stock == "buy" and not pieces):
        return
    thick = shape.thickness.value
    fits = [bar for bar in pieces if bar.width >= wide - 1e-6 and bar.length >= long - 1e-6]
    thickest = max((fits or pieces), key=lambda bar: (bar.size, bar.width), default=None)
    bound, who = (thickest.size, thickest.name) if thickest else (0.0, "rack")
    yield Asked("limit", f"thickest {part.material}", part.name, thick, bound, who=who)
    if pieces and not fits:
        thick_enough = [bar for bar in pieces if bar.size >= thick - 1e-6] or pieces
        widest = max(thick_enough, key=lambda bar: (bar.width >= wide - 1e-6, bar.length, bar.width))
        yield Asked("limit", f"width of the {part.material}", part.name, wide, widest.width, who=widest.name)
        yield Asked(
            "limit", f"length of the {part.material}", part.name, long, widest.length, who=widest.name
        )
