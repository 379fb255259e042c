"""Plates and blocks: their outline and overall sizes; holes and cuts are read beside this."""

from __future__ import annotations

from tommybar.design.cut_features import build_cuts
from tommybar.design.plate_holes import build_holes
from tommybar.design.reading import TINY, Reading
from tommybar.design.written_plates import PLATE_FEATURES, WrittenBlock, WrittenOutline, WrittenPlate
from tommybar.design.yaml_file import Place
from tommybar.refusals import Refusal
from tommybar.shapes.features import Boss, Corner, Outline, PlateShape
from tommybar.shapes.outlines import Loop, extent, outline_loop, plate_loop


def build_plate(read: Reading, part: str, written: WrittenPlate | WrittenBlock, place: Place) -> PlateShape:
    """The shape of a plate or block."""
    high = "height" if isinstance(written, WrittenBlock) else "thick"
    thick = read.of(written.height if isinstance(written, WrittenBlock) else written.thick)
    length, width, outline = overall(read, written.outline, written.length, written.width, place)
    corner = read.of(written.corner)
    if corner > min(length, width) / 2 + TINY:
        what = f"The corner radius is {corner:g} mm; the plate is {length:g} x {width:g} mm."
        read.complain((*place, "corner"), what, "Make it smaller.")
        corner = 0.0
    dims = (
        read.dim(length, f"{part}.length", (*place, "length") if written.length else place),
        read.dim(width, f"{part}.width", (*place, "width") if written.width else place),
        read.dim(thick, f"{part}.{high}", (*place, high)),
    )
    plain = PlateShape(*dims, corner, outline=outline)
    read.unique(
        (one.name, (*place, key, index))
        for key in PLATE_FEATURES
        for index, one in enumerate(getattr(written, key))
    )
    loop = loop_of(plain)
    holes = build_holes(read, part, written.holes, place, plain, loop)
    return build_cuts(read, part, written, place, PlateShape(*dims, corner, holes, outline), loop)


def loop_of(plain: PlateShape) -> Loop:
    """The outline of a plate in plan; empty when a fault that has been told keeps it from being drawn."""
    try:
        if plain.length.value > 0 and plain.width.value > 0:
            return plate_loop(plain)
    except (Refusal, ValueError):
        pass
    return ()


def overall(
    read: Reading, written: WrittenOutline | None, length: object, width: object, place: Place
) -> tuple[float, float, Outline | None]:
    """Overall length and width, given or those of the outline, and the outline."""
    given = [read.of(one) if one is not None else None for one in (length, width)]  # type: ignore[arg-type]
    if written is None:
        return given[0] or 0.0, given[1] or 0.0, None
    here = (*place, "outline")
    outline = _outline(read, written)
    try:
        x1, y1, x2, y2 = extent(outline_loop(outline))
    except Refusal as refusal:
        read.wrong += read.file.complaints(here, refusal)
        return 0.0, 0.0, None
    except ValueError:  # a figure of it is nan, which has been told
        return 0.0, 0.0, None
    for way, low in (("x", x1), ("y", y1)):
        if abs(low) > TINY:
            what = f"The outline begins at {way} = {low:g} mm; it must begin at 0."
            read.complain(here, what, "Move its places so that it touches both axes.")
    for key, has, found in (("length", given[0], x2), ("width", given[1], y2)):
        if has is not None and abs(has - found) > TINY:
            what = f"The {key} is {has:g} mm; the outline is {found:g} mm."
            read.complain((*place, key), what, f"Leave {key} out, or change the outline.")
    return round(x2, 9), round(y2, 9), outline


def _outline(read: Reading, written: WrittenOutline) -> Outline:
    if written.disc is not None:
        radius = read.of(written.disc) / 2
        return Outline("disc", bosses=(Boss(radius, radius, radius),))
    if written.bosses:
        bosses = tuple(
            Boss(read.of(one.at[0]), read.of(one.at[1]), read.of(one.radius)) for one in written.bosses
        )
        return Outline("bosses", bosses=bosses)
    corners = [Corner(*(read.of(figure) for figure in one)) for one in written.polygon]
    area = sum(a.x * b.y - b.x * a.y for a, b in zip(corners, [*corners[1:], corners[0]], strict=True))
    return Outline("polygon", tuple(corners if area >= 0 else reversed(corners)))
