"""The checks, listed by hand."""

from __future__ import annotations

from tommybar.checks import (
    engagement,
    fit_sense,
    plate_holes,
    rotor,
    rubbing,
    securing,
    threads_in_walls,
    walls,
)

JOINING = (fit_sense.look,)  # looked at with what is measured as it is
CHECKS = (
    rotor.look,
    securing.look,
    walls.look,
    threads_in_walls.look,
    plate_holes.look,
    engagement.look,
    rubbing.look,
    fit_sense.look,
)
