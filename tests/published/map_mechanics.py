"""Which public functions compute a row of rows/mechanics.csv: one rule for each module named there.

A rule gets the row's inputs, never what the row expects. Units are turned at
this door: the rows speak um, GPa and kg/m3 where the program speaks mm, MPa
and g/cm3.
"""

from __future__ import annotations

from . import mechanics_cutting, mechanics_holding, mechanics_rotors

RULES = {**mechanics_cutting.RULES, **mechanics_holding.RULES, **mechanics_rotors.RULES}

# Modules of the rows that the program does not compute yet, each with what would be needed.
NOT_YET = {
    "A.facegroove": "relief of a face recess tool with a stated grind",
    "A.fgoffset": "the same tool off centre height",
    "C.glue": "strength of a glued face arbor",
    "C.gluesize": "size of a glued face arbor",
    "C.mandrel": "expanding mandrels",
    "C.centre": "friction of a dead centre",
    "C.dog": "bending by a driving dog",
    "C.heat": "warming of the work by the cut",
    "E.2plane": "balancing in two planes",
    "E.overhung": "critical speed with the disc's own stiffening",
    "E.gyro": "precession and nutation",
    "E.string": "start by a pulled string",
    "E.spindown": "run-down in air",
    "E.pivot": "pivots under load",
    "E.windage": "drag of a turning disc in air",
    "E.discvar": "stepped turning discs",
    "F.speed": "press fits loosened by speed",
    "H.bush": "plain bearings",
    "H.tip": "tipping of a stand",
    "H.column": "slender pillars",
    "H.sway": "sway of pillars",
}
