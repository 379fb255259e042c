"""What an unmarked offcut may be: its weight against its size, and the magnet."""

from __future__ import annotations

import math
from dataclasses import dataclass

from tommybar.facts.materials.catalogue import material, material_names
from tommybar.refusals import Refusal


@dataclass(frozen=True)
class Likeness:
    """One material that an offcut may be, with how far its density is off.

    ``off`` is (measured - listed) / listed [%]; ``tell`` says how to know it.
    """

    name: str
    density: float  # listed [g/cm3]
    off: float  # [%]
    magnetic: str
    tell: str
    hazards: tuple[str, ...]


def density_of_piece(mass: float, diameter: float, length: float) -> float:
    """Density of a round offcut from its mass and size.

        rho = 4000 m / (pi d^2 l)

    Parameters
    ----------
    mass : float
        Mass m, above 0 [g]
    diameter, length : float
        Diameter d and length l, above 0 [mm]

    Returns
    -------
    float
        Density [g/cm3]

    Raises
    ------
    Refusal
        If a figure is not a finite number above nought.

    Notes
    -----
    A caliper reading 0.1 mm out on 20 mm diameter moves the density by 1 %.

    Examples
    --------
    Water: a round of 10 mm and 100 mm long holds 7.854 cm3.

    >>> round(density_of_piece(mass=7.854, diameter=10.0, length=100.0), 3)
    1.0

    References
    ----------
    Volume of a cylinder; source: first principles.
    """
    for label, figure, unit in (("mass", mass, "g"), ("diameter", diameter, "mm"), ("length", length, "mm")):
        if not (math.isfinite(figure) and figure > 0):
            raise Refusal(f"The {label} is {figure:g} {unit}; it must be above 0.", f"Measure the {label}.")
    return 4000.0 * mass / (math.pi * diameter**2 * length)


def likely_materials(
    density: float, within: float = 2.0, magnetic: bool | None = None
) -> tuple[Likeness, ...]:
    """Materials whose density is near a measured one, nearest first.

    Parameters
    ----------
    density : float
        Measured density, 0.5 to 25 [g/cm3]
    within : float
        How far the listed density may be off, above 0 to 20 [%]
    magnetic : bool or None
        What the magnet said: True holds, False does not; None when not tried [-]

    Returns
    -------
    tuple[Likeness, ...]
        What it may be, with departures [%]; empty when nothing is near.

    Raises
    ------
    Refusal
        If the density or the band is outside its range.

    Notes
    -----
    Density alone cannot part mild steel from silver steel or 6082 from 6061:
    read ``tell`` of each.

    Examples
    --------
    >>> [one.name for one in likely_materials(4.45, within=1.0)]
    ['titanium grade 5']
    >>> likely_materials(7.2, magnetic=True)[0].name
    'grey cast iron'

    References
    ----------
    Densities: the source of :func:`tommybar.facts.materials.material`.
    """
    if not 0.5 <= density <= 25.0:
        raise Refusal(
            f"The density is {density:g} g/cm3; solids of a workshop lie from 0.5 to 25 g/cm3.",
            "Weigh in grams, measure in mm: density_of_piece gives g/cm3.",
        )
    if not 0.0 < within <= 20.0:
        raise Refusal(
            f"The band is {within:g} %; it must be above 0 and up to 20 %.", "2 % suits a kitchen scale."
        )
    found = []
    for name in material_names():
        record = material(name)
        off = 100.0 * (density - record.density) / record.density
        holds = record.magnetic == "strongly"
        if abs(off) <= within and (magnetic is None or magnetic == holds):
            found.append(Likeness(name, record.density, off, record.magnetic, record.tell, record.hazards))
    return tuple(sorted(found, key=lambda one: abs(one.off)))
