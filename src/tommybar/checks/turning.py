"""Which parts turn together, about which axis, and what each adds to the inertia."""

from __future__ import annotations

from dataclasses import dataclass

from tommybar.design.model import Part, Purpose, SizedDesign
from tommybar.facts.materials import material
from tommybar.shapes.features import Cylinder, TurnedShape
from tommybar.shapes.mass import mass_properties
from tommybar.shapes.properties import MassProperties


@dataclass(frozen=True)
class Turning:
    """A part that turns: its weight, and how far its own axis lies from the one it turns about [mm]."""

    part: Part
    weight: MassProperties
    radius: float

    @property
    def inertia(self) -> float:
        """Moment of inertia about the axis it turns about [g mm2]."""
        return self.weight.inertia_axis + self.weight.mass * self.radius**2


def turning_parts(design: SizedDesign, purpose: Purpose) -> tuple[Turning, ...]:
    """The parts of a purpose that are made here, one entry for each piece.

    A part whose screw thread goes into a tapped hole on a pitch circle of
    another turning part turns with that circle's radius.
    """
    parts = [part for part in design.parts if part.name in purpose.turns and part.shape is not None]
    found = []
    for part in parts:
        assert part.shape is not None
        weight = mass_properties(part.shape, material(part.material).density)
        one = Turning(part, weight, _radius(part, parts))
        found += [one] * part.count
    return tuple(found)


def outside_threads(shape: TurnedShape) -> tuple[Cylinder, ...]:
    """Cylinders of a part that are screws."""
    return tuple(one for one in shape.outside if isinstance(one, Cylinder) and one.thread)


def _radius(part: Part, parts: list[Part]) -> float:
    if not isinstance(part.shape, TurnedShape):
        return 0.0
    threads = {one.thread for one in outside_threads(part.shape)}
    others = [one.shape for one in parts if one is not part and isinstance(one.shape, TurnedShape)]
    if any(bore.thread in threads for shape in others for bore in shape.bores):
        return 0.0
    circles = [h.circle / 2 for shape in others for h in shape.circle_holes if h.thread in threads]
    return circles[0] if circles else 0.0
