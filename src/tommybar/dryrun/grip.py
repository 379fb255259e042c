"""How much of the gripped surface is really there, before and after each step."""

from __future__ import annotations

from shapely import box
from shapely.geometry.base import BaseGeometry

from tommybar.dryrun.keep_out import Fixture

NEAR = 0.06  # the gripped surface counts as there within this distance on radius [mm]


def gripped_length(work: BaseGeometry, held: Fixture) -> float:
    """Length of the work's outline that lies at the gripped radius within the grip [mm]."""
    if held.radius <= 0 or work.is_empty:
        return 0.0
    low, high = held.grip
    strip = box(low, held.radius - NEAR, high, held.radius + NEAR)
    met = work.boundary.intersection(strip)
    runs = [line for line in getattr(met, "geoms", [met]) if line.geom_type == "LineString"]
    return float(sum(abs(line.coords[-1][0] - line.coords[0][0]) for line in runs if not line.is_empty))


def radius_there(work: BaseGeometry, held: Fixture) -> float:
    """Largest radius of the metal within the grip [mm]; 0 where no metal stands."""
    low, high = held.grip
    there = work.intersection(box(low, 0.0, high, 1e5))
    return float(there.bounds[3]) if not there.is_empty else 0.0
