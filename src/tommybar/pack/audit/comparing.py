"""The audit of one sheet: what is missing, wrong, said twice, or closes a chain."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from typing import Literal

from tommybar.design.model import Part
from tommybar.pack.audit.model_sizes import Size, Sizes, bent_sizes, plate_sizes, turned_sizes
from tommybar.pack.audit.plate_parts import (
    rebuilt_plate,
    rebuilt_ring,
    rebuilt_sheet,
    rebuilt_spring,
    rebuilt_wire,
)
from tommybar.pack.audit.reading import Figure, Reading, Said, read
from tommybar.pack.audit.turned_parts import Built, Value, rebuilt_turned
from tommybar.pack.marks import plain_marks
from tommybar.pack.printed import PrintedDimension
from tommybar.pack.sheet import Angular, Dimension, Radial, Sheet, Text
from tommybar.shapes.features import (
    Dim,
    PlateShape,
    RolledRing,
    Shape,
    SheetShape,
    SpringShape,
    TurnedShape,
)

Kind = Literal["missing", "wrong", "twice", "closed chain", "not on the sheet", "of nothing"]
BESIDES = ("runout", "position", "finish")  # what is said of a size and is no size itself
SEEN = ("form", "tag")  # shapes that the view shows when no word is written
SECOND = ("half angle",)  # follow from others, and are held to where printed
TAG = "tag"  # the letter that a row of the table and a view share
ANGLES = ("angle", "start_angle", "towards")


@dataclass(frozen=True)
class Fault:
    """One thing that is amiss with a sheet."""

    kind: Kind
    feature: str
    size: str
    words: str


@dataclass(frozen=True)
class Audit:
    """What a sheet says and what is amiss with it."""

    part: str
    figures: int  # printed
    faults: tuple[Fault, ...]


def audited(part: Part, sheet: Sheet) -> Audit:
    """A sheet held to the part that it shows: every size printed, once, and within half its last digit."""
    printed = sheet.dimensions()
    assert part.shape is not None
    faults = [*faults_of(part.shape, printed), *on_the_sheet(sheet, printed)]
    return Audit(part.name, sum(any(c.isdigit() for c in one.figure) for one in printed), tuple(faults))


def faults_of(shape: Shape, printed: tuple[PrintedDimension, ...]) -> list[Fault]:
    """The part built from the printed figures and compared with itself."""
    reading = read(printed, rounded=True)
    if isinstance(shape, TurnedShape):
        sizes, made = turned_sizes(shape), rebuilt_turned(shape, reading)
    elif isinstance(shape, PlateShape):
        sizes, made = plate_sizes(shape), rebuilt_plate(shape, reading)
    else:
        sizes, made = bent_sizes(shape), _bent(shape, reading)
    faults = [Fault("missing", *one, "is not printed") for one in reading.missing]
    faults += [Fault("wrong", a, b, f'"{figure}" is no figure') for a, b, figure in reading.unreadable]
    faults += compared(sizes, made, set(reading.missing))
    faults += [Fault("closed chain", *one, "one of them follows from the others") for one in reading.closed]
    faults += [Fault("twice", a, b, f"is printed of {other} as well") for a, b, other in reading.doubled]
    counted = Counter((one.feature, one.size) for one in reading.said if _is_size(one))
    faults += [Fault("twice", *one, f"is printed {many} times") for one, many in counted.items() if many > 1]
    faults += [
        Fault("of nothing", one.feature, one.size, f'"{one.words}" says nothing that the part needs')
        for one in reading.said
        if _is_size(one) and (one.feature, one.size) not in reading.used
    ]
    return faults


def _is_size(one: Said) -> bool:
    return one.kind not in BESIDES and one.size != TAG


def _bent(shape: Shape, reading: Reading) -> Built:
    if isinstance(shape, SheetShape):
        return rebuilt_sheet(shape, reading)
    if isinstance(shape, RolledRing):
        return rebuilt_ring(shape, reading)
    if isinstance(shape, SpringShape):
        return rebuilt_spring(shape, reading)
    assert not isinstance(shape, TurnedShape | PlateShape)
    return rebuilt_wire(shape, reading)


def compared(sizes: Sizes, made: Built, missing: set[tuple[str, str]]) -> list[Fault]:
    """Sizes of the part that the sheet gives not at all, or not within half of a last digit."""
    faults: list[Fault] = []
    for key, size in sizes.items():
        if key in missing or (key[1] in SECOND and made.get(key) is None):
            continue
        value = made.get(key)
        words = _differs(key[1], size, value)
        if words == "missing":
            faults.append(Fault("missing", *key, f"is {_told(size)} and is not printed"))
        elif words:
            faults.append(Fault("wrong", *key, words))
    return faults


def _told(size: Size) -> str:
    value = size.value if isinstance(size, Dim) else size
    return f"{value:.4f}".rstrip("0").rstrip(".") if isinstance(value, float) else f'"{value}"'


def _differs(name: str, size: Size, value: Value) -> str:
    """Words where a size and what is printed of it differ; "" when they agree, "missing" when nothing is."""
    nothing = size is None or size == "" or size == 0.0
    if isinstance(size, Dim):
        nothing = False
    if value is None or value == "":
        return "" if nothing else "missing"
    if isinstance(value, str):
        return "" if size == value else f'is printed as "{value}" and is {_told(size)}'
    if size is None or isinstance(size, str):
        return f"is printed as {value.value:g} and has no figure"
    true = size.value if isinstance(size, Dim) else size
    off = abs(value.value - true)
    if name in ANGLES:
        off = abs((value.value - true + 180.0) % 360.0 - 180.0)
    if off > value.half:
        return f"is printed as {value.value:.5g} and is {true:.6g}, over half a last digit ({value.half:.2g}) off"
    return _limits_differ(size, value) if isinstance(size, Dim) and size.toleranced else ""


def _limits_differ(size: Dim, value: Figure) -> str:
    """Limits lie inside the true ones, and nearer to them than a last digit."""
    if value.limits is None:
        return f"has the limits {size.smallest:g} and {size.largest:g}, which are not printed"
    (low, digit), (high, _) = value.limits
    assert size.smallest is not None
    assert size.largest is not None
    slack = 1e-5
    inside = (
        size.smallest - slack <= low <= size.smallest + digit
        and size.largest - digit <= high <= size.largest + slack
    )
    if inside:
        return ""
    return f"is printed with the limits {low:g} and {high:g} and has {size.smallest:g} and {size.largest:g}"


def on_the_sheet(sheet: Sheet, printed: tuple[PrintedDimension, ...]) -> list[Fault]:
    """Figures that are kept as printed and do not stand on the paper, and dimensions drawn twice."""
    texts = [one.words for one in plain_marks(sheet.marks) if isinstance(one, Text)]
    paper = f" {' '.join(' '.join(texts).split())} "
    faults = []
    for one in printed:
        line = " ".join(one.words.replace("_", " ").split())
        if f" {line} " not in paper:
            faults.append(
                Fault("not on the sheet", one.feature, one.size, f'"{one.words}" is not on the paper')
            )
        elif one.size not in SEEN and one.figure not in one.words:
            faults.append(
                Fault("not on the sheet", one.feature, one.size, f'{one.figure} is not in "{one.words}"')
            )
    kept = {" ".join(one.words.split()) for one in printed}
    kept |= {f"{low}–{high}" for one in printed if one.limits for low, high in (one.limits,)}
    for mark in sheet.marks:
        for text in mark.words if isinstance(mark, Dimension | Radial | Angular) else ():
            told = " ".join(text.words.split())
            if any(c.isdigit() for c in told) and told not in kept and not told.startswith(("(", "drill Ø")):
                faults.append(
                    Fault("of nothing", "sheet", told, "stands at a dimension and is of no feature")
                )
    measures = Counter(_measured(one) for one in sheet.marks if isinstance(one, Dimension | Radial | Angular))
    for (what, value), many in measures.items():
        if many > 1:
            faults.append(
                Fault("twice", what[0], f"{value:g}", f"is drawn {many} times between the same points")
            )
    return faults


def _measured(one: Dimension | Radial | Angular) -> tuple[tuple[str, ...], float]:
    """What a drawn dimension measures, so that it is known when it is drawn again."""
    if isinstance(one, Radial):
        points, kind = (one.point, one.centre), "radius"
    elif isinstance(one, Angular):
        points, kind = (one.vertex, one.a, one.b), "angle"  # type: ignore[assignment]
    elif one.along == "x":
        points, kind = ((one.a[0], 0.0), (one.b[0], 0.0)), "length"
    else:
        points, kind = (one.a, one.b), "height"
    where = tuple(f"{x:.2f},{y:.2f}" for x, y in points)
    return (kind, *where), one.value
