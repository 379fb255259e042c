"""What stands beside the picture: parts list, fits, order of assembly."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from tommybar.assembly.order import Order
from tommybar.design.model import FitRelation, Part, SizedDesign
from tommybar.pack.grid import Column
from tommybar.pack.units import Reader
from tommybar.shapes.features import Dim

PARTS = (
    Column("No", align="end", bold=True), Column("part"), Column("off", align="end"), Column("material"),
    Column("stock"), Column("sheet", align="end"),
)  # fmt: skip
FITS = (
    Column("hole"),
    Column("its limits"),
    Column("shaft"),
    Column("its limits"),
    Column("fit"),
    Column("play"),
)
CLOSE_FITS = (Column("fit"), Column("hole"), Column("shaft"), Column("play"))  # where there is little width
STEPS = (Column("step", align="end", bold=True), Column("what is done"), Column("stays for good"))


def part_rows(
    parts: Sequence[Part], stock: Mapping[str, str], sheets: Mapping[str, int]
) -> list[tuple[str, ...]]:
    """Made parts with their stock and sheet, then bought ones with their designation."""
    rows: list[tuple[str, ...]] = []
    for number, part in enumerate(parts, 1):
        bought = part.shape is None
        rows.append(
            (
                str(number),
                part.name.replace("_", " "),
                str(part.count),
                "" if bought else part.material,
                part.bought if bought else stock.get(part.name, ""),
                "bought" if bought else str(sheets.get(part.name, "")),
            )
        )
    return rows


def listed(design: SizedDesign) -> tuple[Part, ...]:
    """The parts in the order of the list: made ones first."""
    made = [part for part in design.parts if part.shape is not None]
    return (*made, *(part for part in design.parts if part.shape is None))


def fit_rows(design: SizedDesign, sizes: Mapping[str, Dim], reader: Reader) -> list[tuple[str, ...]]:
    """Each fit with the limits of both, and the play between them: below 0 it is interference."""
    rows: list[tuple[str, ...]] = []
    for fit in design.fits:
        hole, shaft = sizes.get(fit.hole), sizes.get(fit.shaft)
        rows.append(
            (
                _named(fit.hole), _limits(hole, reader), _named(fit.shaft), _limits(shaft, reader),
                " ".join(one for one in (fit.zones, fit.joint) if one), _play(fit, hole, shaft, reader),
            )
        )  # fmt: skip
    return rows


def close_fit_rows(rows: Sequence[tuple[str, ...]]) -> list[tuple[str, ...]]:
    """Rows of fits in fewer columns.

    Examples
    --------
    >>> close_fit_rows([("wheel bore", "10.000–10.015", "shaft seat", "9.978–10.000", "H7/h8", "+0 to +0.037")])
    [('wheel bore on shaft seat, H7/h8', '10.000–10.015', '9.978–10.000', '+0 to +0.037')]
    """
    return [
        (f"{hole} on {shaft}, {fit}" if fit else f"{hole} on {shaft}", of_hole, of_shaft, play)
        for hole, of_hole, shaft, of_shaft, fit, play in rows
    ]


def _named(name: str) -> str:
    return name.replace(".", " ").replace("_", " ")


def _limits(dim: Dim | None, reader: Reader) -> str:
    if dim is None or dim.smallest is None or dim.largest is None:
        return ""
    return "–".join(reader.limits(dim.smallest, dim.largest))


def _play(fit: FitRelation, hole: Dim | None, shaft: Dim | None, reader: Reader) -> str:
    if hole is None or shaft is None:
        return ""
    if hole.smallest is None or hole.largest is None or shaft.smallest is None or shaft.largest is None:
        return ""
    least, most = hole.smallest - shaft.largest, hole.largest - shaft.smallest
    places = 4 if reader.unit == "in" else 3
    return f"{reader.of(least):+.{places}f} to {reader.of(most):+.{places}f}"


def sizes_of(design: SizedDesign) -> dict[str, Dim]:
    """Every size of the design's parts by the name that fits use."""
    found: dict[str, Dim] = {}

    def walk(thing: object) -> None:
        if isinstance(thing, Dim):
            if thing.name:
                found.setdefault(thing.name, thing)
        elif isinstance(thing, tuple):
            for one in thing:
                walk(one)
        elif hasattr(thing, "__dataclass_fields__"):
            for field in thing.__dataclass_fields__:
                walk(getattr(thing, field))

    for part in design.parts:
        walk(part.shape)
    return found


def step_rows(order: Order) -> list[tuple[str, ...]]:
    """The steps of the assembly in words."""
    return [(str(one.number), one.words, one.lasting) for one in order.steps]
