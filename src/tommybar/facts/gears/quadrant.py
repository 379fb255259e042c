"""Whether gears can really be put on: reach of the quadrant and clash with shafts."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass


@dataclass(frozen=True)
class Quadrant:
    """The arm that carries the stud between the first driver and the lead screw.

    A length of 0 means that it has not been measured: that check is left out,
    and gears are judged by the trade's rule in teeth.
    """

    module: float = 1.0  # of the gears [mm]
    span: float = 0.0  # first driver's shaft to lead screw [mm]; 0: not measured
    slot_from: float = 0.0  # nearest place of the stud to the lead screw [mm]
    slot_to: float = 0.0  # farthest [mm]; 0: not measured
    shaft_diameter: float = 12.0  # thickest of shafts and studs with nut [mm]
    clash_teeth: int = 15  # rule when the shafts are not measured


def mesh_faults(
    drivers: Sequence[int], driven: Sequence[int], idler: int = 0, quadrant: Quadrant | None = None
) -> tuple[str, ...]:
    """Why a train cannot be put on the lathe; empty when it can.

    Gears a (spindle) and b, c (stud) and d (lead screw) of module m lie at
    m (a + b) / 2 and m (c + d) / 2. The stud must reach both (triangle with
    the span), lie in the slot, and no gear may touch the shaft beside it:
    b must clear the lead screw and c the first driver's shaft. While the span
    is not measured the trade's rule stands: a + b > c + 15 and c + d > b + 15.

    Parameters
    ----------
    drivers, driven : Sequence[int]
        Teeth: one pair (simple) or two pairs (compound) [-]
    idler : int
        Teeth of the idler of a simple train; 0 when driver and driven mesh
        directly [-]
    quadrant : Quadrant or None
        What has been measured of the arm, in [mm]; the rule in teeth when None

    Returns
    -------
    tuple[str, ...]
        One sentence for each fault [-]

    Notes
    -----
    Addendum is one module on each gear; 1 mm is kept clear besides.

    Examples
    --------
    >>> mesh_faults([20, 63], [80, 50])
    ()
    >>> mesh_faults([20, 100], [25, 127])
    ('the 20 and 25 gears do not reach past the 100 gear on the stud (45 teeth, 116 needed)',)

    References
    ----------
    source: circles in mesh, first principles; the rule of 15 teeth is common
    practice.
    """
    arm = quadrant or Quadrant()
    if len(drivers) == 1:
        return _simple_faults(drivers[0], driven[0], idler, arm)
    if len(drivers) != 2:
        return (f"{len(drivers)} pairs need {len(drivers) - 1} studs: judge the clearances on the lathe",)
    first, third = drivers
    second, fourth = driven
    faults = []
    if arm.span:
        faults += _reach_faults(arm.module * (first + second) / 2, arm.module * (third + fourth) / 2, arm)
        near = arm.module * (third + fourth) / 2
        far = arm.module * (first + second) / 2
        faults += _touch_faults(second, near, "lead screw", arm) + _touch_faults(
            third, far, "first shaft", arm
        )
        return tuple(faults)
    for one, other, beside in ((first, second, third), (third, fourth, second)):
        needed = beside + arm.clash_teeth + 1
        if one + other < needed:
            faults.append(
                f"the {one} and {other} gears do not reach past the {beside} gear on the stud "
                f"({one + other} teeth, {needed} needed)"
            )
    return tuple(faults)


def _simple_faults(driver: int, driven: int, idler: int, arm: Quadrant) -> tuple[str, ...]:
    if not arm.span:
        return ()
    if idler:
        return tuple(_reach_faults(arm.module * (driver + idler) / 2, arm.module * (idler + driven) / 2, arm))
    between = arm.module * (driver + driven) / 2
    if abs(between - arm.span) > 0.1 * arm.module:
        return (
            f"the {driver} and {driven} gears mesh at {between:g} mm, the shafts lie {arm.span:g} mm apart: "
            "put an idler between",
        )
    return ()


def _reach_faults(from_first: float, from_screw: float, arm: Quadrant) -> list[str]:
    faults = []
    if from_first + from_screw < arm.span:
        faults.append(f"the gears reach {from_first + from_screw:g} mm, the shafts lie {arm.span:g} mm apart")
    if abs(from_first - from_screw) > arm.span:
        faults.append(f"the stud would lie beyond both shafts, {arm.span:g} mm apart")
    if arm.slot_to and not arm.slot_from <= from_screw <= arm.slot_to:
        faults.append(
            f"the stud would lie {from_screw:g} mm from the lead screw, the slot runs from {arm.slot_from:g} "
            f"to {arm.slot_to:g} mm"
        )
    return faults


def _touch_faults(gear: int, distance: float, what: str, arm: Quadrant) -> list[str]:
    room = distance - arm.module * (gear / 2 + 1) - arm.shaft_diameter / 2
    if room >= 1.0:
        return []
    return [f"the {gear} gear on the stud clears the {what} by {room:.1f} mm, 1 mm is needed"]
