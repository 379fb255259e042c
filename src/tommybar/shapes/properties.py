"""What a part weighs and how hard it is to turn: the record that weighing gives."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class MassProperties:
    """Mass and inertia of one part.

    Turned parts: ``centre`` is z from face A, ``inertia_axis`` is about the
    part's own axis, ``inertia_across`` about an axis through the centre of
    mass square to it (the mean over all directions), and ``off_axis`` says
    how far the centre of mass lies from the axis. Plates: z is the depth
    below the top face, the axis runs through the centre of mass, and
    ``off_axis`` is the centre in length and width from the lower left corner.
    """

    volume: float  # [mm3]
    mass: float  # [g]
    centre: float  # [mm]
    inertia_axis: float  # [g mm2]
    inertia_across: float  # [g mm2]
    off_axis: tuple[float, float] = (0.0, 0.0)  # [mm]

    @property
    def unbalance(self) -> float:
        """Mass times distance of the centre of mass from the axis; turned parts only [g mm]."""
        return self.mass * float((self.off_axis[0] ** 2 + self.off_axis[1] ** 2) ** 0.5)
