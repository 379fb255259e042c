"""Short ways to ask a check: a small design, and whether a finding comes or stays away."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from tommybar.checks import check_all
from tommybar.checks.figures import Figure
from tommybar.design.model import Part, SizedDesign
from tommybar.findings import Finding
from tommybar.shapes.features import Bore, Cylinder, Dim, PlateHole, PlateShape, Shape, TurnedShape
from tommybar.shop.model import Dial, Lathe, Shop

DIAL = Dial(0.02, 2.0, "RAD")
LATHE = Lathe("bench", 90, 180, 110, 350, 20, (150, 400, 950), DIAL, DIAL, DIAL, DIAL, 13)
SHOP = Shop("test", "mm", LATHE, None, (), (), (), (), (), (), (), (), (), (), (), (), frozenset())


def part(name: str, shape: Shape | None, material: str = "mild steel", count: int = 1, **more: Any) -> Part:
    """A turned or plate part, or a bought one when there is no shape."""
    kind = "bought" if shape is None else "plate" if isinstance(shape, PlateShape) else "turned"
    return Part(name, kind, material, count, shape, **more)  # type: ignore[arg-type]


def design(parts: Sequence[Part], **relations: Any) -> SizedDesign:
    """A design of these parts."""
    return SizedDesign("test", "A", "mm", (), tuple(parts), **relations)


def found_in(*parts: Part, **relations: Any) -> tuple[Finding, ...]:
    """Every finding of a design."""
    return check_all(design(parts, **relations), SHOP)[0]


def figures_of(*parts: Part, **relations: Any) -> dict[tuple[str, str], Figure]:
    """Figures by what they are and whose."""
    return {(one.what, one.part): one for one in check_all(design(parts, **relations), SHOP)[1]}


def passes(*parts: Part, **relations: Any) -> bool:
    """Whether nothing is found but notes."""
    return not [one for one in found_in(*parts, **relations) if one.severity != "note"]


def finds(number: int, *parts: Part, **relations: Any) -> Finding:
    """The one finding of that number; fails when there is none."""
    found = [one for one in found_in(*parts, **relations) if one.number == number]
    assert found, f"{number} is not found"
    assert found[0].figure
    assert found[0].source
    return found[0]


def disc(dia: float = 60.0, long: float = 10.0, bore: float = 0.0, **features: Any) -> TurnedShape:
    """A disc with or without a bore."""
    bores = (Bore("bore", Dim(bore), "A", long, True),) if bore else ()
    return TurnedShape(
        Dim(long), (Cylinder("rim", Dim(dia), 0.0, long),), bores=features.pop("bores", bores), **features
    )


def stud(dia: float = 20.0, screw: str = "M6", screw_long: float = 10.0) -> TurnedShape:
    """A pin with a thread at its face A."""
    major = float(screw[1:])
    return TurnedShape(
        Dim(30.0),
        (
            Cylinder("thread", Dim(major), 0.0, screw_long, thread=screw),
            Cylinder("body", Dim(dia), screw_long, 30.0),
        ),
    )


def plate(*holes: PlateHole, long: float = 60.0, wide: float = 40.0, thick: float = 10.0) -> PlateShape:
    """A plate with holes."""
    return PlateShape(Dim(long), Dim(wide), Dim(thick), holes=holes)


def limits(value: float, low: float, high: float, zone: str = "") -> Dim:
    """A size with deviations in um."""
    return Dim(value, "", zone, value + low / 1000, value + high / 1000)
