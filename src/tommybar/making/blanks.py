"""The blank of each part: section, size and length with every allowance named."""

from __future__ import annotations

import math

from tommybar.design.model import Part
from tommybar.facts.materials import material
from tommybar.making.cards import Blank
from tommybar.making.jobs import largest_outside
from tommybar.making.practice import rule
from tommybar.making.route import Route
from tommybar.resize.allowances import skin_allowance
from tommybar.resize.limits import may_be_picked, same_material, skin_on
from tommybar.shapes.features import Cylinder, PlateShape, TurnedShape
from tommybar.shop.model import Bar, Shop


def facing(dia: float) -> float:
    """Metal for facing one end of that diameter [mm]."""
    return rule("blank", "face_small" if dia <= rule("blank", "face_limit") else "face_large")


def round_choices(part: Part, shop: Shop, stock: str = "ask") -> list[tuple[Bar, bool]]:
    """Round bars that a turned part can come from: (bar, whether its surface may stay), best first.

    A bar of just the largest finished diameter serves when every land of that
    diameter may keep the bar's own surface: its zone within the limits asked,
    or none asked. Otherwise the smallest bar that leaves its skin.
    """
    assert isinstance(part.shape, TurnedShape)
    dia = largest_outside(part.shape)
    at_full = [f for f in part.shape.outside if isinstance(f, Cylinder) and abs(f.dia.value - dia) < 1e-6]
    untied = _may_tie(part, at_full)
    sources = [*shop.rack] if stock == "rack" else [*shop.rack, *shop.obtainable]
    found: list[tuple[tuple[float, float], Bar, bool]] = []
    for bar in sources:
        if bar.section != "round" or not same_material(bar.material, part.material):
            continue
        on_rack = bar in shop.rack
        knurled = any(f.knurl for f in at_full)
        if at_full and untied and skin_on(bar, part.shape) == 0.0:
            found.append(((0.0 if on_rack else 1.0, bar.size), bar, not knurled))
        elif bar.size >= dia + skin_allowance(bar.skin) - 1e-6:
            found.append((((0.2 if on_rack else 1.2) + (bar.size - dia) / dia, bar.size), bar, False))
    if stock == "ask" and not found:
        wanted = math.ceil(dia + skin_allowance("sawn"))
        found.append(
            (
                (9.0, wanted),
                Bar(f"{wanted} round, asked for", part.material, "round", wanted, 0.0, skin="sawn"),
                False,
            )
        )
    found.sort(key=lambda item: (item[0], item[1].name))
    return [(bar, stays) for _, bar, stays in found]


def _may_tie(part: Part, lands: list[Cylinder]) -> bool:
    """Whether the bar's surface may stand on these lands: what must run true keeps it only under limits of its own."""
    tied = {name for need in part.needs for name in (need.of, need.to)}
    return all(land.name not in tied or land.dia.toleranced for land in lands)


def picked_choices(part: Part, shop: Shop, stock: str = "ask") -> list[Bar]:
    """Bars of just the largest diameter of which some are within its limits: the last resort, with its caution."""
    assert isinstance(part.shape, TurnedShape)
    dia = largest_outside(part.shape)
    at_full = [f for f in part.shape.outside if isinstance(f, Cylinder) and abs(f.dia.value - dia) < 1e-6]
    sources = [*shop.rack] if stock == "rack" else [*shop.rack, *shop.obtainable]
    return [
        bar
        for bar in sources
        if bar.section == "round"
        and same_material(bar.material, part.material)
        and at_full
        and _may_tie(part, at_full)
        and all(may_be_picked(bar, land) for land in at_full)
    ][:1]


def turned_blank(
    part: Part, bar_dia: float, route: Route, shop: Shop, why: str, hollow: float = 0.0
) -> Blank:
    """Blank of a turned part for the route found; ``hollow`` is the bore of a tube [mm]."""
    assert isinstance(part.shape, TurnedShape)
    length = part.shape.length.value
    faces = facing(bar_dia)
    option = route.set_ups[0].option
    allowances: list[tuple[str, float]] = [("face first end", faces)]
    if option.ending == "part":
        blade = min((t.width for t in shop.tools if t.kind == "parting"), default=2.0)
        allowances += [
            ("left on the parted face", rule("blank", "part_rest")),
            ("parting blade", blade),
            ("clear of the jaws", rule("grip", "clear_part")),
            ("held in the jaws", math.ceil(option.grip)),
        ]
    elif option.ending == "saw":
        allowances += [
            ("left on the sawn face", rule("blank", "saw_rest")),
            ("saw", shop.saw_kerf),
            ("clear of the jaws", rule("grip", "clear_part")),
            ("held in the jaws", math.ceil(option.grip)),
        ]
    else:
        allowances.append(("face second end", faces))
    whole = length + sum(mm for _, mm in allowances)
    mass = math.pi / 4 * (bar_dia**2 - hollow**2) * whole * material(part.material).density / 1000
    return Blank(
        part.name,
        part.material,
        "tube" if hollow > 0 else "round",
        bar_dia,
        hollow,
        round(whole, 2),
        length,
        tuple(allowances),
        part.count,
        round(mass, 1),
        why,
    )


def plate_blank(part: Part, shop: Shop, stock: str = "ask") -> Blank | None:
    """Blank of a plate: a flat or plate of its thickness, and of its width if there is one."""
    assert isinstance(part.shape, PlateShape)
    shape = part.shape
    edge = rule("blank", "plate_edge")
    sources = [*shop.rack] if stock == "rack" else [*shop.rack, *shop.obtainable]
    found = []
    for bar in sources:
        if bar.section not in ("flat", "plate", "square", "sheet") or not same_material(
            bar.material, part.material
        ):
            continue
        wide = bar.size if bar.section == "square" else bar.width
        for length, width in (
            (shape.length.value, shape.width.value),
            (shape.width.value, shape.length.value),
        ):
            thick_ok = bar.size - shape.thickness.value >= -1e-6
            exact = abs(wide - width) < 1e-6
            if thick_ok and (exact or wide >= width + 2 * edge - 1e-6):
                waste = (bar.size - shape.thickness.value) * 3 + (0.0 if exact else (wide - width) / width)
                found.append(
                    (waste + (0.0 if bar in shop.rack else 0.5), bar.name, bar, length, width, exact)
                )
    if not found and stock == "ask":
        wide, thick = shape.width.value + 2 * edge, shape.thickness.value
        asked = Bar(f"{wide:g} x {thick:g} plate, asked for", part.material, "plate", thick, 0.0, width=wide)
        found.append((9.0, asked.name, asked, shape.length.value, shape.width.value, False))
    if not found:
        return None
    _, _, bar, length, width, exact = min(found, key=lambda item: item[:2])
    allowances = [("first end", edge), ("second end", edge)]
    if not exact:
        allowances.append(("edges across", 2 * edge))
    sawn_width = (bar.size if bar.section == "square" else bar.width) if exact else width + 2 * edge
    whole = length + 2 * edge
    mass = whole * sawn_width * bar.size * material(part.material).density / 1000
    if exact:
        why = f"{bar.section} {bar.size:g} x {sawn_width:g}: width and thickness as supplied"
    else:
        why = f"sawn from {bar.section} {bar.size:g} thick"
    return Blank(
        part.name,
        part.material,
        bar.section,
        bar.size,
        sawn_width,
        whole,
        length,
        tuple(allowances),
        part.count,
        round(mass, 1),
        why,
    )
