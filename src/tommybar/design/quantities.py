"""Units that a file may use, and what becomes of them when figures are added and multiplied.

Everything is turned to house units when it is read: mm, deg, rev/min, N, W,
g, s. A *bare* figure has no unit yet: beside a length it is a length in the
file's unit, as a factor it is a number. The ratio of two lengths is a number
for good.
"""

from __future__ import annotations

from typing import Literal

Dims = tuple[tuple[str, int], ...]  # () is a plain number
Kind = Literal["length", "angle", "speed", "number", "count", "force", "power", "mass", "time"]

LENGTH: Dims = (("length", 1),)
ANGLE: Dims = (("angle", 1),)
SPEED: Dims = (("speed", 1),)
NUMBER: Dims = ()

MM_PER_INCH = 25.4  # exact by definition of the inch (1959)

UNITS: dict[str, tuple[float, Dims]] = {
    "mm": (1.0, LENGTH),
    "cm": (10.0, LENGTH),
    "m": (1000.0, LENGTH),
    "um": (0.001, LENGTH),
    "in": (MM_PER_INCH, LENGTH),
    "inch": (MM_PER_INCH, LENGTH),
    '"': (MM_PER_INCH, LENGTH),
    "thou": (MM_PER_INCH / 1000, LENGTH),
    "deg": (1.0, ANGLE),
    "°": (1.0, ANGLE),
    "rev/min": (1.0, SPEED),
    "rpm": (1.0, SPEED),
    "rev/s": (60.0, SPEED),
    "N": (1.0, (("force", 1),)),
    "W": (1.0, (("power", 1),)),
    "kW": (1000.0, (("power", 1),)),
    "g": (1.0, (("mass", 1),)),
    "kg": (1000.0, (("mass", 1),)),
    "s": (1.0, (("time", 1),)),
}
KIND_DIMS: dict[str, Dims] = {
    "length": LENGTH,
    "angle": ANGLE,
    "speed": SPEED,
    "number": NUMBER,
    "count": NUMBER,
    "force": (("force", 1),),
    "power": (("power", 1),),
    "mass": (("mass", 1),),
    "time": (("time", 1),),
}
HOUSE_UNIT = {
    "length": "mm",
    "angle": "deg",
    "speed": "rev/min",
    "force": "N",
    "power": "W",
    "mass": "g",
    "time": "s",
}


def product(one: Dims, other: Dims, sign: int = 1) -> Dims:
    """The dimensions of a product, or of a quotient when ``sign`` is -1.

    >>> product(LENGTH, LENGTH)
    (('length', 2),)
    >>> product(LENGTH, LENGTH, -1)
    ()
    """
    powers = dict(one)
    for name, power in other:
        powers[name] = powers.get(name, 0) + sign * power
    return tuple(sorted((name, power) for name, power in powers.items() if power))


def dims_words(dims: Dims | None) -> str:
    """What a person calls these dimensions.

    >>> dims_words((("length", 2),))
    'length x length'
    """
    if dims is None:
        return "a figure without unit"
    if not dims:
        return "a plain number"
    over = [name for name, power in dims for _ in range(power)]
    under = [name for name, power in dims for _ in range(-power)]
    if len(over) == 1 and not under:
        return f"{'an' if over[0] == 'angle' else 'a'} {over[0]}"
    return (" x ".join(over) or "1") + "".join(f" / {name}" for name in under)
