"""A whole shop file. Only the first three lines must be there; the rest may be left out."""

from __future__ import annotations

from typing import Annotated, Any, Literal

from pydantic import AfterValidator, BeforeValidator, Field

from tommybar.design.figures import NotNegativeLength
from tommybar.design.validation import Entry
from tommybar.facts.materials import material
from tommybar.facts.threads import thread
from tommybar.refusals import Refusal, nearest
from tommybar.shop.amounts import Lengths, at_least_one
from tommybar.shop.centre_entries import DogEntry, SteadyEntry, TailCentreEntry
from tommybar.shop.drawer_entries import CounterboreEntry, InstrumentEntry, JawsEntry, ReamerEntry, ToolEntry
from tommybar.shop.machine_entries import LatheEntry, MillEntry
from tommybar.shop.rack_entries import StockEntry

SKILLS = (
    "arbor",
    "adhesive arbor",
    "split sleeve",
    "tapped collar",
    "expanding mandrel",
    "soft jaws",
    "between centres",
    "four-jaw clocked",
    "fixed steady",
    "travelling steady",
    "faceplate",
    "boring head",
    "dividing",
    "screw cutting",
    "hardening",
    "soldering",
)


def _known_thread(given: str) -> str:
    thread(given)
    return given


def _known_skill(given: str) -> str:
    if given not in SKILLS:
        near = nearest(given, SKILLS) or f"Known are: {', '.join(SKILLS)}."
        raise Refusal(f'"{given}" is no way of working that is planned here.', near)
    return given


def _words(given: Any) -> Any:
    return str(given) if isinstance(given, int | float) else given


def _known_material(entry: StockEntry) -> StockEntry:
    material(entry.material)
    return entry


Threads = tuple[
    Annotated[
        str, BeforeValidator(_words, json_schema_input_type=str | float), AfterValidator(_known_thread)
    ],
    ...,
]
Stock = tuple[Annotated[StockEntry, AfterValidator(_known_material)], ...]


class ShopFile(Entry):
    """Everything a shop file may say. What is None was left out."""

    tommybar: Literal[1]
    shop: Annotated[str, Field(min_length=1, max_length=80)]
    units: Literal["mm", "in"]
    note: str = ""
    lathe: LatheEntry | None = None
    mill: MillEntry | Literal["none"] | None = None
    jaws: Annotated[tuple[JawsEntry, ...], AfterValidator(at_least_one)] | None = None
    tools: tuple[ToolEntry, ...] | None = None
    drills: Lengths | None = None
    centre_drills: Lengths | None = None
    reamers: tuple[ReamerEntry, ...] | None = None
    taps: Threads | None = None
    dies: Threads | None = None
    cutters: Lengths | None = None
    countersinks: Lengths | None = None
    counterbores: tuple[CounterboreEntry, ...] = ()  # left out: there are none
    long_drills: Lengths = ()
    dogs: tuple[DogEntry, ...] = ()
    catch_plate: NotNegativeLength = 0.0
    tail_centres: tuple[TailCentreEntry, ...] = ()
    steadies: tuple[SteadyEntry, ...] = ()
    mandrels: Lengths = ()
    instruments: tuple[InstrumentEntry, ...] | None = None
    rack: Stock | None = None
    obtainable: Stock | None = None
    can: tuple[Annotated[str, AfterValidator(_known_skill)], ...] | None = None
    saw_kerf: NotNegativeLength | None = None
