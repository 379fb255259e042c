"""Cautions that are printed at the step where they bite (common practice; maker's sheets and local rules come first)."""

SOLDERING = (
    "Flame: nothing that burns within reach, fire blanket or extinguisher at hand, the piece on fire brick.",
    "Fumes of flux: outside or moving air; never heat plated, galvanised or unknown metal; cadmium solder never.",
    "Black heat looks cold: mark it hot, tongs, eye protection.",
)
HARDENING = (
    "Face shield, leather apron and gloves, dry tongs; nobody opposite; the flame away from the quench.",
    "Oil flares: metal tank deeper than the piece with a lid that smothers it, no water near it; never hot work alone.",
    "Glass hard steel can crack and fly: no blow, temper it at once.",
)
TEMPERING = (
    "Hot steel: tongs, and away from the quench oil; let it colour slowly, then dip or leave it on a cold plate.",
)
BLUEING = (
    "Hot sand or oil burns: outside or in moving air, lid at hand, dry tongs; no sealed or hollow piece in hot sand.",
)
POLISHING = (
    "Never cloth or paper round a turning piece by hand, nor a ring or glove near it: on a stick or file, ends never wrapped.",
    "If it turns in the lathe: spindle slow, hands on the side where the work runs away from them.",
)
LAPPING = (
    "No lap held by hand that can seize on a powered spindle: short lap, slowest speed, let go at once, or by hand altogether.",
)
ADHESIVE = (
    "Gloves and moving air; the maker's sheet says how long it cures and what it does to skin and eyes.",
)
RIVETING = (
    "Eye protection; a rivet snap or hammer with a mushroomed head is ground first, splinters fly off it.",
)
ENGRAVING = ("Hand behind the point at all times, the work in the vice.",)
