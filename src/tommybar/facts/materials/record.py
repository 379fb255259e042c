"""What is known of one material."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Temper:
    """Strengths of one temper, size or standard of a material.

    ``kind`` is "minimum" (guaranteed), "typical" or "range". A figure that is
    not stated is 0.
    """

    name: str  # e.g. "T6 bar to 20 mm"
    kind: str
    yield_strength: tuple[float, float]  # low, high [MPa]
    tensile_strength: tuple[float, float]  # low, high [MPa]
    source: str


@dataclass(frozen=True)
class CuttingGroup:
    """One group of materials with the same cutting force.

    The specific cutting force at chip thickness h is kc = kc11 h^-mc.
    """

    number: str  # of VDI 3323, or a word of ours
    stuff: str
    kc11: float  # at h = 1 mm, b = 1 mm, rake 0 [MPa]
    mc: float  # [-]
    source: str


@dataclass(frozen=True)
class Material:
    """One material as it lies on the rack, at room temperature.

    ``yield_strength`` and ``tensile_strength`` are the lower, guaranteed or
    usual figures of the stock form one buys; other tempers stand in
    ``tempers``. ``machinability`` is per cent of ``machinability_base``; 0
    where nothing is published. ``melting`` is (0, 0) where it chars.
    """

    name: str
    designations: tuple[str, ...]
    family: str
    density: float  # [g/cm3]
    modulus: float  # of elasticity [MPa]
    poisson: float  # [-]
    yield_strength: float  # [MPa]
    tensile_strength: float  # [MPa]
    compressive_strength: float  # where it is not the tensile one; 0 where not stated [MPa]
    expansion: float  # [1e-6/K]
    heat_capacity: float  # [J/kg K]
    conductivity: float  # of heat [W/m K]
    melting: tuple[float, float]  # solidus, liquidus [C]
    machinability: float  # [%]
    machinability_base: str
    kc11: float  # [MPa]
    mc: float  # [-]
    cutting_group: str
    cutting_family: str  # key of the speed tables
    magnetic: str  # "strongly", "slightly", "hardly", "no"
    tell: str  # how to know it by magnet, look and chip
    look_alikes: tuple[str, ...]
    hazards: tuple[str, ...]  # short words
    cautions: tuple[str, ...]  # what to do about each hazard
    hardness: tuple[float, float]  # Brinell, low and high; (0, 0) where not stated [HB]
    tempers: tuple[Temper, ...]
    composition: tuple[tuple[str, str, float, float], ...]  # standard, element, low, high [%]
    hardening: tuple[float, ...]  # quench from, low and high; (0, 0) where not stated [C]
    water_absorption: float  # of plastics at equilibrium; 0 where not stated [%]
    source: str

    @property
    def shear_modulus(self) -> float:
        """Shear modulus E / (2 (1 + nu)) [MPa]."""
        return self.modulus / (2 * (1 + self.poisson))
