"""One train of change gears and what it cuts."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from tommybar.facts.gears.lead import cut_pitch, ratio_error


@dataclass(frozen=True)
class Train:
    """Gears in pairs from the spindle to the lead screw, and the pitch they cut.

    A simple train has one driver and one driven gear (any idler between); a
    compound train has two pairs: the first driven and the second driver share
    the stud.
    """

    drivers: tuple[int, ...]
    driven: tuple[int, ...]
    idler: int  # teeth of the idler of a simple train; 0: none chosen
    pitch: float  # [mm]
    error_ppm: float
    error_per_100: float  # lead error over 100 mm of thread [um]

    @property
    def words(self) -> str:
        """The train as it is written: driver/driven, pair by pair."""
        return " x ".join(f"{one}/{other}" for one, other in zip(self.drivers, self.driven, strict=True))


def train_for(
    drivers: Sequence[int],
    driven: Sequence[int],
    leadscrew_pitch: Fraction | float,
    wanted: Fraction | float,
    idler: int = 0,
) -> Train:
    """What given gears cut, set against the pitch wanted.

    Parameters
    ----------
    drivers, driven : Sequence[int]
        Teeth, in pairs from the spindle on [-]
    leadscrew_pitch : Fraction or float
        Pitch of the lead screw, above 0 [mm]
    wanted : Fraction or float
        Pitch wanted, above 0 [mm]
    idler : int
        Teeth of an idler, 0 for none; it changes no pitch [-]

    Returns
    -------
    Train
        The train with its pitch [mm], error [ppm] and error over 100 mm [um]

    Raises
    ------
    Refusal
        If a figure is not above 0 or the gears do not pair.

    Examples
    --------
    >>> train = train_for([20, 63], [50, 80], 3.175, 1.0)
    >>> round(train.pitch, 6), round(train.error_ppm, 1), round(train.error_per_100, 2)
    (1.000125, 125.0, 12.5)

    References
    ----------
    source: pitch = lead screw x drivers / driven (first principles).
    """
    pitch = cut_pitch(leadscrew_pitch, drivers, driven)
    exact = Fraction(leadscrew_pitch)
    for one, other in zip(drivers, driven, strict=True):
        exact = exact * one / other
    error = ratio_error(exact, wanted)
    return Train(tuple(drivers), tuple(driven), idler, pitch, error, error / 10)
