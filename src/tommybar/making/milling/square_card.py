"""The first card of a plate: edges, face and ends milled to size."""

from __future__ import annotations

from tommybar.design.model import Part
from tommybar.findings import Finding
from tommybar.making.cards import Blank, Card, Hold
from tommybar.making.lengths import Mm
from tommybar.making.mill_steps import MillBench
from tommybar.making.milling.edges import mill_to
from tommybar.making.milling.safety import START
from tommybar.making.practice import rule
from tommybar.shapes.features import PlateShape
from tommybar.shop.model import Mill, Shop
from tommybar.shop.vice import between_jaws, opens


def square_card(
    part: Part,
    shape: PlateShape,
    blank: Blank,
    shop: Shop,
    mill: Mill,
    gives_to: dict[str, tuple[str, ...]],
) -> tuple[Card, list[Finding]]:
    """Edges first, then the face, then the ends that every hole is measured from."""
    bench = MillBench(part, shop, mill, 1, gives_to)
    edge = rule("blank", "plate_edge")
    length, width, thick = shape.length, shape.width, shape.thickness
    if any(words == "edges across" for words, _ in blank.allowances):
        mill_to(
            bench,
            "Mill one long edge clean",
            width.value + edge,
            width,
            "width",
            edge,
            measured=False,
            along=length.value,
        )
        mill_to(
            bench,
            f"Mill the other edge to {Mm(width.value):g} wide",
            width.value,
            width,
            "width",
            edge,
            measured=True,
        )
    if blank.size > thick.value + 1e-6:
        mill_to(
            bench,
            f"Mill the face to {Mm(thick.value):g} thick",
            thick.value,
            thick,
            "thickness",
            blank.size - thick.value,
            measured=True,
        )
    mill_to(
        bench,
        "Mill one end clean and square: face A",
        length.value + edge,
        length,
        "length",
        edge,
        measured=False,
    )
    mill_to(
        bench,
        f"Mill the other end to {Mm(length.value):g} long",
        length.value,
        length,
        "length",
        edge,
        measured=True,
    )
    gripped = between_jaws("top", width.value, thick.value)
    in_vice = opens(mill, gripped)
    if not in_vice:
        too_wide(bench, gripped, "")
    hold = Hold(
        "vice, on parallels" if in_vice else "clamped to the table",
        "",
        "the two long edges" if in_vice else "its face, on packing of equal height",
        0.0,
        mill.vice_depth if in_vice else 0.0,
        thick.value,
        0.02,
        "The fixed jaw is the reference; a round bar at the moving jaw lets the work sit square."
        if in_vice
        else "An edge is set along the table with the indicator; clamps on packing of equal height.",
        "tapped down on the parallels" if in_vice else "flat on the packing, an edge along the table",
    )
    card = Card(
        part.name,
        1,
        1,
        "mill",
        "square and to size",
        "",
        hold,
        tuple(bench.steps),
        (
            "Set it to one side of the jaws, the end to be milled out by half the cutter and 2 more; "
            "turn it end for end for the other."
            if in_vice
            else "The end to be milled reaches over the packing by half the cutter and 2 more; "
            "clamps clear of the cutter's whole path.",
            "Parallels clear of the cutter.",
            *START,
        ),
        bench.drawer(),
        minutes=bench.minutes(),
        goes_wrong=(
            "The work lifts at the moving jaw: tap down, feel that both parallels are tight."
            if in_vice
            else "A clamp that lifts at its heel holds nothing: packing as high as the work.",
        ),
        why="Every hole is measured from the milled end and the fixed-jaw edge, so these come first.",
    )
    return card, bench.findings


def too_wide(bench: MillBench, gripped: float, feature: str) -> None:
    """A plate that lies flat and is wider than the vice: it is clamped down, and that is said."""
    name, opening = bench.part.name, bench.mill.vice_opening
    bench.caution(
        431,
        f"{name} is {gripped:g} mm wide, the vice opens {opening:g} mm: clamp it down.",
        feature,
        "Clamps on packing of equal height, cutter clear of them.",
        f"{gripped:g} mm",
        f"{opening:g} mm, vice opening of the shop",
    )
