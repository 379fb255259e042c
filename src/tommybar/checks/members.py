"""The checks, listed by hand."""

from __future__ import annotations

from tommybar.checks import (
    belts,
    blind_depths,
    chains,
    engagement,
    fit_sense,
    holes_across,
    loads,
    plate_holes,
    pockets,
    pressures,
    rotor,
    rubbing,
    screw_heads,
    securing,
    slopes,
    solders,
    sounds,
    springs,
    thread_pairs,
    threads_in_walls,
    tops,
    walls,
)

JOINING = (fit_sense.look,)  # looked at with what is measured as it is
CHECKS = (
    rotor.look,
    securing.look,
    walls.look,
    threads_in_walls.look,
    plate_holes.look,
    pockets.look,
    holes_across.look,
    blind_depths.look,
    slopes.look,
    screw_heads.look,
    engagement.look,
    rubbing.look,
    fit_sense.look,
    chains.look,
    thread_pairs.look,
    solders.look,
    loads.look,
    springs.look,
    belts.look,
    tops.look,
    pressures.look,
    sounds.look,
)
