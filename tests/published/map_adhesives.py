"""From the words of a row of adhesives.csv to a call of public functions.

The header allows loose bands only: a range that is common practice or memory
is met when ours lies inside it, widened by a quarter; what was read must agree to the
last printed place.
"""

from __future__ import annotations

import re

from tommybar.facts.adhesives import (
    adhesive,
    axial_holding_force,
    bonded_disc_torque,
    holding_torque,
    joint_strength,
    solder,
)
from tommybar.refusals import Refusal

from .frame import Band, Computed, Row, Unmapped

LEFT_OUT: dict[str, str] = {}

_TESTED = re.compile(r"^shear strength (\w+)-(\w+) after (.+)$")
_SHAFT = re.compile(r"^(torque|axial) holding ([\d.]+) mm shaft, ([\d.]+) mm long, tau=([\d.]+) MPa$")
_DISC = re.compile(
    r"^disc ([\d.]+) mm glued flat on an arbor, tau=([\d.]+) MPa at the rim \(linear\), torque$"
)
_AREA = re.compile(r"^pin-and-collar test area quoted \(([\d.]+) mm bore, ([\d.]+) mm long\)$")
_PSI = 0.00689476  # [MPa]


def band(row: Row) -> Band | None:
    """A quarter for ranges that are practice or memory; see the head of this file."""
    loose = row.basis in ("common practice", "memory") and row.value2
    return Band(relative=0.25, as_range=True) if loose else None


def expected_call(row: Row) -> Computed:
    """What the program computes for this row."""
    if row.group == "worked joints":
        return _worked(row)
    if row.group == "other work-holding":
        return _other(row)
    if match := _TESTED.match(row.item):
        strength = joint_strength(match[1], match[2], match[3])
        return strength / _PSI if row.unit == "psi" else strength
    if match := _AREA.match(row.item):
        return axial_holding_force(float(match[1]), float(match[2]), 1.0)  # N at 1 MPa = mm2
    return _of_class(row)


def _worked(row: Row) -> Computed:
    if match := _SHAFT.match(row.item):
        diameter, length, strength = (float(match[index]) for index in (2, 3, 4))
        hold = holding_torque if match[1] == "torque" else axial_holding_force
        return hold(diameter, length, strength)
    if match := _DISC.match(row.item):
        return bonded_disc_torque(float(match[1]), float(match[2]))
    raise Unmapped(row.item)


def _other(row: Row) -> Computed:
    if match := re.match(r"^(.+) (?:softens|melts|melting)$", row.item):
        try:
            return solder(match[1]).melting
        except Refusal:
            return adhesive(match[1]).release
    raise Unmapped(row.item)


def _of_class(row: Row) -> Computed:
    medium = "medium strength" in row.item
    found = adhesive("retaining compound, medium strength" if medium else row.group)
    if "lap shear" in row.item:
        return found.shear_on("steel" if "steel" in row.item else "aluminium")
    ranges = {
        "static shear": found.shear,
        "normal service range": found.service,
        "glass transition": found.glass,
        "release temperature": found.release,
        "fixture time": found.fixture,
        "largest useful gap": found.largest,
        "surface roughness": found.roughness,
        "gap": found.gap,
        "full cure": found.cure,
    }
    if "handling / full cure" in row.item:
        first, last = (figure / 60 for figure in found.fixture)
        return f"{first:g}-{last:g} min / {found.cure[1]:g} h"
    for words, figures in ranges.items():
        if words in row.item:
            return figures
    if "upper service temperature" in row.item:
        return found.service[1]
    if "special grades upper limit" in row.item:
        return found.special_limit
    if "solvent" in row.item:
        return found.solvent
    raise Unmapped(row.item)
