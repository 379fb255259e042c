"""A small shop and short ways to write cards for the dry run's tests."""

from __future__ import annotations

from collections.abc import Sequence

from tommybar.design.model import Part
from tommybar.making.cards import Blank, Card, Hold, Move, Step
from tommybar.shapes.features import Cylinder, Dim, Face, TurnedShape
from tommybar.shop.model import Dial, Jaws, Lathe, Shop, Tool

DIAL = Dial(0.02, 2.0, "RAD")
LATHE = Lathe("bench", 90, 180, 110, 350, 20, (150, 400, 950), DIAL, DIAL, DIAL, DIAL, 13)
TOOLS = (
    Tool("A", "knife", "right", "HSS"),
    Tool("B", "knife", "right", "HSS", nose=0.4),
    Tool("L", "knife", "left", "HSS"),
    Tool("P", "parting", "both", "HSS", width=2.0, reach=14.0),
    Tool("R", "recess", "both", "HSS", width=3.0, reach=12.0),
    Tool("C", "chamfer", "both", "HSS"),
    Tool("G", "groove", "both", "HSS", width=1.0, reach=4.0),
    Tool("D", "boring", "right", "HSS", nose=0.0, reach=30.0, smallest_bore=10.0, shank=8.0),
    Tool("S", "recess", "both", "HSS", width=3.0, reach=4.0),
)
JAWS = (
    Jaws("inside jaws", "three-jaw", "outside", ((3, 36, 30),), 0.06, 100, 25),
    Jaws("outside jaws", "three-jaw", "outside", ((32, 95, 8),), 0.06, 100, 25),
)
SHOP = Shop(
    "test",
    "mm",
    LATHE,
    None,
    JAWS,
    TOOLS,
    (5.0, 7.8, 9.8),
    (2.5,),
    (),
    (),
    (),
    (),
    (),
    (),
    (),
    (),
    frozenset(),
)


def way(*places: tuple[float, float] | tuple[float, float, str]) -> tuple[Move, ...]:
    """Moves from (z, r) or (z, r, "rapid")."""
    return tuple(Move(place[0], place[1], len(place) == 3) for place in places)


def step(
    number: int, kind: str, moves: Sequence[Move], letter: str = "", size: float = 0.0, **words: str
) -> Step:
    """A step with only what the dry run reads."""
    return Step(
        number,
        words.get("do", f"{kind} step"),
        words.get("feature", ""),
        letter or kind,
        kind,
        400.0,
        20.0,
        0.05,
        "",
        "",
        (),
        moves=tuple(moves),
        tool_size=size,
        tool_letter=letter,
        key=f"part/1/{number}",
    )


def card(
    steps: Sequence[Step],
    *,
    dia: float = 20.0,
    grip: float = 20.0,
    out: float = 31.0,
    free: Face = "A",
    number: int = 1,
    jaws: str = "inside jaws",
    device: str = "three-jaw, inside jaws",
) -> Card:
    """A lathe card."""
    hold = Hold(device, jaws, "blank", dia, grip, out, 0.06, "")
    return Card("part", number, 1, "lathe", "", free, hold, tuple(steps), (), ())


def bar(dia: float = 20.0, long: float = 60.0, over: float = 1.0, finished: float = 20.0) -> Blank:
    """A round blank that stands ``over`` beyond the first finished face."""
    return Blank("part", "mild steel", "round", dia, 0.0, long, finished, (("face first end", over),))


def part(shape: TurnedShape) -> Part:
    """A turned part."""
    return Part("part", "turned", "mild steel", 1, shape)


def pin(dia: float = 16.0, long: float = 20.0, edge: float = 0.0) -> TurnedShape:
    """A plain cylinder."""
    return TurnedShape(Dim(long), (Cylinder("body", Dim(dia), 0.0, long, edge, edge),))


FACE = way((2.0, 11.0), (0.0, 11.0, "rapid"), (0.0, -0.4), (1.0, -0.4), (1.0, 11.0, "rapid"))


def turn(to: float, far: float, near: float = 1.5, away: float = 11.0) -> tuple[Move, ...]:
    """One cut along the axis to a radius, drawn out square."""
    return way((near, away), (near, to, "rapid"), (far, to), (far, away), (near, away, "rapid"))


PART_OFF = way((-20.0, 12.0), (-20.0, -0.4), (-20.0, 12.0, "rapid"))
