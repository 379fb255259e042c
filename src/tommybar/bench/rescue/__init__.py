"""What goes wrong: the warning before, and afterwards the offers, each a plan of its own.

One file for each kind of trouble; :mod:`tommybar.bench.rescue.members` lists
them by hand. A reality gives *tries*: what would be changed. Each try is
planned in earnest, with the bad size frozen, and what comes of it is compared
with the plan as it stands: only then is it an offer with a price.
"""

from tommybar.bench.rescue.members import REALITIES, offers, reality, warnings
from tommybar.bench.rescue.offers import Offer, taking
from tommybar.bench.rescue.situation import Mishap, Reality, Situation, Try, situation

__all__ = [
    "REALITIES",
    "Mishap",
    "Offer",
    "Reality",
    "Situation",
    "Try",
    "offers",
    "reality",
    "situation",
    "taking",
    "warnings",
]
