"""How a round stands for a hole across it: where its places lie, where zero is, and what is in the way."""

from __future__ import annotations

from tommybar.facts.threads import thread
from tommybar.making.jobs import largest, largest_outside
from tommybar.making.lengths import Mm
from tommybar.making.mill_steps import MillBench
from tommybar.making.milling.room import stands_out
from tommybar.making.milling.round_holding import RoundHold
from tommybar.making.milling.rules import mill_rule
from tommybar.making.milling.touching import axis_words, spindle_at_left_edge
from tommybar.shapes.features import CrossHole, Cylinder, TurnedShape

CHUCK_RADIUS = 18.0  # of a drill chuck, about; common practice, no source [mm]
LARGEST_DRILL = (
    13.0  # what a usual drill chuck takes; wider holes are bored after it; common practice, no source [mm]
)


def body_at(shape: TurnedShape, z: float) -> Cylinder | None:
    """The cylinder that a cross hole is drilled into."""
    return next(
        (f for f in shape.outside if isinstance(f, Cylinder) and f.start - 1e-6 <= z <= f.end + 1e-6), None
    )


def dia_at(shape: TurnedShape, hole: CrossHole) -> float:
    """Diameter of the round that a cross hole is drilled into [mm]."""
    body = body_at(shape, hole.z)
    return body.dia.value if body else largest_outside(shape)


def drill_of(hole: CrossHole) -> float:
    """The drill that goes across: the tapping drill, or up to what a drill chuck takes [mm]."""
    return thread(hole.thread).tapping_drill if hole.thread else min(hole.dia.value, LARGEST_DRILL)


def bore_of(shape: TurnedShape, hole: CrossHole) -> float:
    """Diameter of the bore that the hole meets [mm]; 0 in solid metal."""
    length = shape.length.value
    met = [
        b.dia.value
        for b in shape.bores
        if b.name == hole.into
        or b.through
        or (b.face == "A" and hole.z < b.depth)
        or (b.face == "B" and hole.z > length - b.depth)
    ]
    return max(met, default=0.0)


def place_of(hole: CrossHole, lies: RoundHold, sign: float) -> tuple[float, float]:
    """Where a hole lies on the card: along X from face A, or along Y away from the fixed jaw [mm]."""
    beside = -sign * hole.offset + 0.0
    return (beside, lies.jaw - hole.z) if lies.by_faces else (hole.z, beside)


def zero_lines(lies: RoundHold, dia: float, finder: float, free: str = "A") -> tuple[str, ...]:
    """Where X and Y are nought, with half the finder in its sign."""
    if lies.by_faces:
        at = spindle_at_left_edge(finder)
        return (
            f"Y zero on the fixed jaw, where the part lies against it: touched with a {Mm(finder):g} finder from the front, the "
            f"spindle is at Y {Mm(at):+.2f} (before the part goes in, or beside it).",
            *axis_words(dia, finder, "X"),
        )
    at = spindle_at_left_edge(finder)
    return (
        f"X zero on face {free}, to the left: touched from outside with a {Mm(finder):g} finder, the spindle is at X "
        f"{Mm(at):+.2f}.",
        *axis_words(dia, finder),
    )


def grip_lines(
    bench: MillBench, body: Cylinder | None, lies: RoundHold, dia: float, feature: str
) -> tuple[str, ...]:
    """A round too short for its vee, and a larger land that hangs beside the block."""
    lines: list[str] = []
    if lies.hangs > 0:
        low = lies.base - lies.hangs
        if low < mill_rule("above_work"):
            bench.stop(
                448,
                f"{bench.part.name}: a land beside {feature} reaches {lies.hangs:.1f} mm below the round that is held; the table "
                f"is {lies.base:.1f} mm below it.",
                feature,
                "Put the vee block on packing, or hold the part by the larger land.",
                figure=f"{lies.hangs:.1f} mm",
                bound=f"{lies.base:.1f} mm",
            )
        lines.append(
            f"The larger land reaches {Mm(lies.hangs):.1f} below the round: it hangs beside vice and block, {Mm(low):.1f} over "
            "the table."
        )
    long = body.end - body.start if body is not None else 0.0
    if not lies.by_faces and body is not None and long < mill_rule("vee_least") * dia:
        bench.caution(
            449,
            f"{body.name} lies in the vee with {long:g} mm of its length; it tips under the drill.",
            feature,
            "Hold a longer land, or drill it while the part is still on its stub.",
            f"{long:g} mm",
            f"{mill_rule('vee_least') * dia:.1f} mm, half its diameter",
        )
    return tuple(lines)


def beside_lines(
    bench: MillBench, shape: TurnedShape, body: Cylinder | None, holes: list[CrossHole]
) -> tuple[str, ...]:
    """A chuck that meets a larger land beside the hole: how far drill and tap must stand out of it."""
    lines: list[str] = []
    if body is None:
        return ()
    for hole in holes:
        near = [
            largest(other) / 2
            for other in shape.outside
            if other.name != body.name
            and min(abs(other.start - hole.z), abs(other.end - hole.z)) < CHUCK_RADIUS
        ]
        over = max(near, default=0.0) - body.dia.value / 2
        if over <= 0:
            continue
        size = drill_of(hole)
        needed = over + (body.dia.value - bore_of(shape, hole)) / 2 + 3.0
        if stands_out(size) < needed:
            bench.caution(
                433,
                f"{hole.name} lies beside a land {Mm(2 * max(near)):g} in diameter: the drill chuck meets it.",
                hole.name,
                f"Use a long-series drill and tap that stand out {Mm(needed):.0f} or more, or a collet in place of the chuck.",
                figure=f"a jobber drill {size:g} mm stands out about {stands_out(size):.0f} mm",
                bound=f"{needed:.0f} mm",
            )
            lines.append(
                f"The land beside {hole.name} stands in the chuck's way: drill and tap {Mm(needed):.0f} out or more."
            )
    return tuple(lines)
